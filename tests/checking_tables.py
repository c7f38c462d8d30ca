"""A small invented shop for the tests of the answer checker: two makers, eight models.

Every name and number here is made up. What each seal does on each valve is written out by
hand in `TRUTH`, so that tests need not ask the code under test.
"""

from __future__ import annotations

import dataclasses
from decimal import Decimal
from typing import Any, TypeVar

from assistant.records.cells import OPEN_FROM, OPEN_TO
from assistant.records.rows import (
    Brand,
    Build,
    BuildValve,
    Evidence,
    FlushValve,
    Row,
    Seal,
    Style,
)
from assistant.records.tables import Tables

R = TypeVar("R", bound=Row)


def row(table: type[R], /, **cells: Any) -> R:
    """A row with every cell empty that is not given."""
    columns = dataclasses.fields(table)  # type: ignore[arg-type]
    empty = {column.name: column.metadata["empty"] for column in columns}
    return table(**{**empty, **cells})


def by_key(*rows: R) -> dict[str, R]:
    """Rows by their id."""
    return {r.key: r for r in rows}


STYLES = by_key(
    row(Style, style="pegged-flapper", plain_name="flapper on pegs", aliases=("flapper", "flap")),
    row(Style, style="ring-flapper", plain_name="flapper with a ring", aliases=("ring flapper",)),
    row(Style, style="tank-ball", plain_name="tank ball", aliases=("ball",)),
    row(Style, style="canister", plain_name="canister seal", aliases=("ring gasket",)),
)

BRANDS = by_key(
    row(Brand, brand="Zendrake", aliases=("Zendrak Works",)),
    row(Brand, brand="Hulmorth", aliases=("HMW",)),
)

PEGS, RING, WIRE, CANISTER = ("pegs",), ("ring",), ("wire",), ("canister",)

VALVES = by_key(
    row(FlushValve, valve="p2u", style="pegged-flapper", opening_in=2.0, mount=PEGS,
        peg_span_mm=95.0, pegs="up", overflow="square", overflow_mm=30.0),
    row(FlushValve, valve="p2d", style="pegged-flapper", opening_in=2.0, mount=PEGS,
        peg_span_mm=95.0, pegs="down", overflow="square"),
    row(FlushValve, valve="p3u", style="pegged-flapper", opening_in=3.0, mount=PEGS,
        peg_span_mm=108.0, pegs="up"),
    row(FlushValve, valve="r2", style="ring-flapper", opening_in=2.0, mount=RING, pegs="none",
        overflow="round", overflow_mm=28.0),
    row(FlushValve, valve="b2", style="tank-ball", opening_in=2.0, mount=WIRE, pegs="none",
        overflow="round", overflow_mm=27.0),
    row(FlushValve, valve="c3", style="canister", opening_in=3.0, mount=CANISTER),
    row(FlushValve, valve="c2", style="canister", opening_in=2.0, mount=CANISTER),
    row(FlushValve, valve="blank", style="pegged-flapper", mount=PEGS),
)  # fmt: skip

BUILDS = by_key(
    row(Build, build="zt1", brand="Zendrake", model="Tolver", pieces=2, flush_full_gpf=5.0,
        made_from=1971, made_to=1985, model_no="Z71"),
    row(Build, build="zt2", brand="Zendrake", model="Tolver", pieces=2, flush_full_gpf=3.5,
        made_from=1986, made_to=1993, model_no="Z86", tank_mark="4102"),
    row(Build, build="zt3", brand="Zendrake", model="Tolver", pieces=2, flush_full_gpf=1.6,
        made_from=1994, made_to=OPEN_TO, model_no="Z94", tank_mark="4103"),
    row(Build, build="zn1", brand="Zendrake", model="Tolvern", pieces=2, flush_full_gpf=3.5,
        made_from=1980, made_to=1999, model_no="Z80"),
    row(Build, build="ht1", brand="Hulmorth", model="Tolver", pieces=2, flush_full_gpf=5.0,
        made_from=OPEN_FROM, made_to=1990),
    row(Build, build="ht2", brand="Hulmorth", model="Tolver", pieces=2, flush_full_gpf=3.5,
        made_from=1991, made_to=2004),
    row(Build, build="hq1", brand="Hulmorth", model="Quisten", kind="dual-flush", pieces=1,
        flush_full_gpf=1.6, flush_reduced_gpf=1.1, made_from=1998, made_to=OPEN_TO),
    row(Build, build="hb1", brand="Hulmorth", model="Braskel", kind="pressure", pieces=2,
        flush_full_gpf=1.6, made_from=1990, made_to=2006),
    row(Build, build="zo1", brand="Zendrake", model="Ovellan", pieces=2, flush_full_gpf=3.5,
        made_from=1975, made_to=1988),
    row(Build, build="zo2", brand="Zendrake", model="Ovellan", pieces=1, flush_full_gpf=1.6,
        made_from=1975, made_to=1988),
    row(Build, build="zd1", brand="Zendrake", model="Dimmock Vale", pieces=2, made_from=1990,
        made_to=2000),
    row(Build, build="zp1", brand="Zendrake", model="Pallowick", pieces=2, flush_full_gpf=5.0,
        made_from=1965, made_to=1980, aliases=("Pallow",)),
)  # fmt: skip

SITS = {
    "zt1": {"main": "r2"}, "zt2": {"main": "p2u"}, "zt3": {"main": "p3u"}, "zn1": {"main": "p2d"},
    "ht1": {"main": "b2"}, "ht2": {"main": "p2u"}, "hq1": {"main": "c3", "rinse": "c2"},
    "hb1": {}, "zo1": {"main": "p2u"}, "zo2": {"main": "p3u"}, "zd1": {"main": "blank"},
    "zp1": {"main": "b2"},
}  # fmt: skip
SEALS_NEEDED = {("zp1", "main"): 2}

BUILD_VALVES = by_key(
    *(
        row(BuildValve, build=build, position=position, valve=valve,
            seals_needed=SEALS_NEEDED.get((build, position), 1))
        for build, valves in SITS.items()
        for position, valve in valves.items()
    )
)  # fmt: skip


def _flapper(part_no: str, **cells: Any) -> Seal:
    usual: dict[str, Any] = {
        "name": f"flapper {part_no}", "style": "pegged-flapper", "opening_in": 2.0, "mount": PEGS,
        "ears": "up", "status": "stocked", "material": "rubber", "colour": "black", "pack": 1,
    }  # fmt: skip
    return row(Seal, part_no=part_no, **{**usual, **cells})


SEALS = by_key(
    _flapper("SL-2041", name="Zendrake float flapper", ear_span_mm=95.0, float=True,
             adjustable=True, flush_gpf_min=3.5, flush_gpf_max=5.0, material="silicone",
             colour="red", pack=2, price=Decimal("6.40"), cost=Decimal("2.10"), on_hand=12,
             maker="Zendrake", genuine=True, maker_no=("20-417",), link="/parts/sl-2041"),
    _flapper("SL-2044", ear_span_mm=94.0, price=Decimal("4.90"), cost=Decimal("1.35"), on_hand=3,
             maker="Norbeck Rubber", genuine=False, maker_no=("NB44",), float=False),
    _flapper("SL-2046", ear_span_mm=108.0, price=Decimal("4.75"), on_hand=0),
    _flapper("SL-2050", ear_span_mm=95.0, ears="down", price=Decimal("5.20"), on_hand=7),
    _flapper("SL-3010", opening_in=3.0, ear_span_mm=108.0, status="to order", flush_gpf_min=1.6,
             flush_gpf_max=1.6, price=Decimal("8.95"), colour="blue"),
    _flapper("SL-1980", ear_span_mm=95.0, status="discontinued", replaced_by="SL-2041",
             maker_no=("20-198",)),
    _flapper("SL-1970", ear_span_mm=95.0, status="discontinued", replaced_by="SL-1980"),
    _flapper("SL-2065", ear_span_mm=95.0, mount=("pegs", "ring"), ring_mm=28.0,
             price=Decimal("5.60")),
    _flapper("SL-2070", ear_span_mm=96.0, price=Decimal("3.90")),
    _flapper("SL-2075", price=Decimal("3.10")),
    _flapper("SL-2080", ear_span_mm=95.0),
    row(Seal, part_no="SL-2060", name="ring flapper 28", style="ring-flapper", opening_in=2.0,
        mount=RING, ring_mm=28.0, status="stocked", price=Decimal("5.75"), on_hand=4,
        material="rubber", colour="black"),
    row(Seal, part_no="SL-4010", name="canister seal large", style="canister", opening_in=3.0,
        mount=CANISTER, status="stocked", price=Decimal("7.20")),
    row(Seal, part_no="SL-4020", name="canister seal small", style="canister", opening_in=2.0,
        mount=CANISTER, status="stocked", price=Decimal("6.10")),
    row(Seal, part_no="SL-5010", name="hollow ball", style="tank-ball", opening_in=2.0, mount=WIRE,
        ears="none", status="stocked", price=Decimal("9.30"), colour="red", material="rubber"),
)  # fmt: skip

CUT = "cut the ring off at the mark"


def _evidence(evidence: str, valve: str, part_no: str, verdict: str, **cells: Any) -> Evidence:
    usual = {"kind": "maker's sheet"}
    return row(
        Evidence, evidence=evidence, valve=valve, part_no=part_no, verdict=verdict, **usual | cells
    )


EVIDENCE = by_key(
    _evidence("E01", "p2u", "SL-1980", "fits"),
    _evidence("E02", "p2u", "SL-2044", "fits", kind="tried at the bench"),
    _evidence("E03", "p2u", "SL-2065", "fits with change", change=CUT),
    _evidence("E04", "p3u", "SL-3010", "fits"),
    _evidence("E05", "r2", "SL-2060", "fits"),
    _evidence("E06", "p2d", "SL-2050", "fits"),
    _evidence("E07", "b2", "SL-5010", "fits"),
    _evidence("E08", "c3", "SL-4010", "fits"),
    _evidence("E09", "c2", "SL-4020", "fits"),
    _evidence("E10", "p2u", "SL-2080", "fits"),
    _evidence("E11", "p2u", "SL-2080", "does not fit", kind="customer's report"),
    _evidence("E12", "p2u", "SL-2075", "does not fit", kind="tried at the bench"),
)

TABLES = Tables(
    brands=BRANDS, styles=STYLES, valves=VALVES, builds=BUILDS, build_valves=BUILD_VALVES,
    seals=SEALS, evidence=EVIDENCE,
)  # fmt: skip

# What the rows above mean, worked out by hand: F fits, C fits with the change, M could fit by
# its measurements, N does not fit, ? unknown. Volume objects to SL-2041 and SL-3010 on single
# builds only, never here, where a valve stands alone.
_VALVES = ("p2u", "p2d", "p3u", "r2", "b2", "c3", "c2", "blank")
TRUTH = {
    part: dict(zip(_VALVES, says.split(), strict=True))
    for part, says in {
        "SL-2041": "F N N N N N N ?",  # on p2u by replacement of SL-1980
        "SL-2044": "F N N N N N N ?",
        "SL-2046": "N N N N N N N ?",
        "SL-2050": "N F N N N N N ?",
        "SL-3010": "N N F N N N N ?",
        "SL-1980": "F N N N N N N ?",
        "SL-1970": "M N N N N N N ?",
        "SL-2065": "C N N M N N N ?",
        "SL-2070": "M N N N N N N ?",
        "SL-2075": "N N N N N N N ?",
        "SL-2080": "? N N N N N N ?",
        "SL-2060": "N N N F N N N N",
        "SL-4010": "N N N N N F N N",
        "SL-4020": "N N N N N N F N",
        "SL-5010": "N N N N F N N N",
    }.items()
}
