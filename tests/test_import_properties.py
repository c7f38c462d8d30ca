"""What holds for any table, however it is written, and any sheet."""

from __future__ import annotations

import dataclasses
from collections.abc import Sequence
from decimal import Decimal
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from assistant.importing.plan import Plan
from assistant.importing.prepare import BY_NAME, Prepared
from assistant.importing.written import written
from assistant.records.load import decode, parse_table, read_table
from assistant.records.rows import TABLES, Seal
from tests.broken import DEMO
from tests.sheets import as_csv, as_workbook, planned

COLUMNS = [field.name for field in dataclasses.fields(Seal)]
KEYS = ("K 1", "K/2", "k-3", 'K"4', "K,5", "Kü6")
STYLES = ("tank-ball", "half, ball")

words = st.text(st.sampled_from("ab ,;\"'=ü½\u00a0\n"), max_size=6).map(
    lambda text: text.strip().lstrip("= \u00a0\n")
)
filled = words.map(lambda text: text or "flap")
amounts = st.sampled_from(("", "0", "4.95", "4.9", "12", "1234.5", "0.125"))
CELLS: dict[str, st.SearchStrategy[str]] = {
    "name": filled,
    "style": st.sampled_from(STYLES),
    "status": st.sampled_from(("stocked", "to order")),
    "aliases": words,
    "maker_no": words,
    "mount": st.sampled_from(("", "pegs", "pegs;ring", "ring; pegs")),
    "replaced_by": st.sampled_from(("", KEYS[0])),
    "opening_in": st.sampled_from(("", "2", "2.0", "3.25")),
    "float": st.sampled_from(("", "yes", "no")),
    "price": amounts,
    "cost": amounts,
    "on_hand": st.sampled_from(("", "0", "007", "12")),
    "link": words,
}
row = st.fixed_dictionaries(CELLS)
calm = settings(
    deadline=None,
    max_examples=80,
    suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow],
)


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    """A shop with two styles and nothing else but headings."""
    tables = tmp_path / "knowledge" / "tables"
    tables.mkdir(parents=True)
    for kind in TABLES:
        names = [field.name for field in dataclasses.fields(kind)]  # type: ignore[arg-type]
        (tables / kind.file).write_text(",".join(names) + "\n")
    lines = [f'"{style}",a seal' + "," * 6 for style in STYLES]
    with (tables / "styles.csv").open("a") as out:
        out.write("\n".join(lines) + "\n")
    return tmp_path


@st.composite
def tables(draw: st.DrawFn) -> bytes:
    """seals.csv with columns in any order, one of the shop's own, any quotes and line endings."""
    order = draw(st.permutations([*COLUMNS, "shelf"]))
    ending = draw(st.sampled_from(("\n", "\r\n", "\r")))
    style = draw(st.sampled_from(("where needed", "all", "here and there")))

    def field(text: str) -> str:
        needed = any(mark in text for mark in '",\r\n')
        if needed or style == "all" or (style == "here and there" and draw(st.booleans())):
            return '"' + text.replace('"', '""') + '"'
        return text if style == "all" else draw(st.sampled_from((text, text, f" {text} ")))

    text = ",".join(order) + ending
    for key in KEYS[: draw(st.integers(1, 4))]:
        cells = {"part_no": key, "shelf": draw(words)} | draw(row)
        text += ",".join(field(cells.get(column, "")) for column in order) + ending
        text += draw(st.sampled_from(("", "", ending)))
    if draw(st.booleans()):
        text = text.rstrip("\r\n")
    return draw(st.sampled_from((b"", b"\xef\xbb\xbf"))) + text.encode()


@st.composite
def sheets(draw: st.DrawFn) -> list[list[str]]:
    """A supplier's sheet: some columns, some parts, among them new ones; cells may be empty."""
    needed = ["part_no", "name", "style", "status"]
    others = sorted(set(CELLS) - set(needed))
    columns = draw(
        st.permutations([*needed, *draw(st.lists(st.sampled_from(others), unique=True))])
    )
    lines = [list(columns)]
    for key in draw(st.lists(st.sampled_from(KEYS), unique=True, min_size=1)):
        cells = {"part_no": key} | draw(row)
        if key == KEYS[0] and draw(st.booleans()):  # K 1 is in every table
            cells |= {"name": "", "style": "", "status": ""}
        if cells["price"] and draw(st.booleans()):
            cells["price"] = f"${cells['price']}"
        lines.append([cells[column] for column in columns])
    return lines


def put(shop: Path, table: bytes) -> Path:
    path = shop / "knowledge" / "tables" / "seals.csv"
    path.write_bytes(table)
    read_table(path, Seal)  # it is sound to begin with
    return path


def own_rows(path: Path, columns: Sequence[str]) -> list[list[str]]:
    table = written(decode(path), Seal)
    return [list(columns), *([table.cell(key, c) for c in columns] for key in table.at)]


def told(made: Prepared) -> Plan:
    assert made.faults == ()
    return made.plan


@given(tables(), st.lists(st.sampled_from(COLUMNS[1:]), unique=True))
@calm
def test_importing_a_tables_own_rows_changes_nothing(
    shop: Path, table: bytes, columns: list[str]
) -> None:
    path = put(shop, table)
    plan = told(planned(shop, as_csv(shop / "a.csv", own_rows(path, ["part_no", *columns]))))
    assert (plan.changes, plan.new, plan.not_in_sheet) == ((), (), ())
    assert plan.after.text == decode(path)


@given(tables(), sheets())
@calm
def test_a_second_import_finds_nothing_to_change(
    shop: Path, table: bytes, sheet: list[list[str]]
) -> None:
    path = put(shop, table)
    file = as_csv(shop / "a.csv", sheet)
    first = planned(shop, file)
    told(first)
    first.write()
    wrote = path.read_bytes()
    again = told(planned(shop, file))
    assert (again.changes, again.new) == ((), ())
    assert path.read_bytes() == wrote


@given(tables(), sheets())
@calm
def test_rows_and_cells_that_do_not_change_stay_byte_for_byte(
    shop: Path, table: bytes, sheet: list[list[str]]
) -> None:
    path = put(shop, table)
    made = planned(shop, as_csv(shop / "a.csv", sheet))
    plan = told(made)
    before = written(decode(path), Seal)
    made.write()
    wrote = path.read_bytes()
    after = written(decode(path), Seal)
    assert wrote.startswith(b"\xef\xbb\xbf") == table.startswith(b"\xef\xbb\xbf")
    assert len(after.lines) == len(before.lines) + len(plan.new)
    touched = {(before.at[c.key], before.header.index(c.column)) for c in plan.changes}
    for at, (old, new) in enumerate(zip(before.lines, after.lines, strict=False)):
        for column, (was, now) in enumerate(zip(old.fields, new.fields, strict=True)):
            assert (was == now) != ((at, column) in touched)
        assert old.ending in (new.ending, "")  # only the last line may have had none
    if not plan.new:
        assert table.endswith((b"\n", b"\r")) == wrote.endswith((b"\n", b"\r"))


@given(tables(), sheets())
@calm
def test_what_was_planned_is_what_the_table_then_says(
    shop: Path, table: bytes, sheet: list[list[str]]
) -> None:
    path = put(shop, table)
    had = parse_table(decode(path), Seal, "seals.csv")
    made = planned(shop, as_csv(shop / "a.csv", sheet))
    plan = told(made)
    made.write()
    have = read_table(path, Seal)
    assert list(have) == [*had, *(new.key for new in plan.new)]
    for key, was in had.items():
        differ = {c for c in COLUMNS if getattr(was, c) != getattr(have[key], c)}
        assert differ == {change.column for change in plan.changes if change.key == key}
    for line in sheet[1:]:
        now = have[line[sheet[0].index("part_no")]]
        for column, cell in zip(sheet[0], line, strict=True):
            if column == "price" and cell:
                assert now.price == Decimal(cell.removeprefix("$"))
            if column == "on_hand" and cell:
                assert now.on_hand == int(cell)
            if not cell and now.key in had:
                assert getattr(now, column) == getattr(had[now.key], column)


def _typed(cell: str, column: str) -> object:
    """A cell as a person at a spreadsheet leaves it: a plain number as a number."""
    if column in ("price", "cost") and cell and not cell.startswith("$"):
        return float(cell)
    return int(cell) if column == "on_hand" and cell and not cell.startswith("0") else cell


@given(tables(), sheets())
@calm
def test_a_workbook_gives_the_same_plan_as_the_same_rows_in_csv(
    shop: Path, table: bytes, sheet: list[list[str]]
) -> None:
    put(shop, table)
    cells = [
        [_typed(cell, column) for column, cell in zip(sheet[0], line, strict=True)]
        for line in sheet[1:]
    ]
    book = told(planned(shop, as_workbook(shop / "a.xlsx", [sheet[0], *cells])))
    assert book == told(planned(shop, as_csv(shop / "a.csv", sheet)))


@pytest.mark.parametrize("name", BY_NAME)
def test_each_table_of_the_demonstration_takes_its_own_file_without_a_change(name: str) -> None:
    file = DEMO / "tables" / f"{name}.csv"
    plan = told(planned(DEMO.parent, file, name))
    assert (plan.changes, plan.new, plan.not_in_sheet) == ((), (), ())
    assert len(plan.unchanged) == len(read_table(file, BY_NAME[name]))
    assert plan.after.text == file.read_text(encoding="utf-8")
