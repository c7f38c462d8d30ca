"""The labelled questions themselves: their grades, the reasons for them, and the judgements."""

from __future__ import annotations

import json
import re
from collections import Counter, defaultdict
from collections.abc import Mapping
from typing import Any

import ir_measures
from demonstration import FOLDER, shop

from assistant.measuring.labelled import SERVES
from assistant.search.passages import passages_of

EVAL = FOLDER / "eval"
ROWS: list[dict[str, Any]] = [
    json.loads(line) for line in (EVAL / "questions.jsonl").read_text(encoding="utf-8").splitlines()
]
JUDGEMENTS = [*ir_measures.read_trec_qrels(str(EVAL / "questions.qrels"))]
PASSAGES = passages_of(shop().notes)
SECTIONS = {f"{passage.note}#{passage.section}" for passage in PASSAGES}


def said(text: str) -> str:
    """A wording without its case and its points."""
    return " ".join(re.findall(r"\w+", re.sub("['’]", "", text.casefold())))


def serving(row: Mapping[str, Any]) -> set[str]:
    """The sections that serve the asker."""
    return {section for section, grade in row["answered_by"].items() if grade >= SERVES}


def test_there_are_enough_and_no_name_or_wording_comes_twice() -> None:
    assert len(ROWS) >= 80
    assert max(Counter(row["id"] for row in ROWS).values()) == 1
    assert max(Counter(said(row["text"]) for row in ROWS).values()) == 1


def test_a_grade_tells_how_far_a_section_that_is_searched_answers() -> None:
    for row in ROWS:
        assert set(row["answered_by"].values()) <= {1, 2, 3}, row["id"]
        assert set(row["answered_by"]) <= SECTIONS, row["id"]


def test_every_section_that_serves_has_its_reason_and_no_other_has_one() -> None:
    for row in ROWS:
        assert set(row["because"]) == serving(row), row["id"]


def test_a_reason_is_a_short_sentence() -> None:
    for row in ROWS:
        for section, reason in row["because"].items():
            assert 4 <= len(reason.split()) <= 25, (row["id"], section)
            assert re.fullmatch(r"[A-Z0-9].*[.]", reason), (row["id"], section)


def test_the_judgements_say_the_same_as_the_grades() -> None:
    judged: dict[str, dict[str, int]] = defaultdict(dict)
    for one in JUDGEMENTS:
        if one.relevance:
            judged[one.query_id][one.doc_id] = one.relevance
    assert judged == {row["id"]: row["answered_by"] for row in ROWS if row["answered_by"]}


def test_a_pair_is_judged_once_and_every_question_has_sections_that_do_not_answer() -> None:
    pairs = [(one.query_id, one.doc_id) for one in JUDGEMENTS]
    assert pairs == sorted(set(pairs))
    assert {section for _, section in pairs} <= SECTIONS
    assert {one.relevance for one in JUDGEMENTS} == {0, 1, 2, 3}
    assert {one.query_id for one in JUDGEMENTS if not one.relevance} == {row["id"] for row in ROWS}


def test_no_question_is_taken_from_a_note_word_for_word() -> None:
    wordings = {said(wording) for passage in PASSAGES for wording in passage.wordings}
    assert [row["id"] for row in ROWS if said(row["text"]) in wordings] == []
