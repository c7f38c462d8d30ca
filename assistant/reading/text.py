"""A message as the readers see it: the same length as written, with what is not said masked.

Greeting, signature and quoted text are replaced by blanks, so that the offsets of what is
left still point into the message.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

_STOP = re.compile(
    r"[!?]+(?=\s|$)|\.+(?=\s*$)|\.+(?=\s+[^a-z\s])"
    r"|(?<!\bin)(?<!\bno)(?<!\bft)(?<!\bca)(?<!\bmm)(?<!\bapprox)(?<!\b[a-z])(?<!\d)\.+(?=\s)"
    r"|\n\s*\n|\n(?=\s*[-*•]\s)|;"
)
_ALIKE = str.maketrans({
    "’": "'", "‘": "'", "´": "'", "`": "'", "“": '"', "”": '"', "″": '"', "′": "'",
    "–": "-", "—": "-", "‑": "-", "‐": "-", "−": "-", "\u00a0": " ", "\u2009": " ", "\u202f": " ",
    "⁄": "/", "×": "x",
})  # fmt: skip


def plain(raw: str) -> str:
    """Lower case and one form of quote, dash and space, of just the same length."""
    folded = raw.translate(_ALIKE)
    lowered = folded.lower()
    if len(lowered) == len(folded):
        return lowered
    return "".join(c.lower() if len(c.lower()) == 1 else c for c in folded)


@dataclass(frozen=True)
class Text:
    """A message; `said` is what the writer says in it, as long as `raw`."""

    raw: str
    masked: tuple[tuple[int, int], ...] = ()

    @cached_property
    def visible(self) -> str:
        """The raw text with the masked places blank (line breaks are kept)."""
        if not self.masked:
            return self.raw
        pieces, at = [], 0
        for start, end in sorted(self.masked):
            start = max(start, at)
            if end <= start:
                continue
            pieces.append(self.raw[at:start])
            pieces.append(re.sub(r"[^\n]", " ", self.raw[start:end]))
            at = end
        pieces.append(self.raw[at:])
        return "".join(pieces)

    @cached_property
    def said(self) -> str:
        """What is said, in lower case and plain signs, at its place."""
        return plain(self.visible)

    @cached_property
    def sentences(self) -> tuple[tuple[int, int], ...]:
        """Start and end of each sentence that holds a letter or a digit."""
        spans, at = [], 0
        for stop in _STOP.finditer(self.visible):  # a capital tells a full stop from 'in.'
            spans.append((at, stop.end()))
            at = stop.end()
        spans.append((at, len(self.said)))
        return tuple(s for s in spans if re.search(r"\w", self.said[s[0] : s[1]]))

    def sentence_at(self, place: int) -> tuple[int, int]:
        """The sentence in which a place lies (the whole text where it lies in none)."""
        at = bisect_right(self.sentences, place, key=lambda span: span[0]) - 1
        if at >= 0 and place < self.sentences[at][1]:
            return self.sentences[at]
        return 0, len(self.said)

    def find(self, pattern: re.Pattern[str]) -> Iterator[re.Match[str]]:
        """Every match in what is said."""
        return pattern.finditer(self.said)
