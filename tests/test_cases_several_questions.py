"""A letter asks several things at once, as its answer takes a day; the reply may be numbered.

That a mail is worth more than one question, and a talk but one, is common practice, no source.
"""

from __future__ import annotations

from datetime import date

import pytest
from demonstration import builds, shop

from assistant.cases.numbered import answers_in
from assistant.cases.talk import Said, Talk
from assistant.fitment.decision import Outcome

TODAY = date(2026, 11, 25)
LETTER = "Which seal do I need for my Quellwick Tamsel?"


def replied(*letters: str) -> Said:
    """The case after some letters, in which up to three things are asked at once."""
    talk = Talk(shop(), "customers", TODAY)
    return [talk.say(letter, most_questions=3) for letter in letters][-1]


def test_a_letter_asks_what_together_tells_most_and_a_talk_one_thing() -> None:
    (letter,) = replied(LETTER).reply.answers
    asked = [q.asks for q in (letter.question, *letter.also_asked) if q]
    assert asked == ["photograph", "overflow", "mount"]
    assert all(f"{n}. " in letter.text for n in (1, 2, 3))
    (talk,) = Talk(shop(), "customers", TODAY).say(LETTER).reply.answers
    assert talk.question.asks == "overflow"
    assert not talk.also_asked


def test_each_question_says_why_and_how_to_find_out() -> None:
    (letter,) = replied(LETTER).reply.answers
    for name in ("photograph", "overflow", "mount"):
        row = shop().tables.questions[name]
        assert f"{row.text} {row.why} {row.how}" in letter.text


def told(text: str) -> dict[str, object]:
    said = replied(LETTER, text)
    beside = ("brand", "model", "asks", "wanted", "style_word")
    return {f.name: f.choices for f in said.reply.facts if f.name not in beside and not f.negated}


@pytest.mark.parametrize(
    "text",
    [
        "1. no camera, sorry\n2. round\n3. two pegs",
        "1) I have no camera 2) round 3) two pegs",
        "Hello,\n\n2. It's round\n3. two pegs",
        "no photo\nround\ntwo pegs",
        "round, it hooks on two pegs, no camera",
    ],
)
def test_answers_by_number_or_by_line_belong_to_their_questions(text: str) -> None:
    assert told(text) == {"overflow": ("round",), "mount": ("pegs",)}


def test_a_no_to_one_question_turns_no_other_answer_round() -> None:
    """'No photo' and, on the next line, 'round': the tube is round, and no square one is sold."""
    said = replied(LETTER, "no photo\nround\npegs")
    square = {b for b, row in builds().items() if b == "quellwick-tamsel-d"}
    assert not {*said.standing.possible[0].builds} & square
    assert said.standing.unknown == {"photograph"}


def test_what_one_of_several_was_answered_with_dont_know_is_not_asked_again() -> None:
    said = replied(LETTER, "1. cannot do that\n2. no idea\n3. no idea")
    assert said.standing.unknown == {"photograph", "overflow", "mount"}
    (letter,) = said.reply.answers
    assert not {q.asks for q in (letter.question, *letter.also_asked) if q} & said.standing.unknown


@pytest.mark.parametrize(
    "text",
    [
        *("The opening is 2. Also it leaks.", "it flushes 1.6 gallons", "4. nothing", "3. a 1. b"),
        *("round", "one\ntwo\nthree\nfour"),
        "The first line is far longer than any answer would be\nround\npegs",
    ],
)
def test_a_text_of_another_form_is_read_as_it_stands(text: str) -> None:
    assert answers_in(text, 3) == ()


def test_a_single_question_has_no_numbers() -> None:
    assert answers_in("1. round", 1) == ()


WISTRELLE = ("Cindrel Haume Wistrelle please", *["no idea"] * 7)


def test_where_nothing_is_left_to_ask_the_few_that_remain_are_told_apart() -> None:
    """Each under the builds that take it, with the picture that a person may yet tell it by."""
    talk = Talk(shop(), "customers", TODAY)
    *_, (last,) = [talk.say(line).reply.answers for line in WISTRELLE]
    assert last.outcome is Outcome.DEPENDS
    assert len([b for b in builds() if "wistrelle" in b]) == 6
    assert len(last.parts) == 5  # two of the six take the same seal
    assert "made from 1980 to 1993, it takes **PBK-6230**" in last.text
    assert last.question.asks == "photograph"
    (over,) = talk.say("no camera").reply.answers
    assert over.question is None
    assert "A person at the shop" in over.text


def test_in_a_talk_what_a_note_says_is_said_once_and_with_the_part_again() -> None:
    """Nobody reads the same cautions four times; with the seal in hand they are wanted."""
    talk = Talk(shop(), "customers", TODAY)
    lines = ("Ostrevale Cassorine, it drips", "no idea", "dont know", "2008")
    shut = [talk.say(line).reply.text.count("Shut the water off at the stop") for line in lines]
    assert shut == [1, 0, 0, 1]


def test_a_part_that_hangs_on_the_first_valve_asks_for_it_once() -> None:
    """'Is there a newer plastic valve in an old tank?' matters, as a new one takes its own seal."""
    talk = Talk(shop(), "customers", TODAY)
    (part,) = talk.say("Quellwick Tamsel, 1975 stamped in it").reply.answers
    assert part.outcome is Outcome.PART
    assert part.question.asks == "valve_replaced"
    (sure,) = talk.say("no, all original").reply.answers
    assert (sure.outcome, sure.question) == (Outcome.PART, None)
    assert "original one" not in sure.text
    other = Talk(shop(), "customers", TODAY)
    other.say("Quellwick Tamsel, 1975 stamped in it")
    (unknown,) = other.say("no idea").reply.answers
    assert (unknown.outcome, unknown.question) == (Outcome.PART, None)
    assert "the original one" in unknown.text
    (replaced,) = other.say("the flush valve was replaced, I asked").reply.answers
    assert (replaced.outcome, replaced.parts) == (Outcome.ASK, ())
