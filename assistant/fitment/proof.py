"""What the evidence says of a seal in a place, before any rule."""

from __future__ import annotations

from dataclasses import dataclass

from assistant.fitment.places import Place
from assistant.records.rows import Evidence
from assistant.records.tables import Tables


@dataclass(frozen=True)
class Proof:
    """Evidence for, for with a change, and against a seal in a place."""

    fits: tuple[Evidence, ...] = ()
    with_change: tuple[Evidence, ...] = ()
    against: tuple[Evidence, ...] = ()

    @property
    def is_empty(self) -> bool:
        """Whether nobody ever wrote anything down."""
        return not (self.fits or self.with_change or self.against)

    @property
    def conflicts(self) -> bool:
        """Whether some evidence says yes and some says no."""
        return bool(self.against and (self.fits or self.with_change))


def proof(tables: Tables, part_no: str, place: Place) -> Proof:
    """The seal's own evidence on the valve and on the build.

    Evidence on a build that names no position, in a tank of several valves, cannot be
    placed: it counts against, never for.
    """
    rows = list(tables.evidence_on_valve.get((place.valve.valve, part_no), ()))
    if place.build is not None:
        for row in tables.evidence_on_build.get((place.build.build, part_no), ()):
            placed = row.position == place.position or (row.position is None and place.alone)
            unplaced_no = row.position is None and row.verdict == "does not fit"
            if placed or unplaced_no:
                rows.append(row)
    return Proof(
        tuple(r for r in rows if r.verdict == "fits"),
        tuple(r for r in rows if r.verdict == "fits with change"),
        tuple(r for r in rows if r.verdict == "does not fit"),
    )


def forerunners(tables: Tables, part_no: str) -> tuple[str, ...]:
    """Every number that was replaced, step by step, by this one."""
    found: dict[str, None] = {}
    todo = [part_no]
    while todo:
        for seal in tables.replaces.get(todo.pop(), ()):
            if seal.part_no not in found and seal.part_no != part_no:
                found[seal.part_no] = None
                todo.append(seal.part_no)
    return tuple(found)


def successors(tables: Tables, part_no: str) -> tuple[str, ...]:
    """The numbers that came after this one, in order."""
    found: dict[str, None] = {}
    at = tables.seals[part_no].replaced_by
    while at is not None and at not in found and at != part_no:
        found[at] = None
        at = tables.seals[at].replaced_by
    return tuple(found)


def inherited(tables: Tables, part_no: str, place: Place) -> tuple[Evidence, ...]:
    """Evidence that a forerunner plainly fits, for a seal of which nothing is written here.

    A replacement is the maker's word that the new part does the old one's work. It speaks
    only where the new part has no evidence of its own and the old one none against it.
    """
    for old in forerunners(tables, part_no):
        earlier = proof(tables, old, place)
        if earlier.fits and not earlier.against:
            return earlier.fits
    return ()
