"""All of lint on a million pieces of evidence, against pandas reading the same files."""

from __future__ import annotations

import csv
import dataclasses
import tempfile
from collections.abc import Mapping
from datetime import date
from pathlib import Path
from typing import Any

from assistant.linting.lint import lint
from assistant.linting.report import counts
from assistant.linting.rules import RULES
from assistant.measuring.generated import tables_with
from assistant.measuring.timing import Measured, Ratio, by_turns
from assistant.records.rows import TABLES, Row
from assistant.records.tables import Tables

LARGE = 1_000_000
ROUNDS = 5
TODAY, OLDEST = date(2026, 11, 25), 1095


def run() -> Measured:
    """Every rule, for tables without notes; the verdicts are drawn by lot, so many are told."""
    import pandas as pd

    with tempfile.TemporaryDirectory() as place:
        folder = Path(place)
        files = write_shop(folder, tables_with(LARGE))
        found = lint(folder, TODAY, OLDEST)
        linted, read = by_turns(
            lambda: lint(folder, TODAY, OLDEST),
            lambda: [pd.read_csv(file) for file in files],
            rounds=ROUNDS,
        )
    told = counts(found)
    return Measured(
        (
            Ratio(
                f"lint of {LARGE:,} pieces of evidence ÷ pandas reading them", linted / read, 10.0
            ),
        ),
        (
            ("lint", f"{linted:.2f} s, {len(RULES)} rules"),
            ("pandas", f"{read:.2f} s, {len(files)} files"),
            ("found", f"{told['error']:,} errors, {told['warning']:,} warnings"),
        ),
    )


def write_shop(folder: Path, tables: Tables) -> list[Path]:
    """A shop of these tables, without notes; gives the tables' files."""
    knowledge = folder / "knowledge"
    (knowledge / "notes").mkdir(parents=True)
    (knowledge / "tables").mkdir()
    (knowledge / "shop.toml").write_text('name = "Bench"\n', encoding="utf-8")
    rows: Mapping[str, Mapping[str, Row]] = {
        "brands.csv": tables.brands, "styles.csv": tables.styles,
        "likenesses.csv": tables.likenesses, "flush_valves.csv": tables.valves,
        "toilets.csv": tables.builds, "build_valves.csv": tables.build_valves,
        "seals.csv": tables.seals, "fitment.csv": tables.evidence, "causes.csv": tables.causes,
        "questions.csv": tables.questions,
    }  # fmt: skip
    files = []
    for kind in TABLES:
        names = [field.name for field in dataclasses.fields(kind)]  # type: ignore[arg-type]
        files.append(knowledge / "tables" / kind.file)
        with files[-1].open("w", encoding="utf-8", newline="") as out:
            writer = csv.writer(out)
            writer.writerow(names)
            for row in rows[kind.file].values():
                writer.writerow([_cell(getattr(row, name)) for name in names])
    return files


def _cell(value: Any) -> str:
    """A value as a table's cell."""
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    return "; ".join(map(_cell, value)) if isinstance(value, tuple) else str(value)
