"""Flush volume: for which toilets a seal is made, and how much a toilet flushes."""

from __future__ import annotations

from typing import Any

from assistant.answers.check.attributes import Attribute
from assistant.answers.check.items import Volume, same
from assistant.answers.check.line import Line
from assistant.answers.check.lookup import Place
from assistant.answers.check.scope import Trait
from assistant.records.rows import Build, Seal
from assistant.records.tables import Tables


def _range(line: Line, stretch: str) -> Volume | None:
    found = line.within(stretch, "G")
    if len(found) != 1:
        return None
    volume: Volume = found[0].values["G"]
    words = set(stretch.split())
    if {"more", "least"} & words:
        return Volume(volume.low, None)
    if {"less", "most", "up"} & words:
        return Volume(None, volume.high)
    return volume


def _made_for(tables: Tables, seal: Seal, said: Volume) -> bool | None:
    low, high = seal.flush_gpf_min, seal.flush_gpf_max
    if low is None and high is None:
        return None
    return _end(low, said.low) and _end(high, said.high)


def _end(held: float | None, said: float | None) -> bool:
    if held is None or said is None:
        return held is said
    return same(held, said)


def _volumes(line: Line, stretch: str) -> tuple[Any, ...] | None:
    found = [item.values["G"] for item in line.within(stretch, "G")]
    numbers = [item.values["I"] for item in line.within(stretch, "I")]
    if any(volume.single is None for volume in found) or not found:
        return None
    return (*numbers, *[volume.single for volume in found])


def _flushes(build: Build | None, said: float) -> bool | None:
    if build is None or build.flush_full_gpf is None:
        return None
    return same(build.flush_full_gpf, said)


def _reduced(build: Build | None, said: float) -> bool | None:
    if build is None or build.flush_reduced_gpf is None:
        return None
    return same(build.flush_reduced_gpf, said)


def _both(place: Place, said: float) -> bool | None:
    """A number of a pair, 'flushes 1.6 or 1.1 gallons': one of the tank's two volumes."""
    full, reduced = _flushes(place.build, said), _reduced(place.build, said)
    if full or reduced:
        return True
    return None if full is None or reduced is None else False


ATTRIBUTES = (
    Attribute(
        name="volume",
        read=_range,
        test=_made_for,
        post=(
            "(made|meant)? for (toilets|tanks) (that|which) (flush|use) (at (least|most)|up to"
            "|between)? {G} (or (more|less))?",
        ),
    ),
)

TRAITS = (
    Trait(
        name="flush",
        read=_volumes,
        test=lambda place, said: _flushes(place.build, said),
        row=lambda place: place.build,
        post=("(that|which) (flushes|flush|uses) {G} (or {G})*", "flushing {G}"),
        pre=("{G}",),
        clause=(
            "{t:toilet}? (flushes|flush) {G} (or {G})? ((per|a) flush)?",
            "{t:toilet}? uses {G}",
        ),
    ),
    Trait(
        name="reduced-flush",
        read=_volumes,
        test=lambda place, said: _reduced(place.build, said),
        row=lambda place: place.build,
        clause=("{t:toilet}? (flushes|uses)? {G} (for|on|at) (a|the) (half|reduced|short) flush",),
    ),
    Trait(
        name="both-volumes",
        read=_volumes,
        test=_both,
        row=lambda place: place.build,
        clause=("{t:toilet}? (flushes|flush) ({I}|{G}) (and|or) {G}",),
        every=True,
    ),
)
