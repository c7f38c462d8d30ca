"""A message as words with their places, sentences and capitals: what every name reader needs."""

from __future__ import annotations

import re
import unicodedata
from bisect import bisect_right
from dataclasses import dataclass
from functools import cached_property

from assistant.reading.text import Text

_WORD = re.compile(r"[^\W_]+")
_ABBREVIATED = r"(?<!\bno)(?<!\bnr)(?<!\bnum)(?<!\bmod)(?<!\bst)(?<!\bpt)(?<!\bapprox)(?<!\bmr)"
_END = re.compile(
    rf"(?<![!?;])[!?;]+(?=\s|$)|(?<!\.){_ABBREVIATED}\.+(?=\s|$)"
    r"|\n\s*\n|\n(?=[ \t]*[-*•]\s)"
)
_WITHIN_NAME = re.compile(r"[ \t]{1,3}|[ \t]?['\-/&+][ \t]?|\.|[ \t]*\n[ \t]*")
_STARTS_AFRESH = re.compile(r"[.!?:;\n\"(\-*•][ \t\"'(\-*•]*$")
_REACH = 150  # characters: how far from a name words may speak about it


def letters(word: str) -> str:
    """The word without accents, in lower case."""
    if word.isascii():
        return word
    bare = unicodedata.normalize("NFKD", word).casefold()
    return "".join(c for c in bare if c.isalnum())


@dataclass(frozen=True, slots=True)
class Word:
    """A run of letters and digits; `possessive` where it is the s after an apostrophe."""

    key: str
    start: int
    end: int
    possessive: bool
    joins: bool  # there is nothing but a space, hyphen, dot or the like up to the next word


@dataclass(frozen=True)
class Letter:
    """A text cut into words."""

    text: Text

    @cached_property
    def said(self) -> str:
        return self.text.said

    @cached_property
    def words(self) -> tuple[Word, ...]:
        places = [(m.start(), m.end()) for m in _WORD.finditer(self.said)]
        words = []
        for i, (start, end) in enumerate(places):
            after = places[i + 1][0] if i + 1 < len(places) else end
            words.append(
                Word(
                    key=letters(self.said[start:end]),
                    start=start,
                    end=end,
                    possessive=self.said[start:end] == "s" and self.said[start - 1 : start] == "'",
                    joins=after - end <= 8
                    and (
                        _WITHIN_NAME.fullmatch(self.said, end, after) is not None
                        or (end - start <= 2 and self.said[end:after] == ". ")  # 'St. Alder'
                    ),
                )
            )
        return tuple(words)

    @cached_property
    def ends(self) -> list[int]:
        """Where sentences end."""
        return [m.end() for m in _END.finditer(self.said)]

    def sentence(self, start: int, end: int) -> tuple[int, int]:
        """The sentence round a place, cut where it runs on for more than a breath."""
        at = bisect_right(self.ends, start)
        low = self.ends[at - 1] if at else 0
        until = bisect_right(self.ends, end - 1)
        high = self.ends[until] if until < len(self.ends) else len(self.said)
        return max(low, start - _REACH), min(high, end + _REACH)

    def before(self, start: int, end: int) -> str:
        """What the sentence says before a place."""
        return self.said[self.sentence(start, end)[0] : start]

    def after(self, start: int, end: int) -> str:
        """What the sentence says after a place."""
        return self.said[end : self.sentence(start, end)[1]]

    @cached_property
    def mixed(self) -> bool:
        """Whether capitals mean something: the letter is not all lower case, nor all capitals."""
        upper = sum(1 for c in self.text.visible if c.isupper())
        lower = sum(1 for c in self.text.visible if c.islower())
        return 0 < upper < lower

    def capital(self, word: Word) -> bool:
        """Whether a capital marks the word as a name, for all we can see."""
        if not self.mixed or not self.text.raw[word.start].isupper():
            return False
        lead = self.said[max(0, word.start - 12) : word.start]
        return bool(lead.strip()) and not _STARTS_AFRESH.search(lead)
