"""Which of several cue words stands nearest to a place, within the sentence."""

from __future__ import annotations

import re
from bisect import bisect_left, bisect_right
from collections.abc import Iterable
from dataclasses import dataclass

REACH = 110  # characters: nobody's sentence holds a subject and its number further apart
_BREAK = re.compile(
    r",|\n|\(|\)|:| - | / | and | but | with | so | because | which | while | plus | if "
)
_BREAK_COSTS = 12  # characters that a comma or an 'and' counts for
_ABBREVIATED = re.compile(
    r"(?:\b|\d)(?:in|approx|no|gal|dia|st|ca|yrs?|dept|vs|e\.g|i\.e|o\.d|i\.d)\.$"
)
_STOP = re.compile(r"[!?;]+(?=\s|$)|\.{1,9}(?=\s|$)|\n[ \t]{0,9}\n|\n(?=[ \t]{0,9}[-*•] )")


@dataclass(frozen=True)
class Card:
    """A way of naming a thing. `means` is the thing; `side` on which side of a number it counts."""

    means: str
    pattern: re.Pattern[str]
    side: str = "either"  # either, before, after


def card(means: str, pattern: str, side: str = "either") -> Card:
    """A card from a pattern of whole words."""
    return Card(means, re.compile(rf"(?<!\w)(?:{pattern})(?!\w)"), side)


@dataclass(frozen=True)
class Cue:
    """A card found in the text."""

    means: str
    start: int
    end: int
    side: str = "either"


def cues(said: str, cards: Iterable[Card]) -> list[Cue]:
    """Every card found, by place. Where two overlap the longer counts, then the earlier card."""
    found = [
        Cue(c.means, m.start(), m.end(), c.side) for c in cards for m in c.pattern.finditer(said)
    ]
    found.sort(key=lambda cue: (cue.start, cue.start - cue.end))
    kept: list[Cue] = []
    for cue in found:
        if not kept or cue.start >= kept[-1].end:
            kept.append(cue)
        elif cue.end - cue.start > kept[-1].end - kept[-1].start:
            kept[-1] = cue
    return kept


def sentence_ends(raw: str, said: str) -> list[int]:
    """Where sentences end; a full stop ends one unless it only shortens a word."""
    ends = []
    for stop in _STOP.finditer(said):
        if stop.group() == "." and _ABBREVIATED.search(said, max(0, stop.end() - 8), stop.end()):
            after = raw[stop.end() : stop.end() + 3].lstrip()
            if not after[:1].isupper():
                continue
        ends.append(stop.end())
    return ends


@dataclass(frozen=True)
class Surroundings:
    """The cues and the sentences of a text; `others` are the places of its other numbers."""

    said: str
    found: list[Cue]
    ends: list[int]
    others: list[int]

    def sentence(self, place: int) -> tuple[int, int]:
        """Start and end of the sentence at a place."""
        at = bisect_right(self.ends, place)
        return (
            self.ends[at - 1] if at else 0,
            self.ends[at] if at < len(self.ends) else len(self.said),
        )

    def within(self, low: int, high: int) -> list[Cue]:
        """The cues that begin in low..high."""
        at = bisect_left(self.found, low, key=lambda cue: cue.start)
        return self.found[at : bisect_left(self.found, high, key=lambda cue: cue.start)]

    def number_within(self, low: int, high: int) -> bool:
        """Whether another number begins in low..high."""
        return bisect_left(self.others, low) < bisect_left(self.others, high)

    def nearest(self, start: int, end: int) -> Cue | None:
        """The cue that most likely belongs to the number at start..end, in its sentence.

        A cue beyond the next number belongs to that one: what a number measures is named
        before it or right after it.
        """
        first, last = self.sentence(start)
        scored = []
        for cue in self.within(max(first, start - REACH), min(last, end + REACH)):
            if cue.end <= start and cue.side != "after":
                scored.append((self._cost(cue.end, start), cue.start, cue))
            elif cue.start >= end and cue.side != "before" and self._is_ours(cue, end):
                scored.append((self._cost(end, cue.start), cue.start, cue))
        return min(scored, key=lambda one: one[:2])[2] if scored else None

    def _is_ours(self, cue: Cue, end: int) -> bool:
        """Whether a cue after the number is not rather the next number's."""
        at = bisect_left(self.others, end)
        if at == len(self.others):
            return True
        following = self.others[at]
        if following < cue.start:
            return False
        return following - cue.end > 30 or (
            self._cost(end, cue.start) <= self._cost(cue.end, following)
        )

    def _cost(self, low: int, high: int) -> int:
        if self.said[low:high].strip() in (":", "="):  # 'opening: 51 mm'
            return 0
        breaks = sum(1 for _ in _BREAK.finditer(self.said, low, high))
        return high - low + _BREAK_COSTS * breaks
