"""What stands in a letter beside its toilet, and names that are read better at a second look.

How people put such things is common usage of English, no source.
"""

from __future__ import annotations

from datetime import date

import pytest
from demonstration import shop

from assistant.reading.facts import Facts
from assistant.reading.letters import letter_from_text
from assistant.reading.read import read


def told(text: str) -> Facts:
    return read(letter_from_text(text), shop().names, date(2026, 11, 25))


def names(text: str, name: str = "model") -> list[str]:
    """The values of a name that are not denied, each once."""
    found = (c for f in told(text).named(name) if not f.negated for c in f.choices)
    return list(dict.fromkeys(found))


def years(text: str) -> list[int]:
    return [int(f.interval.low) for f in told(text).named("made", "bought", "year")]


@pytest.mark.parametrize(
    "text",
    [
        "It is a Quellwick Tamsel of 1985. There's also 2009 but that's on the shower.",
        "Quellwick Tamsel, made 1985. I have a paper from 2009, but thats for the taps.",
        "Quellwick Tamsel 1985, and 2009 though that is off the boiler",
    ],
)
def test_another_things_date_dates_no_toilet(text: str) -> None:
    assert years(text) == [1985]


def test_who_made_a_seal_did_not_make_the_toilet() -> None:
    text = "First the Hattilva clip, then the Gorvek snap flap. My Skerrivane Skuavik wants one."
    assert names(text, "brand") == ["Skerrivane"]
    assert names("I need a Gorvek flapper, the toilet has no name", "brand") == ["Gorvek"]


@pytest.mark.parametrize(
    "text",
    [
        "What for a Dunmarrow Feldrine? Ignore that, the Feldrine is my sister's. "
        "Ours is a Skerrivane Feldrane.",
        "My brother, who lives over the bakery, has a Dunmarrow Feldrine. "
        "I have a Skerrivane Feldrane.",
        "She's got a Dunmarrow Feldrine, and mine is a Skerrivane Feldrane.",
        "The people next door have a Dunmarrow Feldrine; ours says Skerrivane Feldrane.",
    ],
)
def test_somebody_elses_toilet_is_not_the_writers(text: str) -> None:
    assert names(text) == ["Skerrivane Feldrane"]


@pytest.mark.parametrize(
    ("text", "model"),
    [
        ("pembrill orsavel, wiped it off and it's ORSAVAL, A at the end", "Pembrill Orsaval"),
        ("Dunmarrow Dagmoor. Went back to check: it's a DagMERE.", "Dunmarrow Dagmere"),
        ("pembrill orsavil or something. Looked again, it is Orsaval.", "Pembrill Orsaval"),
    ],
)
def test_a_name_read_better_at_a_second_look_is_the_only_one(text: str, model: str) -> None:
    assert names(text) == [model]


def test_two_names_alike_may_be_two_toilets() -> None:
    text = "Upstairs is a Pembrill Orsavel, and the other one downstairs, it's an Orsaval."
    assert names(text) == ["Pembrill Orsavel", "Pembrill Orsaval"]


@pytest.mark.parametrize(
    ("text", "number"),
    [
        ("a tulvergate stannock, there is TW stroke 6A stamped in it", "TW/6A"),
        ("Tulvergate Stannock, TW slash 6A in the tank", "TW/6A"),
        ("the number in the tank is P dash 971", "P-971"),
    ],
)
def test_a_number_read_out_is_read_as_it_is_written(text: str, number: str) -> None:
    assert number in names(text, "model_no")


def test_a_signature_names_no_toilet() -> None:
    """It may sound like one, and the letter has named its own."""
    text = "CH 21 H in the tank, and Cindrel Haume on the pan. I send a cheque. Jos. Applegarth"
    assert names(text) == []
    assert names("Which flapper do I need? Quellwick Tamsel") == ["Quellwick Tamsel"]


@pytest.mark.parametrize(
    ("text", "name", "middle"),
    [
        ("Ear to ear, outside faces: 81.2. All in mm.", "hinge_width", 81.2),
        ("Across the two ears, outside edges, 93. All millimetres.", "hinge_width", 93),
        ("hole 76, upright pegs, 104.5 over the ears (all mm)", "hinge_width", 104.5),
        ("hole 76, upright pegs, 104.5 over the ears (all mm)", "opening", 76),
        ("seat opening 76.0, ears up, 104.0 outside to outside", "opening", 76),
        ("Through the hole, lip to lip: two and one half inches.", "opening", 63.5),
        ("over the lugs of the old rubber, outside: two and thirteen sixteenths", "hinge_width",
         71.4),
    ],
)  # fmt: skip
def test_what_a_number_measures_is_said_before_or_after_it(
    text: str, name: str, middle: float
) -> None:
    (fact,) = told(text).named(name)
    assert (fact.interval.low + fact.interval.high) / 2 == pytest.approx(middle, abs=0.1)


def test_a_caliper_reads_finer_than_a_ruler() -> None:
    """Tenths of a millimetre are written by nobody who guesses (common practice, no source)."""
    (fine,) = told("hole 76, 104.5 over the ears (all mm)").named("hinge_width")
    (rough,) = told("hole 76, 104 over the ears (all mm)").named("hinge_width")
    assert fine.interval.high - fine.interval.low < rough.interval.high - rough.interval.low


def test_pegs_that_are_counted_are_not_measured() -> None:
    assert not told("Pegs: two, pointing at the floor. All in mm.").named("hinge_width")


def test_what_was_not_measured_denies_nothing_after_it() -> None:
    text = (
        "two and a half inches inside the hole not the lip the horns on the pipe aim at the floor"
    )
    (ears,) = told(text).named("ears")
    assert (ears.choices, ears.negated) == (("down",), False)


@pytest.mark.parametrize(
    "text", ["clay says MAR 76", "MAR 76 in the clay", "there is JUN 88 on it"]
)
def test_a_month_in_capitals_is_copied_from_a_stamp(text: str) -> None:
    assert len(years(f"quellwick tamsel, {text}")) == 1
