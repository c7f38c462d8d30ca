"""Every rule for tables: what it tells of rows that are wrong, and nothing of them once mended.

What is said of the trade is common practice, no source; makers and parts are invented.
"""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest

from assistant.linting.rules import RULES
from assistant.linting.rules.notes import NOTE_RULES
from assistant.linting.rules.tables import TABLE_RULES
from tests import lint_cases_evidence, lint_cases_tables
from tests.linting import Case, shop, told
from tests.trade import build, says, seal, sits, valve

PLAIN = (valve(), seal(price=Decimal("5.00")), build(), sits(), says("fits"))
OLD = (date(2014, 5, 2), date(2020, 1, 7))

CASES = (*lint_cases_evidence.CASES, *lint_cases_tables.CASES)


@pytest.mark.parametrize("case", [pytest.param(c, id=f"{c.rule}: {c.why}") for c in CASES])
def test_a_fault_is_told_with_its_mend_and_the_mended_rows_are_not(
    case: Case, tmp_path: Path
) -> None:
    for name in ("bad", "good"):
        picture = shop(tmp_path / name, *getattr(case, name)) / "knowledge/pictures/ring.svg"
        picture.write_text("<svg/>")
    assert told(tmp_path / "bad", case.rule) == [f"knowledge/tables/{case.line} [{case.rule}]"]
    assert told(tmp_path / "good", case.rule) == []


def test_of_a_sound_shop_that_draws_nothing_only_that_is_told(tmp_path: Path) -> None:
    assert told(shop(tmp_path, *PLAIN)) == [
        "knowledge/tables/styles.csv:2: warning: the style 'pegged-flapper' has no drawing; "
        "draw it for knowledge/pictures and fill in 'drawing'. [no-drawing]"
    ]


def test_every_rule_has_its_examples() -> None:
    elsewhere = {"unreadable", "unused-picture"}  # test_lint_faults, test_lint_pictures
    assert {case.rule for case in CASES} | elsewhere == {rule.name for rule in TABLE_RULES}


def test_every_rule_has_a_name_of_its_own_and_a_reason_in_a_sentence() -> None:
    assert (*TABLE_RULES, *NOTE_RULES) == RULES
    assert len({rule.name for rule in RULES}) == len(RULES)
    for rule in TABLE_RULES:
        assert rule.reason[0].isupper(), rule.name
        assert rule.reason.endswith("."), rule.name


def test_years_that_nobody_knows_are_not_said_to_be_shared(tmp_path: Path) -> None:
    rows = (build("tovelin-a", made_to=1980), build("tovelin-b", made_from=1970, made_to=1990))
    assert told(shop(tmp_path, *rows), "overlapping-builds") == []


def test_a_circle_is_told_once_and_not_as_a_dead_end_too(tmp_path: Path) -> None:
    rows = (
        seal("UQ-09", status="discontinued", replaced_by="UQ-10"),
        seal("UQ-10", status="discontinued", replaced_by="UQ-11"),
        seal("UQ-11", status="discontinued", replaced_by="UQ-10"),
    )
    lines = told(shop(tmp_path, *rows), "replacement-cycle", "dead-end")
    assert [line.split(":")[1] for line in lines] == ["3"]


def test_of_a_chain_the_last_row_is_the_one_to_mend(tmp_path: Path) -> None:
    rows = (
        seal("UQ-10", status="discontinued", replaced_by="UQ-11"),
        seal("UQ-11", status="discontinued"),
    )
    assert told(shop(tmp_path, *rows), "dead-end")[0] == (
        "knowledge/tables/seals.csv:2: warning: 'UQ-10' is discontinued, and so is 'UQ-11' at the "
        "end of its replacements; fill in replaced_by in the row of 'UQ-11', or leave it if "
        "nothing follows. [dead-end]"
    )


@pytest.mark.parametrize(("day", "is_old"), [("2023-11-26", False), ("2023-11-25", True)])
def test_a_piece_is_old_the_day_after_so_many_days(tmp_path: Path, day: str, is_old: bool) -> None:
    folder = shop(tmp_path, valve(), seal(), says("fits", date=date.fromisoformat(day)))
    assert bool(told(folder, "old-evidence", oldest=1095)) == is_old


@pytest.mark.parametrize(("oldest", "count"), [(4000, 1), (1095, 2), (5000, 0)])
def test_how_old_is_old_is_for_the_shop_to_say(tmp_path: Path, oldest: int, count: int) -> None:
    two = (says("fits", date=OLD[0]), says("fits", date=OLD[1], valve="gate-3"))
    folder = shop(tmp_path, valve(), valve("gate-3"), seal(), *two)
    lines = told(folder, "old-evidence", oldest=oldest)
    assert [line.split("on ")[1].split(" of")[0] for line in lines] == [str(count)] * bool(count)
