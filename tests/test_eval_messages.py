"""The labelled messages themselves, and how a reply is held against a label."""

from __future__ import annotations

import json
from collections import Counter
from pathlib import Path
from typing import Any

import pytest
from demonstration import FOLDER, shop

from assistant.answers.answer import Answer, Reply
from assistant.answers.draft import Asked, Part
from assistant.errors import KnowledgeError
from assistant.fitment.decision import Outcome
from assistant.measuring.judged import Judged, judged
from assistant.measuring.messages import Message, messages
from assistant.measuring.report.compare import compared
from assistant.measuring.totals import Share, totals
from assistant.reading.facts import Fact, Facts, Interval

LINES = (FOLDER / "eval" / "messages.jsonl").read_text(encoding="utf-8").splitlines()
ROWS = [json.loads(line) for line in LINES]
OUTCOMES = {str(outcome) for outcome in Outcome}


def test_there_are_enough_and_three_in_five_are_only_measured() -> None:
    assert len(ROWS) >= 400
    assert sum(not a["answerable"] for row in ROWS for a in row["answers"]) >= 120
    assert 0.5 < sum(row["split"] == "measure" for row in ROWS) / len(ROWS) < 0.7
    assert max(Counter(row["id"] for row in ROWS).values()) == 1
    assert max(Counter(row["text"] for row in ROWS).values()) == 1


def test_every_label_can_be_read_and_names_only_seals_that_are_sold() -> None:
    seals = shop().tables.seals
    sold = {part_no for part_no, seal in seals.items() if seal.status != "discontinued"}
    for split in ("tune", "measure"):
        for message in messages(FOLDER / "eval" / "messages.jsonl", split):  # type: ignore[arg-type]
            for expected in message.answers:
                assert set(expected.outcomes) <= OUTCOMES
                assert expected.may_name <= sold, message.id
                assert not expected.never & expected.may_name, message.id
                assert expected.never <= set(seals), message.id
                assert set(expected.question) <= set(shop().tables.questions), message.id
                assert bool(expected.may_name) or not expected.answerable, message.id


def test_a_line_that_is_no_message_is_named(tmp_path: Path) -> None:
    path = tmp_path / "messages.jsonl"
    path.write_text('{"id": "x", "split": "tune"}\n', encoding="utf-8")
    with pytest.raises(KnowledgeError, match=r"messages\.jsonl, line 1: is no labelled message"):
        messages(path, "tune")


LABEL: dict[str, Any] = {
    "id": "x1",
    "split": "tune",
    "kind": ["one-liner"],
    "text": "flapper for a Bench Model of 1985, 2 inch",
    "earlier": [],
    "asked": None,
    "answers": [
        {
            "outcome": ["part"],
            "answerable": True,
            "reason": "",
            "parts": ["A", "B"],
            "branches": [],
            "never": ["C"],
            "question": ["made"],
        }
    ],
    "facts": [
        {"name": "made", "value": [1985, 1985]},
        {"name": "opening", "value": 2, "unit": "in"},
    ],
}


def label(tmp_path: Path, **changed: Any) -> Message:
    """The one message of a file, its answer changed."""
    row = {**LABEL, "answers": [{**LABEL["answers"][0], **changed}]}
    path = tmp_path / "messages.jsonl"
    path.write_text(json.dumps(row) + "\n", encoding="utf-8")
    (message,) = messages(path, "tune")
    return message


def part(number: str, condition: str | None = None) -> Part:
    return Part(number, "main", 1, condition, "evidence", "stocked", ())


def reply(*parts: Part, also: tuple[str, ...] = (), asks: str | None = None) -> Reply:
    outcome = Outcome.PART if parts else Outcome.ASK
    asked = Asked(asks, "?", "") if asks else None
    answer = Answer(outcome=outcome, text="", parts=parts, also_fits=also, question=asked)
    made = Fact(name="made", value=Interval(1984, 1986), words="1985", start=0, end=4)
    return Reply((answer,), Facts((made,)), "customers", 1.0)


def one(message: Message, made: Reply) -> Judged:
    (found,) = judged(message, made).answers
    return found


def test_the_whole_set_is_exact_and_a_part_of_it_is_not(tmp_path: Path) -> None:
    message = label(tmp_path)
    whole, half = one(message, reply(part("A"), also=("B",))), one(message, reply(part("A")))
    assert (whole.wrong, whole.exact, whole.right_outcome) == (frozenset(), True, True)
    assert (half.wrong, half.exact, half.answered) == (frozenset(), False, True)


def test_a_seal_beside_the_set_is_wrong_and_so_is_any_where_none_may_be_named(
    tmp_path: Path,
) -> None:
    assert one(label(tmp_path), reply(part("A"), also=("C",))).wrong == {"C"}
    silent = label(tmp_path, outcome=["no match"], answerable=False, parts=[])
    assert one(silent, reply(part("A"))).wrong == {"A"}
    assert one(silent, reply()).silent


def test_a_seal_has_to_stand_under_the_years_of_its_branch(tmp_path: Path) -> None:
    branches = [
        {"if": "made 1970 to 1979", "parts": ["A"]},
        {"if": "made 1980 to 1989", "parts": ["B"]},
    ]
    message = label(tmp_path, outcome=["depends"], parts=[], branches=branches)
    right = reply(part("A", "it was made from 1970 to 1979"), part("B", "from 1980 to 1989"))
    turned = reply(part("B", "it was made from 1970 to 1979"), part("A", "from 1980 to 1989"))
    assert (one(message, right).conditions, one(message, turned).conditions) == (True, False)


def test_the_question_has_to_be_one_of_those_that_should_follow(tmp_path: Path) -> None:
    message = label(tmp_path)
    assert one(message, reply(asks="made")).asked_well is True
    assert one(message, reply(asks="ears")).asked_well is False
    assert one(message, reply()).asked_well is False


def test_facts_are_found_missed_or_read_beside(tmp_path: Path) -> None:
    read = {r.name: (r.found, r.missed, r.beside) for r in judged(label(tmp_path), reply()).facts}
    assert read == {"made": (1, 0, 0), "opening": (0, 1, 0)}


def test_shares_name_their_base(tmp_path: Path) -> None:
    message = label(tmp_path)
    cases = [judged(message, reply(part("A"), also=("C",))), judged(message, reply(part("A")))]
    found = totals(cases)
    assert (found.wrong, found.answered) == (Share(1, 2), Share(1, 2))
    assert str(Share(0, 0)) == "none"


def test_two_reports_tell_what_moved() -> None:
    def report(wrong: int, answered: int) -> dict[str, Any]:
        sums = {"wrong parts shown": [wrong, 10], "answered when answerable": [answered, 10]}
        held = {"messages": {"totals": sums}, "retrieval": {"scores": {}}}
        return {"splits": {"measure": held}, "cases": []}

    assert compared(report(1, 5), report(1, 5)) == ["Nothing moved."]
    assert compared(report(2, 8), report(1, 5)) == [
        "worse   measure: wrong parts shown 0.100 → 0.200",
        "better  measure: answered when answerable 0.500 → 0.800",
    ]
