"""The labelled conversations: every label is held against the tables by way of plain SQL.

Nothing here answers a customer. A label that the shop's own rows do not bear out would make a
right answer look wrong, so the labels are tested before anything is measured on them.
"""

from __future__ import annotations

import json
import re
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Any

import pytest
from demonstration import FOLDER, TRUTH

from assistant.fitment.decision import Outcome

LINES = (FOLDER / "eval" / "dialogues.jsonl").read_text(encoding="utf-8").splitlines()
ROWS: list[dict[str, Any]] = [json.loads(line) for line in LINES]
OPEN = [row for row in ROWS if row["form"] == "open"]
SCRIPTED = [row for row in ROWS if row["form"] == "scripted"]

OUTCOMES = {str(outcome) for outcome in Outcome}
QUESTIONS = {row["question"] for row in TRUTH.rows("questions")}
LIVING = {p for p, seal in TRUTH.seals.items() if seal["status"] != "discontinued"}
FACTS = {
    *("brand", "model", "model_no", "part_no", "unlisted", "made", "bought", "house", "year"),
    *("opening", "disc", "hinge_width", "tube", "ears", "mount", "overflow", "flush", "pieces"),
    *("tank_kind", "colour", "symptom", "hazard", "valve_original"),
}
HINGE_TOLERANCE_MM = 3
NUMBERS = {"two": 2.0, "three": 3.0}
FRACTIONS = {" and a half": 0.5, " and a quarter": 0.25}

KINDS_OF_OPEN = {
    *("plain", "no question needed", "unlisted toilet", "valve replaced", "undecidable"),
    *("changes mind", "not a seal"),
}
KINDS_OF_SCRIPTED = {
    *("correction", "does not know", "second one named", "yes or no", "number alone"),
    *("changing toilet", "second toilet", "photo promised", "thanks", "contradiction"),
    *("valve replaced late", "how in between", "hazard", "disc measured", "pushing"),
}


def called(row: Mapping[str, Any]) -> str:
    """The id, for the names of tests."""
    return str(row["id"])


def turns() -> Iterator[tuple[str, int, dict[str, Any], dict[str, Any] | None]]:
    """Every turn of a script with its place and the turn before."""
    for row in SCRIPTED:
        before = None
        for at, turn in enumerate(row["turns"], start=1):
            yield row["id"], at, turn, before
            before = turn


def fitting(builds: Sequence[str], position: str | None = None) -> set[str]:
    """The living seals that fit every build, in one position or in each that all of them have."""
    named = [position] if position else ["main", "rinse"]
    places = [at for at in named if builds and all(at in TRUTH.valves[b] for b in builds)]
    return {
        part_no
        for at in places
        for part_no in LIVING
        if all(TRUTH.verdicts[b, at, part_no].startswith("fits") for b in builds)
    }


def by_measures(measured: Mapping[str, Any]) -> set[str]:
    """The living seals of which no size disagrees with what was measured."""

    def agrees(seal: Mapping[str, str]) -> bool:
        low, high = seal["flush_gpf_min"], seal["flush_gpf_max"]
        flush = measured.get("flush")
        return (
            ("opening" not in measured or float(seal["opening_in"]) == measured["opening"])
            and measured["mount"] in seal["mount"].split(";")
            and measured.get("ears", seal["ears"]) == seal["ears"]
            and abs(float(seal["ear_span_mm"] or 0) - measured["hinge_mm"]) <= HINGE_TOLERANCE_MM
            and not (flush and low and flush < float(low))
            and not (flush and high and flush > float(high))
        )

    return {part_no for part_no in LIVING if agrees(TRUTH.seals[part_no])}


def holds(branch: Mapping[str, Any]) -> bool:
    """Whether a branch names just what its builds take, or what its measures leave."""
    if "measured" in branch:
        return set(branch["parts"]) == by_measures(branch["measured"])
    return set(branch["parts"]) == fitting(branch["builds"], branch.get("position"))


def nameable(label: Mapping[str, Any]) -> set[str]:
    """All that may be named by a label, plainly or under a condition."""
    return {*label["parts"], *(p for branch in label["branches"] for p in branch["parts"])}


def test_there_are_enough_of_both_forms_and_none_twice() -> None:
    assert len(ROWS) >= 60
    assert (len(OPEN), len(SCRIPTED)) == (40, 32)
    assert max(Counter(row["id"] for row in ROWS).values()) == 1
    openings = [row["opening"] for row in OPEN] + [r["turns"][0]["says"] for r in SCRIPTED]
    assert max(Counter(openings).values()) == 1
    assert {row["split"] for row in ROWS} <= {"", "tune", "measure"}


def test_every_kind_of_conversation_occurs() -> None:
    def kinds(rows: Iterable[Mapping[str, Any]]) -> Counter[str]:
        return Counter(kind for row in rows for kind in row["kind"])

    assert set(kinds(OPEN)) >= KINDS_OF_OPEN
    assert set(kinds(SCRIPTED)) >= KINDS_OF_SCRIPTED
    wanted = {"unlisted toilet": 6, "valve replaced": 5, "undecidable": 4, "changes mind": 4}
    for kind, least in {**wanted, "no question needed": 5, "not a seal": 3}.items():
        assert kinds(OPEN)[kind] >= least, kind


def test_every_maker_of_the_shop_and_every_style_of_seal_is_met() -> None:
    builds = {row["truth"]["build"] for row in OPEN} - {None}
    builds |= {build for _, _, turn, _ in turns() for build in turn["builds"]}
    assert {TRUTH.builds[b]["brand"] for b in builds} == {r["brand"] for r in TRUTH.rows("brands")}
    named = {p for row in OPEN for p in row["settled"]["parts"]}
    named |= {part_no for _, _, turn, _ in turns() for part_no in nameable(turn)}
    assert {TRUTH.seals[p]["style"] for p in named} == {r["style"] for r in TRUTH.rows("styles")}


@pytest.mark.parametrize("row", OPEN, ids=called)
def test_an_open_customer_has_an_answer_to_every_question(row: dict[str, Any]) -> None:
    assert set(row["knows"]) == QUESTIONS
    known = [key for key, answer in row["knows"].items() if answer is not None]
    assert all(row["knows"][key].strip() for key in known)
    assert 0 <= row["fewest"] <= len(known)
    assert row["channel"] in {"chat", "email"}
    assert set(row.get("mistakes", ())) <= set(known)
    if "corrects" in row:
        assert row["corrects"]["says"]
        assert set(row["corrects"]["changed"]) <= FACTS


@pytest.mark.parametrize("row", OPEN, ids=called)
def test_what_is_settled_is_what_the_true_toilet_takes(row: dict[str, Any]) -> None:
    settled, truth = row["settled"], row["truth"]
    assert settled["outcome"]
    assert set(settled["outcome"]) <= OUTCOMES
    assert set(settled["parts"]) <= LIVING
    assert set(row["never"]) <= set(TRUTH.seals)
    assert not set(row["never"]) & set(settled["parts"])
    branches = settled["branches"]
    assert all(map(holds, branches))
    under = {p for branch in branches for p in branch["parts"]}
    alike = fitting(settled["builds"], truth["position"])
    assert set(settled["parts"]) == (under if branches else alike)
    if "part" in settled["outcome"]:
        assert settled["parts"]
    if truth["build"] is None:
        assert settled["outcome"][0] == "no match"
    elif truth["valve_replaced"]:
        valve = truth["valve"]
        assert valve not in {v["valve"] for v in TRUTH.valves[truth["build"]].values()}
        assert all(TRUTH.valves[b]["main"]["valve"] == valve for b in settled["builds"])
    elif settled["parts"]:
        assert truth["build"] in settled["builds"]
        meant = [b["builds"] for b in branches] or [settled["builds"]]
        assert sum(truth["build"] in builds for builds in meant) == 1


def valve_of(row: Mapping[str, Any]) -> Mapping[str, str]:
    """The main flush valve that really sits in the tank."""
    if row["truth"].get("valve"):
        valves = {v["valve"]: v for v in TRUTH.rows("flush_valves")}
        return valves[row["truth"]["valve"]]
    return TRUTH.valves[row["truth"]["build"]].get("main", {})


@pytest.mark.parametrize("row", [r for r in OPEN if r["truth"]["build"]], ids=called)
def test_what_he_knows_agrees_with_his_toilet(row: dict[str, Any]) -> None:
    wrong = set(row.get("mistakes", ()))
    right = {key: "" if key in wrong else said for key, said in row["knows"].items()}
    knows = {key: (said or "").lower() for key, said in right.items()}
    valve, build = valve_of(row), TRUTH.builds[row["truth"]["build"]]
    if said := re.search(r"\b(up|down)(?:ward)?\b", knows["ears"]):
        assert valve["pegs"] == said[1]
    if said := re.match(r"(?:a )?(round|square)\b", knows["overflow"]):
        assert valve["overflow"] == said[1]
    if said := re.search(r"\d+", knows["hinge_width"]):
        assert abs(float(valve["peg_span_mm"]) - float(said[0])) <= HINGE_TOLERANCE_MM
    said = re.match(r"(?:nearly )?(\d|two|three)( and a half| and a quarter)?\b", knows["opening"])
    if said:
        inches = NUMBERS.get(said[1]) or float(said[1])
        assert float(valve["opening_in"]) == inches + FRACTIONS.get(said[2], 0)
    years = [int(year) for year in re.findall(r"\b(?:19|20)\d\d\b", knows["made"])]
    first, last = TRUTH.span(build["build"])
    if years and "house" not in knows["made"]:
        assert any(first <= year <= last for year in years)
    maker, model = build["brand"].lower(), build["model"].lower()
    assert not knows["brand"] or maker.split()[0] in knows["brand"]
    assert not knows["model"] or model in knows["model"]


@pytest.mark.parametrize(("name", "at", "turn", "before"), list(turns()))
def test_a_turn_is_followed_by_what_its_builds_take(
    name: str, at: int, turn: dict[str, Any], before: dict[str, Any] | None
) -> None:
    assert turn["says"].strip()
    assert turn["outcome"]
    assert set(turn["outcome"]) <= OUTCOMES
    assert set(turn["parts"]) == fitting(turn["builds"], turn.get("position"))
    assert all(map(holds, turn["branches"]))
    assert nameable(turn) <= LIVING
    assert set(turn["never"]) <= set(TRUTH.seals)
    assert not set(turn["never"]) & nameable(turn)
    if turn["outcome"] == ["part"]:
        assert turn["parts"]
    if "depends" in turn["outcome"]:
        assert nameable(turn)


@pytest.mark.parametrize(("name", "at", "turn", "before"), list(turns()))
def test_a_reply_fits_the_question_that_may_have_been_asked(
    name: str, at: int, turn: dict[str, Any], before: dict[str, Any] | None
) -> None:
    assert set(turn["question"]) <= QUESTIONS
    assert {*turn["changed"], *turn["contradicts"]} <= FACTS
    if turn["asked"] is not None:
        assert before is not None
        assert turn["asked"] in before["question"]
    if before is None:
        assert not turn["changed"]
    if turn["outcome"] == ["ask"]:
        assert turn["question"]


def test_scripts_have_two_to_six_turns_and_say_which_rows_decide() -> None:
    for row in SCRIPTED:
        assert 2 <= len(row["turns"]) <= 6, row["id"]
    assert all(row["reason"].strip() for row in ROWS)
