"""A table as it is written: each row's own text, so that a row left alone stays byte for byte."""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from functools import cached_property

from assistant.records.rows import Row

_FIELD = re.compile(r'"(?:[^"]|"")*"|[^,\r\n]*')


@dataclass(frozen=True)
class Line:
    """A row of the file: its cells as written, quotes and all, and the line ending."""

    fields: tuple[str, ...]
    ending: str

    @property
    def cells(self) -> tuple[str, ...]:
        """What the cells hold."""
        return tuple(_unquoted(field) for field in self.fields)

    @property
    def text(self) -> str:
        """The row as it stands in the file."""
        return ",".join(self.fields) + self.ending


@dataclass(frozen=True)
class Written:
    """A sound table's text, row by row; the first is the header."""

    kind: type[Row]
    lines: tuple[Line, ...]

    @property
    def text(self) -> str:
        """The whole file."""
        return "".join(line.text for line in self.lines)

    @cached_property
    def header(self) -> list[str]:
        """The columns' names, among them columns of the shop's own."""
        return [cell.strip() for cell in self.lines[0].cells]

    @cached_property
    def at(self) -> dict[str, int]:
        """The place of each row, by its id."""
        keys = [self.header.index(key) for key in self.kind.keys]
        found = {}
        for place, line in enumerate(self.lines[1:], start=1):
            cells = line.cells
            if any(cell.strip() for cell in cells):
                found["/".join(cells[key].strip() for key in keys)] = place
        return found

    def cell(self, key: str, column: str) -> str:
        """A cell's text."""
        return self.lines[self.at[key]].cells[self.header.index(column)].strip()

    def with_cells(self, changes: Mapping[str, Mapping[str, str]]) -> Written:
        """The table with some cells changed, by id and column; quotes stay where they were."""
        lines = list(self.lines)
        for key, cells in changes.items():
            line = lines[self.at[key]]
            fields = list(line.fields)
            for column, text in cells.items():
                at = self.header.index(column)
                fields[at] = _quoted(text, always=fields[at].startswith('"'))
            lines[self.at[key]] = replace(line, fields=tuple(fields))
        return replace(self, lines=tuple(lines))

    def with_rows(self, rows: Iterable[Mapping[str, str]]) -> Written:
        """The table with rows added at the end, in its own columns, quotes and line endings."""
        always = all(field.startswith('"') for line in self.lines for field in line.fields if field)
        lines = list(self.lines)
        ending = self.lines[0].ending or "\n"
        for row in rows:
            fields = tuple(_quoted(row.get(column, ""), always=always) for column in self.header)
            last = lines[-1].ending  # a file whose last line does not end keeps it so
            lines[-1] = replace(lines[-1], ending=last or ending)
            lines.append(Line(fields, ending if last else ""))
        return replace(self, lines=tuple(lines))


def written(text: str, kind: type[Row]) -> Written:
    """The rows of a table's text that `parse_table` has found sound."""
    physical = list(io.StringIO(text, newline=""))
    reader = csv.reader(physical, strict=True)
    lines, begins = [], 0
    for _ in reader:
        lines.append(_line("".join(physical[begins : reader.line_num])))
        begins = reader.line_num
    return Written(kind, tuple(lines))


def _line(raw: str) -> Line:
    fields, at = [], 0
    while found := _FIELD.match(raw, at):
        fields.append(found[0])
        at = found.end()
        if raw[at : at + 1] != ",":
            break
        at += 1
    return Line(tuple(fields), raw[at:])


def _unquoted(field: str) -> str:
    return field[1:-1].replace('""', '"') if field.startswith('"') else field


def _quoted(text: str, *, always: bool) -> str:
    if always or any(mark in text for mark in ',"\r\n'):
        return '"' + text.replace('"', '""') + '"'
    return text
