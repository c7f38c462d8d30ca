"""Seals found by the measures of a valve that nobody can name: they could fit, and no more.

All of it is common practice, no source: each test says its practice in our own words.
"""

from __future__ import annotations

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from assistant.fitment.decide import decide
from assistant.fitment.decision import Decision, Outcome, Why
from assistant.reading.facts import Fact
from assistant.records.rows import Row
from tests.told import between, facts, opening, word
from tests.trade import BALL, CANISTER, CLIP, RING, counter, seal

RACK: tuple[Row, ...] = (
    seal("UQ-UP"),
    seal("UQ-DOWN", ears="down"),
    seal("UQ-WIDE", ear_span_mm=95.0),
    seal("UQ-3", opening_in=3.0),
    seal("UQ-GONE", status="discontinued"),
    seal("UQ-UNMEASURED", ear_span_mm=None),
    seal("UQ-RING", RING),
    seal("UQ-BIG-RING", RING, ring_mm=34.0),
    seal("UQ-BALL", BALL),
    seal("UQ-CLIP", CLIP),
    seal("UQ-CAN", CANISTER, opening_in=2.0),
)
PEGS, TUBE = between("hinge_width", 79, 82), between("tube", 27, 29)


def _measured(*told: Fact, rows: tuple[Row, ...] = RACK) -> Decision:
    return decide(counter(*rows), facts(*told))


@pytest.mark.parametrize(
    ("told", "parts"),
    [
        ((opening(2.0), PEGS, word("ears", "up")), ["UQ-UP"]),
        ((opening(2.0), PEGS, word("ears", "down")), ["UQ-DOWN"]),
        ((opening(2.0), TUBE, word("mount", "ring")), ["UQ-RING"]),
        ((opening(3.0), PEGS, word("ears", "up")), ["UQ-3"]),
    ],
)
def test_opening_and_hold_and_its_own_measure_find_what_could_fit(
    told: tuple[Fact, ...], parts: list[str]
) -> None:
    """Three things decide: the hole, how it hangs, and the size of that (common practice, no
    source)."""
    decision = _measured(*told)
    assert (decision.outcome, decision.why) == (Outcome.DEPENDS, Why.MEASURES)
    assert [one.part_no for one in decision.measured] == parts
    assert decision.branches == ()


@pytest.mark.parametrize(
    "told",
    [
        (opening(2.0),),
        (opening(2.0), PEGS),
        (PEGS, word("ears", "up")),
        (opening(2.0), TUBE),
        (opening(2.0), word("mount", "ring")),
        (opening(2.0), word("mount", "clip")),
        (opening(2.0), word("mount", "canister")),
        (between("opening", 49, 66, nominal_in=(2.0, 2.5)), PEGS, word("ears", "up")),
    ],
)
def test_one_measure_short_is_a_question_and_no_part(told: tuple[Fact, ...]) -> None:
    """Clips and canisters are never found by size at all (common practice, no source)."""
    decision = _measured(*told)
    assert (decision.outcome, decision.measured) == (Outcome.ASK, ())


def test_a_length_of_nobody_knows_what_is_asked_about() -> None:
    """People measure the disc, the rim or the hole (common practice, no source)."""
    decision = _measured(between("length", 50, 54))
    assert (decision.outcome, decision.why) == (Outcome.ASK, Why.WHAT_WAS_MEASURED)
    assert decision.question == "measured"


TENTHS = st.integers(700, 900)


@example(span=619, off=30, width=0)  # in binary, 64.9 less 3 is a hair more than 61.9
@given(span=TENTHS, off=st.integers(-80, 50), width=st.integers(0, 40))
def test_ears_could_fit_just_within_what_rubber_gives(span: int, off: int, width: int) -> None:
    """Within what was measured, or 3 mm of its middle (common practice, no source)."""
    low, high = span + off, span + off + width
    told = (opening(2.0), word("ears", "up"), between("hinge_width", low / 10, high / 10))
    decision = _measured(*told, rows=(seal(ear_span_mm=span / 10),))
    could = low <= span <= high or abs(2 * span - low - high) <= 60
    assert decision.outcome is (Outcome.DEPENDS if could else Outcome.NO_MATCH)


def test_a_ball_on_a_wire_is_not_known_by_its_opening_alone() -> None:
    """Balls differ in their thread and their swim as well (common practice, no source)."""
    decision = _measured(opening(2.0), word("mount", "wire"))
    assert (decision.outcome, decision.measured) == (Outcome.ASK, ())


def test_a_square_tube_takes_no_ring_however_it_measures() -> None:
    """A ring grips a round tube only (common practice, no source)."""
    told = (opening(2.0), TUBE, word("mount", "ring"), word("overflow", "square"))
    assert _measured(*told).measured == ()


def test_a_flush_volume_told_rules_out_what_is_made_for_another() -> None:
    """A seal held up for 3.5 gallons drains a 1.6 gallon tank too far (common practice)."""
    thirsty = (seal("UQ-OLD", flush_gpf_min=3.5, flush_gpf_max=5.0), seal("UQ-NEW"))
    told = (opening(2.0), PEGS, word("ears", "up"), between("flush", 1.55, 1.65))
    assert [one.part_no for one in _measured(*told, rows=thirsty).measured] == ["UQ-NEW"]
