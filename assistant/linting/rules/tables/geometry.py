"""Rows that say a seal fits where its own measures say that it cannot."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from assistant.answers.objections import WORDINGS
from assistant.linting.columns import Marks
from assistant.linting.finding import Finding, Rule
from assistant.linting.gathered import TABLES, Gathered


def geometry_against(gathered: Gathered) -> Iterator[Finding]:
    """The opening, the hold, the hinge and the flush are what must agree, whoever says 'fits'."""
    return _objected(gathered, gathered.trials.fits, "correct the measure or the verdict")


def change_overruled(gathered: Gathered) -> Iterator[Finding]:
    """A change may cure a misfit, but answers go by the measures and never name the seal there."""
    mend = "measure again, or answer by hand if the change does cure it"
    return _objected(gathered, gathered.trials.changed, mend)


def _objected(gathered: Gathered, wanted: Marks, mend: str) -> Iterator[Finding]:
    trials, path = gathered.trials, f"{TABLES}/fitment.csv"
    lines, parts, targets = trials.columns.lines, trials.parts, trials.targets
    reasons: dict[int, str] = {}
    pieces = np.flatnonzero(trials.objected & wanted)
    for piece, row, part, target in zip(
        pieces.tolist(),
        trials.row[pieces].tolist(),
        trials.part[pieces].tolist(),
        trials.target[pieces].tolist(),
        strict=True,
    ):
        objection = trials.objection(piece)
        if id(objection) not in reasons:
            word = WORDINGS[objection.rule]
            seal = gathered.tables.seals[parts[part]]
            reasons[id(objection)] = word(seal, objection.seal_has, objection.place_has)
        yield Finding(
            path=path,
            line=lines[row],
            what=f"'{parts[part]}' is said to fit {targets[target]}, but {reasons[id(objection)]}",
            mend=mend,
        )


RULES = (
    Rule(
        "geometry-against",
        "error",
        "Measures that disagree overrule every report: either the measure is wrong or the row is.",
        geometry_against,
    ),
    Rule(
        "change-overruled",
        "warning",
        "A seal whose measures disagree is never named, so the change in the row is never told.",
        change_overruled,
    ),
)
