"""Numbers that a writer gives as a model's, a tank's or a part's, and that no table has."""

from __future__ import annotations

import re
from collections.abc import Container

from assistant.reading.facts import Fact
from assistant.reading.names.book import NameBook
from assistant.reading.names.cues import labelled, place_of
from assistant.reading.names.doubt import hard_to_read
from assistant.reading.names.letter import Letter
from assistant.reading.names.not_numbers import Taken
from assistant.reading.names.number_spans import glued

_WANTED = re.compile(
    r"\b(?:need|want|have|sell|stock|carry|send(?: me)?|looking for|price of|price for|get"
    r"|order)\s+"
    r"(?:an?\s+|the\s+|your\s+|one\s+|some\s+|part\s+)?$"
)
_KIND: dict[str | None, str] = {"tank": "number", "model": "number", "part": "part", "seal": "part"}
_LIKE_OURS = re.compile(r"[a-z]{2,}\d+$")
_GIVEN = re.compile(
    r"\b(?:number|numbers|code|stamped|marked|moulded|molded|embossed|marking|markings)\b(?! of)"
    r"[^.;?!\d]{0,40}\b(?:is|says|reads|it's|inside|lid|tank|one|flapper|seal|as|with"
    r"|on it)[\s:\"'=,-]*$"
)
_GIVEN_AFTER = re.compile(
    r"[\s\"']*(?:,|is|was|are|which is|that is)?\s*(?:stamped|moulded|molded|marked|embossed|cast"
    r"|printed)\b"
)


def unlisted_number(
    letter: Letter, book: NameBook, at: int, taken: Taken, told: Container[int]
) -> Fact | None:
    """A number said to be one: 'the number inside is 9921', 'part number 88-123'.

    `told` are the words at which listed names and numbers end.
    """
    if glued(letter, at - 1):
        return None
    last = _last(letter, at)
    start, end = letter.words[at].start, letter.words[last].end
    said = "".join(w.key for w in letter.words[at : last + 1])
    digits = sum(c.isdigit() for c in said)
    if digits < 2 or not 3 <= len(said) <= 20 or taken.meets(start, end):
        return None
    place = place_of(letter, start, end)
    if place == "bowl":
        return None
    if labelled(letter, start, end) or _given(letter, start, end):
        return unlisted_fact(letter, at, last, _KIND.get(place, "number"))
    if not (2 <= digits < len(said) and len(said) >= 4):
        return None
    if _LIKE_OURS.match(said) and said.rstrip("0123456789") in book.shop_prefixes:
        return unlisted_fact(letter, at, last, "part")
    if _WANTED.search(letter.before(start, end)):
        return unlisted_fact(letter, at, last, _KIND.get(place, "part"))
    if place or _goes_with(letter, at, told):
        return unlisted_fact(letter, at, last, _KIND.get(place, "number"))
    return None


def _last(letter: Letter, at: int) -> int:
    """The last piece of the number that begins at a word ('88-123', or 'G 1279' in capitals)."""
    words, last = letter.words, at
    while glued(letter, last) and last - at < 6:
        last += 1
    if last == at and at + 1 < len(words) and words[at].key.isalpha() and len(words[at].key) <= 3:
        gap = letter.said[words[at].end : words[at + 1].start]
        raw = letter.text.raw[words[at].start : words[at].end]
        digits = words[at + 1].key
        if gap == " " and raw.isupper() and letter.mixed and digits.isdecimal() and len(digits) > 2:
            return at + 1
    return last


def _given(letter: Letter, start: int, end: int) -> bool:
    return bool(
        _GIVEN.search(letter.before(start, end)) or _GIVEN_AFTER.match(letter.after(start, end))
    )


def _goes_with(letter: Letter, at: int, told: Container[int]) -> bool:
    """Whether it stands right after a listed name, or is the other of two numbers ('... or')."""
    if at - 1 in told and letter.words[at - 1].joins:
        return True
    return at - 2 in told and letter.words[at - 1].key == "or"


def unlisted_fact(letter: Letter, first: int, last: int, of: str) -> Fact:
    """The fact that words `first` to `last` are a name that no table has."""
    start, end = letter.words[first].start, letter.words[last].end
    words = letter.text.raw[start:end]
    sure = not hard_to_read(letter.before(start, end), letter.after(start, end))
    return Fact(
        name="unlisted", value=(words,), words=words, start=start, end=end, of=of, sure=sure
    )
