"""Finds the cards in `claims/`: what can be said of a seal, and of a toilet or its valve."""

from __future__ import annotations

import importlib
import pkgutil
from collections.abc import Iterator, Sequence
from functools import cache
from types import ModuleType
from typing import Any

from assistant.answers.check import claims
from assistant.answers.check.attributes import Attribute, Said
from assistant.answers.check.line import Line
from assistant.answers.check.patterns import PIECES
from assistant.answers.check.scope import Limit, Trait


@cache
def modules() -> tuple[ModuleType, ...]:
    """Every module of `claims/`."""
    names = sorted(found.name for found in pkgutil.iter_modules(claims.__path__))
    return tuple(importlib.import_module(f"{claims.__name__}.{name}") for name in names)


def gathered(what: str) -> Iterator[Any]:
    """Everything that the modules hold under a name."""
    for module in modules():
        yield from getattr(module, what, ())


@cache
def attributes() -> tuple[Attribute, ...]:
    """What can be said of a seal."""
    found = tuple(gathered("ATTRIBUTES"))
    PIECES["adj"] = "(" + "|".join(by_wording(found, "adj")) + ")"
    return found


@cache
def traits() -> tuple[Trait, ...]:
    """What can be said of a toilet or its valve."""
    return tuple(gathered("TRAITS"))


def by_wording(cards: Sequence[Any], form: str) -> dict[str, list[Any]]:
    """Cards by each of their patterns of a form: one wording may say two things at once."""
    found: dict[str, list[Any]] = {}
    for card in cards:
        for pattern in getattr(card, form):
            found.setdefault(pattern, []).append(card)
    return found


def said(cards: Sequence[Attribute], line: Line, stretch: str) -> list[Said]:
    """What a stretch says of a seal, as far as its cards read anything in it."""
    return [
        (card, value, line.plain(stretch))
        for card in cards
        if (value := card.read(line, stretch)) is not None
    ]


def limits(cards: Sequence[Trait], line: Line, stretch: str) -> list[Limit]:
    """What a stretch says of a toilet."""
    return [Limit(card, value) for card in cards if (value := card.read(line, stretch))]
