"""What stands in a table's cells, and how a table's text becomes rows."""

from __future__ import annotations

import csv
import io
from dataclasses import fields, replace
from datetime import date
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.errors import TableError
from assistant.records import cells
from assistant.records.cells import OPEN_FROM, OPEN_TO
from assistant.records.load import parse_table, read_table
from assistant.records.rows import TABLES, Build, BuildValve, FlushValve, Row, Seal, Style

SOUND = [
    (cells.text, "3-lugged, old", "3-lugged, old"),
    (cells.items, "tank ball; bulb ;; stopper;", ("tank ball", "bulb", "stopper")),
    (cells.number, "2.5", 2.5),
    (cells.number, "80", 80.0),
    (cells.numbers, "2; 2.5", (2.0, 2.5)),
    (cells.count, "0", 0),
    (cells.count, "12", 12),
    (cells.money, "7.50", Decimal("7.50")),
    (cells.money, "0", Decimal(0)),
    (cells.day, "2024-02-29", date(2024, 2, 29)),
    (cells.year_from, "1850", 1850),
    (cells.year_from, "open", OPEN_FROM),
    (cells.year_to, "open", OPEN_TO),
    (cells.yes_no, "yes", True),
    (cells.yes_no, "no", False),
    (cells.one_of("up", "down"), "down", "down"),
    (cells.some_of("pegs", "ring"), "ring; pegs", ("ring", "pegs")),
]


@pytest.mark.parametrize(("reader", "raw", "value"), SOUND)
def test_a_sound_cell_is_read(reader: cells.Reader, raw: str, value: Any) -> None:
    assert reader(raw) == value


UNSOUND = [
    (cells.number, "2 in", "a plain number such as 2.5"),
    (cells.number, "2,5", "a plain number such as 2.5"),
    (cells.number, "2 1/2", "a plain number such as 2.5"),
    (cells.number, "0", "a number above zero"),
    (cells.number, "-3", "a number above zero"),
    (cells.number, "nan", "a plain number such as 2.5"),
    (cells.number, "inf", "a plain number such as 2.5"),
    (cells.number, "2_5", "a plain number such as 2.5"),
    (cells.number, "1e3", "a plain number such as 2.5"),
    (cells.number, "1000000", "a number above zero"),
    (cells.numbers, "2; two", "a plain number such as 2.5"),
    (cells.count, "1.5", "a whole number such as 2"),
    (cells.count, "-1", "a whole number such as 2"),
    (cells.money, "$7.50", "an amount such as 7.50, without a currency sign"),
    (cells.money, "-7.50", "an amount of zero or more"),
    (cells.money, "NaN", "an amount such as 7.50, without a currency sign"),
    (cells.money, "7_50", "an amount such as 7.50, without a currency sign"),
    (cells.day, "31.3.2024", "a date such as 2024-03-31"),
    (cells.day, "2023-02-29", "a date such as 2024-03-31"),
    (cells.year_from, "94", "a year such as 1994, or the word open"),
    (cells.year_to, "1849", "a year such as 1994, or the word open"),
    (cells.year_to, "2101", "a year such as 1994, or the word open"),
    (cells.year_to, "now", "a year such as 1994, or the word open"),
    (cells.yes_no, "Yes", "yes or no"),
    (cells.yes_no, "1", "yes or no"),
    (cells.one_of("up", "down"), "sideways", "one of: up, down"),
    (cells.some_of("pegs", "ring"), "pegs; glue", "one of: pegs, ring"),
]


@pytest.mark.parametrize(("reader", "raw", "wanted"), UNSOUND)
def test_an_unsound_cell_says_what_a_sound_one_holds(
    reader: cells.Reader, raw: str, wanted: str
) -> None:
    with pytest.raises(ValueError, match=wanted) as fault:
        reader(raw)
    assert str(fault.value) == wanted


# Tables


def _csv(kind: type[Row], *rows: dict[str, str]) -> str:
    """A table's text with all its columns, in their order."""
    out = io.StringIO()
    writer = csv.DictWriter(out, [f.name for f in fields(kind)], restval="")
    writer.writeheader()
    writer.writerows(rows)
    return out.getvalue()


GATE = {"valve": "gate-2", "style": "pegged-flapper"}
SEAL = {"part_no": "UQ-10", "name": "a seal", "style": "pegged-flapper", "status": "stocked"}


def test_an_empty_cell_is_not_known() -> None:
    (row,) = parse_table(_csv(Seal, SEAL), Seal, "seals.csv").values()
    filled = {name: value for name, value in vars(row).items() if value not in (None, ())}
    assert filled == SEAL


@pytest.mark.parametrize("kind", TABLES, ids=lambda kind: kind.file)
def test_a_cell_of_blanks_is_as_empty_as_an_empty_one(kind: type[Row]) -> None:
    needed = {f.name: "1" for f in fields(kind) if f.metadata["needed"]}
    needed |= {"status": "stocked"} if "status" in needed else {}
    needed |= {"verdict": "fits"} if "verdict" in needed else {}
    needed |= {"points_at": "seal"} if "points_at" in needed else {}
    blank = {f.name: " \t" for f in fields(kind)} | needed
    empty = parse_table(_csv(kind, needed), kind, kind.file)
    assert parse_table(_csv(kind, blank), kind, kind.file) == empty
    assert len(empty) == 1


def test_an_empty_cell_where_one_is_needed_is_an_error() -> None:
    with pytest.raises(TableError) as fault:
        parse_table(_csv(Seal, SEAL | {"status": ""}), Seal, "seals.csv")
    assert (fault.value.row, fault.value.field) == (2, "status")


def test_a_flush_of_zero_is_no_flush_known_but_a_shelf_of_zero_is_an_empty_shelf() -> None:
    (row,) = parse_table(_csv(Seal, SEAL | {"on_hand": "0"}), Seal, "seals.csv").values()
    assert row.on_hand == 0
    with pytest.raises(TableError, match="a number above zero"):
        parse_table(_csv(Seal, SEAL | {"flush_gpf_min": "0"}), Seal, "seals.csv")


def test_open_years_have_no_end_and_empty_ones_are_not_known() -> None:
    build = {"build": "b", "brand": "Ulmbraith", "model": "Tovelin"}
    text = _csv(Build, build | {"made_from": "open", "made_to": "1990"}, build | {"build": "c"})
    one, other = parse_table(text, Build, "toilets.csv").values()
    assert (one.made_from, one.made_to) == (OPEN_FROM, 1990)
    assert (other.made_from, other.made_to) == (None, None)


def test_a_byte_order_mark_is_no_part_of_the_first_column(tmp_path: Path) -> None:
    plain, marked = tmp_path / "plain.csv", tmp_path / "marked.csv"
    text = _csv(Style, {"style": "ball", "plain_name": "bäll"})
    plain.write_text(text, encoding="utf-8")
    marked.write_text(text, encoding="utf-8-sig")
    assert read_table(marked, Style) == read_table(plain, Style)


def test_columns_may_stand_in_any_order_among_columns_of_the_shops_own() -> None:
    text = _csv(FlushValve, GATE | {"opening_in": "2"})
    read = list(csv.DictReader(io.StringIO(text)))
    out = io.StringIO()
    names = ["shelf", *reversed([f.name for f in fields(FlushValve)])]
    writer = csv.DictWriter(out, names, restval="B7")
    writer.writeheader()
    writer.writerows(read)
    assert parse_table(out.getvalue(), FlushValve, "v") == parse_table(text, FlushValve, "v")


def test_a_quoted_cell_may_hold_commas_quotes_and_line_breaks() -> None:
    note = 'Says "2 in",\nmeasures more.'
    (row,) = parse_table(_csv(FlushValve, GATE | {"note": note}), FlushValve, "v").values()
    assert row.note == note


def test_windows_line_ends_and_empty_lines_make_no_rows() -> None:
    text = _csv(FlushValve, GATE).replace("\r\n", "\n") + "\n,,,,,,,,\n\n"
    assert [*parse_table(text.replace("\n", "\r\n"), FlushValve, "v")] == ["gate-2"]


def test_a_row_is_counted_as_a_spreadsheet_counts_it() -> None:
    """The header is row 1; an empty row counts; a line break within a cell makes no new row."""
    first = GATE | {"note": "two\nlines"}
    bad = {"valve": "gate-3", "style": "pegged-flapper", "opening_in": "three"}
    text = _csv(FlushValve, first, {}, bad)
    with pytest.raises(TableError) as fault:
        parse_table(text, FlushValve, "flush_valves.csv")
    error = fault.value
    assert (error.file, error.row, error.field) == ("flush_valves.csv", 4, "opening_in")
    assert str(error) == (
        "flush_valves.csv, row 4, field opening_in: 'three' cannot be read; "
        "write a plain number such as 2.5."
    )


@pytest.mark.parametrize("mark", [b"", b"\xef\xbb\xbf"], ids=["", "after a byte order mark"])
def test_a_wrong_character_is_in_the_row_that_a_spreadsheet_shows(
    tmp_path: Path, mark: bytes
) -> None:
    path = tmp_path / "flush_valves.csv"
    first = GATE | {"note": "two\nlines"}
    text = _csv(FlushValve, first, GATE | {"valve": "gate-3", "note": "Größe"})
    path.write_bytes(mark + text.encode("latin-1"))
    with pytest.raises(TableError, match="row 3: byte 0xf6 is not UTF-8"):
        read_table(path, FlushValve)


def test_a_row_is_known_by_all_the_columns_of_its_id() -> None:
    row = BuildValve(build="tovelin-a", position="rinse", valve="gate-2", seals_needed=None)
    assert row.key == "tovelin-a/rinse"
    assert replace(row, position="main").key == "tovelin-a/main"


def test_rows_keep_the_order_of_the_file() -> None:
    rows = [GATE | {"valve": name} for name in ("z", "a", "m")]
    assert [*parse_table(_csv(FlushValve, *rows), FlushValve, "v")] == ["z", "a", "m"]


def test_a_header_alone_is_a_sound_empty_table() -> None:
    assert parse_table(_csv(FlushValve), FlushValve, "flush_valves.csv") == {}


@given(st.lists(st.lists(st.text(max_size=6), min_size=9, max_size=9), max_size=3))
def test_whatever_text_the_cells_hold_they_are_read_or_the_error_names_the_row(
    rows: list[list[str]],
) -> None:
    names = [f.name for f in fields(FlushValve)]
    text = _csv(FlushValve, *(dict(zip(names, row, strict=True)) for row in rows))
    fault: TableError | None = None
    found: dict[str, FlushValve] = {}
    try:
        found = parse_table(text, FlushValve, "flush_valves.csv")
    except TableError as error:
        fault = error
    filled = [row for row in rows if any(cell.strip() for cell in row)]
    assert len(found) == len(filled) if fault is None else fault.row in range(2, len(rows) + 2)
