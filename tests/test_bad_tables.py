"""What a shop's tables may get wrong: each ends in exit code 2 and one sentence.

The sentence names the file, the row and the field, and how to mend it; standard output stays
empty.
"""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.broken import copy_of_demo, drop_column, edit, rows_of, run, save_as, widen

Break = Callable[[Path], object]

BROKEN: list[tuple[str, Break, str]] = [
    (
        "a table is missing",
        lambda tables: (tables / "seals.csv").unlink(),
        "seals.csv: the table is missing; put it there or name the right --shop.",
    ),
    (
        "a table is a folder",
        lambda tables: ((tables / "seals.csv").unlink(), (tables / "seals.csv").mkdir()),
        "seals.csv: cannot be read (Is a directory); check its permissions.",
    ),
    (
        "a table is an empty file",
        lambda tables: (tables / "brands.csv").write_text(""),
        "brands.csv, row 1, field brand: the column is missing; add a column headed 'brand'.",
    ),
    (
        "a column is missing",
        lambda tables: drop_column(tables / "flush_valves.csv", "peg_span_mm"),
        "flush_valves.csv, row 1, field peg_span_mm: the column is missing; "
        "add a column headed 'peg_span_mm' (its cells may stay empty).",
    ),
    (
        "a column that must be filled is missing",
        lambda tables: drop_column(tables / "fitment.csv", "verdict"),
        "fitment.csv, row 1, field verdict: the column is missing; add a column headed 'verdict'.",
    ),
    (
        "a column stands twice",
        lambda tables: edit(tables / "brands.csv", 1, aliases="brand"),
        "brands.csv, row 1, field brand: the column stands twice; keep one of them.",
    ),
    (
        "a bad number in row 41",
        lambda tables: edit(tables / "seals.csv", 41, opening_in="2 1/2"),
        "seals.csv, row 41, field opening_in: '2 1/2' cannot be read; "
        "write a plain number such as 2.5.",
    ),
    (
        "a number with a slip of the keyboard",
        lambda tables: edit(tables / "flush_valves.csv", 3, peg_span_mm="8_2"),
        "flush_valves.csv, row 3, field peg_span_mm: '8_2' cannot be read; "
        "write a plain number such as 2.5.",
    ),
    (
        "a price with its sign",
        lambda tables: edit(tables / "seals.csv", 7, price="$7.50"),
        "seals.csv, row 7, field price: '$7.50' cannot be read; "
        "write an amount such as 7.50, without a currency sign.",
    ),
    (
        "a word that the column does not know",
        lambda tables: edit(tables / "seals.csv", 3, status="sold out"),
        "seals.csv, row 3, field status: 'sold out' cannot be read; "
        "write one of: stocked, to order, discontinued.",
    ),
    (
        "a way of holding that nobody knows",
        lambda tables: edit(tables / "flush_valves.csv", 2, mount="wire; glue"),
        "flush_valves.csv, row 2, field mount: 'wire; glue' cannot be read; "
        "write one of: pegs, ring, clip, strap, wire, canister, tower, push, thread.",
    ),
    (
        "a year in words",
        lambda tables: edit(tables / "toilets.csv", 5, made_to="now"),
        "toilets.csv, row 5, field made_to: 'now' cannot be read; "
        "write a year such as 1994, or the word open.",
    ),
    (
        "a cell that must be filled is empty",
        lambda tables: edit(tables / "fitment.csv", 9, part_no=" "),
        "fitment.csv, row 9, field part_no: is empty; fill it in.",
    ),
    (
        "an id stands twice",
        lambda tables: (
            edit(tables / "seals.csv", 5, part_no="ZZ-1"),
            edit(tables / "seals.csv", 12, part_no="ZZ-1"),
        ),
        "seals.csv, row 12, field part_no: the id 'ZZ-1' stands twice; "
        "give one of the two rows another id.",
    ),
    (
        "a position is filled twice",
        lambda tables: [
            edit(tables / "build_valves.csv", row, build="ulm-a", position="main") for row in (2, 3)
        ],
        "build_valves.csv, row 3, field position: the id 'ulm-a/main' stands twice; "
        "give one of the two rows another id.",
    ),
    (
        "a row has a comma too many",
        lambda tables: widen(tables / "brands.csv", 4),
        "brands.csv, row 4: has 3 cells where the header has 2; "
        "put quotes round a text with a comma, or fill in the missing cells.",
    ),
    (
        "a quote never ends",
        lambda tables: (tables / "brands.csv").write_text('brand,aliases\nUlm,"Ulmb\n'),
        "brands.csv, row 2: is not sound CSV (unexpected end of data); "
        "check its quotes and commas.",
    ),
    (
        "a table is saved in Latin-1",
        lambda tables: (
            edit(tables / "brands.csv", 3, aliases="Bröller"),
            save_as(tables / "brands.csv", "latin-1"),
        ),
        "brands.csv, row 3: byte 0xf6 is not UTF-8; save the table as 'CSV UTF-8'.",
    ),
    (
        "a table is saved in UTF-16",
        lambda tables: save_as(tables / "seals.csv", "utf-16"),
        "seals.csv, row 1: byte 0xff is not UTF-8; save the table as 'CSV UTF-8'.",
    ),
    (
        "a row refers to a part that nobody lists",
        lambda tables: edit(tables / "fitment.csv", 10, evidence="Z9", part_no="ZZ-0"),
        "fitment.csv, field part_no: row 'Z9' names 'ZZ-0', which is not in seals.csv; "
        "add it there or correct the name.",
    ),
    (
        "a valve sits in a build that nobody lists",
        lambda tables: edit(tables / "build_valves.csv", 10, build="ulm-a", position="main"),
        "build_valves.csv, field build: row 'ulm-a/main' names 'ulm-a', "
        "which is not in toilets.csv; add it there or correct the name.",
    ),
    (
        "a part is replaced by one that nobody lists",
        lambda tables: edit(tables / "seals.csv", 2, replaced_by="ZZ-0"),
        "seals.csv, field replaced_by: row '{seal_2}' names 'ZZ-0', which is not in seals.csv; "
        "add it there or correct the name.",
    ),
    (
        "evidence on a valve and a build at once",
        lambda tables: edit(
            tables / "fitment.csv",
            2,
            evidence="Z9",
            valve=rows_of(tables / "flush_valves.csv")[1][0],
            build=rows_of(tables / "toilets.csv")[1][0],
        ),
        "fitment.csv, field valve: row 'Z9' must name a valve or a build, "
        "and just one of them; fill in one and empty the other.",
    ),
    (
        "evidence on neither a valve nor a build",
        lambda tables: edit(tables / "fitment.csv", 2, evidence="Z9", valve="", build=""),
        "fitment.csv, field valve: row 'Z9' must name a valve or a build, "
        "and just one of them; fill in one and empty the other.",
    ),
    (
        "no tables at all",
        lambda tables: shutil.rmtree(tables),
        ": the folder of tables is missing; name the shop's folder with --shop.",
    ),
]


@pytest.mark.parametrize(
    ("broken", "sentence"), [pytest.param(*case[1:], id=case[0]) for case in BROKEN]
)
def test_a_broken_table_ends_in_one_sentence(
    broken: Break,
    sentence: str,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    tables = copy_of_demo(tmp_path) / "tables"
    seal = rows_of(tables / "seals.csv")[1][0]
    broken(tables)
    assert run(monkeypatch, "ask", "Which seal fits?", "--shop", str(tmp_path)) == 2
    out, err = capsys.readouterr()
    slash = "" if sentence.startswith(":") else "/"
    assert err == f"counterhand: {tables}{slash}{sentence.format(seal_2=seal)}\n"
    assert out == ""
