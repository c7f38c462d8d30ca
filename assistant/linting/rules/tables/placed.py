"""Evidence on a build that belongs to none of its valves, or to no one of them."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from assistant.linting.finding import Finding, Rule
from assistant.linting.gathered import TABLES, Gathered


def no_such_valve(gathered: Gathered) -> Iterator[Finding]:
    """It is looked for at a valve of the build, and found at none."""
    if not gathered.are_whole("toilets.csv", "build_valves.csv", "flush_valves.csv"):
        return
    trials = gathered.trials
    lost = [at for at, place in enumerate(trials.places) if not (place or trials.targets[at].valve)]
    for piece in map(int, np.flatnonzero(np.isin(trials.target, lost))):
        target = trials.targets[int(trials.target[piece])]
        positions = [s.position for s in gathered.tables.valves_in.get(target.build or "", ())]
        if not positions:
            what = f"build '{target.build}' has no valve in build_valves.csv"
            mend = "list its valve there, or name the valve here"
        elif target.position:
            what = f"build '{target.build}' has no valve in the position '{target.position}'"
            mend = f"write one of: {', '.join(positions)}"
        elif trials.against[piece]:
            continue  # against, it counts for every valve of the tank
        else:
            what = f"build '{target.build}' has several valves, and the row does not say which"
            mend = f"fill in the position, one of: {', '.join(positions)}"
        yield Finding(path=f"{TABLES}/fitment.csv", line=trials.line(piece), what=what, mend=mend)


RULES = (
    Rule(
        "no-such-valve",
        "warning",
        "A seal sits on a valve: evidence that cannot be placed on one speaks for no seal.",
        no_such_valve,
    ),
)
