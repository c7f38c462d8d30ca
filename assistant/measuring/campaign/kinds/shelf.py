"""Prices, costs and what is on the shelf, made false."""

from __future__ import annotations

import random
import re
from decimal import Decimal

from assistant.measuring.campaign.kinds.meaning import put
from assistant.measuring.campaign.told import Falsehoods, Told

_COSTS = re.compile(
    r"\*\*(?P<part>[^*]+)\*\* costs (?P<currency>[^\d\s]{1,4} ?)(?P<price>\d+\.\d\d)"
    r" and is (?P<state>[^.]+)\."
)
_COUNTED = re.compile(
    r"For the counter: \S+: (?P<count>\d+) on hand, it costs us"
    r" (?P<currency>[^\d\s]{1,4} ?)(?P<cost>\d+\.\d\d)"
)
_STATES = {"in stock": ("to order", "out of stock"), "to order": ("in stock",),
           "out of stock": ("in stock",)}  # fmt: skip


def shelf(told: Told, sentence: str) -> Falsehoods:
    """Another price, or another state of the shelf."""
    found = _COSTS.match(sentence)
    row = told.truth.seals.get(found["part"]) if found else None
    if not found or row is None or not row["price"]:
        return
    for state in _STATES.get(found["state"], ()):
        yield "another state of the shelf", sentence.replace(found["state"], state)
    price, said = Decimal(row["price"]), f"{found['currency']}{found['price']}"
    prices = [
        ("another price", price + 1),
        ("another price", price - Decimal("0.10")),
        ("a point misplaced", price * 10),
    ]
    if row["cost"]:
        prices.append(("the cost for the price", Decimal(row["cost"])))
    for kind, other in prices:
        if other > 0 and other != price:
            yield kind, sentence.replace(said, f"{found['currency']}{other:.2f}")
    seals = told.truth.seals
    others = [p for p in seals if seals[p]["price"] and Decimal(seals[p]["price"]) != price]
    if others:
        other_seal = random.Random(sentence).choice(others)
        yield "another seal's price", put(sentence, found["part"], other_seal)


def back_room(told: Told, sentence: str) -> Falsehoods:
    """Another count or cost than the row has."""
    if found := _COUNTED.match(sentence):
        count, said = found["count"], f"{found['currency']}{found['cost']}"
        more = f"{found['currency']}{Decimal(found['cost']) + 1:.2f}"
        yield "another count on hand", sentence.replace(f"{count} on", f"{int(count) + 3} on")
        yield "another cost", sentence.replace(said, more)


KINDS = (shelf, back_room)
