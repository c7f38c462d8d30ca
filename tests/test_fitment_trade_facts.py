"""A decision table of the trade: one seal, one flush valve, and what a plumber would say.

Every row gives the practice behind it in our own words; all of it is common practice, no
source, and says so in its row. Toilets, valves and parts are invented.
"""

from __future__ import annotations

import pytest

from assistant.fitment.judge import Verdict, fitting, judge
from assistant.records.rows import FlushValve, Row, Seal
from assistant.records.tables import Tables
from tests.trade import (
    BALL,
    CANISTER,
    CLIP,
    FOAM,
    PEGGED,
    PUSHED,
    RING,
    STRAP,
    THREADED,
    TOWER,
    build,
    place,
    says,
    seal,
    sits,
    tables,
    valve,
)

NO, COULD = Verdict.DOES_NOT_FIT, Verdict.COULD_FIT
UNKNOWN = Verdict.UNKNOWN

EARED, EARED_3 = seal(), seal(opening_in=3.0)
RINGED = seal(style=RING)
EARS_AND_RING = seal(mount=("pegs", "ring"), ring_mm=28.0)
WIDE_SQUARE = valve(style=FOAM, overflow="square")

# (practice, seal, valve, verdict without any evidence, what it rests on)
BY_MEASURE: list[tuple[str, Seal, FlushValve, Verdict, str]] = [
    (
        "Two flappers that look the same part company at the hinge: ears 91 mm apart do not hook"
        " on pegs 80 mm apart (common practice, no source)",
        seal(ear_span_mm=91.0),
        valve(),
        NO,
        "ear-span",
    ),
    (
        "Rubber ears give 3 mm in all, no more (common practice, no source)",
        seal(ear_span_mm=83.5),
        valve(),
        NO,
        "ear-span",
    ),
    (
        "Within those 3 mm the hinge is no objection (common practice, no source)",
        seal(ear_span_mm=83.0),
        valve(),
        COULD,
        "geometry",
    ),
    (
        "Where the tube has no pegs, an eared flapper has nothing to hang on (common practice,"
        " no source)",
        EARED,
        valve(style=RING),
        NO,
        "mount",
    ),
    (
        "Where the tube has no pegs, a flapper with a ring goes over it (common practice, no"
        " source)",
        RINGED,
        valve(style=RING),
        COULD,
        "geometry",
    ),
    (
        "Ears made for pegs that hang down slip off pegs that stand up (common practice, no"
        " source)",
        seal(ears="down"),
        valve(),
        NO,
        "ears",
    ),
    (
        "And ears made for standing pegs slip off hanging ones (common practice, no source)",
        EARED,
        valve(pegs="down"),
        NO,
        "ears",
    ),
    (
        "A ball on a wire may give way to a ring flapper where the tube is round and of its size"
        " (common practice, no source)",
        RINGED,
        valve(style=BALL),
        COULD,
        "geometry",
    ),
    (
        "Not where that tube is thicker than the ring (common practice, no source)",
        RINGED,
        valve(style=BALL, overflow_mm=33.0),
        NO,
        "ring-size",
    ),
    (
        "Nor where it is square (common practice, no source)",
        RINGED,
        valve(style=BALL, overflow="square"),
        NO,
        "overflow",
    ),
    (
        "Nor where there is none (common practice, no source)",
        RINGED,
        valve(style=BALL, overflow="none", overflow_mm=None),
        NO,
        "overflow",
    ),
    (
        "A ball's valve has no pegs: never a flapper with ears only (common practice, no source)",
        EARED,
        valve(style=BALL),
        NO,
        "mount",
    ),
    (
        "A wide foam-filled flapper's valve refuses the ordinary narrow ears (common practice,"
        " no source)",
        EARED,
        WIDE_SQUARE,
        NO,
        "ear-span",
    ),
    (
        "A square tube takes no ring, so a ring flapper cannot stand in for the foam-filled one"
        " (common practice, no source)",
        RINGED,
        WIDE_SQUARE,
        NO,
        "mount",
    ),
    (
        "Nor can ears and a ring together: too narrow the one, no round tube for the other"
        " (common practice, no source)",
        EARS_AND_RING,
        valve(style=FOAM, mount=("pegs", "ring"), overflow="square"),
        NO,
        "ear-span",
    ),
    (
        "A flapper with ears and a ring that may be cut away is out only if both fail (common"
        " practice, no source)",
        EARS_AND_RING,
        valve(mount=("pegs", "ring"), peg_span_mm=91.0),
        COULD,
        "geometry",
    ),
    (
        "A tipping bucket has a gasket in its neck and no flapper (common practice, no source)",
        seal(opening_in=3.0),
        valve(style=PUSHED),
        NO,
        "mount",
    ),
    (
        "A pushed-in gasket does not go into the screwed neck (common practice, no source)",
        seal(style=PUSHED),
        valve(style=THREADED),
        NO,
        "mount",
    ),
    (
        "Nor a screwed gasket into the plain neck (common practice, no source)",
        seal(style=THREADED),
        valve(style=PUSHED),
        NO,
        "mount",
    ),
    (
        "What snaps on a bar at the back belongs to the valve it was made for, not to another"
        " with a bar (common practice, no source)",
        seal(style=CLIP),
        valve(style=STRAP, mount=("clip",)),
        NO,
        "own-valve",
    ),
    (
        "So does what is strapped round the tube (common practice, no source)",
        seal(style=STRAP),
        valve(style=CLIP, mount=("strap",)),
        NO,
        "own-valve",
    ),
    (
        "Even on its own style of valve a clip is no proof: bars differ (common practice, no"
        " source)",
        seal(style=CLIP),
        valve(style=CLIP),
        UNKNOWN,
        "nothing known",
    ),
    (
        "The ring under a canister is not chosen by its size: lips and grooves differ (common"
        " practice, no source)",
        seal(style=CANISTER),
        valve(style=CANISTER),
        UNKNOWN,
        "nothing known",
    ),
    (
        "Nor is the one under a two-button tower (common practice, no source)",
        seal(style=TOWER),
        valve(style=TOWER),
        UNKNOWN,
        "nothing known",
    ),
    (
        "A 3 in disc does not seat on a 2 in opening, hinge or no hinge (common practice, no"
        " source)",
        EARED_3,
        valve(),
        NO,
        "opening",
    ),
    (
        "And a 2 in disc falls through a 3 in opening (common practice, no source)",
        EARED,
        valve(opening_in=3.0),
        NO,
        "opening",
    ),
    (
        "When opening, hinge and ears all agree it could fit, and nobody has tried it (common"
        " practice, no source)",
        EARED,
        valve(),
        COULD,
        "geometry",
    ),
    (
        "The word universal on the bag proves nothing (common practice, no source)",
        seal(name="Universal, fits all toilets", opening_in=None),
        valve(),
        UNKNOWN,
        "nothing known",
    ),
]


def _shop(*rows: Row) -> Tables:
    return tables(*rows, build(), sits())


@pytest.mark.parametrize(
    ("one", "on", "verdict", "basis"),
    [pytest.param(*row[1:], id=row[0]) for row in BY_MEASURE],
)
def test_what_measures_alone_say(one: Seal, on: FlushValve, verdict: Verdict, basis: str) -> None:
    shop = _shop(one, on)
    found = judge(shop, one.part_no, place(shop))
    assert (found.verdict, found.basis) == (verdict, basis)
    assert fitting(shop, place(shop)) == {}


@pytest.mark.parametrize(
    ("one", "on", "rule"),
    [pytest.param(r[1], r[2], r[4], id=r[0]) for r in BY_MEASURE if r[3] is NO],
)
def test_a_measure_that_disagrees_overrules_any_report(
    one: Seal, on: FlushValve, rule: str
) -> None:
    """A flapper that 'fits' against its measures was tried on another valve than was thought
    (common practice, no source)."""
    shop = _shop(one, on, says("fits"), says("fits", kind="maker's sheet"))
    found = judge(shop, one.part_no, place(shop))
    assert (found.verdict, found.basis) == (NO, rule)
    assert found.objection is not None
    assert found.objection.rule == rule
    assert fitting(shop, place(shop)) == {}


@pytest.mark.parametrize(
    "one",
    [seal(style=s) for s in (CLIP, STRAP, CANISTER, TOWER, PUSHED, THREADED)],
    ids=lambda one: one.style,
)
def test_what_belongs_to_one_valve_fits_it_once_somebody_says_so(one: Seal) -> None:
    """Base seals, clips, straps and gaskets go by the maker's word (common practice, no source)."""
    shop = _shop(one, valve(style=one.style), says("fits"))
    assert [*fitting(shop, place(shop))] == [one.part_no]


def test_a_ball_on_a_wire_gives_way_to_a_ball_or_a_ring_but_never_to_ears() -> None:
    """Common practice, no source."""
    parts = [seal("UQ-BALL", BALL), seal("UQ-RING", RING), seal("UQ-EARS", PEGGED)]
    shop = _shop(valve(style=BALL), *parts, *(says("fits", one.part_no) for one in parts))
    assert [*fitting(shop, place(shop))] == ["UQ-BALL", "UQ-RING"]
