"""Sentences that tell in passing what no card read: a danger, another part, another valve."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import pairwise

from assistant.reading.facts import Fact, Facts
from assistant.reading.text import Text
from assistant.search.searching import Search

LONGEST = 26  # words of one stretch; a longer sentence is cut where it pauses
SHORTEST = 3
MOST = 40  # stretches of a letter that are weighed
_PAUSE = re.compile(r"[,;:(]\s|\s-\s|\s(?=(?:and|but|so|because|cos|then|now|also)\b)")
# What the cards read of the same matter, yes or no, stands.
_READ = {
    "danger": frozenset({"hazard"}),
    "part": frozenset({"symptom"}),
    "valve": frozenset({"valve_replaced", "valve_original", "valve_put_in"}),
}


def told_in_passing(search: Search, text: Text, facts: Facts) -> list[Fact]:
    """A fact `sounds_like` for each stretch that tells something of weight by its meaning.

    Never sure. Its value is the sign, `of` says of what: danger, part or valve. A stretch in which
    the cards read something of the same matter is left to them.
    """
    spans = list(_stretches(text))[:MOST]
    heard = search.heard([text.visible[start:end] for start, end in spans])
    return [
        Fact(
            name="sounds_like",
            value=(told.sign,),
            words=text.raw[start:end],
            start=start,
            end=end,
            of=told.tells,
            sure=False,
        )
        for (start, end), told in zip(spans, heard, strict=True)
        if told is not None
        and not any(f.name in _READ[told.tells] and start <= f.start < end for f in facts)
    ]


def _stretches(text: Text) -> Iterator[tuple[int, int]]:
    for low, high in text.sentences:
        for start, end in _cut(text.visible, low, high):
            words = text.visible[start:end].split()
            if len(words) >= SHORTEST:
                begin = start + len(text.visible[start:end]) - len(text.visible[start:end].lstrip())
                yield begin, begin + len(text.visible[begin:end].rstrip())


def _cut(said: str, low: int, high: int) -> list[tuple[int, int]]:
    """A sentence, or pieces of it up to the pause before they grow too long."""
    if len(said[low:high].split()) <= LONGEST:
        return [(low, high)]
    edges = [low, *(m.end() for m in _PAUSE.finditer(said, low, high)), high]
    pieces: list[tuple[int, int]] = []
    for start, end in pairwise(edges):
        if pieces and len(said[pieces[-1][0] : end].split()) <= LONGEST:
            pieces[-1] = (pieces[-1][0], end)
        else:
            pieces.append((start, end))
    return [piece for start, end in pieces for piece in _windows(said, start, end)]


def _windows(said: str, low: int, high: int) -> list[tuple[int, int]]:
    """Pieces of as many words as may be; of a text without any pause."""
    words = list(re.finditer(r"\S+", said[low:high]))
    if len(words) <= LONGEST:
        return [(low, high)]
    return [
        (low + words[at].start(), low + words[min(at + LONGEST, len(words)) - 1].end())
        for at in range(0, len(words), LONGEST)
    ]
