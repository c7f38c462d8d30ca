"""The command line: what each command takes, prints and returns; every command is documented."""

from __future__ import annotations

import re
import shutil
from pathlib import Path
from typing import Any

import pytest
from commanding import Ran, ran
from demonstration import FOLDER

import assistant.cli
from assistant.cli import cli

README = (FOLDER / "README.md").read_text(encoding="utf-8")
DOCUMENTED = re.findall(r"^\| `counterhand (\w+)", README, re.MULTILINE)
QUESTION = "Which flapper fits a Quellwick Tamsel from 1975?"
AGE = "My Quellwick Tamsel is about twenty years old. Which flapper?"
MAIL = (
    "From: a@example.com\r\nTo: b@example.com\r\nDate: Wed, 1 Mar 2006 10:00:00 +0000\r\n"
    f"Subject: seal\r\n\r\n{AGE}\r\n"
)

TEXT, LIST, NUMBER, YES = (str,), (list,), (int, float), (bool,)
MAY_BE_NULL = type(None)
ANSWER = {
    "outcome": TEXT, "answer": TEXT, "parts": LIST, "also_fits": LIST, "ruled_out": LIST,
    "question": (dict, MAY_BE_NULL), "causes": LIST, "checks": LIST, "sources": LIST,
    "cautions": LIST,
}  # fmt: skip
INSIDE = {
    "parts": {"part_no": TEXT, "quantity": (int, MAY_BE_NULL), "position": TEXT, "basis": TEXT,
              "condition": (str, MAY_BE_NULL), "status": TEXT, "because": LIST},
    "ruled_out": {"part_no": TEXT, "because": TEXT, "rule": TEXT},
    "checks": {"claim": TEXT, "rule": TEXT, "result": TEXT, "row": (str, MAY_BE_NULL)},
    "sources": {"note": TEXT, "section": TEXT, "lines": LIST, "score": (float, MAY_BE_NULL)},
}  # fmt: skip
ASKED = {"asks": TEXT, "text": TEXT, "why": TEXT, "choices": LIST, "drawing": (str, MAY_BE_NULL)}
FACT = {
    "name": TEXT, "value": LIST, "unit": (str, MAY_BE_NULL), "nominal_in": LIST, "words": TEXT,
    "start": (int,), "end": (int,), "sure": YES,
}  # fmt: skip
OUTCOMES = {"part", "depends", "ask", "not the seal", "no match", "note", "hand over"}


@pytest.fixture(scope="module", autouse=True)
def _index_is_built() -> None:
    """What has to be built first is said once, and here nobody listens."""
    cli(["build", "--shop", str(FOLDER)], standalone_mode=False)


@pytest.fixture
def run(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> Any:
    def run(*words: str, stdin: bytes = b"") -> Ran:
        return ran(monkeypatch, capsys, words, stdin)

    return run


def made(ran: Ran) -> tuple[float, float]:
    """The years in which the toilet was made, as read."""
    return tuple(next(f for f in ran.object["facts"] if f["name"] == "made")["value"])


def is_shaped(found: dict[str, Any], shape: dict[str, Any]) -> bool:
    """Whether an object has at least these fields, each of one of its types."""
    return all(name in found and isinstance(found[name], kinds) for name, kinds in shape.items())


def test_a_text_is_answered(run: Any) -> None:
    ran = run("ask", QUESTION)
    assert (ran.code, ran.err) == (0, "")
    assert "PBK-6230" in ran.out
    assert "if the flush valve is the original one" in ran.words


@pytest.mark.parametrize("name", ["letter.txt", "letter.eml", "letter.html", "no suffix at all"])
def test_a_file_is_answered(run: Any, tmp_path: Path, name: str) -> None:
    file = tmp_path / name
    file.write_text(QUESTION if not name.endswith("eml") else MAIL.replace(AGE, QUESTION))
    ran = run("ask", str(file))
    assert ran.code == 0
    assert "PBK-6230" in ran.out


def test_standard_input_is_answered(run: Any) -> None:
    ran = run("ask", "-", stdin=QUESTION.encode())
    assert ran.code == 0
    assert "PBK-6230" in ran.out


def test_in_a_mail_twenty_years_count_from_its_date(run: Any, tmp_path: Path) -> None:
    file = tmp_path / "letter.eml"
    file.write_text(MAIL)
    low, high = made(run("ask", str(file), "--json"))
    assert low < 1986 < high < 2000


def test_a_date_that_is_given_wins_over_the_mails_own(run: Any, tmp_path: Path) -> None:
    file = tmp_path / "letter.eml"
    file.write_text(MAIL)
    low, high = made(run("ask", str(file), "--json", "--date", "2026-11-25"))
    assert 1996 < low < 2006 < high


@pytest.mark.parametrize("audience", ["staff", "customers"])
@pytest.mark.parametrize(
    "message",
    [QUESTION, "Quellwick Tamsel", "hello", "", "The overflow runs over.", "opening 2 inch"],
)
def test_the_whole_object_has_the_shape_that_is_promised(
    run: Any, audience: str, message: str
) -> None:
    ran = run("ask", "-", "--json", "--audience", audience, stdin=message.encode())
    assert ran.code == 0
    found = ran.object
    assert set(found) == {"answers", "facts", "audience", "took_ms"}
    assert found["audience"] == audience
    assert found["took_ms"] >= 0
    for answer in found["answers"]:
        assert is_shaped(answer, ANSWER), answer
        assert answer["outcome"] in OUTCOMES
        for name, shape in INSIDE.items():
            assert all(is_shaped(item, shape) for item in answer[name]), answer[name]
        assert answer["question"] is None or is_shaped(answer["question"], ASKED)
        assert bool(answer["checks"]) == (audience == "staff")
        assert {c["result"] for c in answer["checks"]} <= {"supported"}
    for fact in found["facts"]:
        assert is_shaped(fact, FACT)
        assert message[fact["start"] : fact["end"]] == fact["words"]


def test_customers_see_neither_cost_nor_count_nor_the_trail(run: Any) -> None:
    staff, customers = run("ask", QUESTION), run("ask", QUESTION, "--audience", "customers")
    for secret in ("40 on hand", "costs us", "read: "):  # seals.csv, PBK-6230
        assert secret in staff.words
        assert secret not in customers.words
    assert "PBK-6230 costs $4.95" in customers.words


def test_another_shops_folder_is_used(run: Any, tmp_path: Path) -> None:
    shutil.copytree(FOLDER / "knowledge", tmp_path / "knowledge")
    seals = tmp_path / "knowledge" / "tables" / "seals.csv"
    seals.write_text(seals.read_text().replace(",4.95,", ",5.35,"))
    ran = run("ask", QUESTION, "--shop", str(tmp_path))
    assert "PBK-6230 costs $5.35" in ran.words


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("frob",), "No such command 'frob'"),
        (("ask",), "Missing argument"),
        (("ask", "x", "--audience", "nobody"), "'nobody' is not one of"),
        (("ask", "x", "--date", "soon"), "'soon' is no day"),
        (("ask", "missing.eml"), "missing.eml: there is no such file"),
        (("ask", "x", "--shop", "nowhere"), "the folder is missing"),
    ],
)
def test_bad_input_is_one_clear_sentence_and_code_2(
    run: Any, words: tuple[str, ...], said: str
) -> None:
    ran = run(*words)
    assert (ran.code, ran.out) == (2, "")
    assert said in ran.err
    assert "Traceback" not in ran.err


def test_a_fault_of_ours_is_code_70(run: Any, monkeypatch: pytest.MonkeyPatch) -> None:
    def broken(*_: object, **__: object) -> None:
        raise ZeroDivisionError("three")

    monkeypatch.setattr(assistant.cli, "reply", broken)
    ran = run("ask", QUESTION)
    assert (ran.code, ran.out) == (70, "")
    assert "a fault of ours (ZeroDivisionError): three" in ran.err


@pytest.mark.parametrize("command", sorted(cli.commands))
def test_the_help_of_every_command_carries_an_example(run: Any, command: str) -> None:
    ran = run(command, "--help")
    assert ran.code == 0
    assert f"Example:\n    counterhand {command}" in ran.out


def test_every_command_is_in_the_readme_and_the_readme_names_no_other() -> None:
    assert sorted(DOCUMENTED) == sorted(cli.commands)


def test_a_version_is_told(run: Any) -> None:
    assert re.fullmatch(r"counterhand \d+\.\d+\.\d+\n", run("--version").out)
