"""A sheet: its headings and rows as text, whatever kind of file it came in."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from assistant.importing.faults import SheetError

# How a spreadsheet writes a cell whose formula went wrong, also when it is saved as CSV.
ERRORS = ("#N/A", "#REF!", "#VALUE!", "#NAME?", "#DIV/0!", "#NUM!", "#NULL!", "#SPILL!", "#CALC!")


@dataclass(frozen=True)
class SheetRow:
    """A row's number, as a spreadsheet counts, and its cells under the headings."""

    number: int
    cells: tuple[str, ...]


@dataclass(frozen=True, kw_only=True)
class Sheet:
    """What was read. `name` is how errors call it; `told` how it was read, in a few words."""

    name: str
    heading_row: int
    headings: tuple[str, ...]
    rows: tuple[SheetRow, ...]
    told: tuple[str, ...] = ()

    def called(self, column: int) -> str:
        """A column's heading, or its letter where it has none."""
        return self.headings[column] or f"column {letter(column)} (no heading)"


def plain(text: str) -> str:
    """A cell on one line, without characters that cannot be seen."""
    seen = "".join(c for c in text if c.isprintable() or c.isspace())
    return " ".join(seen.split())


def letter(column: int) -> str:
    """A column's letter in a spreadsheet: 0 is A, 26 is AA."""
    name = ""
    column += 1
    while column:
        column, rest = divmod(column - 1, 26)
        name = chr(ord("A") + rest) + name
    return name


def sheet_of(name: str, lines: Iterable[Sequence[str]], told: Sequence[str] = ()) -> Sheet:
    """A sheet whose first filled row holds the headings; rows without any text are left out."""
    filled = _filled(lines)
    heading_row, found = next(filled, (1, ()))
    headings = tuple(plain(cell) for cell in found)
    while headings and not headings[-1]:
        headings = headings[:-1]
    if not headings:
        raise SheetError(name, None, None, "is empty", "name a sheet with headings and rows")
    rows = tuple(SheetRow(number, _fitted(name, number, line, headings)) for number, line in filled)
    return Sheet(name=name, heading_row=heading_row, headings=headings, rows=rows, told=tuple(told))


def _filled(lines: Iterable[Sequence[str]]) -> Iterator[tuple[int, Sequence[str]]]:
    for number, line in enumerate(lines, start=1):
        if any(cell.strip() for cell in line):
            yield number, line


def _fitted(
    name: str, number: int, line: Sequence[str], headings: Sequence[str]
) -> tuple[str, ...]:
    """As many cells as headings: a spreadsheet leaves out empty cells at a row's end."""
    width = len(headings)
    if any(cell.strip() for cell in line[width:]):
        raise SheetError(
            name,
            number,
            None,
            f"has {len(line)} cells where there are {width} headings",
            "put quotes round a text with a comma, or give the column a heading",
        )
    return tuple(cell.strip() for cell in line[:width]) + ("",) * (width - len(line))


def read_sheet(path: Path, tab: str | None = None) -> Sheet:
    """Reads a file by its ending; `tab` names a workbook's sheet.

    Raises:
        SheetError: the file is missing or unsound; the sentence says what to do.
    """
    from assistant.importing.csv_sheet import read_csv
    from assistant.importing.workbook import read_workbook

    ending = path.suffix.lower()
    name = str(path)
    if ending not in (".csv", ".tsv", ".txt", ".xlsx", ".xlsm"):
        raise SheetError(
            name, None, None, f"'{path.suffix}' is no kind of sheet", "save it as .csv or .xlsx"
        )
    try:
        raw = path.read_bytes()
    except FileNotFoundError:
        raise SheetError(name, None, None, "there is no such file", "name one that is") from None
    except OSError as error:
        raise SheetError(
            name, None, None, f"cannot be read ({error.strerror})", "check its permissions"
        ) from error
    if ending in (".xlsx", ".xlsm"):
        return read_workbook(raw, name, tab)
    if tab is not None:
        raise SheetError(name, None, None, "a CSV file has one sheet only", "leave out --sheet")
    return read_csv(raw, name)
