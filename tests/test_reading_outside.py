"""Our reading of sizes and volumes against the outside: NIST, `pint`, and `quantulum3`.

What each unit is worth is looked up in NIST SP 811 and in `pint`, which share nothing with our
tolerances. `quantulum3` is a parser of quantities in any English text: where it and we read the
same phrase, the two readings agree, but for the differences listed here with their reasons. Its
trained classifier is left off, so that it needs no file of its own and gives the same everywhere.
"""

from __future__ import annotations

import warnings
from functools import cache
from unittest import mock

import pint
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.reading.facts import Fact
from assistant.reading.measured import read_lengths
from assistant.reading.quantities import read_volumes
from assistant.reading.text import Text
from assistant.reading.tolerances import MM_PER_IN

with warnings.catch_warnings():
    warnings.simplefilter("ignore")  # it warns where its classifier's libraries are missing
    from quantulum3 import classifier, parser

# NIST Special Publication 811, Guide for the Use of the SI (2008), appendix B.8.
INCH_IN_MM = 25.4  # exact
GALLON_IN_LITRES = 3.785412  # the U.S. gallon of 231 cubic inches, rounded there to 7 figures
IMPERIAL_GALLON_IN_LITRES = 4.54609  # exact

UNITS = pint.UnitRegistry()
quiet = settings(deadline=None)


def worth(number: float, unit: str, of: str) -> float:
    """How much a quantity is in another unit, as `pint` converts it."""
    return float(UNITS.Quantity(number, unit).to(of).magnitude)


def facts(phrase: str) -> list[Fact]:
    """The lengths and the flush volumes that we read, in their order in the phrase."""
    text = Text(phrase)
    return sorted([*read_lengths(text), *read_volumes(text)], key=lambda fact: fact.start)


def the_only(phrase: str) -> Fact:
    [fact] = facts(phrase)
    return fact


def middle(fact: Fact) -> float:
    return (fact.interval.low + fact.interval.high) / 2


class TestUnits:
    def test_pint_and_we_hold_what_nist_prints(self) -> None:
        assert worth(1, "inch", "mm") == pytest.approx(INCH_IN_MM, abs=1e-12)
        assert MM_PER_IN == INCH_IN_MM
        assert worth(1, "gallon", "litre") == pytest.approx(GALLON_IN_LITRES, abs=5e-7)
        assert worth(1, "imperial_gallon", "litre") == pytest.approx(
            IMPERIAL_GALLON_IN_LITRES, abs=1e-12
        )

    @pytest.mark.parametrize(
        ("phrase", "number", "unit"),
        [
            ("2 in", 2, "inch"),
            ("2 1/2 inches", 2.5, "inch"),
            ('3 1/4"', 3.25, "inch"),
            ("2 7/8 in.", 2.875, "inch"),
            ("7 cm", 7, "cm"),
            ("7.6 cm", 7.6, "cm"),
            ("63 mm", 63, "mm"),
            ("three and a half inches", 3.5, "inch"),
        ],
    )
    def test_a_length_is_read_round_what_it_is_in_mm(
        self, phrase: str, number: float, unit: str
    ) -> None:
        fact = the_only(phrase)
        assert fact.unit == "mm"
        assert worth(number, unit, "mm") in fact.interval
        assert middle(fact) == pytest.approx(worth(number, unit, "mm"), abs=0.011)

    @pytest.mark.parametrize(
        ("phrase", "number", "unit"),
        [
            ("6 litre flush", 6, "litre"),
            ("6 lpf", 6, "litre"),
            ("13 L", 13, "litre"),
            ("4.8 L", 4.8, "litre"),
            ("9 liters per flush", 9, "litre"),
            ("1.28 gpf", 1.28, "gallon"),
            ("3 1/2 gallons", 3.5, "gallon"),
            ("1.5 imperial gallons", 1.5, "imperial_gallon"),
            ("2 uk gallons per flush", 2, "imperial_gallon"),
        ],
    )
    def test_a_volume_is_read_round_what_it_is_in_us_gallons(
        self, phrase: str, number: float, unit: str
    ) -> None:
        fact = the_only(phrase)
        assert (fact.name, fact.unit) == ("flush", "gal")
        assert worth(number, unit, "gallon") in fact.interval
        assert middle(fact) == pytest.approx(worth(number, unit, "gallon"), abs=0.0011)

    @quiet
    @given(
        eighths=st.integers(10, 40), unit=st.sampled_from([" inches", " inch", '"', " in.", "in"])
    )
    def test_any_size_in_inches(self, eighths: int, unit: str) -> None:
        fact = the_only(f"the opening is {eighths / 8:g}{unit}")
        assert middle(fact) == pytest.approx(worth(eighths / 8, "inch", "mm"), abs=0.011)

    @quiet
    @given(st.integers(32, 127))
    def test_any_size_in_millimetres_or_centimetres(self, mm: int) -> None:
        in_mm, in_cm = the_only(f"the hole is {mm} mm"), the_only(f"the hole is {mm / 10:g} cm")
        assert middle(in_mm) == pytest.approx(mm, abs=0.011)
        assert middle(in_cm) == pytest.approx(worth(mm / 10, "cm", "mm"), abs=0.011)

    @quiet
    @given(st.integers(12, 39))
    def test_one_hole_measured_with_two_rules_is_one_hole(self, eighths: int) -> None:
        mm, inches = worth(eighths / 8, "inch", "mm"), f"{eighths / 8:g} inches"
        told = [inches, f"{mm:.0f} mm", f"{mm / 10:.1f} cm", f"{mm / 10:.0f} cm"]
        assert all(mm in the_only(f"the hole is {size}").interval for size in told)

    @quiet
    @given(
        tenths=st.integers(16, 300),
        unit=st.sampled_from([" litre flush", " lpf", "L per flush", " liters a flush", " l"]),
    )
    def test_any_flush_in_litres(self, tenths: int, unit: str) -> None:
        litres = tenths / 10
        fact = the_only(f"{litres:g}{unit}")
        assert middle(fact) == pytest.approx(worth(litres, "litre", "gallon"), abs=0.0011)
        room = worth(fact.interval.high - middle(fact), "gallon", "litre")
        assert room == pytest.approx(0.1 if tenths % 10 else 0.5, abs=0.004)  # common practice

    @quiet
    @given(st.integers(80, 500))
    def test_one_flush_told_in_gallons_and_in_litres_is_one_flush(self, hundredths: int) -> None:
        gallons = hundredths / 100
        litres = worth(gallons, "gallon", "litre")
        assert gallons in the_only(f"{gallons:.2f} gpf").interval
        assert gallons in the_only(f"{litres:.1f} lpf").interval
        assert gallons in the_only(f"{litres:.0f} litres per flush").interval


# What `quantulum3` calls a unit; the names are `pint`'s too. Any other is no length or volume.
_TO = {"inch": "mm", "centimetre": "mm", "millimetre": "mm", "gallon": "gal", "litre": "gal"}
# How far beyond the number told our interval may reach and still be the same reading: 'about' a
# whole number of centimetres is 8 mm either way, 'about' a whole number of gallons 3/4.
_REACH = {"mm": 8.011, "gal": 0.751}

BOTH_READ = [
    # the phrase, and the quantities in it, as `quantulum3` reads them
    ("the opening is 2 inches", "2 inch"),
    ("the opening is 2 in. across", "2 inch"),
    ("the opening is 2 1/2 inches", "2.5 inch"),
    ("the opening is 2½ inches", "2.5 inch"),
    ("the opening is 2 ½ inches", "2.5 inch"),
    ("the opening is 2.5in", "2.5 inch"),
    ("the hole is 2⅞ inches", "2.875 inch"),
    ("the hole is 3 1/16 inches", "3.0625 inch"),
    ("opening: 3 1/4 in", "3.25 inch"),
    ("I need a 3-inch flapper", "3 inch"),
    ("I need a three inch flapper", "3 inch"),
    ("a two and a half inch hole", "2.5 inch"),
    ("2 and a half inches across", "2.5 inch"),
    ("three and a quarter inches across", "3.25 inch"),
    ("the hole is about 3 inches", "3 inch"),
    ("the hole is between 2 and 3 inches", "2..3 inch"),
    ("the hole is 75-80 mm", "75..80 millimetre"),
    ("the hole is 75 to 80 mm", "75..80 millimetre"),
    ("the opening is 63mm", "63 millimetre"),
    ("the opening is 76 millimeters", "76 millimetre"),
    ("the opening is 6.3 cm", "6.3 centimetre"),
    ("the opening is about 8 centimetres", "8 centimetre"),
    ("3 inches (76 mm) across the hole", "3 inch, 76 millimetre"),
    ("the hole is 3 inches, the disc 3 1/2 inches", "3 inch, 3.5 inch"),
    ("the old disc measures 95 mm", "95 millimetre"),
    ("the ears are 3 3/4 inches apart", "3.75 inch"),
    ("the overflow tube is 1 1/8 inches", "1.125 inch"),
    ("1.6 gallons per flush", "1.6 gallon"),
    ("1.28 gal per flush", "1.28 gallon"),
    ("3 1/2 gallons a flush", "3.5 gallon"),
    ("it uses three and a half gallons", "3.5 gallon"),
    ("about five gallons a flush", "5 gallon"),
    ("it flushes 3 to 4 gallons", "3..4 gallon"),
    ("it uses between 1.6 and 3.5 gallons per flush", "1.6..3.5 gallon"),
    ("6 litre flush", "6 litre"),
    ("6L flush", "6 litre"),
    ("4.8 L per flush", "4.8 litre"),
    ("13 litres", "13 litre"),
    ("1.6 gallons (6 litres)", "1.6 gallon, 6 litre"),
]

DIFFERENCES = [
    # the phrase, what we read, what `quantulum3` reads, and why
    (
        'the drain hole is 2" across',
        "opening 47.8..53.8 mm",
        "2 of another kind",
        "The sign of inches is also that of seconds of arc; nobody gives a hole in degrees.",
    ),
    (
        "the hole is 3''",
        "opening 73.2..79.2 mm",
        "3 of another kind",
        "Two strokes are typed for the sign of inches; to it, minutes of arc twice.",
    ),
    (
        "the opening is 2-1/2 inches",
        "opening 61..66 mm",
        "nothing",
        "The trade writes a hyphen before the fraction; it makes no number of that.",
    ),
    (
        "the opening is 2,5 inches",
        "opening 61..66 mm",
        "2 of nothing, 5 inch",
        "A comma is a decimal point in most of Europe; to it, the end of a clause.",
    ),
    (
        "two and one half inches across",
        "length 61..66 mm",
        "2 inch, 0.5 inch",
        "Spoken with 'one half' it is one number; it reads two lengths.",
    ),
    (
        "two inches and a half across the hole",
        "opening 61..66 mm",
        "2 inch, 0.5 of nothing",
        "The fraction said after the unit belongs to it.",
    ),
    (
        "the hole is 2 or 3 inches",
        "opening 47.8..79.2 mm",
        "2 inch, 3 inch",
        "Two sizes of one hole: we keep one stretch that holds both.",
    ),
    (
        "a bit over 3 inches across the hole",
        "opening 75.2..85.2 mm",
        "1 of another kind, 3 inch",
        "'A bit' is a little here, and a unit of information to it.",
    ),
    (
        "the hole is almost 3 inches",
        "opening 67.2..77.2 mm",
        "3 inch",
        "'Almost' gives room below and hardly any above; it leaves the word aside.",
    ),
    (
        "the hole is more than 3 inches",
        "opening 75.2..99.2 mm",
        "3 inch",
        "A lower limit alone; it leaves 'more than' aside.",
    ),
    (
        "the hole is 3ish inches",
        "opening 70.2..82.2 mm",
        "nothing",
        "'-ish' on a number is 'about'.",
    ),
    (
        "the chain is 3 inches long",
        "nothing",
        "3 inch",
        "A length that is no part of a seal: we let it go.",
    ),
    ("12 inch rough in", "nothing", "12 inch", "The rough-in is of the drain in the floor."),
    (
        "the opening is 3/4 inch",
        "nothing",
        "0.75 inch",
        "No flush valve opens so little: it is the size of something else.",
    ),
    (
        "1.6 gpf",
        "flush 1.55..1.65 gal",
        "1.6 of another kind",
        "Gallons per flush is a unit of the trade; to it, three units multiplied.",
    ),
    ("6 lpf", "flush 1.453..1.717 gal", "6 of another kind", "Litres per flush, likewise."),
    (
        "4,8 litres",
        "flush 1.242..1.294 gal",
        "4 of nothing, 8 litre",
        "The decimal comma again: a label made for Europe.",
    ),
    (
        "6/3 litre dual flush",
        "flush 1.453..1.717 gal, flush_reduced 0.66..0.925 gal",
        "2 litre",
        "The full flush and the half; to it, 6 divided by 3.",
    ),
    (
        "1.6/1.1 gpf",
        "flush 1.55..1.65 gal, flush_reduced 1.05..1.15 gal",
        "nothing",
        "A dual flush as its label prints it.",
    ),
    (
        "1.5 imperial gallons",
        "flush 1.741..1.861 gal",
        "1.5 of nothing",
        "It knows one gallon, and 'imperial' hides it.",
    ),
    (
        "one point six gallons",
        "flush 1.55..1.65 gal",
        "6 gallon",
        "The decimal said in words; it hears the last of them.",
    ),
    (
        "the tank holds 3.5 gallons",
        "nothing",
        "3.5 gallon",
        "What a tank holds is not what it flushes.",
    ),
    ("I poured in a 2 gallon bucket", "nothing", "2 gallon", "A bucket is no flush."),
]
PHRASES = [phrase for phrase, _ in BOTH_READ] + [phrase for phrase, *_ in DIFFERENCES]


@cache
def _theirs(phrase: str) -> tuple[tuple[float, float, str], ...]:
    """The quantities that `quantulum3` reads without its classifier: low, high, name of unit."""
    with warnings.catch_warnings(), mock.patch.object(classifier, "USE_CLF", False):
        warnings.simplefilter("ignore")
        found = parser.parse(phrase)
    return tuple(
        (q.value - (q.uncertainty or 0), q.value + (q.uncertainty or 0), q.unit.name) for q in found
    )


def theirs(phrase: str) -> str:
    """The same in words."""
    kinds = {name: name for name in _TO} | {"dimensionless": "of nothing"}
    told = [
        f"{low:g}{'' if low == high else f'..{high:g}'} {kinds.get(unit, 'of another kind')}"
        for low, high, unit in _theirs(phrase)
    ]
    return ", ".join(told) or "nothing"


def ours(phrase: str) -> str:
    """What we read, in words."""
    told = [f"{f.name} {f.interval.low:g}..{f.interval.high:g} {f.unit}" for f in facts(phrase)]
    return ", ".join(told) or "nothing"


def agree(phrase: str) -> bool:
    """Whether both read as many quantities, and each of ours lies closely round theirs."""
    found, told = facts(phrase), _theirs(phrase)
    return len(found) == len(told) and all(map(_is_round, found, told))


def _is_round(fact: Fact, told: tuple[float, float, str]) -> bool:
    *ends, unit = told
    if _TO.get(unit) != fact.unit:
        return False
    low, high = (worth(end, unit, "gallon" if fact.unit == "gal" else "mm") for end in ends)
    reach = _REACH[fact.unit]
    return low - reach <= fact.interval.low <= low and high <= fact.interval.high <= high + reach


@pytest.mark.parametrize(("phrase", "told"), BOTH_READ)
def test_two_readers_that_share_nothing_read_the_same_quantity(phrase: str, told: str) -> None:
    assert theirs(phrase) == told
    assert agree(phrase), ours(phrase)


@pytest.mark.parametrize(("phrase", "we", "they", "because"), DIFFERENCES)
def test_where_the_readers_differ_each_reads_what_is_listed(
    phrase: str, we: str, they: str, because: str
) -> None:
    assert (ours(phrase), theirs(phrase)) == (we, they), because


def test_the_readers_differ_in_the_phrases_listed_and_in_no_other() -> None:
    assert [p for p in PHRASES if not agree(p)] == [phrase for phrase, *_ in DIFFERENCES]
