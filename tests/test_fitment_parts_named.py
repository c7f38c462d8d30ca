"""A customer names a part: the old one, one that was tried, or one to be asked about.

All of it is common practice, no source: each test says its practice in our own words.
"""

from __future__ import annotations

from typing import Any

import pytest

from assistant.fitment.decide import decide
from assistant.fitment.decision import Decision, Outcome, Why
from assistant.fitment.identify import By
from assistant.reading.facts import Fact
from assistant.records.rows import Row
from tests.told import facts, toilet, word
from tests.trade import MAKER, build, counter, says, seal, sits, valve

TOVELIN = toilet(MAKER, "Tovelin")
SHOP: tuple[Row, ...] = (
    *(valve(), build(), sits(), says("fits", "UQ-08"), says("fits", "UQ-10")),
    seal("UQ-08", status="discontinued", replaced_by="UQ-09"),
    seal("UQ-09", status="discontinued", replaced_by="UQ-11"),
    *(seal("UQ-10"), seal("UQ-11"), seal("UQ-95", ear_span_mm=95.0), seal("UQ-50")),
)


def _part(number: str, of: str) -> Fact:
    return word("part_no", number, of=of)


def _told(*told: Fact, rows: tuple[Row, ...] = SHOP) -> Decision:
    return decide(counter(*rows), facts(*told))


def _parts(decision: Decision) -> list[str]:
    groups = [branch.group for branch in decision.branches]
    return [pick.part_no for g in groups for picks in g.picks.values() for pick in picks]


@pytest.mark.parametrize("of", ["old", "wanted"])
def test_an_old_part_still_sold_is_had_again(of: str) -> None:
    """The number moulded on the old seal is as good as a model (common practice, no source)."""
    decision = _told(_part("UQ-10", of))
    assert (decision.outcome, decision.identity.by) == (Outcome.PART, By.OLD_PART)
    assert _parts(decision)[0] == "UQ-10"


def test_an_old_part_no_longer_made_gives_way_to_the_living_end_of_its_chain() -> None:
    """Common practice, no source."""
    decision = _told(_part("UQ-08", "old"))
    assert decision.outcome is Outcome.PART
    assert _parts(decision)[0] == "UQ-11"
    assert decision.branches[0].group.picks["main"][0].basis == "replacement"


def test_an_old_part_that_only_inherited_its_fit_is_had_again() -> None:
    """The replacement wears out too (common practice, no source)."""
    decision = _told(_part("UQ-11", "old"))
    assert decision.outcome is Outcome.PART
    assert _parts(decision)[0] == "UQ-11"


def test_an_old_part_tells_what_the_toilet_flushes() -> None:
    """One valve serves toilets of several volumes, and its seals are made for one each (common
    practice, no source)."""
    rows = (
        *(valve(), build("tovelin-a", flush_full_gpf=1.6), build("tovelin-b", flush_full_gpf=3.5)),
        *(sits(build="tovelin-a"), sits(build="tovelin-b"), says("fits", "A"), says("fits", "B")),
        *(seal("A", flush_gpf_max=1.6), seal("B", flush_gpf_min=3.5, price=1)),
    )
    assert _parts(_told(_part("A", "old"), rows=rows)) == ["A"]
    assert _parts(_told(_part("B", "old"), rows=rows)) == ["B"]


def test_an_old_part_of_which_nothing_is_known_matches_nothing() -> None:
    """Common practice, no source."""
    decision = _told(_part("UQ-50", "old"))
    assert (decision.outcome, decision.why) == (Outcome.NO_MATCH, Why.OLD_PART_UNKNOWN)


def test_an_old_part_that_no_build_of_the_name_takes_is_asked_about() -> None:
    """Somebody changed the valve, or the name is another toilet's (common practice, no source)."""
    decision = _told(*TOVELIN, _part("UQ-95", "old"))
    assert (decision.outcome, decision.why) == (Outcome.ASK, Why.DISAGREES)
    assert _parts(decision) == []


def test_an_old_part_tells_two_builds_of_one_name_apart() -> None:
    """Common practice, no source."""
    rows = (
        *(valve("gate-2"), valve("gate-3", opening_in=3.0), build("tovelin-a"), build("tovelin-b")),
        *(sits("gate-2", "tovelin-a"), sits("gate-3", "tovelin-b")),
        *(seal("UQ-20"), seal("UQ-30", opening_in=3.0)),
        *(says("fits", "UQ-20", valve="gate-2"), says("fits", "UQ-30", valve="gate-3")),
    )
    assert _parts(_told(*TOVELIN, _part("UQ-30", "old"), rows=rows)) == ["UQ-30"]


def test_a_seal_tried_in_vain_is_not_named_again() -> None:
    """If the right seal did not fit, the valve is not what we think (common practice, no
    source)."""
    decision = _told(*TOVELIN, _part("UQ-10", "tried"))
    assert (decision.outcome, decision.why) == (Outcome.ASK, Why.TRIED_IN_VAIN)
    assert (decision.question, _parts(decision)) == ("valve_replaced", [])


def test_a_wrong_seal_tried_in_vain_is_no_surprise() -> None:
    """It could not have fitted (common practice, no source)."""
    assert _told(*TOVELIN, _part("UQ-95", "tried")).outcome is Outcome.PART


@pytest.mark.parametrize("of", ["asked", "wanted"])
def test_a_part_asked_about_that_does_not_fit_is_ruled_out(of: str) -> None:
    """The customer has it in the basket already (common practice, no source)."""
    decision = _told(*TOVELIN, _part("UQ-95", of))
    assert decision.ruled_out[0].part_no == "UQ-95"
    assert decision.ruled_out[0].basis == "ear-span"
    assert "UQ-95" not in [*_parts(decision), *decision.unknown]


@pytest.mark.parametrize("of", ["asked", "wanted"])
def test_a_part_asked_about_of_which_nothing_is_written_is_said_to_be_unknown(of: str) -> None:
    """'We do not know' is neither yes nor no (common practice, no source)."""
    decision = _told(*TOVELIN, _part("UQ-50", of))
    assert decision.unknown == ("UQ-50",)
    assert "UQ-50" not in [j.part_no for j in decision.ruled_out] + _parts(decision)


def test_a_part_asked_about_that_fits_comes_first() -> None:
    """The customer chose it (common practice, no source)."""
    decision = _told(*TOVELIN, _part("UQ-11", "asked"))
    assert (_parts(decision)[0], decision.unknown) == ("UQ-11", ())


LIKING: list[tuple[str, dict[str, Any], dict[str, Any]]] = [
    ("what lies on the shelf", {"on_hand": 0}, {"on_hand": 3}),
    ("what need not be ordered", {"status": "to order"}, {}),
    ("the compatible part, as this shop likes it", {"genuine": True}, {}),
    ("the cheaper", {"price": 9}, {"price": 8}),
    ("one whose price is known", {"price": None}, {"price": 90}),
]


@pytest.mark.parametrize(("later", "first"), [pytest.param(*r[1:], id=r[0]) for r in LIKING])
def test_of_two_that_fit_the_shop_names_first(later: dict[str, Any], first: dict[str, Any]) -> None:
    """In stock, then compatible, then by price: the order of these tests' shop."""
    both = (seal("UQ-A", **later), seal("UQ-Z", **first))
    rows = (valve(), build(), sits(), *both, says("fits", "UQ-A"), says("fits", "UQ-Z"))
    assert _parts(_told(*TOVELIN, rows=rows)) == ["UQ-Z", "UQ-A"]


def test_a_seal_that_needs_no_change_comes_before_one_that_does() -> None:
    """Nobody cuts rubber who need not (common practice, no source)."""
    rows = (
        *(valve(), build(), sits(), seal("UQ-A", price=2), seal("UQ-Z", price=9)),
        *(says("fits with change", "UQ-A", change="trim the tail"), says("fits", "UQ-Z")),
    )
    decision = _told(*TOVELIN, rows=rows)
    assert _parts(decision) == ["UQ-Z", "UQ-A"]
    changes = [pick.change for pick in decision.branches[0].group.picks["main"]]
    assert changes == [None, "trim the tail"]
