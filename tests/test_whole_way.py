"""Letters through the whole way on the demonstration shop: read, decided, composed, checked.

`letters.jsonl` holds one letter a line with what may come of it, worked out by hand from the CSV
files: for each answer in turn the outcomes accepted and the parts that may be named as fitting;
the changes without which a part does not fit; the facts that the letter states.
"""

from __future__ import annotations

import json
import re
from datetime import date
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from demonstration import PART_NO, seals, shop

from assistant.answers.answer import Answer, Reply
from assistant.answers.compose.case import Audience
from assistant.answers.reply import reply
from assistant.reading.facts import Fact, Interval
from assistant.reading.letters import letter_from_text

TODAY = date(2026, 11, 25)
LINES = Path(__file__).with_name("letters.jsonl").read_text(encoding="utf-8").splitlines()
LETTERS: list[dict[str, Any]] = [json.loads(line) for line in LINES]
LISTED = set(seals())
IN_INCHES = ("opening", "disc", "hinge_width")
INCH = 25.4  # mm
RULED_OUT = ("does not fit", "do not settle whether", "is no longer made")
every_letter = pytest.mark.parametrize("letter", LETTERS, ids=lambda x: x["id"])


@cache
def _reply(text: str, audience: Audience) -> Reply:
    return reply(shop(), letter_from_text(text), audience=audience, today=TODAY)


def answered(letter: dict[str, Any], audience: Audience = "customers") -> Reply:
    """The reply to a letter, worked out once for all tests."""
    return _reply(letter["text"], audience)


def quoted(letter: dict[str, Any]) -> set[str]:
    """The parts that the customer names, by their own number or by what is moulded on them."""
    return {*PART_NO.findall(letter["text"].upper()), letter["facts"].get("part_no")}


def named(answer: Answer) -> set[str]:
    """The parts that an answer names as fitting."""
    return {part.part_no for part in answer.parts} | set(answer.also_fits)


def sentences(text: str) -> list[str]:
    """The sentences of a Markdown text, roughly: a stop, a blank or a new line ends one."""
    return [s for s in re.split(r"(?<=[.!?])\s+|\n", text) if s.strip()]


def stated(text: str) -> set[str]:
    """The part numbers in a text other than those it rules out."""
    kept = [s for s in sentences(text) if not any(words in s for words in RULED_OUT)]
    return set(PART_NO.findall(" ".join(kept))) & LISTED


def says(fact: Fact, wanted: object) -> bool:
    """Whether a fact has a value that the letter states."""
    if not isinstance(fact.value, Interval):
        return wanted in fact.choices
    number = float(str(wanted))
    in_inches = fact.name in IN_INCHES and number < 10
    return (number * INCH if in_inches else number) in fact.value


@every_letter
def test_an_answer_has_an_outcome_that_the_tables_allow(letter: dict[str, Any]) -> None:
    outcomes = [str(answer.outcome) for answer in answered(letter).answers]
    assert len(outcomes) == len(letter["outcomes"]), outcomes
    for outcome, accepted in zip(outcomes, letter["outcomes"], strict=True):
        assert outcome in accepted, outcomes


@every_letter
@pytest.mark.parametrize("audience", ["customers", "staff"])
def test_every_part_named_is_one_that_fits(letter: dict[str, Any], audience: Audience) -> None:
    answers = answered(letter, audience).answers
    for answer, may in zip(answers, letter["parts"], strict=True):
        assert named(answer) <= set(may)
        assert stated(answer.text) <= set(may) | quoted(letter)
        assert answer.text.strip()
    if letter["must_not_name"]:
        assert not any(named(answer) for answer in answers)


@every_letter
@pytest.mark.parametrize("audience", ["customers", "staff"])
def test_no_sentence_of_a_composed_answer_is_taken_out(
    letter: dict[str, Any], audience: Audience
) -> None:
    for answer in answered(letter, audience).answers:
        assert [c.claim for c in answer.checks if c.result != "supported"] == []


@every_letter
def test_a_part_stands_with_the_condition_it_rests_on(letter: dict[str, Any]) -> None:
    facts = letter["facts"]
    for answer in answered(letter).answers:
        for part in answer.parts:
            assert part.part_no in answer.text
            condition = part.condition or ""
            if change := letter.get("changes", {}).get(part.part_no):
                assert change in condition
                assert change in answer.text
            if "valve_original" in facts:
                assert "original" not in condition
            elif str(answer.outcome) == "part" and "part_no" not in facts:
                assert "if the flush valve is the original one" in condition
                assert "the flush valve is the original one" in answer.text
            else:
                assert condition.startswith("if ")
        for part_no in answer.also_fits:
            assert part_no not in letter.get("changes", {})


@every_letter
def test_what_the_letter_states_is_read(letter: dict[str, Any]) -> None:
    found = answered(letter).facts
    for name, value in letter["facts"].items():
        held = [fact for fact in found.named(name) if not fact.negated]
        assert any(says(fact, value) for fact in held), f"{name} {value}: {held}"
    for fact in found:
        assert letter["text"][fact.start : fact.end] == fact.words


@pytest.mark.parametrize(
    "letter", [x for x in LETTERS if x["must_not_name"]], ids=lambda x: x["id"]
)
def test_a_letter_that_may_get_no_part_gets_no_part_in_any_wording(letter: dict[str, Any]) -> None:
    for answer in answered(letter).answers:
        assert stated(answer.text) <= quoted(letter)
        for part_no in quoted(letter) - {None}:
            assert f"{part_no}** fits" not in answer.text
            assert f"{part_no} fits" not in answer.text


def test_a_tank_that_takes_two_rings_is_told_so() -> None:
    letter = next(x for x in LETTERS if "Hullamer" in x["text"])
    answer = answered(letter).answers[0]
    assert {part.quantity for part in answer.parts} == {2}  # build_valves.csv: seals_needed
    assert "takes two of" in answer.text


def test_the_letters_are_many_and_most_of_them_name_no_part_lightly() -> None:
    silent = [x for x in LETTERS if x["must_not_name"]]
    assert len(LETTERS) >= 60
    assert len(silent) >= 35
    assert len({x["id"] for x in LETTERS}) == len(LETTERS)
    assert {part for x in LETTERS for may in x["parts"] for part in may} <= LISTED
