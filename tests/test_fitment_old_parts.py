"""A short number that several makers moulded on their seals: the seal's own looks tell which."""

from __future__ import annotations

from told import facts, opening, word
from trade import CLIP, RING, seal, tables

from assistant.fitment.old_parts import with_numbers_settled

TABLES = tables(
    seal("UQ-10", RING, maker_no=("D-9",)),
    seal("UQ-20", CLIP, maker_no=("D-9",), opening_in=3.0),
)
NUMBER = word("part_no", "UQ-10", "UQ-20", of="old")


def meant(*more: object) -> tuple[str, ...]:
    (number,) = with_numbers_settled(TABLES, facts(NUMBER, *more)).named("part_no")  # type: ignore[arg-type]
    return number.choices


def test_without_more_either_may_be_meant() -> None:
    assert meant() == ("UQ-10", "UQ-20")


def test_how_it_is_held_tells_which() -> None:
    assert meant(word("mount", "clip")) == ("UQ-20",)
    assert meant(word("mount", "ring", negated=True)) == ("UQ-20",)


def test_the_opening_tells_which() -> None:
    assert meant(opening(2.0)) == ("UQ-10",)


def test_looks_that_no_seal_has_take_none_away() -> None:
    assert meant(word("mount", "wire")) == ("UQ-10", "UQ-20")
