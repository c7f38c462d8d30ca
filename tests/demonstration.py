"""The demonstration shop, and what is true of it by its CSV files alone, asked of SQLite.

The look-ups read the files with `csv` and judge with `fitment.sql`: they share nothing with the
code that reads, decides, composes or checks.
"""

from __future__ import annotations

import csv
import re
import sqlite3
from collections import defaultdict
from functools import cache
from pathlib import Path
from typing import Any

from assistant.shop import Shop, open_shop

FOLDER = Path(__file__).resolve().parent.parent
TABLES = FOLDER / "knowledge" / "tables"
SQL = Path(__file__).with_name("fitment.sql")
PART_NO = re.compile(r"PBK-\d{4}")
Row = dict[str, str]


@cache
def shop() -> Shop:
    """The demonstration shop, loaded once for all tests."""
    return open_shop(FOLDER)


@cache
def rows(table: str) -> tuple[Row, ...]:
    """The rows of a table as the file has them: strings, empty where not known."""
    with (TABLES / f"{table}.csv").open(newline="", encoding="utf-8") as file:
        return tuple(csv.DictReader(file))


@cache
def seals() -> dict[str, Row]:
    """Every seal by its number."""
    return {row["part_no"]: row for row in rows("seals")}


@cache
def builds() -> dict[str, Row]:
    """Every build by its id."""
    return {row["build"]: row for row in rows("toilets")}


@cache
def valves_of(build: str) -> dict[str, Row]:
    """The flush valves of a build by position."""
    by_id = {row["valve"]: row for row in rows("flush_valves")}
    return {r["position"]: by_id[r["valve"]] for r in rows("build_valves") if r["build"] == build}


def name_of(build: str) -> str:
    """A build's maker and model."""
    return f"{builds()[build]['brand']} {builds()[build]['model']}"


@cache
def models() -> dict[str, tuple[str, ...]]:
    """The builds of every maker and model."""
    found: dict[str, list[str]] = defaultdict(list)
    for build in builds():
        found[name_of(build)].append(build)
    return {name: tuple(ids) for name, ids in found.items()}


def span(build: str) -> tuple[int, int]:
    """The years in which a build may have been made; as wide as can be where not known."""
    row = builds()[build]
    first, last = row["made_from"], row["made_to"]
    return (int(first) if first.isdigit() else 0, int(last) if last.isdigit() else 9999)


def made_within(model: str, first: int, last: int) -> tuple[str, ...]:
    """The builds of a model of which some may have been made in these years."""
    return tuple(b for b in models()[model] if span(b)[0] <= last and first <= span(b)[1])


def with_number(number: str) -> tuple[str, ...]:
    """The builds that carry a number, by the model's number or the mark in the tank."""
    wanted = _bare(number)
    return tuple(
        b
        for b, row in builds().items()
        if wanted in (_bare(row["model_no"]), _bare(row["tank_mark"]))
    )


def _bare(number: str) -> str:
    return re.sub(r"[^0-9A-Z]", "", number.upper())


@cache
def verdicts() -> dict[tuple[str, str, str], str]:
    """The verdict on every seal at every position of every build."""
    return {key: verdict for key, (verdict, _) in _judged().items()}


@cache
def changes() -> dict[tuple[str, str, str], str]:
    """The change under which a seal fits a position of a build."""
    return {
        key: change for key, (verdict, change) in _judged().items() if verdict == "fits with change"
    }


def fits(part_no: str, build: str, position: str = "main") -> bool:
    """Whether evidence says so, unchanged, and nothing is against it."""
    return verdicts().get((build, position, part_no)) == "fits"


def fits_all(part_no: str, ids: tuple[str, ...], position: str = "main") -> bool:
    """Whether a seal fits each of the builds, of which there are some."""
    return bool(ids) and all(fits(part_no, build, position) for build in ids)


@cache
def places_of(part_no: str) -> frozenset[tuple[str, str]]:
    """Every build and position that a seal fits unchanged."""
    return frozenset(
        (build, position)
        for (build, position, part), verdict in verdicts().items()
        if part == part_no and verdict == "fits"
    )


@cache
def _judged() -> dict[tuple[str, str, str], tuple[str, str]]:
    database = sqlite3.connect(":memory:")
    database.executescript(SQL.read_text(encoding="utf-8"))
    tenth, hundredth = 10, 100

    def put(name: str, values: list[tuple[Any, ...]]) -> None:
        marks = ", ".join("?" * len(values[0]))
        database.executemany(f"INSERT INTO {name} VALUES ({marks})", values)

    put("valve", [
        (v["valve"], _said(v["style"]), _whole(v["opening_in"], hundredth),
         _whole(v["peg_span_mm"], tenth), _said(v["pegs"]), _said(v["overflow"]),
         _whole(v["overflow_mm"], tenth)) for v in rows("flush_valves")
    ])  # fmt: skip
    put("seal", [
        (s["part_no"], _said(s["style"]), _whole(s["opening_in"], hundredth),
         _whole(s["ear_span_mm"], tenth), _said(s["ears"]), _whole(s["ring_mm"], tenth),
         _whole(s["flush_gpf_min"], hundredth), _whole(s["flush_gpf_max"], hundredth),
         s["status"], _said(s["replaced_by"])) for s in rows("seals")
    ])  # fmt: skip
    for table, name in (("flush_valves", "valve"), ("seals", "seal")):
        key = "part_no" if name == "seal" else "valve"
        ways = [(r[key], w) for r in rows(table) for w in r["mount"].split(";") if w]
        put(f"{name}_mount", ways)
    put("build", [(b, _whole(r["flush_full_gpf"], hundredth)) for b, r in builds().items()])
    put("sits", [(r["build"], r["position"], r["valve"]) for r in rows("build_valves")])
    columns = ("valve", "build", "position", "part_no", "verdict", "change")
    put("evidence", [tuple(_said(r[c]) for c in columns) for r in rows("fitment")])
    told = database.execute("SELECT build, position, part_no, verdict, changes FROM verdict")
    found = {(b, at, p): (verdict, change) for b, at, p, verdict, change in told}
    database.close()
    return found


def _said(cell: str) -> str | None:
    return cell.strip() or None


def _whole(cell: str, parts: int) -> int | None:
    return round(float(cell) * parts) if cell else None
