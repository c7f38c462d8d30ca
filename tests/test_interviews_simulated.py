"""Simulated customers: what they know, how they err, and what an interview makes of it.

A model in two builds whose pegs stand differently, another maker's with a ring, and a tank with
two valves. What is wrong is told by the files alone: a seal held against the valve that is there.
"""

from __future__ import annotations

import csv
import shutil
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

import pytest
from click.testing import CliRunner
from demonstration import FOLDER
from trade import CANISTER, FIRST, RING, build, question, says, seal, sits, tables, valve

from assistant.cli import cli
from assistant.fitment.decide import Counter, counter_for
from assistant.fitment.decision import Outcome
from assistant.interview.next_question import Interviewer, State
from assistant.measuring.campaign.truth import Truth
from assistant.measuring.interviews.bound import bits, fewest_questions
from assistant.measuring.interviews.customer import LIES, ONLY_OMITS, Answer, Customer, Memory
from assistant.measuring.interviews.interview import (
    CERTAIN,
    Interview,
    Policy,
    answered,
    interviewed,
)
from assistant.measuring.interviews.policies import RANDOM, TREE, policies
from assistant.measuring.interviews.run import interviews
from assistant.measuring.interviews.telling import fact
from assistant.measuring.interviews.telling import made as year_made
from assistant.measuring.interviews.toilets import (
    NOT_LISTED,
    REPLACED,
    Toilet,
    listed,
    not_listed,
    replaced,
)
from assistant.measuring.interviews.tree import QuestionTree
from assistant.measuring.interviews.truths import TruthOf
from assistant.reading.facts import Facts
from assistant.records.rows import Row

SEED = 1
EASIEST = ("model_no", "brand", "model", "made", "pieces", "flush", "opening", "mount", "ears")
ROWS: tuple[Row, ...] = (
    valve("near", peg_span_mm=80.0),
    valve("far", peg_span_mm=100.0),
    valve("tube", RING, opening_in=2.5),
    valve("can", CANISTER),
    *(seal("UQ-10", ear_span_mm=80.0), seal("UQ-20", ear_span_mm=100.0)),
    *(seal("UQ-30", RING, opening_in=2.5), seal("UQ-40", CANISTER)),
    *(says("fits", "UQ-10", valve="near"), says("fits", "UQ-20", valve="far")),
    *(says("fits", "UQ-30", valve="tube"), says("fits", "UQ-40", valve="can")),
    build("old", model_no="T1", made_from=1970, made_to=1985, pieces=2, sold=3.0),
    build("new", model_no="T2", made_from=1986, made_to=1999, pieces=2, sold=1.0),
    build("ringed", model="Vask", brand="Vosquith", model_no="V1", made_from=1980, made_to=1990),
    build("twin", model="Twain", model_no="W1", made_from=1980, made_to=1990, pieces=1),
    *(sits("near", "old"), sits("far", "new"), sits("tube", "ringed")),
    *(sits("can", "twin"), sits("near", "twin", "rinse")),
    *(question(name, 1.0) for name in (*EASIEST, "valve_replaced", "old_part", "position")),
    question("hinge_width", 0.0),
)
TABLES = tables(*ROWS)
COUNTER: Counter = counter_for(TABLES, FIRST)
PERFECT = Memory("remembers all")


@pytest.fixture(scope="module")
def truth(tmp_path_factory: pytest.TempPathFactory) -> Truth:
    """The same tables as files, which is all that is known of what is true."""
    folder = tmp_path_factory.mktemp("tables")
    for name in {row.file for row in ROWS}:
        rows = [vars(row) for row in ROWS if row.file == name]
        if name == "fitment.csv":
            rows = [{**row, "evidence": f"E{at}"} for at, row in enumerate(rows)]
        with (folder / name).open("w", newline="", encoding="utf-8") as file:
            writer = csv.DictWriter(file, list(rows[0]))
            writer.writeheader()
            writer.writerows({column: _cell(v) for column, v in row.items()} for row in rows)
    return Truth(folder)


def _cell(value: object) -> object:
    return ";".join(map(str, value)) if isinstance(value, tuple) else value


def toilet(name: str) -> Toilet:
    """A listed toilet."""
    return next(t for t in listed(TABLES, SEED) if t.name == name)


def customer(truth: Truth, of: Toilet, memory: Memory = PERFECT, seed: int = SEED) -> Customer:
    """A customer with such a toilet."""
    others = listed(TABLES, SEED)
    return Customer(TABLES, TruthOf(truth, [*others, of]), of, memory, seed, others)


def asks(*questions: str) -> Policy:
    """A policy that asks these in order, whatever is answered."""
    return lambda state: next((q for q in questions if q not in state.asked), None)


def asked(truth: Truth, of: Toilet, memory: Memory, *questions: str) -> Interview:
    """One interview by a list of questions."""
    who = customer(truth, of, memory)
    return interviewed(COUNTER, Interviewer(COUNTER), asks(*questions), who)


def test_who_remembers_all_tells_what_the_rows_say(truth: Truth) -> None:
    who = customer(truth, toilet("old"))
    assert who.answer("model_no").facts[0].choices == ("T1",)
    assert who.answer("model").facts[0].choices == ("Ulmbraith Tovelin",)
    assert 1970 <= who.answer("made").facts[0].interval.low <= 1985
    assert who.answer("opening").facts[0].nominal_in == (2.0,)
    assert who.answer("ears").facts[0].choices == ("up",)
    assert who.answer("old_part").facts[0].choices == ("UQ-10",)
    assert who.answer("valve_replaced").facts[0].name == "valve_original"
    assert not who.answer("position").facts  # there is one valve only
    assert not who.answer("flush").facts  # nobody knows


def test_a_question_is_not_known_as_often_as_it_is_hard(truth: Truth) -> None:
    of = toilet("old")
    assert not customer(truth, of).answer("hinge_width").facts
    half = replace(TABLES.questions["made"], ease=0.5)
    some = replace(TABLES, questions={**TABLES.questions, "made": half})
    known = TruthOf(truth, [of])
    told = [bool(Customer(some, known, of, PERFECT, s).answer("made").facts) for s in range(400)]
    assert 160 < sum(told) < 240


def test_slips_of_memory_are_a_few_years_and_a_size_up(truth: Truth) -> None:
    of = toilet("old")
    who = customer(truth, of, Memory("slips", wrong_year=1.0, disc_measured=1.0))
    made, opening = who.answer("made"), who.answer("opening")
    assert made.false
    assert opening.false
    assert of.year is not None
    assert 1 <= abs(made.facts[0].interval.low - of.year) <= 4
    assert opening.facts[0].nominal_in == (2.5,)


def test_the_widest_opening_has_no_size_up(truth: Truth) -> None:
    widest = replace(toilet("twin"), worn="main")
    who = customer(truth, widest, Memory("slips", disc_measured=1.0))
    assert not who.answer("opening").false
    assert who.answer("opening").facts[0].nominal_in == (3.25,)


def test_every_policy_hears_the_same_from_one_customer(truth: Truth) -> None:
    one, again = customer(truth, toilet("old"), LIES), customer(truth, toilet("old"), LIES)
    again.answer("made")  # what was asked before changes nothing
    assert [one.answer(q) for q in EASIEST] == [again.answer(q) for q in EASIEST]


def test_an_honest_customer_gets_his_own_seal(truth: Truth) -> None:
    for name, part_no in {"old": "UQ-10", "new": "UQ-20", "ringed": "UQ-30"}.items():
        told = asked(truth, toilet(name), PERFECT, "model_no", "valve_replaced")
        assert told.outcome is Outcome.PART
        assert told.ended == CERTAIN
        assert told.settled
        assert part_no in told.named.right
        assert not told.named.wrong


def test_a_wrong_part_is_counted_where_a_customer_lies(truth: Truth) -> None:
    lies = Memory("lies", lies=1.0)
    told = asked(truth, toilet("old"), lies, "model_no")
    assert told.false == {"model_no"}
    assert told.outcome is Outcome.PART
    assert told.named.wrong
    assert not told.settled


def test_two_answers_that_cannot_both_be_so_are_caught(truth: Truth) -> None:
    class WrongYear(Customer):
        """Reads the number right and tells the year of a later build."""

        def answer(self, question: str) -> Answer:
            later = Answer((year_made(1990),), false=True)
            return later if question == "made" else super().answer(question)

    of = toilet("old")
    who = WrongYear(TABLES, TruthOf(truth, [of]), of, PERFECT, SEED)
    told = interviewed(COUNTER, Interviewer(COUNTER), asks("model_no", "made"), who)
    assert told.false == {"made"}
    assert told.caught
    assert not told.named.wrong


def test_of_a_replaced_valve_the_toilets_own_seal_is_told_for_the_first_one_alone(
    truth: Truth,
) -> None:
    """'If the flush valve is the original one', which it is not: nobody is told that it fits."""
    of = replace(
        toilet("old"), name="replaced-1", group=REPLACED, valves={"main": TABLES.valves["far"]}
    )
    by_name = asked(truth, of, PERFECT, "model_no")
    assert (by_name.named.wrong, by_name.named.for_first) == (frozenset(), {"UQ-10"})
    by_part = asked(truth, of, PERFECT, "old_part", "valve_replaced")
    assert "UQ-20" in by_part.named.right
    assert not by_part.named.wrong
    lied = asked(truth, of, Memory("liar", lies=1.0), "model_no", "valve_replaced")
    assert not lied.named.for_first  # whoever says that it is the first one is told no 'if'


def test_replaced_valves_are_listed_and_another_ones(truth: Truth) -> None:
    for one in replaced(TABLES, 20, SEED):
        build_valves = [s.valve for s in TABLES.valves_in[one.build.build]]
        assert one.valve is not None
        assert one.valve.valve in TABLES.valves
        assert build_valves != [one.valve.valve]


def test_a_toilet_not_listed_has_a_valve_as_none_of_the_tables(truth: Truth) -> None:
    looks = {(v.opening_in, v.mount, v.peg_span_mm) for v in TABLES.valves.values()}
    made = not_listed(TABLES, 10, SEED)
    assert len(made) == 10
    for one in made:
        assert one.group == NOT_LISTED
        assert one.valve is not None
        assert (one.valve.opening_in, one.valve.mount, one.valve.peg_span_mm) not in looks
        told = asked(truth, one, PERFECT, "model_no", "brand", "model")
        assert told.outcome is not Outcome.PART
        assert not told.named.right


def test_a_dont_know_is_kept_and_no_question_is_asked_twice(truth: Truth) -> None:
    told = asked(truth, toilet("old"), PERFECT, "hinge_width", "hinge_width", "pieces")
    assert told.unknown == {"hinge_width"}
    assert told.asked[:2] == ("hinge_width", "pieces")
    state = answered(State(Facts()), "made", ())
    assert state == State(Facts(), frozenset({"made"}), ("made",))


def test_what_the_letter_told_is_no_question(truth: Truth) -> None:
    who = customer(truth, toilet("old"))
    told = interviewed(COUNTER, Interviewer(COUNTER), asks("made"), who, ("brand", "model"))
    assert told.asked[:1] == ("made",)
    assert told.outcome is Outcome.PART


def test_the_tree_asks_for_what_tells_the_seals_apart_and_then_for_the_rest() -> None:
    tree = QuestionTree(COUNTER, SEED)
    first = next(tree.path(State(Facts())))
    assert first in {"hinge_width", "model_no", "opening", "mount", "made", "brand", "model"}
    number = State(Facts((fact("model_no", ("V1",)),)))
    assert "pieces" not in [*tree.path(number)]


def test_policies_ask_only_what_can_narrow() -> None:
    interviewer = Interviewer(COUNTER)
    number = State(Facts((fact("model_no", ("T1",)), fact("valve_original", ("yes",)))))
    for policy in policies(COUNTER, interviewer, SEED).values():
        assert policy(State(Facts())) in TABLES.questions
        assert policy(number) is None  # it is certain


def test_the_bound_counts_bits_and_who_can_answer() -> None:
    assert bits([1, 1, 1, 1]) == 2.0
    assert bits([5]) == 0.0
    assert fewest_questions(COUNTER, 0.0) == 0.0
    assert fewest_questions(COUNTER, 0.5) == 1.0
    assert fewest_questions(COUNTER, 10.0) > 1.0


def told_of(truth: Truth, seed: int) -> Sequence[tuple[str, tuple[str, ...]]]:
    """Who was asked what in every series, by one seed."""
    series = interviews(COUNTER, truth, Interviewer(COUNTER), count=3, seed=seed)
    return [(s.policy, i.asked) for s in series for i in s.interviews]


def test_a_seed_repeats_and_another_differs(truth: Truth) -> None:
    first = told_of(truth, 5)
    assert {RANDOM, TREE} <= {policy for policy, _ in first}
    assert told_of(truth, 5) == first
    assert told_of(truth, 6) != first


def test_nobody_who_only_omits_is_given_a_wrong_part(truth: Truth) -> None:
    interviewer = Interviewer(COUNTER)
    for policy in policies(COUNTER, interviewer, SEED).values():
        for of in listed(TABLES, SEED):
            for seed in range(3):
                who = customer(truth, of, ONLY_OMITS, seed)
                told = interviewed(COUNTER, interviewer, policy, who)
                assert not told.named.wrong, (of.name, told)
                assert not told.named.unproven, (of.name, told)


def test_the_command_writes_the_page(tmp_path: Path) -> None:
    shutil.copytree(FOLDER / "knowledge", tmp_path / "knowledge")
    (tmp_path / "eval").mkdir()
    lines = (FOLDER / "eval" / "dialogues.jsonl").read_text(encoding="utf-8").splitlines()
    few = [line for line in lines if '"form": "open"' in line][1:4]
    (tmp_path / "eval" / "dialogues.jsonl").write_text("\n".join(few), encoding="utf-8")
    given = ["eval", "--interviews", "--count", "2", "--seed", "7", "--shop", str(tmp_path)]
    result = CliRunner().invoke(cli, given)
    assert result.exit_code == 0, result.output
    page = (tmp_path / "eval" / "interviews.md").read_text(encoding="utf-8")
    assert "seed 7" in page
    assert "| decision tree | " in page
    assert "**t003**" in page  # of 'tune' every conversation is shown
    assert "t002" not in page  # of 'measure' none


def test_interviews_go_with_no_other_measure() -> None:
    result = CliRunner().invoke(cli, ["eval", "--interviews", "--check"])
    assert result.exit_code == 2
    assert "--interviews goes with none" in result.output
