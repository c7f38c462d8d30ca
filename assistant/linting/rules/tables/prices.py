"""What a seal costs, and whether the shop can say so."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.linting.finding import Finding, Rule
from assistant.linting.gathered import Gathered


def below_cost(gathered: Gathered) -> Iterator[Finding]:
    """Sold for less than was paid for it."""
    for seal in gathered.tables.seals.values():
        if seal.price is not None and seal.cost is not None and seal.price < seal.cost:
            path, line = gathered.at("seals.csv", seal.part_no)
            yield Finding(
                path=path,
                line=line,
                what=f"the price {seal.price} of '{seal.part_no}' is below its cost {seal.cost}",
                mend="correct one of them, or leave it if it is a clearance",
            )


def no_price(gathered: Gathered) -> Iterator[Finding]:
    """Stocked, and nobody can say what it costs."""
    for seal in gathered.tables.seals.values():
        if seal.status == "stocked" and seal.price is None:
            path, line = gathered.at("seals.csv", seal.part_no)
            yield Finding(
                path=path,
                line=line,
                what=f"'{seal.part_no}' is stocked and has no price",
                mend="fill in its price",
            )


RULES = (
    Rule(
        "below-cost",
        "warning",
        "A slip of a digit sells at a loss for as long as nobody looks.",
        below_cost,
    ),
    Rule(
        "no-price",
        "warning",
        "A customer told of a seal on the shelf asks next what it costs.",
        no_price,
    ),
)
