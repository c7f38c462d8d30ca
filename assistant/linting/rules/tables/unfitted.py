"""Seals of which nobody ever wrote that they fit anything."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from assistant.fitment.proof import forerunners
from assistant.linting.finding import Finding, Rule
from assistant.linting.gathered import Gathered


def never_fitted(gathered: Gathered) -> Iterator[Finding]:
    """Neither it nor a number that it replaced."""
    if not gathered.are_whole("fitment.csv", "seals.csv"):
        return
    tables, trials = gathered.tables, gathered.trials
    parts = trials.parts
    own = {parts[part] for part in np.unique(trials.part[~trials.against])}
    plainly = {parts[part] for part in np.unique(trials.part[trials.fits])}
    for part_no in tables.seals:
        if part_no in own or not plainly.isdisjoint(forerunners(tables, part_no)):
            continue
        path, line = gathered.at("seals.csv", part_no)
        yield Finding(
            path=path,
            line=line,
            what=f"nothing in fitment.csv says that '{part_no}' fits anything",
            mend="enter the maker's sheet or a trial, as until then no answer names it",
        )


RULES = (
    Rule(
        "never-fitted",
        "warning",
        "A seal without evidence lies on the shelf: measures alone never say 'fits'.",
        never_fitted,
    ),
)
