"""The README's letter, answer and claims are real."""

from __future__ import annotations

import re
from datetime import date
from pathlib import Path

import pytest

from assistant.answers.answer import Reply
from assistant.answers.reply import reply
from assistant.reading.letters import letter_from_text, load_letter
from assistant.shop import DEMO, Shop, open_shop

README = (DEMO / "README.md").read_text(encoding="utf-8")
LETTER = DEMO / "eval" / "letters" / "tamsel.txt"


@pytest.fixture(scope="module")
def shop() -> Shop:
    return open_shop(DEMO)


def _answer(shop: Shop, text: str | None = None) -> Reply:
    letter = load_letter(LETTER) if text is None else letter_from_text(text)
    return reply(shop, letter, audience="customers", today=date(2026, 11, 25))


def test_the_answer_in_the_readme_is_the_answer_given(shop: Shop) -> None:
    shown = re.search(r"<!-- answer -->\n(.*?)<!-- /answer -->", README, re.S)
    assert shown is not None
    quoted = re.sub(r"(?m)^> ?", "", shown[1]).split("\n\n")
    said = [" ".join(paragraph.split()) for paragraph in quoted if paragraph.strip()]
    given = [" ".join(paragraph.split()) for paragraph in _answer(shop).text.split("\n\n")]
    assert said == given


def test_the_letter_in_the_readme_is_the_one_in_the_file() -> None:
    shown = re.search(r"(?ms)^> our upstairs.*?need\?$", README)
    assert shown is not None
    letter = " ".join(LETTER.read_text(encoding="utf-8").split())
    assert " ".join(shown[0].replace("> ", "").replace("\n", " ").split()) in letter


def test_without_the_stamp_it_depends_on_the_years(shop: Shop) -> None:
    letter = LETTER.read_text(encoding="utf-8").replace(
        "The stamp in the tank reads JUN 14 1988.", ""
    )
    answer = _answer(shop, letter).answers[0]
    assert (answer.outcome, len(answer.parts)) == ("depends", 2)
    assert answer.question is not None
    assert answer.question.asks == "overflow"


def test_with_another_maker_the_ears_do_not_agree(shop: Shop) -> None:
    letter = LETTER.read_text(encoding="utf-8").replace("Quellwick", "Ostrevale")
    answer = _answer(shop, letter).answers[0]
    assert (answer.outcome, answer.parts) == ("ask", ())
    assert answer.question is not None
    assert answer.question.asks == "valve_replaced"
    assert "PBK-" not in answer.text


def test_both_command_lines_stand_in_the_readme_once() -> None:
    assert len(re.findall(r"(?m)^python3 -m venv .*counterhand ask ", README)) == 1
    assert len(re.findall(r"(?m)^python3 -m venv .*-m pytest$", README)) == 1
    assert Path(DEMO / ".ci" / "run").read_text(encoding="utf-8").count("-m pytest$") == 1
