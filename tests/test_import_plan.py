"""What a supplier's sheet would change in a table, and what it may not."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.importing.faults import SheetError
from assistant.importing.prepare import Prepared
from tests.broken import copy_of_demo, edit, rows_of
from tests.sheets import as_csv, planned, said

A, B, C = "PBK-1127", "PBK-1139", "PBK-1141"  # in the shop's seals.csv


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    """A small shop: three seals, with prices, costs and counts that the tests know."""
    tables = copy_of_demo(tmp_path) / "tables"
    for key, price, cost, on_hand in ((A, "17.80", "9.25", ""), (B, "14.40", "7.35", "6")):
        edit(tables / "seals.csv", _row(tables, key), price=price, cost=cost, on_hand=on_hand)
    return tmp_path


def _row(tables: Path, key: str) -> int:
    return 1 + [row[0] for row in rows_of(tables / "seals.csv")].index(key)


def plan(shop: Path, *lines: list[str], table: str = "seals", **more: object) -> Prepared:
    return planned(shop, as_csv(shop / "prices.csv", lines), table, **more)  # type: ignore[arg-type]


def sentences(made: Prepared, shop: Path) -> list[str]:
    return [str(fault).removeprefix(f"{shop}/") for fault in made.faults]


def test_cells_that_differ_are_changed_and_the_rest_stays(shop: Path) -> None:
    made = plan(shop, ["SKU", "Price", "Stock"], [A, "$18.20", "4"], [B, "14.4", "6"])
    assert said(made) == [(A, "price", "17.80", "18.20"), (A, "on_hand", "", "4")]
    assert made.plan.unchanged == (B,)
    assert C in made.plan.not_in_sheet
    assert made.plan.new == ()


def test_an_empty_cell_never_empties_a_filled_one(shop: Path) -> None:
    made = plan(shop, ["SKU", "Price", "Aliases"], [A, "", " ; "])
    assert (said(made), made.plan.unchanged) == ([], (A,))


@pytest.mark.parametrize(
    ("column", "cell"),
    [
        ("price", "14.4"),
        ("opening_in", "2.0"),
        ("maker_no", "CH/F 21;CH/F 21 N"),
        ("on_hand", "06"),
        ("name", "Cindrel  Haume\u00a0cup flapper"),
    ],
)
def test_another_spelling_of_the_same_value_changes_nothing(
    shop: Path, column: str, cell: str
) -> None:
    assert said(plan(shop, ["SKU", column], [B, cell])) == []


def test_a_new_row_stands_at_the_end_with_its_cells_in_our_columns(shop: Path) -> None:
    made = plan(
        shop,
        ["Price", "Status", "Description", "Style", "SKU"],
        ["$4.1", "stocked", 'Flap, 2"', "pegged-flapper", "ZZ-1"],
    )
    assert dict(made.plan.new[0].cells) == {
        "part_no": "ZZ-1",
        "price": "4.10",
        "status": "stocked",
        "name": 'Flap, 2"',
        "style": "pegged-flapper",
    }
    made.write()
    table = shop / "knowledge" / "tables" / "seals.csv"
    last = dict(zip(*(rows_of(table)[at] for at in (0, -1)), strict=True))
    assert {column: cell for column, cell in last.items() if cell} == made.plan.new[0].cells


def test_a_row_that_is_said_twice_without_contradiction_is_one(shop: Path) -> None:
    made = plan(shop, ["SKU", "Price", "Stock"], [A, "18", ""], [A, "18.00", "4"])
    assert said(made) == [(A, "price", "17.80", "18.00"), (A, "on_hand", "", "4")]


def test_rows_in_which_nothing_is_ours_are_passed_over(shop: Path) -> None:
    made = plan(shop, ["SKU", "Price", "Group"], ["", "", "Flappers"], [A, "18", ""])
    assert (made.faults, made.read.silent) == ((), (2,))


def test_any_table_can_be_imported_into(shop: Path) -> None:
    made = plan(
        shop,
        ["build", "position", "valve"],
        ["quellwick-tamsel-a", "main", "quellwick-pegs-2"],
        ["quellwick-tamsel-a", "rinse", "quellwick-pegs-2"],
        table="build_valves",
    )
    assert said(made) == [
        ("quellwick-tamsel-a/main", "valve", "quellwick-ball-2", "quellwick-pegs-2")
    ]
    assert [new.key for new in made.plan.new] == ["quellwick-tamsel-a/rinse"]


# -- look again


@pytest.mark.parametrize(
    ("price", "again"),
    [
        ("35.60", None),
        ("35.61", "more than twice up"),
        ("9.30", None),
        ("8.89", "more than twice down; cost 9.25 is above price 8.89"),
        ("0", "more than twice down; cost 9.25 is above price 0"),
    ],
)
def test_a_price_that_more_than_doubles_or_halves_is_to_be_looked_at_again(
    shop: Path, price: str, again: str | None
) -> None:
    (change,) = plan(shop, ["SKU", "Price"], [A, price]).plan.changes
    assert (change.again or "").replace(".00", "") == (again or "")


def test_a_cost_above_its_price_is_to_be_looked_at_again(shop: Path) -> None:
    made = plan(shop, ["SKU", "Net", "Stock"], [A, "17.81", "4"], [B, "14.40", "6"])
    assert [(change.column, change.again) for change in made.plan.changes] == [
        ("cost", "cost 17.81 is above price 17.80"),
        ("on_hand", None),
        ("cost", None),
    ]


def test_a_cost_that_was_above_its_price_before_is_no_news(shop: Path) -> None:
    tables = shop / "knowledge" / "tables"
    edit(tables / "seals.csv", _row(tables, A), cost="20.00")
    (change,) = plan(shop, ["SKU", "Stock"], [A, "4"]).plan.changes
    assert change.again is None


def test_a_new_part_that_costs_more_than_it_is_sold_for_is_to_be_looked_at_again(
    shop: Path,
) -> None:
    made = plan(
        shop,
        ["SKU", "Name", "Style", "Status", "Price", "Net"],
        ["ZZ-1", "Flap", "pegged-flapper", "stocked", "4", "5"],
    )
    assert made.plan.new[0].again == "cost 5.00 is above price 4.00"


def test_what_is_to_be_looked_at_again_can_be_written(shop: Path) -> None:
    made = plan(shop, ["SKU", "Price"], [A, "99"])
    made.write()
    assert not plan(shop, ["SKU", "Price"], [A, "99"]).changes_anything


# -- faults


@pytest.mark.parametrize(
    ("lines", "told"),
    [
        (
            [["SKU", "Stock"], [A, "a few"]],
            "row 2, field Stock: 'a few' cannot be read; write a whole number such as 2.",
        ),
        (
            [["SKU", "Price"], [A, "£7.50"]],
            "row 2, field Price: '£7.50' cannot be read; "
            "write an amount in the shop's currency, which is $.",
        ),
        (
            [["SKU", "Price"], [A, "7,50"], [B, "1.234"]],
            "row 3, field Price: '1.234' cannot be read; "
            "write 1234 or 1.234: beside cents after a comma it may be either.",
        ),
        (
            [["SKU", "Price"], [A, "#N/A"]],
            "row 2, field Price: '#N/A' cannot be read; "
            "write what the spreadsheet could not work out.",
        ),
        (
            [["SKU", "Name"], [A, '="x"']],
            "row 2, field Name: '=\"x\"' cannot be read; write the value of the formula.",
        ),
        (
            [["SKU", "Ear span (mm)"], [A, "3 1/2"]],
            "row 2, field Ear span (mm): '3 1/2' cannot be read; write a plain number such as 2.5.",
        ),
        (
            [["SKU", "Price"], ["", "7.50"]],
            "row 2, field SKU: is empty, so it is not known which row this is; "
            "fill in the part_no, or take the row out.",
        ),
        (
            [["SKU", "Price"], [A, "18"], [B, "15"], [A, "19"]],
            f"row 4, field Price: '{A}' has '19.00' here and '18.00' in row 2; "
            "keep the row that is right.",
        ),
        (
            [["SKU", "Price"], ["pbk 1127", "18"]],
            f"row 2, field SKU: 'pbk 1127' is not in seals.csv, where '{A}' is; "
            f"write '{A}' if that is meant, or another id.",
        ),
        (
            [["SKU", "Price"], ["ZZ-1", "18"]],
            "row 2, field SKU: 'ZZ-1' is new to seals.csv, and name, style and status must be "
            "filled; fill that in, or leave out what is new with --known-only.",
        ),
        (
            [["SKU", "Style"], [A, "bell-flapper"]],
            f"row 2, field Style: row '{A}' names 'bell-flapper', which is not in styles.csv; "
            "add it there or correct the name.",
        ),
        (
            [["SKU", "Superseded by"], [A, "ZZ-0"]],
            f"row 2, field Superseded by: row '{A}' names 'ZZ-0', which is not in seals.csv; "
            "add it there or correct the name.",
        ),
    ],
)
def test_a_fault_is_told_with_row_heading_and_mend(
    shop: Path, lines: list[list[str]], told: str
) -> None:
    assert sentences(plan(shop, *lines), shop) == [f"prices.csv, {told}"]


def test_two_new_ids_that_look_alike_are_a_fault(shop: Path) -> None:
    rows = [[key, "Flap", "pegged-flapper", "stocked"] for key in ("ZZ-1", "zz1")]
    made = plan(shop, ["SKU", "Name", "Style", "Status"], *rows)
    assert sentences(made, shop) == [
        "prices.csv, row 3, field SKU: 'zz1' and 'ZZ-1' look alike; write both the same way."
    ]


def test_a_part_may_be_replaced_by_one_that_the_same_sheet_brings(shop: Path) -> None:
    lines = [
        ["SKU", "Name", "Style", "Status", "Superseded by"],
        [A, "", "", "", "ZZ-1"],
        ["ZZ-1", "Flap", "tank-ball", "stocked", ""],
    ]
    assert plan(shop, *lines).faults == ()


def test_years_that_end_before_they_begin_are_a_fault_of_the_sheet(shop: Path) -> None:
    made = plan(shop, ["build", "made_to"], ["quellwick-tamsel-b", "1960"], table="toilets")
    assert sentences(made, shop) == [
        "prices.csv, row 2, field made_to: row 'quellwick-tamsel-b' has made_from 1968 above "
        "made_to 1960; swap the two or correct one."
    ]


def test_every_fault_is_told_in_the_order_of_the_rows_and_nothing_is_written(shop: Path) -> None:
    table = shop / "knowledge" / "tables" / "seals.csv"
    before = table.read_bytes()
    made = plan(
        shop,
        ["SKU", "Price", "Stock", "Style"],
        [A, "18", "4", "bell-flapper"],
        [B, "free", "many", ""],
        ["ZZ-1", "4", "", ""],
        [C, "9", "", ""],
    )
    assert [(fault.row, fault.field) for fault in made.faults] == [
        (2, "Style"), (3, "Price"), (3, "Stock"), (4, "SKU"),
    ]  # fmt: skip
    with pytest.raises(SheetError):
        made.write()
    assert table.read_bytes() == before


def test_what_is_new_can_be_left_out(shop: Path) -> None:
    made = plan(shop, ["SKU", "Price"], ["ZZ-1", "on request"], [A, "18"], known_only=True)
    assert (made.faults, made.read.kept_out) == ((), ("ZZ-1",))
    assert said(made) == [(A, "price", "17.80", "18.00")]


def test_a_number_that_is_nearly_one_of_ours_is_a_fault_even_where_new_rows_are_left_out(
    shop: Path,
) -> None:
    made = plan(shop, ["SKU", "Price"], ["pbk1127", "4"], known_only=True)
    assert [fault.field for fault in made.faults] == ["SKU"]
