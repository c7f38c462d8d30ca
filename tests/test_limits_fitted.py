"""The limits of the search are what the labelled rows marked 'tune' give, and no others."""

from __future__ import annotations

import json
import shutil
from dataclasses import replace
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from demonstration import FOLDER, shop
from searching import demo_search

from assistant.errors import KnowledgeError
from assistant.measuring import fit
from assistant.measuring.labelled import looks, questions
from assistant.search.limits import FITTED, OWN, Limits, limits_for
from assistant.search.model import DEFAULT

EVAL = FOLDER / "eval"
KEPT = FITTED.read_bytes()
ROWS = {
    name: [json.loads(line) for line in (EVAL / name).read_text(encoding="utf-8").splitlines()]
    for name in ("questions.jsonl", "looks.jsonl")
}


def spoilt(folder: Path) -> Path:
    """A copy of the rows in which nothing is left of those that are only measured."""
    folder.mkdir(parents=True)
    for name, rows in ROWS.items():
        left = [{"split": "measure"} if row["split"] == "measure" else row for row in rows]
        (folder / name).write_text("\n".join(map(json.dumps, left)), encoding="utf-8")
    return folder


@cache
def again() -> Limits:
    """The limits of a new fit, as the command makes it, to the shop's rows that may be seen."""
    with TemporaryDirectory() as folder, pytest.MonkeyPatch.context() as patch:
        copy = Path(folder)
        shutil.copytree(FOLDER / "knowledge", copy / "knowledge")
        spoilt(copy / "eval")
        patch.setattr(fit, "open_search", lambda *_, limits: replace(demo_search(), limits=limits))
        fit.main(copy)
        return limits_for(DEFAULT, copy)


LIMITS = ("answers_at", "looks_at", "looks_ahead")
WEIGHTS = [name for name in Limits.__dataclass_fields__ if name not in LIMITS]


@pytest.mark.parametrize("name", WEIGHTS)
def test_a_new_fit_gives_the_weights_that_are_kept(name: str) -> None:
    kept = getattr(limits_for(DEFAULT), name)
    assert getattr(again(), name) == pytest.approx(kept, rel=0.02, abs=0.002)


@pytest.mark.parametrize("name", LIMITS)
def test_and_the_very_limits(name: str) -> None:
    kept = getattr(limits_for(DEFAULT), name)
    assert getattr(again(), name) == pytest.approx(kept, abs=0.011)  # a hundredth: rounding


def test_a_fit_for_a_shop_of_its_own_leaves_ours_alone() -> None:
    again()
    assert FITTED.read_bytes() == KEPT


def test_the_fit_sees_no_row_that_is_only_measured(tmp_path: Path) -> None:
    copy = spoilt(tmp_path / "eval")
    assert questions(copy, "tune") == questions(EVAL, "tune") != []
    assert looks(copy, "tune") == looks(EVAL, "tune") != []


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


def test_a_model_without_limits_is_told_in_one_sentence() -> None:
    with pytest.raises(KnowledgeError) as told:
        limits_for("other")
    assert str(told.value) == (
        "shop.toml, field search.model: no limits are fitted for the model 'other'; fit them to "
        "labelled rows in eval/ with 'python -m assistant.measuring.fit SHOP'."
    )


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
