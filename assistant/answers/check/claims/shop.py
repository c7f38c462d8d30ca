"""Price, stock, cost: what the shop's own columns say."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

from assistant.answers.check.attributes import Attribute
from assistant.answers.check.line import Line
from assistant.records.rows import Seal
from assistant.records.tables import Tables


def _money(line: Line, stretch: str) -> Decimal | None:
    found = line.within(stretch, "D")
    return found[0].values["D"] if len(found) == 1 else None


def _status(line: Line, stretch: str) -> str | None:
    words = set(stretch.split())
    if "out" in words:
        return "out of stock"
    if {"discontinued", "longer"} & words:
        return "discontinued"
    if "order" in words:
        return "to order"
    return "in stock" if "in" in words else "stocked"


def _shelved(tables: Tables, seal: Seal, said: str) -> bool | None:
    if said == "in stock":
        return seal.status == "stocked" and seal.on_hand != 0
    if said == "out of stock":
        if seal.status != "stocked":
            return False
        return None if seal.on_hand is None else seal.on_hand == 0
    return seal.status == said


def _count(line: Line, stretch: str) -> int | None:
    found = line.within(stretch, "I")
    if found:
        return int(found[0].values["I"])
    words = stretch.split()
    return 1 if "one" in words else 0 if {"none", "no"} & set(words) else None


def _amount(held: Any, said: Any) -> bool | None:
    return None if held is None else bool(held == said)


_OURS = (
    "{s:part}? (costs|cost) us {D}", "our cost is {D}", "{s:part}? {adv}* costs the shop {D}",
    "{D} cost", "a cost of {D}", "the cost of {s:parts} is {D}",
)  # fmt: skip
_HAND = "(on hand|on the shelf|in the drawer|left|in stock)"

ATTRIBUTES = (
    Attribute(
        name="price",
        read=_money,
        test=lambda tables, seal, said: _amount(seal.price, said),
        post=("(at|for) {D} (each|apiece|a piece)?",),
        clause=(
            "{s:part}? {adv}* (costs|cost|{is} priced at|sells for|sell for|{is}) {D}"
            " (each|apiece)?",
            "(its|the|whose) price (of {s:parts})? is {D}",
            "{D}",
        ),
    ),
    Attribute(
        name="cost",
        read=_money,
        test=lambda tables, seal, said: _amount(seal.cost, said),
        clause=_OURS,
        staff_only=True,
    ),
    Attribute(
        name="on-hand",
        read=_count,
        test=lambda tables, seal, said: _amount(seal.on_hand, said),
        clause=(
            "{s:part}? (there)? ({is}|has|have)? (one|none|{I}) (of (it|them))? {is}? " + _HAND,
            "there {is} (one|none|{I}) of {s:parts} " + _HAND,
            "we have (one|none|{I}) (of (it|them|{s:parts}))? " + _HAND,
        ),
        staff_only=True,
    ),
    Attribute(
        name="status",
        read=_status,
        test=_shelved,
        adj=("in stock", "out of stock", "stocked", "to order", "discontinued"),
        clause=(
            "{s:part}? {is} {adv}* (in stock|to order|discontinued|stocked|out of stock"
            "|no longer (made|sold|available))",
            "{s:part}? can be ordered", "{s:part}? has been discontinued",
            "we have {s:part} in stock", "we stock {s:part}", "we order {s:part} for you",
            "no longer (made|sold|available)",
        ),
    ),
)  # fmt: skip
