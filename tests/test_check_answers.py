"""Whole answers: what is taken out, what stays, and how the Markdown looks afterwards."""

from __future__ import annotations

from typing import Literal

import pytest
from checking_tables import TABLES

from assistant.answers.check import Checked, Statement, Statements, check

ORIGINAL = "if the flush valve is the original one"
FITS = f"**SL-2044** fits the Zendrake Tolver made from 1986 to 1993, {ORIGINAL}."
NOTES = Statements(
    [
        Statement("Shut the water off before you lift the old seal out.", "safety.md:4"),
        Statement("It never leaks when the seat is clean.", "seats.md:9"),
        Statement("We buy SL-2041 in boxes of fifty.", "buying.md:3"),
        Statement("Ask the buyer for a discount on full boxes.", "buying.md:5", staff_only=True),
        Statement("This tells two valves apart.", "questions:opening"),
    ]
)


def seen(
    text: str, audience: Literal["staff", "customers"] = "staff", *, original: bool = False
) -> Checked:
    """The text after the check, against the notes above."""
    return check(
        text,
        TABLES,
        audience=audience,
        statements=NOTES,
        message="I call it a tolvre. It leaks.",
        valve_is_original=original,
    )


def test_a_sentence_with_one_unsupported_claim_goes_and_the_rest_stays() -> None:
    checked = seen(f"{FITS} It costs $4.90. It costs $4.91 and is in stock.\n\nIt is black.")
    assert checked.text == f"{FITS} It costs $4.90.\n\nIt is black."
    assert checked.taken_out == ("It costs $4.91 and is in stock.",)
    assert not checked.sound


def test_what_leaned_on_a_sentence_goes_with_it() -> None:
    checked = seen("SL-2046 costs $9.99. It is black.")
    assert checked.text == ""
    assert checked.taken_out == ("SL-2046 costs $9.99.", "It is black.")


def test_bullets_keep_their_marks_and_an_empty_list_takes_its_intro_along() -> None:
    intro = "Which seal fits the Zendrake Tolver depends on when it was made:"
    kept = f"{intro}\n\n- made from 1986 to 1993: **SL-2041**"
    tail = f"\n\nAll of this holds {ORIGINAL}."
    wrong = "\n- made since 1994: **SL-2041**"
    assert seen(kept + wrong + tail).text == kept + tail
    assert seen(intro + "\n" + wrong + tail).text == tail.strip()


def test_a_fit_is_not_stated_without_the_reservation_of_the_original_valve() -> None:
    bare = "SL-2044 fits the Zendrake Tolver made from 1986 to 1993."
    checked = seen(bare)
    assert (checked.text, checked.checks[-1].rule) == ("", "original-valve")
    assert seen(bare, original=True).sound
    assert seen(f"{bare} This holds as long as the valve has not been replaced.").sound
    assert seen("SL-2046 does not fit the Zendrake Tolver made from 1986 to 1993.").sound
    assert seen("SL-2041 fits wherever SL-1980 did.").sound


def test_a_reservation_that_falls_reserves_nothing() -> None:
    bare = "SL-2044 fits the Zendrake Tolver made from 1986 to 1993."
    assert seen(f"{bare} It costs $1.00, {ORIGINAL}.").text == ""


def test_customers_see_neither_cost_nor_counts_nor_what_is_for_staff() -> None:
    said = "SL-2041 costs $6.40. {}"
    for secret in (
        "It costs us $2.10.",
        "There are 12 on hand.",
        "We have 12 in stock.",
        "Ask the buyer for a discount on full boxes.",
    ):
        told = said.format(secret)
        assert seen(told).text == told, secret
        shown = seen(told, "customers")
        assert shown.text == "SL-2041 costs $6.40."
        assert {c.rule for c in shown.checks if c.result != "supported"} == {"audience"}


def test_a_general_statement_stands_in_a_note_word_for_word() -> None:
    note = "Shut the water off before you lift the old seal out."
    checked = seen(note)
    assert [(c.rule, c.row) for c in checked.checks] == [("note", "safety.md:4")]
    assert seen("shut the water off  before you lift the old seal out").sound
    assert not seen(note.replace("before", "after")).sound
    assert not seen(note.replace(".", " or not.")).sound


def test_a_note_excuses_no_claim_about_a_named_part() -> None:
    assert seen("We buy SL-2041 in boxes of fifty.").text == ""


def test_a_note_that_leans_on_its_own_page_may_not_lean_on_a_part() -> None:
    assert not seen("SL-2041 costs $6.40. It never leaks when the seat is clean.").sound
    assert seen("This tells two valves apart.").sound


def test_quotations_stand_word_for_word_in_the_letter_and_claim_nothing() -> None:
    assert seen('You wrote "a tolvre".').sound
    assert seen('You wrote "I call it a tolvre. It leaks."').sound
    assert not seen('You wrote "a tolver".').sound
    assert not seen('SL-2041 "fits" the Zendrake Tolver.').sound
    assert seen("> I call it a tolvre.").sound
    assert not seen("> I call it a flapper.").sound


@pytest.mark.parametrize(
    "text",
    [
        "<b>SL-2041 costs $6.40.</b>",
        "<!-- SL-2041 fits --> SL-2041 costs $6.40.",
        "```\nSL-2041 costs $6.40.\n```",
        "    SL-2041 costs $6.40.",
        "| SL-2041 | $6.40 |\n|---|---|\n| SL-2044 | $4.90 |",
        "![SL-2041](/parts/sl-2041)",
        "[SL-2041](/parts/sl-2044) costs $6.40.",
        "SL-2041 ~~does not~~ costs $6.40.",
    ],
)
def test_what_is_no_plain_text_is_not_shown(text: str) -> None:
    checked = seen(text)
    assert checked.text == ""
    assert checked.taken_out


def test_a_part_s_own_page_may_be_linked_and_a_rule_stays() -> None:
    text = "[SL-2041](/parts/sl-2041) costs $6.40.\n\n---\n\nSL-2044 costs $4.90."
    assert seen(text).text == text


def test_lines_that_belong_to_nothing_are_not_shown() -> None:
    checked = seen("SL-2041 costs $6.40.\n\n[a]: http://shop.example 'SL-2046 fits'\n")
    assert checked.text == "SL-2041 costs $6.40."
    assert checked.taken_out == ("[a]: http://shop.example 'SL-2046 fits'",)


def test_each_bullet_begins_from_what_was_said_before_the_list() -> None:
    text = "SL-2041:\n\n- closes a 2 in opening\n- costs $6.40\n- is red"
    assert seen(text).text == text
    other = "SL-2041 and SL-2044 fit the Zendrake Tolver:\n\n- SL-2041\n- costs $6.40"
    assert "costs" not in seen(other).text


def test_a_change_may_stand_in_the_next_sentence_and_only_for_its_own_part() -> None:
    first = f"SL-2065 fits the Zendrake Tolver made from 1986 to 1993, {ORIGINAL}."
    change = "with this change: cut the ring off at the mark."
    assert seen(f"{first} SL-2065 fits {change}").sound
    assert seen(f"{first} Cut the ring off at the mark.").sound
    assert not seen(f"{first} SL-2044 fits {change}").sound
    assert not seen(first).sound
