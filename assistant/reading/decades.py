"""Decades: 'the 1980s', 'late 70s', 'early nineties'."""

# ruff: noqa: E501  (a pattern is easier to read on one line)

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import date

from assistant.reading.numerals import TENS
from assistant.reading.spans import FIRST_YEAR, YearForm, century
from assistant.reading.text import Text
from assistant.reading.tolerances import DECADE

_DECADE_WORDS = {f"{word.removesuffix('y')}ies": int(n) for word, n in TENS.items() if n >= 30}
_THIRDS = {
    "early": (0, 3),
    "beginning": (0, 3),
    "mid": (3, 7),
    "middle": (3, 7),
    "late": (6, 10),
    "later": (6, 10),
    "end": (7, 10),
}
_PART = "|".join(_THIRDS)
_DECADE = re.compile(
    rf"(?<![\w$'])(?:(?P<part>{_PART})(?:[ -](?:to|or)[ -](?P<other>{_PART}))?(?: of)?(?: the)?[ -]?|(?P<the>(?:the|from|circa|vintage|original) |(?<=0s or )|(?<=0s to )|(?<=0s/)|(?<=0's or )))?"
    rf"(?P<when>(?:19|20)\d0(?:'?s\b|-?ish s|[ -]something)|'?[3-9]0'?s\b|{'|'.join(_DECADE_WORDS)}\b|two thousands\b)(?! ?degrees)"
)
_OF_A_DECADE = re.compile(
    r" (?:\w+ )?(?:toilet|commode|house|home|bathroom|tank|style|era|vintage|model|original|build|pink|blue|avocado)"
)
_SOMEBODYS = re.compile(
    r"\b(?:my|his|her|their|your|our|high|low|upper) (?:early |mid |late |mid-)?$"
)


def decade_forms(text: Text, today: date) -> Iterator[YearForm]:
    """'the 1980s', 'late 70s', 'early nineties', widened so that no boundary decides."""
    for match in _DECADE.finditer(text.said):
        when = match["when"]
        bare = re.fullmatch(r"[3-9]0'?s", when) is not None
        if bare and not (
            match["part"] or match["the"] is not None or _OF_A_DECADE.match(text.said, match.end())
        ):
            continue  # '60s' may be seconds
        if _SOMEBODYS.search(text.said, max(0, match.start() - 16), match.start()):
            continue
        first = _first_of(when, today)
        low, high = _THIRDS[match["part"]] if match["part"] else (0, 9)
        if match["other"]:
            high = _THIRDS[match["other"]][1]
        start = match.start("part") if match["part"] else match.start("when")
        low, high = (
            first + low - int(DECADE.below),
            min(first + high + int(DECADE.above), today.year),
        )
        if low <= high:
            yield YearForm(start, match.end(), max(low, FIRST_YEAR), high, "year", "about")


def _first_of(when: str, today: date) -> int:
    if when in _DECADE_WORDS:
        return century(_DECADE_WORDS[when], today)
    if when == "two thousands":
        return 2000
    digits = re.sub(r"\D", "", when)
    return int(digits) if len(digits) == 4 else century(int(digits), today)
