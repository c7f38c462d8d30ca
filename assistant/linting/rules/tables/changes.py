"""Changes that a seal needs before it fits, and whether they are told."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from assistant.linting.columns import Marks
from assistant.linting.finding import Finding, Rule
from assistant.linting.gathered import TABLES, Gathered


def change_missing(gathered: Gathered) -> Iterator[Finding]:
    """'Fits with change' without the change helps nobody; answers pass over the row."""
    trials = gathered.trials
    empty = trials.columns.coded("change").are("")[trials.row]
    return _found(
        gathered,
        trials.changed & empty,
        "says 'fits with change' and not which change",
        "write the change, such as 'cut off the ring'",
    )


def change_not_told(gathered: Gathered) -> Iterator[Finding]:
    """A change written beside 'fits' is never told: the customer gets the seal as it comes."""
    trials = gathered.trials
    empty = trials.columns.coded("change").are("")[trials.row]
    return _found(
        gathered,
        trials.fits & ~empty,
        "says 'fits' and yet gives a change, which answers do not tell",
        "write 'fits with change', or move the words to the note",
    )


def _found(gathered: Gathered, wanted: Marks, what: str, mend: str) -> Iterator[Finding]:
    trials = gathered.trials
    for piece in map(int, np.flatnonzero(wanted)):
        yield Finding(
            path=f"{TABLES}/fitment.csv", line=trials.line(piece), what=f"the row {what}", mend=mend
        )


RULES = (
    Rule(
        "change-missing",
        "warning",
        "A seal sold with 'something must be changed' and no word of what comes back.",
        change_missing,
    ),
    Rule(
        "change-not-told",
        "warning",
        "A seal that needs cutting leaks when it is put in as it comes.",
        change_not_told,
    ),
)
