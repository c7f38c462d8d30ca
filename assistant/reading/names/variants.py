"""A word that goes on from a listed model's name and may make it another model.

'Alder' and 'Alder II' are two toilets, often with two kinds of flush valve. Where only the
first is listed, the second is not known: the reading is then no better than a likeness.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.reading.names.letter import Letter, Word
from assistant.reading.names.not_numbers import Taken
from assistant.reading.names.number_spans import glued
from assistant.reading.names.ordinary import ordinary
from assistant.reading.names.spans import Hit, nearby

_ROMAN = frozenset(("ii", "iii", "iv", "vi", "vii", "viii", "ix"))
_TRIMS = frozenset(
    """plus elite compact pro max maxi xl xt lite mini deluxe ultra eco grande junior jr se lx gt es
    hd hg ez prime supreme royale select comfort ada classic""".split()  # noqa: SIM905
)
_COUNTED = re.compile(
    r"[\s-]*(?:piece|pc|button|bolt|inch|in\b|mm|gpf|gal|lit|toilet|years?|times?|of\b|and\b|or\b"
    r"|x\b|\"|/)"
)


def goes_on(letter: Letter, hit: Hit, names: Sequence[Hit], taken: Sequence[Taken]) -> int | None:
    """The last word of a model's name that goes on beyond what is listed, if it does."""
    at = hit.last + 1
    if at >= len(letter.words) or letter.said[letter.words[hit.last].end] not in " -":
        return None
    word = letter.words[at]
    if not _joined(letter, hit.last) or word.possessive or _starts_number(letter, at):
        return None
    if any(places.meets(word.start, word.end) for places in taken):
        return None
    if any(other.first <= at <= other.last for other in nearby(names, hit)):
        return None
    return at if _is_more(letter, word) else None


def starts_earlier(letter: Letter, hit: Hit, names: Sequence[Hit]) -> bool:
    """Whether a capitalised word that no list has stands right before ('Nimbrel Alder')."""
    at = hit.first - 1
    if at < 0 or letter.said[letter.words[at].end : letter.words[hit.first].start] not in (
        " ",
        "-",
    ):
        return False
    word = letter.words[at]
    if word.possessive or any(o.first <= at <= o.last for o in nearby(names, hit)):
        return False
    return letter.capital(word) and word.key.isalpha() and not ordinary(word.key)


def _starts_number(letter: Letter, at: int) -> bool:
    """'P-971': a letter or two tied to digits are a number, not the end of a name."""
    return (
        letter.words[at].key.isalpha()
        and glued(letter, at)
        and (letter.words[at + 1].key[0].isdigit())
    )


def _joined(letter: Letter, at: int) -> bool:
    words = letter.words
    return letter.said[words[at].end : words[at + 1].start] in (" ", "-", " -", "- ")


def _is_more(letter: Letter, word: Word) -> bool:
    raw = letter.text.raw[word.start : word.end]
    if word.key in _ROMAN:
        return True
    if word.key in ("v", "x", "s", "z"):
        return letter.mixed and raw.isupper()
    if word.key.isdecimal():
        return len(word.key) <= 4 and not _COUNTED.match(letter.said, word.end)
    capital = letter.mixed and raw[0].isupper()
    if word.key in _TRIMS:
        return capital or not letter.mixed
    return capital and not ordinary(word.key) and (word.key.isalpha() or len(word.key) <= 3)
