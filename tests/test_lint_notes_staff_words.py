"""Words that customers' notes may not have, and the same words where they are harmless."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.linting.rules.notes.staff_words import CARDS, staff_words
from tests.linted_notes import BODY, found, gathered, note, places

FOR_STAFF = {
    "what we pay is between us and the supplier": [
        "Our cost has gone up.",
        "A washer costs us forty cents.",
        "We sold them at cost.",
        "The cost price stands in the list.",
        "Look up the buying price first.",
        "Tell nobody what we pay.",
        "We buy them for a dollar.",
    ],
    "what we earn on a part is nobody else's business": [
        "The margin on rings is good.",
        "Name the one with the better margin.",
    ],
    "how a price is made is nobody else's business": [
        "The mark-up is a third.",
        "A markup of a third is usual.",
        "We mark them up by a third.",
    ],
    "where and how we buy is between us and the supplier": [
        "Wholesale they come in boxes of fifty.",
        "Our wholesaler has no more of them.",
    ],
    "customers hear whether a part is in stock, never how many there are": [
        "There are 40 rings on hand.",
        "We have only two left.",
        "The on-hand count is wrong.",
        "Look at the stock count.",
    ],
    "it is said to us and not to the reader": [
        "This note is for the counter.",
        "For staff only.",
        "Never tell the customer that it was tried.",
        "Don’t show this to customers.",
    ],
    "what a supplier grants us is between us and the supplier": [
        "The supplier's discount is for full boxes.",
        "Makers’ discounts end in May.",
        "Ask about the discount we get.",
        "A rebate from the maker comes at the year's end.",
    ],
}
HARMLESS = [
    "It costs nothing to look.",
    "A broken lug costs the whole valve.",
    "What it costs stands beside the part.",
    "On the other hand, a ring may be worn.",
    "Have a towel on hand.",
    "Keep two old towels on hand.",
    "Leave a margin of two millimetres.",
    "There is little margin for error.",
    "Margins of a millimetre or two are harmless.",
    "It misses the peg by a small margin.",
    "Mark up to where the water stands.",
    "A wholesale replacement of the valve is not needed.",
    "We refund the full purchase price.",
    "That is a question for the counter.",
    "It is for the counter to say.",
    "The counter is open on Saturday.",
    "Call the gas supplier from outside.",
    "The water company may give a rebate for a new toilet.",
    "We have left the ring as it was.",
    "The part is in stock.",
    "Show the customers' side of the tank.",
]


@pytest.mark.parametrize(
    ("sentence", "reason"),
    [(sentence, reason) for reason, sentences in FOR_STAFF.items() for sentence in sentences],
)
def test_words_for_staff_are_told_with_their_reason(sentence: str, reason: str) -> None:
    told = staff_words(sentence)
    assert told is not None
    assert told[0].lower() in sentence.lower().replace("’", "'")
    assert told[1] == reason


@pytest.mark.parametrize("sentence", HARMLESS)
def test_ordinary_uses_of_the_same_words_are_left_alone(sentence: str) -> None:
    assert staff_words(sentence) is None


def test_every_reason_has_examples() -> None:
    assert {card.reason for card in CARDS} == set(FOR_STAFF)


def test_a_harmless_use_does_not_hide_another_beside_it() -> None:
    assert staff_words("Leave a margin of one inch, for our margin is small.") is not None


def test_titles_and_headings_are_read_as_sentences_are(tmp_path: Path) -> None:
    body = "# Our margin\n\n## Cost price\n\nSay this\nin two lines: our\ncost is low.\n"
    notes = {"chains": note(body, title="Our margin")}
    assert places(found("staff-words", gathered(tmp_path, notes))) == [
        "chains:2",
        "chains:10",
        "chains:12",
    ]


def test_questions_are_worded_as_customers_word_them(tmp_path: Path) -> None:
    asked = "updated: 2026-10-12\nasked: {how-much-slack: [is your margin high]}\n"
    assert found("staff-words", gathered(tmp_path, {"chains": note(BODY, more=asked)})) == []
