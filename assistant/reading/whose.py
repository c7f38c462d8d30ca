"""Another person's toilet beside the writer's own: 'my neighbour has a ..., mine has no name'.

Somebody may well write for his mother. Only where the letter goes on to speak of 'mine' or
'ours' is the toilet named before it another one, and what is said of it is not the writer's.
"""

from __future__ import annotations

import re
from dataclasses import replace

from assistant.reading.facts import Fact, Facts
from assistant.reading.text import Text

_OTHERS = re.compile(
    r"\b(?:my|our|the|a) (?:\w+ )?(?:mum|mom|mother|dad|father|parents?|sister|brother|son|daughter"
    r"|aunt|uncle|gran\w*|neighbou?rs?|friends?|cousin|boss|landlord|in-?laws?|buddy|co-?worker)"
    r"(?:'s|s')?\b"
)
_MINE = re.compile(r"\b(?:mine|ours|my own|our own)\b")
_TOLD = frozenset({"brand", "model", "model_no", "made", "bought", "year", "unlisted"})


def without_others(text: Text, facts: Facts) -> Facts:
    """The facts, with those of another person's toilet denied."""
    mine = [m.start() for m in text.find(_MINE)]
    if not mine or not facts.named("brand", "model"):
        return facts
    return Facts(tuple(_denied(text, fact, mine) for fact in facts))


def _denied(text: Text, fact: Fact, mine: list[int]) -> Fact:
    start, _ = text.sentence_at(fact.start)
    if fact.name not in _TOLD or fact.start > mine[-1]:
        return fact
    if any(start <= at < fact.start for at in mine):
        return fact
    return replace(fact, negated=True) if _OTHERS.search(text.said, start, fact.start) else fact
