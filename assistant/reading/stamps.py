"""Dates with a month or a day, as makers press them into a tank: '6 14 92', 'JUN 14 1992'."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date

from assistant.reading.spans import FIRST_YEAR, century
from assistant.reading.text import Text

_MONTH = (
    r"(?:jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?"
    r"|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)\b\.?"
)
_GO = r"[ /.-]{1,2}"
_YEAR = r"(?P<year>(?:19|20)\d\d|'?\d\d)"
_LEFT, _RIGHT = r"(?<![\w$€£#/:+])(?<![\w]-)(?<!\d[.,])(?<!\d )", r"(?![\w/%]|[.:,-]\d| \d)"
_DAY = r"\d{1,2}(?:st|nd|rd|th)?"
_NAMED = re.compile(
    rf"{_LEFT}(?:{_MONTH}{_GO}{_DAY},?{_GO}|{_DAY}{_GO}(?:of )?{_MONTH},?{_GO}){_YEAR}{_RIGHT}"
)
_MONTH_ONLY = re.compile(rf"{_LEFT}(?:{_MONTH},?{_GO}|(?:0?[1-9]|1[0-2])[/-]){_YEAR}{_RIGHT}")
_YEAR_FIRST = re.compile(
    rf"{_LEFT}(?P<year>(?:19|20)\d\d)(?P<go>[ /.-])\d{{1,2}}(?P=go)\d{{1,2}}{_RIGHT}"
)
_THREE = re.compile(
    rf"{_LEFT}(?P<a>\d{{1,2}})(?P<go>[ /.-])(?P<b>\d{{1,2}})(?P=go)"
    rf"(?P<c>(?:19|20)\d\d|\d{{1,2}}){_RIGHT}"
)


@dataclass(frozen=True)
class DateForm:
    """A date as written: the year(s) it may mean; `plain` is true where the form is a date's alone.

    '3 4 5' is a date only beside a word that says so.
    """

    start: int
    end: int
    low: int
    high: int
    plain: bool


def date_forms(text: Text, today: date) -> list[DateForm]:
    """Every date with more than a year in it, in order, none overlapping."""
    found = sorted([*_named(text, today), *_numbers(text, today)], key=lambda f: (f.start, -f.end))
    kept: list[DateForm] = []
    for form in found:
        if FIRST_YEAR <= form.low <= form.high <= today.year + 1 and (
            not kept or form.start >= kept[-1].end
        ):
            kept.append(form)
    return kept


def _named(text: Text, today: date) -> Iterator[DateForm]:
    for pattern in (_NAMED, _YEAR_FIRST, _MONTH_ONLY):
        for match in pattern.finditer(text.said):
            year = _year(match["year"], today)
            copied = text.raw[match.start() : match.start() + 3].isupper()  # as it is pressed in
            plain = pattern is not _MONTH_ONLY or len(match["year"]) > 2 or copied
            yield DateForm(match.start(), match.end(), year, year, plain)


def _numbers(text: Text, today: date) -> Iterator[DateForm]:
    """Three numbers: the year comes first or last; where both can be, both are kept."""
    for match in _THREE.finditer(text.said):
        a, b, c = match["a"], match["b"], match["c"]
        years = []
        if len(c) != 1 and _is_day(a, b):
            years.append(_year(c, today))
        if len(a) == 2 and len(c) < 3 and _is_day(b, c):
            years.append(_year(a, today))
        if years:
            sure = match["go"] != " " or int(a) > 31 or len(c) == 4 or int(c) > 31
            yield DateForm(match.start(), match.end(), min(years), max(years), sure)


def _is_day(first: str, second: str) -> bool:
    """Whether two numbers can be a month and a day, in either order."""
    low, high = sorted((int(first), int(second)))
    return 1 <= low <= 12 and high <= 31


def _year(digits: str, today: date) -> int:
    digits = digits.lstrip("'")
    return int(digits) if len(digits) == 4 else century(int(digits), today)
