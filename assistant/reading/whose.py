"""Another person's toilet beside the writer's own: 'my neighbour has a ..., mine has no name'.

Somebody may well write for his mother. Only where the letter goes on to speak of 'mine' or
'ours' is the toilet named before it another one, and what is said of it is not the writer's.
"""

from __future__ import annotations

import re
from dataclasses import replace

from assistant.reading.facts import Fact, Facts
from assistant.reading.text import Text

_PERSON = (
    r"(?:mum|mom|mother|dad|father|parents?|sister|brother|son|daughter|aunt|uncle|gran\w*"
    r"|neighbou?rs?|fr(?:ie|ei)nds?|cousin|boss|landlord|in-?laws?|buddy|co-?worker|colleague"
    r"|(?:man|woman|lady|people|folks?|chap) (?:next door|across|opposite|upstairs|downstairs"
    r"|at (?:no\.?|number) \d+))"
)
_OTHERS = re.compile(
    rf"\b(?:my|our|the|a|an) (?:\w+ )?{_PERSON}(?:(?:'s|s')(?! (?:been|got to|just|sure))"
    r"|s?(?:,[^,.;!?]{1,40},)? (?:also |too )?(?:has|have|had|got|owns?|bought|with)\b)"
    r"|\b(?:she|he|they)(?:'s|'ve| has| have)(?: got)? an?\b|\bnext door(?:'s| has| have)\b"
)
_IS_OTHERS = re.compile(
    r"\W{1,3}(?:is|was|belongs to)(?: only| just)? (?:my|our|the|a) (?:\w+ )?"
    rf"{_PERSON}(?:'s|s'|\b)"
)
_MINE = re.compile(
    r"\b(?:mine|ours|my own|our own|(?:i|we)(?:'ve| have| hav)(?: got)? an?\b(?! (?:question"
    r"|problem|leak|look)))"
)
_LOOKS = frozenset({"mount", "ears", "opening", "lift", "overflow", "hinge_width"})
_NUMBERED = frozenset({"brand", "model", "model_no"})
_TOLD = frozenset({"brand", "model", "model_no", "made", "bought", "year", "unlisted"}) | _LOOKS


def without_others(text: Text, facts: Facts) -> Facts:
    """The facts, with those of another person's toilet denied."""
    mine = [m.start() for m in text.find(_MINE)]
    if not mine or not facts.named("brand", "model", "model_no"):
        return facts
    facts = _without_handed_back(text, facts)
    ours = {f.choices for f in facts if f.name in _NUMBERED and not _of_another(text, f, mine)}
    kept = (_denied(text, fact, mine, ours) for fact in facts)
    return Facts(tuple(fact for fact in kept if fact is not None))


def _without_handed_back(text: Text, facts: Facts) -> Facts:
    """'... ignore that, the Model is my sister's': it was never ours, wherever it was named."""
    models = facts.named("model")
    hers = {f.choices for f in models if _IS_OTHERS.match(text.said, f.end)}
    ours = {choice for f in models if f.choices not in hers for choice in f.choices}
    if not hers or not ours:
        return facts

    def is_hers(fact: Fact) -> bool:
        if fact.name == "model":
            return fact.choices in hers
        made = [name for names in hers for name in names]
        return fact.name == "brand" and all(
            any(name.startswith(f"{c} ") for name in made)
            and not any(name.startswith(f"{c} ") for name in ours)
            for c in fact.choices
        )

    return Facts(tuple(f for f in facts if not is_hers(f)))


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
