"""Wording of looks that no card reads: 'like half a tennis ball', 'a little sail on the back'."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from assistant.reading.clauses import sentence_of
from assistant.reading.facts import Facts
from assistant.reading.lexicon import words
from assistant.reading.text import Text

_LIKENESS = words(
    r"\b(?:(?:look\w*|shaped?|built|made|works?|moves?|kind of|sort of|just|bit|more|almost|is"
    r"|it's|a) like|like (?:a|an|the|half|some|one of|those|two|what|when|upside)|looks|resembl\w+"
    r"|remind\w*|shaped|shape of|as if|imagine|picture|kind of an?|sort of an?"
    r"|a (?:little|small|tiny|wee|big|fat|thin|flat|round|hollow|long|short|sort|kind) \w+"
    r"|\w+-(?:shaped|like)|\w{3,}ish|size of an?|hangs?|hanging|dangl\w+|underneath|same as an?"
    r"|on (?:the )?(?:back|top|bottom|end))\b"
)
# Facts that tell a style already; wording beside them adds nothing.
_TELLS = frozenset({"mount", "lift", "shape"})
LONGEST = 24  # words; a longer sentence says more than a look
MOST = 4  # wordings of a letter that are weighed


@dataclass(frozen=True)
class Wording:
    """A stretch of the message that may describe a look, with its place."""

    text: str
    start: int
    end: int


def wordings(text: Text, facts: Facts) -> list[Wording]:
    """Sentences, or clauses of long ones, that liken something and of which no look was read."""
    told = [fact.start for fact in facts if fact.name in _TELLS]
    asked = [fact.start for fact in facts if fact.name in ("asks", "wanted")]
    found: list[Wording] = []
    for start, _ in text.sentences:
        low, high = sentence_of(text, start)
        for first, last in _clauses(text, low, high, asked):
            said = text.said[first:last]
            if _LIKENESS.search(said) and not any(first <= at < last for at in told):
                found.append(_trimmed(text, first, last))
    return [w for w in dict.fromkeys(found) if len(w.text.split()) >= 3][:MOST]


def _clauses(text: Text, low: int, high: int, asked: Sequence[int]) -> list[tuple[int, int]]:
    """A short sentence that asks nothing as it is; else the clauses that ask nothing."""
    words = len(text.said[low:high].split())
    if words <= LONGEST and not any(low <= at < high for at in asked):
        return [(low, high)]
    stops = [m.end() for m in re.finditer(r"[,;:(]|\s-\s", text.said[low:high])]
    edges = [low, *(low + stop for stop in stops), high]
    return [
        (first, last)
        for first, last in pairwise(edges)
        if len(text.said[first:last].split()) <= LONGEST
        and not any(first <= at < last for at in asked)
    ]


def _trimmed(text: Text, first: int, last: int) -> Wording:
    said = text.visible[first:last]
    begin = first + len(said) - len(said.lstrip())
    words = said.strip().rstrip(",;:(- ")
    return Wording(words, begin, begin + len(words))
