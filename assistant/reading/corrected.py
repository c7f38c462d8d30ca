"""Applies a writer's corrections: 'no wait, it is 2 inch' takes back what was said before."""

from __future__ import annotations

from dataclasses import replace

from assistant.reading.facts import Fact, Facts
from assistant.reading.stance import corrections
from assistant.reading.text import Text

# Facts that answer the same question: a correction of one takes back the others.
SAME = (
    frozenset({"opening", "disc", "rim", "length"}),
    frozenset({"made", "bought", "year"}),
    frozenset({"flush", "flush_reduced"}),
)


def corrected(text: Text, facts: Facts) -> Facts:
    """The facts without those that the writer took back."""
    left = list(facts)
    for place in corrections(text):
        inside = [f for f in left if place.start <= f.start < place.end and not f.negated]
        for new in inside:
            group = next((g for g in SAME if new.name in g), frozenset({new.name}))
            old = [f for f in left if f.name in group and f.start < place.start]
            if not old:
                continue
            left = [f for f in left if f not in old]
            left[left.index(new)] = _as_before(new, old)
    return Facts(tuple(left))


def _as_before(new: Fact, old: list[Fact]) -> Fact:
    """'It is 2 inch' after '3 inch opening' still speaks of the opening."""
    vague = {"length": ("opening", "disc", "rim"), "year": ("made", "bought")}
    named = [f.name for f in old if f.name in vague.get(new.name, ())]
    return replace(new, name=named[-1]) if named else new
