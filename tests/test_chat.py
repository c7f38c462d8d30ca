"""A conversation: what was said before counts, a short answer leans on its question."""

from __future__ import annotations

from datetime import date

import pytest
from demonstration import shop

from assistant.answers.answer import Reply
from assistant.answers.compose.case import Audience
from assistant.answers.reply import reply
from assistant.chat import Conversation
from assistant.reading.letters import letter_from_text


def after(*lines: str, audience: Audience = "customers") -> Reply:
    """The reply to the last of some lines."""
    conversation = Conversation(shop(), audience, date(2026, 11, 25))
    return [conversation.say(line) for line in lines][-1]


def first_part(made: Reply) -> tuple[str, str | None]:
    """The outcome of the one answer, and the part named first."""
    (answer,) = made.answers
    return str(answer.outcome), answer.parts[0].part_no if answer.parts else None


def asks(made: Reply) -> str | None:
    (answer,) = made.answers
    return answer.question.asks if answer.question else None


def test_a_maker_then_a_number_then_a_year_lead_to_the_part() -> None:
    assert asks(after("It's a Quellwick")) == "model_no"
    assert asks(after("It's a Quellwick", "Q 418")) == "mount"  # a ball, or a flapper on pegs
    assert first_part(after("It's a Quellwick", "Q 418", "1975")) == ("part", "PBK-6230")
    assert first_part(after("It's a Quellwick", "Q 418", "1960")) == ("part", "PBK-4483")


def test_a_bare_number_is_the_one_in_the_tank_where_that_was_asked() -> None:
    assert asks(after("I need a flapper", "2273")) == "mount"
    assert first_part(after("I need a flapper", "2273", "1960")) == ("part", "PBK-4487")


def test_a_name_between_two_is_settled_by_the_next_line() -> None:
    assert asks(after("Pembrill Orsavol, 1985")) == "model"
    assert first_part(after("Pembrill Orsavol, 1985", "Orsavel")) == ("part", "PBK-5164")


@pytest.mark.parametrize(
    ("lines", "part_no"),
    [
        (("Quellwick Tamsel from 1975", "no wait, 1999"), "PBK-6357"),
        (("Quellwick Tamsel from 1975", "No wait, the stamp says 1999."), "PBK-6357"),
        (("Vorlamar Sunday 2005", "sorry, I meant 2015"), "PBK-7740"),
        (("Quellwick Tamsel from 1999", "no wait, it is a Brisnoe"), "PBK-6246"),
        (("Quellwick Tamsel 1988", "sorry, I meant 1998", "no wait, it's a Brisnoe"), "PBK-6246"),
    ],
)
def test_a_later_line_corrects_an_earlier_one(lines: tuple[str, ...], part_no: str) -> None:
    assert first_part(after(*lines)) == ("part", part_no)


def test_a_valve_that_was_replaced_takes_the_part_back() -> None:
    before, then = "Quellwick Tamsel from 1975", "The flush valve has been replaced."
    assert first_part(after(before)) == ("part", "PBK-6230")
    assert first_part(after(before, then)) == ("ask", None)


def test_customers_see_no_cost_in_a_conversation_either() -> None:
    line = "Quellwick Tamsel from 1975"
    assert "costs us" in after(line, audience="staff").text
    assert "costs us" not in after(line).text


MAKER_PUT_RIGHT = (
    ("I have a Quellwick Tamsel", "sorry, it is an Ostrevale, not a Quellwick", "made 1985"),
    ("I need a flapper for my Quellwick Tamsel of 1985", "no, it's an Ostrevale Tamsel"),
)


@pytest.mark.parametrize("lines", MAKER_PUT_RIGHT)
def test_a_model_told_before_is_that_of_the_maker_who_was_put_right(lines: tuple[str, ...]) -> None:
    assert first_part(after(*lines)) == first_part(after("Ostrevale Tamsel, made 1985"))


def test_thanks_are_answered_in_kind_and_change_nothing() -> None:
    lines = ("Which seal fits a Quellwick Tamsel?", "thanks")
    assert "You are welcome" in after(*lines).text
    assert first_part(after(*lines, "it was made in 1985")) == ("part", "PBK-6230")


def test_what_a_letter_says_it_does_not_know_is_not_asked() -> None:
    letter = "The opening is 2 inches across, strap round the tube. Which?"
    asked = [
        reply(shop(), letter_from_text(f"{letter} {more}"), audience="customers", most_questions=3)
        for more in ("", "There is no number in the tank, no name on it.")
    ]
    (before, after_it) = ({q.asks for a in r.answers for q in (a.question, *a.also_asked) if q}
                          for r in asked)  # fmt: skip
    assert "model_no" in before
    assert not {"model_no", "brand"} & after_it


ONE_OF_TWO = "Dunmarrow Calvister. Only one of the two flaps lets water by, I want just that one."


def test_one_of_two_seals_is_named_once_it_is_told_which() -> None:
    assert asks(after(ONE_OF_TWO)) == "position"
    (one,) = after(ONE_OF_TWO, "the little one on the left").answers
    assert {part.position for part in one.parts} == {"rinse"}
    (set_of_both,) = after(ONE_OF_TWO, "no idea").answers
    assert {part.position for part in set_of_both.parts} == {"main", "rinse"}
