"""A look-alike: a seal of the same style as another."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.answers.check.frames import Frame, Reading
from assistant.answers.check.lookup import cited
from assistant.answers.check.results import Finding, result_of


def looks(reading: Reading) -> Sequence[Finding]:
    """The part named, or some other one where none is, has the same style."""
    tables = reading.context.given.tables
    parts = reading.subject("s")
    reading.context.parts = parts
    other = reading.parts("o")
    found = []
    for part in parts:
        seal = tables.seals[part]
        alike = [s.part_no for s in tables.seals_of_style[seal.style] if s.part_no != part]
        holds = all(name in alike for name in other) if other else bool(alike)
        found.append(Finding(reading.words, "look-alike", result_of(holds), cited(seal)))
    return found


FRAMES = (
    Frame(
        "look-alike",
        "{s:part}? (looks|look) (just|much|almost)?"
        " ((the same|alike|similar)|(like|the same as) {o:P})",
        looks,
    ),
)
