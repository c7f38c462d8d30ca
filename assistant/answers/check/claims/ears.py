"""Ears: which way they point and how far apart they stand."""

from __future__ import annotations

from assistant.answers.check.attributes import Attribute
from assistant.answers.check.claims.size import length
from assistant.answers.check.line import Line


def pointing(line: Line, stretch: str) -> str | None:
    """'up', 'down' or 'none', or `None` where the words do not say."""
    words = stretch.split()
    if "no" in words or "without" in words:
        return "none"
    return next((word for word in ("up", "down") if word in words), None)


_BOTH = (
    "{s:part}? has ears (that point|pointing|which point) (up|down) (and|,)"
    " (stand|are|that stand|standing|sit)? {L} apart",
    "{s:ears} point (up|down) (and|,) (stand|are|sit)? {L} apart",
)
_BOTH_AFTER = (
    "with ears (that point|pointing) (up|down) (and|,) (stand|are|standing)? {L} apart",
    "with ears {L} apart (that point|pointing) (up|down)",
)

ATTRIBUTES = (
    Attribute(
        name="ears",
        read=pointing,
        test=lambda tables, seal, said: None if seal.ears is None else seal.ears == said,
        post=(
            "with ears (that point|pointing) (up|down)",
            "without ears",
            "with no ears",
            *_BOTH_AFTER,
        ),
        clause=(
            "{s:ears} point (up|down)",
            "{s:part}? has ears (that point|pointing|which point) (up|down)",
            "{s:part}? has no ears",
            *_BOTH,
        ),
    ),
    Attribute(
        name="ear-span",
        read=length,
        test=lambda tables, seal, said: said.equals_mm(seal.ear_span_mm),
        post=("with ears {L} apart", *_BOTH_AFTER),
        clause=(
            "{s:ears} (are|stand|sit|are set) {L} apart",
            "{s:part}? has ears {L} apart",
            *_BOTH,
        ),
    ),
)
