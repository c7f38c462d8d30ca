"""What importing a sheet would change in a table: decided here, worded and written elsewhere."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from assistant.importing.faults import Report, SheetError
from assistant.importing.ids import Ids, look
from assistant.importing.incoming import Cell, Incoming
from assistant.importing.look_again import again_at_change, again_at_row
from assistant.importing.matching import Matching
from assistant.importing.sheet import plain
from assistant.importing.written import Written
from assistant.records.rows import Row


@dataclass(frozen=True)
class Change:
    """A cell that the sheet says otherwise than the table."""

    row: int
    key: str
    column: str
    old: str
    new: str
    again: str | None = None


@dataclass(frozen=True)
class New:
    """A row that the table does not have yet."""

    row: int
    key: str
    cells: Mapping[str, str]
    again: str | None = None


@dataclass(frozen=True)
class Plan:
    """The table before and after, and what lies between."""

    before: Written
    after: Written
    changes: tuple[Change, ...]
    new: tuple[New, ...]
    unchanged: tuple[str, ...]
    not_in_sheet: tuple[str, ...]
    rows: Mapping[str, int]  # the sheet's row by the table's id

    @property
    def changed_rows(self) -> tuple[str, ...]:
        """The ids of the rows in which a cell changes."""
        return tuple(dict.fromkeys(change.key for change in self.changes))


class Planner:
    """Weighs a sheet's rows against a table's, one by one."""

    def __init__(
        self,
        name: str,
        table: Written,
        had: Mapping[str, Row],
        matching: Matching,
        report: Report,
    ) -> None:
        self._name, self._table, self._had, self._matching = name, table, had, matching
        self._report, self._ids = report, Ids(had)

    def plan(self, rows: Iterable[Incoming]) -> Plan:
        """The changes that the rows ask for; faults are reported, and their rows left out."""
        changes: list[Change] = []
        new: list[New] = []
        unchanged: list[str] = []
        merged = self._merged(rows)
        for key, row in merged.items():
            if key in self._had:
                found = self._changes(key, row)
                changes += found
                if not found:
                    unchanged.append(key)
            elif made := self._new(key, row):
                new.append(made)
        cells: dict[str, dict[str, str]] = {}
        for change in changes:
            cells.setdefault(change.key, {})[change.column] = change.new
        after = self._table.with_cells(cells).with_rows(row.cells for row in new)
        return Plan(
            before=self._table,
            after=after,
            changes=tuple(changes),
            new=tuple(new),
            unchanged=tuple(unchanged),
            not_in_sheet=tuple(key for key in self._had if key not in merged),
            rows={key: row.row for key, row in merged.items()},
        )

    def _merged(self, rows: Iterable[Incoming]) -> dict[str, Incoming]:
        """The sheet's rows by id. A row said twice is one if no cell contradicts another."""
        merged: dict[str, Incoming] = {}
        looks: dict[str, str] = {}
        for row in rows:
            key = self._key(row)
            if key is None:
                continue
            first = looks.setdefault(look(key), key)
            if first != key and key not in self._had:
                self._fault(row.row, f"'{key}' and '{first}' look alike", "write both the same way")
                continue
            if key in merged:
                row = self._both(key, merged[key], row)
            merged[key] = row
        return merged

    def _key(self, row: Incoming) -> str | None:
        """The id of the table's row that is meant, or of a new one."""
        meant = self._ids.meant(row.spelled)
        if meant.like is None:
            return meant.key
        self._fault(
            row.row,
            f"'{meant.key}' is not in {self._table.kind.file}, where '{meant.like}' is",
            f"write '{meant.like}' if that is meant, or another id",
        )
        return None

    def _both(self, key: str, first: Incoming, second: Incoming) -> Incoming:
        for column, cell in second.cells.items():
            had = first.cells.get(column)
            if had is not None and had.value != cell.value and column not in self._table.kind.keys:
                self._report(
                    SheetError(
                        self._name,
                        second.row,
                        self._matching.heading_of(column),
                        f"'{key}' has '{cell.text}' here and '{had.text}' in row {first.row}",
                        "keep the row that is right",
                    )
                )
        return Incoming(first.row, first.spelled, {**second.cells, **first.cells})

    def _changes(self, key: str, row: Incoming) -> list[Change]:
        had = self._had[key]
        differ = {
            column: cell
            for column, cell in row.cells.items()
            if column not in had.keys and not _same(getattr(had, column), cell)
        }
        if not differ:
            return []
        above = again_at_row(vars(had) | {column: cell.value for column, cell in differ.items()})
        return [
            Change(
                row.row,
                key,
                column,
                self._table.cell(key, column),
                cell.text,
                _both_told(
                    again_at_change(getattr(had, column), cell.value),
                    above if column in ("price", "cost") else None,
                ),
            )
            for column, cell in differ.items()
        ]

    def _new(self, key: str, row: Incoming) -> New | None:
        kind = self._table.kind
        needed = [
            field.name
            for field in dataclasses.fields(kind)  # type: ignore[arg-type]
            if field.metadata["needed"] and field.name not in row.cells
        ]
        if needed:
            self._fault(
                row.row,
                f"'{key}' is new to {kind.file}, and {_listed(needed)} must be filled",
                "fill that in, or leave out what is new with --known-only",
            )
            return None
        cells = {column: cell.text for column, cell in row.cells.items()}
        values = {column: cell.value for column, cell in row.cells.items()}
        return New(row.row, key, cells, again_at_row(values))

    def _fault(self, row: int, problem: str, mend: str) -> None:
        heading = self._matching.heading_of(self._table.kind.keys[-1])
        self._report(SheetError(self._name, row, heading, problem, mend))


def _same(had: Any, cell: Cell) -> bool:
    """Whether a cell says what the table has; spaces that nobody sees make no difference."""
    if isinstance(had, str) and isinstance(cell.value, str):
        return plain(had) == cell.value
    if isinstance(had, tuple):
        seen = (plain(value) if isinstance(value, str) else value for value in had)
        return bool(tuple(value for value in seen if value != "") == cell.value)
    return bool(had == cell.value)


def _both_told(*reasons: str | None) -> str | None:
    return "; ".join(filter(None, reasons)) or None


def _listed(names: Sequence[str]) -> str:
    *most, last = names
    return f"{', '.join(most)} and {last}" if most else last
