"""Wording that likens and that no card reads, cut out for the search by meaning.

What the likenesses are likened to is made up; which looks the readers know is told in
`test_reading_looks.py`.
"""

from __future__ import annotations

from datetime import date

import pytest
from demonstration import shop
from hypothesis import given
from hypothesis import strategies as st

from assistant.reading.facts import Fact, Facts
from assistant.reading.letters import letter_from_text
from assistant.reading.likenesses import LONGEST, MOST, Wording, wordings
from assistant.reading.read import read
from assistant.reading.text import Text
from tests.phrases import LETTERS

TODAY = date(2026, 11, 25)


def likened(letter: str) -> list[Wording]:
    """The wordings of a letter, beside all that the readers have read in it."""
    made = letter_from_text(letter)
    return wordings(made.text, read(made, shop().names, TODAY))


def words(letter: str) -> list[str]:
    """The same, in their words."""
    return [wording.text for wording in likened(letter)]


LIKENS = (
    "It looks like half a grapefruit below a lid.",
    "It is shaped like a plum on a hat pin.",
    "It's like a mouse's head.",
    "It resembles a pelican with its pouch full.",
    "It reminds me of a pudding basin.",
    "Imagine a frog with two back legs.",
    "Sort of a rubber doormat, only round.",
    "a small bathing cap, upside down",
    "a teapot-shaped lump",
    "something roundish and pale",
    "The old one is about the size of a saucer.",
    "There is a little sail on the back.",
    "It just dangles there from a stick.",
    "Two lugs underneath, and both are torn.",
)


@pytest.mark.parametrize("letter", LIKENS)
def test_a_sentence_that_likens_is_a_wording_as_it_stands(letter: str) -> None:
    assert words(letter) == [letter]


PLAIN = (
    "My toilet was made by Quellwick.",
    "The water runs all night.",
    "It is old and broken.",
    "Please answer soon.",
    "",
    "?!",
)


@pytest.mark.parametrize("letter", PLAIN)
def test_a_sentence_that_likens_nothing_is_none(letter: str) -> None:
    assert words(letter) == []


def test_one_or_two_words_describe_nothing() -> None:
    assert words("a blackish lump") == ["a blackish lump"]
    assert words("blackish lump") == []


READ_ALREADY = (
    "It looks like half a tennis ball.",  # the shape is a half ball
    "It looks like a rubber pear on a thin rod.",  # hangs on a wire
    "A tongue joined to a ring round the overflow tube, it looks like.",
    "It looks like a canister and lifts straight up.",
)


@pytest.mark.parametrize("letter", READ_ALREADY)
def test_a_sentence_whose_look_is_read_already_is_left_out(letter: str) -> None:
    facts = read(letter_from_text(letter), shop().names, TODAY)
    assert facts.named("mount", "lift", "shape")
    assert words(letter) == []


def test_the_next_sentence_is_not_left_out_with_it() -> None:
    assert words("It looks like half a tennis ball. The back looks like a wishbone.") == [
        "The back looks like a wishbone."
    ]


def test_a_fact_that_tells_no_style_leaves_the_sentence_in() -> None:
    letter = "The black flapper is two inches wide and looks like half a grapefruit."
    facts = read(letter_from_text(letter), shop().names, TODAY)
    assert facts.named("colour")
    assert facts.named("style_word")
    assert words(letter) == [letter]


LONG = (
    "We moved in last year and since then nothing at all has been right with the water in this "
    "house, the thing in the tank looks like a plum on a hat pin, it drips, and my wife says that "
    "the whole lot of it should go to the tip."
)


def test_a_long_sentence_is_cut_at_its_commas() -> None:
    assert words(LONG) == ["the thing in the tank looks like a plum on a hat pin"]


@pytest.mark.parametrize("mark", [",", ";", ":", " -", " ("])
def test_and_at_its_other_marks(mark: str) -> None:
    letter = LONG.replace(", the thing", f"{mark} the thing")
    assert words(letter) == ["the thing in the tank looks like a plum on a hat pin"]


def test_a_sentence_just_short_enough_is_not_cut() -> None:
    few = " ".join(["it looks like a plum,", *["and"] * 18, "that."])
    assert len(few.split()) == LONGEST == 24
    assert words(few) == [few]
    assert words(f"so {few}") == ["so it looks like a plum"]


def test_what_stays_longer_than_a_look_after_the_cuts_is_left_out() -> None:
    assert words(" ".join(["it looks like a plum", *["and"] * LONGEST, "more."])) == []


def test_the_clause_that_asks_is_left_out_and_the_one_that_likens_stays() -> None:
    assert words("which one do I need, it looks like a plum on a hat pin") == [
        "it looks like a plum on a hat pin"
    ]
    assert words("Do I need the one that looks like a plum on a hat pin?") == []


ONES = [f"It looks like a {fruit} on a stalk." for fruit in ("plum", "fig", "pear", "lime", "date")]


def test_the_first_few_wordings_count() -> None:
    assert len(ONES) > MOST == 4
    assert words(" ".join(ONES)) == ONES[:MOST]


def test_short_ones_do_not_take_the_place_of_others() -> None:
    assert words(" ".join(["roundish."] * 4 + ONES)) == ONES[:MOST]


def test_a_wording_stands_at_its_place_without_the_blanks_and_marks_around_it() -> None:
    letter = f"The water runs.\n\n  {ONES[0]}\n\n{LONG}"
    first, second = likened(letter)
    assert (first.start, first.text) == (letter.index("It looks"), ONES[0])
    assert (second.start, second.end) == (letter.index("the thing"), letter.index(", it drips"))


NOT_SAID = (
    f"Hello.\n\n{ONES[0]}",
    f"Hello Mrs Ford,\n\n{ONES[0]}\n\nThanks\nBob",
    f"{ONES[0][:-1]}\n\nThanks\nBob",
    f"On Monday you wrote:\n> what does it look like\n\n{ONES[0]}",
)


@pytest.mark.parametrize("letter", NOT_SAID)
def test_greeting_sign_off_and_quotation_are_no_part_of_a_wording(letter: str) -> None:
    (wording,) = likened(letter)
    assert wording.text.rstrip(".") == ONES[0].rstrip(".")
    assert letter[wording.start : wording.end] == wording.text


@given(
    st.one_of(
        LETTERS,
        st.lists(
            st.sampled_from((*LIKENS, *PLAIN, *READ_ALREADY, LONG, "\n", ",")), max_size=8
        ).map(" ".join),
    )
)
def test_any_letter_is_read_and_every_wording_stands_in_it(letter: str) -> None:
    made = letter_from_text(letter)
    facts = read(made, shop().names, TODAY)
    found = wordings(made.text, facts)
    assert len(found) <= MOST
    for wording in found:
        assert made.text.raw[wording.start : wording.end] == wording.text
        assert wording.text == wording.text.strip()
        assert 3 <= len(wording.text.split()) <= LONGEST
        assert not any(
            wording.start <= fact.start < wording.end
            for fact in facts.named("mount", "lift", "shape")
        )
    assert [w.start for w in found] == sorted({w.start for w in found})


@given(st.lists(st.integers(0, 60), max_size=4))
def test_whatever_facts_lie_beside_it_the_wordings_are_some_of_those_without(
    starts: list[int],
) -> None:
    text = Text(" ".join(ONES))
    facts = tuple(
        Fact(name="shape", value=("flat",), words="x", start=at, end=at + 1) for at in starts
    )
    beside = wordings(text, Facts(facts))
    told = [one for one in ONES if not any(_holds(text.raw, one, at) for at in starts)]
    assert [wording.text for wording in beside] == told[:MOST]


def _holds(letter: str, sentence: str, place: int) -> bool:
    """Whether a place lies in a sentence or the blank before it."""
    start = letter.index(sentence)
    return max(0, start - 1) <= place < start + len(sentence)
