"""Small tables of invented toilets and seals: say what matters, the rest has a plain default.

    tables(valve("gate-2"), seal("UQ-10"), says("fits", "UQ-10", valve="gate-2"))

A valve or a seal is made by its style, which brings how it holds and a size that agrees with
the other of that style; columns given by name replace the defaults. Nothing here is real.
"""

from __future__ import annotations

from dataclasses import fields, replace
from pathlib import Path
from typing import Any, TypeVar

from assistant.fitment.decide import Counter, counter_for
from assistant.fitment.places import Place, Scenario, of_build
from assistant.records.rows import (
    TABLES,
    Brand,
    Build,
    BuildValve,
    Evidence,
    FlushValve,
    Question,
    Row,
    Seal,
    Style,
)
from assistant.records.tables import Tables, check_references

R = TypeVar("R", bound=Row)

MAKER, OTHER_MAKER = "Ulmbraith", "Vosquith"
FIRST = ("in stock", "compatible", "price")

PEGGED, RING, BALL, FOAM = "pegged-flapper", "ring-flapper", "tank-ball", "foam-flapper"
CLIP, STRAP, CANISTER, TOWER = "clip-flapper", "strap-flapper", "canister-seal", "tower-seal"
PUSHED, THREADED = "tilt-gasket-push", "tilt-gasket-thread"

# How a valve of each style holds its seal, and how a seal of it holds on.
_VALVES: dict[str, dict[str, Any]] = {
    PEGGED: {"opening_in": 2.0, "mount": ("pegs",), "peg_span_mm": 80.0, "pegs": "up"},
    FOAM: {"opening_in": 2.0, "mount": ("pegs",), "peg_span_mm": 91.0, "pegs": "up"},
    RING: {"opening_in": 2.0, "mount": ("ring",), "pegs": "none"},
    BALL: {"opening_in": 2.0, "mount": ("wire", "ring"), "pegs": "none"},
    CLIP: {"opening_in": 2.0, "mount": ("clip",), "pegs": "none"},
    STRAP: {"opening_in": 2.0, "mount": ("strap",), "pegs": "none"},
    CANISTER: {"opening_in": 3.25, "mount": ("canister",), "pegs": "none"},
    TOWER: {"opening_in": 2.5, "mount": ("tower",), "pegs": "none"},
    PUSHED: {"opening_in": 3.0, "mount": ("push",), "pegs": "none"},
    THREADED: {"opening_in": 3.0, "mount": ("thread",), "pegs": "none"},
}
_TUBE = {"overflow": "round", "overflow_mm": 28.0}
_NO_TUBE = {"overflow": "none", "overflow_mm": None}
_SEALS: dict[str, dict[str, Any]] = {
    PEGGED: {"opening_in": 2.0, "mount": ("pegs",), "ear_span_mm": 80.0, "ears": "up"},
    FOAM: {"opening_in": 2.0, "mount": ("pegs",), "ear_span_mm": 91.0, "ears": "up"},
    RING: {"opening_in": 2.0, "mount": ("ring",), "ears": "none", "ring_mm": 28.0},
    BALL: {"opening_in": 2.0, "mount": ("wire",), "ears": "none"},
    CLIP: {"opening_in": 2.0, "mount": ("clip",), "ears": "none"},
    STRAP: {"opening_in": 2.0, "mount": ("strap",), "ears": "none"},
    CANISTER: {"opening_in": 3.25, "mount": ("canister",), "ears": "none"},
    TOWER: {"opening_in": 2.5, "mount": ("tower",), "ears": "none"},
    PUSHED: {"opening_in": 3.0, "mount": ("push",), "ears": "none"},
    THREADED: {"opening_in": 3.0, "mount": ("thread",), "ears": "none"},
}


def row(kind: type[R], /, **columns: Any) -> R:
    """A row of a table with every column that is not given left empty."""
    empty = {field.name: field.metadata["empty"] for field in fields(kind)}
    return kind(**(empty | columns))


def valve(name: str = "gate-2", style: str = PEGGED, **columns: Any) -> FlushValve:
    """A flush valve of a style."""
    tube = _NO_TUBE if style in (CANISTER, TOWER, PUSHED, THREADED) else _TUBE
    return row(FlushValve, **({"valve": name, "style": style} | tube | _VALVES[style] | columns))


def seal(part_no: str = "UQ-10", style: str = PEGGED, **columns: Any) -> Seal:
    """A seal of a style, in stock."""
    shelf = {"name": f"{style} {part_no}", "status": "stocked", "on_hand": 5, "genuine": False}
    return row(Seal, **({"part_no": part_no, "style": style} | shelf | _SEALS[style] | columns))


def build(name: str = "tovelin-a", **columns: Any) -> Build:
    """A build of the model Tovelin, a gravity tank, years not known."""
    usual = {"brand": MAKER, "model": "Tovelin", "kind": "gravity"}
    return row(Build, **({"build": name} | usual | columns))


def sits(
    valve: str = "gate-2", build: str = "tovelin-a", position: str = "main", needed: int | None = 1
) -> BuildValve:
    """That a valve sits in a build."""
    return row(BuildValve, build=build, position=position, valve=valve, seals_needed=needed)


def says(verdict: str, part_no: str = "UQ-10", **columns: Any) -> Evidence:
    """A piece of evidence, on the valve 'gate-2' unless a valve or a build is given.

    `tables` gives it its id.
    """
    if "valve" not in columns and "build" not in columns:
        columns["valve"] = "gate-2"
    return row(Evidence, evidence="", part_no=part_no, verdict=verdict, **columns)


def question(name: str, ease: float) -> Question:
    """A question of the interview and how easily it is answered."""
    return row(Question, question=name, text=f"What about {name}?", why="It decides.", ease=ease)


def tables(*rows: Row) -> Tables:
    """Sound tables of the rows, with the makers and styles that they name."""
    given: dict[type[Row], list[Row]] = {kind: [] for kind in TABLES}
    for one in rows:
        if isinstance(one, Evidence):
            one = replace(one, evidence=f"E{len(given[Evidence]) + 1:03}")
        if isinstance(one, FlushValve | Seal):
            given[Style].append(row(Style, style=one.style, plain_name=one.style))
        if isinstance(one, Build):
            given[Brand].append(row(Brand, brand=one.brand))
        given[type(one)].append(one)
    read = {kind.file: {one.key: one for one in found} for kind, found in given.items()}
    check_references(Path("invented"), read)
    return Tables.of(read)


def counter(*rows: Row) -> Counter:
    """A counter over `tables` of the rows."""
    return counter_for(tables(*rows), FIRST)


def scenario(of: Tables, name: str = "tovelin-a") -> Scenario:
    """The scenario of a build."""
    return of_build(of, of.builds[name])


def place(of: Tables, name: str = "tovelin-a", position: str = "main") -> Place:
    """The place of a position in a build."""
    return scenario(of, name).at(position)
