"""From what a customer tells of one toilet to what the counter does about it.

All of it is common practice, no source: each test says its practice in our own words.
"""

from __future__ import annotations

import pytest

from assistant.fitment.decide import decide
from assistant.fitment.decision import Decision, Outcome, Why
from assistant.fitment.identify import By
from assistant.reading.facts import Fact
from assistant.records.rows import Row
from tests.told import between, doubted, facts, opening, toilet, word
from tests.trade import (
    CANISTER,
    MAKER,
    OTHER_MAKER,
    build,
    counter,
    says,
    seal,
    sits,
    valve,
)

TOVELIN = toilet(MAKER, "Tovelin")
ONE_TOILET: tuple[Row, ...] = (valve(), seal(), says("fits"), build(), sits())
FULL_MEASURES = (opening(2.0), word("ears", "up"), between("hinge_width", 79, 82))


def _named(decision: Decision) -> dict[str, list[str]]:
    """The parts named as fitting, by position, each branch after the other."""
    found: dict[str, list[str]] = {}
    for branch in decision.branches:
        for position, picks in branch.group.picks.items():
            found.setdefault(position, []).extend(pick.part_no for pick in picks)
    return found


def test_maker_and_model_with_one_seal_name_that_seal() -> None:
    """Common practice, no source."""
    decision = decide(counter(*ONE_TOILET), facts(*TOVELIN))
    assert (decision.outcome, decision.identity.by) == (Outcome.PART, By.NAME)
    assert _named(decision) == {"main": ["UQ-10"]}


# How many


@pytest.mark.parametrize(("needed", "quantity"), [(1, 1), (2, 2), (None, None)])
def test_a_valve_that_takes_two_seals_gets_two(needed: int | None, quantity: int | None) -> None:
    """An empty count stays unknown (common practice, no source)."""
    rows = (valve(), seal(), says("fits"), build(), sits(needed=needed))
    (branch,) = decide(counter(*rows), facts(*TOVELIN)).branches
    assert [pick.quantity for pick in branch.group.picks["main"]] == [quantity]


TWO_SEALS = (
    *(valve("gate-2"), valve("small-2", "clip-flapper"), build(made_from=1990, made_to=1999)),
    *(sits("gate-2", position="main"), sits("small-2", position="rinse")),
    *(seal("UQ-10"), seal("UQ-70", "clip-flapper")),
    *(says("fits", "UQ-10", valve="gate-2"), says("fits", "UQ-70", valve="small-2")),
)


def test_a_tank_with_two_valves_gets_the_set() -> None:
    """Both have worn alike, and the customer has the lid off (common practice, no source)."""
    decision = decide(counter(*TWO_SEALS), facts(*TOVELIN))
    assert decision.outcome is Outcome.PART
    assert _named(decision) == {"main": ["UQ-10"], "rinse": ["UQ-70"]}


def test_a_tank_with_two_valves_gets_one_seal_where_the_customer_says_which() -> None:
    """Common practice, no source."""
    decision = decide(counter(*TWO_SEALS), facts(*TOVELIN, word("position", "rinse")))
    assert _named(decision) == {"rinse": ["UQ-70"]}


def test_which_of_two_is_asked_where_only_one_is_wanted() -> None:
    """A set is no answer to somebody who wants half of it (common practice, no source)."""
    one = word("position", "main", "rinse")
    decision = decide(counter(*TWO_SEALS), facts(*TOVELIN, one))
    assert (decision.outcome, decision.question) == (Outcome.ASK, "position")
    assert not decision.branches
    both = decide(counter(*TWO_SEALS), facts(*TOVELIN, one, word("position", "rinse")))
    assert _named(both) == {"rinse": ["UQ-70"]}
    alike = [row for row in TWO_SEALS if row not in (sits("small-2", position="rinse"),)]
    twin = decide(counter(*alike, sits("gate-2", position="rinse")), facts(*TOVELIN, one))
    assert _named(twin) == {"main": ["UQ-10"], "rinse": ["UQ-10"]}


def test_a_gap_in_the_set_is_said() -> None:
    """Half a set is sold as half a set (common practice, no source)."""
    rows = [row for row in TWO_SEALS if row != says("fits", "UQ-70", valve="small-2")]
    decision = decide(counter(*rows), facts(*TOVELIN))
    assert _named(decision) == {"main": ["UQ-10"], "rinse": []}
    assert decision.branches[0].group.gaps == ("rinse",)


# No seal


def test_a_pressure_assisted_tank_has_no_flapper() -> None:
    """Air and water shut up in a vessel do the flushing (common practice, no source)."""
    rows = (valve(), seal(), says("fits"), build(kind="pressure"))
    decision = decide(counter(*rows), facts(*TOVELIN))
    assert (decision.outcome, decision.why) == (Outcome.NO_MATCH, Why.NO_FLAPPER)


@pytest.mark.parametrize("kind", ["gravity", None])
def test_a_tank_whose_valve_nobody_wrote_down_may_well_have_one(kind: str | None) -> None:
    """An empty table is not a tank without a flapper (common practice, no source)."""
    rows = (valve(), seal(), says("fits"), build(kind=kind))
    decision = decide(counter(*rows), facts(*TOVELIN))
    assert (decision.outcome, decision.why) == (Outcome.NO_MATCH, Why.NO_SEAL_KNOWN)


@pytest.mark.parametrize(
    "one",
    [
        pytest.param(seal(), id="a seal that could fit by its measures"),
        pytest.param(seal(name="Universal, fits all"), id="a seal that calls itself universal"),
        pytest.param(seal(style=CANISTER), id="a seal of another kind"),
    ],
)
def test_a_build_with_no_known_seal_gets_none(one: Row) -> None:
    """Neither a likely size nor a bold name is a reason to sell it (common practice, no source)."""
    decision = decide(counter(one, valve(), build(), sits()), facts(*TOVELIN))
    assert (decision.outcome, decision.why) == (Outcome.NO_MATCH, Why.NO_SEAL_KNOWN)


def test_a_seal_that_is_no_longer_made_is_not_sold() -> None:
    """Common practice, no source."""
    rows = (valve(), seal(status="discontinued"), says("fits"), build(), sits())
    assert decide(counter(*rows), facts(*TOVELIN)).why is Why.NO_SEAL_KNOWN


# A valve replaced since


@pytest.mark.parametrize(
    ("told", "asked"),
    [
        ((), "opening"),
        ((opening(2.0),), "mount"),
        ((opening(2.0), word("mount", "pegs")), "ears"),
        ((opening(2.0), word("mount", "strap")), "photograph"),
        ((word("mount", "canister"),), "opening"),
    ],
)
def test_of_a_valve_put_in_later_only_what_it_has_is_asked(
    told: tuple[Fact, ...], asked: str
) -> None:
    """A strap has no ears to measure (common practice, no source)."""
    known = facts(*TOVELIN, word("valve_replaced", "yes"), *told)
    assert decide(counter(*ONE_TOILET), known).question == asked


@pytest.mark.parametrize("told", [word("valve_replaced", "yes"), between("valve_put_in", 2015)])
def test_a_replaced_valve_is_not_known_by_the_name_on_the_lid(told: Fact) -> None:
    """The plumber fitted what was in the van (common practice, no source)."""
    decision = decide(counter(*ONE_TOILET), facts(*TOVELIN, told))
    assert (decision.outcome, decision.why) == (Outcome.ASK, Why.VALVE_REPLACED)
    assert (_named(decision), decision.measured) == ({}, ())


def test_a_replaced_valve_with_all_its_measures_gets_what_could_fit_and_no_more() -> None:
    """Measures agree with many seals that nobody tried there (common practice, no source)."""
    told = facts(*TOVELIN, word("valve_replaced", "yes"), *FULL_MEASURES)
    decision = decide(counter(*ONE_TOILET, seal("UQ-95", ear_span_mm=95.0)), told)
    assert (decision.outcome, decision.why) == (Outcome.DEPENDS, Why.MEASURES)
    assert ([m.part_no for m in decision.measured], _named(decision)) == (["UQ-10"], {})


@pytest.mark.parametrize("left_out", range(3))
def test_measures_of_which_one_is_doubted_do_not_suffice(left_out: int) -> None:
    """Two of three measures leave too many seals (common practice, no source)."""
    told = [doubted(f) if at == left_out else f for at, f in enumerate(FULL_MEASURES)]
    decision = decide(counter(*ONE_TOILET), facts(*told))
    assert (decision.outcome, decision.measured) == (Outcome.ASK, ())


def test_measures_that_no_seal_has_are_said_to_match_none() -> None:
    """Common practice, no source."""
    told = facts(opening(2.0), word("ears", "up"), between("hinge_width", 110, 112))
    decision = decide(counter(*ONE_TOILET), told)
    assert (decision.outcome, decision.why) == (Outcome.NO_MATCH, Why.MEASURES_UNKNOWN)


# Which toilet


def test_a_model_without_its_maker_asks_for_the_maker() -> None:
    """Makers have used one another's names (common practice, no source)."""
    read = word("model", f"{MAKER} Tovelin", words="the Tovelin")
    decision = decide(counter(*ONE_TOILET), facts(read))
    assert (decision.outcome, decision.question) == (Outcome.ASK, "brand")
    assert _named(decision) == {}


def test_a_nickname_that_holds_the_makers_name_names_the_maker() -> None:
    """Common practice, no source."""
    read = word("model", f"{MAKER} Tovelin", words=f"the {MAKER} Tovvy")
    decision = decide(counter(*ONE_TOILET), facts(read))
    assert (decision.outcome, decision.identity.by) == (Outcome.PART, By.NAME)


def test_a_maker_without_a_model_asks_for_the_number_in_the_tank() -> None:
    """Common practice, no source."""
    decision = decide(counter(*ONE_TOILET), facts(word("brand", MAKER)))
    assert (decision.why, decision.question) == (Why.BRAND_ONLY, "model_no")


def test_two_models_one_letter_apart_are_asked_about() -> None:
    """A slip of the pen must not choose the seal (common practice, no source)."""
    both = (f"{MAKER} Tovelin", f"{MAKER} Tovelan")
    rows = (*ONE_TOILET, build("tovelan-a", model="Tovelan"), sits(build="tovelan-a"))
    read = word("model", *both, similar=True, sure=False)
    decision = decide(counter(*rows), facts(word("brand", MAKER), read))
    assert (decision.outcome, decision.why) == (Outcome.ASK, Why.SEVERAL_NAMES)
    assert (decision.question, decision.choices) == ("model", both)
    assert _named(decision) == {}


def test_a_name_that_is_like_one_listed_model_only_is_taken_for_it_and_said_back() -> None:
    """Common practice, no source."""
    read = word("model", f"{MAKER} Tovelin", similar=True, sure=False)
    decision = decide(counter(*ONE_TOILET), facts(word("brand", MAKER), read))
    assert decision.outcome is Outcome.PART
    assert [fact.name for fact in decision.identity.similar] == ["model"]


def test_a_toilet_that_the_table_does_not_list_gets_no_seal_of_a_listed_one() -> None:
    """Common practice, no source."""
    told = facts(word("brand", MAKER), word("unlisted", "Brulmane", of="model"))
    decision = decide(counter(*ONE_TOILET), told)
    assert (decision.outcome, decision.why) == (Outcome.NO_MATCH, Why.UNLISTED)


def test_a_description_alone_never_identifies_a_toilet() -> None:
    """A thousand toilets are gravity tanks in two pieces (common practice, no source)."""
    told = facts(word("tank_kind", "gravity"), word("pieces", "2"), between("made", 1990))
    decision = decide(counter(*ONE_TOILET), told)
    assert (decision.outcome, decision.why) == (Outcome.ASK, Why.NOTHING_TOLD)


NUMBERED = (
    *(valve("gate-2"), valve("gate-3", opening_in=3.0), seal("UQ-20"), seal("UQ-30")),
    *(says("fits", "UQ-20", valve="gate-2"), sits("gate-2", "tovelin-a")),
    *(sits("gate-3", "maskerby-a"), build("tovelin-a", model_no="U101")),
    build("maskerby-a", brand=OTHER_MAKER, model="Maskerby", model_no="V202", tank_mark="V 202"),
)


def test_a_number_in_the_tank_identifies_the_toilet_without_any_name() -> None:
    """Common practice, no source."""
    decision = decide(counter(*NUMBERED), facts(word("model_no", "U101")))
    assert (decision.outcome, decision.identity.by) == (Outcome.PART, By.NUMBER)


@pytest.mark.parametrize("number", ["V 202", "U303"])
def test_a_number_that_belongs_to_another_name_is_asked_about(number: str) -> None:
    """Tanks get swapped, between makers and within one (common practice, no source)."""
    rows = (*NUMBERED, build("brulmane-a", model="Brulmane", model_no="U303"))
    decision = decide(counter(*rows), facts(*TOVELIN, word("model_no", number)))
    assert (decision.outcome, decision.why, _named(decision)) == (Outcome.ASK, Why.DISAGREES, {})


def test_a_number_tells_two_builds_of_one_name_apart() -> None:
    """Common practice, no source."""
    rows = (*NUMBERED, build("tovelin-b", model_no="U102"), sits("gate-3", "tovelin-b"))
    decision = decide(counter(*rows), facts(*TOVELIN, word("model_no", "U101")))
    assert (decision.outcome, _named(decision)) == (Outcome.PART, {"main": ["UQ-20"]})


def test_a_model_that_its_maker_never_made_is_asked_about() -> None:
    """Common practice, no source."""
    told = facts(word("brand", OTHER_MAKER), word("model", f"{MAKER} Tovelin"))
    decision = decide(counter(*NUMBERED), told)
    assert (decision.outcome, decision.why, _named(decision)) == (Outcome.ASK, Why.DISAGREES, {})


def test_two_facts_that_cannot_both_hold_are_shown_and_not_chosen_between() -> None:
    """Common practice, no source."""
    decision = decide(counter(*ONE_TOILET), facts(*TOVELIN, opening(2.0), opening(3.0)))
    assert (decision.outcome, decision.why) == (Outcome.ASK, Why.CONTRADICTION)
    assert [fact.nominal_in for fact in decision.facts] == [(2.0,), (3.0,)]
