"""Ages and times ago: 'about 20 years old', 'a few years ago', 'last spring', 'brand new'."""

# ruff: noqa: E501  (a pattern is easier to read on one line)

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import date

from assistant.reading.numerals import NUMBER, value
from assistant.reading.spans import FIRST_YEAR, YearForm
from assistant.reading.text import Text
from assistant.reading.tolerances import NEW, age, decades
from assistant.reading.wording import Said, how_said

_SOME = r"an? (?:good |solid )?couple(?: of)?|an? few|several|an?"
_COUNT = rf"(?:{_SOME}|{NUMBER})"
_OR_SO = r"(?:[ -]?(?:or so|ish|some(?:thing)?|odd))?"
_AGE = re.compile(
    rf"(?<![\w$€£.#/-])(?:between )?(?P<a>{_COUNT})(?: ?(?:-|to|or|and) ?(?P<b>{NUMBER}))?(?P<plus>\+| plus| or more)?{_OR_SO}"
    r"[ -]?(?P<unit>years?|yrs?|decades?|months?|weeks?|days?)\.?'?(?: or (?:so|more))?[ -]?(?P<tail>old|ago|back)\b"
)
_HAD = re.compile(
    rf"\b(?:had|owned|lived|living|been)\b(?: [\w']{{1,10}}){{0,4}}? (?:(?:for|about|around|over|almost|nearly|at least|the (?:last|past)) ){{0,3}}"
    rf"(?P<a>{_COUNT})(?P<b>)(?P<plus>\+| plus)?{_OR_SO}[ -]?(?P<unit>years?|yrs?|decades?)\b(?P<tail>)(?! (?:old|ago))"
)
_OLDEST = 150  # years; a larger number is no age
_FEW = {"couple": (2, 2), "few": (2, 5), "several": (3, 9)}


def age_forms(text: Text, today: date) -> Iterator[YearForm]:
    """'about 20 years old', 'a few years ago', 'had it 15 years', counted back from today."""
    for match in (*_AGE.finditer(text.said), *_HAD.finditer(text.said)):
        start, end, unit = match.start("a"), match.end(), match["unit"].rstrip("s")
        how = (
            Said.OVER
            if match["plus"] or " or more" in match.group()
            else how_said(text.said, start, end)
        )
        kind = "age" if match["tail"] == "old" else "ago"
        low, high = _counted(match["a"], match["b"])
        if high > _OLDEST:
            continue
        if unit in ("month", "week", "day"):
            yield YearForm(
                start,
                end,
                today.year - 1 - int(low / 12 if unit == "month" else 0),
                today.year,
                kind,
                "about",
            )
            continue
        if re.search(r"ish|or so|some|odd", match.group()):
            how = Said.ABOUT
        width = decades(high) if unit == "decade" else age(high, how)
        many = 10 if unit == "decade" else 1
        first = today.year - int(high * many) - int(width.below)
        last = min(today.year - int(low * many) + int(width.above), today.year)
        if how is Said.OVER:
            first = FIRST_YEAR
        if how is Said.UNDER:
            last = today.year
        yield YearForm(start, end, max(first, FIRST_YEAR), max(last, FIRST_YEAR), kind, "about")


def _counted(first: str, second: str | None) -> tuple[float, float]:
    for word, (low, high) in _FEW.items():
        if word in first:
            return low, high
    one = 1.0 if first in ("a", "an") else value(first)
    other = value(second) if second else one
    return min(one, other), max(one, other)


_LAST = re.compile(
    r"\b(?:(?P<which>last|this|this past) (?P<when>year|spring|summer|fall|autumn|winter|christmas|month|week)|yesterday|the other day)\b"
)
_BRAND_NEW = re.compile(
    r"\bbrand[ -]?new(?= (?:\w+ ){0,2}(?:toilet|commode|fixture|tank\b))|(?<=toilet is )brand[ -]?new|(?<=toilet was )brand[ -]?new"
    r"|(?<=it is )(?<!in it is )brand[ -]?new|(?<=it's )brand[ -]?new|(?<=its )brand[ -]?new"
)


_YEAR_SOON = re.compile(r"\b(?:19|20)\d\d\b")


def recent_forms(text: Text, today: date) -> Iterator[YearForm]:
    """'last spring', 'this year', 'brand new'."""
    for match in _LAST.finditer(text.said):
        low, high = today.year - 1, today.year
        if match["when"] == "year":
            low, high = (low, low) if match["which"] == "last" else (high, high)
        yield YearForm(match.start(), match.end(), low, high, "ago", "about")
    for match in _BRAND_NEW.finditer(text.said):
        if _YEAR_SOON.search(text.said, max(0, match.start() - 50), match.end() + 50):
            continue  # 'brand new in 2018' was new then
        yield YearForm(
            match.start(), match.end(), today.year - int(NEW.below), today.year, "age", "about"
        )
    for match in re.finditer(r"\bdecades old\b", text.said):
        yield YearForm(match.start(), match.end(), FIRST_YEAR, today.year - 15, "age", "about")
