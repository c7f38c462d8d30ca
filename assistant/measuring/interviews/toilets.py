"""The toilets that truly stand in simulated customers' bathrooms.

A listed one is a build of the tables. In a replaced one another listed valve sits in a listed
build. One not listed has a valve put together from several of the tables', as none of them is.
"""

from __future__ import annotations

import random
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from assistant.records.cells import OPEN_FROM, OPEN_TO
from assistant.records.rows import Build, FlushValve
from assistant.records.tables import Tables

LISTED, NOT_LISTED, REPLACED = "listed", "not listed", "replaced"
EARLIEST, LATEST = 1900, 2026  # where the table leaves an end of a build's years open
DRAWS = 50  # how often a new combination is tried for before it is given up


@dataclass(frozen=True, kw_only=True)
class Toilet:
    """A toilet as it is: what the tables say of it or would say, and where its worn seal sits."""

    name: str  # the build under which what is true of it is looked up
    group: str
    build: Build
    valves: Mapping[str, FlushValve]  # by position
    worn: str
    year: int | None  # in which it was made
    maker_listed: bool = True

    @property
    def valve(self) -> FlushValve | None:
        """The valve whose seal is worn; none in a tank of which no valve is known."""
        return self.valves.get(self.worn)


def listed(tables: Tables, seed: int) -> list[Toilet]:
    """One toilet for every build."""
    return [
        _of(tables, build, random.Random(f"{seed}/{build.build}"))
        for build in tables.builds.values()
    ]


def replaced(tables: Tables, count: int, seed: int) -> list[Toilet]:
    """Listed builds of one valve with another listed valve in its place."""
    chance = random.Random(f"{seed}/{REPLACED}")
    single = [b for b in tables.builds.values() if len(tables.valves_in.get(b.build, ())) == 1]
    found: list[Toilet] = []
    while single and len(tables.valves) > 1 and len(found) < count:
        toilet = _of(tables, chance.choice(single), chance)
        others = [v for v in tables.valves.values() if v != toilet.valve]
        name = f"{REPLACED}-{len(found) + 1}"
        valves = {toilet.worn: chance.choice(others)}
        found.append(replace(toilet, name=name, group=REPLACED, valves=valves))
    return found


def not_listed(tables: Tables, count: int, seed: int) -> list[Toilet]:
    """Toilets of which no table has the name, half of them by a listed maker."""
    chance = random.Random(f"{seed}/{NOT_LISTED}")
    single = [b for b in tables.builds.values() if len(tables.valves_in.get(b.build, ())) == 1]
    found: list[Toilet] = []
    for number in range(1, count + 1) if single else ():
        valve = _combined(list(tables.valves.values()), chance, f"combined-{number}")
        if valve is None:
            break
        like = _of(tables, chance.choice(single), chance)
        known = chance.random() < 0.5
        build = replace(
            like.build,
            build=f"{NOT_LISTED} {number}",
            brand=like.build.brand if known else f"Maker {number}",
            model=f"Model {number}",
            model_no=f"N {number}",
            tank_mark=None,
        )
        found.append(
            replace(
                like,
                name=build.build,
                group=NOT_LISTED,
                build=build,
                valves={like.worn: valve},
                maker_listed=known,
            )
        )
    return found


def _of(tables: Tables, build: Build, chance: random.Random) -> Toilet:
    valves = {s.position: tables.valves[s.valve] for s in tables.valves_in.get(build.build, ())}
    return Toilet(
        name=build.build,
        group=LISTED,
        build=build,
        valves=valves,
        worn=chance.choice(sorted(valves)) if valves else "",
        year=_year(build, chance),
    )


def _year(build: Build, chance: random.Random) -> int | None:
    if build.made_from is None or build.made_to is None:
        return None
    first = EARLIEST if build.made_from == OPEN_FROM else build.made_from
    last = LATEST if build.made_to == OPEN_TO else build.made_to
    return chance.randint(min(first, last), max(first, last))


def _combined(valves: Sequence[FlushValve], chance: random.Random, name: str) -> FlushValve | None:
    """How one holds, as wide as another, with the pegs of a third: as none of them is."""
    known = {_looks(valve) for valve in valves}
    for _ in range(DRAWS):
        first = chance.choice(valves)
        alike = list(_held_alike(valves, first))
        made = replace(
            first,
            valve=name,
            opening_in=chance.choice(valves).opening_in,
            peg_span_mm=chance.choice(alike).peg_span_mm,
            pegs=chance.choice(alike).pegs,
            note=None,
        )
        if _looks(made) not in known:
            return made
    return None


def _held_alike(valves: Sequence[FlushValve], one: FlushValve) -> Iterator[FlushValve]:
    return (valve for valve in valves if valve.mount == one.mount)


def _looks(valve: FlushValve) -> tuple[object, ...]:
    return valve.opening_in, valve.mount, valve.peg_span_mm, valve.pegs, valve.overflow
