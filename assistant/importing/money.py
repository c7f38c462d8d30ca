"""Amounts of money as suppliers write them: by rule into plain ones, each rule told."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal

_SIGNS = "$£€¥₹"
_GROUPED = re.compile(r"\d{1,3}(?:,\d{3})+(?:\.\d+)?", re.ASCII)  # 1,234.50
_GROUPED_BY_DOT = re.compile(r"\d{1,3}(?:\.\d{3})+,\d{1,2}|\d{1,3}(?:\.\d{3}){2,}", re.ASCII)
_GROUPED_BY_SPACE = re.compile(r"\d{1,3}(?:[ '’]\d{3})+(?:[.,]\d{1,2})?", re.ASCII)
_DECIMAL_COMMA = re.compile(r"\d+,\d{1,2}", re.ASCII)
_NO_POINT = re.compile(r"\d[\d .'’]*,\d{1,2}|\d{1,3}(?:\.\d{3}){2,}", re.ASCII)  # 1.234,50
_EITHER = re.compile(r"\d{1,3}[.,]\d{3}", re.ASCII)
_PLAIN = re.compile(r"\d+\.?\d*|\.\d+", re.ASCII)


@dataclass(frozen=True)
class Amount:
    """An amount as the table has it, and by which rules it came to that."""

    text: str
    rules: tuple[str, ...] = ()


def decimal_comma(cells: Iterable[str], currency: str) -> bool:
    """Whether a column writes its cents after a comma: some cell can be read no other way."""
    return any(_NO_POINT.fullmatch(_unsigned(cell, currency)) for cell in cells)


def amount(raw: str, currency: str, comma: bool) -> Amount:
    """A cell of money as a plain amount; `comma` is whether its column has decimal commas.

    Raises:
        ValueError: it is in another currency, or can be read in two ways; says what to write.
    """
    others = [sign for sign in _SIGNS if sign in raw and sign not in currency]
    if others:
        raise ValueError(f"an amount in the shop's currency, which is {currency}")
    rules = []
    text = _unsigned(raw, currency)
    if text != raw:
        rules.append("currency sign taken off")
    if comma and _EITHER.fullmatch(text):
        whole = re.sub(r"[.,]", "", text)
        raise ValueError(
            f"{whole} or {text.replace(',', '.')}: beside cents after a comma it may be either"
        )
    if _GROUPED.fullmatch(text):
        text = text.replace(",", "")
        rules.append("thousands separator taken out")
    elif _GROUPED_BY_DOT.fullmatch(text):
        text = text.replace(".", "").replace(",", ".")
        rules.append("dots between thousands taken out, comma before the cents")
    elif _GROUPED_BY_SPACE.fullmatch(text):
        text = re.sub(r"[ '’]", "", text).replace(",", ".")
        rules.append("thousands separator taken out")
    elif _DECIMAL_COMMA.fullmatch(text):
        text = text.replace(",", ".")
        rules.append("comma before the cents read as a point")
    return Amount(_with_cents(text), tuple(rules))


def _unsigned(raw: str, currency: str) -> str:
    return raw.strip().removeprefix(currency).removesuffix(currency).strip()


def _with_cents(text: str) -> str:
    """A workbook keeps 4.90 as 4.9."""
    if not _PLAIN.fullmatch(text) or len(text) > 20:
        return text  # the table's own reader says what is wrong with it
    value = Decimal(text)
    cents = Decimal("0.01")
    return str(value.quantize(cents)) if value == value.quantize(cents) else text
