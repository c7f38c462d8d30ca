"""Keeps the toilets of a letter apart: which fact speaks of which.

A mention is a run of maker and model names. A mention that cannot be the toilet spoken of
so far begins another, from the joint before it ('and', a comma, a new sentence) onwards;
one that agrees with an earlier toilet goes back to it. 'The other one' begins another toilet
of the same name where it tells something of its own.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from assistant.reading.facts import Fact, Facts
from assistant.reading.text import Text

_JOINT = re.compile(r"\band\b|\balso\b|\bplus\b|[,;.\n&]|\bwhile\b|\bbut\b")
_EITHER = re.compile(r"\bor\b|\bmaybe\b|\bperhaps\b|/|\?|\bcould be\b|\bnot\b|\blike\b|\bsimilar\b")
_OTHER_ONE = re.compile(
    r"\b(?:the|my|our|a)\s+(?:other|second|2nd)\s+(?:one|toilet|bathroom|tank|commode|loo)\b"
    r"|\band (?:the other|one)(?: is| was)?(?= (?:from |is |dated |made |of )?(?:19|20)\d\d\b)"
    r"|\banother\s+(?:toilet|one)\b|\bthe one (?:upstairs|downstairs|in the (?:guest|other))\b"
)
_COUNTED = re.compile(r"\b(?:two|2|both|three|3|pair of|couple of)(?: \w+)? $")
_SAME_KIND = re.compile(r"\bsame (?:make|model|kind|toilet|one|brand|name)\b|\bidentical\b")
_NEXT_TO = 20  # characters within which a year dates the name before it
_TELLS = frozenset(
    {"made", "bought", "model_no", "part_no", "opening", "ears", "mount", "hinge_width"}
    | {"flush", "pieces", "tank_kind", "symptom", "disc"}
)


@dataclass
class _Toilet:
    brands: set[str]
    models: set[str]

    def may_be(self, brands: set[str], models: set[str]) -> bool:
        """Whether a mention can speak of this toilet."""
        if models and self.models:
            return bool(models & self.models)
        if brands and self.brands:
            return bool(brands & self.brands)
        return True

    def learn(self, brands: set[str], models: set[str]) -> None:
        """Takes a mention in."""
        self.brands = self.brands & brands or self.brands | brands
        self.models = self.models & models or self.models | models


def by_toilet(text: Text, facts: Facts) -> Facts:
    """The facts, each with the toilet it speaks of, counted from 0."""
    cuts = _cuts(text, facts)
    if len({toilet for _, toilet in cuts}) < 2:
        return facts
    placed = [replace(f, toilet=_at(cuts, f.start)) for f in facts]
    if not _of_one_name(text, placed):
        return Facts(tuple(placed))
    return Facts(tuple(placed)).plus(_shared_names(placed))


def _at(cuts: list[tuple[int, int]], place: int) -> int:
    return [toilet for start, toilet in cuts if start <= place][-1]


def _cuts(text: Text, facts: Facts) -> list[tuple[int, int]]:
    """Places from which on another toilet is spoken of."""
    toilets = [_Toilet(set(), set())]
    cuts, now, before = [(0, 0)], 0, 0
    others = [m.start() for m in text.find(_OTHER_ONE)]
    mentions = _mentions(text, facts)
    events = sorted([(m[0].start, m) for m in mentions] + [(at, []) for at in others])
    for start, mention in events:
        if not mention:
            if toilets[now].models and _tells_of_its_own(text, facts, start):
                toilets.append(_Toilet(set(), set()))
                now = len(toilets) - 1
                cuts.append((start, now))
            continue
        brands = {c for f in mention if f.name == "brand" for c in f.choices}
        models = {c for f in mention if f.name == "model" for c in f.choices}
        if all(f.similar for f in mention) and not brands and toilets[now].models:
            continue  # a word merely like a name names no other toilet
        end = max(f.end for f in mention)
        again = bool(toilets[now].models) and _dated_otherwise(facts, before, start, end)
        if again and _JOINT.search(text.said, before, start):
            toilets.append(_Toilet(set(), set()))
            now = len(toilets) - 1
            cuts.append((_joint_before(text, before, start), now))
        elif not toilets[now].may_be(brands, models) and not _either(text, before, start):
            known = [i for i, t in enumerate(toilets) if i != now and t.may_be(brands, models)]
            now = known[0] if known else len(toilets)
            if not known:
                toilets.append(_Toilet(set(), set()))
            cuts.append((_joint_before(text, before, start), now))
        toilets[now].learn(brands, models)
        before = end
    return cuts


def _dated_otherwise(facts: Facts, before: int, start: int, end: int) -> bool:
    """'One for a Brand Model 1975 and one for a Brand Model 1999': named again, of another year."""
    if not before:
        return False
    dates = facts.named("made")
    one = [f for f in dates if before <= f.start < start]
    other = [f for f in dates if end <= f.start < end + _NEXT_TO]
    return bool(one and other and not one[-1].interval.meets(other[0].interval))


def _mentions(text: Text, facts: Facts) -> list[list[Fact]]:
    """Names that stand close together are one mention of one toilet."""
    runs: list[list[Fact]] = []
    for fact in facts.named("brand", "model"):
        if fact.negated:
            continue
        if runs and _goes_on(text, runs[-1], fact):
            runs[-1].append(fact)
        else:
            runs.append([fact])
    return runs


def _goes_on(text: Text, run: list[Fact], fact: Fact) -> bool:
    """'Brand ... Model' is one mention; 'Model by Brand' too, but not 'Model and a Brand'."""
    end = max(f.end for f in run)
    if fact.start - end > 25:
        return False
    if not any(f.name == "model" for f in run):
        return True
    apart = _JOINT.search(text.said, end, fact.start) or _EITHER.search(text.said, end, fact.start)
    return fact.name == "brand" and not apart


def _either(text: Text, before: int, start: int) -> bool:
    """Whether two names are offered as alternatives for one toilet."""
    return bool(_EITHER.search(text.said, before, start)) and start - before < 40


def _joint_before(text: Text, low: int, high: int) -> int:
    joints = list(_JOINT.finditer(text.said, low, high))
    sentence = text.sentence_at(high)[0]
    if sentence > low:
        return sentence
    return joints[-1].start() if joints else high


def _tells_of_its_own(text: Text, facts: Facts, start: int) -> bool:
    end = text.sentence_at(start)[1]
    return any(start <= f.start < end and f.name in _TELLS for f in facts)


def _of_one_name(text: Text, placed: list[Fact]) -> bool:
    """Whether the letter says that its toilets share a name: 'two Brand Models', 'the same make'.

    Without that, the other toilet is one of which the letter names nothing.
    """
    first = next((f.start for f in placed if f.name in ("brand", "model")), 0)
    counted = _COUNTED.search(text.said, max(0, first - 25), first)
    return bool(counted or _SAME_KIND.search(text.said))


def _shared_names(placed: list[Fact]) -> list[Fact]:
    """'The other one' is of the same name where the letter gives it none of its own."""
    named = {f.toilet for f in placed if f.name in ("brand", "model", "model_no", "unlisted")}
    first = [f for f in placed if f.toilet == 0 and f.name in ("brand", "model")]
    return [
        fact.about(toilet)
        for toilet in sorted({f.toilet for f in placed} - named)
        for fact in first
    ]
