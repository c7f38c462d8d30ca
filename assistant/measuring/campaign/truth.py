"""What is true of a shop by its CSV files alone, asked of SQLite.

The look-ups read the files with `csv` and judge with `fitment.sql`: they share nothing with the
code that reads, decides, composes or checks, so that a mistake made there is not made here.
"""

from __future__ import annotations

import csv
import re
import sqlite3
from collections import defaultdict
from collections.abc import Mapping, Sequence
from functools import cached_property
from pathlib import Path
from typing import Any, TypeAlias

SQL = Path(__file__).with_name("fitment.sql")
EARLIEST, LATEST = 0, 9999  # years of a build of which the table does not know the ends

Row: TypeAlias = Mapping[str, str]
Place: TypeAlias = tuple[str, str, str]  # build, position, part_no


class Truth:
    """One shop's tables as the files have them: strings, empty where not known."""

    def __init__(self, tables: Path) -> None:
        self.tables = tables
        self._rows: dict[str, tuple[Row, ...]] = {}

    def rows(self, table: str) -> tuple[Row, ...]:
        """The rows of a table."""
        if table not in self._rows:
            with (self.tables / f"{table}.csv").open(newline="", encoding="utf-8") as file:
                self._rows[table] = tuple(csv.DictReader(file))
        return self._rows[table]

    @cached_property
    def seals(self) -> Mapping[str, Row]:
        """Every seal by its number."""
        return {row["part_no"]: row for row in self.rows("seals")}

    @cached_property
    def part_no(self) -> re.Pattern[str]:
        """Any number of the shop's own seals, whole: 'SL-20' does not stand in 'SL-204'."""
        longest = sorted(self.seals, key=len, reverse=True)
        return re.compile(rf"(?<![\w-])(?:{'|'.join(map(re.escape, longest)) or '(?!)'})(?![\w-])")

    @cached_property
    def builds(self) -> Mapping[str, Row]:
        """Every build by its id."""
        return {row["build"]: row for row in self.rows("toilets")}

    @cached_property
    def valves(self) -> Mapping[str, Mapping[str, Row]]:
        """The flush valves of every build by position."""
        by_id = {row["valve"]: row for row in self.rows("flush_valves")}
        found: dict[str, dict[str, Row]] = {build: {} for build in self.builds}
        for row in self.rows("build_valves"):
            found[row["build"]][row["position"]] = by_id[row["valve"]]
        return found

    def name_of(self, build: str) -> str:
        """A build's maker and model."""
        return f"{self.builds[build]['brand']} {self.builds[build]['model']}"

    @cached_property
    def models(self) -> Mapping[str, tuple[str, ...]]:
        """The builds of every maker and model."""
        found: dict[str, list[str]] = defaultdict(list)
        for build in self.builds:
            found[self.name_of(build)].append(build)
        return {name: tuple(ids) for name, ids in found.items()}

    def models_in(self, text: str) -> tuple[str, ...]:
        """The makers' models that a text names, in their order."""
        return tuple(dict.fromkeys(self._names.findall(text)))

    @cached_property
    def _names(self) -> re.Pattern[str]:
        longest = sorted(self.models, key=len, reverse=True)
        return re.compile(rf"(?<!\w)(?:{'|'.join(map(re.escape, longest)) or '(?!)'})(?!\w)")

    def span(self, build: str) -> tuple[int, int]:
        """The years in which a build may have been made; as wide as can be where not known."""
        first, last = self.builds[build]["made_from"], self.builds[build]["made_to"]
        return (
            int(first) if first.isdigit() else EARLIEST,
            int(last) if last.isdigit() else LATEST,
        )

    def made_within(self, model: str, first: int, last: int) -> tuple[str, ...]:
        """The builds of a model of which some may have been made in these years."""
        return tuple(
            b for b in self.models[model] if self.span(b)[0] <= last and first <= self.span(b)[1]
        )

    def with_number(self, number: str) -> tuple[str, ...]:
        """The builds that carry a number: the model's number, or the mark in the tank."""
        wanted = _bare(number)
        return tuple(
            build
            for build, row in self.builds.items()
            if wanted in (_bare(row["model_no"]), _bare(row["tank_mark"]))
        )

    @cached_property
    def verdicts(self) -> Mapping[Place, str]:
        """Whether each seal at each position of each build fits, or that nothing is known."""
        return {place: verdict for place, (verdict, _) in self._judged.items()}

    @cached_property
    def changes(self) -> Mapping[Place, str]:
        """The change under which a seal fits a position of a build."""
        return {
            place: change
            for place, (verdict, change) in self._judged.items()
            if verdict == "fits with change"
        }

    def fits(self, part_no: str, build: str, position: str = "main") -> bool:
        """Whether evidence says so, unchanged, and nothing is against it."""
        return self.verdicts.get((build, position, part_no)) == "fits"

    def fits_all(self, part_no: str, builds: Sequence[str], position: str = "main") -> bool:
        """Whether a seal fits each of the builds, of which there are some."""
        return bool(builds) and all(self.fits(part_no, build, position) for build in builds)

    @cached_property
    def places(self) -> Mapping[str, frozenset[tuple[str, str]]]:
        """Every build and position that a seal fits unchanged."""
        found: dict[str, set[tuple[str, str]]] = {part_no: set() for part_no in self.seals}
        for (build, position, part_no), verdict in self.verdicts.items():
            if verdict == "fits":
                found[part_no].add((build, position))
        return {part_no: frozenset(there) for part_no, there in found.items()}

    @cached_property
    def _judged(self) -> Mapping[Place, tuple[str, str]]:
        database = sqlite3.connect(":memory:")
        try:
            database.executescript(SQL.read_text(encoding="utf-8"))
            for name, values in self._as_whole_numbers().items():
                marks = ", ".join("?" * len(values[0])) if values else "?"
                database.executemany(f"INSERT INTO {name} VALUES ({marks})", values)
            told = database.execute(
                "SELECT build, position, part_no, verdict, changes FROM verdict"
            )
            return {(b, at, p): (verdict, change or "") for b, at, p, verdict, change in told}
        finally:
            database.close()

    def _as_whole_numbers(self) -> Mapping[str, list[tuple[Any, ...]]]:
        """Lengths in tenths of a millimetre, openings and volumes in hundredths."""
        tenth, hundredth = 10, 100
        evidence = ("valve", "build", "position", "part_no", "verdict", "change")
        return {
            "valve": [
                (
                    *(v["valve"], _said(v["style"]), _whole(v["opening_in"], hundredth)),
                    *(_whole(v["peg_span_mm"], tenth), _said(v["pegs"])),
                    *(_said(v["overflow"]), _whole(v["overflow_mm"], tenth)),
                )
                for v in self.rows("flush_valves")
            ],
            "seal": [
                (
                    *(s["part_no"], _said(s["style"]), _whole(s["opening_in"], hundredth)),
                    *(_whole(s["ear_span_mm"], tenth), _said(s["ears"])),
                    _whole(s["ring_mm"], tenth),
                    *(_whole(s[end], hundredth) for end in ("flush_gpf_min", "flush_gpf_max")),
                    *(s["status"], _said(s["replaced_by"])),
                )
                for s in self.rows("seals")
            ],
            "valve_mount": _ways(self.rows("flush_valves"), "valve"),
            "seal_mount": _ways(self.rows("seals"), "part_no"),
            "build": [
                (b, _whole(row["flush_full_gpf"], hundredth)) for b, row in self.builds.items()
            ],
            "sits": [(r["build"], r["position"], r["valve"]) for r in self.rows("build_valves")],
            "evidence": [tuple(_said(r[c]) for c in evidence) for r in self.rows("fitment")],
        }


def _ways(rows: Sequence[Row], key: str) -> list[tuple[Any, ...]]:
    return [(row[key], way) for row in rows for way in row["mount"].split(";") if way]


def _bare(number: str) -> str:
    return re.sub(r"[^0-9A-Z]", "", number.upper())


def _said(cell: str) -> str | None:
    return cell.strip() or None


def _whole(cell: str, parts: int) -> int | None:
    return round(float(cell) * parts) if cell else None
