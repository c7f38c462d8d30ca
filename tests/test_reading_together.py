"""Where the readers meet: years beside names, two toilets, other people's toilets, corrections."""

from __future__ import annotations

from datetime import date

import pytest
from demonstration import shop

from assistant.reading.facts import Fact, Facts
from assistant.reading.letters import letter_from_text
from assistant.reading.read import read

TODAY = date(2026, 11, 25)


def told(letter: str) -> Facts:
    return read(letter_from_text(letter), shop().names, TODAY)


def _years(facts: Facts, name: str = "made") -> list[tuple[float, float]]:
    return [(f.interval.low, f.interval.high) for f in facts.named(name) if not f.negated]


@pytest.mark.parametrize(
    ("letter", "year"),
    [
        ("Which flapper fits a Quellwick Tamsel from 1988?", 1988),
        ("quellwick tamsel 1990 need flapper", 1990),
        ("flapper tamsel quellwick 88, runs all night", 1988),
        ("Quellwick Tamsel (1988), previous owner put in a new flush valve", 1988),
        ("I bought PBK-6230 for my Quellwick Tamsel 1988 and it leaks", 1988),
        ("Quellwick Brisnoe dated 1975 in the clay", 1975),
        ("Need a flapper, Quellwick Tamsel. 1988.", 1988),
        ("Will PBK-6230 fit my Quellwick Tamsel 1988?", 1988),
    ],
)
def test_a_year_beside_the_name_dates_the_toilet(letter: str, year: int) -> None:
    assert _years(told(letter)) == [(year, year)]


@pytest.mark.parametrize(
    "made",
    ["made 1995", "made in 1995", "built 1995", "manufactured 1995", "1995", "from 1995"],
)
@pytest.mark.parametrize("flush", ["", " 1.6 gpf", ", 1.6 gpf,"])
def test_a_year_before_what_the_toilet_needs_is_not_lost(made: str, flush: str) -> None:
    assert _years(told(f"Quellwick Tamsel{flush} {made} needs a flapper")) == [(1995, 1995)]


@pytest.mark.parametrize(
    "letter",
    [
        "I bought the Quellwick Tamsel in 1988",
        "I bought this Quellwick Tamsel toilet June 1988",
        "We installed our Quellwick Tamsel 06/14/1988",
        "We put in a new Tamsel 1988",
        "I purchased the Ulmbraith toilet in 1988",
    ],
)
def test_a_year_in_which_the_named_toilet_was_bought_does_not_make_it(letter: str) -> None:
    assert _years(told(letter)) == []
    assert _years(told(letter), "bought") == [(1988, 1988)]


@pytest.mark.parametrize(
    "letter",
    [
        "Quellwick Tamsel, I replaced the flapper in 2019",
        "Quellwick Tamsel, my zip is 19880 and I am 88 years old",
        "House from 1986 with a Quellwick Tamsel in it",
    ],
)
def test_a_year_of_something_else_does_not(letter: str) -> None:
    assert _years(told(letter)) == []


def _of(facts: Facts, toilet: int, name: str) -> list[Fact]:
    return [f for f in facts.of_toilet(toilet).named(name) if not f.negated]


@pytest.mark.parametrize(
    "letter",
    [
        "I have a Quellwick Tamsel from 1988 and a Skerrivane Feldrane from 2003. Which seals?",
        "1) Quellwick Tamsel, 1988, flapper. 2) Skerrivane Feldrane, 2003, flapper.",
        "Downstairs is a Quellwick Tamsel of 1988.\n\nUpstairs a Skerrivane Feldrane, 2003.",
    ],
)
def test_two_toilets_each_keep_their_year(letter: str) -> None:
    facts = told(letter)
    assert facts.toilets == (0, 1)
    assert [f.choices for f in _of(facts, 0, "model")] == [("Quellwick Tamsel",)]
    assert [f.choices for f in _of(facts, 1, "model")] == [("Skerrivane Feldrane",)]
    assert _years(facts.of_toilet(0)) == [(1988, 1988)]
    assert _years(facts.of_toilet(1)) == [(2003, 2003)]


def test_one_name_of_two_years_is_two_toilets() -> None:
    facts = told("one for a Quellwick Brisnoe 1975 and one for a Quellwick Brisnoe 1999")
    assert [_years(facts.of_toilet(toilet)) for toilet in facts.toilets] == [
        [(1975, 1975)],
        [(1999, 1999)],
    ]


def test_the_other_toilet_is_nameless_unless_the_letter_says_the_same() -> None:
    facts = told(
        "First is a Dunmarrow Dagmoor dated 1985. The other toilet is some no-name, also leaks."
    )
    assert _of(facts, 1, "model") == []
    facts = told("Two Quellwick Tamsels, one from 1988, the other one from 1999")
    assert [f.choices for f in _of(facts, 1, "model")] == [("Quellwick Tamsel",)]


@pytest.mark.parametrize(
    "letter",
    [
        "It could be the Pembrill Orsavel or the Pembrill Orsaval, from 1988.",
        "either a Quellwick Brisnoe or a Dunmarrow Wexoline, 1999",
    ],
)
def test_two_names_for_one_toilet_are_not_two_toilets(letter: str) -> None:
    assert told(letter).toilets == (0,)


@pytest.mark.parametrize(
    ("letter", "models"),
    [
        ("My neighbour has a Quellwick Tamsel from 1988. Mine looks the same.", []),
        ("My mum's loo is a Dunmarrow Feldrine 1975. Mine has no name on it.", []),
        ("My mum has a Dunmarrow Feldrine 1975, which flapper?", [("Dunmarrow Feldrine",)]),
        (
            "My friend has a Quellwick Tamsel but mine is an Ostrevale Tamsel",
            [("Ostrevale Tamsel",)],
        ),
    ],
)
def test_another_persons_toilet_is_not_the_writers(letter: str, models: list[object]) -> None:
    assert [f.choices for f in told(letter).named("model") if not f.negated] == models


@pytest.mark.parametrize(
    ("letter", "name", "value"),
    [
        ("The opening is 3 inch, no wait, it is 2 inch.", "opening", (2.0,)),
        ("Quellwick Tamsel from 1988. Sorry, I meant 1999.", "made", 1999),
        ("Ostrevale Averlune of 2009. No wait, my wife says 1999.", "made", 1999),
    ],
)
def test_a_correction_takes_back_what_was_said(letter: str, name: str, value: object) -> None:
    facts = [f for f in told(letter).named(name) if not f.negated]
    assert [f.nominal_in or f.interval.low for f in facts] == [value]


def test_a_corrected_model_keeps_its_maker() -> None:
    facts = told("Pembrill Orsaval 1975. Correction, Orsavel, with E.")
    assert [f.choices for f in facts.named("brand")] == [("Pembrill",)]
    assert [f.choices for f in facts.named("model")] == [("Pembrill Orsavel",)]


def test_a_question_for_a_part_does_not_doubt_the_year_but_a_lone_question_does() -> None:
    (asked,) = told("Will PBK-5160 fit my Ostrevale Tamsel 1990?").named("made")
    (doubted,) = told("It is a Quellwick Tamsel. 1988?").named("made")
    assert (asked.sure, doubted.sure) == (True, False)


@pytest.mark.parametrize(
    ("letter", "sure"),
    [
        ("Quellwick Tamsel, it has a 3 inch flapper", True),
        ("The opening is 3 inch. Quellwick Tamsel", True),
        ("Can I use a 2 inch flapper in a Quellwick Marwith two piece 1999?", False),
        ("My other toilet took a 3 inch flapper. This one is a Dunmarrow Wexoline", False),
        ("You sold me a 3 inch flapper, too big. Dunmarrow Wexoline", False),
        ("A 2 inch flapper falls through. Quellwick Tamsel", False),
        ("Should I get a 3 inch flapper for my Quellwick Tamsel?", False),
    ],
)
def test_the_size_of_a_part_counts_only_where_it_is_in_the_tank(letter: str, sure: bool) -> None:
    assert [f.sure for f in told(letter).named("opening")] == [sure]


def test_a_correction_of_the_second_toilet_leaves_the_first_alone() -> None:
    facts = told(
        "Quellwick Tamsel 1996 needs a flapper\n\n"
        "my other toilet is a Pembrill Orsavel 1985\n\nno wait, its an Orsaval"
    )
    assert facts.toilets == (0, 1)
    assert [f.choices for f in _of(facts, 0, "model")] == [("Quellwick Tamsel",)]
    assert [f.choices for f in _of(facts, 1, "model")] == [("Pembrill Orsaval",)]


def test_ninety_five_ish_is_no_number_of_a_toilet() -> None:
    assert told("flapper for my Pembrill Orsavel, dad says 95ish").named("unlisted") == ()
