"""Prices, stock and counts copied carelessly."""

from __future__ import annotations

import re

from assistant.measuring.campaign.kinds.careless_said import (
    affirms,
    bold,
    ended,
    parts_in,
    row_meant,
    some,
)
from assistant.measuring.campaign.told import Falsehoods, Kind, Told

COSTS = re.compile(r"costs \$(\d+\.\d\d)")
NUMBER = {"1": "one", "2": "two", "3": "three", "4": "four"}


def _repriced(sentence: str, price: str) -> str:
    return COSTS.sub(lambda _: f"costs ${price}", sentence, count=1)


def copied_price(told: Told, sentence: str) -> Falsehoods:
    """The price of the neighbour in the list, or of another part in the answer."""
    found, row = COSTS.search(sentence), row_meant(told, sentence)
    if not found or row is None or row["price"] != found[1]:
        return
    listed = list(told.truth.seals)
    at = listed.index(row["part_no"])
    near = [*listed[max(0, at - 2) : at + 3], *parts_in(told.text)]
    prices = {told.truth.seals[p]["price"] for p in near if p in told.truth.seals}
    for price in some(sentence, sorted(prices - {"", row["price"]})):
        yield "the price of another part", _repriced(sentence, price)


def price_slip(told: Told, sentence: str) -> Falsehoods:
    """A point moved, two digits swapped, the cents left off."""
    if found := COSTS.search(sentence):
        dollars, cents = found[1].split(".")
        slips = {f"{dollars}.{cents[::-1]}", f"{dollars}.00", f"{float(found[1]) / 10:.2f}"}
        slips |= {f"{dollars}{cents[0]}.{cents[1]}0", f"{int(dollars) + 1}.{cents}"}
        for price in some(sentence, sorted(slips - {found[1]}), 3):
            yield "a price misread", _repriced(sentence, price)


def trade_price(told: Told, sentence: str) -> Falsehoods:
    """What the shop pays, given as what the customer pays."""
    found, row = COSTS.search(sentence), row_meant(told, sentence)
    if found and row is not None and row["cost"] not in ("", found[1]):
        yield "cost given as price", _repriced(sentence, row["cost"])


def price_of_a_bag(told: Told, sentence: str) -> Falsehoods:
    """A price for one taken as a price for several."""
    row = row_meant(told, sentence)
    if COSTS.search(sentence) and row is not None and row["pack"] == "1":
        said = COSTS.sub(r"costs $\1 for a bag of three", sentence, count=1)
        yield "one counted as a bag", said


def stock_turned(told: Told, sentence: str) -> Falsehoods:
    """In stock for out of stock, and the other way round."""
    row = row_meant(told, sentence)
    if row is None or row["on_hand"] == "":
        return
    there = row["status"] == "stocked" and row["on_hand"] != "0"
    for said in ("in stock", "to order", "out of stock"):
        if f"is {said}" in sentence:
            for other in ("in stock", "to order", "out of stock", "sold out until the spring"):
                if (other == "in stock") != there:
                    turned = sentence.replace(f"is {said}", f"is {other}", 1)
                    yield "stock misread", turned
            return


def last_one(told: Told, sentence: str) -> Falsehoods:
    """Hurry made up: 'the last one'."""
    row = row_meant(told, sentence)
    if row is not None and row["on_hand"] not in ("", "0", "1") and "is in stock" in sentence:
        yield "the last one", ended(sentence, ", and it is the last one")
        yield "the last one", sentence.replace("is in stock", "is down to a single one")


def counted_wrong(told: Told, sentence: str) -> Falsehoods:
    """The count on the shelf, or what it costs the shop, misread."""
    row = row_meant(told, sentence)
    if row is None or "For the counter" not in sentence:
        return
    if found := re.search(r": (\d+) on hand", sentence):
        more = str(int(found[1]) * 10 + 1)
        yield "another count", sentence.replace(found[0], f": {more} on hand")
    if row["price"] not in ("", row["cost"]):
        said = re.sub(r"costs us \$\d+\.\d\d", f"costs us ${row['price']}", sentence)
        if said != sentence:
            yield "price given as cost", said


def quantity(told: Told, sentence: str) -> Falsehoods:
    """One where the valve takes two, two where it takes one."""
    rows = [r for r in told.truth.rows("build_valves") if r["build"] in told.builds]
    needed = {row["seals_needed"] for row in rows}
    if found := re.search(r"The valve takes (\w+) of", sentence):
        for count in sorted({*NUMBER.values()} - {found[1]} - {NUMBER.get(n, "") for n in needed}):
            yield "another quantity", sentence.replace(f"takes {found[1]} of", f"takes {count} of")
    elif affirms(told, sentence) and needed == {"1"} and len(parts_in(sentence)) == 1:
        part = bold(parts_in(sentence)[0])
        yield "another quantity", f"{sentence} The valve takes two of {part}."
        yield "another quantity", f"{sentence} You need a pair of them, one above the other."


def pack(told: Told, sentence: str) -> Falsehoods:
    """The bag counted as pieces, or pieces as a bag."""
    row = row_meant(told, sentence)
    if row is None or not row["pack"]:
        return
    if found := re.search(r"packs of (\w+)", sentence):
        yield "another pack", sentence.replace(found[0], "packs of six")
    elif COSTS.search(sentence) and row["pack"] == "1":
        yield "another pack", f"{sentence} {bold(row['part_no'])} comes in packs of two."


KINDS: tuple[Kind, ...] = (
    copied_price,
    price_slip,
    trade_price,
    price_of_a_bag,
    stock_turned,
    last_one,
    counted_wrong,
    quantity,
    pack,
)
