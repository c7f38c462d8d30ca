"""How a number was said: plainly, about, a bit over, almost, more than, less than."""

from __future__ import annotations

import re
from enum import Enum

_REACH = 36


class Said(Enum):
    """The ways of saying a number that change its width."""

    PLAINLY = "plainly"
    ABOUT = "about"
    BIT_OVER = "a bit over"
    ALMOST = "almost"
    OVER = "more than"
    UNDER = "less than"


_BIT = r"(?:a (?:bit|little(?: bit)?|hair|touch|tad|smidge|smidgen|shade)|just|slightly|barely)"
_GO = r"(?: (?:a|an|the))? ?$"
_BEFORE = (
    (Said.BIT_OVER, rf"\b{_BIT} (?:over|above|past|more than|bigger than|larger than|wider than)"),
    (Said.ALMOST, rf"\b(?:{_BIT} (?:under|below|less than|shy of|smaller than)|almost|nearly"
                  r"|not quite|close to|just about|pushing|shy of)"),
    (Said.OVER, r"\b(?:over|more than|bigger than|larger than|wider than|older than|at least"
                r"|upwards of|well over|greater than|min(?:imum)?)"),
    (Said.UNDER, r"\b(?:under|less than|smaller than|narrower than|newer than|at most|no more than"
                 r"|max(?:imum)?|not even|within)"),
    (Said.ABOUT, r"(?:\b(?:about|abt|around|roughly|approx(?:imately|\.)?|circa|ca\.?|c\."
                 r"|some(?:where|thing) (?:around|like)|give or take|more or less|say|near"
                 r"|in the neighborhood of|maybe like|like)|~)"),
)  # fmt: skip
_AFTER = (
    (Said.ABOUT, r" ?-?ish\b| (?:inch|mm|cm)?-?ish\b|,? (?:or so|or thereabouts|give or take"
                 r"|more or less|approx(?:imately)?|roughly|or close to it|-ish|ish)\b"),
    (Said.BIT_OVER, r"(?: and)? a (?:bit|hair|little|touch|tad|smidge)\b(?! (?:under|less|small))"
                    r"| ?\+| plus a (?:bit|little)|,? (?:maybe |or )?a (?:bit|hair|little) more"),
    (Said.ALMOST, r",? (?:maybe |or )?a (?:bit|hair|little) (?:less|under|smaller)"),
)  # fmt: skip
_BEFORE_ANY = tuple((said, re.compile(f"(?:{pattern}){_GO}")) for said, pattern in _BEFORE)
_AFTER_ANY = tuple((said, re.compile(pattern)) for said, pattern in _AFTER)


def how_said(said: str, start: int, end: int) -> Said:
    """How the number at start..end of a lower-case text was said, by the words beside it."""
    before = said[max(0, start - _REACH) : start]
    for how, pattern in _BEFORE_ANY:
        if pattern.search(before):
            return how
    for how, pattern in _AFTER_ANY:
        if pattern.match(said, end, end + _REACH):
            return how
    return Said.PLAINLY
