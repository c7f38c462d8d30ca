"""What is sound and yet so unlikely that a person should look at it again."""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal
from typing import Any

# Suppliers' prices go up by a few in a hundred; twice as much is a pack for a piece, or a slip.
# Common practice, no source.
FACTOR = 2


def again_at_change(old: object, new: object) -> str | None:
    """An amount that more than doubled or halved."""
    if not isinstance(old, Decimal) or not isinstance(new, Decimal):
        return None
    if max(old, new) <= FACTOR * min(old, new):
        return None
    return f"more than {_times(FACTOR)} {'up' if new > old else 'down'}"


def _times(factor: int) -> str:
    return "twice" if factor == 2 else f"{factor} times"


def again_at_row(values: Mapping[str, Any]) -> str | None:
    """A part that costs more than it is sold for."""
    price, cost = values.get("price"), values.get("cost")
    if isinstance(price, Decimal) and isinstance(cost, Decimal) and cost > price:
        return f"cost {cost} is above price {price}"
    return None
