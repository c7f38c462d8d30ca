"""Whether digits that a table lists as a number are meant as one in a letter."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.reading.names import places
from assistant.reading.names.book import NameBook
from assistant.reading.names.cues import cued, labelled
from assistant.reading.names.letter import Letter
from assistant.reading.names.number_spans import Number
from assistant.reading.names.roles import role
from assistant.reading.names.spans import Hit, nearby

_SPOKEN_OF = re.compile(
    r"\s+(?:again|please|toilet|tank|commode|cistern|flapper|seal|ball|fits?|works?|suits?)\b"
)
_ACTED_ON = re.compile(
    r"\b(?:have you got|got|have|bought|tried|ordered|installed|purchased"
    r"|replac(?:es?|ed|ed with|ing|ement for)"
    r"|send(?: me)?"
    r"|need|want"
    r"|stock|sell)\s+(?:(?:an?|the|your|one|two|\d x?)\s+)?$"
)


def meant(letter: Letter, book: NameBook, number: Number, names: Sequence[Sequence[Hit]]) -> bool:
    """Whether the number is distinctive, or said to be a number."""
    keys = (*number.build_keys, *number.part_keys)
    if any(key in book.shop_numbers for key in number.part_keys):
        return True
    raw = letter.text.raw[number.start : number.end]
    digits = [c for c in keys[0] if c.isdigit()]
    if len(keys[0]) >= 4 and digits and len(digits) < len(keys[0]):
        return True
    if labelled(letter, number.start, number.end):
        return bool(digits) or (letter.mixed and raw.isupper())
    here = Hit(number.first, number.last, keys[0], ())
    if digits and places.whole(letter, here):
        return True
    if len(keys[0]) < 3 or not digits:
        return False
    return (
        cued(letter, number.start, number.end)
        or any(places.follows(letter, m, here) for hits in names for m in nearby(hits, here))
        or bool(_SPOKEN_OF.match(letter.said, number.end))
        or (len(keys[0]) >= 4 and _has_role(letter, number))
        or (len(keys[0]) >= 4 and bool(_ACTED_ON.search(letter.before(number.start, number.end))))
    )


def _has_role(letter: Letter, number: Number) -> bool:
    """Whether something is said of it that is said of a part."""
    if not number.part_keys:
        return False
    return role(letter, number.start, number.end, (0, len(letter.said))) != "wanted"


def agrees(book: NameBook, number: Number, named: frozenset[str]) -> bool:
    """Whether the letter also names a model that bears the number."""
    if len(number.build_keys[0] if number.build_keys else "") < 4:
        return False
    return any(
        not named.isdisjoint(book.models_numbered[n])
        for n in book.numbers.values(number.build_keys)
    )
