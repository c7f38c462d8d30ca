"""Numbers in every form, their tolerances at the edges, and the volume of a flush."""

from __future__ import annotations

import time
from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.reading.facts import Fact, Interval
from assistant.reading.measured import read_lengths
from assistant.reading.numerals import value
from assistant.reading.quantities import read_volumes
from assistant.reading.text import Text
from assistant.reading.tolerances import (
    A_DECADE,
    AGE,
    AGE_ABOUT,
    BARE,
    DECADE,
    LENGTH_SAID,
    MEASURED,
    NOMINAL_IN,
    age,
    closed_by,
    decades,
    length,
    nominal,
    volume,
)
from assistant.reading.wording import Said, how_said
from assistant.reading.years import read_years

TODAY = date(2025, 6, 1)


@pytest.mark.parametrize(
    ("words", "number"),
    [
        ("2-1/2", 2.5),
        ("2 1/2", 2.5),
        ("2½", 2.5),
        ("2 ½", 2.5),
        ("2.5", 2.5),
        ("2,5", 2.5),
        (".8", 0.8),
        ("2 and a half", 2.5),
        ("2 & 1/2", 2.5),
        ("21/2", 2.5),
        ("2.1/2", 2.5),
        ("two and a half", 2.5),
        ("two point five", 2.5),
        ("two-and-one-quarter", 2.25),
        ("two and three quarters", 2.75),
        ("two and seven eighths", 2.875),
        ("1 1/16", 1.0625),
        ("13/16", 0.8125),
        ("⅞", 0.875),
        ("sixty-three", 63),
        ("seventy six", 76),
        ("twelve", 12),
    ],
)
def test_a_number_has_one_value_in_every_form(words: str, number: float) -> None:
    assert value(words) == number


def test_what_is_no_number_is_refused() -> None:
    with pytest.raises(ValueError, match="no number: 'flapper'"):
        value("flapper")


@pytest.mark.parametrize(
    ("before", "after", "how"),
    [
        ("", " in", Said.PLAINLY),
        ("about ", "", Said.ABOUT),
        ("approx. ", "", Said.ABOUT),
        ("~", "", Said.ABOUT),
        ("", "ish", Said.ABOUT),
        ("", " or so", Said.ABOUT),
        ("a hair over ", "", Said.BIT_OVER),
        ("", " and a bit", Said.BIT_OVER),
        ("just under ", "", Said.ALMOST),
        ("almost ", "", Said.ALMOST),
        ("more than ", "", Said.OVER),
        ("less than ", "", Said.UNDER),
    ],
)
def test_the_words_beside_a_number_say_how_it_was_said(before: str, after: str, how: Said) -> None:
    assert how_said(f"{before}3{after}", len(before), len(before) + 1) is how


class TestTolerances:
    def test_every_card_gives_its_reason(self) -> None:
        cards = [*MEASURED.values(), *LENGTH_SAID.values(), BARE, AGE, AGE_ABOUT, DECADE, A_DECADE]
        assert all(card.because.endswith(".") for card in cards)

    @pytest.mark.parametrize(
        ("low", "high", "unit", "grain", "said", "bare", "expected"),
        [
            (63, 63, "mm", "whole", Said.PLAINLY, False, (61, 65)),
            (7, 7, "cm", "whole", Said.PLAINLY, False, (65, 75)),
            (7.6, 7.6, "cm", "fine", Said.PLAINLY, False, (74, 78)),
            (3, 3, "in", "whole", Said.PLAINLY, False, (73.2, 79.2)),
            (2.5, 2.5, "in", "quarter", Said.PLAINLY, False, (61, 66)),
            (2.875, 2.875, "in", "fine", Said.PLAINLY, False, (71.02, 75.03)),
            (3, 3, "in", "whole", Said.PLAINLY, True, (71.2, 81.2)),
            (3, 3, "in", "whole", Said.ABOUT, False, (70.2, 82.2)),
            (3, 3, "in", "whole", Said.BIT_OVER, False, (75.2, 85.2)),
            (3, 3, "in", "whole", Said.ALMOST, False, (67.2, 77.2)),
            (3, 3, "in", "whole", Said.OVER, False, (75.2, 99.2)),
            (3, 3, "in", "whole", Said.UNDER, False, (53.2, 77.2)),
            (2, 3, "in", "whole", Said.PLAINLY, False, (47.8, 79.2)),
        ],
    )
    def test_a_length_is_as_wide_as_its_cards(
        self,
        low: float,
        high: float,
        unit: str,
        grain: str,
        said: Said,
        bare: bool,
        expected: tuple[float, float],
    ) -> None:
        width = length(low, high, unit, grain, said, bare)
        assert (width.low, width.high) == pytest.approx(expected, abs=0.011)

    @pytest.mark.parametrize("size", NOMINAL_IN)
    def test_a_nominal_size_told_plainly_in_inches_meets_itself_only(self, size: float) -> None:
        [fact] = read_lengths(Text(f"the opening is {size} inches"))
        assert fact.nominal_in == (size,)

    @pytest.mark.parametrize(
        ("mm", "sizes"),
        [
            (48.79, ()),
            (48.8, (2,)),
            (52.8, (2,)),
            (52.81, ()),
            (61.5, (2.5,)),
            (65.51, ()),
            (74.19, ()),
            (74.2, (3,)),
            (78.2, (3,)),
            (78.21, ()),
            (80.54, ()),
            (80.55, (3.25,)),
        ],
    )
    def test_millimetres_meet_a_size_up_to_two_beside_it(
        self, mm: float, sizes: tuple[float, ...]
    ) -> None:
        assert nominal(Interval(round(mm - 2, 2), round(mm + 2, 2))) == sizes

    def test_a_disc_closes_the_openings_a_quarter_to_one_and_a_quarter_inch_smaller(self) -> None:
        assert closed_by(Interval(57.15, 57.15)) == (2,)  # 2 1/4 in
        assert closed_by(Interval(57.14, 57.14)) == ()
        assert closed_by(Interval(82.55, 82.55)) == (2, 2.5, 3)  # 3 1/4 in
        assert closed_by(Interval(82.56, 82.56)) == (2.5, 3)

    def test_an_age_is_wider_the_older_and_the_vaguer(self) -> None:
        assert [age(n, Said.PLAINLY).below for n in (1, 2, 10, 20)] == [2, 2, 3, 4]
        assert [age(n, Said.ABOUT).below for n in (1, 2, 10, 20)] == [3, 3, 4, 5]
        assert decades(2).above == 8

    def test_a_volume_is_as_wide_as_half_its_last_digit(self) -> None:
        assert volume(1.6, 1.6, 0.1, 3.785411784, Said.PLAINLY) == Interval(1.55, 1.65)
        assert volume(1.28, 1.28, 0.01, 3.785411784, Said.PLAINLY) == Interval(1.26, 1.30)
        assert volume(6, 6, 1, 1.0, Said.PLAINLY) == Interval(1.453, 1.717)
        assert volume(3.5, 3.5, 0.1, 3.785411784, Said.ABOUT) == Interval(3.2, 3.8)


def volumes(letter: str) -> list[tuple[str, str, float, float]]:
    return [(f.name, f.words, f.interval.low, f.interval.high) for f in read_volumes(Text(letter))]


@pytest.mark.parametrize(
    ("letter", "expected"),
    [
        ("1.6 gpf", [("flush", "1.6 gpf", 1.55, 1.65)]),
        ("GPF: 1.6", [("flush", "GPF: 1.6", 1.55, 1.65)]),
        ("1.28gpf, thx", [("flush", "1.28gpf", 1.26, 1.3)]),
        ("it is a 1.28", [("flush", "1.28", 1.26, 1.3)]),
        ("a 1.6 toilet", [("flush", "1.6", 1.55, 1.65)]),
        ("it's one of the 1.6 ones", [("flush", "1.6", 1.55, 1.65)]),
        ("it flushes 3.5, says the lid", [("flush", "3.5", 3.45, 3.55)]),
        ("it flushes 3.5 inches of water away", []),
        ("3.5 gallon flush", [("flush", "3.5 gallon", 3.45, 3.55)]),
        ("3 1/2 gallons", [("flush", "3 1/2 gallons", 3.4, 3.6)]),
        ("five gallons per flush", [("flush", "five gallons per flush", 4.5, 5.5)]),
        ("one point six gallons", [("flush", "one point six gallons", 1.55, 1.65)]),
        ("13 litres", [("flush", "13 litres", 3.302, 3.566)]),
        ("6 lpf", [("flush", "6 lpf", 1.453, 1.717)]),
        ("4.8 L", [("flush", "4.8 L", 1.242, 1.294)]),
        ("6,0 L", [("flush", "6,0 L", 1.559, 1.611)]),
        ("3 imperial gallons", [("flush", "3 imperial gallons", 3.002, 4.203)]),
        ("about 3 gallons", [("flush", "3 gallons", 2.25, 3.75)]),
        ("1.6 or 3.5 gallons", [("flush", "1.6 or 3.5 gallons", 1.55, 3.55)]),
        (
            "3/6 l",
            [("flush_reduced", "3", 0.66, 0.925), ("flush", "6 l", 1.453, 1.717)],
        ),
        (
            "6/3 litre",
            [("flush", "6", 1.453, 1.717), ("flush_reduced", "3 litre", 0.66, 0.925)],
        ),
        (
            "1.6/0.8",
            [("flush", "1.6", 1.55, 1.65), ("flush_reduced", "0.8", 0.75, 0.85)],
        ),
        (
            "dual flush 1.6/1.1 gpf",
            [("flush", "1.6", 1.55, 1.65), ("flush_reduced", "1.1 gpf", 1.05, 1.15)],
        ),
        (
            "9/4.5 litres",
            [("flush", "9", 2.245, 2.51), ("flush_reduced", "4.5 litres", 1.162, 1.215)],
        ),
        (
            "6L full flush and 3L half flush",
            [("flush", "6L", 1.453, 1.717), ("flush_reduced", "3L", 0.66, 0.925)],
        ),
        ("stamped 1 24 03 and 4.8L", [("flush", "4.8L", 1.242, 1.294)]),
        (
            "1.6 GPF / 6 LPF",
            [("flush", "1.6 GPF", 1.55, 1.65), ("flush", "6 LPF", 1.453, 1.717)],
        ),
    ],
)
def test_the_volume_of_a_flush_is_read_in_us_gallons(
    letter: str, expected: list[tuple[str, str, float, float]]
) -> None:
    assert volumes(letter) == expected


@pytest.mark.parametrize(
    ("said", "low", "high"),
    [
        ("between 1.6 and 3.5 gallons per flush", 1.55, 3.55),
        ("somewhere between 1.6 & 3.5 gpf", 1.55, 3.55),
        ("between 3.5 and 1.6 gallons", 1.55, 3.55),
        ("between 1.6 gallons and 3.5 gallons", 1.55, 3.55),
        ("between about 1.6 and 3.5 gallons", 1.3, 3.8),
        ("between 1.6 and about 3.5 gallons", 1.3, 3.8),
        ("1.6 to about 3.5 gallons", 1.3, 3.8),
        ("1.6 or maybe 3.5 gallons", 1.55, 3.55),
        ("between two and three gallons a flush", 1.5, 3.5),
        ("between 6 and 13 litres", 1.453, 3.566),
        # a full flush and a half would be told without 'between'
        ("between 3 and 6 litres", 0.66, 1.717),
        ("between 0.8 and 1.6 gallons", 0.75, 1.65),
    ],
)
def test_a_range_of_flushes_holds_both_ends(said: str, low: float, high: float) -> None:
    assert [(name, *ends) for name, _, *ends in volumes(f"it uses {said}")] == [
        ("flush", low, high)
    ]


@pytest.mark.parametrize(
    ("said", "full", "half"),
    [
        ("1.6 and 0.8 gallons", "1.6", "0.8 gallons"),
        ("6 and 3 litres", "6", "3 litres"),
        ("3 and about 6 litres", "6 litres", "3"),
        ("dual flush, 1.6 and 1.1 gallons", "1.6", "1.1 gallons"),
    ],
)
def test_two_flushes_joined_by_and_are_the_full_and_the_half(
    said: str, full: str, half: str
) -> None:
    assert {name: words for name, words, *_ in volumes(said)} == {
        "flush": full,
        "flush_reduced": half,
    }


@pytest.mark.parametrize(
    "letter",
    [
        "the tank holds 3.5 gallons",
        "the tank holds 3 to 4 gallons",
        "the tank holds anywhere between 3 and 4 gallons",
        "it loses between 2 and 3 gallons",
        "a 3.5 gallon tank",
        "13 litre cistern",
        "I poured in a 2 gallon bucket",
        "it loses 2 gallons a day",
        "wasting 5 gallons an hour",
        "1 gallon of bleach",
        "200 gallons",
        "a 50 gallon water heater",
        "$1.28",
        "1.28%",
        "it costs $1.60 a flush",
        "1.6 inch",
        "model 1.28.4",
        "ABC1.28",
        "a 1994 toilet",
        "the toilet is 6 years old",
    ],
)
def test_a_volume_of_anything_else_is_no_flush(letter: str) -> None:
    assert volumes(letter) == []


FORMS = {
    2.5: ["2.5", "2,5", "2 1/2", "2-1/2", "2½", "2 ½", "2 and a half", "two and a half"],
    3.25: ["3.25", "3 1/4", "3-1/4", "3¼", "3 and a quarter", "three-and-one-quarter"],
    2.875: ["2.875", "2 7/8", "2-7/8", "2⅞", "two and seven eighths"],
    3.0: ["3", "three", "3.0"],
}
UNITS = [" inch", " inches", '"', "''", "in.", "-inch", "inch", "\u00a0inch"]
SAME = [
    (number, form, unit)
    for number, forms in FORMS.items()
    for form in forms
    for unit in UNITS
    if not (form[-1].isalpha() and unit in ("inch", "in."))
]


@pytest.mark.parametrize(("number", "form", "unit"), SAME)
def test_a_length_reads_the_same_however_it_is_written(number: float, form: str, unit: str) -> None:
    [plainly] = read_lengths(Text(f"the opening is {number:g} inch"))
    [fact] = read_lengths(Text(f"the opening is {form}{unit}"))
    assert (fact.name, fact.value, fact.nominal_in) == (
        plainly.name,
        plainly.value,
        plainly.nominal_in,
    )


@given(whole=st.integers(1, 4), eighths=st.integers(1, 7), gap=st.sampled_from([" ", "-", " - "]))
def test_any_eighth_reads_as_its_decimal(whole: int, eighths: int, gap: str) -> None:
    decimal = f"the opening is {whole + eighths / 8:g} inches"
    slashed = f"the opening is {whole}{gap}{eighths}/8 inches"
    assert [f.value for f in read_lengths(Text(slashed))] == [
        f.value for f in read_lengths(Text(decimal))
    ]


def every_fact(text: Text) -> list[Fact]:
    return [*read_lengths(text), *read_volumes(text), *read_years(text, TODAY)]


PIECES = st.sampled_from(
    [
        *("2", "3", "1/2", "½", "-1/2", ".", ",", "'", '"', "’94", "in", "inch", "mm", "cm", "gpf"),
        *(
            "/",
            "to",
            "or",
            "and",
            "between",
            "the",
            "hole",
            "flapper",
            "is",
            "are",
            "ears",
            "litre",
        ),
        *("overflow", "(", ")", "–", "—", "1994", "94", "19", "06/14/92", "JUN", "years", "old"),
        *("ago", "about", "ish", "stamped", "bought", "6", "İ", "ß", "L", "60s", "late", "70s"),
        *("+", "$", "#", "model", "\n", " "),
    ]
)


@given(st.one_of(st.text(max_size=80), st.lists(PIECES, max_size=25).map(" ".join)))
def test_whatever_is_written_the_words_of_a_fact_stand_where_it_says(raw: str) -> None:
    for fact in every_fact(Text(raw)):
        assert fact.words == raw[fact.start : fact.end] != ""


@given(st.lists(PIECES, max_size=25).map("".join))
def test_words_run_together_never_raise(raw: str) -> None:
    for fact in every_fact(Text(raw)):
        assert fact.interval.low <= fact.interval.high


@pytest.mark.parametrize(
    "piece",
    [
        *("2 1/2 ", "1", " ", "1/", "1-", '3" ', "two and a ", "opening is 3 ", "6 14 92 ", "\n "),
        *(". ", "1994 ", "20 years old ", "between 2 and ", "1.6/", "replaced the ", "or 3 ", "½"),
    ],
)
def test_reading_stays_linear_in_a_very_long_letter(piece: str) -> None:
    text = Text((piece * (200_000 // len(piece) + 1))[:200_000])
    began = time.process_time()
    facts = every_fact(text)
    assert time.process_time() - began < 60  # quadratic would take hours
    assert all(fact.end <= 200_000 for fact in facts)
