"""`counterhand import`: what it prints, what it writes, and how it ends."""

from __future__ import annotations

import json
import re
from collections import Counter
from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import Any, NamedTuple
from unittest import mock

import pytest

from assistant.cli import cli
from assistant.importing.prepare import BY_NAME
from assistant.importing.telling import findings_in
from assistant.linting.lint import lint
from tests.broken import copy_of_demo, edit, rows_of, run
from tests.encoders import WordHashes
from tests.indexed import full_disk
from tests.sheets import as_csv, as_workbook, planned

LINES = [
    ["Article No.", "List price", "Qty on hand", "Barcode"],
    ["PBK-1127", "$18.20", "4", "5550123"],
    ["PBK-1139", "$34.90", "", ""],
]
NEW = [["SKU", "Name", "Style", "Status"], ["ZZ-1", "[red]Flap[/red]", "tank-ball", "stocked"]]


class Ran(NamedTuple):
    code: int
    out: str
    err: str

    @property
    def words(self) -> str:
        """What was printed, without its line breaks."""
        return " ".join(self.out.split())


Run = Callable[..., Ran]


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    tables = copy_of_demo(tmp_path) / "tables"
    keys = [row[0] for row in rows_of(tables / "seals.csv")]
    edit(tables / "seals.csv", keys.index("PBK-1127") + 1, price="17.80", cost="9.25", on_hand="0")
    edit(tables / "seals.csv", keys.index("PBK-1139") + 1, price="14.40", cost="7.35", on_hand="6")
    return tmp_path


@pytest.fixture
def table(shop: Path) -> Path:
    return shop / "knowledge" / "tables" / "seals.csv"


@pytest.fixture
def run_import(
    shop: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> Run:
    monkeypatch.setenv("COLUMNS", "110")

    def run_import(file: Path | str, *words: str, into: str = "seals") -> Ran:
        code = run(monkeypatch, "import", str(file), "--into", into, "--shop", str(shop), *words)
        return Ran(code, *capsys.readouterr())

    return run_import


@pytest.fixture
def sheet(shop: Path) -> Path:
    return as_csv(shop / "prices.csv", LINES)


def test_what_would_change_is_shown_and_nothing_is_written(
    run_import: Run, sheet: Path, table: Path
) -> None:
    before = table.read_bytes()
    ran = run_import(sheet)
    assert (ran.code, ran.err) == (0, "")
    for shown in (
        "Article No. part_no the number that a part is ordered by",
        "List price price what a customer pays",
        "Barcode left out a bar code names the bag, and no table of ours holds one",
        "List price, currency sign taken off in 2 cells: $18.20 is 18.20, $34.90 is 34.90.",
        "2 PBK-1127 price 17.80 18.20",
        "2 PBK-1127 on_hand 0 4",
        "3 PBK-1139 price 14.40 34.90 ← look again: more than twice up",
        "0 new rows; 3 cells changed in 2 rows; 0 rows the same already.",
        f"The sheet does not name {len(rows_of(table)) - 3} rows of seals.csv, and they stay",
        "Look again at 1: they are marked.",
        "Nothing is written yet: look at it, and add --write.",
    ):
        assert shown in ran.words
    assert table.read_bytes() == before


def test_with_write_the_table_is_written_and_lint_counts_what_is_to_mend_in_it(
    run_import: Run, sheet: Path, shop: Path, table: Path
) -> None:
    before = table.read_text(encoding="utf-8").splitlines()
    ran = run_import(sheet, "--write")
    assert (ran.code, ran.err) == (0, "")
    after = table.read_text(encoding="utf-8").splitlines()
    differ = [new for old, new in zip(before, after, strict=True) if old != new]
    assert [line.split(",")[0] for line in differ] == ["PBK-1127", "PBK-1139"]
    assert f"Written: {table}." in ran.words
    told = re.search(r"Lint finds (no|\d+) things? to mend in it", ran.words)
    assert told
    assert int(told[1].replace("no", "0")) == _findings(shop)
    assert ran.words.endswith("'counterhand lint' shows what." if told[1] != "no" else "in it.")


def _findings(shop: Path, table: str = "seals") -> int:
    """How many findings `counterhand lint` shows in a table."""
    return _all_findings(shop)[f"knowledge/tables/{table}.csv"]


def _all_findings(shop: Path) -> Counter[str]:
    """How many findings `counterhand lint` shows in each file."""
    with mock.patch("assistant.search.model.Model", WordHashes):
        found = lint(shop, date.today(), _default_age())
    return Counter(finding.path for _, finding in found)


def _default_age() -> int:
    option = next(p for p in cli.commands["lint"].params if p.name == "oldest")
    assert isinstance(option.default, int)
    return option.default


def test_the_findings_counted_are_those_that_lint_shows_in_the_table(shop: Path) -> None:
    tables = shop / "knowledge" / "tables"
    edit(tables / "seals.csv", 3, price="5", cost="99")
    edit(tables / "fitment.csv", 3, date="1990-01-01")
    edit(tables / "styles.csv", 3, drawing="nowhere.svg")
    note = shop / "knowledge" / "notes" / "before-you-order.md"
    note.write_text(note.read_text(encoding="utf-8").replace("tank-ball", "bell"))
    shown = _all_findings(shop)
    counted = {name: findings_in(planned(shop, tables / f"{name}.csv", name)) for name in BY_NAME}
    assert counted == {name: shown[f"knowledge/tables/{name}.csv"] for name in BY_NAME}
    assert min(counted["seals"], counted["fitment"], counted["styles"]) > 0


def test_lint_counts_what_the_import_brought(run_import: Run, shop: Path) -> None:
    before = _findings(shop)
    lines = [["SKU", "Net"], ["PBK-1127", "99"]]  # costs more than it is sold for
    made = json.loads(run_import(as_csv(shop / "a.csv", lines), "--write", "--json").out)
    assert made["findings"] == _findings(shop) == before + 1


def test_a_second_import_has_nothing_to_change(run_import: Run, sheet: Path, table: Path) -> None:
    run_import(sheet, "--write")
    wrote, stamp = table.read_bytes(), table.stat().st_mtime_ns
    ran = run_import(sheet, "--write")
    assert ran.code == 0
    assert ran.words.endswith("There is nothing to change.")
    assert "2 rows the same already" in ran.words
    assert (table.read_bytes(), table.stat().st_mtime_ns) == (wrote, stamp)


def test_new_rows_are_shown_word_for_word(run_import: Run, shop: Path) -> None:
    ran = run_import(as_csv(shop / "new.csv", NEW))
    assert "2 ZZ-1 part_no ZZ-1; name [red]Flap[/red]; style tank-ball; status stocked" in ran.words
    assert "1 new row; 0 cells changed in 0 rows; 0 rows the same already." in ran.words


def test_one_json_object_says_it_all(run_import: Run, shop: Path, table: Path) -> None:
    file = as_workbook(shop / "prices.xlsx", [*LINES, ["", "", "", "Flappers"]])
    made: dict[str, Any] = json.loads(run_import(file, "--json").out)
    listed = made.pop("not_in_sheet")
    assert made == {
        "sheet": {"file": str(file), "read_as": ["sheet 'Prices'"]},
        "table": str(table),
        "matched": [
            {
                "heading": "Article No.",
                "column": "part_no",
                "because": "the number that a part is ordered by",
            },
            {"heading": "List price", "column": "price", "because": "what a customer pays"},
            {
                "heading": "Qty on hand",
                "column": "on_hand",
                "because": "how many lie on the shelf",
            },
        ],
        "left_out": [
            {
                "heading": "Barcode",
                "because": "a bar code names the bag, and no table of ours holds one",
            }
        ],
        "cleaned": [
            {"row": row, "heading": "List price", "was": f"${now}", "now": now}
            | {"rule": "currency sign taken off"}
            for row, now in ((2, "18.20"), (3, "34.90"))
        ],
        "rows_without_our_columns": [4],
        "faults": [],
        "new": [],
        "changed": [
            {"row": row, "id": key, "column": column, "old": old, "new": new, "look_again": again}
            for row, key, column, old, new, again in (
                (2, "PBK-1127", "price", "17.80", "18.20", None),
                (2, "PBK-1127", "on_hand", "0", "4", None),
                (3, "PBK-1139", "price", "14.40", "34.90", "more than twice up"),
            )
        ],
        "unchanged": [],
        "new_left_out": [],
        "written": False,
        "findings": None,
    }
    assert len(listed) == len(rows_of(table)) - 3


def test_faults_are_a_sentence_each_and_code_2_and_nothing_is_written(
    run_import: Run, shop: Path, table: Path
) -> None:
    before = table.read_bytes()
    lines = [["SKU", "Price", "Stock"], ["PBK-1127", "free", "4"], ["PBK-1139", "15", "some"]]
    file = as_csv(shop / "a.csv", lines)
    ran = run_import(file, "--write")
    assert ran == (
        2,
        "",
        f"counterhand: {file}, row 2, field Price: 'free' cannot be read; write an amount such "
        "as 7.50, without a currency sign.\n"
        f"counterhand: {file}, row 3, field Stock: 'some' cannot be read; "
        "write a whole number such as 2.\n",
    )
    assert table.read_bytes() == before


def test_faults_stand_in_the_json_too_and_no_changes(run_import: Run, shop: Path) -> None:
    lines = [["SKU", "Price"], ["PBK-1127", "free"], ["PBK-1139", "15"]]
    ran = run_import(as_csv(shop / "a.csv", lines), "--json")
    made = json.loads(ran.out)
    assert (ran.code, made["written"], made["changed"]) == (2, False, [])
    assert made["faults"] == [
        {
            "row": 2,
            "heading": "Price",
            "problem": "'free' cannot be read",
            "mend": "write an amount such as 7.50, without a currency sign",
        }
    ]


def test_of_very_many_faults_some_are_told_and_the_rest_counted(
    run_import: Run, shop: Path
) -> None:
    rows = [[f"ZZ-{at}", "free"] for at in range(100)]
    ran = run_import(as_csv(shop / "a.csv", [["SKU", "Price"], *rows]))
    told = ran.err.splitlines()
    assert (len(told), told[-1]) == (21, "counterhand: and 80 more; --json shows all.")


@pytest.mark.parametrize(
    ("words", "sentence"),
    [
        (("--map", "Trade"), "'Trade' is not like \"Their heading=our_column\""),
        (("--map", "=price"), "'=price' is not like \"Their heading=our_column\""),
        (
            ("--map", "Barcode=link", "--map", "Barcode=name"),
            "'Barcode' is named twice",
        ),
        (
            ("--map", "Trade=cost"),
            "no column is headed 'Trade'; --map takes one of its headings: "
            "'Article No.', 'List price', 'Qty on hand', 'Barcode'.",
        ),
        (("--map", "Barcode=bar"), "seals.csv has no column 'bar'; its columns are: part_no, "),
        (("--sheet", "Prices"), "a CSV file has one sheet only; leave out --sheet."),
    ],
)
def test_a_wrong_word_is_one_sentence_and_code_2(
    run_import: Run, sheet: Path, words: tuple[str, ...], sentence: str
) -> None:
    ran = run_import(sheet, *words)
    assert (ran.code, ran.out, len(ran.err.splitlines())) == (2, "", 1)
    assert sentence in ran.err


def test_a_table_that_is_none_is_told_with_those_that_are(run_import: Run, sheet: Path) -> None:
    ran = run_import(sheet, into="parts")
    assert (ran.code, ran.out) == (2, "")
    assert "'parts' is no table; choose among brands, styles, " in ran.err
    assert len(ran.err.splitlines()) == 1


def test_without_a_table_it_says_which_there_are(
    sheet: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(monkeypatch, "import", str(sheet)) == 2
    err = capsys.readouterr().err
    assert "no table is named; choose among brands, styles, " in err
    assert len(err.splitlines()) == 1


def test_a_heading_may_hold_the_sign_that_parts_it_from_the_column(
    run_import: Run, shop: Path
) -> None:
    file = as_csv(shop / "a.csv", [["SKU", "x=y"], ["PBK-1127", "18.20"]])
    assert "x=y price as --map says" in run_import(file, "--map", "x=y=price").words


def test_a_broken_table_of_the_shop_is_told_before_anything(
    run_import: Run, sheet: Path, shop: Path
) -> None:
    edit(shop / "knowledge" / "tables" / "fitment.csv", 2, part_no="ZZ-0")
    ran = run_import(sheet, "--write")
    assert (ran.code, ran.out) == (2, "")
    assert "fitment.csv, field part_no: row 'E0103' names 'ZZ-0'" in ran.err


def test_a_full_disk_is_told_in_one_sentence_and_leaves_the_table(
    run_import: Run, sheet: Path, table: Path
) -> None:
    before = table.read_bytes()
    with full_disk():
        ran = run_import(sheet, "--write")
    assert (ran.code, ran.out) == (2, "")
    assert ran.err == (
        f"counterhand: {table}: cannot be written (File too large) and is as it was; "
        "free it or its disk, and import again.\n"
    )
    assert table.read_bytes() == before


def test_the_help_carries_an_example(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(monkeypatch, "import", "--help") == 0
    assert "Example:\n    counterhand import prices.xlsx --into seals" in capsys.readouterr().out
