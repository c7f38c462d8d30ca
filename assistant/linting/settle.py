"""Which rows of the tables are sound when the tables are seen together.

What is wrong is told by the rules; here a row is left out, so that no other rule meets a name
that leads nowhere.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Mapping
from itertools import compress

from assistant.linting.columns import Columns, Marks
from assistant.linting.written import Written
from assistant.records.rows import Row
from assistant.records.tables import RANGES


def references(kind: type[Row]) -> dict[str, str]:
    """The columns that name a row of another table, and that table's file."""
    fields = dataclasses.fields(kind)  # type: ignore[arg-type]
    return {f.name: f.metadata["to"] for f in fields if f.metadata["to"]}


def names_both_or_neither(columns: Columns) -> Marks:
    """Evidence must name a valve or a build, and just one of them."""
    marks: Marks = columns.coded("valve").are("") == columns.coded("build").are("")
    return marks


def reversed_ranges(columns: Columns, kind: type[Row], low: str, high: str) -> list[int]:
    """The rows in which the lower end of a range lies above the upper."""
    readers = {f.name: f.metadata["reader"] for f in dataclasses.fields(kind)}  # type: ignore[arg-type]
    found = []
    for row, (first, last) in enumerate(zip(columns.cells[low], columns.cells[high], strict=True)):
        if first and last:
            try:
                if readers[low](first) > readers[high](last):
                    found.append(row)
            except ValueError:
                pass  # told as a cell that cannot be read
    return found


def settle(read: Mapping[str, Written]) -> dict[str, Marks]:
    """The rows that can be read, are not at odds with themselves, and name only such rows."""
    sound = {file: _by_itself(table) for file, table in read.items()}
    again = True
    while again:  # a row that is left out may leave out what names it
        again = False
        for file, table in read.items():
            for column, to in references(table.kind).items():
                known = {*compress(read[to].keys, sound[to])}
                coded = table.columns.coded(column)
                if lost := [value for value in coded.values if value and value not in known]:
                    left = sound[file].copy()
                    left[coded.rows_of(lost)] = False
                    again = again or bool((left != sound[file]).any())
                    sound[file] = left
    return sound


def _by_itself(table: Written) -> Marks:
    sound = table.sound.copy()
    if table.kind.file == "fitment.csv":
        sound &= ~names_both_or_neither(table.columns)
    for low, high in RANGES.get(table.kind.file, ()):
        sound[reversed_ranges(table.columns, table.kind, low, high)] = False
    return sound
