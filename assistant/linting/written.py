"""A CSV table as it is written: its columns, and every fault of its header and its cells."""

from __future__ import annotations

import dataclasses
from collections import Counter
from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from assistant.linting.columns import Columns, Marks
from assistant.linting.csv_columns import Sheet, Tell, sheet
from assistant.linting.lazy import Values
from assistant.records import cells
from assistant.records.rows import Row


@dataclass(frozen=True)
class Written:
    """A table as far as it can be read.

    `keys` are the ids of the rows in `columns`; `sound` marks the rows that can be read. `ids`
    are all ids as written, `None` where the table was not read to its end.
    """

    kind: type[Row]
    columns: Columns
    keys: Sequence[str]
    values: Values
    sound: Marks
    ids: Collection[str] | None


def nothing(kind: type[Row]) -> Written:
    """A table of which nothing can be read."""
    empty: dict[str, Sequence[str]] = {field.name: () for field in _fields(kind)}
    return Written(kind, Columns(empty, ()), (), {}, np.zeros(0, np.bool_), None)


def written(text: str, kind: type[Row], tell: Tell) -> Written:
    """Reads a table's text; each fault is told, and what is at fault is left out."""
    found = sheet(text, tell)
    ended = _heads(found.header, kind, tell) and found.ended
    columns = Columns({f.name: found.column(f.name) for f in _fields(kind)}, found.lines)
    found.columns.clear()  # a million rows need not be kept twice
    keys = _keys(columns, kind)
    sound = np.ones(len(columns), np.bool_)
    values = {f.name: _read(columns, f, f.name in found.header, sound, tell) for f in _fields(kind)}
    _once(keys, columns.lines, sound, tell)
    ids = {*keys, *_ids_of_odd(found, kind)} if ended else None
    return Written(kind, columns, keys, values, sound, ids)


def _fields(kind: type[Row]) -> tuple[dataclasses.Field[Any], ...]:
    return dataclasses.fields(kind)  # type: ignore[arg-type]


def _heads(header: Sequence[str], kind: type[Row], tell: Tell) -> bool:
    """Whether every column is there once that must be filled."""
    fine = True
    for field in _fields(kind):
        needed = field.metadata["needed"]
        if header.count(field.name) > 1:
            tell(1, f"the column '{field.name}' stands twice", "keep one of them")
        if field.name not in header:
            may = "" if needed else " (its cells may stay empty)"
            tell(
                1,
                f"the column '{field.name}' is missing",
                f"add a column headed '{field.name}'{may}",
            )
            fine = fine and not needed
    return fine


def _keys(columns: Columns, kind: type[Row]) -> Sequence[str]:
    if len(kind.keys) == 1:
        return columns.cells[kind.keys[0]]
    return [
        "/".join(parts) for parts in zip(*(columns.cells[key] for key in kind.keys), strict=True)
    ]


def _ids_of_odd(found: Sheet, kind: type[Row]) -> Iterator[str]:
    """The ids of rows with too few or too many cells, as far as they have one."""
    if len(kind.keys) == 1 and kind.keys[0] in found.header:
        at = found.header.index(kind.keys[0])
        yield from (row[at].strip() for row in found.odd if len(row) > at)


def _read(
    columns: Columns, field: dataclasses.Field[Any], is_there: bool, sound: Marks, tell: Tell
) -> dict[str, Any] | None:
    """What the cells of a column say; `None` where text is text."""
    name, card = field.name, field.metadata
    if card["needed"] and "" in columns.cells[name]:
        for row in columns.coded(name).rows_of([""]):
            sound[row] = False
            if is_there:
                tell(columns.lines[row], f"the cell '{name}' is empty", "fill it in")
    if card["reader"] is cells.text:
        return None
    values, bad = {"": card["empty"]}, {}
    for raw in columns.coded(name).values:
        if raw:
            try:
                values[raw] = card["reader"](raw)
            except ValueError as error:
                bad[raw] = str(error)
    for row in columns.coded(name).rows_of(bad):
        raw = columns.cells[name][row]
        sound[row] = False
        tell(columns.lines[row], f"{name} '{raw[:60]}' cannot be read", f"write {bad[raw]}")
    return values


def _once(keys: Sequence[str], lines: Sequence[int], sound: Marks, tell: Tell) -> None:
    """An id that stands twice names nothing; the first row keeps it."""
    if len({*keys}) == len(keys):
        return
    twice = {key for key, count in Counter(keys).items() if count > 1}
    first: dict[str, int] = {}
    for row, key in enumerate(keys):
        if key not in twice or not key.strip("/"):
            continue
        if key in first:
            sound[row] = False
            tell(
                lines[row],
                f"the id '{key}' stands twice, first on line {lines[first[key]]}",
                "give one of the two rows another id",
            )
        else:
            first[key] = row
