"""What a customer tells, as facts, without a letter."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from assistant.reading.facts import Fact, Facts, Interval

MM_PER_IN = 25.4


def word(name: str, *readings: str, **more: Any) -> Fact:
    """A fact whose value is one word of the tables, or several that it may mean."""
    return Fact(name=name, value=readings, start=0, end=1, **({"words": readings[0]} | more))


def between(name: str, low: float, high: float | None = None, **more: Any) -> Fact:
    """A quantity or a year, from low to high (just low where no high is given)."""
    high = low if high is None else high
    return Fact(name=name, value=Interval(low, high), words=f"{low:g}", start=0, end=1, **more)


def opening(inches: float) -> Fact:
    """The opening, measured, and the one nominal size that it meets."""
    middle = inches * MM_PER_IN
    return between("opening", middle - 2, middle + 2, unit="mm", nominal_in=(inches,))


def toilet(maker: str, model: str) -> tuple[Fact, Fact]:
    """Maker and model as the table names them."""
    return word("brand", maker), word("model", f"{maker} {model}", words=model)


def doubted(fact: Fact) -> Fact:
    """The same, of which the writer was not sure."""
    return replace(fact, sure=False)


def facts(*told: Fact) -> Facts:
    """All that is told about one toilet, in this order."""
    placed = [replace(f, start=at * 10, end=at * 10 + 9) for at, f in enumerate(told)]
    return Facts(tuple(placed))
