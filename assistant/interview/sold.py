"""What would be sold to a toilet: two toilets that get the same need not be told apart."""

from __future__ import annotations

from collections.abc import Hashable
from dataclasses import dataclass
from functools import cached_property

from assistant.fitment.decide import Counter
from assistant.fitment.picks import group_of
from assistant.fitment.places import Scenario


@dataclass(frozen=True)
class SoldAt:
    """For one position: the first choice, and every seal that fits with the change it needs.

    `first` is '' where no seal is known.
    """

    position: str
    first: str
    seals: tuple[tuple[str, str], ...] = ()  # part number, change or ''; by part number


@dataclass(frozen=True)
class Sold:
    """What would be sold, position by position. Without any seal known, one place is as another."""

    at: tuple[SoldAt, ...] = ()

    @property
    def firsts(self) -> tuple[str, ...]:
        """The part numbers that would be handed over."""
        return tuple(place.first for place in self.at if place.first)

    @cached_property
    def parts(self) -> tuple[str, ...]:
        """Every part number that fits somewhere, in order."""
        return tuple(sorted({part for place in self.at for part, _ in place.seals}))


NOTHING = Sold()


def sold_to(counter: Counter, scenario: Scenario) -> Sold:
    """What the shop would sell for a scenario, by its own order of preference."""
    if not scenario.places:
        return NOTHING
    found = []
    for position, picks in group_of(counter.tables, [scenario], counter.first).picks.items():
        seals = tuple(sorted((pick.part_no, pick.change or "") for pick in picks))
        found.append(SoldAt(position, picks[0].part_no if picks else "", seals))
    sold = Sold(tuple(sorted(found, key=lambda at: at.position)))
    return sold if sold.firsts else NOTHING


def tank_of(counter: Counter, scenario: Scenario) -> Hashable:
    """What of a scenario decides what is sold: its valves, its flush, and evidence on itself.

    A hundred thousand builds hold few different tanks; each is judged once.
    """
    build = scenario.build
    own = build.build if build and build.build in counter.tables.parts_tried_on_build else None
    places = tuple((p.position, p.valve.valve, p.alone, p.told_gpf) for p in scenario.places)
    return places, scenario.any_position, build and build.flush_full_gpf, own


class Seller:
    """Numbers every different thing that would be sold; made once, used for every message."""

    def __init__(self, counter: Counter) -> None:
        self.counter = counter
        self.solds: list[Sold] = [NOTHING]  # number 0 is nothing known
        self._number: dict[Sold, int] = {NOTHING: 0}
        self._of_tank: dict[Hashable, int] = {}

    def number(self, scenario: Scenario) -> int:
        """The number of what would be sold for a scenario."""
        tank = tank_of(self.counter, scenario)
        if tank not in self._of_tank:
            sold = sold_to(self.counter, scenario)
            if sold not in self._number:
                self._number[sold] = len(self.solds)
                self.solds.append(sold)
            self._of_tank[tank] = self._number[sold]
        return self._of_tank[tank]
