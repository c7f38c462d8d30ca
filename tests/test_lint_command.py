"""`counterhand lint`: what it prints, in which order, and how it ends."""

from __future__ import annotations

import json
from collections.abc import Callable
from datetime import date
from decimal import Decimal
from pathlib import Path
from threading import Event

import pytest

from assistant.linting import lint as linting
from assistant.linting import patience
from assistant.linting.finding import Finding, Rule
from assistant.linting.gathered import Gathered
from assistant.linting.lint import lint
from assistant.linting.patience import told_where_slow
from assistant.linting.report import counts, lines
from assistant.linting.rules.tables import TABLE_RULES
from assistant.records.rows import Style
from tests.broken import run
from tests.demonstration import FOLDER
from tests.linting import OLDEST, TODAY, shop, told
from tests.trade import row, says, seal, valve

LOSS = seal(price=Decimal("2.00"), cost=Decimal("3.00"))
DRAWN = row(Style, style="pegged-flapper", plain_name="flapper", drawing="flapper.svg")
Ran = Callable[..., tuple[int, str, str]]


@pytest.fixture
def lint_of(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> Ran:
    """Writes a shop of some rows and lints it; its styles are drawn, and it has no notes."""
    monkeypatch.setattr(linting, "RULES", TABLE_RULES)

    def ran(*given: object, options: tuple[str, ...] = ()) -> tuple[int, str, str]:
        folder = shop(tmp_path, DRAWN, *given)  # type: ignore[arg-type]
        (folder / "knowledge/pictures/flapper.svg").write_text("<svg/>")
        code = run(monkeypatch, "lint", "--shop", str(folder), *options)
        return code, *capsys.readouterr()

    return ran


def test_nothing_to_mend_is_said_in_so_many_words(lint_of: Ran) -> None:
    assert lint_of() == (0, "Nothing to mend.\n", "")


def test_warnings_are_told_and_the_exit_code_stays_0(lint_of: Ran) -> None:
    code, out, err = lint_of(valve(), LOSS, says("fits"))
    assert (code, err) == (0, "")
    assert out == (
        "knowledge/tables/seals.csv:2: warning: the price 2.00 of 'UQ-10' is below its cost 3.00; "
        "correct one of them, or leave it if it is a clearance. [below-cost]\n"
        "0 errors, 1 warning.\n"
    )


def test_with_an_error_the_exit_code_is_1_and_lines_come_by_path_and_line(lint_of: Ran) -> None:
    rows = (valve(), LOSS, says("fits"), says("fits", "UQ-99", valve="gate-9"))
    code, out, _ = lint_of(*rows)
    assert code == 1
    where = [line.split(": ")[0] for line in out.splitlines()]
    assert where == [
        "knowledge/tables/fitment.csv:3",
        "knowledge/tables/fitment.csv:3",
        "knowledge/tables/seals.csv:2",
        "2 errors, 1 warning.",
    ]


def test_as_json_it_is_one_object_with_the_same_findings(lint_of: Ran) -> None:
    code, out, _ = lint_of(valve(), LOSS, says("fits", valve="gate-9"), options=("--json",))
    assert code == 1
    found = json.loads(out)
    assert [one["rule"] for one in found["findings"]] == ["unknown-name", "below-cost"]
    assert found["findings"][0] == {
        "path": "knowledge/tables/fitment.csv",
        "line": 2,
        "level": "error",
        "rule": "unknown-name",
        "what": "valve 'gate-9' is not in flush_valves.csv",
        "mend": "perhaps 'gate-2' is meant",
    }
    assert (found["errors"], found["warnings"]) == (1, 1)


@pytest.mark.parametrize(("days", "told_old"), [("30", True), ("100000", False)])
def test_how_old_is_old_is_an_option(lint_of: Ran, days: str, told_old: bool) -> None:
    rows = (valve(), seal(price=Decimal(1)), says("fits", date=date(2020, 1, 1)))
    code, out, _ = lint_of(*rows, options=("--older-than", days))
    assert code == 0
    assert ("[old-evidence]" in out) == told_old


def test_a_folder_that_is_no_shop_is_code_2_and_one_sentence(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    assert run(monkeypatch, "lint", "--shop", str(tmp_path)) == 2
    out, err = capsys.readouterr()
    assert out == ""
    assert err.startswith(f"counterhand: {tmp_path}/knowledge: the folder is missing; ")


def test_a_rule_without_end_is_cut_short_and_says_so(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    def find(_: Gathered) -> list[Finding]:
        return [Finding(path="x", line=line, what="wrong", mend="mend it") for line in range(1, 9)]

    monkeypatch.setattr(linting, "MOST", 3)
    monkeypatch.setattr(linting, "RULES", [Rule("all-wrong", "error", "It is.", find)])
    found = lint(shop(tmp_path), TODAY, OLDEST)
    assert [*lines(found)][3:] == [
        "x:4: error: there are more than 3 findings of this kind, and from here on they are not "
        "listed; mend those above, and look again. [all-wrong]",
        "4 errors, 0 warnings.",
    ]


def test_a_step_that_takes_long_is_told_while_it_runs(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(patience, "PATIENCE", 0.0)
    heard, said = Event(), []
    with told_where_slow(lambda step: (said.append(step), heard.set())) as tell:  # type: ignore[func-returns-value]
        tell("at the rule 'rings'")
        assert heard.wait(60)
    assert said == ["at the rule 'rings'"]


def test_steps_that_take_no_time_are_not_told(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(patience, "PATIENCE", 3600.0)
    said: list[str] = []
    with told_where_slow(said.append) as tell:
        tell("at the rule 'rings'")
        tell("at the rule 'balls'")
    assert said == []


def test_the_demonstrations_tables_have_warnings_and_no_error() -> None:
    found = told(FOLDER)
    assert [line for line in found if ": error: " in line] == []
    assert any("[conflicting-evidence]" in line for line in found)  # kept on purpose
    assert sum("[old-evidence]" in line for line in found) <= 1


def test_the_same_findings_are_counted_by_level(tmp_path: Path) -> None:
    found = lint(shop(tmp_path, valve(), LOSS, says("fits", valve="gate-9")), TODAY, OLDEST)
    levels = [rule.level for rule, _ in found]
    assert counts(found) == {
        "error": levels.count("error"),
        "warning": levels.count("warning"),
    }
