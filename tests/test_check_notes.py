"""Sentences of notes: said word for word, claiming nothing of a named thing, for their readers."""

from __future__ import annotations

from typing import Literal

import pytest
from checking_notes import (
    DRY,
    LINKS,
    NOTES,
    PITS,
    PRICE,
    SLACK,
    STAFF,
    TABLETS,
    cites,
    noted,
    seen,
)

from assistant.answers.check import Statement, Statements

ORIGINAL = "if the flush valve is the original one"

# Word for word


@pytest.mark.parametrize("audience", ["staff", "customers"])
def test_a_sentence_of_a_note_stands_word_for_word(
    audience: Literal["staff", "customers"],
) -> None:
    checked = seen(f"{DRY} {PITS}\n\n{SLACK}", audience)
    assert [(c.rule, c.row) for c in checked.checks] == [
        ("note", "seats.md:12"),
        ("note", "seats.md:13"),
        ("note", "chains.md:9"),
    ]
    assert checked.sound


@pytest.mark.parametrize(
    "changed",
    [
        DRY.replace("dry", "wet"),
        DRY.replace("before", "after"),
        DRY.replace("Wipe", "Never wipe"),
        DRY.replace("the new ", ""),
        DRY.replace("seat dry", "dry seat"),
        DRY.replace("seal", "seals"),
        DRY.replace("seal.", "seal, or leave it."),
        f"Our notes say: {DRY}",
        f"{DRY[:-1]} and {SLACK[0].lower()}{SLACK[1:]}",
    ],
)
def test_and_falls_where_a_word_is_changed(changed: str) -> None:
    checked = seen(f"{SLACK}\n\n{changed}")
    assert (checked.text, checked.taken_out) == (SLACK, (changed,))


def test_blanks_kinds_of_quotation_marks_and_a_missing_stop_change_nothing() -> None:
    held = Statements([Statement('Say "no" to it: it\'s the "wrong" one.', "a.md:3")])
    for said in (
        "Say “no” to it: it’s the “wrong” one.",
        'say  "no" to\nit: it\'s the "wrong" one',
    ):
        assert seen(said, statements=held).sound, said


# What a stale note claims of a named thing


@pytest.mark.parametrize(
    "false",
    [
        "SL-2044 fits every toilet.",
        "SL-2044 costs $3.10.",
        "SL-2044 is to order.",
        "SL-2044 closes a 3 in opening.",
        "The sl-2044 never leaks.",
        "The NB44 fits every toilet.",
        "The Zendrake Tolver takes SL-3010.",
        "Any Tolver takes a 3 in flapper.",
        "The Tolver's seal is a ring gasket.",
        "Zendrake flappers never leak.",
        "The Z86 takes a 3 in flapper.",
        "The flush valve of the Zendrake Tolver made from 1986 to 1993 has a 3 in opening.",
    ],
)
def test_a_stale_note_cannot_smuggle_through_what_the_tables_do_not_support(false: str) -> None:
    first, last = "Look at the old seal.", "Then write to us."
    checked = noted(first, false, last)
    assert (checked.text, checked.taken_out) == (f"{first} {last}", (false,))


@pytest.mark.parametrize(
    ("true", "rule", "row"),
    [
        (PRICE, "price", "seals:SL-2044"),
        ("SL-2044 is in stock.", "status", "seals:SL-2044"),
        (
            f"SL-2044 fits the Zendrake Tolver made from 1986 to 1993, {ORIGINAL}.",
            "evidence",
            "fitment:E02",
        ),
        ("SL-2041 replaces SL-1980.", "replaced-by", "seals:SL-1980"),
        ("The number NB44 belongs to SL-2044.", "maker-number", "seals:SL-2044"),
        (
            "The flush valve of the Zendrake Tolver made from 1986 to 1993 has a 2 in opening.",
            "opening",
            "flush_valves:p2u",
        ),
    ],
)
def test_a_true_claim_of_a_note_stands_by_the_tables_and_not_by_the_note(
    true: str, rule: str, row: str
) -> None:
    checked = noted(true)
    assert checked.text == true
    assert {(c.rule, c.row) for c in checked.checks} == {(rule, row)}


def test_what_leans_on_a_stale_sentence_falls_with_it() -> None:
    checked = noted("SL-2044 never leaks.", "It lasts as long as the tank.", "Write to us.")
    assert checked.text == "Write to us."


@pytest.mark.parametrize(
    "false",
    [
        *("The Zendrake float flapper fits every toilet.", "SL-9041 fits every toilet."),
        *("The Zendrake float flapper costs $3.10.", "A flapper costs $3.10."),
        *("SL2044 fits every toilet.", "SL 2044 fits every toilet."),
        *("ZENDRAKE flappers never leak.", "zendrake flappers never leak."),
        *("All Tolvers take a 3 in flapper.", "A flapper costs us $1.10."),
        *("All our flappers are in stock.", "There are 40 flappers on hand."),
    ],
)
def test_nor_under_another_name(false: str) -> None:
    assert noted(false).text == ""


# Who reads it


def test_staff_notes_are_not_shown_to_customers() -> None:
    told = f"{DRY}\n\n{cites('The seat', 12)}\n\n{STAFF}\n\n{cites('Buying', 5)}"
    assert seen(told).text == told
    shown = seen(told, "customers")
    assert shown.text == f"{DRY}\n\n{cites('The seat', 12)}"
    assert {(c.rule, c.row) for c in shown.checks if c.rule == "audience"} == {
        ("audience", "buying.md:5")
    }


def test_what_a_staff_note_and_the_shop_both_say_is_shown_to_customers() -> None:
    shown = seen("We never guess.", "customers")
    assert [c.row for c in shown.checks] == ["shop.toml:promise"]
    assert shown.sound


def test_but_not_that_a_staff_note_says_so() -> None:
    told = f"We never guess.\n\n{cites('Buying', 8)}"
    assert seen(told).text == told
    assert seen(told, "customers").text == "We never guess."


# 'It ...'


def test_it_may_lean_on_its_own_note_alone() -> None:
    assert seen(f"{DRY} {PITS}").sound
    for before in (SLACK, PRICE, "Where does it leak?", f"{DRY} {SLACK}", f"{DRY} {PRICE}"):
        checked = seen(f"{before} {PITS}")
        assert (checked.text, checked.taken_out) == (before, (PITS,)), before
    assert seen(PITS).text == ""


def test_it_falls_when_the_sentence_that_it_leans_on_has_fallen() -> None:
    wrong = DRY.replace("dry", "wet")
    assert seen(f"{wrong} {PITS} {SLACK} {LINKS}").text == f"{SLACK} {LINKS}"


@pytest.mark.parametrize(
    "leaning",
    [
        *("It never leaks.", "They fit any tank.", "This seal fits any tank.", "It's the best."),
        *("Its ears reach any peg.", "Both fit any tank.", "That never leaks."),
        *("It'll never leak.", "They're the best.", "Either fits any tank.", "Neither leaks."),
        *("And it never leaks.", "The same fits any tank."),
    ],
)  # fmt: skip
def test_a_note_s_it_is_no_part_that_was_named_before(leaning: str) -> None:
    held = Statements([Statement("Look at the ring.", "a.md:1"), Statement(leaning, "a.md:2")])
    assert seen(f"Look at the ring. {leaning}", statements=held).sound
    assert seen(f"{PRICE} {leaning}", statements=held).text == PRICE


def test_it_leans_on_whichever_note_says_the_sentence_before() -> None:
    held = Statements([*NOTES, Statement("They eat the rubber.", "chains.md:32", title="Chains")])
    assert seen(f"{TABLETS} They eat the rubber.", statements=held).sound
