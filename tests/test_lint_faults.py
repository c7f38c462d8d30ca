"""What lint tells of files that cannot be read: every fault, at its line, and none that follows."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from assistant.errors import KnowledgeError
from assistant.linting.gather import gather
from assistant.linting.lint import lint
from assistant.records.rows import Row
from assistant.records.tables import reference_faults
from tests.broken import copy_of_demo, rows_of, widen
from tests.linting import OLDEST, TODAY, shop, table, told
from tests.test_bad_tables import BROKEN, Break
from tests.trade import build, says, seal, sits, valve

SHOP = (valve(), seal("UQ-10"), seal("UQ-11"), build(), sits(), says("fits"), says("fits", "UQ-11"))
NAMES = {
    "brands": "brands.csv", "styles": "styles.csv", "likenesses": "likenesses.csv",
    "valves": "flush_valves.csv", "builds": "toilets.csv", "build_valves": "build_valves.csv",
    "seals": "seals.csv", "evidence": "fitment.csv", "causes": "causes.csv",
    "questions": "questions.csv",
}  # fmt: skip
BRANDS = "brand,aliases\nUlm,Ulmb\n"


def faults(folder: Path) -> list[str]:
    """What could not be read, each without its path's folder and its rule."""
    lines = told(folder, "unreadable")
    return [re.sub(r"^knowledge/(tables/)?|error: | \[unreadable\]$", "", line) for line in lines]


@pytest.mark.parametrize(
    ("broken", "sentence"), [pytest.param(*case[1:], id=case[0]) for case in BROKEN]
)
def test_what_stops_an_answer_is_an_error_of_lint_on_the_same_row(
    broken: Break, sentence: str, tmp_path: Path
) -> None:
    tables = copy_of_demo(tmp_path) / "tables"
    seal_2 = rows_of(tables / "seals.csv")[1][0]
    broken(tables)
    errors = [line for line in told(tmp_path) if ": error: " in line]
    where = sentence.format(seal_2=seal_2).split(": ")[0]
    file, row = where.split(",")[0], re.search(r"row (\d+)", where)
    path = f"knowledge/tables/{file}" if file else "knowledge/tables"
    at = f":{row[1]}:" if row else ":"
    assert any(line.startswith(path) and at in line for line in errors), errors


def test_every_cell_at_fault_is_told_and_not_only_the_first(tmp_path: Path) -> None:
    folder = shop(tmp_path, *SHOP)
    seals = table(folder, "seals.csv")
    bad = seals.read_text().replace("pegs,80.0,up", "glue,80mm,sideways")
    seals.write_text(bad.replace("stocked", "sold out", 1))
    assert faults(folder) == [
        f"seals.csv:{line}: {fault}."
        for line, fault in [
            (2, "mount 'glue' cannot be read; write one of: pegs, ring, clip, strap, wire, "
                "canister, tower, push, thread"),
            (3, "mount 'glue' cannot be read; write one of: pegs, ring, clip, strap, wire, "
                "canister, tower, push, thread"),
            (2, "ear_span_mm '80mm' cannot be read; write a plain number such as 2.5"),
            (3, "ear_span_mm '80mm' cannot be read; write a plain number such as 2.5"),
            (2, "ears 'sideways' cannot be read; write one of: up, down, none"),
            (3, "ears 'sideways' cannot be read; write one of: up, down, none"),
            (2, "status 'sold out' cannot be read; write one of: stocked, to order, discontinued"),
        ]
    ]  # fmt: skip


def test_what_rests_on_a_row_at_fault_is_not_told_as_well(tmp_path: Path) -> None:
    folder = shop(tmp_path, *SHOP)
    for file, good, bad in (
        ("seals.csv", "stocked", "sold out"),
        ("flush_valves.csv", "80.0", "80mm"),
        ("toilets.csv", "gravity", "heavy"),
    ):
        path = table(folder, file)
        path.write_text(path.read_text().replace(good, bad))
    rules = {line.split("[")[1] for line in told(folder)}
    assert rules == {"unreadable]", "no-drawing]"}


def test_a_valve_at_fault_does_not_leave_its_build_without_one(tmp_path: Path) -> None:
    folder = shop(tmp_path, *SHOP, says("fits", build="tovelin-a"))
    valves = table(folder, "flush_valves.csv")
    valves.write_text(valves.read_text().replace("80.0", "80mm"))
    assert len(faults(folder)) == 1
    assert told(folder, "no-valve", "no-such-valve", "no-seal", "never-fitted") == []


def test_of_two_rows_with_one_id_the_second_is_told_with_the_line_of_the_first(
    tmp_path: Path,
) -> None:
    folder = shop(tmp_path, *SHOP, sits())
    assert faults(folder) == [
        "build_valves.csv:3: the id 'tovelin-a/main' stands twice, first on line 2; "
        "give one of the two rows another id."
    ]


@pytest.mark.parametrize(
    "rows",
    [
        [build(brand="Vos"), build("tovelin-b"), sits(), says("fits", build="tovelin-a")],
        [seal("UQ-1", replaced_by="UQ-2"), seal("UQ-2", replaced_by="UQ-3"),
         seal("UQ-3", replaced_by="UQ-4"), seal("UQ-4", replaced_by="UQ-9"), says("fits", "UQ-1")],
        [build(made_from=1990, made_to=1980), sits(), says("fits", build="tovelin-a")],
        [says("fits", build="tovelin-a"), build(), build("tovelin-b"), sits()],
    ],
    ids=["a maker unknown", "a long chain", "years reversed", "a valve and a build"],
)  # fmt: skip
def test_a_row_whose_names_lead_nowhere_is_left_out_with_all_that_rest_on_it(
    tmp_path: Path, rows: list[Row]
) -> None:
    folder = shop(tmp_path, valve(), seal(), *rows)
    brands = table(folder, "brands.csv")
    brands.write_text(brands.read_text().replace("Vos,", "Vas,"))
    fitment = table(folder, "fitment.csv")
    fitment.write_text(fitment.read_text().replace("E001,,tovelin-a", "E001,gate-2,tovelin-a"))
    found = gather(folder, TODAY, OLDEST)
    read = {file: getattr(found.tables, name) for name, file in NAMES.items()}
    assert found.tables.evidence == {}
    assert [*reference_faults(folder, read)] == []


def test_a_row_with_a_cell_too_many_is_still_a_row_that_others_may_name(tmp_path: Path) -> None:
    folder = shop(tmp_path, *SHOP)
    widen(table(folder, "flush_valves.csv"), 2)
    assert len(faults(folder)) == 1
    assert told(folder, "unknown-name") == []


def test_lines_are_counted_as_an_editor_counts_them(tmp_path: Path) -> None:
    folder = shop(tmp_path)
    table(folder, "brands.csv").write_bytes(
        b'brand,aliases\r\nUlm,"one\r\ntwo"\r\n\r\n , \r\nVos\r\nDun,,\r\n'
    )
    mend = "put quotes round a text with a comma, or fill in the missing cells."
    assert faults(folder) == [
        f"brands.csv:6: the row has 1 cell where the header has 2; {mend}",
        f"brands.csv:7: the row has 3 cells where the header has 2; {mend}",
    ]
    assert gather(folder, TODAY, OLDEST).at("brands.csv", "Ulm")[1] == 2


def test_what_stands_before_broken_csv_is_read_and_looked_through(tmp_path: Path) -> None:
    folder = shop(tmp_path, build(brand="Vos"))
    table(folder, "brands.csv").write_text('brand,aliases\n,x\nUlm,"Ul" mb\nVos,\n')
    assert faults(folder) == [
        "brands.csv:3: the table is not sound CSV from here on (',' expected after '\"'); "
        "check its quotes and commas.",
        "brands.csv:2: the cell 'brand' is empty; fill it in.",
    ]
    assert told(folder, "unknown-name") == []  # Vos may well stand in what was not read


def test_every_column_that_is_missing_is_told_and_the_others_are_read(tmp_path: Path) -> None:
    folder = shop(tmp_path)
    table(folder, "styles.csv").write_text("style,aliases,aliases,usual_from\nring,,,soon\n")
    assert faults(folder) == [
        "styles.csv:1: the column 'plain_name' is missing; add a column headed 'plain_name'.",
        "styles.csv:1: the column 'aliases' stands twice; keep one of them.",
        *(
            f"styles.csv:1: the column '{name}' is missing; "
            f"add a column headed '{name}' (its cells may stay empty)."
            for name in ("usual_openings_in", "usual_to", "drawing", "looks")
        ),
        "styles.csv:2: usual_from 'soon' cannot be read; "
        "write a year such as 1994, or the word open.",
    ]


def test_a_byte_order_mark_is_no_fault(tmp_path: Path) -> None:
    folder = shop(tmp_path)
    table(folder, "brands.csv").write_text(BRANDS, encoding="utf-8-sig")
    assert faults(folder) == []


def test_a_byte_that_is_no_utf_8_is_told_at_its_line(tmp_path: Path) -> None:
    folder = shop(tmp_path)
    table(folder, "brands.csv").write_bytes(b'brand,aliases\n"Ulm\n",\nVos,\xf6\n')
    assert faults(folder) == [
        "brands.csv:4: byte 0xf6 is not UTF-8; save the table as 'CSV UTF-8'."
    ]


@pytest.mark.parametrize(
    ("toml", "line"),
    [
        ('name = "Ulm"\n\n[contact]\nmail = "a@b.example"\n', "4: 'contact.mail' is nothing that "
         "answers look for; perhaps email is meant."),
        ('name = "Ulm"\n[choosing]\nfirst = ["cheap"]\n', "3: 'choosing.first' 'cheap' is no "
         "preference; use some of: in stock, genuine, compatible, price."),
        ('town = "Ulm"\n', "1: 'name' is missing; write name = '...'."),
        ('name = "Ulm"\ntown = Ulm\n', "2: is not sound TOML"),
    ],
)  # fmt: skip
def test_settings_that_cannot_be_read_are_told_at_their_line(
    tmp_path: Path, toml: str, line: str
) -> None:
    folder = shop(tmp_path)
    (folder / "knowledge/shop.toml").write_text(toml)
    (fault,) = faults(folder)
    assert fault.startswith(f"shop.toml:{line}")


@pytest.mark.parametrize(
    ("note", "line"),
    [
        ("---\ntitle: Chains\naudience: customers\nupdated: soon\n---\n",
         "4: 'updated' 'soon' is no day; write a day such as 2026-11-25."),
        ("---\ntitle: Chains\n---\n",
         "2: the audience is 'None'; write 'audience: customers' or 'audience: staff'."),
        ("Chains\n",
         "1: the front matter is missing; begin with '---', title and audience."),
    ],
)  # fmt: skip
def test_a_note_that_cannot_be_read_is_told_and_the_others_are_read(
    tmp_path: Path, note: str, line: str
) -> None:
    notes = shop(tmp_path) / "knowledge/notes"
    (notes / "chains.md").write_text(note)
    (notes / "rings.md").write_text("---\ntitle: Rings\naudience: staff\n---\n## A\n\nIt is so.\n")
    assert faults(tmp_path) == [f"notes/chains.md:{line}"]
    assert [*gather(tmp_path, TODAY, OLDEST).notes] == ["rings"]


def test_a_folder_that_is_missing_is_told_once(tmp_path: Path) -> None:
    (tmp_path / "knowledge").mkdir()
    assert faults(tmp_path) == [
        "shop.toml:1: the file is missing; add it with name = '...'.",
        "notes:1: the folder is missing; make it, even if it stays empty.",
        "tables:1: the folder is missing; make it, and put the tables there.",
    ]


@pytest.mark.parametrize("name", ["nowhere", "a file", "an empty folder"])
def test_what_is_no_shop_is_not_looked_through(tmp_path: Path, name: str) -> None:
    (tmp_path / "a file").touch()
    (tmp_path / "an empty folder").mkdir()
    with pytest.raises(KnowledgeError, match="--shop"):
        lint(tmp_path / name, TODAY, OLDEST)
