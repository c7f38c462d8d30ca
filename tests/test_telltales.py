"""What is told in passing: learnt from the shop's rows, heard in a letter, and minded."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from typing import cast

import numpy as np
import pytest
from demonstration import shop
from hypothesis import given
from hypothesis import strategies as st

from assistant.answers.answer import Answer
from assistant.answers.reply import answered
from assistant.fitment.decision import Outcome
from assistant.reading.facts import Fact, Facts
from assistant.reading.letters import letter_from_text
from assistant.reading.read import read
from assistant.reading.text import Text
from assistant.search.content import Description
from assistant.search.hearing import LONGEST, MOST, told_in_passing
from assistant.search.searching import Search
from assistant.search.telltales import FEWEST, Ear, Heard, learnt
from tests.encoders import WordHashes

NAMED = "Quellwick Tamsel, stamped 1988, with the seal on two pegs."
ASIDE = "Mind you the wardrobe below has a tide mark on it."
WATER = Heard("danger", "ceiling leak", 0.97)
ANOTHER = Heard("valve", "", 0.96)
HANDLE = Heard("part", "handle", 0.95)


class Hears:
    """Hears one thing in whatever holds some words, and keeps what it was given to hear."""

    def __init__(self, words: str, heard: Heard) -> None:
        self.words, self.tells, self.given = words, heard, list[str]()

    def heard(self, sentences: Sequence[str]) -> list[Heard | None]:
        self.given += sentences
        return [self.tells if self.words in sentence else None for sentence in sentences]


def heard_in(letter: str, words: str, heard: Heard) -> list[Fact]:
    """What is told in passing in a letter."""
    text = letter_from_text(letter).text
    facts = read(letter_from_text(letter), shop().names, date(2026, 11, 25))
    return told_in_passing(cast(Search, Hears(words, heard)), text, facts)


def answer_to(letter: str, heard: Heard) -> Answer:
    """The answer to a letter in whose aside something is heard."""
    given = letter_from_text(letter)
    facts = read(given, shop().names, date(2026, 11, 25))
    told = told_in_passing(cast(Search, Hears(ASIDE[:20], heard)), given.text, facts)
    made = answered(shop(), given.text, facts.plus(told), audience="customers", began=0.0)
    return made.answers[0]


# What is learnt

DRY = ("the chain is short", "two ears point up", "which one fits", "it is a blue one")
WET = ("ceiling plaster dripping", "lamp soaked dripping", "carpet soaked below")


def ear() -> Ear:
    """Learnt from rows that share words as rows of one meaning lie near one another."""
    rows = [Description("", f"{words} {n}", "") for words in DRY for n in range(FEWEST)]
    rows += [Description("ceiling leak", f"{w} {n}", "danger") for w in WET for n in range(FEWEST)]
    made = learnt(rows, WordHashes().encode([row.text for row in rows]))
    assert made is not None
    return made


def test_a_sentence_like_the_rows_is_heard_with_their_sign() -> None:
    (wet, dry) = ear().heard(WordHashes().encode(["plaster soaked", "ears point up"]), 0.5)
    assert wet is not None
    assert (wet.tells, wet.sign) == ("danger", "ceiling leak")
    assert dry is None


def test_the_same_rows_teach_the_same() -> None:
    said = WordHashes().encode(["plaster soaked", "the chain is blue"])
    one, other = ear().likeliest(said), ear().likeliest(said)
    assert [h.likely for h in one] == [h.likely for h in other]


def test_of_a_few_rows_nothing_is_learnt() -> None:
    rows = [Description("", DRY[0], ""), Description("ceiling leak", WET[0], "danger")]
    assert learnt(rows, np.eye(2, dtype=np.float32)) is None


# What is heard in a letter


def test_what_is_heard_cites_its_words_and_is_never_sure() -> None:
    letter = f"{NAMED} {ASIDE}"
    (fact,) = heard_in(letter, "tide mark", WATER)
    assert letter[fact.start : fact.end] == fact.words == ASIDE
    assert (fact.choices, fact.of, fact.sure) == (("ceiling leak",), "danger", False)


def test_what_was_read_of_the_same_matter_stands() -> None:
    """'No water on the floor' was understood; its meaning is not weighed against it."""
    dry = "There is no water on the floor anywhere."
    assert not heard_in(f"{NAMED} {dry}", "water on the floor", WATER)
    assert heard_in(f"{NAMED} {dry}", "water on the floor", ANOTHER)


@given(st.lists(st.sampled_from(["tank", "and", "so,", "ran", "over", "-", "it."]), max_size=900))
def test_a_letter_is_heard_in_stretches_of_bounded_length(words: list[str]) -> None:
    text = Text(" ".join(words))
    hears = Hears("", WATER)
    for fact in told_in_passing(cast(Search, hears), text, Facts(())):
        assert text.raw[fact.start : fact.end] == fact.words
    assert len(hears.given) <= MOST
    assert all(len(said.split()) <= LONGEST for said in hears.given)


# What is done about it


def test_without_anything_heard_the_letter_gets_its_seal() -> None:
    assert answer_to(NAMED, WATER).outcome is Outcome.PART


@pytest.mark.parametrize(
    ("heard", "outcome"),
    [(WATER, "hand over"), (HANDLE, "not the seal"), (ANOTHER, "ask")],
    ids=["a danger", "another part", "another valve"],
)
def test_what_is_heard_keeps_a_seal_from_being_named(heard: Heard, outcome: str) -> None:
    """A wrong part costs more than a question (common practice, no source)."""
    answer = answer_to(f"{NAMED} {ASIDE}", heard)
    assert answer.outcome == outcome
    assert not answer.parts


def test_another_valve_that_is_only_heard_of_is_asked_about() -> None:
    answer = answer_to(f"{NAMED} {ASIDE}", ANOTHER)
    assert answer.question is not None
    assert answer.question.asks == "valve_replaced"
    assert ASIDE.removesuffix(".") in answer.text


def test_a_valve_told_to_be_the_first_one_is_believed() -> None:
    told = f"{NAMED} Nobody ever changed the flush valve, it is the original. {ASIDE}"
    assert answer_to(told, ANOTHER).outcome is Outcome.PART
