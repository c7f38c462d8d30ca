"""Text into words, with their places. Nothing is dropped: what is no word is a token of its own."""

from __future__ import annotations

import re
from dataclasses import dataclass

# Written in several ways, meant alike; each replacement keeps the length, so places stay true.
_ALIKE = str.maketrans(
    {"“": '"', "”": '"', "„": '"', "’": "'", "‘": "'", "\u00a0": " ", "\u202f": " ", "\u2009": " "}
    | {"–": "-", "‑": "-", "‐": "-", "″": '"', "…": ".", "\n": " ", "\t": " ", "\r": " "}
)  # fmt: skip
_WORD = re.compile(r"[^\W_]+(?:[-./'][^\W_]+)*|[^\s]")
_SHORT = {
    "don't": ("do", "not"), "doesn't": ("does", "not"), "won't": ("will", "not"),
    "isn't": ("is", "not"), "aren't": ("are", "not"), "can't": ("can", "not"),
    "cannot": ("can", "not"), "didn't": ("did", "not"), "wasn't": ("was", "not"),
    "hasn't": ("has", "not"), "it's": ("it", "is"), "that's": ("that", "is"),
    "they're": ("they", "are"), "you're": ("you", "are"), "you'll": ("you", "will"),
    "it'll": ("it", "will"), "you've": ("you", "have"), "we've": ("we", "have"),
    "there's": ("there", "is"), "couldn't": ("could", "not"), "weren't": ("were", "not"),
}  # fmt: skip


@dataclass(frozen=True)
class Word:
    """A word as written (`text`), in lower case (`low`), and its place."""

    text: str
    low: str
    start: int
    end: int


def alike(text: str) -> str:
    """The text with one kind of quotation mark, apostrophe, dash and blank; same length."""
    return text.translate(_ALIKE)


def words(text: str) -> list[Word]:
    """Words and signs of the text; contractions are opened, a possessive 's stands alone."""
    found: list[Word] = []
    for match in _WORD.finditer(alike(text)):
        raw, start, end = match.group(), match.start(), match.end()
        low = raw.lower()
        if low in _SHORT:
            found += [Word(part, part, start, end) for part in _SHORT[low]]
        elif low.endswith("'s"):
            found.append(Word(raw[:-2], low[:-2], start, end - 2))
            found.append(Word("'s", "'s", end - 2, end))
        else:
            found.append(Word(raw, low, start, end))
    return found
