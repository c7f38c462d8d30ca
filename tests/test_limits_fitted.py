"""The limits of the search are what the labelled rows marked 'tune' give, and no others."""

from __future__ import annotations

import json
import shutil
from dataclasses import replace
from pathlib import Path

import pytest
from demonstration import FOLDER, shop
from searching import demo_search

from assistant.errors import KnowledgeError
from assistant.measuring.fit import NOTHING, fitted
from assistant.measuring.labelled import looks, questions
from assistant.search.limits import OWN, limits_for
from assistant.search.model import DEFAULT

EVAL = FOLDER / "eval"
ROWS = {
    name: [json.loads(line) for line in (EVAL / name).read_text(encoding="utf-8").splitlines()]
    for name in ("questions.jsonl", "looks.jsonl")
}


def test_a_new_fit_gives_the_limits_that_are_kept() -> None:
    search = replace(demo_search(), limits=NOTHING)
    again = fitted(search, questions(EVAL, "tune"), looks(EVAL, "tune"))
    kept = vars(limits_for(DEFAULT))
    for name, value in vars(again).items():
        close = pytest.approx(kept[name], rel=0.02, abs=0.02)
        assert value == close, name


def test_the_fit_sees_no_row_that_is_only_measured(tmp_path: Path) -> None:
    for name, rows in ROWS.items():
        spoilt = [row | {"text": "?"} if row["split"] == "measure" else row for row in rows]
        (tmp_path / name).write_text("\n".join(map(json.dumps, spoilt)), encoding="utf-8")
    assert questions(tmp_path, "tune") == questions(EVAL, "tune")
    assert looks(tmp_path, "tune") == looks(EVAL, "tune")


@pytest.mark.parametrize("name", ROWS)
def test_every_row_has_one_split_and_a_name_of_its_own(name: str) -> None:
    assert {row["split"] for row in ROWS[name]} == {"tune", "measure"}
    assert len({row["id"] for row in ROWS[name]}) == len(ROWS[name])
    assert len({row["text"] for row in ROWS[name]}) == len(ROWS[name])


def test_every_section_that_is_said_to_answer_is_there() -> None:
    there = {f"{n.name}#{slug}" for n in shop().notes.values() for slug in n.sections}
    graded = {section for row in ROWS["questions.jsonl"] for section in row["answered_by"]}
    assert graded <= there


def test_every_look_names_a_style_of_the_table_or_none() -> None:
    assert {row["style"] for row in ROWS["looks.jsonl"]} == {None, *shop().tables.styles}


def test_a_model_without_limits_is_told() -> None:
    with pytest.raises(KnowledgeError, match="no limits are fitted for the model 'other'"):
        limits_for("other")


def test_a_shop_s_own_limits_come_first(tmp_path: Path) -> None:
    own = tmp_path / OWN
    own.parent.mkdir()
    shutil.copy(FOLDER / "assistant" / "search" / "limits.toml", own)
    text = own.read_text(encoding="utf-8")
    own.write_text(text.replace("answers_at = 0.", "answers_at = 0.9"), encoding="utf-8")
    assert limits_for(DEFAULT, tmp_path).answers_at > 0.9


def test_broken_limits_are_told(tmp_path: Path) -> None:
    own = tmp_path / OWN
    own.parent.mkdir()
    own.write_text(f'["{DEFAULT}"]\npassage = "much"\n', encoding="utf-8")
    with pytest.raises(KnowledgeError, match="limits"):
        limits_for(DEFAULT, tmp_path)
