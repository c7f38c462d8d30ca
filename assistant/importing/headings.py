"""The headings that suppliers ordinarily write, and which column of ours each means.

A heading that is our column's own name needs no card. Common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Ordinary:
    """Headings that mean one column of ours, in any table that has it, and why."""

    column: str
    headings: tuple[str, ...]
    reason: str


@dataclass(frozen=True)
class Passed:
    """Headings that are left out on purpose, and why."""

    headings: tuple[str, ...]
    reason: str


def _each(headings: str) -> tuple[str, ...]:
    return tuple(headings.split(", "))


ORDINARY: tuple[Ordinary, ...] = (
    Ordinary(
        "part_no",
        _each(
            "part number, part, part code, sku, article, article no, article number, item, "
            "item no, item number, item code, product code, stock code"
        ),
        "the number that a part is ordered by",
    ),
    Ordinary(
        "name",
        _each("description, item description, product, product name, title"),
        "what a part is called, in a line",
    ),
    Ordinary("maker", _each("manufacturer, brand, make"), "who makes the part"),
    Ordinary("brand", _each("manufacturer, maker, make"), "who makes the toilet"),
    Ordinary(
        "maker_no",
        _each(
            "manufacturer number, manufacturer no, manufacturer part number, mpn, maker number, "
            "oem number, oem no"
        ),
        "the maker's own number, moulded on the part",
    ),
    Ordinary("aliases", _each("also known as, other names"), "what people call it"),
    Ordinary(
        "price",
        _each("list price, retail price, selling price, rrp, unit price"),
        "what a customer pays",
    ),
    Ordinary(
        "cost",
        _each("net price, net, cost price, unit cost, trade price, your price"),
        "what the shop pays, with the trade's discount taken off",
    ),
    Ordinary(
        "on_hand",
        _each(
            "stock, in stock, stock on hand, qty on hand, quantity on hand, qty, stock level, "
            "available"
        ),
        "how many lie on the shelf",
    ),
    Ordinary("pack", _each("pack size, pack qty, pack quantity, per pack"), "pieces in a pack"),
    Ordinary("colour", _each("color"), "the other spelling"),
    Ordinary("replaced_by", _each("superseded by, replacement, new number"), "the number after it"),
    Ordinary("link", _each("url, web page, page"), "where the part is shown"),
    Ordinary("model_no", _each("model number"), "the number that a toilet is known by"),
    Ordinary("date", _each("day"), "when it was found"),
    Ordinary("note", _each("notes, remark, remarks, comment, comments"), "said in free words"),
)

PASSED: tuple[Passed, ...] = (
    Passed(
        _each("barcode, bar code, ean, ean code, gtin, upc"),
        "a bar code names the bag, and no table of ours holds one",
    ),
    Passed(
        _each("discount, discount %, vat, vat %, tax, tax %"),
        "prices stand in the tables as they are asked, and nothing is worked out",
    ),
)

# Words that tell a unit; in the names of our columns it stands at the end.
UNITS: dict[str, tuple[str, ...]] = {
    "inches": ("in", "inch", "inches", '"', "″"),
    "millimetres": ("mm", "millimetre", "millimetres", "millimeter", "millimeters"),
    "centimetres": ("cm", "centimetre", "centimetres", "centimeter", "centimeters"),
    "gallons a flush": ("gpf",),
    "litres": ("l", "lpf", "litre", "litres", "liter", "liters"),
}
