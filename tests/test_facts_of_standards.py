"""Every fact of a standard, a law or a published formula that the project rests on.

Beside each stands the work that publishes it, and the project's own value is held against it:
imported from its code, or read out of its note. 'From memory' marks what could not be looked up
again. `IN_CODE` and `IN_NOTES` name every law, standard and paper that is cited, and its check,
here or where it stands better; the last tests fail when one is cited without.
"""

from __future__ import annotations

import ast
import math
import os
import re
import unicodedata
from collections.abc import Iterator
from fractions import Fraction
from functools import cache
from pathlib import Path

import numpy as np
import pint
import pytest
from demonstration import FOLDER, shop
from numpy.typing import NDArray
from scipy import constants, optimize, stats

from assistant.answers.check.items import Length
from assistant.cli import OUR_FAULT
from assistant.measuring import fit
from assistant.measuring.retrieval.measures import interval
from assistant.reading import quantities, tolerances
from assistant.reading.letters import read_letter
from assistant.reading.numerals import SIGNS, value
from assistant.reading.quantities import read_volumes
from assistant.reading.text import Text
from assistant.reading.tolerances import DISC_OVER_OPENING, LENGTH_SAID, MM_PER_IN, length, volume
from assistant.reading.wording import Said

UNITS = pint.UnitRegistry()
CODE, TESTS = FOLDER / "assistant", FOLDER / "tests"

# --- Units ---------------------------------------------------------------------------------------

# NIST Special Publication 811 (2008), appendix B.8, exact: the inch of the agreement of six
# national laboratories in force since 1 July 1959 (Federal Register, 30 June 1959).
INCH = Fraction("25.4")  # mm
# NIST Handbook 44, appendix C: the gallon of the United States is 231 cubic inches, exactly.
GALLON = 231 * INCH**3 / 10**6  # litres
# NIST SP 811, appendix B.8, exact: the gallon of Canada and the United Kingdom.
IMPERIAL_GALLON = Fraction("4.54609")  # litres
# NIST SP 811, table 5: centi is a hundredth and milli a thousandth.
CENTIMETRE = Fraction(10)  # mm
PUBLISHED = {"inch": INCH, "gallon": GALLON, "imperial gallon": IMPERIAL_GALLON}


def numbers_in(file: Path) -> Iterator[float]:
    """Every number with a decimal point in a file of Python or SQL."""
    text = file.read_text(encoding="utf-8")
    if file.suffix == ".sql":
        yield from map(float, re.findall(r"\b\d+\.\d+\b", text))
        return
    nodes = ast.walk(ast.parse(text))
    yield from (n.value for n in nodes if isinstance(n, ast.Constant) and type(n.value) is float)


class TestUnits:
    def test_two_libraries_hold_what_nist_prints(self) -> None:
        for unit, to, exact, theirs in (
            ("inch", "mm", INCH, constants.inch / constants.milli),
            ("gallon", "litre", GALLON, constants.gallon / constants.litre),
            ("imperial_gallon", "litre", IMPERIAL_GALLON, constants.gallon_imp / constants.litre),
        ):
            assert float(exact) == pytest.approx(UNITS.Quantity(1, unit).to(to).m, rel=1e-14)
            assert float(exact) == pytest.approx(theirs, rel=1e-14)

    @pytest.mark.parametrize("unit", PUBLISHED)
    def test_no_module_has_a_unit_of_its_own(self, unit: str) -> None:
        """A number within a hundredth of a published one is meant to be it, and is it."""
        exact = float(PUBLISHED[unit])
        files = [*CODE.rglob("*.py"), *CODE.rglob("*.sql")]
        near = [(f.name, n) for f in files for n in numbers_in(f) if abs(n / exact - 1) < 0.01]
        assert near
        assert [(name, n) for name, n in near if n != exact] == []

    def test_the_reader_and_the_checker_share_no_code_and_the_same_units(self) -> None:
        for unit, mm in (("mm", Fraction(1)), ("cm", CENTIMETRE), ("in", INCH)):
            assert Length(3, unit).mm == pytest.approx(float(3 * mm))
            read = length(3, 3, unit, "fine", Said.PLAINLY, bare=False)
            assert (read.low + read.high) / 2 == pytest.approx(float(3 * mm), abs=0.011)
        assert float(INCH) == MM_PER_IN

    def test_a_volume_is_turned_into_gallons_by_the_published_worth(self) -> None:
        litres = quantities._LITRES  # what `read_volumes` hands on to `volume`
        assert {unit: Fraction(str(worth)) for unit, worth in litres.items()} == {
            "imperial": IMPERIAL_GALLON,
            "gallon": GALLON,
            "litre": 1,
        }
        for worth in litres.values():
            read = volume(4, 4, 0.01, worth, Said.PLAINLY)
            in_gallons = float(4 * Fraction(str(worth)) / GALLON)
            assert (read.low + read.high) / 2 == pytest.approx(in_gallons, abs=0.0011)

    def test_the_tests_measure_with_the_same_inch(self) -> None:
        form = re.compile(r"^(?:INCH|MM_PER_IN|INCH_IN_MM) = ([\d.]+)", re.MULTILINE)
        own = [
            inch for file in TESTS.glob("*.py") for inch in form.findall(file.read_text("utf-8"))
        ]
        assert len(own) >= 3
        assert {*own} == {"25.4"}


# What a fraction of an inch, named in the reason of a tolerance, is in mm.
NAMED = {"an eighth of an inch": INCH / 8, "a quarter of an inch": INCH / 4}
SAID_OF_INCHES = [w for w in LENGTH_SAID.values() if any(name in w.because for name in NAMED)]


class TestTolerances:
    """How wide a tolerance is, is common practice; that its reason says the same is arithmetic."""

    @pytest.mark.parametrize("width", SAID_OF_INCHES, ids=lambda width: width.because)
    def test_a_reason_in_inches_is_the_width_in_whole_millimetres(
        self, width: tolerances.Width
    ) -> None:
        [mm] = [mm for name, mm in NAMED.items() if name in width.because]
        assert max(width.below, width.above) == int(mm)

    def test_a_disc_is_wider_by_a_quarter_to_one_and_a_quarter_inch(self) -> None:
        ends = DISC_OVER_OPENING.low, DISC_OVER_OPENING.high
        assert ends == (float(INCH / 4), float(INCH * 5 / 4))

    def test_the_litres_of_the_label_are_its_gallons_within_the_least_width(self) -> None:
        # EPA WaterSense, Tank-Type High-Efficiency Toilet Specification, 2.0: 1.28 gal (4.8 L).
        assert float(Fraction("4.8") / GALLON) == pytest.approx(
            1.28, abs=tolerances.GALLONS_LEAST.above
        )


# Unicode Character Database, field Numeric_Value, as Python ships it.
@pytest.mark.parametrize("sign", SIGNS)
def test_a_fraction_in_one_sign_is_worth_what_unicode_says(sign: str) -> None:
    assert value(sign) == SIGNS[sign] == pytest.approx(unicodedata.numeric(sign))


# --- What notes say in figures -------------------------------------------------------------------

_SIZE = re.compile(r"(?P<whole>\d+)?(?: ?(?P<up>\d+)/(?P<low>\d+))?(?= in\b)")
_MM = re.compile(r"(\d+)(?=(?: and \d+)? mm\b)")
_WORDED = {"an eighth of an inch": 1 / 8, "a quarter of an inch": 1 / 4, "half an inch": 1 / 2}


@cache
def sentences() -> tuple[tuple[str, str], ...]:
    """Every sentence of every note, with the note's name."""
    notes = shop().content.notes.values()
    return tuple((n.name, s.text) for n in notes for part in n.sections.values()
                 for s in part.sentences)  # fmt: skip


def inches_in(text: str) -> list[float]:
    """Sizes in inches, in their order: '2 3/4 in', 'an eighth of an inch'."""
    found = [(m.start(), _worth(m)) for m in _SIZE.finditer(text) if m.group()]
    found += [(text.index(words), size) for words, size in _WORDED.items() if words in text]
    return [size for _, size in sorted(found)]


def _worth(size: re.Match[str]) -> float:
    whole, up, low = size.group("whole", "up", "low")
    return int(whole or 0) + (int(up) / int(low) if up else 0)


IN_BOTH = [
    (note, text, inches, mm)
    for note, text in sentences()
    if (inches := inches_in(text)) and (mm := [int(n) for n in _MM.findall(text)])
]


class TestNotes:
    @pytest.mark.parametrize(("note", "text", "inches", "mm"), IN_BOTH, ids=lambda x: str(x)[:40])
    def test_a_size_in_both_units_is_one_size(
        self, note: str, text: str, inches: list[float], mm: list[int]
    ) -> None:
        """To 1.5 mm: such a sentence says 'about', and rounds to fives or to eighths."""
        assert [float(INCH) * size for size in inches] == pytest.approx(mm, abs=1.5), note

    def test_sizes_in_both_units_are_found(self) -> None:
        assert {note for note, *_ in IN_BOTH} == {
            "measuring-the-hinge",
            "measuring-the-overflow-tube",
            "same-look-different-hinge",
            "what-customers-measure-by-mistake",
        }

    def test_a_strip_round_a_tube_is_pi_times_as_long_as_the_tube_is_wide(self) -> None:
        form = re.compile(r"strip of (\d+) mm, for instance, means a tube (\d+) mm across")
        [(strip, across)] = [m.groups() for _, text in sentences() if (m := form.search(text))]
        assert round(int(strip) / math.pi) == int(across)

    def test_a_bank_card_has_the_sides_of_the_standard(self) -> None:
        # ISO/IEC 7810, identification cards of size ID-1: 85.60 by 53.98 mm. From memory.
        [text] = [text for _, text in sentences() if "ISO/IEC 7810" in text]
        to_sixteenths = [round(side / float(INCH) * 16) / 16 for side in (53.98, 85.60)]
        assert inches_in(text) == to_sixteenths

    def test_a_tennis_ball_sticks_where_the_note_says(self) -> None:
        # ITF Rules of Tennis, appendix I: 65.4 to 68.6 mm across. From memory.
        [text] = [text for _, text in sentences() if "tennis ball" in text]
        outside, sticks, passes = (size * float(INCH) for size in inches_in(text))
        assert outside < sticks < 65.4 < 68.6 < passes

    def test_whole_centimetres_are_half_a_centimetre_off_either_way(self) -> None:
        form = re.compile(r"(\d+) cm may be anything from (\d+) to (\d+) mm")
        [(cm, low, high)] = [m.groups() for _, text in sentences() if (m := form.search(text))]
        half = CENTIMETRE / 2
        assert (int(low), int(high)) == (int(cm) * 10 - half, int(cm) * 10 + half)


# --- The law -------------------------------------------------------------------------------------

# 42 U.S.C. 6295(k)(1), by the Energy Policy Act of 1992, section 123, and 10 CFR 430.32(q): of
# gravity tank-type toilets manufactured after 1 January 1994 (GAO/RCED-00-232 tells the day).
LAWFUL_GALLONS, LAWFUL_AFTER = 1.6, 1994
# 10 CFR 430.32(q) gives each limit in both units; 'blowout' closets have the larger. From memory.
IN_LAW = [(1.6, 6.0), (3.5, 13.2)]
# EPA WaterSense, Tank-Type High-Efficiency Toilet Specification, 2.0.
ON_LABELS = [(1.28, 4.8)]


class TestTheLaw:
    @pytest.mark.parametrize(("gallons", "litres"), [*IN_LAW, *ON_LABELS])
    def test_the_two_units_of_a_limit_are_read_as_one_volume(
        self, gallons: float, litres: float
    ) -> None:
        assert round(float(Fraction(str(gallons)) * GALLON), 1) == pytest.approx(litres, abs=0.11)
        [one], [other] = (read_volumes(Text(s)) for s in (f"{gallons} gpf", f"{litres} Lpf"))
        assert one.interval.meets(other.interval)
        assert gallons in one.interval
        assert gallons in other.interval

    def test_no_toilet_of_the_tables_was_begun_under_the_law_and_uses_more(self) -> None:
        begun = [b for b in shop().tables.builds.values() if (b.made_from or 0) >= LAWFUL_AFTER]
        known = [b for b in begun if b.flush_full_gpf is not None and b.kind == "gravity"]
        assert len(known) > 20
        assert [b.build for b in known if (b.flush_full_gpf or 0) > LAWFUL_GALLONS] == []


# --- Letters, texts and programs -----------------------------------------------------------------

# RFC 3676 (2004), sections 4.1 to 4.4: a line that ends in a blank goes on in the next; of a line
# that begins with one, that one is taken away; DelSp=yes takes away the blank that joined; the
# separator '-- ' before a signature goes on nowhere.
FLOWED = [
    ("format=flowed", "the ears\r\npoint up\r\n", "the ears\npoint up"),
    ("format=flowed", "the ears \r\npoint \r\nup\r\n", "the ears point up"),
    ("Format=Flowed", "the ears \r\npoint up\r\n", "the ears point up"),
    ("format=fixed", "the ears \r\npoint up\r\n", "the ears \npoint up"),
    ("format=flowed", "it runs\r\n From the start\r\n", "it runs\nFrom the start"),
    ("format=flowed", "it runs \r\n  and runs\r\n", "it runs  and runs"),
    ("format=flowed; delsp=yes", "the flap \r\nper\r\n", "the flapper"),
    ("format=flowed; delsp=no", "the flap \r\nper\r\n", "the flap per"),
    ("format=flowed", "it runs\r\n-- \r\nSue\r\n", "it runs\n-- \nSue"),
]


@pytest.mark.parametrize(("form", "body", "lines"), FLOWED)
def test_flowed_lines_of_a_mail_are_joined_as_rfc_3676_says(
    form: str, body: str, lines: str
) -> None:
    head = f"From: Sue <sue@home.example>\r\nContent-Type: text/plain; {form}\r\n\r\n"
    assert read_letter((head + body).encode(), is_mail=True).text.raw == lines


# RFC 2606 (1999), sections 2 and 3: names that nobody can have.
RESERVED = re.compile(r"(?:^|\.)(?:test|example|invalid|localhost|example\.(?:com|net|org))$")
# ATIS-0300115, 555 NXX Line Number Reference Document: 555-0100 to 555-0199 are for fiction.
FICTITIOUS = range(100, 200)
INVENTED = [
    *(FOLDER / "knowledge").rglob("*.md"),
    *(FOLDER / "knowledge").glob("*.toml"),
    *(FOLDER / "eval" / "letters").glob("*"),
    TESTS / "letters.jsonl",
]


class TestNobodyIsCalled:
    def test_every_address_is_under_a_reserved_name(self) -> None:
        form = re.compile(r"[\w.+-]+@([\w-]+(?:\.[\w-]+)+)")
        hosts = {host for file in INVENTED for host in form.findall(file.read_text("utf-8"))}
        assert "pottlebrack.example" in hosts
        assert [host for host in hosts if not RESERVED.search(host)] == []

    def test_every_telephone_is_one_of_fiction(self) -> None:
        form = re.compile(r"\b555[- .](\d{4})\b")
        lines = [n for file in INVENTED for n in form.findall(file.read_text("utf-8"))]
        assert shop().settings.contact["phone"].removeprefix("555-") in lines
        assert [n for n in lines if int(n) not in FICTITIOUS] == []


# 4.3BSD, sysexits.h: EX_SOFTWARE, an internal software error.
def test_a_fault_of_ours_has_the_exit_code_of_sysexits() -> None:
    assert os.EX_SOFTWARE == OUR_FAULT == 70


# --- Published formulas --------------------------------------------------------------------------


# Efron 1979, Bootstrap Methods: Another Look at the Jackknife, Annals of Statistics 7. Of ones and
# zeros, the mean drawn again is binomial, so that the percentiles are known without drawing.
@pytest.mark.parametrize(("ones", "of"), [(10, 40), (30, 60), (95, 100)])
def test_the_interval_of_ones_and_zeros_is_that_of_the_binomial(ones: int, of: int) -> None:
    found = interval([1.0] * ones + [0.0] * (of - ones))
    exact = stats.binom.ppf([0.025, 0.975], of, ones / of) / of
    assert found == pytest.approx(tuple(exact), abs=1.01 / of)


# Platt 1999, Probabilistic Outputs for Support Vector Machines: P(right | f) = 1 / (1 + exp(A f +
# B)), A and B of the greatest likelihood, here over the log-odds f and with a soft bound on A.
def _platt(odds: NDArray[np.float64], right: NDArray[np.bool_]) -> tuple[float, float]:
    """A and B, by a minimiser that shares nothing with the library's."""

    def cost(at: NDArray[np.float64]) -> float:
        exponent = np.where(right, 1, -1) * (at[0] * odds + at[1])
        return float(at[0] ** 2 / 2 + fit.SOFTNESS * np.logaddexp(0, exponent).sum())

    found = optimize.minimize(cost, np.zeros(2), method="Nelder-Mead", options={"xatol": 1e-9})
    return float(found.x[0]), float(found.x[1])


@pytest.mark.parametrize("seed", range(5))
def test_the_limit_lies_where_platts_curve_says_that_answers_pay(seed: int) -> None:
    drawn = np.random.default_rng(seed)
    questions, each = 150, 4
    likely = drawn.uniform(0.02, 0.98, questions * each)
    serves = drawn.uniform(size=likely.size) < likely**2
    of = np.repeat(np.arange(questions), each)
    best = np.arange(questions) * each + likely.reshape(questions, each).argmax(axis=1)
    a, b = _platt(np.log(likely[best] / (1 - likely[best])), serves[best])
    pays = fit.WRONG_COSTS / (1 + fit.WRONG_COSTS)
    at = optimize.brentq(lambda p: 1 / (1 + math.exp(a * math.log(p / (1 - p)) + b)) - pays,
                         1e-6, 1 - 1e-6)  # fmt: skip
    assert fit._threshold(likely, serves, of, [True] * questions) == pytest.approx(at, abs=0.0051)


# --- Nothing is cited without a check ------------------------------------------------------------

HERE, DATES = "test_facts_of_standards.py::", "test_reading_dates_outside.py::"
MEASURES, FOUND = "test_eval_measures.py::", "test_search_ranking.py::"
# What the code cites, and the test that holds it against the outside.
IN_CODE = {
    "NIST SP 811": HERE + "test_no_module_has_a_unit_of_its_own",
    "RFC 3676": HERE + "test_flowed_lines_of_a_mail_are_joined_as_rfc_3676_says",
    "Platt 1999": HERE + "test_the_limit_lies_where_platts_curve_says_that_answers_pay",
    "Efron 1979": HERE + "test_the_interval_of_ones_and_zeros_is_that_of_the_binomial",
    "Jaervelin and Kekaelaeinen 2002": MEASURES + "test_ndcg_is_that_of_scikit_learn",
    "Smucker, Allan and Carterette 2007": MEASURES
    + "test_the_randomisation_test_counts_every_change_of_signs",
    "Cormack, Clarke and Buettcher 2009": FOUND + "test_a_place_adds_up_a_share_from_each_ranking",
    "Robertson and Zaragoza 2009": "test_search_words.py::"
    "test_bm25_gives_the_scores_of_rank_bm25_but_for_a_factor",
}
_CITED = re.compile(
    r"\b((?:RFC|NIST [A-Z]+|ISO|FIPS|ASME|ASSE|CSA|IEEE) ?\d[\d.-]*\d)"
    r"|\((([A-Z][a-z]+)(?:, [A-Z][a-z]+)*(?: and [A-Z][a-z]+)?,? (?:19|20)\d\d)\b"
)
# What notes cite of laws and standards. The older tests stand beside the reading of volumes and
# years, and show there more than the figures.
IN_NOTES = {
    "Energy Policy Act": DATES + "test_the_note_gives_the_limit_its_day_and_its_sources",
    "10 CFR 430.32(q)": DATES + "test_the_note_gives_the_limit_its_day_and_its_sources",
    "WaterSense": DATES + "test_the_note_gives_what_the_label_asks_for",
    "litres": DATES + "test_the_note_turns_gallons_into_litres_as_pint_does",
    "ISO/IEC 7810": HERE + "test_a_bank_card_has_the_sides_of_the_standard",
    "tennis ball": HERE + "test_a_tennis_ball_sticks_where_the_note_says",
}
_OF_LAW = re.compile(
    r"[A-Z][a-z]+(?: [A-Z][a-z]+)* Act\b|\d+ (?:CFR|U\.S\.C\.) [\w.]+(?:\(\w\))*|WaterSense"
    r"|\b(?:EPA|ASME|ASSE|CSA|ANSI|ISO|NIST|IAPMO|EN|BS)\b(?:/[A-Z]+)?(?: ?[A-Z]?\d[\w.]*)?"
    r"|(?<=\d )litres|\b(?:tennis|golf) ball|\bper cent\b|\bpsi\b"
)


def cited_in_code() -> set[str]:
    files = CODE.rglob("*.py")
    found = [m for file in files for m in _CITED.finditer(file.read_text(encoding="utf-8"))]
    return {m.group(1) or re.sub(r",(?= \d)", "", m.group(2)) for m in found}


class TestNothingIsMissed:
    def test_each_paper_and_standard_that_the_code_cites_is_checked(self) -> None:
        assert cited_in_code() == {*IN_CODE}

    def test_each_law_label_and_foreign_unit_of_a_note_is_checked(self) -> None:
        assert {w for _, text in sentences() for w in _OF_LAW.findall(text)} == {*IN_NOTES}

    @pytest.mark.parametrize("check", sorted({*IN_CODE.values(), *IN_NOTES.values()}))
    def test_the_check_stands_where_it_is_said_to_stand(self, check: str) -> None:
        file, test = check.split("::")
        assert f"def {test}(" in (TESTS / file).read_text(encoding="utf-8")
