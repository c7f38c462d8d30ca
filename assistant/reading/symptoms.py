"""What a toilet does wrong, and what is a hazard rather than a matter of a seal."""

from __future__ import annotations

import re
from bisect import bisect_right

from assistant.reading.clauses import before, sentence_of
from assistant.reading.facts import Fact
from assistant.reading.hazard_cards import HAZARDS
from assistant.reading.lexicon import read_cards
from assistant.reading.stance import Stance, stance
from assistant.reading.symptom_cards import SYMPTOMS
from assistant.reading.text import Text

ANYWHERE = "leaks somewhere"
_WHY = re.compile(r"\b(?:why|how come|what (?:makes|causes|would make|would cause)|reason)\b")
# A thing that might happen, was mended long ago, or that somebody asks the meaning of.
_NOT_NOW = re.compile(
    r"\b(?:in case|so (?:that )?it (?:doesn't|does not|won't)|will (?:it|this|that)"
    r"|would (?:it|that)"
    r"|does (?:this|that|the new one) mean|to (?:avoid|prevent|stop)|used to|prevents?"
    r"|afraid"
    r"|worried (?:that |about )?(?:it|if))\b"
)


def read_symptoms(text: Text) -> list[Fact]:
    """Facts `symptom` and `hazard`, in order of place."""
    facts = read_cards(text, (*HAZARDS, *SYMPTOMS), accepts=_happens, how=_held)
    hazards = [fact for fact in facts if fact.name == "hazard"]
    return [fact for fact in facts if not (fact.choices == (ANYWHERE,) and _placed(fact, hazards))]


def _placed(leak: Fact, hazards: list[Fact]) -> bool:
    """Whether a hazard already says where this leak is; the hazards are in order of place."""
    at = bisect_right(hazards, leak.start, key=lambda hazard: hazard.start)
    return at > 0 and hazards[at - 1].end > leak.start


def _happens(text: Text, start: int, end: int) -> bool | None:
    return None if _NOT_NOW.search(before(text, start)) else True


def _held(text: Text, start: int, end: int) -> Stance:
    """'Why does it run at night?' tells that it does."""
    held = stance(text, start, end)
    low, _ = sentence_of(text, start)
    if held.doubted and _WHY.search(text.said, max(low, start - 80), start):
        return Stance(held.negated)
    return held
