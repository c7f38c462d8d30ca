"""Every listed build and every valve as rows and columns of numbers; made once for a counter.

A row is a build in one position: of a tank with two valves one seal is the one that is worn.
What a fact or a rule asks of builds, it asks once of each different kind of row.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from assistant.fitment.decide import Counter
from assistant.fitment.features import FEATURES
from assistant.fitment.judge import judge
from assistant.fitment.narrow import ABOUT_VALVE, allows
from assistant.fitment.places import MAIN, Place, Scenario, of_build, of_valve
from assistant.interview.columns import Column, Ways, Years, coded
from assistant.interview.information import Floats, Ints
from assistant.interview.sold import Seller, tank_of
from assistant.reading.facts import Fact, Interval
from assistant.records.cells import OPEN_FROM, OPEN_TO
from assistant.records.rows import Build

Marks = NDArray[np.bool_]

FIRST_YEAR = 1900  # no flush valve of the tables' kinds is older: common practice, no source

# Features of the valve, known of a valve that was put in later as well.
OF_VALVE = ("opening", "mount", "ears", "overflow", "hinge_width", "photograph")
# A number or a name that no build of the table has tells that the toilet is not listed.
NAMES = ("model", "model_no")


@dataclass(frozen=True)
class Kinds:
    """Rows that are alike in some respect: each row's kind, and one row of each."""

    of_row: Ints
    examples: tuple[Scenario, ...]

    @classmethod
    def by(cls, key: Callable[[Scenario], Hashable], scenarios: Sequence[Scenario]) -> Kinds:
        """The kinds that a key tells apart."""
        examples: dict[Hashable, tuple[int, Scenario]] = {}
        of_row = [examples.setdefault(key(s), (len(examples), s))[0] for s in scenarios]
        return cls(np.array(of_row, dtype=np.int64), tuple(s for _, s in examples.values()))

    def where(self, test: Callable[[Scenario], bool]) -> Marks:
        """The rows of which a test holds, asked once of each kind."""
        return np.array([test(s) for s in self.examples], dtype=np.bool_)[self.of_row]

    def values(self, read: Callable[[Scenario], Hashable | None]) -> tuple[Hashable | None, ...]:
        """What is read of each row, read once of each kind."""
        found = [read(s) for s in self.examples]
        return tuple(found[kind] for kind in self.of_row.tolist())


class Listed:
    """The listed hypotheses of a counter, without any fact."""

    def __init__(self, counter: Counter, this_year: int | None = None) -> None:
        self.counter = counter
        self.seller = Seller(counter)
        self._this_year = this_year or date.today().year
        self.tanks: list[Scenario] = []  # the whole tank of each row
        self.rows: list[Scenario] = []  # the one place of it, which is called main
        self.positions: list[str | None] = []  # `None` where the tank has but one
        weights = []
        for build in counter.tables.builds.values():
            tank = of_build(counter.tables, build)
            alone = len(tank.places) < 2
            for place in tank.places or (None,):
                self.tanks.append(tank)
                one = tank if place is None else replace(tank, places=(place,), any_position=True)
                self.rows.append(one)
                self.positions.append(None if alone or place is None else place.position)
                weights.append(tank.weight / max(1, len(tank.places)))
        self.weight: Floats = np.array(weights, dtype=np.float64)
        self.valves: list[Scenario] = [
            replace(of_valve(counter.tables, valve), any_position=True)
            for valve in counter.tables.valves.values()
        ]
        self._kinds: dict[str, Kinds] = {}
        self.sold: Ints = self.sold_with(None)
        self.valve_sold: Ints = self.valve_sold_with(None)

    # Kinds of rows

    def _alike(self, name: str) -> Kinds:
        if name not in self._kinds:
            key = {"valves": _valves, "years": _years, "shape": _shape, "any": _everything}[name]
            self._kinds[name] = Kinds.by(key, self.tanks)
        return self._kinds[name]

    @cached_property
    def _places(self) -> Kinds:
        """Rows in which the same is sold."""
        return Kinds.by(lambda s: tank_of(self.counter, s), self.rows)

    def allowed(self, fact: Fact) -> Marks:
        """The rows that a fact leaves possible, whatever it is told of."""
        kinds = self._alike(_ASKS.get(fact.name, "any"))
        return kinds.where(lambda tank: allows(tank, fact))

    def valves_allowed(self, fact: Fact) -> Marks:
        """The valves, put in later, that a fact leaves possible."""
        return np.array([allows(valve, fact) for valve in self.valves], dtype=np.bool_)

    def taking(self, part_no: str) -> tuple[Marks, Marks]:
        """The rows and the valves in which a part may sit now."""
        tables = self.counter.tables

        def takes(scenario: Scenario) -> bool:
            found = [judge(tables, part_no, place) for place in scenario.places]
            return any(j.is_fit or j.basis == "conflict" for j in found)

        valves = np.array([takes(valve) for valve in self.valves], dtype=np.bool_)
        return self._places.where(takes), valves

    # What is sold

    def sold_with(self, told: Interval | None) -> Ints:
        """For each row the number of what would be sold, where a flush volume was told."""
        numbers = [self.seller.number(s.flushing(told)) for s in self._places.examples]
        return np.array(numbers, dtype=np.int64)[self._places.of_row]

    def valve_sold_with(self, told: Interval | None) -> Ints:
        """The same for each valve."""
        numbers = [self.seller.number(valve.flushing(told)) for valve in self.valves]
        return np.array(numbers, dtype=np.int64)

    # Where valves sit

    @cached_property
    def tank_kinds(self) -> Ints:
        """For each row its kind of tank, -1 where it has no flush valve that could be replaced."""
        with_valve = (s.build.kind or "" if s.build and s.places else None for s in self.tanks)
        return coded(with_valve)[1]

    @cached_property
    def valves_by_kind(self) -> Floats:
        """For each kind of tank, how common each valve is in it; one in no build is so in all."""
        at = {v.places[0].valve.valve: n for n, v in enumerate(self.valves)}
        found = np.zeros((int(self.tank_kinds.max(initial=-1)) + 1, len(self.valves)))
        for row, kind, weight in zip(self.rows, self.tank_kinds, self.weight, strict=True):
            if kind >= 0:
                found[kind, at[row.places[0].valve.valve]] += weight
        found[:, found.sum(axis=0) == 0] = 1.0
        shares: Floats = found / found.sum(axis=1, keepdims=True)
        return shares

    # What would be answered

    @cached_property
    def brands(self) -> tuple[Hashable | None, ...]:
        """Each row's maker."""
        return tuple(tank.build.brand if tank.build else None for tank in self.tanks)

    @cached_property
    def row_of_build(self) -> Mapping[str, list[int]]:
        """The rows of each build."""
        found: dict[str, list[int]] = {}
        for at, tank in enumerate(self.tanks):
            if tank.build is not None:
                found.setdefault(tank.build.build, []).append(at)
        return found

    @cached_property
    def columns(self) -> Mapping[str, Column]:
        """Each question's column, by its id."""
        found: dict[str, Column] = {}
        read: dict[str, Callable[[Scenario], Hashable | None]] = {f.name: f.of for f in FEATURES}
        read |= {"made": self._span, "photograph": _seen, "brand": _brand}
        for name, of in read.items():
            if name in NAMES or name == "brand":
                values, rows = coded(of(tank) for tank in self.tanks)
                others = len(values)
                rows = np.where(rows < 0, others, rows)
                found[name] = Column(name, (*values, None), rows, others=others)
                continue
            cells = self._alike(_ASKS.get(name, "any")).values(of)
            if name not in OF_VALVE:
                kind = Years if name == "made" else Column
                found[name] = kind(name, *coded(cells))
                continue
            valves = [of(replace(v, places=(_in_main(v.places[0]),))) for v in self.valves]
            values, codes = coded((*cells, *valves))
            rows, of_valve = codes[: len(cells)], codes[len(cells) :]
            found[name] = (Ways if name == "mount" else Column)(name, values, rows, of_valve)
        found["position"] = Column("position", *coded(self.positions))
        return found

    def _span(self, scenario: Scenario) -> tuple[int, int] | None:
        """The years of a build, open ends cut at the first year there is and at this one."""
        build = scenario.build
        if build is None or (build.made_from is None and build.made_to is None):
            return None
        first = FIRST_YEAR if build.made_from in (None, OPEN_FROM) else build.made_from
        last = self._this_year if build.made_to in (None, OPEN_TO) else build.made_to
        low, high = max(first or 0, FIRST_YEAR), min(last or 0, self._this_year)
        return (low, high) if low <= high else (high, high)


def _brand(scenario: Scenario) -> str | None:
    return scenario.build.brand if scenario.build else None


def _in_main(place: Place) -> Place:
    return replace(place, position=MAIN)


def _seen(scenario: Scenario) -> Hashable | None:
    """What a person sees of the valves in a photograph."""
    valves = tuple((p.valve.mount, p.valve.opening_in, p.valve.pegs) for p in scenario.places)
    return valves or None


def _valves(scenario: Scenario) -> Hashable:
    return tuple((p.position, p.valve.valve, p.needed) for p in scenario.places)


def _years(scenario: Scenario) -> Hashable:
    build = scenario.build
    return build and (build.made_from, build.made_to)


def _shape(scenario: Scenario) -> Hashable:
    build: Build | None = scenario.build
    return build and (build.kind, build.pieces, build.flush_full_gpf, build.flush_reduced_gpf)


def _everything(scenario: Scenario) -> Hashable:
    return _valves(scenario), _years(scenario), _shape(scenario)


# By which part of a toilet each fact is judged; one that is not named here is judged by all.
_ASKS = {
    **dict.fromkeys((*ABOUT_VALVE, *OF_VALVE, "seals_in_tank"), "valves"),
    **dict.fromkeys(("made", "bought"), "years"),
    **dict.fromkeys(("flush", "flush_reduced", "pieces", "tank_kind"), "shape"),
}
