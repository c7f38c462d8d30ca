"""Our reading of years against the outside: `dateparser`, the calendar, and the law.

`dateparser` finds dates in any English text. Where it and we read the same phrase, the year that
it gives lies in our interval, but for the differences listed here with their reasons. What the
law says of flush volumes is quoted from its text; that a year never tells a volume is the law's
other half, and holds for all years.
"""

from __future__ import annotations

import re
import warnings
from datetime import date, datetime

import pint
import pytest
from demonstration import FOLDER, shop
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.answers.compose.case import Audience
from assistant.answers.reply import reply
from assistant.reading.facts import Fact, Facts
from assistant.reading.letters import letter_from_text
from assistant.reading.quantities import read_volumes
from assistant.reading.read import read
from assistant.reading.text import Text
from assistant.reading.years import read_years

with warnings.catch_warnings():
    warnings.simplefilter("ignore")
    from dateparser.search import search_dates

TODAY = date(2026, 11, 25)
quiet = settings(deadline=None)
UNITS = pint.UnitRegistry()


def ours(phrase: str) -> list[Fact]:
    return read_years(Text(phrase), TODAY)


def told(phrase: str) -> str:
    """The years that we read, in words."""
    return ", ".join(f"{f.interval.low:g}..{f.interval.high:g}" for f in ours(phrase)) or "nothing"


def theirs(phrase: str) -> tuple[int, ...]:
    """The years of the dates that `dateparser` finds in an English phrase written `TODAY`."""
    written = {
        "RELATIVE_BASE": datetime(TODAY.year, TODAY.month, TODAY.day),
        "DATE_ORDER": "MDY",
        "PREFER_DATES_FROM": "past",
    }
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        found = search_dates(phrase, languages=["en"], settings=written)
    return tuple(when.year for _, when in found or ())


# Beside a date that a maker pressed or a customer wrote out, both give the year itself.
SAME_YEAR = [
    ("the tank is stamped JUN 14 1988", 1988),
    ("stamp in the tank: 14 June 1988", 1988),
    ("inside the lid it says 06/14/88", 1988),
    ("tank stamped 6-14-88", 1988),
    ("tank stamped 6.14.88", 1988),
    ("tank stamped 6 14 88", 1988),
    ("tank stamped 88 6 14", 1988),
    ("tank stamped 1988-06-14", 1988),
    ("tank stamped 1988/06/14", 1988),
    ("tank stamped 14-JUN-88", 1988),
    ("tank stamped SEPT 4, 1987", 1987),
    ("tank stamped the 4th of September 1987", 1987),
    ("tank stamped JUN 88", 1988),
    ("tank stamped June '88", 1988),
    ("tank stamped 6/88", 1988),
    ("tank stamped 06/1988", 1988),
    ("tank stamped 6/14/68", 1968),
    ("tank stamped 6/14/05", 2005),
    ("toilet dated 1/2/1995", 1995),
    ("made in March 1994", 1994),
    ("the toilet was made in 1976", 1976),
    ("the toilet is from 1976", 1976),
    ("toilet from '94", 1994),
    ("a 94 toilet", 1994),
    ("bought it in June 2015", 2015),
    ("bought it on June 14, 2015", 2015),
    ("bought this toilet June 2015", 2015),
    ("bought this toilet 06/14/2015", 2015),
    ("bought it last year", 2025),
    ("installed on 3 May 2004", 2004),
    ("flush valve replaced June 2012", 2012),
    ("house built in 1962", 1962),
]

# Counted back from the day of the letter, or hedged: its year is one, ours a stretch round it.
ROUND_ABOUT = [
    ("toilet made around 1976", 1976),
    ("toilet made circa 1976", 1976),
    ("installed this toilet circa 2001", 2001),
    ("toilet from 2000 or so", 2000),
    ("bought it two years ago", 2024),
    ("bought it fifteen years ago", 2011),
    ("bought it about 20 years ago", 2006),
    ("bought it 30 years ago", 1996),
    ("bought it a decade ago", 2016),
    ("bought it two decades ago", 2006),
    ("bought it 18 months ago", 2025),
    ("bought it yesterday", 2026),
    ("installed 12 years back", 2014),
    ("the toilet is 20 years old", 2006),
    ("the toilet is about 20 years old", 2006),
    ("tank stamped 03 04 05", 2005),
    ("tank stamped 10-11-12", 2012),
]
_REACH = 8  # years: what two decades may be off

DIFFERENCES = [
    # the phrase, what we read, what `dateparser` reads, and why
    ("toilet from the late 70s", "1974..1982", (2026,), "To it, 70 seconds; to us, a decade."),
    ("toilet from the 1980s", "1978..1991", (2026,), "To it, so many seconds ago."),
    ("the house is from the 50s", "1948..1961", (2026,), "Likewise."),
    ("toilet from the eighties", "1978..1991", (), "It knows no decade in words."),
    ("an early nineties toilet", "1988..1995", (), "Nor a part of one."),
    ("toilet from nineteen ninety-four", "1994..1994", (), "Nor a year in words."),
    ("toilet from 94", "1994..1994", (), "Two bare digits are a year only beside our words."),
    ("tank stamped 88", "1988..1988", (), "Two digits of a stamp, likewise."),
    ("my toilet is 2008ish", "2005..2011", (), "'-ish' hides the number from it."),
    ("toilet made 1990-95", "1990..1995", (), "A stretch of years with the century said once."),
    ("toilet made between 1990 and 1995", "1990..1995", (1990, 1995), "One stretch, or two years."),
    ("toilet from 2000 or 2001", "2000..2001", (2000, 2001), "Likewise: one toilet has one year."),
    ("toilet made before 1994", "1900..1994", (1994,), "A limit; it leaves 'before' aside."),
    ("toilet made after 2005", "2005..2027", (2005,), "A limit; it leaves 'after' aside."),
    ("bought it over 20 years ago", "1900..2011", (2006,), "A limit; it leaves 'over' aside."),
    ("the toilet is 40+ years old", "1900..1994", (1940,), "To it '40+' is the year 1940."),
    ("bought it a few years ago", "2019..2026", (), "It counts only with numbers."),
    ("bought it a couple of years ago", "2022..2026", (), "Likewise, though a couple is two."),
    ("bought it last spring", "2025..2026", (), "It knows no seasons."),
    ("tank stamped 02/30/88", "1988..1988", (), "No such day; the year of a worn stamp stands."),
    ("we moved in in 2003", "2003..2003", (2026, 2003), "To it 'we' is short for Wednesday."),
    (
        "I may need a flapper for my 1988 toilet",
        "1988..1988",
        (2026, 1988),
        "To it 'may' is the month.",
    ),
    (
        "tank stamped 11 30 27",
        "2027..2027",
        (1927,),
        "Two digits: we allow next year, whatever the day; it allows no day to come.",
    ),
    ("replaced the flapper in 2019", "nothing", (2019,), "A part wears out and dates nothing."),
    ("model 1994", "nothing", (1994,), "A model's number is no year."),
]
PHRASES = [phrase for phrase, *_ in (*SAME_YEAR, *ROUND_ABOUT, *DIFFERENCES)]


def agree(phrase: str) -> bool:
    """Whether both read one date, and its year lies in our interval, which is not too wide."""
    found, years = ours(phrase), theirs(phrase)
    return len(found) == len(years) == 1 and all(
        year - _REACH <= fact.interval.low <= year <= fact.interval.high <= year + _REACH
        for fact, year in zip(found, years, strict=True)
    )


@pytest.mark.parametrize(("phrase", "year"), SAME_YEAR)
def test_a_date_written_out_has_one_year(phrase: str, year: int) -> None:
    assert theirs(phrase) == (year,)
    assert told(phrase) == f"{year}..{year}"


@pytest.mark.parametrize(("phrase", "year"), ROUND_ABOUT)
def test_a_year_said_loosely_lies_in_our_stretch(phrase: str, year: int) -> None:
    assert theirs(phrase) == (year,)
    assert agree(phrase), told(phrase)


@pytest.mark.parametrize(("phrase", "we", "they", "because"), DIFFERENCES)
def test_where_the_readers_differ_each_reads_what_is_listed(
    phrase: str, we: str, they: tuple[int, ...], because: str
) -> None:
    assert (told(phrase), theirs(phrase)) == (we, they), because


def test_the_readers_differ_in_the_phrases_listed_and_in_no_other() -> None:
    assert [p for p in PHRASES if not agree(p)] == [phrase for phrase, *_ in DIFFERENCES]


DAYS = st.dates(date(1950, 1, 1), date(2025, 12, 31))
FORMS = ["%b %d %Y", "%d %B %Y", "%B %d, %Y", "%m/%d/%Y", "%Y-%m-%d", "%d-%b-%y", "%b %d %y"]


@quiet
@given(DAYS, st.sampled_from(FORMS))
def test_any_day_that_a_maker_stamps_has_its_year(day: date, form: str) -> None:
    stamp = f"tank stamped {day.strftime(form).upper()}"
    assert theirs(stamp) == (day.year,)
    assert told(stamp) == f"{day.year}..{day.year}"


@quiet
@given(DAYS, st.sampled_from(["%m/%d/%y", "%m-%d-%y", "%m %d %y"]))
def test_a_stamp_of_three_small_numbers_may_have_its_year(day: date, form: str) -> None:
    stamp = f"tank stamped {day.strftime(form)}"
    [fact] = ours(stamp)
    assert theirs(stamp) == (day.year,)
    assert day.year in fact.interval


@quiet
@given(st.integers(1, 99))
def test_any_number_of_years_ago(count: int) -> None:
    phrase = f"bought it {count} years ago"
    [fact] = ours(phrase)
    assert theirs(phrase) == (TODAY.year - count,)
    assert TODAY.year - count in fact.interval


# --- What the law says, and what no year says -----------------------------------------------

# Energy Policy Act of 1992, Pub. L. 102-486, section 123; 10 CFR 430.32(q): gravity tank-type
# toilets, made after the first of January 1994.
ACT_OF, FIRST_DAY, LAWFUL_GALLONS, LAWFUL_LITRES = 1992, (1, "January", 1994), 1.6, 6.0
# EPA, WaterSense Specification for Tank-Type Toilets, 'effective flush volume'.
LABEL_GALLONS, LABEL_LITRES = 1.28, 4.8
USUAL_BEFORE = 3.5  # gallons: common practice, no source

_NOTE = FOLDER / "knowledge" / "notes" / "flush-volume-and-the-law.md"
_SAYS_GALLONS = re.compile(r"(\d+(?:\.\d+)?) gallons?\b")
# A number of gallons or litres in any spelling, in digits or in words.
_FIGURE = re.compile(
    r"(?:\d|[½¼¾]|\b(?:one|two|three|four|five|six|seven|half|quarter))[ -]?"
    r"(?:gal(?:lon)?s?|gpf|lpf|lit(?:re|er)s?|l)\b",
    re.IGNORECASE,
)


def worth(gallons: float) -> float:
    """US gallons in litres, as `pint` converts them."""
    return float(UNITS.Quantity(gallons, "gallon").to("litre").magnitude)


def section(heading: str) -> str:
    """The words under a heading of the note on the law."""
    return _NOTE.read_text(encoding="utf-8").split(f"## {heading}\n")[1].split("\n## ")[0]


class TestTheLaw:
    def test_the_note_gives_the_limit_its_day_and_its_sources(self) -> None:
        words, (day, month, year) = section("What the law says"), FIRST_DAY
        assert [float(n) for n in _SAYS_GALLONS.findall(words)] == [LAWFUL_GALLONS]
        assert f"{day} {month} {year} may use at most {LAWFUL_GALLONS} gallons" in words
        assert f"Energy Policy Act of {ACT_OF}" in words
        assert "10 CFR 430.32(q)" in words

    def test_the_note_gives_what_the_label_asks_for(self) -> None:
        words = section("What the WaterSense label asks for")
        assert [float(n) for n in _SAYS_GALLONS.findall(words)] == [LABEL_GALLONS]

    def test_the_note_turns_gallons_into_litres_as_pint_does(self) -> None:
        words = section("Where to find the volume")
        assert worth(1) == pytest.approx(
            float(re.findall(r"about ([\d.]+) litres", words)[0]), abs=0.05
        )
        pairs = re.findall(r"([\d.]+) gallons (?:are )?about (\d+)", words)
        assert [float(gallons) for gallons, _ in pairs] == [LAWFUL_GALLONS, USUAL_BEFORE]
        assert all(round(worth(float(gallons))) == int(litres) for gallons, litres in pairs)

    @pytest.mark.parametrize(
        ("gallons", "litres"), [(LAWFUL_GALLONS, LAWFUL_LITRES), (LABEL_GALLONS, LABEL_LITRES)]
    )
    def test_the_litres_of_the_law_are_its_gallons_and_we_read_them_as_such(
        self, gallons: float, litres: float
    ) -> None:
        assert litres == pytest.approx(worth(gallons), abs=0.06)
        for words in (f"{gallons} gpf", f"{litres} lpf", f"{litres} litres per flush"):
            [fact] = read_volumes(Text(words))
            assert gallons in fact.interval, words

    def test_the_limit_and_the_label_are_never_taken_for_each_other(self) -> None:
        [lawful], [label] = (
            read_volumes(Text(f"{gallons} gpf")) for gallons in (LAWFUL_GALLONS, LABEL_GALLONS)
        )
        assert not lawful.interval.meets(label.interval)


OF_A_YEAR = [
    "The toilet was made in {y}.",
    "my toilet is from {y}, it runs",
    "a {y} toilet",
    "a '{yy} low-flow toilet",
    "a water saver from {y}",
    "{y} low flush toilet, weak flush",
    "made {y}, half flush sticks",
    "tank stamped JUN 14 {y}",
    "tank stamped 6/14/{yy}",
    "6 14 {yy} in the tank",
    "since {y} it flushes twice",
    "flushes badly, {y}/{yy}",
    "house built {y}, two toilets",
    "installed in {y}, about {age} years old",
    "{age} years old and it takes a full flush to clear",
]
YEARS = st.integers(1900, TODAY.year + 1)


def written(letter: str, year: int) -> str:
    """A letter of `OF_A_YEAR` with its year in it."""
    return letter.format(y=year, yy=f"{year % 100:02}", age=max(1, TODAY.year - year))


def facts(letter: str) -> Facts:
    return read(letter_from_text(letter), shop().names, TODAY)


@quiet
@given(st.sampled_from(OF_A_YEAR), YEARS)
def test_no_year_is_read_as_a_flush_volume(letter: str, year: int) -> None:
    assert facts(written(letter, year)).named("flush", "flush_reduced") == ()


@pytest.mark.parametrize("words", ["made in 1995, 1.6 gpf", "a 1995 toilet, 6 lpf on the seat"])
def test_a_volume_told_beside_a_year_is_read(words: str) -> None:
    assert facts(words).has("flush")


# No table has this maker or this model.
UNLISTED = ["", "Ulmbraith", "Ulmbraith Tovelin", "no name on it"]
WISHES = [
    "Which flapper do I need?",
    "It runs all night.",
    "How much does it use?",
    "How many gallons is a flush of it?",
    "Is it a low flush one?",
]


@quiet
@given(
    letter=st.sampled_from(OF_A_YEAR),
    year=YEARS,
    maker=st.sampled_from(UNLISTED),
    wish=st.sampled_from(WISHES),
    audience=st.sampled_from(["customers", "staff"]),
)
def test_an_answer_to_a_year_alone_says_no_volume(
    letter: str, year: int, maker: str, wish: str, audience: Audience
) -> None:
    message = letter_from_text(f"{maker}. {written(letter, year)} {wish}".strip(" ."))
    text = reply(shop(), message, audience=audience, today=TODAY).text
    assert text.strip()
    assert _FIGURE.findall(text) == []


@pytest.mark.parametrize(
    "words",
    [
        "at most 1.6 gallons a flush",
        "1.28gpf",
        "it uses 6 L",
        "3½ gallons",
        "a three-gallon flush",
        "about 13 litres",
    ],
)
def test_a_volume_said_would_be_seen(words: str) -> None:
    assert _FIGURE.search(words)
