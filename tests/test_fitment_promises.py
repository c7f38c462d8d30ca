"""What holds of every decision, whatever the shop's tables and whatever the customer tells.

A wrong part is never named: all that is named fits every toilet that is still possible.
"""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.fitment.decide import counter_for, decide
from assistant.fitment.decision import Decision, Outcome
from assistant.fitment.judge import Verdict, judge
from assistant.fitment.places import Place, Scenario
from assistant.reading.facts import Fact
from assistant.records.rows import Build
from assistant.records.tables import Tables
from tests.shops import PARTS, Drawn, shops, thorough
from tests.told import between, doubted, facts, opening, toilet, word
from tests.trade import FIRST, MAKER, scenario

NAMED = toilet(MAKER, "Tovelin")
YEARS = ((1965, 1968), (1975, 1975), (1984, 1988), (1990, 2010))
told_years = st.sampled_from(YEARS).map(lambda years: between("made", *years))
told_flush = st.sampled_from((1.28, 1.6, 3.5)).map(lambda gallons: between("flush", gallons))
told_pieces = st.sampled_from(("1", "2")).map(lambda pieces: word("pieces", pieces))
told_opening = st.sampled_from((2.0, 3.0)).map(opening)
told_part = st.builds(
    lambda part, of: word("part_no", part, of=of),
    st.sampled_from(PARTS),
    st.sampled_from(("asked", "tried", "wanted")),
)
one_fact = st.one_of(told_years, told_flush, told_pieces, told_opening, told_part)
some_facts = st.lists(one_fact | one_fact.map(doubted), max_size=3, unique_by=lambda f: f.name)
SHOPS = shops(sized=True, builds=("b0", "b1", "b2")) | shops(sized=False)


def _could_be(build: Build, told: Fact) -> bool:
    """Plainly: whether what is told of the toilet itself agrees with this build."""
    if told.name == "made":
        stray = 0 if told.sure else 5  # years that a doubting memory strays
        first, last = build.made_from or -9999, build.made_to or 9999
        return first <= told.interval.high + stray and told.interval.low - stray <= last
    if not told.sure:
        return True
    if told.name == "flush":
        return build.flush_full_gpf in (None, told.interval.low)
    if told.name == "pieces":
        return build.pieces in (None, int(told.choices[0]))
    return True


def _opening_agrees(found: Scenario, told: list[Fact]) -> bool:
    sizes = [f.nominal_in[0] for f in told if f.name == "opening" and f.sure]
    has = [place.valve.opening_in for place in found.places]
    return not sizes or not has or any(size in (None, sizes[0]) for size in has)


def _possible(shop: Tables, told: list[Fact]) -> list[Scenario]:
    builds = [b for b in shop.builds.values() if all(_could_be(b, fact) for fact in told)]
    found = [scenario(shop, one.build) for one in builds]
    return [one for one in found if _opening_agrees(one, told)]


def _named(decision: Decision) -> set[str]:
    groups = [branch.group for branch in decision.branches]
    return {pick.part_no for g in groups for picks in g.picks.values() for pick in picks}


@settings(thorough, max_examples=300)
@given(drawn=SHOPS, told=some_facts)
def test_a_part_fits_every_build_still_possible_and_each_branch_its_own(
    drawn: Drawn, told: list[Fact]
) -> None:
    shop = drawn.tables
    decision = decide(counter_for(shop, FIRST), facts(*NAMED, *told))
    if decision.outcome not in (Outcome.PART, Outcome.DEPENDS):
        assert decision.branches == ()
        return
    covered = [one.build for branch in decision.branches for one in branch.group.scenarios]
    assert sorted(map(str, covered)) == sorted(str(one.build) for one in _possible(shop, told))
    for branch in decision.branches:
        for position, picks in branch.group.picks.items():
            for pick in picks:
                assert shop.seals[pick.part_no].status != "discontinued"
                for one in branch.group.scenarios:
                    found = judge(shop, pick.part_no, one.at(position))
                    assert (found.is_fit, found.change) == (True, pick.change)


@settings(thorough, max_examples=300)
@given(drawn=SHOPS, told=some_facts)
def test_a_seal_tried_in_vain_or_ruled_out_is_never_named(drawn: Drawn, told: list[Fact]) -> None:
    decision = decide(counter_for(drawn.tables, FIRST), facts(*NAMED, *told))
    tried = {f.choices[0] for f in told if f.name == "part_no" and f.of == "tried"}
    assert not _named(decision) & tried
    if decision.outcome is Outcome.PART:
        assert not _named(decision) & {judgement.part_no for judgement in decision.ruled_out}
        assert not _named(decision) & {*decision.unknown}


@settings(thorough, max_examples=300)
@given(drawn=SHOPS, told=some_facts)
def test_conditions_of_two_branches_never_meet(drawn: Drawn, told: list[Fact]) -> None:
    decision = decide(counter_for(drawn.tables, FIRST), facts(*NAMED, *told))
    seen: list[object] = []
    for branch in decision.branches:
        if branch.condition is None:
            assert len(decision.branches) == 1
            continue
        assert branch.condition.feature == decision.question
        for value in branch.condition.values:
            assert not any(_meet(value, other) for other in seen)
        seen += branch.condition.values


def _meet(one: object, other: object) -> bool:
    if isinstance(one, tuple) and isinstance(other, tuple) and isinstance(one[0], int):
        return bool(one[0] <= other[1] and other[0] <= one[1])
    return one == other


@settings(thorough, max_examples=300)
@given(drawn=SHOPS, part=st.sampled_from(PARTS))
def test_what_takes_an_old_parts_place_is_wrong_in_no_toilet_that_takes_the_old_one(
    drawn: Drawn, part: str
) -> None:
    shop = drawn.tables
    named = _named(decide(counter_for(shop, FIRST), facts(word("part_no", part, of="old"))))
    places = [place for name in shop.builds for place in scenario(shop, name).places]
    for place in places:
        if judge(shop, part, place).is_fit:
            assert {one for one in named if _is_wrong(shop, one, place)} == set()


def _is_wrong(shop: Tables, part_no: str, place: Place) -> bool:
    return judge(shop, part_no, place).verdict is Verdict.DOES_NOT_FIT
