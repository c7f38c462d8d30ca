"""Sheets read as two other readers read them: the csv module and pandas."""

from __future__ import annotations

import csv
import io
from pathlib import Path

import pandas
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from assistant.importing.csv_sheet import read_csv
from assistant.importing.sheet import read_sheet
from assistant.importing.workbook import read_workbook
from tests.broken import DEMO
from tests.sheets import as_workbook

TABLES = sorted((DEMO / "tables").glob("*.csv"))
CALM = settings(
    max_examples=60,
    deadline=None,
    suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow],
)
texts = st.text(st.sampled_from("ab1 ;,\t\"'£ü\n-"), max_size=6)
numbers = st.one_of(
    st.integers(-(10**9), 10**9),
    st.decimals(-(10**6), 10**6, places=2).map(float),
    st.floats(-1e6, 1e6).map(lambda x: float(f"{x:.6g}")),
)


def _stripped(lines: list[list[str]]) -> list[tuple[str, ...]]:
    return [tuple(cell.strip() for cell in line) for line in lines if any(map(str.strip, line))]


def test_every_table_of_the_shop_is_read_as_the_csv_module_reads_it() -> None:
    assert len(TABLES) == 10
    for table in TABLES:
        sheet = read_sheet(table)
        text = table.read_text(encoding="utf-8")
        expected = _stripped(list(csv.reader(io.StringIO(text, newline=""))))
        assert [sheet.headings, *(row.cells for row in sheet.rows)] == expected


@given(
    st.lists(st.lists(texts, min_size=3, max_size=3), max_size=6),
    st.sampled_from(",;\t"),
)
@CALM
def test_any_rows_are_read_as_the_csv_module_reads_them(
    rows: list[list[str]], delimiter: str
) -> None:
    out = io.StringIO(newline="")
    csv.writer(out, delimiter=delimiter).writerows([["sku", "name", "price"], *rows])
    sheet = read_csv(out.getvalue().encode(), "a.csv")
    read = csv.reader(io.StringIO(out.getvalue(), newline=""), delimiter=delimiter)
    assert [row.cells for row in sheet.rows] == _stripped(list(read))[1:]


@given(st.lists(st.tuples(st.text("abc", min_size=1), numbers, texts), min_size=1, max_size=6))
@CALM
def test_a_workbook_holds_what_pandas_finds_in_it(
    tmp_path: Path, rows: list[tuple[str, float, str]]
) -> None:
    file = as_workbook(tmp_path / "a.xlsx", [["sku", "price", "name"], *rows])
    frame = pandas.read_excel(file, dtype=object, keep_default_na=False)
    sheet = read_workbook(file.read_bytes(), "a.xlsx")
    assert list(frame.columns) == list(sheet.headings)
    found = [row.cells for row in sheet.rows]
    assert [cells[0] for cells in found] == [str(sku).strip() for sku in frame["sku"]]
    assert [float(cells[1]) for cells in found] == [float(price) for price in frame["price"]]
    assert [cells[2] for cells in found] == [str(name).strip() for name in frame["name"]]


def test_dates_are_the_days_that_pandas_finds(tmp_path: Path) -> None:
    days = pandas.date_range("1999-12-30", "2004-03-02", freq="53D")
    lines = [["sku", "day"], *([f"A{at}", day.to_pydatetime()] for at, day in enumerate(days))]
    file = as_workbook(tmp_path / "a.xlsx", lines)
    frame = pandas.read_excel(file)
    assert [row.cells[1] for row in read_sheet(file).rows] == [
        f"{day:%Y-%m-%d}" for day in frame["day"]
    ]
