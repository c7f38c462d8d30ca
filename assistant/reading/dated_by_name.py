"""A year beside a toilet's name dates the toilet: 'a Brand Model from 1988', 'Brand Model, 1988'.

The reader of years knows no names and leaves such a year open, or ties it to the nearest
verb. Here name and year meet. A year that makes a sentence of its own dates the toilet too;
one of a purchase of the very toilet does not: 'bought the Brand Model in 1988'.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from assistant.reading.facts import Fact
from assistant.reading.purchases import is_of_buying
from assistant.reading.renamed import Renamed
from assistant.reading.text import Text

_NAMES = frozenset({"brand", "model", "model_no", "unlisted"})
_OPEN, _TIED = frozenset({"year"}), frozenset({"bought", "valve_put_in"})
# What may stand between a name and a year that dates it, and nothing else.
_BETWEEN = re.compile(
    r"[\s,(:;/-]*(?:(?:toilet|model|one|from|of|in|the|year|yr|dated|circa|ca|c|about|around|approx"
    r"|maybe|made|built|it's|its|is|a|an|and|i think|is from|tank|commode)\b[\s,.(:-]*)*"
)
_ALONE = re.compile(
    r"\W*(?:(?:it's|its|is|it|from|year|the|made|in|about|around|circa|late|early|mid)\b\W*)*"
)
_REACH = 60


def dated_by_name(text: Text, renamed: Renamed, facts: Sequence[Fact]) -> list[Fact]:
    """The facts, with the years that stand beside a name read as years of making."""
    names = [f for f in facts if f.name in _NAMES]
    return [f if _is_bought(renamed, f) else _dated(text, f, names) for f in facts]


def _is_bought(renamed: Renamed, fact: Fact) -> bool:
    start, end = renamed.there(fact.start), renamed.there(fact.end)
    return fact.name == "bought" and is_of_buying(renamed.text.said, start, end)


def _dated(text: Text, fact: Fact, names: Sequence[Fact]) -> Fact:
    if fact.name in _OPEN and (_beside(text, fact, names) or _same_sentence(text, fact, names)):
        return replace(fact, name="made")
    if fact.name in _OPEN and _is_alone(text, fact):
        return replace(fact, name="made")
    if fact.name in _TIED and _beside(text, fact, names):
        return replace(fact, name="made")
    return fact


def _beside(text: Text, fact: Fact, names: Sequence[Fact]) -> bool:
    for name in names:
        low, high = sorted([(name.start, name.end), (fact.start, fact.end)])
        gap = text.said[low[1] : high[0]] if low[1] <= high[0] else ""
        if len(gap) <= _REACH and _BETWEEN.fullmatch(gap):
            return True
    return False


def _same_sentence(text: Text, fact: Fact, names: Sequence[Fact]) -> bool:
    start, end = text.sentence_at(fact.start)
    return any(start <= name.start < end for name in names)


def _is_alone(text: Text, fact: Fact) -> bool:
    start, end = text.sentence_at(fact.start)
    return bool(
        _ALONE.fullmatch(text.said[start : fact.start])
        and _ALONE.fullmatch(text.said[fact.end : end])
    )
