"""Seals found by the measures of a valve nobody can name: they could fit, and no more.

Opening, mount and the mount's own measure (hinge width, or tube; no other mount has one that
decides) must all be told. A seal reached so has no evidence behind it and is only ever named with
the check that decides.
"""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from assistant.fitment.narrow import told_volume
from assistant.fitment.rules.mount import RING_SLACK_MM, SPAN_SLACK_MM
from assistant.fitment.rules.volume import restores
from assistant.reading.facts import Fact, Facts, Interval
from assistant.records.rows import Seal
from assistant.records.tables import Tables

Key = tuple[float, str, int]
HAIR = 1e-6  # mm: 64.9 less 3 is 61.9, whatever binary makes of it


@dataclass(frozen=True)
class Measured:
    """A seal whose measures agree with what was told, and the facts that say so."""

    part_no: str
    facts: tuple[Fact, ...]


class Rack:
    """Seals still sold, by opening, way of holding and whole millimetres of its measure."""

    def __init__(self, tables: Tables) -> None:
        self._tables = tables

    @cached_property
    def _at(self) -> dict[Key, tuple[Seal, ...]]:
        found: dict[Key, list[Seal]] = defaultdict(list)
        for seal in self._tables.seals.values():
            if seal.opening_in is None or seal.status == "discontinued":
                continue
            for way in seal.mount:
                if (size := _size(seal, way)) is not None:
                    found[seal.opening_in, way, round(size)].append(seal)
        return {key: tuple(seals) for key, seals in found.items()}

    def _near(self, opening: float, way: str, size: Interval) -> Iterator[Seal]:
        for whole in range(math.floor(size.low), math.ceil(size.high) + 1):
            for seal in self._at.get((opening, way, whole), ()):
                if size.low - HAIR <= (_size(seal, way) or 0) <= size.high + HAIR:
                    yield seal

    def measured(self, facts: Facts) -> tuple[Measured, ...] | None:
        """The seals that could fit, or `None` where the measures told do not suffice."""
        openings = [f for f in _sure(facts, "opening") if len(f.nominal_in) == 1]
        if len({f.nominal_in for f in openings}) != 1:
            return None
        size = openings[0].nominal_in[0]
        ears = [f for f in _sure(facts, "ears") if f.choices in (("up",), ("down",))]
        widths, tubes = _sure(facts, "hinge_width"), _sure(facts, "tube")
        mounts = {m: f for f in _sure(facts, "mount") for m in f.choices}
        if widths and (ears or "pegs" in mounts):
            span = _about(widths[0].interval, SPAN_SLACK_MM)
            told = (openings[0], widths[0], *ears[:1])
            seals = [
                s
                for s in self._near(size, "pegs", span)
                if not ears or s.ears is None or s.ears in ears[0].choices
            ]
        elif tubes and "ring" in mounts and not _sure_of(facts, "overflow", "square", "none"):
            span = _about(tubes[0].interval, RING_SLACK_MM)
            told = (openings[0], tubes[0], mounts["ring"])
            seals = list(self._near(size, "ring", span))
        else:
            return None
        flush = told_volume(facts)
        return tuple(
            Measured(s.part_no, told)
            for s in dict.fromkeys(seals)
            if flush is None or restores(s, flush)
        )


def _size(seal: Seal, way: str) -> float | None:
    """The measure of a way of holding: hinge width or ring; no other has one that decides."""
    return {"pegs": seal.ear_span_mm, "ring": seal.ring_mm}.get(way)


def _about(told: Interval, slack: float) -> Interval:
    """What was told, or its middle give or take what rubber gives: the wider of the two.

    The two are not added up: that would let in seals that neither of them allows.
    """
    middle = (told.low + told.high) / 2
    return Interval(min(told.low, middle - slack), max(told.high, middle + slack))


def _sure_of(facts: Facts, name: str, *choices: str) -> bool:
    return any({*f.choices} & {*choices} for f in _sure(facts, name))


def _sure(facts: Facts, name: str) -> list[Fact]:
    return [f for f in facts.named(name) if f.sure and not f.negated]
