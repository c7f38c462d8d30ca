"""Suppliers' sheets for tests, as CSV and as workbooks, and a small shop to import them into."""

from __future__ import annotations

import csv
import io
import os
import signal
import sys
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

import openpyxl

from assistant.importing.prepare import BY_NAME, Asked, Prepared, prepare
from assistant.importing.writing import swap_in
from tests.killing import EVENTS

Lines = Sequence[Sequence[object]]


def as_csv(path: Path, lines: Lines, delimiter: str = ",", encoding: str = "utf-8") -> Path:
    """A sheet saved as CSV."""
    out = io.StringIO(newline="")
    csv.writer(out, delimiter=delimiter).writerows(lines)
    path.write_bytes(out.getvalue().encode(encoding))
    return path


def as_workbook(path: Path, lines: Lines, title: str = "Prices") -> Path:
    """A sheet saved as a workbook, with the cells' own types."""
    book = openpyxl.Workbook()
    sheet = book.worksheets[0]
    sheet.title = title
    for row, line in enumerate(lines, start=1):
        for column, value in enumerate(line, start=1):
            cell = sheet.cell(row, column)
            cell.value = value  # type: ignore[assignment]
            if isinstance(value, str):
                cell.data_type = "s"  # a text that begins with '=' stays one
    book.save(path)
    return path


def planned(
    shop: Path,
    file: Path,
    table: str = "seals",
    named: Mapping[str, str] | None = None,
    **more: Any,
) -> Prepared:
    """What importing a file would change."""
    given: dict[str, Any] = {"currency": "$", "tab": None} | more
    return prepare(Asked(file=file, kind=BY_NAME[table], shop=shop, named=named or {}, **given))


def said(made: Prepared) -> list[tuple[str, str, str, str]]:
    """The changes: id, column, old and new."""
    return [(c.key, c.column, c.old, c.new) for c in made.plan.changes]


def dies_swapping(path: Path, before: bytes, after: bytes, at: int) -> None:
    """A table swapped in by a process that is killed at its `at`-th turn to the table's folder."""
    seen = 0

    def hook(event: str, arguments: tuple[Any, ...]) -> None:
        nonlocal seen
        if event in EVENTS and arguments and str(arguments[0]).startswith(str(path.parent)):
            seen += 1
            if seen == at:
                os.kill(os.getpid(), signal.SIGKILL)

    sys.addaudithook(hook)
    swap_in(path, before, after)
