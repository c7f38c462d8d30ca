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
    r"(?:(?:'s|s')(?! (?:been|got to|just|sure))|s? (?:also |too )?(?:has|have|had|got|owns?"
    r"|bought|with)\b)"
)
_MINE = re.compile(r"\b(?:mine|ours|my own|our own)\b")
_LOOKS = frozenset({"mount", "ears", "opening", "lift", "overflow", "hinge_width"})
_NUMBERED = frozenset({"brand", "model", "model_no"})
_TOLD = frozenset({"brand", "model", "model_no", "made", "bought", "year", "unlisted"}) | _LOOKS


def without_others(text: Text, facts: Facts) -> Facts:
    """The facts, with those of another person's toilet denied."""
    mine = [m.start() for m in text.find(_MINE)]
    if not mine or not facts.named("brand", "model", "model_no"):
        return facts
    ours = {f.choices for f in facts if f.name in _NUMBERED and not _of_another(text, f, mine)}
    kept = (_denied(text, fact, mine, ours) for fact in facts)
    return Facts(tuple(fact for fact in kept if fact is not None))


def _denied(text: Text, fact: Fact, mine: list[int], ours: set[tuple[str, ...]]) -> Fact | None:
    if fact.name not in _TOLD or not _of_another(text, fact, mine):
        return fact
    if fact.name in _LOOKS or (fact.name in _NUMBERED and fact.choices in ours):
        return None  # his is on pegs: that says nothing of ours
    return replace(fact, negated=True)


def _of_another(text: Text, fact: Fact, mine: list[int]) -> bool:
    start, _ = text.sentence_at(fact.start)
    if fact.start > mine[-1] or any(start <= at < fact.start for at in mine):
        return False
    return _OTHERS.search(text.said, start, fact.start) is not None
