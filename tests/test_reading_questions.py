"""Which sentences of a letter are left to the shop's notes, in what words and from where."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.reading.facts import Facts
from assistant.reading.letters import letter_from_text
from assistant.reading.questions import Question, questions
from assistant.reading.requests import read_requests
from tests.phrases import LETTERS

# What a letter may hold beside its questions; with it no letter is short.
STORY = (
    "We bought the house in June and have been busy with the roof ever since, and with the garden "
    "too, and the kitchen was hardly finished when the boiler went, so that nobody has looked at "
    "the bathroom upstairs since the day on which we were handed the keys."
)


def asked(letter: str) -> list[Question]:
    """The questions of a letter that a note may answer."""
    text = letter_from_text(letter).text
    return questions(text, Facts(tuple(read_requests(text))))


def words(letter: str) -> list[str]:
    """The same, in their words."""
    return [question.text for question in asked(letter)]


# Which sentences are questions

ASKS_HOW_OR_WHY = (
    "How do I fit a flapper on pegs?",
    "how do i fit a flapper on pegs",
    "Why does my tank sweat in summer?",
    "How come the new flapper leaks?",
    "What is a canister?",
    "What's the difference between a canister and a tower?",
    "What does the foam float do?",
    "How does a tipping bucket work?",
    "Explain the dye test.",
    "Where do I measure the overflow tube?",
    "How often should the rubber be changed?",
)


@pytest.mark.parametrize("letter", ASKS_HOW_OR_WHY)
def test_how_and_why_are_for_the_notes_alone(letter: str) -> None:
    assert asked(letter) == [Question(letter, 0, plain=True)]


MAY_BE_FOR_A_NOTE = (
    "Can I leave the blue tablets in the tank?",
    "is vinegar safe for the rubber",
    "Must the water be off",
    "should a chain hang loose",
    "Does it matter that the seat is rough?",
    "the rubber is slimy, is it?",
    "So, is bleach all right",
    "wondering if bleach hurts the rubber",
    "tell me about canisters",
    "any idea whether silicone grease helps",
)


@pytest.mark.parametrize("letter", MAY_BE_FOR_A_NOTE)
def test_other_questions_may_be_for_a_note_with_or_without_their_mark(letter: str) -> None:
    assert asked(letter) == [Question(letter, 0, plain=False)]


TELLS = (
    "The rubber is slimy and black.",
    "It runs on at night",
    "My neighbour asks what that knob is for.",
    "I changed the flapper last year!",
    "",
    "...",
)


@pytest.mark.parametrize("letter", TELLS)
def test_what_only_tells_asks_nothing(letter: str) -> None:
    assert asked(letter) == []


FOR_THE_TABLES_AND_THE_SHOP = (
    "Which seal do I need for a Quellwick Tamsel?",
    "I need a flapper for a Quellwick Tamsel of 1988.",
    "What size flapper should I order?",
    "How much is the red one?",
    "Do you have it in stock?",
    "Where is my order?",
    "What are your hours?",
    "Is there a trade discount?",
    "Can somebody call me?",
)


@pytest.mark.parametrize("letter", FOR_THE_TABLES_AND_THE_SHOP)
def test_what_the_tables_and_the_shop_answer_is_left_to_them(letter: str) -> None:
    assert asked(letter) == []


def test_a_sentence_that_asks_for_a_part_is_passed_over_and_the_next_is_not() -> None:
    letter = "Which seal do I need for it? Does bleach hurt the rubber of a flapper?"
    assert words(letter) == ["Does bleach hurt the rubber of a flapper?"]
    assert words(f"How much is the red one? {ASKS_HOW_OR_WHY[0]}") == [ASKS_HOW_OR_WHY[0]]


def test_what_the_letter_only_quotes_is_not_asked_again() -> None:
    letter = "That worked, thank you.\n\nOn Monday you wrote:\n> How do I fit a flapper?\n"
    assert asked(letter) == []


# In what words

SHORT = (
    "My flapper leaks. Why does it do that?",
    "The tank is cold. There are drops all over it. Why does it sweat?",
    "How do I take the lid off? It has buttons.",
    "The rubber came out slimy. Does it matter?",
)


@pytest.mark.parametrize("letter", SHORT)
def test_a_short_letter_with_one_question_is_a_question_as_a_whole(letter: str) -> None:
    assert words(letter) == [letter]


def test_a_letter_is_short_up_to_some_lines() -> None:
    question = "How do I get the ring off?"
    up_to_45 = f"{' '.join(STORY.split()[:37])} roof. {question}"
    assert (len(up_to_45.split()), words(up_to_45)) == (45, [up_to_45])
    assert words(f"So {up_to_45}") == [question]


def test_its_line_breaks_are_blanks() -> None:
    assert words("My flapper leaks.\n\nWhy does\n  it do that?") == [SHORT[0]]


def test_greeting_and_name_are_no_part_of_it() -> None:
    assert words("Hello,\n\nis vinegar safe\n\nThanks\nBob") == ["is vinegar safe"]


def test_a_letter_that_wants_a_part_too_is_no_question_as_a_whole() -> None:
    question = "How do I measure the opening?"
    for wish in ("Flapper for a Quellwick Tamsel, please.", "What does a flapper cost?"):
        assert words(f"{question} {wish}") == [question]


def test_in_a_long_letter_the_question_stands_alone() -> None:
    letter = f"{STORY} How do I take the old ring off the foot of a canister?"
    assert words(letter) == ["How do I take the old ring off the foot of a canister?"]


POINTING_BACK = (
    "Why is that?",
    "Does it matter?",
    "What does that do?",
    "How do I get it off?",
    "Can I leave those in the tank?",
)


@pytest.mark.parametrize("question", POINTING_BACK)
def test_a_short_question_that_points_back_takes_the_sentence_before(question: str) -> None:
    assert words(f"{STORY} The rubber has gone slimy. {question} Greetings from us all.") == [
        f"The rubber has gone slimy. {question}"
    ]


def test_a_question_that_names_its_subject_does_not() -> None:
    assert words(f"{STORY} The lid is blue. Why does rubber swell?") == ["Why does rubber swell?"]


def test_nor_does_a_long_one_which_says_enough_itself() -> None:
    question = "How do I take it out of the tank when the wire that carries it is bent?"
    assert words(f"{STORY} The ball is old. {question}") == [question]


def test_nor_does_a_question_but_the_one_after_it_may_point_back_to_it() -> None:
    first, then = "Does the ring of a canister wear out?", "How do I get it off?"
    assert words(f"{STORY} {first} {then}") == [first, f"{first} {then}"]


TWO_IN_A_SENTENCE = {
    "How do I descale the seat, and can I use a wire brush?": [
        "How do I descale the seat",
        "can I use a wire brush?",
    ],
    "How do I hook a flapper on, and how much slack": [
        "How do I hook a flapper on",
        "how much slack",
    ],
    "How do I clean the seat and can I do it with a brush?": [
        "How do I clean the seat",
        "How do I clean the seat can I do it with a brush?",
    ],
}


@pytest.mark.parametrize(("letter", "both"), TWO_IN_A_SENTENCE.items())
def test_a_sentence_may_hold_two_questions(letter: str, both: list[str]) -> None:
    assert words(letter) == both


NO_SECOND = (
    "How do I get the ring off and is it?",
    "So, is bleach all right?",
    "the rubber is slimy, isn't it?",
)


@pytest.mark.parametrize("letter", NO_SECOND)
def test_a_tag_or_a_lead_in_is_no_question_of_its_own(letter: str) -> None:
    assert words(letter) == [letter]


NO_QUESTION = (
    "Will be away until Monday.",
    "When I lift the lid the water stands high.",
    "Does not hurry.",
    "What a mess.",
)


@pytest.mark.parametrize("letter", NO_QUESTION)
def test_a_sentence_that_only_begins_like_a_question_is_none(letter: str) -> None:
    assert words(letter) == []


def test_a_question_that_opens_the_letter_has_nothing_before_it() -> None:
    assert words(f"Why is that? {STORY}") == ["Why is that?"]


def test_two_questions_of_how_are_two_in_the_order_of_the_letter() -> None:
    opening, rubber = "How do I measure the opening?", "Why does rubber swell?"
    assert words(f"{opening} {rubber}") == [opening, rubber]
    assert words(f"{rubber} {opening}") == [rubber, opening]


def test_of_a_sentence_that_asks_for_a_part_too_only_its_own_part_is_the_question() -> None:
    letter = "Which seal fits a Quellwick Tamsel and how do I fit a flapper?"
    assert words(letter) == ["how do I fit a flapper?"]
    (question,) = words("How do I fit a flapper and which seal fits a Quellwick Tamsel?")
    assert question.startswith("How do I fit a flapper")
    assert "Tamsel" not in question


# From where


def test_a_question_points_to_its_own_words_and_not_to_the_story_before_it() -> None:
    for letter in (*SHORT, f"{STORY} The ring is old. Why is that?"):
        (question,) = asked(letter)
        assert letter[question.start :].startswith(("Why", "How", "Does"))


@given(st.one_of(LETTERS, st.lists(st.sampled_from((*ASKS_HOW_OR_WHY, STORY, *TELLS)), max_size=5)))
def test_any_letter_is_read_and_every_question_stands_in_it(letter: str | list[str]) -> None:
    text = letter_from_text(letter if isinstance(letter, str) else "\n".join(letter)).text
    found = questions(text, Facts(tuple(read_requests(text))))
    starts = [question.start for question in found]
    assert starts == sorted(set(starts))
    for question in found:
        assert question.text in " ".join(text.visible.split())
        assert text.visible[question.start :].split()[0] in question.text
        assert not text.raw[question.start].isspace()


@pytest.mark.parametrize("question", ["Why does it leak? ", "Is it a canister, or not? "])
def test_a_letter_of_a_thousand_questions_is_read_as_that_many(question: str) -> None:
    assert len(asked(question * 1000)) == 1000
