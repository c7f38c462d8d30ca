"""Typed items of a sentence: what a stretch of words names or measures.

A kind is one capital letter, so that a sentence can be written as a line of words and items,
such as ' <P0> fits the <M1> made from <Y2> to <Y3>', and read with plain patterns.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

KINDS = {
    "P": "part number", "S": "name of a seal", "M": "model", "B": "maker", "T": "style",
    "C": "colour", "A": "material", "N": "maker's number", "K": "model number",
    "W": "mark in the tank", "Z": "position", "H": "change", "L": "length",
    "G": "volume", "D": "money", "Y": "year", "I": "number", "Q": "quotation",
    "R": "years", "O": "what singles builds out", "X": "scope", "J": "what a seal is like",
    "F": "description of a seal",
}  # fmt: skip


@dataclass(frozen=True)
class Item:
    """`values` by kind: one stretch of words can be read as several kinds."""

    values: dict[str, Any]
    text: str

    @property
    def kinds(self) -> str:
        """Its kinds as letters, sorted."""
        return "".join(sorted(self.values))


@dataclass(frozen=True)
class Length:
    """A length; `unit` is 'in', 'mm' or 'cm'."""

    amount: float
    unit: str

    def equals_in(self, inches: float | None) -> bool | None:
        """Whether this is a nominal size kept in inches; `None` where the table is silent."""
        if inches is None:
            return None
        if self.unit == "in":
            return abs(self.amount - inches) < 1e-6
        return abs(self.mm - inches * 25.4) <= 0.5

    def equals_mm(self, mm: float | None) -> bool | None:
        """Whether this is a length kept in millimetres, to the half millimetre."""
        if mm is None:
            return None
        return abs(self.mm - mm) <= (0.5 if self.unit == "in" else 1e-6)

    @property
    def mm(self) -> float:
        """The length in millimetres."""
        return self.amount * {"in": 25.4, "mm": 1.0, "cm": 10.0}[self.unit]

    def __str__(self) -> str:
        return f"{self.amount:g} {self.unit}"


@dataclass(frozen=True)
class Volume:
    """US gallons, from `low` to `high`; `None` where a side stays open."""

    low: float | None
    high: float | None

    @property
    def single(self) -> float | None:
        """The one amount, if it is no range."""
        return self.low if self.low == self.high else None


def same(a: float, b: float) -> bool:
    """Equal as the table writes them."""
    return abs(a - b) < 1e-6
