"""A supplier's file as headings and rows of text, whatever saved it."""

from __future__ import annotations

import zipfile
from collections.abc import Callable
from datetime import date, datetime
from pathlib import Path

import openpyxl
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from assistant.importing.csv_sheet import read_csv
from assistant.importing.faults import SheetError
from assistant.importing.sheet import Sheet, SheetRow, letter, read_sheet
from assistant.importing.workbook import read_workbook
from tests.sheets import as_csv, as_workbook

LINES = [["SKU", "Description", "Price"], ["PBK-1", "Flap, “Böhm” 2″", "4.95"]]
ROWS = (SheetRow(2, ("PBK-1", "Flap, “Böhm” 2″", "4.95")),)


@pytest.mark.parametrize("delimiter", [",", ";", "\t"])
@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "utf-32"])
def test_commas_semicolons_and_tabs_are_told_apart(
    tmp_path: Path, delimiter: str, encoding: str
) -> None:
    sheet = read_sheet(as_csv(tmp_path / "a.csv", LINES, delimiter, encoding))
    assert sheet.headings == ("SKU", "Description", "Price")
    assert sheet.rows == ROWS


def test_windows_1252_is_read_and_told(tmp_path: Path) -> None:
    lines = [["SKU", "Name", "Price"], ["PBK-1", "Böhm flap", "£4"]]
    sheet = read_sheet(as_csv(tmp_path / "a.csv", lines, encoding="cp1252"))
    assert sheet.rows[0].cells == ("PBK-1", "Böhm flap", "£4")
    assert "not UTF-8, so read as Windows-1252: look at its accents and signs" in sheet.told


def test_utf_8_says_nothing_of_windows(tmp_path: Path) -> None:
    assert read_sheet(as_csv(tmp_path / "a.csv", LINES)).told == ("UTF-8", "cells parted by commas")


@pytest.mark.parametrize(
    ("text", "headings"),
    [
        ("sku;price\nA;1,50\nB;2,30\n", ("sku", "price")),
        ("sku;list price, net\nA;1,50\nB;2,30\n", ("sku", "list price, net")),
        ("part_no,aliases\nA,ball; flap; disc\nB,cup; bell; disc\n", ("part_no", "aliases")),
        ('sku\tname\nA\t"a, b; c"\n', ("sku", "name")),
        ("sku\nA\nB\n", ("sku",)),
        ("sku; ours,name\nA,x\nB,y\n", ("sku; ours", "name")),
        ("sku;name;price\nA;x\nB;y;2\n", ("sku", "name", "price")),
    ],
)
def test_what_parts_the_cells_is_what_makes_the_rows_even(
    tmp_path: Path, text: str, headings: tuple[str, ...]
) -> None:
    (tmp_path / "a.csv").write_text(text)
    assert read_sheet(tmp_path / "a.csv").headings == headings


def test_rows_are_numbered_as_a_spreadsheet_does(tmp_path: Path) -> None:
    (tmp_path / "a.csv").write_text('\nsku,name\n\nA,"two\nlines"\n,\nB,one\n')
    sheet = read_sheet(tmp_path / "a.csv")
    assert sheet.heading_row == 2
    assert [row.number for row in sheet.rows] == [4, 6]


def test_cells_that_are_missing_at_the_end_of_a_row_are_empty(tmp_path: Path) -> None:
    (tmp_path / "a.csv").write_text("sku,name,price\nA,x,2\nB\n")
    assert read_sheet(tmp_path / "a.csv").rows[1] == SheetRow(3, ("B", "", ""))


def test_a_workbooks_cells_are_texts(tmp_path: Path) -> None:
    lines = [
        ["sku", "count", "price", "part", "share", "day", "moment", "yes", "empty", "last"],
        ["A", 12.0, 4.9, 417, 0.1 + 0.2, date(2024, 3, 31), datetime(2024, 3, 31, 9, 5)],
    ]
    lines[1] += [True, None, "x"]
    row = read_sheet(as_workbook(tmp_path / "a.xlsx", lines)).rows[0]
    assert row.cells == (
        *("A", "12", "4.9", "417", "0.3", "2024-03-31", "2024-03-31 09:05:00", "TRUE", "", "x"),
    )


def test_a_number_shown_with_leading_zeros_keeps_them(tmp_path: Path) -> None:
    book = openpyxl.Workbook()
    sheet = book.worksheets[0]
    for value in ("sku", 417):
        sheet.append([value])
    sheet["A2"].number_format = "00000"
    book.save(tmp_path / "a.xlsx")
    assert read_sheet(tmp_path / "a.xlsx").rows[0].cells == ("00417",)


def _with_formula(path: Path, worked_out: str) -> Path:
    """A workbook whose B2 is a formula, with what a spreadsheet has kept as its value."""
    return _edited(path, '<c r="B2" t="n"><v>7.5</v></c>', worked_out)


def _edited(path: Path, old: str, new: str) -> Path:
    """A workbook of four cells whose XML is edited at one place."""
    plain = as_workbook(path.with_suffix(".plain.xlsx"), [["sku", "price"], ["A", 7.5]])
    with zipfile.ZipFile(plain) as was, zipfile.ZipFile(path, "w") as made:
        for name in was.namelist():
            data = was.read(name).decode()
            if name.endswith("sheet1.xml"):
                assert data.count(old) == 1
                data = data.replace(old, new)
            made.writestr(name, data)
    return path


def test_a_workbook_that_tells_a_wrong_size_is_read_to_its_end(tmp_path: Path) -> None:
    file = _edited(tmp_path / "a.xlsx", '<dimension ref="A1:B2"', '<dimension ref="A1"')
    assert read_sheet(file).rows == (SheetRow(2, ("A", "7.5")),)


def test_a_formula_is_read_as_its_value(tmp_path: Path) -> None:
    file = _with_formula(tmp_path / "a.xlsx", '<c r="B2"><f>5*1.5</f><v>7.5</v></c>')
    assert read_sheet(file).rows[0].cells == ("A", "7.5")


def test_a_formula_whose_value_is_the_empty_text_is_an_empty_cell(tmp_path: Path) -> None:
    file = _with_formula(tmp_path / "a.xlsx", '<c r="B2" t="str"><f>""</f><v></v></c>')
    assert read_sheet(file).rows[0].cells == ("A", "")


def test_a_formula_that_was_never_worked_out_is_told_and_not_taken_for_empty(
    tmp_path: Path,
) -> None:
    file = _with_formula(tmp_path / "a.xlsx", '<c r="B2"><f>5*1.5</f></c>')
    with pytest.raises(SheetError) as caught:
        read_sheet(file)
    assert str(caught.value) == (
        f"{file}, sheet 'Prices', row 2, field B: holds a formula that was never worked out; "
        "open the file in a spreadsheet and save it."
    )


def _with_tabs(path: Path) -> Path:
    book = openpyxl.Workbook()
    book.worksheets[0].title = "Notes"
    book.worksheets[0].sheet_state = "hidden"
    for title in ("Seals", "Valves"):
        book.create_sheet(title).append([f"{title} sku"])
    book.save(path)
    return path


@pytest.mark.parametrize(
    ("tab", "heading"), [(None, "Seals sku"), ("Seals", "Seals sku"), ("Valves", "Valves sku")]
)
def test_the_first_sheet_that_is_seen_is_read_or_the_one_named(
    tmp_path: Path, tab: str | None, heading: str
) -> None:
    assert read_sheet(_with_tabs(tmp_path / "a.xlsx"), tab).headings == (heading,)


def test_columns_without_a_heading_go_by_their_letter() -> None:
    assert [letter(at) for at in (0, 25, 26, 701, 702)] == ["A", "Z", "AA", "ZZ", "AAA"]


@pytest.mark.parametrize(
    ("name", "raw", "sentence"),
    [
        ("a.csv", None, "{}: there is no such file; name one that is."),
        ("a.ods", b"x", "{}: '.ods' is no kind of sheet; save it as .csv or .xlsx."),
        ("a.csv", b"", "{}: is empty; name a sheet with headings and rows."),
        ("a.csv", b" \n\n", "{}: is empty; name a sheet with headings and rows."),
        (
            "a.csv",
            b"s\0k\0u\0",
            "{}: holds zero bytes and is no plain text; save it as 'CSV UTF-8'.",
        ),
        (
            "a.csv",
            b"sku\nA\n\x81\n",
            "{}, row 3: byte 0x81 is neither UTF-8 nor Windows-1252; save it as 'CSV UTF-8'.",
        ),
        (
            "a.csv",
            b"\xef\xbb\xbfsku\n\xff\n",
            "{}: begins as UTF-8 and then is not (invalid start byte); save it as 'CSV UTF-8'.",
        ),
        (
            "a.csv",
            b'sku,name\nA,"flap\n',
            "{}, row 2: is not sound CSV (unexpected end of data); "
            "check its quotes, or save it from the spreadsheet again.",
        ),
        (
            "a.csv",
            b"sku,price\nA,1\nB,1,50\n",
            "{}, row 3: has 3 cells where there are 2 headings; "
            "put quotes round a text with a comma, or give the column a heading.",
        ),
        (
            "a.xlsx",
            b"sku,price\n",
            "{}: is no sound .xlsx workbook, or has a password; "
            "save it from the spreadsheet again, without a password.",
        ),
    ],
)
def test_a_file_that_cannot_be_read_is_told_in_one_sentence(
    tmp_path: Path, name: str, raw: bytes | None, sentence: str
) -> None:
    file = tmp_path / name
    if raw is not None:
        file.write_bytes(raw)
    with pytest.raises(SheetError) as caught:
        read_sheet(file)
    assert str(caught.value) == sentence.format(file)


def test_a_damaged_workbook_is_told_in_one_sentence(tmp_path: Path) -> None:
    file = as_workbook(tmp_path / "a.xlsx", LINES)
    raw = file.read_bytes()
    file.write_bytes(raw[:600] + bytes(400) + raw[1000:])
    with pytest.raises(SheetError, match=r"is no sound \.xlsx workbook"):
        read_sheet(file)


def test_a_sheet_that_is_not_there_is_told_with_those_that_are(tmp_path: Path) -> None:
    with pytest.raises(SheetError) as caught:
        read_sheet(_with_tabs(tmp_path / "a.xlsx"), "Flaps")
    assert str(caught.value).endswith(
        "has no sheet 'Flaps'; --sheet takes one of: Notes, Seals, Valves."
    )


def test_a_csv_file_has_no_sheets_to_choose_from(tmp_path: Path) -> None:
    with pytest.raises(SheetError, match="a CSV file has one sheet only; leave out --sheet"):
        read_sheet(as_csv(tmp_path / "a.csv", LINES), "Seals")


def _read_or_told(read: Callable[[bytes, str], Sheet], raw: bytes) -> Sheet | str:
    try:
        return read(raw, "the sheet")
    except SheetError as error:
        return str(error)


def _is_sound(found: Sheet | str) -> bool:
    if isinstance(found, str):
        return found.startswith("the sheet") and "\n" not in found
    return all(len(row.cells) == len(found.headings) for row in found.rows)


@given(st.binary(max_size=60) | st.text('a";,\t\r\n\0ü', max_size=60).map(str.encode))
def test_any_bytes_are_a_sheet_or_told_in_one_sentence(raw: bytes) -> None:
    assert _is_sound(_read_or_told(read_csv, raw))


@given(place=st.integers(0, 10_000), junk=st.binary(max_size=8))
@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], deadline=None)
def test_a_workbook_damaged_anywhere_is_read_or_told_in_one_sentence(
    tmp_path: Path, place: int, junk: bytes
) -> None:
    raw = as_workbook(tmp_path / "a.xlsx", LINES).read_bytes()
    at = place % len(raw)
    assert _is_sound(_read_or_told(read_workbook, raw[:at] + junk + raw[at + 8 :]))
