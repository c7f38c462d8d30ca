"""Which answers a letter gets, and in which order: a seal, a policy, a note, a person."""

from __future__ import annotations

from datetime import date

import pytest
from demonstration import shop
from searching import demo_search

from assistant.answers.answer import Answer
from assistant.answers.compose.case import Audience
from assistant.answers.reply import reply
from assistant.reading.letters import letter_from_text

TODAY = date(2026, 11, 25)
STAMP = "model_no"  # the question for the number in the tank


def answers(letter: str, audience: Audience = "customers") -> tuple[Answer, ...]:
    """The answers to a letter."""
    made = letter_from_text(letter)
    return reply(shop(), made, audience=audience, today=TODAY, search=demo_search()).answers


def told(letter: str) -> list[str]:
    """Of each answer the note found first, or else its outcome."""
    return [
        next((s.note.removesuffix(".md") for s in a.sources if s.score is not None), str(a.outcome))
        if a.outcome == "note"
        else str(a.outcome)
        for a in answers(letter)
    ]


LETTERS = {
    # a question of how beside a part, a model or a symptom is answered with that in mind
    "I have fitted PBK-6230. How do I hook it on?": ["fitting-a-flapper-on-pegs"],
    "The old one is a ball on a wire. How do I get it off?": ["fitting-a-tank-ball"],
    "The chain came off. How do I set it?": ["not the seal", "chains"],
    "it does a double flush, why": ["when-it-flushes-twice-or-too-long"],
    "Dunmarrow Dagmoor 1985, screw in or push in, and how do I change it?": [
        "part",
        "tipping-bucket",
    ],
    # two questions, two answers
    "How much slack does the chain need? How do I do the dye test?": ["chains", "the-dye-test"],
    "how do I hook a flapper on its pegs, and how much slack": [
        "fitting-a-flapper-on-pegs",
        "chains",
    ],
    # a toilet's name with a mark asks the tables and no note
    "Ostrevale Trevelisse 1999 flapper?": ["part"],
    # of the shop and not of a seal
    "Do you fit toilets or send someone round?": ["hand over"],
    "how do I post back a flapper I have not used, and when will the replacement arrive": [
        "hand over"
    ],
    "The flapper is red. Do you ship to Canada?": ["ask", "hand over"],
    # civil words
    "hello": ["hand over"],
    "Thanks a lot!": ["hand over"],
    # what ails it, told without a question
    "two button toilet keeps trickling since i put the lid back on": [
        "fitting-a-ring-under-a-tower"
    ],
    "My loo flushes weakly since I fitted your new flapper. What should I check first?": [
        "weak-or-short-flush"
    ],
    # safety
    "is it safe to cut the overflow pipe shorter?": ["water-in-the-overflow-tube"],
    "My eyes sting after I put cleaner and vinegar in the tank": ["hand over"],
    # an invented name is no hazard
    "Our toilet is a Wobblemore. Which flapper?": ["no match"],
}


@pytest.mark.parametrize(("letter", "expected"), LETTERS.items())
def test_a_letter_gets_an_answer_to_each_thing_it_asks(letter: str, expected: list[str]) -> None:
    assert told(letter) == expected


def test_the_number_in_the_tank_is_not_asked_for_where_no_seal_is_wanted() -> None:
    for letter, expected in LETTERS.items():
        if "ask" not in expected:
            assert all(a.question is None or a.question.asks != STAMP for a in answers(letter))


def test_what_the_shop_does_not_do_is_told_in_its_own_words() -> None:
    (answer,) = answers("Can you come out and install it?")
    assert shop().settings.policies["not_for"] in answer.text


def test_a_sting_in_the_eyes_is_met_with_leaving_the_room_first() -> None:
    (answer,) = answers("my throat burns since the bleach and the descaler met in the tank")
    assert "leave the room" in answer.text.split(".")[0]


HAZARDS = {
    "my lad drank the blue water what do i do": "poison centre",
    "I swallowed some of the toilet cleaner": "poison centre",
    "my eyes burn after I sprayed two things in the tank": "leave the room",
    "I poured bleach in and now want to use vinegar on the seat": "leave the room",
    "the gas boiler is leaking next to the toilet, and how do i clean the seat": "gas supplier",
    "how do I shut the water off, the stop is stuck solid, wrench it": "Leave a stop alone",
}


@pytest.mark.parametrize(("letter", "first"), HAZARDS.items())
def test_a_hazard_is_told_first_and_alone(letter: str, first: str) -> None:
    (answer,) = answers(letter)
    assert answer.outcome == "hand over"
    assert first in answer.text.split(".")[0]


def test_a_part_that_does_not_fit_the_toilet_named_is_refused_before_its_fitting_is_told() -> None:
    part, how = answers("PBK-6246, how do I hook it on my Quellwick Tamsel from 1988?")
    assert part.text.startswith("**PBK-6246** does not fit")
    assert how.outcome == "note"


def test_a_no_comes_before_the_seal_that_does_fit() -> None:
    (answer,) = answers("Does PBK-6246 fit a Quellwick Tamsel from 1985?")
    assert answer.text.startswith("**PBK-6246** does not fit the Quellwick Tamsel")
    assert answer.parts[0].part_no == "PBK-6230"


def test_steps_stand_each_on_a_line_of_its_own() -> None:
    (answer,) = answers("How do I get the canister out?")
    assert [line[:2] for line in answer.text.splitlines()[:3]] == ["1.", "2.", "3."]


def test_staff_are_told_what_a_part_costs_and_customers_are_not() -> None:
    asked = "how much do we pay for PBK-6230?"
    assert "it costs us $1.90" in answers(asked, "staff")[0].text
    assert "1.90" not in answers(asked)[0].text
