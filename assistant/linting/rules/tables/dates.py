"""Days of evidence: none can be to come, and old ones want a second look."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

import numpy as np

from assistant.linting.columns import Numbers
from assistant.linting.finding import Finding, Rule
from assistant.linting.gathered import TABLES, Gathered
from assistant.linting.wording import counted
from assistant.records import cells

NOT_KNOWN = 0


def _days(gathered: Gathered) -> Numbers:
    """The day of each piece of evidence, counted as Python does; 0 where it is not known."""
    trials = gathered.trials
    coded = trials.columns.coded("date")
    days = np.array([_day(value) for value in coded.values], np.int64)
    return days[coded.codes[trials.row]]


def _day(written: str) -> int:
    try:
        return cells.day(written).toordinal() if written else NOT_KNOWN
    except ValueError:
        return NOT_KNOWN  # its rows are not sound, and not looked at


def future_date(gathered: Gathered) -> Iterator[Finding]:
    """Nobody has tried a seal tomorrow."""
    days = _days(gathered)
    for piece in map(int, np.flatnonzero(days > gathered.today.toordinal())):
        yield Finding(
            path=f"{TABLES}/fitment.csv",
            line=gathered.trials.line(piece),
            what=f"the date {date.fromordinal(int(days[piece]))} is still to come",
            mend="correct the date, or the clock of this computer",
        )


def old_evidence(gathered: Gathered) -> Iterator[Finding]:
    """Told once for the file: age alone makes no row wrong."""
    trials, days = gathered.trials, _days(gathered)
    limit = gathered.today.toordinal() - gathered.oldest
    if not ((days != NOT_KNOWN) & (days < limit)).any():
        return
    _, pair = np.unique(trials.pair, return_inverse=True)
    youngest = np.zeros(int(pair.max()) + 1, np.int64)
    np.maximum.at(youngest, pair, days)
    old = np.flatnonzero((days != NOT_KNOWN) & (youngest[pair] < limit))
    if len(old):
        yield Finding(
            path=f"{TABLES}/fitment.csv",
            line=min(trials.line(int(piece)) for piece in old),
            what=f"from this line on {len(old):,} of {counted(len(days), 'row')} "
            f"{'is' if len(old) == 1 else 'are'} more than {counted(gathered.oldest, 'day')} old, "
            "and no younger row speaks of the same seal and place",
            mend="try those again that sell most",
        )


RULES = (
    Rule(
        "future-date",
        "warning",
        "A day to come is a slip of the keyboard, and hides how old the evidence is.",
        future_date,
    ),
    Rule(
        "old-evidence",
        "warning",
        "Makers change a part and keep its number: what fitted years ago may be another part now.",
        old_evidence,
    ),
)
