"""The fitting seals of any small shop, worked out a second time by one SQL query.

The query is written from the agreed meaning of the tables, not from the code: lengths in
tenths of a millimetre and volumes in hundredths of a gallon, so that it compares whole numbers.
"""

from __future__ import annotations

import sqlite3
from collections import defaultdict
from collections.abc import Iterator
from typing import Any

import pytest
from hypothesis import given

from assistant.fitment.judge import fitting, judge
from assistant.fitment.picks import group_of
from assistant.measuring.campaign.truth import SQL
from assistant.records.rows import FlushValve, Seal
from assistant.records.tables import Tables
from tests.shops import Drawn, shops, thorough
from tests.trade import FIRST, place, scenario


def tenths(length: float | None) -> int | None:
    return None if length is None else round(length * 10)


def hundredths(volume: float | None) -> int | None:
    return None if volume is None else round(volume * 100)


@pytest.fixture(scope="module")
def database() -> Iterator[sqlite3.Connection]:
    connection = sqlite3.connect(":memory:")
    connection.executescript(SQL.read_text(encoding="utf-8"))
    yield connection
    connection.close()


def load(database: sqlite3.Connection, shop: Tables) -> None:
    """The same tables, as SQL keeps them."""

    def put(name: str, rows: list[tuple[Any, ...]]) -> None:
        database.execute(f"DELETE FROM {name}")
        if rows:
            marks = ", ".join("?" * len(rows[0]))
            database.executemany(f"INSERT INTO {name} VALUES ({marks})", rows)

    valves, seals = shop.valves.values(), shop.seals.values()
    put("valve", [_valve(v) for v in valves])
    put("seal", [_seal(s) for s in seals])
    put("valve_mount", [(v.valve, way) for v in valves for way in v.mount])
    put("seal_mount", [(s.part_no, way) for s in seals for way in s.mount])
    put("build", [(b.build, hundredths(b.flush_full_gpf)) for b in shop.builds.values()])
    put("sits", [(s.build, s.position, s.valve) for s in shop.build_valves.values()])
    proof = shop.evidence.values()
    put("evidence", [(e.valve, e.build, e.position, e.part_no, e.verdict, e.change) for e in proof])


def _valve(v: FlushValve) -> tuple[Any, ...]:
    sizes = (hundredths(v.opening_in), tenths(v.peg_span_mm), v.pegs, v.overflow)
    return (v.valve, v.style, *sizes, tenths(v.overflow_mm))


def _seal(s: Seal) -> tuple[Any, ...]:
    sizes = (hundredths(s.opening_in), tenths(s.ear_span_mm), s.ears, tenths(s.ring_mm))
    volume = (hundredths(s.flush_gpf_min), hundredths(s.flush_gpf_max))
    return (s.part_no, s.style, *sizes, *volume, s.status, s.replaced_by)


@thorough
@given(drawn=shops(sized=True))
def test_every_verdict_is_the_one_that_plain_sql_gives(
    database: sqlite3.Connection, drawn: Drawn
) -> None:
    shop = drawn.tables
    load(database, shop)
    sold: dict[tuple[str, str], dict[str, str]] = defaultdict(dict)
    for name, position, part_no, verdict, status, changes in _view(database, "verdict"):
        judgement = judge(shop, part_no, place(shop, name, position))
        found = judgement.verdict.value.replace("could fit", "unknown")
        assert (name, position, part_no, found) == (name, position, part_no, verdict)
        assert judgement.change == (changes if verdict == "fits with change" else None)
        if verdict.startswith("fits") and status != "discontinued":
            sold[name, position][part_no] = verdict
    for at in shop.build_valves.values():
        fits = fitting(shop, place(shop, at.build, at.position))
        verdicts = {part_no: found.verdict.value for part_no, found in fits.items()}
        assert verdicts == sold[at.build, at.position]


@thorough
@given(drawn=shops(sized=False))
def test_what_two_builds_take_alike_is_what_plain_sql_gives(
    database: sqlite3.Connection, drawn: Drawn
) -> None:
    shop = drawn.tables
    load(database, shop)
    group = group_of(shop, [scenario(shop, name) for name in shop.builds], FIRST)
    alike = {(position, pick.part_no) for position, picks in group.picks.items() for pick in picks}
    assert alike == set(_view(database, "common"))


def _view(database: sqlite3.Connection, name: str) -> list[Any]:
    return database.execute(f"SELECT * FROM {name}").fetchall()
