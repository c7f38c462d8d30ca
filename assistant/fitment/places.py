"""A place: one flush valve, in one position of one build (or of a toilet nobody named)."""

from __future__ import annotations

from dataclasses import dataclass, replace

from assistant.reading.facts import Interval
from assistant.records.rows import Build, FlushValve
from assistant.records.tables import Tables

MAIN = "main"


@dataclass(frozen=True)
class Place:
    """Where a seal would sit. `alone` is false where the tank has several valves."""

    valve: FlushValve
    build: Build | None = None
    position: str = MAIN
    needed: int | None = 1
    alone: bool = True
    told_gpf: Interval | None = None  # the flush as told, where the table does not know it


@dataclass(frozen=True)
class Scenario:
    """One way the customer's tank may be: a listed build, or a valve reached by an old part.

    A build without a listed valve (pressure-assisted, or simply not known) has no places.
    """

    places: tuple[Place, ...]
    build: Build | None = None
    any_position: bool = False  # one valve, spoken of whatever its position is called

    @property
    def positions(self) -> tuple[str, ...]:
        """The positions of its places, in the table's order."""
        return (MAIN,) if self.any_position else tuple(place.position for place in self.places)

    def at(self, position: str) -> Place:
        """The place in a position; the only place where there is one."""
        if len(self.places) == 1:
            return self.places[0]
        return next(place for place in self.places if place.position == position)

    def flushing(self, told: Interval | None) -> Scenario:
        """The same with the flush volume as told, for builds whose own is not known."""
        if told is None or (self.build and self.build.flush_full_gpf is not None):
            return self
        return replace(self, places=tuple(replace(p, told_gpf=told) for p in self.places))

    @property
    def weight(self) -> float:
        """How common it is: the table's relative sales, 1 where they are not known."""
        return self.build.sold or 1.0 if self.build else 1.0


def of_build(tables: Tables, build: Build) -> Scenario:
    """The scenario of one listed build."""
    sits = tables.valves_in.get(build.build, ())
    return Scenario(
        tuple(
            Place(tables.valves[s.valve], build, s.position, s.seals_needed, len(sits) == 1)
            for s in sits
        ),
        build,
    )


def of_valve(tables: Tables, valve: FlushValve) -> Scenario:
    """The scenario of a valve in a toilet that nobody named.

    Position and count are told where every listed build with this valve agrees on them.
    """
    sits = tables.builds_with.get(valve.valve, ())
    positions = {s.position for s in sits}
    needed = {s.seals_needed for s in sits}
    return Scenario(
        (
            Place(
                valve,
                position=positions.pop() if len(positions) == 1 else MAIN,
                needed=needed.pop() if len(needed) == 1 else None,
            ),
        )
    )
