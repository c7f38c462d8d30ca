"""The flush valve: its opening, its pegs, its overflow tube, what it offers to hold to."""

from __future__ import annotations

from typing import Any

from assistant.answers.check.claims.ears import pointing
from assistant.answers.check.items import Length
from assistant.answers.check.line import Line
from assistant.answers.check.lookup import Place
from assistant.answers.check.patterns import PIECES, compiled
from assistant.answers.check.scope import Trait
from assistant.records.rows import Row

OFFERS = {
    "pegs": "(two)? pegs",
    "ring": "a round tube (for a ring)?",
    "wire": "a (lift)? wire",
    "clip": "a clip",
    "strap": "a strap",
    "canister": "a canister",
    "tower": "a tower",
    "push": "a gasket that is pushed on",
    "thread": "a gasket that screws on",
}
_OFFERS = {way: compiled(pattern + r" (and|or|,)?") for way, pattern in OFFERS.items()}
PIECES["offer"] = "(" + "|".join(OFFERS.values()) + ")"
PIECES["way"] = "(" + "|".join(OFFERS) + ")"
PIECES["lengths"] = "{L} (or {L})*"
PIECES["shape"] = "(round|square)"


def _row(place: Place) -> Row | None:
    return place.valve


def _lengths(line: Line, stretch: str) -> tuple[Length, ...] | None:
    return tuple(item.values["L"] for item in line.within(stretch, "L")) or None


def _pegs(line: Line, stretch: str) -> tuple[str, ...] | None:
    found = pointing(line, stretch)
    return (found,) if found else None


def _tube(line: Line, stretch: str) -> tuple[str, ...] | None:
    words = stretch.split()
    found = next((word for word in ("round", "square") if word in words), None)
    return (found,) if found else ("none",) if "no" in words or "without" in words else None


def _offers(line: Line, stretch: str) -> tuple[Any, ...] | None:
    rest = stretch[stretch.index(" has ") + 4 :] if " has " in stretch else stretch
    found = tuple(way for way, pattern in _OFFERS.items() if pattern.search(rest))
    return found or None


def _holds(line: Line, stretch: str) -> tuple[str, ...] | None:
    return tuple(word for word in stretch.split() if word in OFFERS) or None


def _known(value: Any, said: Any) -> bool | None:
    return None if value is None else bool(value == said)


def _has_way(place: Place, way: str) -> bool | None:
    return way in place.valve.mount if place.valve and place.valve.mount else None


_PEGS_BOTH = (
    "{t:pegs} point (up|down) (and|,) (stand|are|sit)? {L} apart",
    "{t:valve}? (has|have) pegs (that point|pointing) (up|down) (and|,) (stand|are)? {L} apart",
    "pegs (that point|pointing) (up|down) (and|,) (stand|are)? {L} apart",
)
_PEGS_BOTH_AFTER = (
    "with pegs (that point|pointing) (up|down) (and|,) (stand|are)? {L} apart",
    "with pegs {L} apart (that point|pointing) (up|down)",
)
_TUBE_BOTH = ("{t:valve}? has a {shape} overflow? tube of {L}", "a {shape} overflow? tube of {L}")

TRAITS = (
    Trait(
        name="opening",
        of_valve=True,
        row=_row,
        read=_lengths,
        test=lambda place, said: said.equals_in(place.valve.opening_in if place.valve else None),
        post=(
            "with (a|an) {lengths} (flush valve|valve)? opening",
            "whose (flush)? (valve has (a|an) {lengths}|opening is {lengths}) opening?",
        ),
        clause=(
            "{t:valve}? (has|have) (a|an) {lengths} (flush valve|valve)? opening",
            "{t:toilet} (has|have) (a|an) {lengths} (flush valve|valve)? opening",
            "{t:opening} (is|measures|of|are)? {lengths} (wide|across)?",
            "there is (a|an) {lengths} opening",
        ),
    ),
    Trait(
        name="pegs",
        of_valve=True,
        row=_row,
        read=_pegs,
        test=lambda place, said: _known(place.valve.pegs if place.valve else None, said),
        post=(
            "whose pegs point (up|down)", "with pegs (that point|pointing) (up|down)",
            "without pegs", "with no pegs", *_PEGS_BOTH_AFTER,
        ),
        clause=(
            "{t:pegs} point (up|down)",
            "{t:valve}? (has|have) pegs (that point|pointing) (up|down)",
            "{t:valve}? (has|have) no pegs", "there are no pegs", "no pegs",
            "pegs (that point|pointing) (up|down)",
            *_PEGS_BOTH,
        ),
    ),
    Trait(
        name="peg-span",
        of_valve=True,
        row=_row,
        read=_lengths,
        test=lambda place, said: said.equals_mm(place.valve.peg_span_mm if place.valve else None),
        post=("with pegs {lengths} apart", *_PEGS_BOTH_AFTER),
        clause=(
            "{t:pegs} (are|stand|sit|are set)? {lengths} apart?",
            "{t:valve}? (has|have) pegs {lengths} apart",
            *_PEGS_BOTH,
        ),
    ),
    Trait(
        name="overflow",
        of_valve=True,
        row=_row,
        read=_tube,
        test=lambda place, said: _known(place.valve.overflow if place.valve else None, said),
        post=("with (a|an) {shape} overflow? tube", "with no overflow? tube"),
        clause=(
            "{t:valve}? (has|have) (a {shape}|no) overflow? tube",
            "{t:tube} is {shape}", "a {shape} overflow? tube", "no overflow? tube",
            "{t:tube} is {shape} and {L} (wide|across|thick)",
            *_TUBE_BOTH,
        ),
    ),
    Trait(
        name="tube",
        of_valve=True,
        row=_row,
        read=_lengths,
        test=lambda place, said: said.equals_mm(place.valve.overflow_mm if place.valve else None),
        clause=(
            "{t:tube} (is|measures) {lengths} (wide|across|thick)?",
            "{t:tube} is {shape} and {L} (wide|across|thick)",
            *_TUBE_BOTH,
        ),
    ),
    Trait(
        name="valve-mount",
        of_valve=True,
        every=True,
        row=_row,
        read=_offers,
        test=_has_way,
        clause=("{t:valve}? has {offer} ({joined} {offer})*",),
    ),
    Trait(
        name="held-by",
        of_valve=True,
        row=_row,
        read=_holds,
        test=_has_way,
        clause=("the seal holds by (a|its)? {way} (or (a|its)? {way})*",),
    ),
)  # fmt: skip
