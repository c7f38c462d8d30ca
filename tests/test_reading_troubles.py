"""Words of a crack, or of water outside, of which no card made anything: somebody looks first."""

from __future__ import annotations

from datetime import date

import pytest
from demonstration import shop

from assistant.answers.answer import Answer
from assistant.answers.reply import reply
from assistant.cases.talk import Talk
from assistant.fitment.decision import Outcome
from assistant.reading.letters import letter_from_text
from assistant.reading.read import read

TODAY = date(2026, 11, 25)
TAMSEL = "Quellwick Tamsel, stamped 1988."


def troubles(words: str) -> list[str]:
    facts = read(letter_from_text(f"{TAMSEL} {words}"), shop().names, TODAY)
    return [choice for fact in facts.named("trouble") for choice in fact.choices]


def answer(words: str) -> Answer:
    letter = letter_from_text(f"{TAMSEL} {words} Which flapper?")
    (one,) = reply(shop(), letter, audience="customers", today=TODAY).answers
    return one


@pytest.mark.parametrize(
    ("words", "trouble"),
    [
        ("A fine crack runs across it.", ["crack"]),
        ("There is a hairline where the light falls.", ["crack"]),
        ("Something oozes out by the left hand nut.", ["leak elsewhere"]),
    ],
)
def test_what_no_card_reads_is_a_trouble(words: str, trouble: list[str]) -> None:
    assert troubles(words) == trouble
    asked = answer(words)
    assert asked.question is not None
    assert (asked.outcome, asked.question.asks) == (Outcome.ASK, "photograph")
    assert not asked.parts


@pytest.mark.parametrize(
    "words",
    [
        "The flapper has cracked.",
        "It has a cracked old rubber.",
        "The floppy bit is cracked.",
        "There are no cracks anywhere.",
        "Nothing drips at the bolts.",
        "It refills by itself at night.",
    ],
)
def test_a_worn_seal_is_no_trouble(words: str) -> None:
    assert not troubles(words)
    assert answer(words).outcome is Outcome.PART


def test_what_a_card_reads_is_handed_over_as_before() -> None:
    words = "The tank has a crack in it and leaks on the floor."
    assert not troubles(words)
    assert answer(words).outcome is Outcome.HAND_OVER


def test_it_is_asked_about_once() -> None:
    talk = Talk(shop(), "customers", TODAY)
    talk.say(f"{TAMSEL} A fine crack runs across it. Which flapper?")
    (one,) = talk.say("it is in the flapper, I cannot send a picture").reply.answers
    assert one.outcome is Outcome.PART
