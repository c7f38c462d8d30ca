"""Evidence that says yes and no of one seal in one place."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator

import numpy as np

from assistant.linting.finding import Finding, Rule
from assistant.linting.gathered import TABLES, Gathered
from assistant.linting.trials import Trials
from assistant.linting.wording import some


def conflicting(gathered: Gathered) -> Iterator[Finding]:
    """Each seal and valve, or seal and build, of which both is written."""
    trials = gathered.trials
    pieces = np.flatnonzero(np.isin(trials.pair, trials.at_odds))
    groups: dict[int, list[int]] = defaultdict(list)
    for piece in pieces.tolist():
        groups[int(trials.pair[piece])].append(piece)
    for group in (*groups.values(), *_unplaced(trials)):
        yield _told(trials, group)


def _unplaced(trials: Trials) -> Iterator[list[int]]:
    """'Does not fit' on a build, at no position, speaks against the seal at each of them."""
    whole = {t.build: at for at, t in enumerate(trials.targets) if t.build and not t.position}
    parts_of = {at: t.build for at, t in enumerate(trials.targets) if t.build and t.position}
    if not whole or not parts_of:
        return
    against: dict[tuple[str | None, int], list[int]] = defaultdict(list)
    for piece in np.flatnonzero(
        trials.against & np.isin(trials.target, [*whole.values()])
    ).tolist():
        build = trials.targets[int(trials.target[piece])].build
        against[build, int(trials.part[piece])].append(piece)
    speak: dict[tuple[int, int], list[int]] = defaultdict(list)
    for piece in np.flatnonzero(~trials.against & np.isin(trials.target, [*parts_of])).tolist():
        speak[int(trials.target[piece]), int(trials.part[piece])].append(piece)
    for (target, part), pieces in speak.items():
        if no := against.get((parts_of[target], part)):
            yield sorted([*pieces, *no])


def _told(trials: Trials, group: list[int]) -> Finding:
    against = [piece for piece in group if trials.against[piece]]
    speak = [piece for piece in group if not trials.against[piece]]
    target = max((trials.targets[int(trials.target[piece])] for piece in group), key=_fullness)
    part = trials.parts[int(trials.part[group[0]])]
    yes, no = (_say([trials.name(piece) for piece in pieces]) for pieces in (speak, against))
    return Finding(
        path=f"{TABLES}/fitment.csv",
        line=trials.line(group[-1]),
        what=f"{yes} that '{part}' fits {target}, and {no} that it does not",
        mend="find out which is right, as until then no answer names it there",
    )


def _say(names: list[str]) -> str:
    return f"{some(names)} {'says' if len(names) == 1 else 'say'}"


def _fullness(target: object) -> int:  # the longer name says the position too
    return len(str(target))


RULES = (
    Rule(
        "conflicting-evidence",
        "warning",
        "Evidence that contradicts itself proves nothing; often a valve was replaced in one house.",
        conflicting,
    ),
)
