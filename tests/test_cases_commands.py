"""Cases on the command line: opened, gone on with, kept; what goes wrong is one sentence."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from commanding import Ran, ran
from demonstration import shop

import assistant.chat
import assistant.commands.cases
from assistant.cases.store import FILE, Store

Run = Callable[..., Ran]


@pytest.fixture
def run(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], tmp_path: Path) -> Run:
    """Runs a command with cases of its own, and without the notes."""
    monkeypatch.setattr(assistant.commands.cases, "search_of", lambda _: None)
    monkeypatch.setattr(assistant.cli, "search_of", lambda _: None)

    def run(*words: str, stdin: bytes = b"") -> Ran:
        told = ("--state", str(tmp_path), "--date", "2026-11-25")
        return ran(monkeypatch, capsys, (*words, *told), stdin)

    return run


def told(ran: Ran) -> dict[str, Any]:
    assert (ran.code, ran.err) == (0, "")
    return dict(json.loads(ran.out))


def test_a_case_is_opened_and_gone_on_with(run: Run) -> None:
    first = told(run("ask", "It's a Cindrel Haume Vauncey", "--case", "new", "--json"))
    assert first["answers"][0]["question"]["asks"] == "made"
    assert len(first["answers"][0]["question"]["choices"]) == 2
    then = told(run("ask", "the first", "--case", first["case"], "--json"))
    assert then["case"] == first["case"]
    assert then["answers"][0]["parts"][0]["part_no"] == "PBK-6230"
    assert then["changed"] == []
    later = told(run("ask", "no wait, it is from 1998", "--case", first["case"], "--json"))
    assert later["answers"][0]["parts"][0]["part_no"] == "PBK-1173"
    assert [(c["old"], c["now"]) for c in later["changed"]] == [("the first", "1998")]
    assert later["standing"]["messages"] == 6


def test_the_case_is_printed_and_what_changed_comes_first(run: Run) -> None:
    ran = run("ask", "Quellwick Tamsel, made 1975", "--case", "new")
    name = ran.out.split()[-1].rstrip(".")
    assert f"This is case {name}." in ran.out
    ran = run("ask", "no wait, 1998", "--case", name, "--audience", "customers")
    assert ran.out.startswith('Changed: made "1975", now "1998".\n')


def test_without_a_case_nothing_is_kept(run: Run, tmp_path: Path) -> None:
    printed = told(run("ask", "It's a Quellwick Tamsel", "--json"))
    assert "case" not in printed
    assert not (tmp_path / FILE).exists()


def test_message_and_answer_are_kept(run: Run, tmp_path: Path) -> None:
    printed = told(run("ask", "It's a Quellwick Tamsel", "--case", "new", "--json"))
    with Store.open(tmp_path) as store:
        case = store.case(printed["case"])
        (answer,) = store.answers(case.id)
    assert [m.who for m in case.messages] == ["staff", "counter"]
    assert case.messages[0].text == "It's a Quellwick Tamsel"
    assert answer["answers"] == printed["answers"]


def test_of_a_mail_that_replies_only_what_is_new_is_kept(run: Run, tmp_path: Path) -> None:
    name = told(run("ask", "It's a Quellwick Tamsel", "--case", "new", "--json"))["case"]
    mail = (
        "From: a@example.com\r\nTo: b@example.com\r\nDate: Wed, 1 Mar 2006 10:00:00 +0000\r\n"
        "Subject: Re: seal\r\n\r\nHello,\r\n\r\n1985\r\n\r\n> made in 1999?\r\n"
    )
    printed = told(run("ask", "-", "--case", name, "--json", stdin=mail.encode()))
    assert printed["answers"][0]["parts"][0]["part_no"] == "PBK-6230"
    with Store.open(tmp_path) as store:
        message = store.case(name).messages[2]
    assert "1999" not in message.text
    assert message.at.date().isoformat() == "2006-03-01"


@pytest.mark.parametrize("command", [("ask", "x"), ("chat",)])
def test_a_case_that_is_not_there_is_one_sentence_and_code_2(
    run: Run, command: tuple[str, ...]
) -> None:
    ran = run(*command, "--case", "zzzz9999")
    assert (ran.code, ran.out) == (2, "")
    assert "case zzzz9999: there is none of this name in" in ran.err


def test_a_damaged_file_is_one_sentence_and_code_2(run: Run, tmp_path: Path) -> None:
    (tmp_path / FILE).write_bytes(b"nothing of ours" * 1000)
    ran = run("ask", "x", "--case", "new")
    assert (ran.code, ran.out) == (2, "")
    assert f"{tmp_path / FILE}: is damaged" in ran.err
    assert len(ran.err.splitlines()) == 1


@pytest.fixture
def types(monkeypatch: pytest.MonkeyPatch) -> Callable[..., None]:
    """Somebody who types lines and then ends."""

    def types(*lines: str) -> None:
        typed: Iterator[str] = iter((*lines, ""))
        monkeypatch.setattr(assistant.chat, "_line", lambda _: next(typed))

    return types


def test_a_conversation_is_kept_and_gone_on_with(
    run: Run, types: Callable[..., None], tmp_path: Path
) -> None:
    types("It's a Quellwick Tamsel", "1975")
    ran = run("chat", "--audience", "customers")
    assert "PBK-6230" in ran.out
    name = ran.out.split()[-1].rstrip(".")
    assert ran.out.rstrip().endswith(f"This is case {name}.")
    types("sorry, I meant 1998")
    ran = run("chat", "--audience", "customers", "--case", name)
    assert 'Changed: made "1975", now "1998".' in ran.out
    assert "PBK-6357" in ran.out
    with Store.open(tmp_path) as store:
        assert len(store.case(name).messages) == 6


def test_a_conversation_without_a_word_is_no_case(
    run: Run, types: Callable[..., None], tmp_path: Path
) -> None:
    types()
    ran = run("chat")
    assert "This is case" not in ran.out
    assert shop().settings.name in ran.out
    with Store.open(tmp_path) as store:
        assert not store.recent(5)


def test_a_mail_is_answered_with_several_questions_and_a_text_with_one(run: Run) -> None:
    mail = b"From: a@example.com\r\nTo: b@example.com\r\nSubject: seal\r\n\r\nQuellwick Tamsel?\r\n"
    asked = [
        len(told(made)["answers"][0]["also_asked"])
        for made in (
            run("ask", "-", "--json", stdin=mail),
            run("ask", "-", "--json", "--questions", "1", stdin=mail),
            run("ask", "Quellwick Tamsel?", "--json"),
            run("ask", "Quellwick Tamsel?", "--json", "--questions", "2"),
            run("ask", "-", "--json", "--case", "new", stdin=mail),
        )
    ]
    assert asked == [2, 0, 0, 1, 2]
    assert run("ask", "x", "--questions", "4").code == 2
