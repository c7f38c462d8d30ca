"""All tables of a shop, cross-checked, with the look-ups that answers need.

Every look-up is a dictionary made once: no message ever scans a table.
"""

from __future__ import annotations

import dataclasses
from collections import defaultdict
from collections.abc import Callable, Hashable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path
from typing import Any, TypeVar

from assistant.errors import KnowledgeError, TableError
from assistant.records.load import read_table
from assistant.records.rows import (
    TABLES,
    Brand,
    Build,
    BuildValve,
    Cause,
    Evidence,
    FlushValve,
    Likeness,
    Question,
    Row,
    Seal,
    Style,
)

T = TypeVar("T")
K = TypeVar("K", bound=Hashable)


def grouped(rows: Iterable[T], by: Callable[[T], K | None]) -> dict[K, tuple[T, ...]]:
    """Rows by a key, in their order; rows whose key is `None` are left out."""
    groups: dict[K, list[T]] = defaultdict(list)
    for row in rows:
        if (key := by(row)) is not None:
            groups[key].append(row)
    return {key: tuple(members) for key, members in groups.items()}


@dataclass(frozen=True, kw_only=True)
class Tables:
    """The structured knowledge of a shop: each table by row id."""

    brands: Mapping[str, Brand]
    styles: Mapping[str, Style]
    valves: Mapping[str, FlushValve]
    builds: Mapping[str, Build]
    build_valves: Mapping[str, BuildValve]
    seals: Mapping[str, Seal]
    evidence: Mapping[str, Evidence]
    causes: Mapping[str, Cause] = dataclasses.field(default_factory=dict)
    questions: Mapping[str, Question] = dataclasses.field(default_factory=dict)
    likenesses: Mapping[str, Likeness] = dataclasses.field(default_factory=dict)

    @classmethod
    def of(cls, read: Mapping[str, Mapping[str, Any]]) -> Tables:
        """The tables from rows by id, by file name."""
        return cls(
            brands=read["brands.csv"],
            styles=read["styles.csv"],
            valves=read["flush_valves.csv"],
            builds=read["toilets.csv"],
            build_valves=read["build_valves.csv"],
            seals=read["seals.csv"],
            evidence=read["fitment.csv"],
            causes=read["causes.csv"],
            questions=read["questions.csv"],
            likenesses=read["likenesses.csv"],
        )

    @cached_property
    def evidence_on_valve(self) -> dict[tuple[str, str], tuple[Evidence, ...]]:
        """Evidence by (valve, part number)."""
        return grouped(self.evidence.values(), lambda e: (e.valve, e.part_no) if e.valve else None)

    @cached_property
    def evidence_on_build(self) -> dict[tuple[str, str], tuple[Evidence, ...]]:
        """Evidence by (build, part number)."""
        return grouped(self.evidence.values(), lambda e: (e.build, e.part_no) if e.build else None)

    @cached_property
    def parts_tried_on_valve(self) -> dict[str, tuple[str, ...]]:
        """Part numbers with any evidence on a valve, by valve."""
        return self._parts(lambda e: e.valve)

    @cached_property
    def parts_tried_on_build(self) -> dict[str, tuple[str, ...]]:
        """Part numbers with any evidence on a build itself, by build."""
        return self._parts(lambda e: e.build)

    def _parts(self, by: Callable[[Evidence], str | None]) -> dict[str, tuple[str, ...]]:
        groups = grouped(self.evidence.values(), by)
        return {key: tuple(dict.fromkeys(e.part_no for e in rows)) for key, rows in groups.items()}

    @cached_property
    def evidence_of_part(self) -> dict[str, tuple[Evidence, ...]]:
        """Evidence by part number."""
        return grouped(self.evidence.values(), lambda e: e.part_no)

    @cached_property
    def valves_in(self) -> dict[str, tuple[BuildValve, ...]]:
        """Which valves sit in a build, by build."""
        return grouped(self.build_valves.values(), lambda v: v.build)

    @cached_property
    def builds_with(self) -> dict[str, tuple[BuildValve, ...]]:
        """In which builds and positions a valve sits, by valve."""
        return grouped(self.build_valves.values(), lambda v: v.valve)

    @cached_property
    def models(self) -> dict[str, tuple[Build, ...]]:
        """Builds by the full name of their model, such as 'Brand Model'."""
        return grouped(self.builds.values(), lambda b: b.full_name)

    @cached_property
    def numbered(self) -> dict[str, tuple[Build, ...]]:
        """Builds by the number that identifies them: model number or mark in the tank."""
        found: dict[str, list[Build]] = defaultdict(list)
        for build in self.builds.values():
            for number in dict.fromkeys((build.model_no, build.tank_mark)):
                if number is not None:
                    found[number].append(build)
        return {number: tuple(builds) for number, builds in found.items()}

    @cached_property
    def seals_of_style(self) -> dict[str, tuple[Seal, ...]]:
        """Seals by style."""
        return grouped(self.seals.values(), lambda s: s.style)

    @cached_property
    def replaces(self) -> dict[str, tuple[Seal, ...]]:
        """Seals whose number was replaced by a part number, by that part number."""
        return grouped(self.seals.values(), lambda s: s.replaced_by)

    def living(self, part_no: str) -> str | None:
        """The part at the end of a replacement chain, or `None` where none is living.

        A part that is still sold stands for itself even where a newer number exists.
        """
        seen: set[str] = set()
        while part_no not in seen:
            seen.add(part_no)
            seal = self.seals[part_no]
            if seal.status != "discontinued":
                return part_no
            if seal.replaced_by is None:
                return None
            part_no = seal.replaced_by
        return None


# Two columns of a table that are the ends of one range.
RANGES = {
    "toilets.csv": (("made_from", "made_to"),),
    "styles.csv": (("usual_from", "usual_to"),),
}


def load_tables(folder: Path) -> Tables:
    """Reads every table of the folder and checks that they refer to one another soundly.

    Raises:
        KnowledgeError: the folder is missing, or a table is wrong (see `read_table`).
    """
    if not folder.is_dir():
        raise KnowledgeError(
            str(folder), "the folder of tables is missing", "name the shop's folder with --shop"
        )
    read: dict[str, dict[str, Any]] = {
        kind.file: read_table(folder / kind.file, kind) for kind in TABLES
    }
    check_references(folder, read)
    return Tables.of(read)


def check_references(folder: Path, read: Mapping[str, Mapping[str, Row]]) -> None:
    """Every id that a row names must be a row of the table it belongs to."""
    for fault in reference_faults(folder, read):
        raise fault


def reference_faults(folder: Path, read: Mapping[str, Mapping[str, Row]]) -> Iterator[TableError]:
    """What does not hold between rows and tables, in the order of the rows."""
    for kind in TABLES:
        file = str(folder / kind.file)
        pointing = [
            (f.name, f.metadata["to"])
            for f in dataclasses.fields(kind)  # type: ignore[arg-type]
            if f.metadata["to"]
        ]
        ranges = RANGES.get(kind.file, ())
        for row in read[kind.file].values():
            for name, to in pointing:
                named = getattr(row, name)
                if named is not None and named not in read[to]:
                    yield TableError(
                        file,
                        None,
                        name,
                        f"row '{row.key}' names '{named}', which is not in {to}",
                        "add it there or correct the name",
                        row.key,
                    )
            for low, high in ranges:
                first, last = getattr(row, low), getattr(row, high)
                if first is not None and last is not None and first > last:
                    yield TableError(
                        file,
                        None,
                        high,
                        f"row '{row.key}' has {low} {first} above {high} {last}",
                        "swap the two or correct one",
                        row.key,
                    )
            if isinstance(row, Evidence) and (row.valve is None) == (row.build is None):
                yield TableError(
                    file,
                    None,
                    "valve",
                    f"row '{row.key}' must name a valve or a build, and just one of them",
                    "fill in one and empty the other",
                    row.key,
                )
