"""Applies a writer's corrections: 'no wait, it is 2 inch' takes back what was said before."""

from __future__ import annotations

import re
from dataclasses import replace
from difflib import SequenceMatcher
from itertools import pairwise

from assistant.reading.clauses import sentence_of
from assistant.reading.facts import Fact, Facts, Interval
from assistant.reading.stance import corrections
from assistant.reading.text import Text

LONG_BEFORE = 80  # characters
_NAMES = frozenset({"brand", "model", "model_no"})  # the one named last, not another toilet's
_LISTED = frozenset({"brand", "model", "model_no", "part_no"})
_STRUCK = re.compile(
    r"\b(?:strike out|scratch|disregard|forget|ignore|never mind|not) (?:the )?((?:19|20)\d\d)\b"
)
_YEAR = re.compile(r"(?<![\w#$.-])(?:19|20)\d\d(?![\w-])")
_READS = re.compile(
    r"\b(?:it'?s|it is|it says|it reads|make that|rather|reads|says)"
    r"(?: actually| really| in fact| clearly)?(?: an?| the)? [\"']?\Z"
)
_BESIDE = re.compile(r"\b(?:other|second|another|also|too|neighbou?r\w*|upstairs|downstairs)\b")
LIKE = 0.75  # two names so much alike are misread for one another
# Facts that answer the same question: a correction of one takes back the others.
SAME = (
    frozenset({"opening", "disc", "rim", "length"}),
    frozenset({"made", "bought", "year", "house"}),
    frozenset({"flush", "flush_reduced"}),
)


def corrected(text: Text, facts: Facts) -> Facts:
    """The facts without those that the writer took back."""
    left = list(facts)
    for place in corrections(text):
        left += _year_put_right(text, left, place.start, place.end)
        inside = _told_in(left, place.start, place.end)
        if not inside:  # 'Hang on, I read it upside down. It is 2008.'
            _, end = sentence_of(text, min(place.end + 1, len(text.said) - 1))
            inside = _told_in(left, place.start, end)
        for new in inside:
            if new.name in _LISTED:  # 'MS-51. Sorry, MS-510': the first was no number at all
                left = [f for f in left if f.name != "unlisted" or f.start >= place.start]
            group = next((g for g in SAME if new.name in g), frozenset({new.name}))
            old = [f for f in left if f.name in group and f.start < place.start]
            if not old:
                continue
            last = max(f.start for f in old)  # what was said long before stands
            near = last if new.name in _NAMES else place.start - LONG_BEFORE
            old = [f for f in old if f.start >= min(last, near)]
            left = [f for f in left if f not in old]
            left[left.index(new)] = _as_before(new, old)
    left = _without_guessed(_without_misread(text, left))
    return Facts(tuple(_without_struck(left, {int(m[1]) for m in text.find(_STRUCK)})))


def _without_misread(text: Text, facts: list[Fact]) -> list[Fact]:
    """'A Wendrick. Wiped it off, and it's a Wendrock': read better, and the first one is none."""
    models = [f for f in facts if f.name == "model" and len(f.choices) == 1 and not f.negated]
    gone = {
        one.choices
        for one, then in pairwise(models)
        if one.choices != then.choices
        and _alike(one.choices[0], then.choices[0])
        and _READS.search(text.said[one.end : then.start])
        and not _BESIDE.search(text.said, one.end, then.start)
    }
    return [f for f in facts if f.name != "model" or f.choices not in gone]


def _without_guessed(facts: list[Fact]) -> list[Fact]:
    """'Wendrock or something', and later 'it is Wendrick': the name as the table has it stands."""
    models = [f for f in facts if f.name == "model" and not f.negated]
    sure = [f for f in models if f.sure and not f.similar]
    gone = [
        f
        for f in models
        if f.similar and any(f.start < g.start and {*g.choices} < {*f.choices} for g in sure)
    ]
    makers = {f.choices for f in facts if f.name == "brand" and f.sure}
    return [
        f
        for f in facts
        if f not in gone and not (gone and f.name == "brand" and not f.sure and f.choices in makers)
    ]


def _alike(one: str, other: str) -> bool:
    return SequenceMatcher(None, one, other, autojunk=False).ratio() > LIKE


def _without_struck(facts: list[Fact], struck: set[int]) -> list[Fact]:
    """'2014, not 2004': the year left dates what the one struck out dated."""
    gone = [f for f in facts if f.unit == "year" and f.interval.low in struck]
    left = [f for f in facts if f not in gone]
    dated = next((f.name for f in gone if f.name in ("made", "bought")), None)
    if dated is None:
        return left
    return [replace(f, name=dated) if f.name == "year" else f for f in left]


def _told_in(facts: list[Fact], start: int, end: int) -> list[Fact]:
    return [f for f in facts if start <= f.start < end and not f.negated]


def _year_put_right(text: Text, facts: list[Fact], start: int, end: int) -> list[Fact]:
    """'No wait, my wife says 1999': a bare year that takes the place of one told before."""
    before = [f for f in facts if f.name in ("made", "bought", "year") and f.start < start]
    inside = any(f.unit == "year" and start <= f.start < end for f in facts)
    found = _YEAR.search(text.said, start, end)
    if not before or inside or not found:
        return []
    year = Interval(int(found[0]), int(found[0]))
    words = text.raw[found.start() : found.end()]
    return [
        Fact(
            name="year",
            value=year,
            words=words,
            start=found.start(),
            end=found.end(),
            unit="year",
            of="stated",
            toilet=before[-1].toilet,
        )
    ]


def _as_before(new: Fact, old: list[Fact]) -> Fact:
    """'It is 2 inch' after '3 inch opening' still speaks of the opening."""
    vague = {"length": ("opening", "disc", "rim"), "year": ("made", "bought")}
    named = [f.name for f in old if f.name in vague.get(new.name, ())]
    return replace(new, name=named[-1]) if named else new
