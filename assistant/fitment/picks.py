"""The seals that serve several scenarios alike, in the shop's order of preference."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from decimal import Decimal

from assistant.fitment.judge import Judgement, Verdict, fitting
from assistant.fitment.places import Scenario
from assistant.records.rows import Seal
from assistant.records.tables import Tables

DEAREST = Decimal(10**9)  # an unknown price comes last


@dataclass(frozen=True)
class Pick:
    """A seal that fits a position in every scenario of a group."""

    part_no: str
    position: str
    quantity: int | None
    judgements: tuple[Judgement, ...]

    @property
    def change(self) -> str | None:
        """The change under which it fits, the same in every scenario."""
        return self.judgements[0].change

    @property
    def basis(self) -> str:
        """evidence, or replacement where any scenario rests on it."""
        bases = {j.basis for j in self.judgements}
        return "replacement" if "replacement" in bases else "evidence"


@dataclass(frozen=True)
class Group:
    """Scenarios that take the same seals, and those seals by position, best first."""

    scenarios: tuple[Scenario, ...]
    picks: dict[str, tuple[Pick, ...]]

    @property
    def is_silent(self) -> bool:
        """Whether no seal is known for any position."""
        return not any(self.picks.values())

    @property
    def gaps(self) -> tuple[str, ...]:
        """Positions for which no seal is known."""
        return tuple(position for position, picks in self.picks.items() if not picks)


def is_in_stock(seal: Seal) -> bool:
    """On the shelf now: a stocked line, and not counted down to nothing."""
    return seal.status == "stocked" and seal.on_hand != 0


PREFERENCES: dict[str, Callable[[Seal], object]] = {
    "in stock": lambda seal: not is_in_stock(seal),
    "genuine": lambda seal: seal.genuine is not True,
    "compatible": lambda seal: seal.genuine is True,
    "price": lambda seal: DEAREST if seal.price is None else seal.price,
}


def group_of(tables: Tables, scenarios: Sequence[Scenario], first: Sequence[str]) -> Group:
    """What all the scenarios take alike; nothing where their positions differ."""
    if len({frozenset(s.positions) for s in scenarios}) != 1:
        return Group(tuple(scenarios), {})
    picks = {
        position: tuple(_shared(tables, scenarios, position, first))
        for position in scenarios[0].positions
    }
    return Group(tuple(scenarios), picks)


def _shared(
    tables: Tables, scenarios: Sequence[Scenario], position: str, first: Sequence[str]
) -> Iterable[Pick]:
    places = [scenario.at(position) for scenario in scenarios]
    found = [fitting(tables, place) for place in places]
    needed = {place.needed for place in places}
    quantity = needed.pop() if len(needed) == 1 else None
    shared = []
    for part_no in found[0]:
        judgements = tuple(fits[part_no] for fits in found if part_no in fits)
        # A change must be the same everywhere, or it could not be stated as one condition.
        if len(judgements) == len(found) and len({j.change for j in judgements}) == 1:
            shared.append(Pick(part_no, position, quantity, judgements))

    def order(pick: Pick) -> tuple[object, ...]:
        seal = tables.seals[pick.part_no]
        changed = pick.judgements[0].verdict is Verdict.WITH_CHANGE
        return (changed, *(PREFERENCES[word](seal) for word in first), pick.part_no)

    return sorted(shared, key=order)


def groups_of(tables: Tables, scenarios: Sequence[Scenario], first: Sequence[str]) -> list[Group]:
    """The fewest neighbouring groups that each have a seal in common, oldest builds first."""
    groups: list[Group] = []
    for scenario in sorted(scenarios, key=_age):
        alone = group_of(tables, [scenario], first)
        for at, group in enumerate(groups):
            if group.is_silent != alone.is_silent:
                continue
            joined = group_of(tables, [*group.scenarios, scenario], first)
            both_silent = group.is_silent and alone.is_silent
            if both_silent or (not joined.is_silent and joined.gaps == group.gaps == alone.gaps):
                groups[at] = joined
                break
        else:
            groups.append(alone)
    return groups


def _age(scenario: Scenario) -> tuple[int, str]:
    build = scenario.build
    if build is None:
        return 0, scenario.places[0].valve.valve if scenario.places else ""
    return build.made_from or 0, build.build
