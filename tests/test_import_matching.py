"""Which of a supplier's columns is which of ours; a heading is never guessed at."""

from __future__ import annotations

import pytest

from assistant.importing.faults import SheetError
from assistant.importing.headings import ORDINARY, PASSED
from assistant.importing.matching import Matching, columns_of, match_columns
from assistant.importing.sheet import sheet_of
from assistant.records.rows import TABLES, BuildValve, Evidence, Row, Seal


def match(headings: list[str], kind: type[Row] = Seal, **named: str) -> Matching:
    named = {heading.replace("_", " "): column for heading, column in named.items()}
    return match_columns(sheet_of("prices.csv", [headings]), kind, named)


def pairs(made: Matching) -> dict[str, str]:
    return {match.heading: match.column for match in made.matches}


def test_our_own_names_are_matched_in_any_case_and_with_any_marks() -> None:
    headings = ["part_no", "Ear span (mm)", "OPENING-IN", "replaced by"]
    assert list(pairs(match(headings)).values()) == (
        ["part_no", "ear_span_mm", "opening_in", "replaced_by"]
    )


@pytest.mark.parametrize(
    ("heading", "column"),
    [
        ("Part Number", "part_no"),
        ("SKU", "part_no"),
        ("Article No.", "part_no"),
        ("Item #", "part_no"),
        ("Description", "name"),
        ("List Price", "price"),
        ("RRP", "price"),
        ("Net price", "cost"),
        ("Stock", "on_hand"),
        ("Qty. on hand", "on_hand"),
        ("Color", "colour"),
        ("Manufacturer", "maker"),
    ],
)
def test_ordinary_headings_are_known_and_say_why(heading: str, column: str) -> None:
    """Common practice, no source."""
    others = [] if column == "part_no" else ["part_no"]
    made = match([heading, *others])
    found = next(m for m in made.matches if m.heading == heading)
    assert found.column == column
    assert found.because not in ("", "its name")


def test_every_card_gives_a_reason_and_names_a_column_of_some_table() -> None:
    columns = {column for kind in TABLES for column in columns_of(kind)}
    for card in ORDINARY:
        assert card.column in columns
        assert card.reason
    assert all(passed.reason for passed in PASSED)


def test_no_heading_is_on_two_cards_of_one_table() -> None:
    for kind in TABLES:
        said = [h for card in ORDINARY if card.column in columns_of(kind) for h in card.headings]
        said += [h for passed in PASSED for h in passed.headings]
        assert sorted(said) == sorted(set(said)), kind.file


def test_a_maker_is_a_maker_of_seals_or_of_toilets_by_the_table() -> None:
    assert pairs(match(["part_no", "Manufacturer"]))["Manufacturer"] == "maker"
    build = next(kind for kind in TABLES if kind.file == "toilets.csv")
    assert pairs(match(["build", "Manufacturer"], build))["Manufacturer"] == "brand"


def test_what_is_not_read_is_named_with_the_reason() -> None:
    made = match(["SKU", "Barcode", "Pallet", ""])
    assert [(left.heading, left.because) for left in made.left_out] == [
        ("Barcode", "a bar code names the bag, and no table of ours holds one"),
        ("Pallet", "no column of ours"),
    ]


def test_a_column_without_a_heading_goes_by_its_letter() -> None:
    assert [left.heading for left in match(["SKU", "", "Price"]).left_out] == [
        "column B (no heading)"
    ]


@pytest.mark.parametrize(
    ("heading", "because"),
    [
        (
            "Ear span (in)",
            "is in inches, and our ear_span_mm holds millimetres: nothing is converted or guessed",
        ),
        (
            "Ear span",
            "tells no unit, and our ear_span_mm holds millimetres: nothing is converted or guessed",
        ),
        (
            "Opening mm",
            "is in millimetres, and our opening_in holds inches: nothing is converted or guessed",
        ),
    ],
)
def test_a_length_in_another_unit_or_in_none_is_left_out(heading: str, because: str) -> None:
    (left,) = match(["SKU", heading]).left_out
    assert (left.heading, left.because) == (heading, because)


@pytest.mark.parametrize("heading", ["Opening (inch)", 'Opening "', "Opening in", "OPENING INCHES"])
def test_a_length_in_the_same_unit_is_matched_however_it_is_written(heading: str) -> None:
    assert pairs(match(["SKU", heading]))[heading] == "opening_in"


def test_what_is_named_by_hand_comes_before_what_is_known() -> None:
    made = match(["Our ref", "SKU", "Trade"], Our_ref="part_no", Trade="cost")
    assert pairs(made) == {"Our ref": "part_no", "Trade": "cost"}
    assert [(left.heading, left.because) for left in made.left_out] == [
        ("SKU", "another column is part_no by --map")
    ]


def test_a_column_can_be_left_out_by_hand() -> None:
    made = match(["SKU", "Description"], Description="")
    assert pairs(made) == {"SKU": "part_no"}
    assert [(left.heading, left.because) for left in made.left_out] == [
        ("Description", "left out by --map")
    ]


def test_a_key_of_two_columns_needs_both() -> None:
    assert len(match(["build", "position", "valve"], BuildValve).matches) == 3
    with pytest.raises(SheetError) as caught:
        match(["build", "valve"], BuildValve)
    assert str(caught.value) == (
        "prices.csv, row 1: no heading means our position, by which build_valves.csv tells rows "
        "apart (the headings are 'build', 'valve'); "
        'name the one that does with --map "Their heading=position".'
    )


def test_a_part_number_is_no_key_of_the_evidence() -> None:
    with pytest.raises(SheetError, match="no heading means our evidence"):
        match(["SKU", "verdict"], Evidence)


@pytest.mark.parametrize(
    ("headings", "named", "sentence"),
    [
        (
            ["SKU", "Trade"],
            {"Trode": "cost"},
            "prices.csv, row 1: no column is headed 'Trode'; "
            "--map takes one of its headings: 'SKU', 'Trade'.",
        ),
        (
            ["SKU", "Trade"],
            {"Trade": "costs"},
            "--map \"Trade=costs\": seals.csv has no column 'costs'; "
            f"its columns are: {', '.join(columns_of(Seal))}.",
        ),
        (
            ["SKU", "Trade", "Net"],
            {"Trade": "cost", "Net": "cost"},
            '--map "Net=cost": another heading is cost already; name one heading for a column.',
        ),
        (
            ["SKU", "Trade", "trade"],
            {"Trade": "cost"},
            "prices.csv, row 1, field Trade: the heading stands twice; "
            "rename one of the two in the sheet.",
        ),
        (
            ["SKU", "Width (in)"],
            {"Width (in)": "ear_span_mm"},
            "prices.csv, row 1, field Width (in): is in inches, and our ear_span_mm holds "
            "millimetres; add a column in millimetres to the sheet; nothing is converted here.",
        ),
        (
            ["SKU", "Price", "List price"],
            {},
            "prices.csv, row 1, field List price: it and 'Price' both mean our price; "
            'leave one out with --map "List price=" or --map "Price=".',
        ),
        (
            ["SKU", "Price", "price"],
            {},
            "prices.csv, row 1, field price: it and 'Price' both mean our price; "
            "rename one of the two in the sheet.",
        ),
        (
            ["Ref", "Price"],
            {},
            "prices.csv, row 1: no heading means our part_no, by which seals.csv tells rows apart "
            "(the headings are 'Ref', 'Price'); "
            'name the one that does with --map "Their heading=part_no".',
        ),
    ],
)
def test_a_name_that_is_wrong_is_told_in_one_sentence(
    headings: list[str], named: dict[str, str], sentence: str
) -> None:
    with pytest.raises(SheetError) as caught:
        match_columns(sheet_of("prices.csv", [headings]), Seal, named)
    assert str(caught.value) == sentence
