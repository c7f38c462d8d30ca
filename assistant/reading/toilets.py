"""Keeps the toilets of a letter apart: which fact speaks of which.

A mention is a run of maker and model names. A mention that cannot be the toilet spoken of
so far begins another, from the joint before it ('and', a comma, a new sentence) onwards;
one that agrees with an earlier toilet goes back to it. 'The other one' begins another toilet
of the same name where it tells something of its own.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from functools import partial
from types import MappingProxyType
from typing import TypeAlias

from assistant.reading.facts import Fact, Facts
from assistant.reading.text import Text

_JOINT = re.compile(r"\band\b|\balso\b|\bplus\b|[,;.\n&]|\bwhile\b|\bbut\b")
_EITHER = re.compile(
    r"\bor\b|\bmaybe\b|\bperhaps\b|/|\?|\bcould be\b|\bsays? (?:it's|its|it is)\b|\bnot\b"
    r"|\blike\b|\bsimilar\b"
)
_OTHER_ONE = re.compile(
    r"\b(?:(?:the|my|our|a)\s+)?(?:other|second|2nd)\s+(?:one|toilet|bathroom|tank|commode|loo)\b"
    r"|\b(?:hers|his|theirs)(?: is|'s) (?=an? |from |dated |the )"
    r"|\bthe one (?:at|in|of) (?:my|our|her|his|the) (?:\w+'s?|other|guest)"
    r"|\band (?:the other|one)(?: is| was)?(?= (?:from |is |dated |made |of )?(?:19|20)\d\d\b)"
    r"|\banother\s+(?:toilet|one)\b|\bthe one (?:upstairs|downstairs|in the (?:guest|other))\b"
)
_COUNTED = re.compile(r"\b(?:two|2|both|three|3|pair of|couple of)(?: \w+)? $")
_SAME_KIND = re.compile(r"\bsame (?:make|model|kind|toilet|one|brand|name)\b|\bidentical\b")
_BOTH = re.compile(r"\b(?:both|all)\b(?! (?:flapper|seal|ring|gasket|ball|rubber|ear|peg)s)")
_SEVERAL = re.compile(r"\b(?:two|2|both|each|other|second|another|toilets)\b")
Numbered: TypeAlias = Mapping[str, frozenset[tuple[str, str]]]  # a number, and model and build
_NEXT_TO = 20  # characters within which a year dates the name before it
_TELLS = frozenset(
    {"made", "bought", "model_no", "part_no", "opening", "ears", "mount", "hinge_width"}
    | {"flush", "pieces", "tank_kind", "symptom", "disc"}
)


@dataclass(eq=False)
class _Toilet:
    brands: set[str] = field(default_factory=set)
    models: set[str] = field(default_factory=set)
    numbered: set[tuple[str, str]] = field(default_factory=set)  # builds that bear its number

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


def by_toilet(text: Text, facts: Facts, numbered: Numbered = MappingProxyType({})) -> Facts:
    """The facts, each with the toilet it speaks of, counted from 0.

    `numbered` holds the builds that bear a number, so that a number may name a toilet too.
    """
    cuts = _cuts(text, facts, numbered)
    if len({toilet for _, toilet in cuts}) < 2:
        return facts
    shared = _said_of_both(text, facts)
    placed = [
        replace(f, toilet=toilet)
        for f in facts
        for toilet in (range(_most(cuts)) if f in shared else (_at(cuts, f.start),))
    ]
    # 'Both seals' of two toilets are no two seals in one tank.
    placed = [f for f in placed if f.name != "seals_in_tank"]
    shared_names = _shared_names(placed) if _of_one_name(text, placed) else []
    return Facts(tuple(placed)).plus([*shared_names, *_shared_makers([*placed, *shared_names])])


def _most(cuts: list[tuple[int, int]]) -> int:
    return max(toilet for _, toilet in cuts) + 1


def _said_of_both(text: Text, facts: Facts) -> list[Fact]:
    """'Both have 2006 fired inside': told once, of each of them."""
    found = []
    for fact in facts.named(*_TELLS):
        start, end = text.sentence_at(fact.start)
        named = [f.start for f in facts.named("brand", "model") if start <= f.start < end]
        if _BOTH.search(text.said, start, end) and fact.start < min(named, default=end):
            found.append(fact)
    return found


def _at(cuts: list[tuple[int, int]], place: int) -> int:
    return [toilet for start, toilet in cuts if start <= place][-1]


def _cuts(text: Text, facts: Facts, numbered: Numbered) -> list[tuple[int, int]]:
    """Places from which on another toilet is spoken of."""
    cutter = _Cutter(text, facts)
    several = _SEVERAL.search(text.said) is not None
    events: list[tuple[int, Callable[[], None]]] = [
        (m.start(), partial(cutter.other_one, m.start())) for m in text.find(_OTHER_ONE)
    ]
    events += [(run[0].start, partial(cutter.mention, run)) for run in _mentions(text, facts)]
    events += [
        (f.start, partial(cutter.number, f, {b for c in f.choices for b in numbered[c]}, several))
        for f in facts.named("model_no")
        if f.sure and not f.negated and all(c in numbered for c in f.choices)
    ]
    for _, happens in sorted(events, key=lambda event: event[0]):
        happens()
    return cutter.cuts


class _Cutter:
    """Walks through the mentions of a letter and notes where another toilet begins."""

    def __init__(self, text: Text, facts: Facts) -> None:
        self.cuts = [(0, 0)]
        self._text, self._facts = text, facts
        self._toilets = [_Toilet()]
        self._now = 0
        self._before = 0  # the end of the last mention
        self._nameless: tuple[int, set[str]] | None = None  # a model named last, of no maker yet

    def _begin(self, start: int) -> None:
        self._toilets.append(_Toilet())
        self._now = len(self._toilets) - 1
        self.cuts.append((start, self._now))

    def other_one(self, start: int) -> None:
        """'The other one is ...'."""
        if _named_before(self._facts, start) and _tells_of_its_own(self._text, self._facts, start):
            self._begin(start)

    def number(self, fact: Fact, builds: set[tuple[str, str]], several: bool) -> None:
        """Two numbers that no one build bears stand in two tanks.

        Two of one model do so only where the letter speaks of several toilets: else one is misread.
        """
        mine = self._toilets[self._now]
        apart = not mine.numbered & builds
        of_one_model = {model for model, _ in mine.numbered} & {model for model, _ in builds}
        if mine.numbered and apart and (several or not of_one_model):
            self._begin(_joint_before(self._text, self._before, fact.start))
        self._toilets[self._now].numbered |= builds
        self._before = max(self._before, fact.end)

    def mention(self, run: list[Fact]) -> None:
        """A run of names: of this toilet, of an earlier one, or of another."""
        text, start, end = self._text, run[0].start, max(f.end for f in run)
        brands = {c for f in run if _names(f, "brand") for c in f.choices}
        models = {c for f in run if _names(f, "model") for c in f.choices}
        mine = self._toilets[self._now]
        if all(f.similar for f in run) and not brands and mine.models:
            return  # a word merely like a name names no other toilet
        again = bool(mine.models) and _dated_otherwise(self._facts, self._before, start, end)
        joint = _joint_before(text, self._before, start)
        if again and _JOINT.search(text.said, self._before, start):
            self._begin(joint)
        elif not mine.may_be(brands, models) and not _either(text, self._before, start):
            others = [t for i, t in enumerate(self._toilets) if i != self._now]
            known = [t for t in others if t.may_be(brands, models)]
            if known and not self._nameless:
                self._now = self._toilets.index(known[0])
                self.cuts.append((joint, self._now))
            elif self._nameless and not models:  # 'also a Model, but it says Brand on it'
                joint, models = self._nameless
                self._begin(joint)
            else:
                self._begin(joint)
        self._toilets[self._now].learn(brands, models)
        named_again = bool(models) and not brands and self._before > 0
        self._nameless = (joint, models) if named_again else None
        self._before = end


def _named_before(facts: Facts, start: int) -> bool:
    return any(f.start < start for f in facts.named("brand", "model", "model_no", "unlisted"))


def _dated_otherwise(facts: Facts, before: int, start: int, end: int) -> bool:
    """'One for a Brand Model 1975 and one for a Brand Model 1999': named again, of another year."""
    if not before:
        return False
    dates = facts.named("made", "bought", "year")
    one = [f for f in dates if before <= f.start < start]
    other = [f for f in dates if end <= f.start < end + _NEXT_TO]
    return bool(one and other and not one[-1].interval.meets(other[0].interval))


def _mentions(text: Text, facts: Facts) -> list[list[Fact]]:
    """Names that stand close together are one mention of one toilet."""
    runs: list[list[Fact]] = []
    for fact in facts.named("brand", "model", "unlisted"):
        if fact.negated or not (_names(fact, "brand") or _names(fact, "model")):
            continue
        if runs and _goes_on(text, runs[-1], fact):
            runs[-1].append(fact)
        else:
            runs.append([fact])
    return runs


def _names(fact: Fact, name: str) -> bool:
    """Whether a fact is a maker's or a model's name, listed or not."""
    return fact.name == name or (fact.name == "unlisted" and fact.of == name)


def _goes_on(text: Text, run: list[Fact], fact: Fact) -> bool:
    """'Brand ... Model' is one mention; 'Model by Brand' too, but not 'Model and a Brand'."""
    end = max(f.end for f in run)
    if fact.start - end > 25:
        return False
    if not any(_names(f, "model") for f in run):
        return not (fact.name == "brand" and any(f.name == "unlisted" for f in run))
    apart = _JOINT.search(text.said, end, fact.start) or _EITHER.search(text.said, end, fact.start)
    has_maker = any(_names(f, "brand") for f in run)
    return fact.name == "brand" and not apart and not has_maker


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


def _shared_makers(placed: list[Fact]) -> list[Fact]:
    """'A Brand Model and an Othermodel': the maker told once made the other too, if it is his."""
    makers = [f for f in placed if f.name == "brand" and not f.negated and len(f.choices) == 1]
    found = []
    for toilet in sorted({f.toilet for f in placed}):
        mine = [f for f in placed if f.toilet == toilet and not f.negated]
        if any(f.name == "brand" for f in mine):
            continue
        models = [f for f in mine if f.name == "model"]
        his = next(
            (m for m in makers if models and all(_made_by(m.choices[0], f) for f in models)), None
        )
        if his is not None:
            found.append(his.about(toilet))
    return found


def _made_by(maker: str, model: Fact) -> bool:
    return any(choice.startswith(f"{maker} ") for choice in model.choices)


def _shared_names(placed: list[Fact]) -> list[Fact]:
    """'The other one' is of the same name where the letter gives it none of its own."""
    named = {f.toilet for f in placed if f.name in ("brand", "model", "model_no", "unlisted")}
    first = [f for f in placed if f.toilet == 0 and f.name in ("brand", "model")]
    return [
        fact.about(toilet)
        for toilet in sorted({f.toilet for f in placed} - named)
        for fact in first
    ]
