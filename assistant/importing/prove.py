"""A planned table read and cross-checked with all the others, before anything is written."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from assistant.importing.faults import Report, SheetError
from assistant.importing.matching import Matching
from assistant.importing.plan import Plan
from assistant.records.load import parse_table, read_table
from assistant.records.rows import TABLES, Row
from assistant.records.tables import Tables, reference_faults


def prove(folder: Path, name: str, plan: Plan, matching: Matching, report: Report) -> None:
    """Reports each row of the sheet that would not hold among the shop's tables.

    Raises:
        RuntimeError: the planned text does not say what was planned; a fault of ours.
    """
    kind = plan.before.kind
    file = str(folder / kind.file)
    rows = parse_table(plan.after.text, kind, file)
    _says_what_was_planned(plan, parse_table(plan.before.text, kind, file), rows)
    read: dict[str, Mapping[str, Any]] = {
        other.file: read_table(folder / other.file, other) for other in TABLES if other is not kind
    }
    read[kind.file] = rows
    Tables.of(read)
    for fault in reference_faults(folder, read):
        row = plan.rows.get(fault.key or "")
        if fault.file != file or row is None:
            raise fault  # it was there before the sheet came
        heading = matching.heading_of(fault.field or "") or fault.field
        report(SheetError(name, row, heading, fault.problem, fault.mend))


def _says_what_was_planned(plan: Plan, had: Mapping[str, Row], rows: Mapping[str, Row]) -> None:
    kind = plan.before.kind
    cells = {key: dict(vars(row)) for key, row in had.items()}
    for change in plan.changes:
        cells[change.key][change.column] = _read(kind, change.column, change.new)
    same = {key: vars(row) for key, row in rows.items() if key in cells} == cells
    if not same or list(rows) != [*had, *(new.key for new in plan.new)]:
        raise RuntimeError(f"the new text of {kind.file} does not read as planned")


def _read(kind: type[Row], column: str, text: str) -> Any:
    return kind.__dataclass_fields__[column].metadata["reader"](text)  # type: ignore[attr-defined]
