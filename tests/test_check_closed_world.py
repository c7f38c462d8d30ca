"""Whatever is written, nothing raises, nothing unknown gets through, a second look agrees."""

from __future__ import annotations

import re

from checking_answers import ANSWERS, LETTER
from checking_tables import BUILDS, SEALS, TABLES
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.answers.check import Checked, check
from assistant.answers.check.plain_words import CONNECTORS

TRUE = [answer.text for answer in ANSWERS]
NAMES = [*SEALS, *{f"{b.brand} {b.model}" for b in BUILDS.values()}]
WORDS = sorted(
    {word for text in TRUE for word in re.findall(r"[\w$.'-]+|[,;:()]", text)}
    | {word for phrase in CONNECTORS for word in phrase.split()}
)
UNKNOWN = (
    "SL-7318",
    "SL-2014",
    "7318",
    "77 mm",
    "1877",
    "$7.77",
    "Wexelby",
    "guaranteed",
    "any",
    "always",
)


def shown(text: str) -> Checked:
    """The text as customers would see it."""
    return check(text, TABLES, audience="customers", message="", valve_is_original=True)


# The first look makes the lexicon and the patterns, and takes longer than any other.
quiet = settings(deadline=None, max_examples=300)
jumble = st.lists(st.sampled_from([*WORDS, *NAMES]), max_size=25).map(" ".join)


@given(st.text(max_size=300))
@quiet
def test_no_text_raises_and_a_second_look_takes_nothing_more_out(text: str) -> None:
    first = shown(text)
    assert shown(first.text).taken_out == ()


@given(st.text(alphabet="*_-#>`[]()!<&\\| \n1aSL-2041.", max_size=120))
@quiet
def test_no_markdown_raises_and_a_second_look_takes_nothing_more_out(text: str) -> None:
    first = shown(text)
    assert shown(first.text).taken_out == ()


@given(jumble)
@quiet
def test_no_jumble_of_our_own_words_raises(text: str) -> None:
    first = shown(text + ".")
    assert shown(first.text).taken_out == ()


@given(jumble, st.sampled_from(UNKNOWN), st.data())
@quiet
def test_an_unknown_word_or_number_never_gets_through(
    text: str, unknown: str, data: st.DataObject
) -> None:
    words = text.split(" ")
    at = data.draw(st.integers(0, len(words)))
    said = " ".join([*words[:at], unknown, *words[at:]])
    assert unknown not in shown(said).text.split()


@given(st.sampled_from(TRUE), st.sampled_from(UNKNOWN), st.data())
@quiet
def test_nor_inside_a_true_answer(text: str, unknown: str, data: st.DataObject) -> None:
    words = text.split(" ")
    at = data.draw(st.integers(0, len(words)))
    said = " ".join([*words[:at], unknown, *words[at:]])
    checked = check(said, TABLES, audience="staff", message=LETTER, valve_is_original=True)
    assert f" {unknown} " not in f" {checked.text} ".replace("\n", " ")
    again = check(checked.text, TABLES, audience="staff", message=LETTER, valve_is_original=True)
    assert again.taken_out == ()


@given(st.sampled_from(TRUE), st.data())
@quiet
def test_a_true_answer_with_a_word_left_out_is_never_an_error(
    text: str, data: st.DataObject
) -> None:
    words = text.split(" ")
    at = data.draw(st.integers(0, len(words) - 1))
    first = shown(" ".join([*words[:at], *words[at + 1 :]]))
    assert shown(first.text).taken_out == ()
