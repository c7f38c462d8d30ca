"""Knowledge that is changed while it is served: taken up, or left as it was."""

from __future__ import annotations

from pathlib import Path

import pytest
from broken import copy_of_demo, edit, rows_of
from encoders import WordHashes

from assistant.errors import UserError
from assistant.pages.live import Live


@pytest.fixture
def seals(tmp_path: Path) -> Path:
    return copy_of_demo(tmp_path) / "tables" / "seals.csv"


def row_of(table: Path, key: str) -> int:
    return 1 + [row[0] for row in rows_of(table)].index(key)


def price(live: Live) -> str:
    return str(live.now.shop.tables.seals["PBK-6230"].price)


def test_a_changed_price_is_served_and_what_is_being_answered_keeps_the_old(seals: Path) -> None:
    told: list[str] = []
    live = Live(seals.parents[2], WordHashes(), told.append)
    before = live.now
    assert not live.look_again()
    edit(seals, row_of(seals, "PBK-6230"), price="5.55")
    assert live.look_again()
    assert price(live) == "5.55"
    assert str(before.shop.tables.seals["PBK-6230"].price) != "5.55"
    assert told[-1] == "The changed notes and tables are served now."


def test_a_broken_edit_keeps_the_last_good_knowledge_and_is_told(seals: Path) -> None:
    told: list[str] = []
    live = Live(seals.parents[2], WordHashes(), told.append)
    good, sound = live.now, seals.read_bytes()
    edit(seals, row_of(seals, "PBK-6230"), price="cheap")
    assert not live.look_again()
    assert live.now is good
    assert live.problem is not None
    assert "seals.csv" in live.problem
    assert "field price" in live.problem
    assert told[-1] == f"{live.problem} The knowledge from before is served on."
    assert not live.look_again()  # the same fault is told once
    assert len([line for line in told if "field price" in line]) == 1
    seals.write_bytes(sound)
    assert live.look_again()
    assert live.problem is None


def test_what_is_broken_from_the_start_is_not_served(seals: Path) -> None:
    edit(seals, row_of(seals, "PBK-6230"), price="cheap")
    with pytest.raises(UserError, match=r"seals\.csv"):
        Live(seals.parents[2], WordHashes())
