"""A sheet's rows as a table's cells: cleaned, read by the table's own readers, faults reported."""

from __future__ import annotations

import dataclasses
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from assistant.importing.faults import Report, SheetError
from assistant.importing.ids import Ids
from assistant.importing.matching import Match, Matching
from assistant.importing.money import amount, decimal_comma
from assistant.importing.sheet import ERRORS, Sheet, SheetRow, plain
from assistant.records import cells
from assistant.records.rows import Row


@dataclass(frozen=True)
class Cell:
    """A filled cell: its text as the table would hold it, and the value that it is read as."""

    text: str
    value: Any


@dataclass(frozen=True)
class Incoming:
    """A row of the sheet: what it calls itself, as written, and its filled cells by our column."""

    row: int
    spelled: tuple[str, ...]
    cells: Mapping[str, Cell]


@dataclass(frozen=True)
class Cleaned:
    """An amount that was rewritten, and by which rule."""

    row: int
    heading: str
    was: str
    now: str
    rule: str


@dataclass(frozen=True)
class Read:
    """What the sheet says, in the table's terms.

    `silent` rows fill no column of ours; `kept_out` are the ids that are left out for being new.
    """

    rows: tuple[Incoming, ...]
    cleaned: tuple[Cleaned, ...]
    silent: tuple[int, ...]
    kept_out: tuple[str, ...]


def read_rows(
    sheet: Sheet,
    kind: type[Row],
    matching: Matching,
    currency: str,
    report: Report,
    only: Ids | None = None,
) -> Read:
    """Reads every matched cell; a row with a fault is left out of what is returned.

    Where `only` is given, what is new to it is left out, whatever its other cells hold.
    """
    keys = _places(matching, kind.keys)
    reading = _Reading(sheet, kind, matching, currency)
    rows: list[Incoming] = []
    silent: list[int] = []
    kept_out: dict[str, None] = {}
    for row in sheet.rows:
        spelled = tuple(row.cells[at] for at in keys)
        if only is not None and all(map(plain, spelled)):
            meant = only.meant(spelled)
            if not meant.known and meant.like is None:
                kept_out[meant.key] = None
                continue
        filled, faults = reading.cells_of(row)
        if not filled and not faults:
            silent.append(row.number)
            continue
        faults += _without_key(sheet, row, kind, keys)
        for fault in faults:
            report(fault)
        if not faults:
            rows.append(Incoming(row.number, spelled, filled))
    return Read(tuple(rows), tuple(reading.cleaned), tuple(silent), tuple(kept_out))


class _Reading:
    """Reads cells by the table's readers, and money by how its column writes cents."""

    def __init__(self, sheet: Sheet, kind: type[Row], matching: Matching, currency: str) -> None:
        self._sheet, self._matching, self._currency = sheet, matching, currency
        fields = dataclasses.fields(kind)  # type: ignore[arg-type]
        self._cards = {field.name: field.metadata for field in fields}
        self._commas = {
            match.column: decimal_comma((row.cells[match.at] for row in sheet.rows), currency)
            for match in matching.matches
            if self._cards[match.column]["reader"] is cells.money
        }
        self.cleaned: list[Cleaned] = []

    def cells_of(self, row: SheetRow) -> tuple[dict[str, Cell], list[SheetError]]:
        """The filled cells of a row by our column, and what is wrong with others."""
        filled: dict[str, Cell] = {}
        faults: list[SheetError] = []
        for match in self._matching.matches:
            card, text = self._cards[match.column], plain(row.cells[match.at])
            if not text:
                continue
            try:
                _no_formula(text)
                if match.column in self._commas:
                    text = self._plain_amount(row, match, text)
                value = card["reader"](text)
            except ValueError as error:
                faults.append(_unreadable(self._sheet, row, match, error))
                continue
            if value != card["empty"]:  # a lone ';' holds no item, and empties nothing
                filled[match.column] = Cell(text, value)
        return filled, faults

    def _plain_amount(self, row: SheetRow, match: Match, text: str) -> str:
        made = amount(text, self._currency, self._commas[match.column])
        for rule in made.rules:
            self.cleaned.append(Cleaned(row.number, match.heading, text, made.text, rule))
        return made.text


def _no_formula(text: str) -> None:
    if text in ERRORS:
        raise ValueError("what the spreadsheet could not work out")
    if text.startswith("="):
        raise ValueError("the value of the formula")


def _unreadable(sheet: Sheet, row: SheetRow, match: Match, error: ValueError) -> SheetError:
    raw = plain(row.cells[match.at])
    return SheetError(
        sheet.name, row.number, match.heading, f"'{raw[:60]}' cannot be read", f"write {error}"
    )


def _places(matching: Matching, columns: Sequence[str]) -> list[int]:
    at = {match.column: match.at for match in matching.matches}
    return [at[column] for column in columns]


def _without_key(
    sheet: Sheet, row: SheetRow, kind: type[Row], keys: Sequence[int]
) -> list[SheetError]:
    return [
        SheetError(
            sheet.name,
            row.number,
            sheet.called(at),
            "is empty, so it is not known which row this is",
            f"fill in the {key}, or take the row out",
        )
        for key, at in zip(kind.keys, keys, strict=True)
        if not plain(row.cells[at])
    ]
