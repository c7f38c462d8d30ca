"""General statements of a note held against the rows: openings, way of holding, since when.

What the tables know is read here from the CSV files alone. A statement that no row can gainsay, or
that denies, compares or doubts, is its author's.
"""

from __future__ import annotations

import pytest
from demonstration import Row, rows, shop

from assistant.answers.check import Checked, Statement, check

OPENINGS = {"2 in": 2.0, "2 1/2 in": 2.5, "3 in": 3.0, "3 1/4 in": 3.25, "4 in": 4.0, "5 in": 5.0}
HOLDS = {
    "pegs": "hooks over two pegs",
    "wire": "hangs on a thin wire",
    "ring": "has a ring that slides down over the tube",
    "strap": "is held by a strap",
    "thread": "screws into the valve",
}
STYLES = {row["style"]: row for row in rows("styles")}


def noted(sentence: str) -> Checked:
    """The sentence as an answer, where a note of the demonstration shop says just that."""
    return check(
        sentence,
        shop().tables,
        audience="customers",
        statements=[Statement(sentence, "styles.md:12", title="Styles of seal")],
        message="",
    )


def called(style: str) -> str:
    """'A ring under a canister'."""
    return f"A {STYLES[style]['plain_name']}"


def of_style(style: str) -> list[Row]:
    """Every seal and every valve of a style."""
    return [
        row for name in ("seals", "flush_valves") for row in rows(name) if row["style"] == style
    ]


def openings(style: str) -> set[float]:
    """Every opening of a style that any row knows."""
    usual = STYLES[style]["usual_openings_in"].split(";")
    return {float(size) for size in (*usual, *(r["opening_in"] for r in of_style(style))) if size}


def ways(style: str) -> set[str]:
    """Every way in which a seal or a valve of the style holds."""
    return {way.strip() for row in of_style(style) for way in row["mount"].split(";")}


@pytest.mark.parametrize("style", STYLES)
def test_a_style_closes_the_openings_that_rows_know_and_no_other(style: str) -> None:
    for words, inches in OPENINGS.items():
        checked = noted(f"{called(style)} closes a {words} opening.")
        assert checked.sound is (inches in openings(style)), words


@pytest.mark.parametrize("style", STYLES)
def test_a_style_holds_in_the_ways_that_rows_know_and_no_other(style: str) -> None:
    for way, words in HOLDS.items():
        checked = noted(f"{called(style)} {words}.")
        assert checked.sound is (way in ways(style)), words


@pytest.mark.parametrize("style", STYLES)
def test_a_style_is_as_old_as_its_row_says_within_ten_years(style: str) -> None:
    began = int(STYLES[style]["usual_from"])
    for years in (-40, -11, -10, 0, 10, 11, 40):
        said = f"{called(style)} has been made since about {began + years}."
        assert noted(said).sound is (abs(years) <= 10), said


def test_a_contradiction_names_its_rule_and_the_row_that_says_otherwise() -> None:
    for said, rule, row in (
        ("A canister seal closes a 2 in opening.", "style-opening", "styles:canister-seal"),
        ("A tank ball hooks over two pegs.", "style-mount", "styles:tank-ball"),
        ("Canister seals have been made since 1970.", "style-years", "styles:canister-seal"),
    ):
        checked = noted(said)
        assert (checked.text, checked.taken_out) == ("", (said,))
        (why,) = checked.checks
        assert (why.rule, why.result, why.row, why.sentence) == (rule, "contradicted", row, said)


def test_the_rest_of_the_note_stays() -> None:
    false = "A canister seal closes a 2 in opening."
    true = "A canister seal lies at the foot of a cylinder."
    held = [Statement(s, f"styles.md:{n}", title="Styles") for n, s in enumerate((false, true), 7)]
    seen = check(f"{false} {true}", shop().tables, audience="staff", statements=held)
    assert (seen.text, seen.taken_out) == (true, (false,))


@pytest.mark.parametrize(
    "said",
    [
        "A canister seal closes a 2-inch opening.",
        "A canister seal closes a 51 mm opening.",  # 2 in are 50.8 mm
        "A ring under a canister fits a 2 in opening.",
        "Rings under a canister close 2 in openings.",
        "Canister gaskets are made for 3 in and 5 in openings.",
        "Canister seals close 3 in, 3 1/4 in and 5 in openings.",
        "A flapper closes a 5 in opening.",  # no style that is called so
        "Tank balls hook over the pegs.",
        "A ball on a lift wire slips onto the pegs.",
        "A half ball hangs on a wire.",
        "Flappers on pegs hang on a wire.",
        "A strap flapper hooks over the pegs.",
        "A clip flapper is held by a strap.",
        "A strap flapper has a ring that goes round the tube.",
        "A tipper seal screws into the neck.",
        "Tank balls came in after 1990.",
        "Canister seals date from 1970.",
        "Flappers on a strap have been made since 1990.",
    ],
)
def test_the_same_is_seen_in_other_words(said: str) -> None:
    checked = noted(said)
    assert checked.text == ""
    assert {c.result for c in checked.checks} == {"contradicted"}


@pytest.mark.parametrize(
    "said",
    [
        "A canister seal closes a 76 mm opening.",  # 3 in
        "Rings under a canister close 3 in or 3 1/4 in openings.",
        "A flapper on pegs hooks over a peg on either side.",
        "A flapper closes a 2 in or a 3 in opening.",
        "A tank ball is screwed to the foot of its wire.",
        "A foam flapper hangs on a chain.",
        "Canister seals have been made since about 2010.",
        "A canister seal lies flat.",
    ],
)
def test_what_no_row_gainsays_stays(said: str) -> None:
    assert noted(said).text == said


@pytest.mark.parametrize(
    "said",
    [
        "No canister seal closes a 2 in opening.",
        "A canister seal never closes a 2 in opening.",
        "A canister seal doesn't close a 2 in opening.",
        "Do not look for a canister seal with a 2 in opening.",
        "A canister seal cannot close a 2 in opening.",
        "A tank ball has nothing that hooks over pegs, and neither has its wire.",
        "Neither a tank ball nor its wire hooks over the pegs.",
        "Canister seals have not been made since 1970.",
    ],
)
def test_a_sentence_that_denies_stays(said: str) -> None:
    assert noted(said).text == said


@pytest.mark.parametrize(
    "said",
    [
        "A canister seal is larger than a 2 in opening.",
        "Unlike a canister seal, the washer closes a 2 in opening.",
        "A canister seal wants a hole wider than a 2 in opening.",
        "A tower seal closes a 2 in opening, and a canister seal a 4 in opening.",
        "Where a tank ball hangs on its wire, a flapper on pegs hooks over two pegs.",
        "A tank ball goes straight up, whereas a flap hooks over two pegs.",
    ],
)
def test_a_sentence_that_compares_stays(said: str) -> None:
    assert noted(said).text == said


@pytest.mark.parametrize(
    "said",
    [
        "A canister seal rarely closes a 2 in opening.",
        "A canister seal is seldom sold for a 2 in opening.",
        "If a canister seal lies over a 2 in opening, write to us.",
        "A canister seal over a 2 in opening is wrong.",
    ],
)
def test_a_sentence_that_doubts_stays(said: str) -> None:
    assert noted(said).text == said


FALSE_ALARMS = {
    "thread for a wire": (
        "A tank ball is screwed onto its wire.",
        "A tank ball is screwed on the end of its wire.",
        "The nut above a canister seal screws onto the tower.",
    ),
    "a year that is no beginning": (
        "A tank ball from 1950 has gone hard by now.",
        "Tank balls have grown rare since 1985.",
        "Tank balls bought after 2010 are new copies of old ones.",
        "Flappers on pegs from 1990 are stiff by now.",
        "Canister seals came in long after 1970.",
    ),
    "'may', 'might' and 'perhaps' doubt as well": (
        "A canister seal may once have closed a 2 in opening.",
        "A canister seal might close a 2 in opening.",
        "Perhaps a canister seal closes a 2 in opening.",
    ),
    "'as' compares": ("A canister seal is as thin as the ring of a 2 in opening.",),
}


@pytest.mark.parametrize(
    "said",
    [said for why, sentences in FALSE_ALARMS.items() for said in sentences],
)
def test_a_sentence_that_only_looks_like_a_claim_stays(said: str) -> None:
    assert noted(said).text == said


@pytest.mark.parametrize(
    "said",
    [
        "A canister seal closes an opening of 2 in.",
        "Canister seals are for openings of 2 in.",
        "A canister seal closes a 2 in hole.",
        "Canister seals were first made in 1970.",
        "A tank ball hooks on a peg.",
    ],
)
def test_a_claim_in_everyday_words_is_held_against_the_rows(said: str) -> None:
    assert noted(said).text == ""
