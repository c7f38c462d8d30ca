"""What may stand in a table's cell, and how it is read.

A cell reader takes the stripped, non-empty text of a cell and returns a value, or raises
`ValueError` with what a sound cell holds. An empty cell never reaches a reader: it means
*not known* and becomes `None` (or an empty tuple), never zero and never 'no'.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import field
from datetime import date
from decimal import Decimal
from typing import Any

OPEN_FROM, OPEN_TO = -9999, 9999  # 'open' years: no first year known to exist, or still made

# Python would also read 2_5 as 25 and 1e3 as 1000: a slip of the keyboard, not a number.
_PLAIN = re.compile(r"[+-]?(\d+\.?\d*|\.\d+)", re.ASCII)

Reader = Callable[[str], Any]


def text(raw: str) -> str:
    """Any text."""
    return raw


def items(raw: str) -> tuple[str, ...]:
    """Texts separated by semicolons, without empty ones."""
    return tuple(part for part in (p.strip() for p in raw.split(";")) if part)


def number(raw: str) -> float:
    """A plain decimal number above zero."""
    if not _PLAIN.fullmatch(raw):
        raise ValueError("a plain number such as 2.5")
    value = float(raw)
    if not 0 < value < 1e6:
        raise ValueError("a number above zero")
    return value


def numbers(raw: str) -> tuple[float, ...]:
    """Numbers separated by semicolons."""
    return tuple(number(part) for part in items(raw))


def count(raw: str) -> int:
    """A whole number, zero or more."""
    if not raw.isdecimal():
        raise ValueError("a whole number such as 2")
    return int(raw)


def some(raw: str) -> int:
    """A whole number, one or more."""
    if not raw.isdecimal() or int(raw) == 0:
        raise ValueError("a whole number of one or more")
    return int(raw)


def share(raw: str) -> float:
    """A share between 0 and 1."""
    value = number(raw)
    if value > 1:
        raise ValueError("a share from 0 to 1, such as 0.7")
    return value


def money(raw: str) -> Decimal:
    """An amount in the shop's currency, without its sign."""
    if not _PLAIN.fullmatch(raw):
        raise ValueError("an amount such as 7.50, without a currency sign")
    value = Decimal(raw)
    if value < 0:
        raise ValueError("an amount of zero or more")
    return value


def day(raw: str) -> date:
    """An ISO date."""
    try:
        return date.fromisoformat(raw)
    except ValueError:
        raise ValueError("a date such as 2024-03-31") from None


def _year(open_value: int) -> Reader:
    def read(raw: str) -> int:
        if raw == "open":
            return open_value
        if not (raw.isdecimal() and 1850 <= int(raw) <= 2100):
            raise ValueError("a year such as 1994, or the word open")
        return int(raw)

    return read


year_from, year_to = _year(OPEN_FROM), _year(OPEN_TO)


def yes_no(raw: str) -> bool:
    """The word yes or the word no."""
    if raw not in ("yes", "no"):
        raise ValueError("yes or no")
    return raw == "yes"


def one_of(*allowed: str) -> Reader:
    """One of some fixed words."""

    def read(raw: str) -> str:
        if raw not in allowed:
            raise ValueError("one of: " + ", ".join(allowed))
        return raw

    return read


def some_of(*allowed: str) -> Reader:
    """One or more of some fixed words, separated by semicolons."""
    single = one_of(*allowed)
    return lambda raw: tuple(single(part) for part in items(raw))


def cell(reader: Reader = text, *, needed: bool = False, to: str | None = None) -> Any:
    """A table column: how it is read, whether it must be filled, which table it refers to."""
    many = reader in (items, numbers) or getattr(reader, "__name__", "") == "<lambda>"
    card = {"reader": reader, "needed": needed, "to": to, "empty": () if many else None}
    return field(metadata=card)
