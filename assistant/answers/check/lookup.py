"""Whether a seal closes a flush valve, from the rows of the tables alone.

This is the checker's own reading of the tables; it shares nothing with the code that
chooses seals.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from assistant.answers.check.items import same
from assistant.records.rows import Build, Evidence, FlushValve, Row, Seal
from assistant.records.tables import Tables

Says = Literal["fits", "fits with change", "could fit", "does not fit", "unknown"]

OWN_VALVE = frozenset({"clip", "strap", "canister", "tower", "push", "thread"})
SPAN_MM = 3.0  # how far ears may stand from the pegs and still hook on
RING_MM = 2.0  # how far a ring may differ from the tube and still sit


@dataclass(frozen=True)
class Place:
    """A build, a position in it and the valve there; a valve alone has no build."""

    build: Build | None
    position: str | None
    valve: FlushValve | None


@dataclass(frozen=True)
class Verdict:
    """What the tables say of a seal in a place, by which rule, and the row that decides."""

    says: Says
    rule: str
    row: str | None
    changes: tuple[str, ...] = ()


def cited(row: Row) -> str:
    """A row as checks cite it: 'seals:…'."""
    return f"{row.file.removesuffix('.csv')}:{row.key}"


def verdict(tables: Tables, part_no: str, place: Place) -> Verdict:
    """The meaning of the tables for one seal in one place."""
    seal = tables.seals[part_no]
    valve = place.valve
    if valve is None:
        return Verdict("unknown", "no-valve", cited(place.build) if place.build else None)
    if rule := objection(seal, valve, place):
        return Verdict("does not fit", rule, _objecting(seal, valve, place, rule))
    rows, loose = evidence(tables, part_no, place)
    fits = [e for e in rows if e.verdict == "fits"]
    against = [e for e in rows if e.verdict == "does not fit"]
    changed = [e for e in rows if e.verdict == "fits with change"]
    if against and (fits or changed):
        return Verdict("unknown", "conflict", cited(against[0]))
    if against:
        return Verdict("does not fit", "evidence", cited(against[0]))
    changes = tuple(e.change for e in changed if e.change)
    if fits:
        return Verdict("fits", "evidence", cited(fits[0]), changes)
    if changes:
        return Verdict("fits with change", "evidence", cited(changed[0]), changes)
    if not rows and not loose and (handed_down := _inherited(tables, part_no, place)):
        return Verdict("fits", "replacement", cited(handed_down))
    if not rows and geometry_agrees(seal, valve):
        return Verdict("could fit", "geometry", cited(valve) if valve.valve else cited(seal))
    return Verdict("unknown", "no-evidence", None)


def evidence(tables: Tables, part_no: str, place: Place) -> tuple[list[Evidence], bool]:
    """The rows that speak for this place, and whether others lie on the same build.

    A row on a build that names no position speaks for the tank's only valve; where the tank
    has several, it only counts against, for all of them.
    """
    valve, build = place.valve, place.build
    rows: list[Evidence] = []
    if valve is not None:
        rows += tables.evidence_on_valve.get((valve.valve, part_no), ())
    loose = False
    if build is not None:
        several = len(tables.valves_in.get(build.build, ())) > 1
        for row in tables.evidence_on_build.get((build.build, part_no), ()):
            if row.position is None and several and row.verdict != "does not fit":
                loose = True
            elif row.position is None or row.position == place.position:
                rows.append(row)
    return rows, loose


def _inherited(tables: Tables, part_no: str, place: Place) -> Evidence | None:
    """Clean 'fits' evidence of a part whose number this one replaced, near or far."""
    seen, waiting = {part_no}, [part_no]
    while waiting:
        for older in tables.replaces.get(waiting.pop(), ()):
            if older.part_no in seen:
                continue
            seen.add(older.part_no)
            waiting.append(older.part_no)
            rows, _ = evidence(tables, older.part_no, place)
            fits = [e for e in rows if e.verdict == "fits"]
            if fits and not any(e.verdict == "does not fit" for e in rows):
                return fits[0]
    return None


def objection(seal: Seal, valve: FlushValve, place: Place) -> str | None:
    """The rule that speaks against a seal, whatever the evidence; empty cells never object."""
    if seal.opening_in and valve.opening_in and not same(seal.opening_in, valve.opening_in):
        return "opening"
    if seal.mount and valve.mount and (rule := _mount_objection(seal, valve)):
        return rule
    gallons = place.build.flush_full_gpf if place.build and place.position == "main" else None
    if gallons is not None:
        low, high = seal.flush_gpf_min, seal.flush_gpf_max
        if (low is not None and gallons < low) or (high is not None and gallons > high):
            return "volume"
    return None


def _mount_objection(seal: Seal, valve: FlushValve) -> str | None:
    shared = [way for way in seal.mount if way in valve.mount]
    if not shared:
        return "mount"
    found = [_way_objection(way, seal, valve) for way in shared]
    return None if None in found else found[0]


def _way_objection(way: str, seal: Seal, valve: FlushValve) -> str | None:
    if way == "pegs":
        if seal.ears and valve.pegs and seal.ears != valve.pegs:
            return "ears"
        if seal.ear_span_mm and valve.peg_span_mm:
            apart = abs(seal.ear_span_mm - valve.peg_span_mm)
            return "ear-span" if apart > SPAN_MM else None
    if way == "ring":
        if valve.overflow and valve.overflow != "round":
            return "overflow"
        if seal.ring_mm and valve.overflow_mm:
            return "ring-size" if abs(seal.ring_mm - valve.overflow_mm) > RING_MM else None
    if way in OWN_VALVE and valve.style and seal.style != valve.style:
        return "own-valve"
    return None


def geometry_agrees(seal: Seal, valve: FlushValve) -> bool:
    """Whether opening and hinge are all known and agree; no rule may be against the pair."""
    if not seal.opening_in or not valve.opening_in or not same(seal.opening_in, valve.opening_in):
        return False
    shared = [way for way in seal.mount if way in valve.mount]
    pegs = (
        "pegs" in shared
        and bool(seal.ears and valve.pegs and seal.ear_span_mm and valve.peg_span_mm)
        and _way_objection("pegs", seal, valve) is None
    )
    ring = (
        "ring" in shared
        and bool(valve.overflow and seal.ring_mm and valve.overflow_mm)
        and _way_objection("ring", seal, valve) is None
    )
    return pegs or ring


def _objecting(seal: Seal, valve: FlushValve, place: Place, rule: str) -> str:
    if rule == "volume" and place.build is not None:
        return cited(place.build)
    return cited(valve) if valve.valve else cited(seal)


def chain_reaches(tables: Tables, old: str, new: str) -> bool:
    """Whether the replacements of `old` lead, in one step or more, to `new`."""
    seen: set[str] = set()
    part: str | None = old
    while part is not None and part not in seen:
        seen.add(part)
        part = tables.seals[part].replaced_by
        if part == new:
            return True
    return False
