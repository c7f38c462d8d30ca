"""Whole sentences that customers write, and the facts that were once missed in them."""

from __future__ import annotations

from datetime import date

import pytest
from demonstration import shop

from assistant.reading.facts import Facts, Interval
from assistant.reading.letters import letter_from_text
from assistant.reading.read import read

TODAY = date(2026, 11, 25)


def facts(letter: str) -> Facts:
    """All facts of a letter."""
    return read(letter_from_text(letter), shop().names, TODAY)


YEARS = {
    "Qwellwick Tamsle frm 2003 flaper pls": ("made", 2003),
    "quellwick marwith, stamp says 2003 flapper is shot": ("made", 2003),
    "Ostrevale Hautrevel bougth in 1995 from a catalog": ("bought", 1995),
    "House was put up in 1988. It is a Skerrivane Papalsay.": ("house", 1988),
}


@pytest.mark.parametrize(("letter", "said"), YEARS.items())
def test_a_year_dates_what_its_words_say(letter: str, said: tuple[str, int]) -> None:
    name, year = said
    (fact,) = facts(letter).named(name)
    assert fact.value == Interval(year, year)


UNLISTED = {
    "We have a Tebbinworth Calloway, two piece, 1998. Do you have the flapper?": (
        "Tebbinworth Calloway"
    ),
    "On it is only 'Mullenby' and a date. Have you got the ring?": "Mullenby",
}


@pytest.mark.parametrize(("letter", "name"), UNLISTED.items())
def test_a_name_that_no_table_has_is_seen_to_be_one(letter: str, name: str) -> None:
    assert facts(letter).has("unlisted", name)


NO_NAMES = ("We have an Old House, built 1990.", "for my Dear Wife a new flapper please")


@pytest.mark.parametrize("letter", NO_NAMES)
def test_ordinary_words_with_capitals_are_no_names(letter: str) -> None:
    assert not facts(letter).named("unlisted")


RINSE = (
    "It is the little one that lets water by.",
    "I want just the small one.",
    "Small rinsing flap, white bar.",
    "the tiny flap that feeds the rim",
)


@pytest.mark.parametrize("words", RINSE)
def test_the_smaller_of_two_seals_is_the_one_that_rinses(words: str) -> None:
    assert facts(f"Pembrill Ystolfen. {words}").has("position", "rinse")


@pytest.mark.parametrize(
    "words",
    [
        "Only one of the two flaps lets water by.",
        "It has two seals and just one of them two is shot.",
        "Only one of the flappers leaks.",
    ],
)
def test_one_of_two_seals_is_not_told_which(words: str) -> None:
    (told,) = facts(f"Pembrill Ystolfen. {words}").named("position")
    assert told.choices == ("main", "rinse")


@pytest.mark.parametrize(
    "words",
    ["both flappers pls, wide ears on the big one", "I want both, the small one leaks most"],
)
def test_who_wants_both_picks_out_neither(words: str) -> None:
    assert not facts(f"Pembrill Ystolfen. {words}").named("position")


@pytest.mark.parametrize(
    "words",
    [
        "It is for one of the two toilets upstairs.",
        "I tried one of the two flappers you sent.",
        "One of the neighbours told me about you.",
    ],
)
def test_one_of_two_of_something_else_tells_no_seal(words: str) -> None:
    assert not facts(f"Pembrill Ystolfen. {words}").named("position")


def test_a_model_of_two_makers_is_that_of_the_maker_named_with_it() -> None:
    letter = (
        "For the Dorrimund in the hall (says Lunnet on the seat end of the bowl, LE 430 in the "
        "tank) and for the Dorrimund upstairs, which says Brunnicote and 1999."
    )
    models = {f.toilet: f.choices for f in facts(letter).named("model")}
    assert models == {0: ("Lunnet & Garve Dorrimund",), 1: ("Brunnicote Dorrimund",)}


def test_a_new_flush_valve_is_noticed_though_misspelt() -> None:
    letter = "our Ostrevale Averlune (2001) got a compleet new flush valv put in by a plumer"
    assert facts(letter).named("valve_replaced")
