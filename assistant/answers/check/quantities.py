"""Numbers, lengths, volumes, money and years in a row of words."""

from __future__ import annotations

import re
from collections.abc import Sequence
from decimal import Decimal
from functools import cache
from typing import Any

from assistant.answers.check.items import Length, Volume
from assistant.answers.check.words import Word, words

Found = tuple[dict[str, Any], int]  # values by kind, and how many words they take

COUNTS = {
    "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9,
    "ten": 10, "eleven": 11, "twelve": 12,
}  # fmt: skip
_VULGAR = {"½": 0.5, "¼": 0.25, "¾": 0.75, "⅛": 0.125, "⅜": 0.375, "⅝": 0.625, "⅞": 0.875}
_DECIMAL = re.compile(r"\d{1,7}(?:\.\d{1,4})?")
_MIXED = re.compile(r"(?:(\d{1,3})-)?(\d{1,2})/(\d{1,2})")
_GLUED = re.compile(r"(\d[\d./]*|\d*[½¼¾⅛⅜⅝⅞])-?(inches|inch|in|mm|cm|gallons|gallon|gal|gpf)")
_RANGE = re.compile(r"(\d+(?:\.\d+)?)-(\d+(?:\.\d+)?)")
_LENGTH = {
    "in": "in", "inch": "in", "inches": "in", '"': "in",
    "mm": "mm", "millimetre": "mm", "millimetres": "mm", "millimeter": "mm", "millimeters": "mm",
    "cm": "cm",
}  # fmt: skip
_VOLUME = {"gallon", "gallons", "gal", "gpf"}
# 'two in the tank' is no length
_NOT_INCHES = {
    "the",
    "our",
    "your",
    "a",
    "an",
    "all",
    "each",
    "stock",
    "packs",
    "it",
    "one",
    "this",
}


def number(word: str) -> float | None:
    """A decimal, a fraction such as '1/2' or '2-1/2', or a sign such as '2½'."""
    if _DECIMAL.fullmatch(word):
        return float(word)
    if mixed := _MIXED.fullmatch(word):
        whole, top, bottom = mixed.groups()
        return (int(whole or 0) + int(top) / int(bottom)) if int(bottom) else None
    if word and word[-1] in _VULGAR and (not word[:-1] or word[:-1].isascii()):
        return (int(word[:-1]) if word[:-1].isdecimal() else 0) + _VULGAR[word[-1]]
    return None


def money(row: Sequence[Word], at: int, currency: str) -> Found | None:
    """An amount with the shop's sign before it: '$6.40'."""
    sign = _sign(currency)
    if row[at].low != sign[0]:
        return None
    end = at + len(sign)
    if [w.low for w in row[at:end]] != sign or end >= len(row):
        return None
    amount = row[end].low
    if not re.fullmatch(r"\d{1,6}(?:\.\d\d)?", amount):
        return None
    return {"D": Decimal(amount)}, len(sign) + 1


@cache
def _sign(currency: str) -> list[str]:
    return [word.low for word in words(currency)] or [currency]


def quantity(row: Sequence[Word], at: int) -> Found | None:
    """The quantity that begins at a word, with its unit if it has one."""
    low = row[at].low
    if not low[0].isnumeric() and low not in COUNTS:
        return None
    if glued := _GLUED.fullmatch(low):
        amount = number(glued.group(1))
        return None if amount is None else (_with_unit(amount, glued.group(2)), 1)
    if years := _years(low):
        return years, 1
    if span := _RANGE.fullmatch(low):
        if at + 1 < len(row) and row[at + 1].low in _VOLUME:
            return {"G": Volume(float(span.group(1)), float(span.group(2)))}, 2
        return None
    found = _number(row, at)
    if found is None:
        return None
    amount, end = found
    joined = row[end].low if end < len(row) else ""
    if joined == "to" or (joined == "and" and at and row[at - 1].low == "between"):
        other = _number(row, end + 1) if end + 1 < len(row) else None
        if other and other[1] < len(row) and row[other[1]].low in _VOLUME:
            return {"G": Volume(amount, other[0])}, other[1] + 1 - at
    if end < len(row) and _is_unit(row, end, amount, spelled=low in COUNTS):
        return _with_unit(amount, row[end].low), end + 1 - at
    values: dict[str, Any] = {"I": amount}
    if end == at + 1 and re.fullmatch(r"\d{4}", low) and 1850 <= int(low) <= 2100:
        values["Y"] = int(low)
    return values, end - at


def _number(row: Sequence[Word], at: int) -> tuple[float, int] | None:
    """A number and the place after it; '2 1/2' takes two words."""
    low = row[at].low
    if low in COUNTS:
        return float(COUNTS[low]), at + 1
    amount = number(low)
    if amount is None:
        return None
    following = row[at + 1].low if at + 1 < len(row) else ""
    if low.isdecimal() and re.fullmatch(r"\d{1,2}/\d{1,2}|[½¼¾⅛⅜⅝⅞]", following):
        rest = number(following)
        return None if rest is None else (amount + rest, at + 2)
    return amount, at + 1


def _is_unit(row: Sequence[Word], at: int, amount: float, *, spelled: bool) -> bool:
    unit = row[at].low
    if unit == '"':  # only where the sign touches the number
        return not spelled and row[at].start == row[at - 1].end
    if unit == "in":
        following = row[at + 1].low if at + 1 < len(row) else ""
        return amount < 100 and following not in _NOT_INCHES
    return unit in _LENGTH or unit in _VOLUME


def _with_unit(amount: float, unit: str) -> dict[str, Any]:
    if unit in _VOLUME:
        return {"G": Volume(amount, amount)}
    return {"L": Length(amount, _LENGTH[unit])}


def _years(low: str) -> dict[str, Any] | None:
    """'1986-1993' in one word."""
    span = re.fullmatch(r"(\d{4})-(\d{4})", low)
    if not span or not all(1850 <= int(y) <= 2100 for y in span.groups()):
        return None
    return {"R": (int(span.group(1)), int(span.group(2)))}
