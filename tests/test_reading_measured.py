"""Lengths: which number is read, what it measures, and which nominal openings it meets.

Trade usage in these letters (a seal is called by the opening it closes): common practice,
no source.
"""

from __future__ import annotations

import pytest

from assistant.reading.facts import Fact
from assistant.reading.measured import read_lengths
from assistant.reading.text import Text


def lengths(letter: str) -> list[Fact]:
    return read_lengths(Text(letter))


@pytest.mark.parametrize(
    ("letter", "opening", "width"),
    [
        ("opening: 51mm / hinge: 82mm / pegs: up", 51, 82),
        ("No brand. 2 inch valve, ears up, hinge 82.", 50.8, 82),
        ("Diameter of the opening: 51. Ears: up. Hinge width: 82. All in mm.", 51, 82),
        ("51 mm over the hole and 82 mm over both ears", 51, 82),
        ("76 mm is the hole, 100 mm the ears, they face down.", 76, 100),
    ],
)
def test_opening_and_hinge_width_are_kept_apart(letter: str, opening: float, width: float) -> None:
    found = {f.name: (f.interval.low + f.interval.high) / 2 for f in lengths(letter)}
    assert found == {"opening": pytest.approx(opening), "hinge_width": pytest.approx(width)}


def told(letter: str) -> list[tuple[str, str, float, float]]:
    return [(f.name, f.words, f.interval.low, f.interval.high) for f in lengths(letter)]


ONE_LENGTH = [
    # the nominal opening, by trade usage
    ("I need a 3 inch flapper", "opening", "3 inch", 73.2, 79.2, (3,)),
    ("a three inch flapper please", "opening", "three inch", 73.2, 79.2, (3,)),
    ("3-inch flush valve", "opening", "3-inch", 73.2, 79.2, (3,)),
    ("flapper, 3 inch", "opening", "3 inch", 73.2, 79.2, (3,)),
    ("flapper's the 3 inch kind", "opening", "3 inch", 73.2, 79.2, (3,)),
    ("a 2 1/2 flapper", "opening", "2 1/2", 59.0, 68.0, (2.5,)),
    ("size 3 flapper", "opening", "3", 71.2, 81.2, (3,)),
    ("3 inch red rubber flapper", "opening", "3 inch", 73.2, 79.2, (3,)),
    ("is the 3in flapper in stock?", "opening", "3in", 73.2, 79.2, (3,)),
    ("it's the 4 inch flush valve", "opening", "4 inch", 98.6, 104.6, (4,)),
    ("2/3 inch flapper", "opening", "2/3 inch", 47.8, 79.2, (2, 3)),
    # the opening itself
    ("opening is 2-1/2 inch", "opening", "2-1/2 inch", 61.0, 66.0, (2.5,)),
    ('the drain hole is 2" across', "opening", '2"', 47.8, 53.8, (2,)),
    ("drain is 2'' wide", "opening", "2''", 47.8, 53.8, (2,)),
    ("The hole at the bottom of the tank is 3 inches", "opening", "3 inches", 73.2, 79.2, (3,)),
    ("75-80 mm opening", "opening", "75-80 mm", 73.0, 82.0, (3,)),
    ("outlet: 50 mm", "opening", "50 mm", 48.0, 52.0, (2,)),
    ("the opening is 3", "opening", "3", 71.2, 81.2, (3,)),
    ("the opening is 3 not 2", "opening", "3", 71.2, 81.2, (3,)),
    ("opening 3 1/4 in.", "opening", "3 1/4 in.", 80.05, 85.05, (3.25,)),
    ("I measured the hole. It is 3 inches.", "opening", "3 inches", 73.2, 79.2, (3,)),
    ("a bit over 3 inches across the hole", "opening", "3 inches", 75.2, 85.2, (3, 3.25)),
    ("3 inches is what I got across the hole", "opening", "3 inches", 73.2, 79.2, (3,)),
    ("the hole — 3 inches across", "opening", "3 inches", 73.2, 79.2, (3,)),
    ("opening approx 8 cm", "opening", "8 cm", 72.0, 88.0, (3, 3.25)),
    ("hole is 2 or 3 inches", "opening", "2 or 3 inches", 47.8, 79.2, (2, 3)),
    ("opening between 2 and 3 inches", "opening", "2 and 3 inches", 47.8, 79.2, (2, 2.5, 3)),
    ("hole 2 to 2.5 in", "opening", "2 to 2.5 in", 48.3, 66.0, (2, 2.5)),
    ('hole is either a 2" or a 3"', "opening", '2" or a 3"', 47.8, 79.2, (2, 3)),
    # the old disc laid on a rule: a seal is 1/4 to about 1 in wider than its opening
    ("the old flapper is 3 1/4 inches wide", "disc", "3 1/4 inches", 80.05, 85.05, (2, 2.5, 3)),
    ("the rubber itself measures 3 1/4 across", "disc", "3 1/4", 78.05, 87.05, (2, 2.5, 3)),
    ("my flapper measures 70 mm", "disc", "70 mm", 68.0, 72.0, (2, 2.5)),
    ("the disc is 4 1/4 inches", "disc", "4 1/4 inches", 105.45, 110.45, (3, 3.25, 4)),
    ('rubber ring about 3 1/2" outside', "disc", '3 1/2"', 83.4, 94.4, (2.5, 3, 3.25)),
    # the rim, the tube, the hinge
    ("the outer rim is 3 5/8 inches", "rim", "3 5/8 inches", 90.07, 94.07, ()),
    ("seat rim 92mm", "rim", "92mm", 90.0, 94.0, ()),
    ('overflow pipe is 1 1/8"', "tube", '1 1/8"', 26.57, 30.57, ()),
    ("the tube is 1 inch", "tube", "1 inch", 22.4, 28.4, ()),
    ("between the ears it is 3 3/4 inches", "hinge_width", "3 3/4 inches", 92.75, 97.75, ()),
    ("ears are 95 mm apart", "hinge_width", "95 mm", 93.0, 97.0, ()),
    ("ear to ear 3 1/2", "hinge_width", "3 1/2", 84.4, 93.4, ()),
    ("hinge width 90mm", "hinge_width", "90mm", 88.0, 92.0, ()),
    ("pegs 3 3/4 inches apart", "hinge_width", "3 3/4 inches", 92.75, 97.75, ()),
    # nobody said what was measured
    ("63 mm", "length", "63 mm", 61.0, 65.0, (2.5,)),
    ("It measures 7.6cm", "length", "7.6cm", 74.0, 78.0, (3,)),
    ("About 3 in.", "length", "3 in.", 70.2, 82.2, (3,)),
    ("almost 3 inches", "length", "3 inches", 67.2, 77.2, (3,)),
    ("3ish inches", "length", "3ish inches", 70.2, 82.2, (3,)),
    ("2 or 3 inch not sure", "length", "2 or 3 inch", 47.8, 79.2, (2, 3)),
    ("2inch? 3inch?", "length", "2inch? 3inch", 47.8, 79.2, (2, 3)),
    ("two and a half inches", "length", "two and a half inches", 61.0, 66.0, (2.5,)),
    ("two inches and a half", "length", "two inches and a half", 61.0, 66.0, (2.5,)),
    ("My flapper is 3 inches", "length", "3 inches", 73.2, 79.2, (3,)),
    ("3 in. molded in the rubber", "length", "3 in.", 73.2, 79.2, (3,)),
    ("model 4102, 3 inch", "length", "3 inch", 73.2, 79.2, (3,)),
]


@pytest.mark.parametrize(("letter", "name", "words", "low", "high", "nominal_in"), ONE_LENGTH)
def test_a_length_is_read_with_what_it_measures(
    letter: str, name: str, words: str, low: float, high: float, nominal_in: tuple[float, ...]
) -> None:
    [fact] = lengths(letter)
    assert (fact.name, fact.words, fact.nominal_in) == (name, words, nominal_in)
    assert (fact.interval.low, fact.interval.high) == pytest.approx((low, high), abs=0.011)
    assert fact.unit == "mm"


@pytest.mark.parametrize(
    ("letter", "expected"),
    [
        (
            "opening 3 inches, disc 3 1/2 inches, ears 3 3/4 inches apart",
            [("opening", "3 inches"), ("disc", "3 1/2 inches"), ("hinge_width", "3 3/4 inches")],
        ),
        (
            "Opening 3\nDisc 3 1/2\nears 3 3/4",
            [("opening", "3"), ("disc", "3 1/2"), ("hinge_width", "3 3/4")],
        ),
        ("3 inch hole, 3 1/2 inch disc", [("opening", "3 inch"), ("disc", "3 1/2 inch")]),
        ("seat ring outer dia 92mm inner dia 76mm", [("rim", "92mm"), ("opening", "76mm")]),
        ("opening 3 inches (76 mm)", [("opening", "3 inches"), ("opening", "76 mm")]),
        ("3 inches (76 mm) opening", [("opening", "3 inches"), ("opening", "76 mm")]),
        (
            'The flush hole is 2" but the flapper is wide, 3 inches wide',
            [("opening", '2"'), ("disc", "3 inches")],
        ),
        (
            "she says its 2 inch but I measured 3 inch across the rubber",
            [("length", "2 inch"), ("disc", "3 inch")],
        ),
        (
            'Measured the drain: 2-7/8". Ears to ears is like 3 5/8',
            [("opening", '2-7/8"'), ("hinge_width", "3 5/8")],
        ),
        (
            "The hole measures 3 1/4 inches, yours was 2 inch",
            [("opening", "3 1/4 inches"), ("length", "2 inch")],
        ),
        ("the seal is 65mm OD x 45mm ID", [("disc", "65mm"), ("length", "45mm")]),
        (
            "on the rim of the valve seat I get 3 1/2 inches and the opening 2 3/4",
            [("rim", "3 1/2 inches"), ("opening", "2 3/4")],
        ),
        ("inside diameter of seat 2 5/8", [("opening", "2 5/8")]),
        ("measured the outside edge of the drain: 2 3/4", [("rim", "2 3/4")]),
        (
            "ears on the overflow are 3.25 inches outside to outside",
            [("hinge_width", "3.25 inches")],
        ),
        ("overflow tube OD 1 1/8", [("tube", "1 1/8")]),
        ("50mm outlet, pegs 80mm apart", [("opening", "50mm"), ("hinge_width", "80mm")]),
        ("chain cut to 5 inches. It's a 3 inch flapper", [("opening", "3 inch")]),
        ('tank is 16 inches wide and the valve in it is 3"', [("opening", '3"')]),
        ("water is 1 inch below the overflow tube, 1-1/8 inch wide", [("tube", "1-1/8 inch")]),
    ],
)
def test_each_length_keeps_its_own_subject(letter: str, expected: list[tuple[str, str]]) -> None:
    assert [(fact.name, fact.words) for fact in lengths(letter)] == expected


@pytest.mark.parametrize(
    "letter",
    [
        "the chain is 3 inches long",
        "about 2 inches of chain",
        "12 inch rough in",
        "rough-in is 12 inches",
        "3/8 supply line",
        "3/8 inch bolts",
        "the handle arm is 4 inches",
        "water is 3 inches below the overflow",
        "the tank is 4 inches deep",
        "the overflow tube is 9 inches tall",
        "the toilet flange is 3 inches",
        "3 inch waste pipe",
        "the fill valve is 2 inch",
        "I have 2 in the house",
        "there are 3 in total",
        "I need 2 flappers",
        "need 2 flapper",
        "need 3 flappers and 2 seals",
        "2 toilets in 2 bathrooms, two kids",
        "the opening is 3 years old",
        "flapper lasted 2 years",
        "it refilled 3 times in 5 minutes",
        "call 555 123 4567",
        "part no. 3",
        "part number 3 inch",
        "the flapper is $3",
        "flapper 3% bigger",
        "flapper number 2",
        "a 3 x 4 inch box",
        "it runs for 3 seconds",
        "I live at 3 Valve Road",
        "opening it 2 times did nothing",
        "a 94 toilet",
        "a 1.6 flush valve",
        "the opening is 76",
        'he said "size 3" I think',
        "a 5 foot 3 inch tall man",
    ],
)
def test_a_number_about_something_else_is_no_length(letter: str) -> None:
    assert told(letter) == []


def test_two_or_three_is_not_two_and_a_half() -> None:
    assert lengths("2 or 3 inch hole")[0].nominal_in == (2, 3)
    assert lengths("2 to 3 inch hole")[0].nominal_in == (2, 2.5, 3)


def test_masked_words_are_not_read() -> None:
    letter = "> a 2 inch hole\na 3 inch hole"
    assert [f.words for f in read_lengths(Text(letter, ((0, 15),)))] == ["3 inch"]
