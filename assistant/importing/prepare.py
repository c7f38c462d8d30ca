"""A sheet from its file to a plan that holds, with nothing written."""

from __future__ import annotations

import codecs
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from assistant.importing.faults import SheetError, WriteError
from assistant.importing.ids import Ids
from assistant.importing.incoming import Read, read_rows
from assistant.importing.matching import Matching, match_columns
from assistant.importing.plan import Plan, Planner
from assistant.importing.prove import prove
from assistant.importing.sheet import Sheet, read_sheet
from assistant.importing.writing import swap_in
from assistant.importing.written import written
from assistant.records.load import decode, parse_table
from assistant.records.rows import TABLES, Row

BY_NAME: Mapping[str, type[Row]] = {kind.file.removesuffix(".csv"): kind for kind in TABLES}


@dataclass(frozen=True, kw_only=True)
class Asked:
    """What to import: the sheet's file, the table, and how the sheet is to be read.

    `named` has our column, or nothing for 'leave it out', by the sheet's heading.
    """

    file: Path
    kind: type[Row]
    shop: Path
    currency: str
    tab: str | None
    named: Mapping[str, str]
    known_only: bool = False

    @property
    def folder(self) -> Path:
        """Where the shop's tables lie."""
        return self.shop / "knowledge" / "tables"

    @property
    def table(self) -> Path:
        """The table's file."""
        return self.folder / self.kind.file


@dataclass(frozen=True, kw_only=True)
class Prepared:
    """What came of it. With faults there is nothing to write."""

    asked: Asked
    sheet: Sheet
    matching: Matching
    read: Read
    plan: Plan
    faults: tuple[SheetError, ...]
    before: bytes

    @property
    def changes_anything(self) -> bool:
        """Whether the table would be another."""
        return bool(self.plan.changes or self.plan.new)

    def write(self) -> None:
        """Writes the table.

        Raises:
            WriteError: it could not be written, and is as it was.
        """
        if self.faults:
            raise self.faults[0]
        mark = codecs.BOM_UTF8 if self.before.startswith(codecs.BOM_UTF8) else b""
        swap_in(self.asked.table, self.before, mark + self.plan.after.text.encode("utf-8"))


def prepare(asked: Asked) -> Prepared:
    """Reads the sheet and plans the changes; faults of single cells are collected.

    Raises:
        UserError: the sheet cannot be read or matched at all, or a table of the shop is wrong.
    """
    sheet = read_sheet(asked.file, asked.tab)
    matching = match_columns(sheet, asked.kind, asked.named)
    text = decode(asked.table)
    before = asked.table.read_bytes()
    if before.decode("utf-8-sig") != text:
        raise WriteError(str(asked.table), "is being changed by somebody", "import it again")
    had = parse_table(text, asked.kind, str(asked.table))
    faults: list[SheetError] = []
    only = Ids(had) if asked.known_only else None
    read = read_rows(sheet, asked.kind, matching, asked.currency, faults.append, only)
    planner = Planner(sheet.name, written(text, asked.kind), had, matching, faults.append)
    plan = planner.plan(read.rows)
    prove(asked.folder, sheet.name, plan, matching, faults.append)
    return Prepared(
        asked=asked,
        sheet=sheet,
        matching=matching,
        read=read,
        plan=plan,
        faults=tuple(sorted(faults, key=lambda fault: fault.row or 0)),
        before=before,
    )
