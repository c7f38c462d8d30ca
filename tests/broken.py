"""Breaks one thing in a copy of the demonstration shop, and runs the command on it."""

from __future__ import annotations

import csv
import io
import shutil
import sys
from pathlib import Path

import pytest

from assistant.cli import main

DEMO = Path(__file__).resolve().parent.parent / "knowledge"


def copy_of_demo(folder: Path) -> Path:
    """A shop of its own in a folder; returns its knowledge."""
    return Path(shutil.copytree(DEMO, folder / "knowledge"))


def run(monkeypatch: pytest.MonkeyPatch, *arguments: str) -> int:
    """The command's exit code."""
    monkeypatch.setattr(sys, "argv", ["counterhand", *arguments])
    try:
        main()
    except SystemExit as stop:
        return int(stop.code or 0)
    return 0


def rows_of(table: Path) -> list[list[str]]:
    """The cells of a table, header first."""
    return list(csv.reader(io.StringIO(table.read_text(encoding="utf-8"), newline="")))


def put(table: Path, rows: list[list[str]], encoding: str = "utf-8") -> None:
    """Writes a table."""
    with table.open("w", encoding=encoding, newline="") as out:
        csv.writer(out).writerows(rows)


def edit(table: Path, row: int, **cells: str) -> None:
    """Fills some cells of one row; the header is row 1."""
    rows = rows_of(table)
    for field, value in cells.items():
        rows[row - 1][rows[0].index(field)] = value
    put(table, rows)


def drop_column(table: Path, field: str) -> None:
    """Takes a column out."""
    rows = rows_of(table)
    at = rows[0].index(field)
    put(table, [row[:at] + row[at + 1 :] for row in rows])


def widen(table: Path, row: int) -> None:
    """Adds a cell to one row, as an unquoted comma does."""
    rows = rows_of(table)
    rows[row - 1].append("and more")
    put(table, rows)


def save_as(table: Path, encoding: str) -> None:
    """Saves a table in another encoding."""
    put(table, rows_of(table), encoding)
