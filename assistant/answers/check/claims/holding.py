"""How a seal holds to its valve: pegs, a ring round the tube, a wire, a clip and so on."""

from __future__ import annotations

from assistant.answers.check.attributes import Attribute
from assistant.answers.check.claims.size import length
from assistant.answers.check.line import Line
from assistant.answers.check.patterns import PIECES, compiled

# Each way of holding, as a verb phrase of the seal.
WAYS = {
    "pegs": "(hooks|hook|hangs|goes|sits|holds) (on|over|onto|by) (the|its|two)? pegs",
    "ring": "(sits|slides|slips|goes|holds) (with (a|its) ring|by a ring)? (round|over|on) (the|a)"
    " round? overflow? tube",
    "wire": "(hangs|sits|is) on a (lift)? wire",
    "clip": "(holds|hold) by a clip",
    "strap": "(holds|hold) by a strap",
    "canister": "(belongs|goes|sits) under a canister",
    "tower": "(belongs|goes|sits) under a tower",
    "push": "is pushed on",
    "thread": "screws on",
}
_COMPILED = {way: compiled(pattern) for way, pattern in WAYS.items()}
PIECES["holding"] = "(" + "|".join(WAYS.values()) + ")"


def ways(line: Line, stretch: str) -> tuple[str, ...] | None:
    """The ways of holding named."""
    return tuple(way for way, pattern in _COMPILED.items() if pattern.search(stretch)) or None


ATTRIBUTES = (
    Attribute(
        name="mount",
        read=ways,
        test=lambda tables, seal, said: set(said) <= set(seal.mount) if seal.mount else None,
        clause=("{s:part}? {holding} ({joined} {holding})*",),
    ),
    Attribute(
        name="mount",
        read=lambda line, stretch: "pegs",
        test=lambda tables, seal, said: said in seal.mount if seal.mount else None,
        adj=("pegged",),
    ),
    Attribute(
        name="ring",
        read=length,
        test=lambda tables, seal, said: said.equals_mm(seal.ring_mm),
        post=(
            "with a ring (of|for a tube of) {L}",
            "(made)? for a round? overflow? tube of {L}",
        ),
        clause=(
            "(its|the|whose) ring (slides|goes|sits|fits|slips|is made) (over|on|for|round)"
            " a round? overflow? tube of {L}",
            "{s:part}? (slides|goes|slips|fits) over a round? overflow? tube of {L}",
            "{s:part}? (slides|goes|slips|fits) over a {L} round? overflow? tube",
        ),
    ),
)
