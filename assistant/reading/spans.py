"""A stretch of years as somebody wrote it."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

FIRST_YEAR = 1900


@dataclass(frozen=True)
class YearForm:
    """Years as written: low..high; `kind` is year, age ('old') or ago; `of` how exactly told."""

    start: int
    end: int
    low: int
    high: int
    kind: str
    of: str


def century(two_digits: int, today: date) -> int:
    """The year that two digits stand for: never one further ahead than next year."""
    base = today.year // 100 * 100
    return base + two_digits - (100 if two_digits > today.year % 100 + 1 else 0)
