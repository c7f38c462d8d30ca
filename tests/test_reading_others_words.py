"""What a stranger says of a part, and what is said of somebody else's toilet, narrows nothing."""

from __future__ import annotations

from datetime import date

import pytest
from demonstration import shop

from assistant.reading.facts import Facts
from assistant.reading.letters import letter_from_text
from assistant.reading.read import read

TODAY = date(2026, 11, 25)


def told(letter: str) -> Facts:
    return read(letter_from_text(letter), shop().names, TODAY)


@pytest.mark.parametrize(
    "letter",
    [
        'Somebody on the phone told me "take the wide two inch flapper".',
        "The man at the store said the opening is 2 inch",
        "a plumber reckons its a 2 inch opening",
    ],
)
def test_a_strangers_measure_is_not_sure(letter: str) -> None:
    openings = told(letter).named("opening")
    assert openings
    assert not any(f.sure for f in openings)


@pytest.mark.parametrize(
    "letter", ["I measured the opening, 2 inch", "my husband says the opening is 2 inch"]
)
def test_what_the_household_measured_is(letter: str) -> None:
    assert [f.sure for f in told(letter).named("opening")] == [True]


def test_a_friends_flapper_says_nothing_of_mine() -> None:
    facts = told(
        "There is DM 33 in my tank. A friend has DM 33 too and his is on pegs, mine is gone."
    )
    assert not facts.named("mount")
    assert [f.negated for f in facts.named("model_no")] == [False]


def test_who_thinks_what_it_is_does_not_own_it() -> None:
    facts = told("my brother in law reckons its a vorlamar orlezza. ours is 2011")
    assert [f.choices for f in facts.named("model") if not f.negated] == [("Vorlamar Orlezza",)]


def test_a_model_denied_at_last_was_never_meant() -> None:
    facts = told("I know about the Lunnet & Garve Sixpence, mine is not the Sixpence.")
    assert all(f.negated for f in facts.named("model"))


@pytest.mark.parametrize(
    ("letter", "toilets"),
    [
        ("Left: Moorspindle, model Heron, 1999. Right: Skerrivane Strommay, 2009.", 2),
        ("Gents: the mark says TW/52. Ladies: the mark says IC 231.", 2),
        ("Lunnet & Garve Dorrimund, 1986. Upstairs: also a Dorrimund but it says Brunnicote.", 2),
        ("My toilet is a Pembrill Tollifane and the tank number is QT 61.", 1),
        ("Quellwick Tamsel 1985, the number in the tank is QT 61.", 1),
    ],
)
def test_two_names_or_two_numbers_are_two_toilets(letter: str, toilets: int) -> None:
    assert len(told(letter).toilets) == toilets


def test_what_is_said_of_both_is_said_of_each() -> None:
    facts = told("A Gorvek Nimvik and a Gorvek Zadrel. Both have 2006 stamped inside.")
    assert [(f.interval.low, f.toilet) for f in facts.named("made")] == [(2006, 0), (2006, 1)]


def test_a_maker_alone_after_another_model_takes_the_model_with_it() -> None:
    facts = told("Lunnet & Garve Dorrimund, 1986. The attic: also a Dorrimund but says Brunnicote.")
    assert [f.choices for f in facts.of_toilet(1).named("model")] == [("Brunnicote Dorrimund",)]


@pytest.mark.parametrize(
    ("letter", "number"),
    [
        ("is number 7374 right for my Gorvek Stelvask?", "PBK-7374"),
        ("they said 7374 would go in a Gorvek Stelvask", "PBK-7374"),
    ],
)
def test_our_number_is_known_without_its_prefix(letter: str, number: str) -> None:
    (fact,) = told(letter).named("part_no")
    assert (fact.choices, fact.of) == ((number,), "asked")


@pytest.mark.parametrize("letter", ["call me on 555 6230", "I live at 6230 Vale Road, 2 inch"])
def test_digits_of_something_else_are_no_part(letter: str) -> None:
    assert not told(letter).named("part_no")


# What is taken back


@pytest.mark.parametrize(
    ("letter", "made"),
    [
        ("Quellwick Lissimer, I'd have sworn 1996. Strike out 1996, I have no year for it.", []),
        ("it's a Quellwick Tamsel, not 1985, 1995", [1995]),
        ("A Dunmarrow Wexoline, from 1984. Or rather 1984 is when they put up the house.", []),
        ("Yarabeck made by Dunmarrow, 1998. Hang on, I read it upside down. It's 2008.", [2008]),
        ("Ostrevale Lumissole, 1985, flapper. Hang on. It's a nine not an eight, so 1995", [1995]),
        ("A Dunmarrow Wexoline from 1975. Scrap that, the lid says 1984.", [1984]),
        ("Dunmarrow Wexoline, made 1975, no hang on, the tank is dated 1984.", [1984]),
        ("Dunmarrow Wexoline 1975. Update: the limescale is off and it's 1984.", [1984]),
        ("Dunmarrow Wexoline from 1975... let me check... 14 MAR 1984 under the lid.", [1984]),
    ],
)
def test_a_year_taken_back_dates_nothing(letter: str, made: list[int]) -> None:
    assert [f.interval.low for f in told(letter).named("made") if not f.negated] == made


@pytest.mark.parametrize(
    ("letter", "model"),
    [
        ("Pembrill Orsavel - let me spell that: O R S A V A L. Which flapper?", "Pembrill Orsaval"),
        ("Pembrill, and the model is O-R-S-A-V-E-L", "Pembrill Orsavel"),
    ],
)
def test_a_name_spelled_out_is_meant_letter_for_letter(letter: str, model: str) -> None:
    assert [f.choices for f in told(letter).named("model")] == [(model,)]


def test_two_people_who_say_two_names_speak_of_one_toilet() -> None:
    facts = told("mum says its a Hattilva Keltorva. dad says its a Hattilva Lempuri. made in 2015")
    assert len(facts.toilets) == 1
