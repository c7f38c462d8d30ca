"""The question that tells most of which seal is sold, and of which toilet nothing."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.fitment.decide import Counter, counter_for, decide
from assistant.fitment.decision import Decision, Outcome, Why
from assistant.interview.answering import joint
from assistant.interview.asked import with_best_question
from assistant.interview.hypotheses import Hypotheses
from assistant.interview.information import entropy, information
from assistant.interview.next_question import Interviewer, State
from assistant.interview.sold import NOTHING
from assistant.reading.facts import Facts
from assistant.records.rows import Question, Row
from tests.interviewing import letters, questions, shuffled, trade, trade_rows, with_prior
from tests.told import between, doubted, facts, opening, toilet, word
from tests.trade import (
    FIRST,
    MAKER,
    OTHER_MAKER,
    build,
    counter,
    question,
    row,
    says,
    seal,
    sits,
    tables,
    valve,
)

TOVELIN = toilet(MAKER, "Tovelin")
FIRST_ONE = word("valve_original", "yes")


def _two(*more: Row, **later: object) -> Counter:
    """A Tovelin of two builds: a 2 in valve with a round tube, then a 3 in one with a square."""
    return counter(
        *(valve("gate-2"), valve("gate-3", opening_in=3.0, overflow="square")),
        *(seal("UQ-20"), seal("UQ-30", opening_in=3.0)),
        *(says("fits", "UQ-20", valve="gate-2"), says("fits", "UQ-30", valve="gate-3")),
        *(build("tovelin-a", made_from=1970, made_to=1985, pieces=2), sits("gate-2", "tovelin-a")),
        build("tovelin-b", **({"made_from": 1986, "made_to": 1999, "pieces": 2} | later)),
        sits("gate-3", "tovelin-b"),
        *(more or questions()),
    )


def _gains(of: Counter, told: Facts) -> dict[str, float]:
    reckoning = Interviewer(of).reckoning(State(told))
    return {q.question: q.gain for q in reckoning.questions}


def test_builds_that_take_the_same_seal_need_no_question() -> None:
    """It does not matter which one it is: the same is handed over (common practice, no source)."""
    same = counter(
        *(valve("gate-2"), valve("gate-3", opening_in=3.0), seal(opening_in=None)),
        *(says("fits", valve="gate-2"), says("fits", valve="gate-3")),
        *(build("tovelin-a", made_to=1985, made_from=1970), sits("gate-2", "tovelin-a")),
        *(build("tovelin-b", made_from=1986, made_to=1999), sits("gate-3", "tovelin-b")),
        *questions(),
    )
    state = State(facts(*TOVELIN, FIRST_ONE))
    assert Interviewer(same).is_certain(state)
    assert Interviewer(same).best(state) is None
    assert Interviewer(same).best_set(state) == ()


def test_the_same_set_in_another_order_of_preference_is_not_the_same() -> None:
    """What is sold is the first choice, and the rest if it is out (common practice, no source)."""
    of = _two(says("fits", "UQ-20", valve="gate-3"), *questions())
    assert not Interviewer(of).is_certain(State(facts(*TOVELIN, FIRST_ONE)))


def test_a_toilet_named_is_certain_only_once_its_valve_is_known_to_be_the_first() -> None:
    """A valve put in later takes its own seal (common practice, no source)."""
    of = _two()
    named = facts(*TOVELIN, between("made", 1975, of="stamp"))
    assert not Interviewer(of).is_certain(State(named))
    assert Interviewer(of).is_certain(State(facts(*named, FIRST_ONE)))


def test_that_no_table_lists_it_stays_possible_till_a_number_or_name_tells() -> None:
    """The looks of a toilet never tell which one it is (common practice, no source)."""
    of = _two()
    looks = (opening(2), word("overflow", "round"), FIRST_ONE)
    assert Hypotheses.of(of, facts(*looks)).left == {"tovelin-a", "not listed"}
    assert Hypotheses.of(of, facts(*looks, *TOVELIN)).left == {"tovelin-a"}
    maybe = tuple(doubted(f) for f in TOVELIN)
    assert "not listed" in Hypotheses.of(of, facts(*looks, *maybe)).left


def test_a_name_that_no_table_has_leaves_that_toilet_alone() -> None:
    unlisted = word("unlisted", "Wendrick", of="brand")
    reckoning = Interviewer(_two()).reckoning(State(facts(unlisted, FIRST_ONE)))
    assert reckoning.left.left == {"not listed"}
    assert [sold for sold, _ in reckoning.solds] == [NOTHING]


def test_a_valve_put_in_later_is_not_known_by_the_toilet() -> None:
    """Maker and model say nothing of it; its own measures do (common practice, no source)."""
    replaced = facts(*TOVELIN, word("valve_replaced", "yes"))
    gains = _gains(_two(), replaced)
    told_nothing = ("made", "model", "model_no", "pieces", "flush", "valve_replaced")
    assert {name: gains.get(name, 0.0) for name in told_nothing} == dict.fromkeys(told_nothing, 0.0)
    assert gains["opening"] == pytest.approx(1.0)


def test_the_number_on_the_old_seal_leaves_the_valves_that_take_it() -> None:
    left = Hypotheses.of(_two(), facts(word("part_no", "UQ-30", of="old"))).left
    assert left == {"tovelin-b", "put in later: gate-3"}


def test_an_old_seal_tells_more_than_a_maker_who_never_used_it() -> None:
    """The seal is in the customer's hand (common practice, no source)."""
    of = _two(build("other", brand=OTHER_MAKER, model="Sarn"), sits("gate-2", "other"))
    told = facts(word("brand", OTHER_MAKER), word("part_no", "UQ-30", of="old"))
    assert Hypotheses.of(of, told).left == {"tovelin-b", "put in later: gate-3"}


def test_an_unlisted_toilet_weighs_what_the_table_of_questions_says() -> None:
    """8 for 100 listed, and of 100 tanks 10 with a later valve."""
    of = _two(with_prior("brand", 0.08), with_prior("valve_replaced", 0.1))
    left = Hypotheses.of(of, Facts())
    assert (left.weight.sum(), left.unlisted) == (2, pytest.approx(0.16))
    assert left.valve.sum() == pytest.approx(2 * 0.1 / 0.9)


def test_a_question_of_which_every_answer_leaves_the_same_seals_is_not_asked() -> None:
    """Both builds come apart, and both flush alike."""
    gains = _gains(_two(), facts(*TOVELIN, FIRST_ONE))
    assert gains["pieces"] == gains["flush"] == 0
    for name in ("opening", "overflow", "made"):
        assert gains[name] == pytest.approx(1.0)


def test_of_two_questions_that_tell_as_much_the_easier_is_asked() -> None:
    """Round or square is seen at a glance; a width is measured (common practice, no source)."""
    some = [question("opening", 0.5), question("overflow", 0.9)]
    assert Interviewer(_two(*some)).best(State(facts(*TOVELIN, FIRST_ONE))) == "overflow"


def test_a_hard_question_that_settles_it_goes_before_an_easy_one_that_hardly_tells() -> None:
    """And how much it tells hangs on how many of each build were sold."""

    def asked(rare: float) -> str | None:
        of = counter(
            *(valve("gate-2"), valve("gate-3", opening_in=3.0)),
            valve("gate-4", opening_in=4.0, overflow="square"),
            *(seal("UQ-2"), seal("UQ-3", opening_in=3.0), seal("UQ-4", opening_in=4.0)),
            *(says("fits", f"UQ-{n}", valve=f"gate-{n}") for n in (2, 3, 4)),
            *(build(f"tovelin-{n}", sold=50.0) for n in (2, 3)),
            *(build("tovelin-4", sold=rare), sits("gate-4", "tovelin-4")),
            *(sits(f"gate-{n}", f"tovelin-{n}") for n in (2, 3)),
            *(question("overflow", 0.9), question("opening", 0.5)),
        )
        return Interviewer(of).best(State(facts(*TOVELIN, FIRST_ONE)))

    assert asked(rare=1.0) == "opening"
    assert asked(rare=100.0) == "overflow"


def test_a_tie_goes_to_the_question_that_stands_first_in_the_table() -> None:
    one, other = question("opening", 0.5), question("overflow", 0.5)
    state = State(facts(*TOVELIN, FIRST_ONE))
    assert Interviewer(_two(one, other)).best(state) == "opening"
    assert Interviewer(_two(other, one)).best(state) == "overflow"


def test_who_could_not_measure_one_thing_is_asked_what_can_be_seen() -> None:
    """'I have no ruler' holds for the next width too (common practice, no source)."""

    def asks(name: str, kind: str, ease: float) -> Question:
        return replace(question(name, ease), kind=kind)

    some = [asks("hinge_width", "measuring", 0.2), asks("opening", "measuring", 0.8),
            asks("overflow", "looking inside", 0.5)]  # fmt: skip
    told = facts(*TOVELIN, FIRST_ONE)
    interviewer = Interviewer(_two(*some))
    assert interviewer.best(State(told)) == "opening"
    assert interviewer.best(State(told, unknown=frozenset({"hinge_width"}))) == "overflow"


def test_what_was_not_known_is_not_asked_again() -> None:
    some = [question("opening", 0.9), question("overflow", 0.3)]
    told = facts(*TOVELIN, FIRST_ONE)
    assert Interviewer(_two(*some)).best(State(told, unknown=frozenset({"opening"}))) == "overflow"


def test_a_number_that_no_build_bears_tells_that_the_toilet_is_not_listed() -> None:
    """Looks do not: an unlisted toilet may look as a listed one does."""
    of = _two(model_no="T100")
    gains = _gains(of, facts(opening(3), FIRST_ONE))
    assert gains["model_no"] > 0.1
    assert gains["overflow"] == gains["pieces"] == 0


def test_staff_at_the_toilet_measure_what_customers_only_remember() -> None:
    """A ruler is in every toolbox (common practice, no source)."""
    some = [row(Question, question=name, text="?", why="So.", ease=ease, ease_staff=staff)
            for name, ease, staff in (("made", 0.6, 0.5), ("opening", 0.5, 0.95))]  # fmt: skip
    state = State(facts(*TOVELIN, FIRST_ONE))
    assert Interviewer(_two(*some)).best(state) == "made"
    assert Interviewer(_two(*some), "staff").best(state) == "opening"


def test_an_empty_cell_never_looks_like_an_answer() -> None:
    """Whatever is told, the build of which it is not known stays possible."""
    of = _two(question("pieces", 0.9), pieces=None)
    assert _gains(of, facts(*TOVELIN, FIRST_ONE)) == {"pieces": 0.0}


def test_years_that_overlap_tell_less_than_years_apart() -> None:
    """A date that both builds may bear settles nothing."""
    told = facts(*TOVELIN, FIRST_ONE)
    apart = _gains(_two(), told)["made"]
    overlap = _gains(_two(made_from=1980), told)["made"]
    assert apart == pytest.approx(1.0)
    assert 0 < overlap < 0.9


def test_which_of_two_seals_is_asked_only_of_a_tank_that_has_two() -> None:
    """Some tanks hold a second valve that rinses the bowl (common practice, no source)."""
    two = (
        *(valve("gate-2"), valve("gate-3", opening_in=3.0), seal("UQ-20")),
        *(seal("UQ-30", opening_in=3.0), says("fits", "UQ-20", valve="gate-2")),
        *(says("fits", "UQ-30", valve="gate-3"), build()),
        *(sits("gate-3"), sits("gate-2", position="rinse"), *questions()),
    )
    told = facts(*TOVELIN, FIRST_ONE)
    assert Interviewer(counter(*two)).best(State(told)) == "position"
    assert Interviewer(counter(*two)).is_certain(State(facts(*told, word("position", "rinse"))))
    one_more = (build("tovelin-b", made_from=1990, made_to=1999), sits("gate-2", "tovelin-b"))
    assert _gains(counter(*two, *one_more), told)["position"] == 0


def test_in_a_letter_the_second_question_tells_what_the_first_does_not() -> None:
    """Opening and hinge width settle the same; how many pieces splits what the opening leaves."""
    of = counter(
        *(valve("gate-2"), valve("gate-3", opening_in=3.0, peg_span_mm=99.0)),
        *(seal("UQ-2"), seal("UQ-3", opening_in=3.0, ear_span_mm=99.0), seal("UQ-4")),
        *(says("fits", "UQ-2", valve="gate-2"), says("fits", "UQ-3", valve="gate-3")),
        *(build("tovelin-a", pieces=1), sits("gate-2", "tovelin-a")),
        *(build("tovelin-b", pieces=2), sits("gate-2", "tovelin-b")),
        *(build("tovelin-c", pieces=2), sits("gate-3", "tovelin-c")),
        says("fits", "UQ-4", build="tovelin-b"),
        *(question("opening", 0.9), question("hinge_width", 0.8), question("pieces", 0.6)),
    )
    asked = Interviewer(of).best_set(State(facts(*TOVELIN, FIRST_ONE)), most=2)
    assert asked == ("opening", "pieces")


def _decided(of: Counter, told: Facts, asked: tuple[str, ...] = ()) -> Decision:
    state = State(told, asked=asked)
    return with_best_question(of, told, decide(of, told), state)


def test_a_decision_that_wants_facts_asks_what_tells_most() -> None:
    of = _two(question("model_no", 0.1), question("overflow", 0.9))
    before = decide(of, Facts())
    after = _decided(of, Facts())
    assert (before.why, before.question) == (Why.NOTHING_TOLD, "model_no")
    assert after == replace(before, question="overflow")


def test_a_decision_that_depends_brings_the_choices_of_its_question() -> None:
    of = _two(question("made", 0.3), question("overflow", 0.9))
    before = decide(of, facts(*TOVELIN))
    assert (before.outcome, before.question) == (Outcome.DEPENDS, "made")
    after = _decided(of, facts(*TOVELIN))
    assert (after.question, after.choices) == ("overflow", ("round", "square"))
    assert after.branches == before.branches


def test_what_was_asked_is_not_asked_again() -> None:
    of = _two(question("made", 0.3), question("overflow", 0.9))
    assert _decided(of, facts(*TOVELIN), asked=("overflow",)).question == "made"


@pytest.mark.parametrize(
    "told",
    [
        pytest.param((opening(2), opening(3)), id="two sizes of one opening"),
        pytest.param((between("length", 76, unit="mm"),), id="a length of who knows what"),
        pytest.param(tuple(doubted(f) for f in TOVELIN), id="a doubted name"),
        pytest.param(
            (*(doubted(f) for f in TOVELIN), between("made", 1975, of="stamp")),
            id="a doubted name with one seal",
        ),
        pytest.param((*TOVELIN, word("valve_replaced", "yes")), id="another valve"),
        pytest.param((*TOVELIN, between("made", 1975, of="stamp")), id="the part is named"),
    ],
)
def test_what_must_be_settled_first_is_asked_as_it_is(told: tuple[object, ...]) -> None:
    of = _two()
    known = facts(*told)  # type: ignore[arg-type]
    assert _decided(of, known) == decide(of, known)


def test_a_model_of_several_makers_asks_whose_it_is_where_people_can_say() -> None:
    of = counter(
        *(valve("gate-2"), valve("gate-3", opening_in=3.0, overflow="square")),
        *(seal("UQ-20"), seal("UQ-30", opening_in=3.0)),
        *(says("fits", "UQ-20", valve="gate-2"), says("fits", "UQ-30", valve="gate-3")),
        *(build(), build("other", brand=OTHER_MAKER), sits("gate-2"), sits("gate-3", "other")),
        *(question("brand", 0.1), question("overflow", 0.9)),
    )
    names = word("model", f"{MAKER} Tovelin", f"{OTHER_MAKER} Tovelin", words="Tovelin")
    before = decide(of, facts(names))
    assert (before.why, before.question) == (Why.MODEL_ONLY, "brand")
    assert _decided(of, facts(names)).question == "overflow"
    able = replace(of, tables=replace(of.tables, questions={"brand": question("brand", 0.3)}))
    assert _decided(able, facts(names)).question == "brand"


def test_a_picture_is_asked_for_last_where_answers_come_at_once() -> None:
    """Somebody has to look at it (common practice, no source)."""
    photograph = replace(question("photograph", 0.9), kind="person")
    of = _two(photograph, question("overflow", 0.3))
    told = facts(*TOVELIN, FIRST_ONE)
    reckoning = Interviewer(of).reckoning(State(told))
    assert (reckoning.best, reckoning.best_at_once) == ("photograph", "overflow")
    then = Interviewer(of).reckoning(State(told, asked=("overflow",)))
    assert then.best_at_once == "photograph"


def test_what_hardly_anybody_could_answer_is_not_asked() -> None:
    """Who could measure neither the one nor the other will not measure a third."""

    def measuring(name: str, ease: float) -> Question:
        return replace(question(name, ease), kind="measuring")

    of = _two(measuring("opening", 0.5), measuring("hinge_width", 0.3), measuring("overflow", 0.5))
    told = facts(*TOVELIN, FIRST_ONE)
    assert Interviewer(of).best(State(told)) == "opening"
    one, two = frozenset({"opening"}), frozenset({"opening", "hinge_width"})
    assert Interviewer(of).best(State(told, unknown=one)) == "overflow"
    assert Interviewer(of).best(State(told, unknown=two)) is None
    assert Interviewer(of).best_set(State(told, unknown=two)) == ()


def test_which_build_is_asked_before_whether_its_valve_was_changed() -> None:
    """The seals under their conditions are those of the first valve."""
    common = with_prior("valve_replaced", 0.45)
    elsewhere = (
        *(valve("gate-4", opening_in=4.0), seal("UQ-40", opening_in=4.0)),
        *(says("fits", "UQ-40", valve="gate-4"), build("other", model="Sarn", sold=50.0)),
        sits("gate-4", "other"),
    )
    of = _two(*elsewhere, question("made", 0.4), replace(common, ease=0.95))
    assert Interviewer(of).best(State(facts(*TOVELIN))) == "valve_replaced"
    assert _decided(of, facts(*TOVELIN)).question == "made"


def test_a_valve_put_in_later_is_known_by_the_seal_that_was_in_it() -> None:
    """And by nothing that is said of the toilet (common practice, no source)."""
    of = _two(build("other", brand=OTHER_MAKER, model="Sarn"), sits("gate-2", "other"))
    told = (*toilet(OTHER_MAKER, "Sarn"), word("part_no", "UQ-30", of="old"))
    assert decide(of, facts(*told)).why is Why.DISAGREES
    replaced = decide(of, facts(*told, word("valve_replaced", "yes")))
    assert (replaced.outcome, replaced.why) == (Outcome.PART, Why.SETTLED)
    assert [p.part_no for b in replaced.branches for p in b.group.picks["main"]] == ["UQ-30"]


@given(letters())
@settings(max_examples=60, deadline=None)
def test_what_is_asked_always_tells_something(letter: tuple[Counter, str, Facts]) -> None:
    of, _, told = letter
    interviewer = Interviewer(of)
    state = State(told)
    reckoning = interviewer.reckoning(state)
    gains = {q.question: q.gain for q in reckoning.questions}
    assert all(gain == 0 or gain > 1e-9 for gain in gains.values())
    if (best := interviewer.best(state)) is not None:
        assert gains[best] > 0
    assert all(gains[name] > 0 for name in interviewer.best_set(state))


@given(letters())
@settings(max_examples=60, deadline=None)
def test_an_answer_tells_no_less_than_nothing_and_no_more_than_there_is_to_know(
    letter: tuple[Counter, str, Facts],
) -> None:
    of, _, told = letter
    interviewer = Interviewer(of)
    reckoning = interviewer.reckoning(State(told))
    there_is = entropy(reckoning.left.by_sold)
    for weighed in reckoning.questions:
        if (pairs := joint(reckoning.left, weighed.question)) is not None:
            assert -1e-9 <= information(pairs) <= there_is + 1e-9


@given(letters())
@settings(max_examples=60, deadline=None)
def test_certain_is_the_same_thing_sold_whatever_is_left(
    letter: tuple[Counter, str, Facts],
) -> None:
    of, name, told = letter
    left = Hypotheses.of(of, told)
    assert name in left.left or "not listed" in left.left
    solds = {left.listed.seller.solds[at] for at in left.sold.tolist()}
    solds |= {left.listed.seller.solds[at] for at in left.valve_sold[left.valve > 0].tolist()}
    solds |= {NOTHING} if left.unlisted else set()
    assert Interviewer(of).is_certain(State(told)) == (len(solds) == 1)


@given(letters(), st.data())
@settings(max_examples=60, deadline=None)
def test_more_facts_never_add_hypotheses(
    letter: tuple[Counter, str, Facts], data: st.DataObject
) -> None:
    of, name, told = letter
    fewer = data.draw(st.lists(st.sampled_from(list(told)), unique=True)) if len(told) else []
    more = Hypotheses.of(of, told).left
    assert name in more
    assert more <= Hypotheses.of(of, facts(*fewer)).left


@given(st.integers(0, 200), st.integers(0, 200), st.booleans())
@settings(max_examples=40, deadline=None)
def test_the_order_of_rows_changes_nothing(seed: int, order: int, filled: bool) -> None:
    rows = trade_rows(seed, filled=filled)
    again = counter_for(tables(*shuffled(rows, order)), FIRST)
    one, other = Interviewer(trade(seed, filled=filled)), Interviewer(again)
    for told in (Facts(), facts(word("pieces", "2"))):
        assert one.best(State(told)) == other.best(State(told))
        assert one.best_set(State(told)) == other.best_set(State(told))
