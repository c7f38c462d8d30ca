"""Years: how they are written, how wide they are, and what they date."""

from __future__ import annotations

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.reading.facts import Fact
from assistant.reading.text import Text
from assistant.reading.years import read_years

TODAY = date(2025, 6, 1)


def years(letter: str, today: date = TODAY) -> list[Fact]:
    return read_years(Text(letter), today)


def told(letter: str, today: date = TODAY) -> list[tuple[str, str, int, int, str | None]]:
    return [
        (f.name, f.words, int(f.interval.low), int(f.interval.high), f.of)
        for f in years(letter, today)
    ]


ONE_YEAR = [
    # a year with nothing told is the toilet's
    ("1994 Marbrook toilet", "made", "1994", 1994, 1994, "stated"),
    ("its a 1994", "made", "1994", 1994, 1994, "stated"),
    ("a 94 toilet", "made", "94", 1994, 1994, "stated"),
    ("my '94 toilet", "made", "'94", 1994, 1994, "stated"),
    ("’94 toilet", "made", "’94", 1994, 1994, "stated"),
    ("toilet from 94", "made", "94", 1994, 1994, "stated"),
    ("toilet from '05", "made", "'05", 2005, 2005, "stated"),
    ("the toilet was made in 1989", "made", "1989", 1989, 1989, "stated"),
    ("the toilet was built in 1989", "made", "1989", 1989, 1989, "stated"),
    ("nineteen ninety-four toilet", "made", "nineteen ninety-four", 1994, 1994, "stated"),
    ("toilet from two thousand eight", "made", "two thousand eight", 2008, 2008, "stated"),
    ("toilet made before 1994", "made", "before 1994", 1900, 1994, "stated"),
    ("pre-1994 toilet", "made", "pre-1994", 1900, 1994, "stated"),
    ("made after 2005", "made", "after 2005", 2005, 2026, "stated"),
    ("toilet made between 1990 and 1995", "made", "1990 and 1995", 1990, 1995, "stated"),
    ("toilet made 1990-95", "made", "1990-95", 1990, 1995, "stated"),
    ("toilet made '94 or '95", "made", "'94 or '95", 1994, 1995, "stated"),
    ("toilet from around 2008", "made", "2008", 2005, 2011, "about"),
    ("toilet is 2008ish", "made", "2008", 2005, 2011, "about"),
    ("toilet from the late 70s", "made", "late 70s", 1974, 1982, "about"),
    ("early nineties toilet", "made", "early nineties", 1988, 1995, "about"),
    ("a mid-eighties toilet", "made", "mid-eighties", 1981, 1989, "about"),
    ("toilet from the 1980s", "made", "1980s", 1978, 1991, "about"),
    ("toilet from the eighties", "made", "eighties", 1978, 1991, "about"),
    ("toilet dates to the early 2000s", "made", "early 2000s", 1998, 2005, "about"),
    ("70's toilet", "made", "70's", 1968, 1981, "about"),
    # ages, counted back from today
    ("about 20 years old", "made", "20 years old", 2000, 2010, "about"),
    ("20 yrs old", "made", "20 yrs old", 2001, 2009, "about"),
    ("a 20 year old toilet", "made", "20 year old", 2001, 2009, "about"),
    ("20-year-old toilet", "made", "20-year-old", 2001, 2009, "about"),
    ("a couple of decades old", "made", "a couple of decades old", 1997, 2013, "about"),
    ("the toilet is 20+ years old", "made", "20+ years old", 1900, 2010, "about"),
    ("over 20 years old", "made", "20 years old", 1900, 2010, "about"),
    ("less than 5 years old", "made", "5 years old", 2017, 2025, "about"),
    ("15-20 years old", "made", "15-20 years old", 2001, 2014, "about"),
    ("twenty years old", "made", "twenty years old", 2001, 2009, "about"),
    ("a few years old", "made", "a few years old", 2018, 2025, "about"),
    ("brand new toilet", "made", "brand new", 2023, 2025, "about"),
    # the stamp in the tank
    ("stamp in the tank says 6 14 92", "made", "6 14 92", 1992, 1992, "stamp"),
    ("JUN 14 1992", "made", "JUN 14 1992", 1992, 1992, "stamp"),
    ('Tank lid inside: "4 SEP 1987".', "made", "4 SEP 1987", 1987, 1987, "stamp"),
    ("06/14/92", "made", "06/14/92", 1992, 1992, "stamp"),
    ("14-JUN-92", "made", "14-JUN-92", 1992, 1992, "stamp"),
    ("1992 06 14 inside the tank", "made", "1992 06 14", 1992, 1992, "stamp"),
    ("1992-06-14", "made", "1992-06-14", 1992, 1992, "stamp"),
    ("date stamped under the lid: 1992", "made", "1992", 1992, 1992, "stamp"),
    ("stamped 92 4 7", "made", "92 4 7", 1992, 1992, "stamp"),
    ("stamped 03 04 05", "made", "03 04 05", 2003, 2005, "stamp"),
    ("the tank is stamped FEB 92", "made", "FEB 92", 1992, 1992, "stamp"),
    ("stamped 6/92 in the clay", "made", "6/92", 1992, 1992, "stamp"),
    ("Looked under the lid. It says 1992.", "made", "1992", 1992, 1992, "stamp"),
    # bought, or put in
    ("bought it last spring", "bought", "last spring", 2024, 2025, "about"),
    ("bought it last year", "bought", "last year", 2024, 2024, "about"),
    ("bought in 2015", "bought", "2015", 2015, 2015, "stated"),
    ("Purchased 06/14/2015", "bought", "06/14/2015", 2015, 2015, "stated"),
    ("bought it two years ago", "bought", "two years ago", 2021, 2025, "about"),
    ("it was installed about 15 years ago", "bought", "15 years ago", 2005, 2015, "about"),
    ("had it for 10 years", "bought", "10 years", 2012, 2018, "about"),
    ("Purchased in Jan '14", "bought", "Jan '14", 2014, 2014, "stated"),
    ("remodeled the bathroom in 2003", "bought", "2003", 2003, 2003, "stated"),
    ("Replaced the toilet in 2010", "bought", "2010", 2010, 2010, "stated"),
    ("my dad put this toilet in in 1978", "bought", "1978", 1978, 1978, "stated"),
    # the flush valve
    ("new flush valve in 2015", "valve_put_in", "2015", 2015, 2015, "stated"),
    ("I replaced the flush valve 5 years ago", "valve_put_in", "5 years ago", 2018, 2022, "about"),
    ("flush valve was replaced in 2012", "valve_put_in", "2012", 2012, 2012, "stated"),
    # a house dates nothing firmly
    ("house from 1986", "house", "1986", 1986, 1986, "stated"),
    ("built in 1986", "house", "1986", 1986, 1986, "stated"),
    ("built in 86", "house", "86", 1986, 1986, "stated"),
    ("a 1928 bungalow", "house", "1928", 1928, 1928, "stated"),
    ("we moved in 2003", "house", "2003", 2003, 2003, "stated"),
    ("lived here since 1999", "house", "1999", 1999, 1999, "stated"),
    ("bought the house in 2004", "house", "2004", 2004, 2004, "stated"),
    ("a 100 year old house", "house", "100 year old", 1909, 1941, "about"),
    # nobody said what it dates
    ("since 1998", "year", "1998", 1998, 1998, "stated"),
    ("1998", "year", "1998", 1998, 1998, "stated"),
]


@pytest.mark.parametrize(("letter", "name", "words", "low", "high", "of"), ONE_YEAR)
def test_a_year_is_read_with_what_it_dates(
    letter: str, name: str, words: str, low: int, high: int, of: str
) -> None:
    assert told(letter) == [(name, words, low, high, of)]
    assert years(letter)[0].unit == "year"


@pytest.mark.parametrize(
    ("letter", "expected"),
    [
        (
            "The toilet was made in 1989, the house in 1991.",
            [("made", "1989"), ("house", "1991")],
        ),
        (
            "toilet bought in 2015 and house built 1960",
            [("bought", "2015"), ("house", "1960")],
        ),
        (
            "one toilet from 1994 and one from 2012",
            [("made", "1994"), ("made", "2012")],
        ),
        (
            "the house is from the 50s but the toilet was replaced 10 years ago",
            [("house", "50s"), ("bought", "10 years ago")],
        ),
        (
            "It is from 1997, tank lid says 7 12 96 inside",
            [("made", "1997"), ("made", "7 12 96")],
        ),
        (
            "toilet replaced 2016 flapper replaced 2020 fill valve 2023",
            [("bought", "2016")],
        ),
        (
            "it was put in about 1990 by the owner before, we came in 2001",
            [("bought", "1990"), ("house", "2001")],
        ),
        ("We bought it in 2015, it's a 1994", [("bought", "2015"), ("made", "1994")]),
        (
            "We bought this toilet 06/14/1995, the tank is stamped 04/02/1994",
            [("bought", "06/14/1995"), ("made", "04/02/1994")],
        ),
        ("toilet 1.6 gpf, house built 1995", [("house", "1995")]),
        ("made 1995 house built 1990", [("made", "1995"), ("house", "1990")]),
        ("made in the late eighties, early nineties", [("made", "late eighties, early nineties")]),
        ("an old toilet, 1950s or 60s", [("made", "1950s or 60s")]),
        ("I'm 80 years old and the toilet is 40 years old", [("made", "40 years old")]),
        (
            "replaced the flapper in 2019 but the toilet is from 1994",
            [("made", "1994")],
        ),
    ],
)
def test_each_year_keeps_its_own_event(letter: str, expected: list[tuple[str, str]]) -> None:
    assert [(fact.name, fact.words) for fact in years(letter)] == expected


@pytest.mark.parametrize(
    "letter",
    [
        "We bought this toilet June 1995",
        "We bought this toilet 06/14/1995",
        "We bought this toilet on 06/14/1995",
        "We bought this toilet (06/14/1995)",
        "Bought the toilet 1995",
        "Bought the toilet 1995, flapper leaks",
        "Bought the toilet in 1995 flapper leaks",
        "we bought this 1.6 gpf toilet back in 1995",
        "purchased a new toilet 1995",
        "we ordered this toilet June 1995",
        "Got the toilet 1995",
        "got a new loo in early 1995",
        "picked up this commode 06/14/1995",
        "put in this toilet 1995",
        "we put our toilet in June 1995",
        "my dad fitted the loo 1995",
        "a plumber installed the upstairs toilet 1995",
        "we had a plumber install this toilet in 1995",
        "replaced the whole toilet 1995",
        "Replaced the toilet\n1995",
        "we had this toilet put in June 1995",
        "toilet bought 06/14/1995",
    ],
)
def test_a_date_after_a_toilet_that_was_bought_is_of_buying(letter: str) -> None:
    assert [(name, *rest) for name, _, *rest in told(letter)] == [("bought", 1995, 1995, "stated")]


@pytest.mark.parametrize(
    "letter",
    [
        "I bought the toilet around 2008",
        "we installed this toilet circa 2008",
        "put in a new toilet about 2008",
        "got this toilet sometime around 2008",
        "replaced the tank around 2008",
    ],
)
def test_about_when_a_toilet_was_bought_is_of_buying(letter: str) -> None:
    assert told(letter) == [("bought", "2008", 2005, 2011, "about")]


@pytest.mark.parametrize(
    ("letter", "of"),
    [
        ("toilet 1995", "stated"),
        ("the toilet is from 1995", "stated"),
        ("bought this toilet from 1995", "stated"),
        ("I've got this toilet 1995", "stated"),
        ("I got a toilet, 1995", "stated"),
        ("I need to replace the toilet 1995", "stated"),
        ("we never replaced the toilet, 1995", "stated"),
        ("replaced the toilet 1995 flapper", "stated"),
        ("I bought this toilet, 1995 model", "stated"),
        ("I bought a flapper for my toilet 1995", "stated"),
        ("Bought a flapper. Toilet 1995", "stated"),
        ("this toilet, June 1995", "stamp"),
        ("I bought a flapper for my toilet, JUN 14 1995", "stamp"),
        ("We bought this toilet and the lid is stamped 06/14/1995", "stamp"),
        ("We bought this toilet, 06/14/1995 stamped in the tank", "stamp"),
        # 'made' and 'built' count for more than what is asked for next
        ("made 1995", "stated"),
        ("made 1995 needs a flapper", "stated"),
        ("made in 1995 flapper leaks", "stated"),
        ("it was made 1995 needs a seal", "stated"),
        ("toilet built 1995", "stated"),
        ("toilet built 1995 needs a flapper", "stated"),
        ("toilet 1.6 gpf built 1995 needs a flapper", "stated"),
        ("toilet, 3.5 gallons per flush, built in 1995", "stated"),
        ("toilet 1.6 gpf 1995 flapper leaks", "stated"),
    ],
)
def test_a_year_of_making_stays_one(letter: str, of: str) -> None:
    assert [(name, *rest) for name, _, *rest in told(letter)] == [("made", 1995, 1995, of)]


@pytest.mark.parametrize(
    "letter",
    [
        "replaced the flapper in this toilet June 2015",
        "put a new flush valve in my toilet 06/14/2015",
        "replaced the flapper in 2019",
        "new flapper 2 years ago",
        "replaced the fill valve about 2 years ago",
        "the flapper is 20 years old",
        "a 20 year old flapper",
        "I am 72 years old",
        "my mother is 90 years old",
        "a 5 year old kid flushed a toy",
        "My 3 year old dropped a toy in",
        "my name is Dana, 58 years old and never fixed a toilet",
        "my water bill doubled since 2024",
        "bought it on Jan 14",
        "in my 70s",
        "leaking since 2019",
        "it started leaking last week",
        "it has been running for 3 years",
        "5 years warranty",
        "1994 Elm Street",
        "2008 N. Maple Dr",
        "model 1994",
        "model number 2015",
        "part # 1998",
        "order 2015",
        "order no. 2015",
        "$1999",
        "1999 dollars",
        "call 555-2004",
        "937 555 2003",
        "zip 45 2010",
        "May 3, 2025",
        "i called on 3/14/2025",
        "it takes 60s to fill",
        "in 10 minutes",
        "at 2 am",
        "2050",
        "1850",
        "2000 gallons",
        "a Torvel 2000",
        "AB1994",
        "1994-B",
        "sizes 2 3 4",
        "I tried 3 4 12",
        "60 degrees",
    ],
)
def test_a_number_about_something_else_is_no_year(letter: str) -> None:
    assert told(letter) == []


@pytest.mark.parametrize(
    ("today", "year"),
    [(date(2025, 6, 1), 2026), (date(2024, 6, 1), 1926), (date(2031, 1, 1), 2026)],
)
def test_two_digits_are_never_later_than_next_year(today: date, year: int) -> None:
    assert told("toilet from '26", today)[0][2] == year


@given(st.integers(1950, 2023), st.sampled_from(["{m}/{d}/{y}", "{y}-{m}-{d}", "{m} {d} {y}"]))
def test_a_stamp_gives_its_year_exactly(year: int, form: str) -> None:
    stamp = form.format(y=year, m="06", d="14")
    assert told(f"stamped {stamp} in the tank") == [("made", stamp, year, year, "stamp")]


@given(st.integers(1, 120))
def test_an_age_always_holds_the_year_it_counts_to(age: int) -> None:
    [fact] = years(f"the toilet is {age} years old")
    assert TODAY.year - age in fact.interval
    assert fact.interval.high <= TODAY.year


def test_what_a_lid_says_dates_only_the_stamp() -> None:
    letter = "a two piece from I think 1997, tank lid says 7 12 96 inside"
    assert [(fact.words, fact.of) for fact in years(letter)] == [
        ("1997", "stated"),
        ("7 12 96", "stamp"),
    ]
