"""A workbook (.xlsx) as a sheet: what its cells show, as text."""

from __future__ import annotations

import io
import warnings
import zipfile
from collections.abc import Iterator
from contextlib import closing
from datetime import date, datetime, time
from decimal import Decimal
from itertools import zip_longest
from typing import Any

import openpyxl

from assistant.importing.faults import SheetError
from assistant.importing.sheet import Sheet, letter, sheet_of


def read_workbook(raw: bytes, name: str, tab: str | None = None) -> Sheet:
    """Reads a workbook's first sheet that is not hidden, or the one named."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # of styles and rules for typing, which are not read
        try:
            values, formulas = _open(raw, data_only=True), _open(raw, data_only=False)
            with closing(values), closing(formulas):
                title = _chosen(values, name, tab)
                told = f"sheet '{title}'"
                lines = list(_lines(values[title], formulas[title], f"{name}, {told}"))
        except SheetError:
            raise
        except Exception as error:  # the reader fails in many ways where a file is damaged
            raise SheetError(
                name,
                None,
                None,
                "is no sound .xlsx workbook, or has a password",
                "save it from the spreadsheet again, without a password",
            ) from error
    return sheet_of(name, lines, (told,))


def _open(raw: bytes, *, data_only: bool) -> Any:
    if not zipfile.is_zipfile(io.BytesIO(raw)):
        raise ValueError("no archive")
    return openpyxl.load_workbook(io.BytesIO(raw), read_only=True, data_only=data_only)


def _chosen(book: Any, name: str, tab: str | None) -> str:
    """The title of the sheet to read."""
    titles = [sheet.title for sheet in book.worksheets]
    if tab is None:
        shown = [sheet.title for sheet in book.worksheets if sheet.sheet_state == "visible"]
        if not titles:
            raise SheetError(name, None, None, "holds no sheet of cells", "name another file")
        return str((shown or titles)[0])
    if tab not in titles:
        there = ", ".join(titles)
        raise SheetError(
            name, None, None, f"has no sheet '{tab}'", f"--sheet takes one of: {there}"
        )
    return tab


def _lines(values: Any, formulas: Any, name: str) -> Iterator[list[str]]:
    for sheet in (values, formulas):
        sheet.reset_dimensions()  # what a file says of its own size is often wrong
    rows = zip_longest(values.iter_rows(), formulas.iter_rows(), fillvalue=())
    for number, (shown, written) in enumerate(rows, start=1):
        line = []
        for at, (cell, source) in enumerate(zip(shown, written, strict=True)):
            # A formula whose result is the empty text keeps the type of a text.
            if source.data_type == "f" and cell.value is None and cell.data_type == "n":
                raise SheetError(
                    name,
                    number,
                    letter(at),
                    "holds a formula that was never worked out",
                    "open the file in a spreadsheet and save it",
                )
            line.append(_text(cell))
        yield line


def _text(cell: Any) -> str:
    """A cell as a spreadsheet would save it in a CSV file, but dates in the order of ISO."""
    value = cell.value
    if value is None:
        return ""
    if isinstance(value, bool):
        return "TRUE" if value else "FALSE"
    if isinstance(value, int | float):
        return _number(value, str(cell.number_format))
    if isinstance(value, datetime):
        return value.isoformat(" ") if value.time() != time() else value.date().isoformat()
    if isinstance(value, date | time):
        return value.isoformat()
    return str(value)


def _number(value: float, shown_as: str) -> str:
    """A number without a needless '.0', to the fifteen digits that a spreadsheet keeps."""
    # As it stands, 0.1 + 0.2 would be 0.30000000000000004.
    number = Decimal(f"{value:.15g}")
    whole = number == number.to_integral_value()
    text = f"{number.to_integral_value() if whole else number:f}"
    if whole and set(shown_as) == {"0"}:  # a part number kept as a number: 00417 as 417
        return text.zfill(len(shown_as))
    return text
