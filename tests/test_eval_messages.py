"""The labelled messages themselves, and how a reply is held against a label."""

from __future__ import annotations

import json
from collections import Counter
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from demonstration import FOLDER, TRUTH, shop

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
    (found,) = judged(message, made, TRUTH).answers
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


BRANCHES = [
    {"if": "made 1971 to 1993", "parts": ["PBK-6230"]},
    {"if": "made 1994 to 2004", "parts": ["PBK-6246"]},
]
BRISNOE = "quellwick-brisnoe-a quellwick-brisnoe-b take the same, quellwick-brisnoe-c another"


@pytest.mark.parametrize(
    ("conditions", "right"),
    [
        (("it was made from 1971 to 1993", "it was made from 1994 to 2004"), True),
        (("it was made up to 1993", "it was made since 1994"), True),
        (("51-207 is stamped in the tank", "51-216 is stamped in the tank"), True),
        (("it flushes 3.5 gallons or 5 gallons", "it was made in 1999"), True),
        (("it flushes 3.5 gallons", "it was made in 1999"), False),  # a flushes 5
        (("it was made from 1994 to 2004", "it was made from 1971 to 1993"), False),  # turned
        (("it was made from 1971 to 1994", "it was made from 1995 to 2004"), False),  # too wide
        (("it was made from 1971 to 1980", "it was made from 1994 to 2004"), False),  # b left out
        (("it is the usual one", "it was made from 1994 to 2004"), False),  # says nothing
    ],
)
def test_a_seal_must_fit_all_that_its_condition_selects_and_none_is_left_out(
    tmp_path: Path, conditions: tuple[str, str], right: bool
) -> None:
    message = label(
        tmp_path, outcome=["depends"], parts=[], branches=BRANCHES, reason=BRISNOE, never=[]
    )
    named = [part("PBK-6230", conditions[0]), part("PBK-6246", conditions[1])]
    made = reply(*named)
    depends = replace(made, answers=(replace(made.answers[0], outcome=Outcome.DEPENDS),))
    assert one(message, depends).conditions is right


def test_one_seal_under_each_condition_is_the_whole_set(tmp_path: Path) -> None:
    message = label(
        tmp_path, outcome=["depends"], parts=[], branches=BRANCHES, reason=BRISNOE, never=[]
    )
    both = reply(part("PBK-6230", "made up to 1993"), part("PBK-6246", "made since 1994"))
    assert one(message, both).exact
    assert not one(message, reply(part("PBK-6230", "made up to 1993"))).exact


def test_a_seal_that_must_be_trimmed_may_be_left_out_while_another_fits(tmp_path: Path) -> None:
    label_ = label(tmp_path, parts=["PBK-6246", "PBK-2325"], reason="quellwick-brisnoe-c")
    assert one(label_, reply(part("PBK-6246"))).exact  # PBK-2325 fits there with a change


def test_answers_are_held_against_the_labels_that_they_meet(tmp_path: Path) -> None:
    row = {**LABEL, "answers": [
        {**LABEL["answers"][0], "outcome": ["note"], "answerable": False, "parts": []},
        LABEL["answers"][0],
    ]}  # fmt: skip
    path = tmp_path / "messages.jsonl"
    path.write_text(json.dumps(row) + "\n", encoding="utf-8")
    (message,) = messages(path, "tune")
    found = judged(message, reply(part("A"), also=("B",)), TRUTH).answers
    assert [(a.outcome, a.wrong) for a in found] == [("part", frozenset())]


def test_the_question_has_to_be_one_of_those_that_should_follow(tmp_path: Path) -> None:
    message = label(tmp_path)
    assert one(message, reply(asks="made")).asked_well is True
    assert one(message, reply(asks="ears")).asked_well is False
    assert one(message, reply()).asked_well is False


def test_facts_are_found_missed_or_read_beside(tmp_path: Path) -> None:
    read = {
        r.name: (r.found, r.missed, r.beside) for r in judged(label(tmp_path), reply(), TRUTH).facts
    }
    assert read == {"made": (1, 0, 0), "opening": (0, 1, 0)}


def test_shares_name_their_base(tmp_path: Path) -> None:
    message = label(tmp_path)
    cases = [
        judged(message, reply(part("A"), also=("C",)), TRUTH),
        judged(message, reply(part("A")), TRUTH),
    ]
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
