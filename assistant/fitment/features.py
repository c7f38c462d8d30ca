"""What tells scenarios apart, and can be put as a condition or asked as a question.

A feature's name is the id of its row in questions.csv, where wording and ease are kept.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Sequence
from dataclasses import dataclass

from assistant.fitment.picks import Group
from assistant.fitment.places import MAIN, Scenario
from assistant.records.cells import OPEN_FROM, OPEN_TO
from assistant.records.rows import FlushValve

Years = tuple[int, int]


@dataclass(frozen=True)
class Feature:
    """A name and how a scenario's value is read; `None` where the table does not know it."""

    name: str
    of: Callable[[Scenario], Hashable | None]


@dataclass(frozen=True)
class Condition:
    """The values of a feature that select a group."""

    feature: str
    values: tuple[Hashable, ...]


def _years(scenario: Scenario) -> Years | None:
    build = scenario.build
    if build is None or build.made_from is None or build.made_to is None:
        return None
    return build.made_from, build.made_to


def _valve(read: Callable[[FlushValve], Hashable | None]) -> Callable[[Scenario], Hashable | None]:
    def of(scenario: Scenario) -> Hashable | None:
        mains = [place.valve for place in scenario.places if place.position == MAIN]
        return read(mains[0]) if len(mains) == 1 else None

    return of


FEATURES: tuple[Feature, ...] = (
    Feature("model", lambda s: s.build.full_name if s.build else None),
    Feature("model_no", lambda s: (s.build.tank_mark or s.build.model_no) if s.build else None),
    Feature("made", _years),
    Feature("pieces", lambda s: s.build.pieces if s.build else None),
    Feature("flush", lambda s: s.build.flush_full_gpf if s.build else None),
    Feature("tank_kind", lambda s: s.build.kind if s.build else None),
    Feature("opening", _valve(lambda v: v.opening_in)),
    Feature("mount", _valve(lambda v: v.mount or None)),
    Feature("ears", _valve(lambda v: v.pegs)),
    Feature("overflow", _valve(lambda v: None if v.overflow == "none" else v.overflow)),
    Feature("hinge_width", _valve(lambda v: v.peg_span_mm)),
)


def values(feature: Feature, scenarios: Sequence[Scenario]) -> tuple[Hashable, ...] | None:
    """The different values among scenarios, or `None` where any is not known."""
    found = [feature.of(s) for s in scenarios]
    if None in found:
        return None
    different = tuple(dict.fromkeys(v for v in found if v is not None))
    return _runs(different) if feature.name == "made" else different


def separates(feature: Feature, groups: Sequence[Group]) -> bool:
    """Whether knowing the feature would tell every group from every other."""
    found = [values(feature, group.scenarios) for group in groups]
    if any(v is None for v in found):
        return False
    for at, mine in enumerate(found):
        for other in found[at + 1 :]:
            if any(_overlap(feature.name, a, b) for a in mine or () for b in other or ()):
                return False
    return True


def _overlap(name: str, a: Hashable, b: Hashable) -> bool:
    if isinstance(a, tuple) and isinstance(b, tuple):
        if name == "made":
            return bool(a[0] <= b[1] and b[0] <= a[1])
        return bool({*a} & {*b})
    return a == b


def _runs(years: Sequence[Hashable]) -> tuple[Hashable, ...]:
    """Year ranges with adjoining ones joined."""
    runs: list[Years] = []
    for low, high in sorted(y for y in years if isinstance(y, tuple)):
        if runs and low <= runs[-1][1] + 1:
            runs[-1] = (runs[-1][0], max(high, runs[-1][1]))
        else:
            runs.append((low, high))
    return tuple(runs)


def is_open(years: Years) -> tuple[bool, bool]:
    """Whether a range is open at its start and at its end."""
    return years[0] == OPEN_FROM, years[1] == OPEN_TO
