"""Every piece of evidence, column by column: what was tried where, and what geometry says of it."""

from __future__ import annotations

import dataclasses
from collections.abc import Collection, Hashable, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import NamedTuple

import numpy as np

from assistant.fitment.findings import Finding as Objection
from assistant.fitment.findings import Says
from assistant.fitment.places import MAIN, Place, of_build
from assistant.fitment.rules import RULES
from assistant.linting.columns import Columns, Marks, Numbers
from assistant.records.rows import Build, FlushValve, Row, Seal
from assistant.records.tables import Tables

# What names a row or sells it; whatever else it says, now or in a column added later, may make a
# rule of fitment object.
_NAMING: dict[type[Row], frozenset[str]] = {
    FlushValve: frozenset({"valve", "note"}),
    Build: frozenset(
        {"build", "brand", "model", "aliases", "model_no", "made_from", "made_to", "tank_mark"}
        | {"sold"}
    ),
    Seal: frozenset(
        {"part_no", "name", "aliases", "maker", "maker_no", "genuine", "material", "colour"}
        | {"pack", "status", "replaced_by", "price", "cost", "on_hand", "link"}
    ),
}
_MEASURES = {
    kind: tuple(f.name for f in dataclasses.fields(kind) if f.name not in naming)  # type: ignore[arg-type]
    for kind, naming in _NAMING.items()
}


class Target(NamedTuple):
    """What a seal was tried on: a valve, or a build and perhaps a position in it."""

    valve: str | None
    build: str | None = None
    position: str | None = None

    def __str__(self) -> str:
        if self.valve is not None:
            return f"valve '{self.valve}'"
        position = f", position '{self.position}'" if self.position else ""
        return f"build '{self.build}'{position}"


@dataclass(frozen=True)
class Trials:
    """Pieces of evidence; each array has one number for each piece.

    `row` is the piece's row in `columns`; `target` and `part` count into `targets` and `parts`;
    `fits` and `changed` mark the verdicts 'fits' and 'fits with change', and what is neither
    does not fit.
    """

    columns: Columns
    tables: Tables
    row: Numbers
    target: Numbers
    targets: Sequence[Target]
    part: Numbers
    parts: Sequence[str]
    fits: Marks
    changed: Marks

    @classmethod
    def of(cls, columns: Columns, sound: Marks | None, tables: Tables) -> Trials:
        """The rows of fitment.csv that are sound."""
        row = np.arange(len(columns)) if sound is None else np.flatnonzero(sound)
        target, targets = _targets(columns, row)
        part, verdict = columns.coded("part_no"), columns.coded("verdict")
        return cls(
            columns,
            tables,
            row,
            target,
            targets,
            part.codes[row],
            part.values,
            verdict.are("fits")[row],
            verdict.are("fits with change")[row],
        )

    @cached_property
    def against(self) -> Marks:
        """The pieces that say 'does not fit'."""
        against: Marks = ~(self.fits | self.changed)
        return against

    @cached_property
    def pair(self) -> Numbers:
        """One number for each target and part."""
        pair: Numbers = self.target * len(self.parts) + self.part
        return pair

    @cached_property
    def at_odds(self) -> Numbers:
        """The pairs of which some pieces say yes and some say no."""
        pairs = np.sort(self.pair)
        twice: Numbers = pairs[1:][pairs[1:] == pairs[:-1]]
        if not len(twice):
            return twice
        among = np.isin(self.pair, twice)
        yes, no = among & ~self.against, among & self.against
        both: Numbers = np.intersect1d(self.pair[yes], self.pair[no])
        return both

    def line(self, piece: int) -> int:
        """The line of the file on which a piece begins."""
        return self.columns.lines[int(self.row[piece])]

    def name(self, piece: int) -> str:
        """The id of a piece."""
        return self.columns.cells["evidence"][int(self.row[piece])]

    @cached_property
    def places(self) -> tuple[Place | None, ...]:
        """Where each target is; `None` where a build has no such position."""
        return tuple(self._place(target) for target in self.targets)

    def _place(self, target: Target) -> Place | None:
        if target.valve is not None:
            valve = self.tables.valves.get(target.valve)
            return Place(valve) if valve else None
        build = self.tables.builds.get(target.build or "")
        if build is None or not self.tables.valves_in.get(build.build):
            return None
        for place in of_build(self.tables, build).places:
            if place.position == target.position or (target.position is None and place.alone):
                return place
        return None

    @cached_property
    def _like(self) -> tuple[Numbers, dict[int, Objection]]:
        """A number for each piece by the measures that meet in it, and what objects to which.

        A million pieces are tried with a few measures; each meeting of measures is judged once.
        """
        places = [_place_measures(place) for place in self.places]
        seals = [_measures(self.tables.seals[p]) if p in self.tables.seals else None
                 for p in self.parts]  # fmt: skip
        place_kind, firsts = _kinds(places)
        seal_kind, samples = _kinds(seals)
        like = place_kind[self.target] * max(1, len(samples)) + seal_kind[self.part]
        objections = {}
        for number in np.unique(like[~self.against]):
            at, which = divmod(int(number), len(samples))
            place, part = self.places[firsts[at]], self.parts[samples[which]]
            if place is None or part not in self.tables.seals:
                continue
            found = (rule(self.tables.seals[part], place) for rule in RULES)
            if objection := next((one for one in found if one.says is Says.OBJECTS), None):
                objections[int(number)] = objection
        return like, objections

    @cached_property
    def objected(self) -> Marks:
        """The pieces for a seal to which a rule of fitment objects."""
        like, objections = self._like
        return ~self.against & np.isin(like, list(objections), kind="table" if objections else None)

    def objection(self, piece: int) -> Objection:
        """What objects to an objected piece."""
        like, objections = self._like
        return objections[int(like[piece])]


def _targets(columns: Columns, row: Numbers) -> tuple[Numbers, list[Target]]:
    valve, build = columns.coded("valve"), columns.coded("build")
    position = columns.coded("position")
    target = valve.codes[row]
    targets = [Target(value) for value in valve.values]
    if "" in valve.values:
        on_build = np.flatnonzero(target == valve.values.index(""))
        several = len(position.values)
        both = build.codes[row][on_build] * several + position.codes[row][on_build]
        different, which = np.unique(both, return_inverse=True)
        target[on_build] = len(targets) + which
        targets += [
            Target(None, build.values[one // several], position.values[one % several] or None)
            for one in different
        ]
    return target, targets


def _measures(row: Row) -> tuple[Hashable, ...]:
    return tuple(getattr(row, name) for name in _MEASURES[type(row)])


def _place_measures(place: Place | None) -> tuple[Hashable, ...] | None:
    if place is None:
        return None
    build = _measures(place.build) if place.build else None
    return (_measures(place.valve), build, place.position == MAIN)


def _kinds(measures: Collection[Hashable]) -> tuple[Numbers, list[int]]:
    """Things with the same measures get the same number; and the first thing of each."""
    numbers: dict[Hashable, int] = {}
    kinds: list[int] = []
    firsts: list[int] = []
    for at, one in enumerate(measures):
        if one not in numbers:
            numbers[one] = len(firsts)
            firsts.append(at)
        kinds.append(numbers[one])
    return np.array(kinds, np.int64), firsts
