"""What years, looks and measures leave of the builds of one name.

All of it is common practice, no source: each test says its practice in our own words. The
Ulmbraith Tovelin of these tests changed its valve once: a 2 in valve till 1985, a 3 in one since.
"""

from __future__ import annotations

from typing import Any

import pytest

from assistant.fitment.decide import decide
from assistant.fitment.decision import Decision, Outcome, Why
from assistant.reading.facts import Fact
from assistant.records.cells import OPEN_TO
from assistant.records.rows import Row
from tests.told import between, doubted, facts, opening, toilet, word
from tests.trade import MAKER, build, counter, says, seal, sits, valve

TOVELIN = toilet(MAKER, "Tovelin")


def _two_builds(**later: Any) -> tuple[Row, ...]:
    return (
        *(valve("gate-2"), valve("gate-3", opening_in=3.0, peg_span_mm=96.0)),
        *(seal("UQ-20"), seal("UQ-30", opening_in=3.0, ear_span_mm=96.0)),
        *(says("fits", "UQ-20", valve="gate-2"), says("fits", "UQ-30", valve="gate-3")),
        *(build("tovelin-a", made_from=1970, made_to=1985), sits("gate-2", "tovelin-a")),
        build("tovelin-b", **({"made_from": 1986, "made_to": 1999} | later)),
        sits("gate-3", "tovelin-b"),
    )


def _parts(decision: Decision) -> list[str]:
    groups = [branch.group for branch in decision.branches]
    return [picks[0].part_no for group in groups for picks in group.picks.values() if picks]


def _told(*more: Fact, **later: Any) -> Decision:
    return decide(counter(*_two_builds(**later)), facts(*TOVELIN, *more))


def test_a_model_that_outlived_its_valve_has_two_answers_by_its_years() -> None:
    """The name on the lid stayed when the valve inside changed (common practice, no source)."""
    decision = _told()
    assert (decision.outcome, decision.why) == (Outcome.DEPENDS, Why.BRANCHES)
    assert _parts(decision) == ["UQ-20", "UQ-30"]
    conditions = [branch.condition for branch in decision.branches]
    assert [(c.feature, c.values) for c in conditions if c] == [
        ("made", ((1970, 1985),)),
        ("made", ((1986, 1999),)),
    ]
    assert decision.question == "made"


def test_a_year_of_who_knows_what_is_asked_about_where_it_would_be_another_seal() -> None:
    """People take back a date in more ways than anybody can list (common practice, no source)."""
    decision = _told(between("made", 1980), between("year", 1992))
    assert (decision.outcome, decision.question) == (Outcome.ASK, "made")
    assert _parts(_told(between("made", 1980), between("year", 1983))) == ["UQ-20"]
    assert _parts(_told(between("made", 1980), between("year", 1980))) == ["UQ-20"]
    assert _parts(_told(between("made", 1980), between("year", 2019))) == ["UQ-20"]  # not made then


def test_a_model_still_made_is_open_at_its_end() -> None:
    """Nobody knows its last year yet (common practice, no source)."""
    decision = _told(between("made", 2015, of="stamp"), made_to=OPEN_TO)
    assert _parts(decision) == ["UQ-30"]


@pytest.mark.parametrize(
    ("told", "parts"),
    [
        pytest.param(between("made", 1985, of="stamp"), ["UQ-20"], id="a stamp of the last year"),
        pytest.param(between("made", 1986, of="stamp"), ["UQ-30"], id="a stamp of the first year"),
        pytest.param(
            between("made", 1982, 1988, of="about"), ["UQ-20", "UQ-30"], id="about 1985: either"
        ),
        pytest.param(between("bought", 1985), ["UQ-20"], id="bought before the change"),
        pytest.param(
            between("bought", 1986), ["UQ-20", "UQ-30"], id="bought just after it, perhaps older"
        ),
        pytest.param(
            between("bought", 1990), ["UQ-20", "UQ-30"], id="five years in a warehouse at most"
        ),
        pytest.param(between("bought", 1991), ["UQ-30"], id="and not six"),
        pytest.param(between("house", 1975), ["UQ-20", "UQ-30"], id="a house's year says nothing"),
        pytest.param(between("house", 2012), ["UQ-20", "UQ-30"], id="nor one after both"),
        pytest.param(between("year", 1975), ["UQ-20", "UQ-30"], id="a year of nobody knows what"),
        pytest.param(
            doubted(between("made", 1981)), ["UQ-20", "UQ-30"], id="'1981, I think' may be 1986"
        ),
        pytest.param(doubted(between("made", 1980)), ["UQ-20"], id="but hardly '1980, I think'"),
        pytest.param(opening(2.0), ["UQ-20"], id="the opening is 2 in"),
        pytest.param(opening(3.0), ["UQ-30"], id="the opening is 3 in"),
        pytest.param(doubted(opening(2.0)), ["UQ-20", "UQ-30"], id="maybe 2 in excludes none"),
        pytest.param(
            between("opening", 60, 70, nominal_in=(2.5,)), [], id="2 1/2 in is neither of them"
        ),
        pytest.param(
            between("opening", 49, 79, nominal_in=(2.0, 2.5, 3.0)),
            ["UQ-20", "UQ-30"],
            id="between 2 and 3 in may be either",
        ),
        pytest.param(between("hinge_width", 79, 83), ["UQ-20"], id="the narrow hinge"),
        pytest.param(between("hinge_width", 97, 101), ["UQ-30"], id="the wide one"),
        pytest.param(between("length", 79, 83), ["UQ-20", "UQ-30"], id="a length of what?"),
    ],
)
def test_what_a_customer_tells_leaves_these_seals(told: Fact, parts: list[str]) -> None:
    """Stamps date the making; a purchase dates it to five years before; a house dates nothing;
    a doubt or a wide guess leaves both (common practice, no source)."""
    assert _parts(_told(told)) == parts


@pytest.mark.parametrize("year", [1969, 2000])
def test_a_year_in_which_the_model_was_not_made_is_said_and_no_part_named(year: int) -> None:
    """Then it is another toilet, or the table lacks a build (common practice, no source)."""
    decision = _told(between("made", year, of="stamp"))
    assert (decision.outcome, decision.why) == (Outcome.NO_MATCH, Why.NOT_MADE_THEN)
    assert _parts(decision) == []


def test_an_unknown_first_year_excludes_nothing() -> None:
    """An empty cell is not known; it is no limit (common practice, no source)."""
    decision = _told(between("made", 1960, of="stamp"), made_from=None)
    assert _parts(decision) == ["UQ-30"]


def test_a_measure_that_no_build_of_the_name_has_asks_whether_the_valve_was_replaced() -> None:
    """The commonest reason is a valve put in later (common practice, no source)."""
    decision = _told(opening(4.0))
    assert (decision.outcome, decision.why) == (Outcome.ASK, Why.DISAGREES)
    assert (decision.question, _parts(decision)) == ("valve_replaced", [])


def test_a_flush_that_no_build_of_the_name_has_asks_for_the_number_in_the_tank() -> None:
    """The flush is the toilet's own, no new valve changes it (common practice, no source)."""
    shop = counter(
        *(valve(), seal(), says("fits"), sits(build="tovelin-a"), sits(build="tovelin-b")),
        *(build("tovelin-a", flush_full_gpf=5.0), build("tovelin-b", flush_full_gpf=3.5)),
    )
    decision = decide(shop, facts(*TOVELIN, between("flush", 1.28, unit="gal")))
    assert (decision.outcome, decision.question) == (Outcome.ASK, "model_no")
    assert _parts(decision) == []


def test_a_denied_look_removes_only_what_could_be_nothing_else() -> None:
    """'It is not the ring kind' (common practice, no source)."""
    shop = counter(
        *(valve("gate-2"), valve("ringed", style="ring-flapper")),
        *(seal("UQ-20"), seal("UQ-21", style="ring-flapper")),
        *(says("fits", "UQ-20", valve="gate-2"), says("fits", "UQ-21", valve="ringed")),
        *(build("tovelin-a"), build("tovelin-b")),
        *(sits("gate-2", "tovelin-a"), sits("ringed", "tovelin-b")),
    )
    decision = decide(shop, facts(*TOVELIN, word("mount", "ring", negated=True)))
    assert _parts(decision) == ["UQ-20"]


@pytest.mark.parametrize(
    ("told", "parts"),
    [
        (word("ears", "up"), ["UQ-UP"]),
        (word("ears", "none"), ["UQ-RING", "UQ-CAN"]),
        (word("mount", "ring"), ["UQ-RING"]),
        (word("mount", "pegs"), ["UQ-UP"]),
        (word("lift", "straight up"), ["UQ-CAN"]),
        (word("mount", "wire", "canister"), ["UQ-CAN"]),
        (word("overflow", "square"), ["UQ-UP"]),
        (word("tank_kind", "dual-flush"), ["UQ-CAN"]),
    ],
)
def test_a_look_tells_valves_apart(told: Fact, parts: list[str]) -> None:
    """How the old seal hangs tells how the valve holds it (common practice, no source)."""
    shop = counter(
        *(seal("UQ-UP"), seal("UQ-RING", "ring-flapper"), seal("UQ-CAN", "canister-seal")),
        *(valve("pegged", overflow="square"), valve("ringed", "ring-flapper")),
        *(valve("can", "canister-seal"), says("fits", "UQ-UP", valve="pegged")),
        *(says("fits", "UQ-RING", valve="ringed"), says("fits", "UQ-CAN", valve="can")),
        *(build("tovelin-a"), build("tovelin-b"), build("tovelin-c", kind="dual-flush")),
        *(sits("pegged", "tovelin-a"), sits("ringed", "tovelin-b"), sits("can", "tovelin-c")),
    )
    assert _parts(decide(shop, facts(*TOVELIN, told))) == parts
