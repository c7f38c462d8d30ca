"""Reads a CSV table into rows, or says in one sentence what is wrong with it and where."""

from __future__ import annotations

import csv
import dataclasses
import io
from collections.abc import Callable, Iterator, Mapping, Sequence
from pathlib import Path
from typing import Any, Protocol, TypeVar

from assistant.errors import TableError
from assistant.records.rows import Row

R = TypeVar("R", bound=Row)


def read_table(path: Path, kind: type[R]) -> dict[str, R]:
    """All rows of the table, by id, in the file's order.

    Raises:
        TableError: the file is missing, is not UTF-8, lacks a column, repeats an id or holds
            a cell that cannot be read; it names file, row (header = 1), field and the mend.
    """
    return parse_table(decode(path), kind, str(path))


def decode(path: Path) -> str:
    """The file's text; UTF-8 with or without a byte order mark."""
    try:
        raw = path.read_bytes()
    except FileNotFoundError:
        raise TableError(
            str(path), None, None, "the table is missing", "put it there or name the right --shop"
        ) from None
    except OSError as error:
        raise TableError(
            str(path), None, None, f"cannot be read ({error.strerror})", "check its permissions"
        ) from error
    try:
        return raw.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        # The error's own bytes: they lack the byte order mark, and its places count without it.
        sound, bad = error.object[: error.start].decode("utf-8"), error.object[error.start]
        row = sum(unquoted.count("\n") for unquoted in sound.split('"')[::2]) + 1
        raise TableError(
            str(path),
            row,
            None,
            f"byte 0x{bad:02x} is not UTF-8",
            "save the table as 'CSV UTF-8'",
        ) from error


Report = Callable[[TableError], None]


def fail(error: TableError) -> None:
    """Ends the reading at the first fault."""
    raise error


def parse_table(
    text: str,
    kind: type[R],
    name: str,
    report: Report = fail,
    places: dict[str, int] | None = None,
) -> dict[str, R]:
    """`read_table` on text already in hand; `name` is how errors call the file.

    Faults go to `report`; where it returns, the row at fault is left out and reading goes on.
    `places` takes in the line of the file on which each row begins, by its id.
    """
    reader = csv.reader(io.StringIO(text, newline=""), strict=True)
    lines = _lines(reader, name, report)
    header = [field.strip() for field in next(lines, (1, 1, []))[2]]
    fields = dataclasses.fields(kind)  # type: ignore[arg-type]
    if faults := [fault for field in fields if (fault := _column(header, field, name))]:
        for fault in faults:
            report(fault)
        return {}
    plan = [(f.name, header.index(f.name), f.metadata) for f in fields]

    rows: dict[str, R] = {}
    for number, at_line, line in lines:
        if not any(value.strip() for value in line):
            continue
        row: R | None = None
        try:
            row = kind(**_values(plan, line, len(header), name, number))
            if row.key in rows:
                raise TableError(
                    name,
                    number,
                    kind.keys[-1],
                    f"the id '{row.key}' stands twice",
                    "give one of the two rows another id",
                )
        except TableError as error:
            error.line = at_line
            report(error)
            continue
        rows[row.key] = row
        if places is not None:
            places[row.key] = at_line
    return rows


def _column(header: Sequence[str], field: dataclasses.Field[Any], name: str) -> TableError | None:
    """What is wrong with a column's heading."""
    if header.count(field.name) > 1:
        return TableError(name, 1, field.name, "the column stands twice", "keep one of them")
    if field.name in header:
        return None
    mend = f"add a column headed '{field.name}'"
    mend += "" if field.metadata["needed"] else " (its cells may stay empty)"
    return TableError(name, 1, field.name, "the column is missing", mend)


def _values(
    plan: Sequence[tuple[str, int, Mapping[str, Any]]],
    line: Sequence[str],
    width: int,
    name: str,
    number: int,
) -> dict[str, Any]:
    """The cells of a row, read."""
    if len(line) != width:
        raise TableError(
            name,
            number,
            None,
            f"has {len(line)} cells where the header has {width}",
            "put quotes round a text with a comma, or fill in the missing cells",
        )
    values = {}
    for field_name, at, card in plan:
        raw = line[at].strip()
        if not raw:
            if card["needed"]:
                raise TableError(name, number, field_name, "is empty", "fill it in")
            values[field_name] = card["empty"]
            continue
        try:
            values[field_name] = card["reader"](raw)
        except ValueError as error:
            raise TableError(
                name, number, field_name, f"'{raw[:60]}' cannot be read", f"write {error}"
            ) from error
    return values


class _Reader(Protocol):
    """What `csv.reader` gives."""

    line_num: int

    def __iter__(self) -> Iterator[list[str]]: ...
    def __next__(self) -> list[str]: ...


def _lines(reader: _Reader, name: str, report: Report) -> Iterator[tuple[int, int, list[str]]]:
    """Each row with its number and the line of the file on which it begins."""
    number, begins = 0, 1
    try:
        for number, line in enumerate(reader, start=1):
            yield number, begins, line
            begins = reader.line_num + 1
    except csv.Error as error:
        report(
            TableError(
                name, number + 1, None, f"is not sound CSV ({error})", "check its quotes and commas"
            )
        )
