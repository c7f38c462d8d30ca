"""A small shop on disk, written row by row, and what lint's rules for tables say of it.

    folder = shop(tmp_path, valve("gate-2"), seal("UQ-10"), says("fits", "UQ-10"))
    told(folder, "no-price") == ["knowledge/tables/seals.csv:2: warning: ..."]

A table's header is line 1 and the rows follow in the order in which they are given; the makers
and styles that they name are written too. Nothing is checked on the way, so that any row may
be wrong.
"""

from __future__ import annotations

import csv
import dataclasses
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Any

from assistant.linting.finding import Rule
from assistant.linting.gather import gather
from assistant.linting.gathered import Gathered
from assistant.linting.report import lines
from assistant.linting.rules.tables import TABLE_RULES
from assistant.records.cells import OPEN_FROM, OPEN_TO
from assistant.records.rows import TABLES, Brand, Build, Evidence, FlushValve, Row, Seal, Style
from tests.trade import row

TODAY, OLDEST = date(2026, 11, 25), 1095
RULES = {rule.name: rule for rule in TABLE_RULES}


@dataclass(frozen=True)
class Case:
    """Rows at fault, the line that is told of them, and the rows mended."""

    rule: str
    why: str
    bad: Sequence[Row]
    line: str
    good: Sequence[Row]


def shop(folder: Path, *rows: Row) -> Path:
    """Writes a shop of these rows; gives its folder."""
    knowledge = folder / "knowledge"
    for name in ("tables", "notes", "pictures"):
        (knowledge / name).mkdir(parents=True, exist_ok=True)
    (knowledge / "shop.toml").write_text('name = "Ulm Seals"\n', encoding="utf-8")
    for kind, given in _by_kind(rows).items():
        names = [field.name for field in dataclasses.fields(kind)]  # type: ignore[arg-type]
        with (knowledge / "tables" / kind.file).open("w", encoding="utf-8", newline="") as out:
            writer = csv.writer(out, lineterminator="\n")
            writer.writerow(names)
            writer.writerows([written(getattr(one, name)) for name in names] for one in given)
    return folder


def table(folder: Path, file: str) -> Path:
    """A table's file."""
    return folder / "knowledge" / "tables" / file


def told(folder: Path, *rules: str, today: date = TODAY, oldest: int = OLDEST) -> list[str]:
    """The lines that these rules for tables tell, or all of them, without the one that counts."""
    return told_of(gather(folder, today, oldest), *rules)


def told_of(gathered: Gathered, *rules: str) -> list[str]:
    """`told` of a shop that is gathered already."""
    chosen: Iterable[Rule] = [RULES[name] for name in rules] or TABLE_RULES
    return [*lines([(rule, one) for rule in chosen for one in rule.find(gathered)])][:-1]


def written(value: Any) -> str:
    """A value as it stands in a cell."""
    if value is None:
        return ""
    if value in (OPEN_FROM, OPEN_TO):
        return "open"
    if isinstance(value, bool):
        return "yes" if value else "no"
    return "; ".join(map(written, value)) if isinstance(value, tuple) else str(value)


def _by_kind(rows: Iterable[Row]) -> dict[type[Row], list[Row]]:
    given: dict[type[Row], list[Row]] = {kind: [] for kind in TABLES}
    for one in rows:
        if isinstance(one, Evidence) and not one.evidence:
            one = dataclasses.replace(one, evidence=f"E{len(given[Evidence]) + 1:03}")
        if isinstance(one, FlushValve | Seal):
            _add(given, row(Style, style=one.style, plain_name=one.style))
        if isinstance(one, Build):
            _add(given, row(Brand, brand=one.brand))
        given[type(one)].append(one)
    return given


def _add(given: dict[type[Row], list[Row]], one: Row) -> None:
    if one.key not in {other.key for other in given[type(one)]}:
        given[type(one)].append(one)
