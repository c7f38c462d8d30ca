"""What reports, sheets and empty cells prove of a seal, and what they do not.

All of it is common practice, no source: each test says its practice in our own words.
"""

from __future__ import annotations

from typing import Any

import pytest

from assistant.fitment.judge import Verdict, fitting, judge
from assistant.records.rows import Row
from assistant.records.tables import Tables
from tests.trade import build, place, says, scenario, seal, sits, tables, valve

NO, FITS, UNKNOWN = Verdict.DOES_NOT_FIT, Verdict.FITS, Verdict.UNKNOWN
CHANGED = Verdict.WITH_CHANGE


def _shop(*rows: Row, **about_build: Any) -> Tables:
    return tables(*rows, build(**about_build), sits())


@pytest.mark.parametrize(
    ("low", "high", "gallons", "verdict"),
    [
        (3.5, 5.0, 1.6, NO),  # held up too long: the tank empties itself
        (1.28, 1.28, 1.6, NO),  # shuts too early: the bowl is not cleared
        (1.28, 1.6, 1.6, FITS),
        (1.6, 3.5, 1.6, FITS),
        (None, 1.6, 3.5, NO),
        (3.5, None, 1.6, NO),
        (None, None, 1.6, FITS),
        (3.5, 5.0, None, FITS),  # nobody knows what this toilet flushes
    ],
)
def test_a_seal_gives_the_toilet_back_its_own_flush(
    low: float | None, high: float | None, gallons: float | None, verdict: Verdict
) -> None:
    """Neither a larger nor a smaller flush than the toilet's own is ever sold (common practice,
    no source)."""
    one = seal(flush_gpf_min=low, flush_gpf_max=high)
    shop = _shop(one, valve(), says("fits"), flush_full_gpf=gallons)
    found = judge(shop, one.part_no, place(shop))
    assert (found.verdict, found.basis) == (verdict, "evidence" if verdict is FITS else "volume")


def test_the_volume_says_nothing_of_a_rinse_valve() -> None:
    """The small valve lets go a part of the water only (common practice, no source)."""
    shop = tables(
        *(seal(flush_gpf_min=3.5, flush_gpf_max=5.0), valve(), says("fits")),
        *(build(flush_full_gpf=1.6), sits(position="main"), sits(position="rinse")),
    )
    assert not fitting(shop, place(shop, position="main"))
    assert [*fitting(shop, place(shop, position="rinse"))] == ["UQ-10"]


EMPTIED = [
    *[("seal", c) for c in ("opening_in", "mount", "ear_span_mm", "ears")],
    *[("valve", c) for c in ("opening_in", "mount", "peg_span_mm", "pegs")],
]
OTHERWISE: dict[str, Any] = {
    "opening_in": 3.0,
    "mount": ("clip",),
    "ear_span_mm": 95.0,
    "peg_span_mm": 95.0,
    "ears": "down",
    "pegs": "down",
}


@pytest.mark.parametrize(("side", "column"), EMPTIED)
def test_an_empty_cell_proves_nothing(side: str, column: str) -> None:
    """What nobody measured may be anything (common practice, no source)."""
    shop = _with(side, column, () if column == "mount" else None)
    assert judge(shop, "UQ-10", place(shop)).verdict is UNKNOWN


@pytest.mark.parametrize(("side", "column"), EMPTIED)
def test_an_empty_cell_objects_to_nothing(side: str, column: str) -> None:
    """And so it cannot be held against the part that somebody saw close (common practice, no
    source)."""
    wrong, empty = OTHERWISE[column], () if column == "mount" else None
    shop = _with(side, column, wrong, says("fits"))
    assert judge(shop, "UQ-10", place(shop)).verdict is NO
    shop = _with(side, column, empty, says("fits"))
    assert judge(shop, "UQ-10", place(shop)).verdict is FITS


def _with(side: str, column: str, value: Any, *more: Row) -> Any:
    own = {column: value}
    one = seal(**own) if side == "seal" else seal()
    on = valve(**own) if side == "valve" else valve()
    return _shop(one, on, *more)


def _verdict(*evidence: Row, part_no: str = "UQ-10") -> Verdict:
    shop = _shop(valve(), seal("UQ-10"), *evidence)
    return judge(shop, part_no, place(shop)).verdict


def test_one_good_report_is_enough() -> None:
    """Somebody saw it close (common practice, no source)."""
    assert _verdict(says("fits", kind="customer's report")) is FITS


def test_reports_that_contradict_one_another_prove_nothing() -> None:
    """One of the two tanks was not what its owner thought (common practice, no source)."""
    assert _verdict(says("fits"), says("does not fit")) is UNKNOWN


def test_a_documented_no_is_not_outvoted_by_two_who_say_it_fits() -> None:
    """A sheet is written with the part in hand (common practice, no source)."""
    said = [says("fits", kind="customer's report"), says("fits", kind="tried at the bench")]
    assert _verdict(says("does not fit", kind="maker's sheet"), *said) is UNKNOWN


def test_a_no_stands_even_against_a_fit_with_a_change() -> None:
    """A seal cut to fit that still leaked is no seal (common practice, no source)."""
    trimmed = says("fits with change", change="trim the tail")
    assert _verdict(trimmed, says("does not fit")) is UNKNOWN


def test_a_no_alone_rules_it_out() -> None:
    """What was tried and leaked leaks again (common practice, no source)."""
    assert _verdict(says("does not fit")) is NO


def test_a_fit_with_a_change_states_the_change() -> None:
    """The customer must know what to cut before the bag is opened (common practice, no source)."""
    shop = _shop(valve(), seal(), says("fits with change", change="cut the ring off"))
    found = fitting(shop, place(shop))["UQ-10"]
    assert (found.verdict, found.change) == (CHANGED, "cut the ring off")


def test_a_change_that_nobody_wrote_down_is_no_fit() -> None:
    """'With some work' helps nobody (common practice, no source)."""
    assert _verdict(says("fits with change")) is UNKNOWN


def test_a_change_that_nobody_wrote_down_is_not_made_good_by_the_older_number() -> None:
    """Something about the new part differs, or no change were needed (common practice, no
    source)."""
    shop = _shop(
        *(valve(), seal("UQ-09", replaced_by="UQ-10"), seal("UQ-10")),
        *(says("fits", "UQ-09"), says("fits with change", "UQ-10")),
    )
    assert judge(shop, "UQ-10", place(shop)).verdict is UNKNOWN


def test_a_plain_fit_needs_no_change() -> None:
    """Who trimmed it need not have (common practice, no source)."""
    shop = _shop(valve(), seal(), says("fits"), says("fits with change", change="trim the tail"))
    found = judge(shop, "UQ-10", place(shop))
    assert (found.verdict, found.change) == (FITS, None)


# Replaced numbers


def test_a_discontinued_part_gives_way_to_the_living_end_of_its_chain() -> None:
    """A maker's new number does the old one's work (common practice, no source)."""
    shop = _shop(
        *(valve(), says("fits", "UQ-08")),
        seal("UQ-08", status="discontinued", replaced_by="UQ-09"),
        seal("UQ-09", status="discontinued", replaced_by="UQ-10"),
        seal("UQ-10"),
    )
    found = fitting(shop, place(shop))
    assert {part: one.basis for part, one in found.items()} == {"UQ-10": "replacement"}
    assert shop.living("UQ-08") == "UQ-10"


def test_a_part_to_order_is_as_alive_as_one_on_the_shelf() -> None:
    """It takes three weeks, but it comes (common practice, no source)."""
    gone = seal("UQ-08", status="discontinued", replaced_by="UQ-09")
    shop = _shop(valve(), says("fits", "UQ-08"), gone, seal("UQ-09", status="to order"))
    assert [*fitting(shop, place(shop))] == ["UQ-09"]
    assert shop.living("UQ-08") == "UQ-09"


def test_a_replacement_that_was_tried_itself_is_judged_by_that() -> None:
    """The part in hand counts for more than its pedigree (common practice, no source)."""
    shop = _shop(
        *(valve(), seal("UQ-09", replaced_by="UQ-10"), seal("UQ-10")),
        *(says("fits", "UQ-09"), says("does not fit", "UQ-10")),
    )
    assert [*fitting(shop, place(shop))] == ["UQ-09"]


def test_a_replacement_inherits_no_disputed_fit() -> None:
    """Doubt is inherited too (common practice, no source)."""
    shop = _shop(
        *(valve(), seal("UQ-09", replaced_by="UQ-10"), seal("UQ-10")),
        *(says("fits", "UQ-09"), says("does not fit", "UQ-09")),
    )
    assert fitting(shop, place(shop)) == {}


def test_a_replacement_of_another_width_inherits_nothing() -> None:
    """A new number may come with a new hinge (common practice, no source)."""
    shop = _shop(
        *(valve(), seal("UQ-09", replaced_by="UQ-10"), seal("UQ-10", ear_span_mm=91.0)),
        says("fits", "UQ-09"),
    )
    assert [*fitting(shop, place(shop))] == ["UQ-09"]


def test_numbers_that_replace_one_another_in_a_ring_come_to_an_end() -> None:
    """Catalogues hold such slips; nothing living stands at the end (common practice, no source)."""
    gone = {"status": "discontinued"}
    shop = _shop(
        *(valve(), says("fits", "UQ-08")),
        seal("UQ-08", replaced_by="UQ-09", **gone),
        seal("UQ-09", replaced_by="UQ-08", **gone),
    )
    assert shop.living("UQ-08") is None
    assert fitting(shop, place(shop)) == {}


# Evidence on a toilet whose tank has several valves


def _two_valves(*evidence: Row) -> Tables:
    return tables(
        *(valve("gate-2"), valve("small-2"), seal(), build(), *evidence),
        *(sits("gate-2", position="main"), sits("small-2", position="rinse")),
    )


def _positions_it_fits(shop: Tables) -> list[str]:
    places = scenario(shop).places
    return [one.position for one in places if judge(shop, "UQ-10", one).is_fit]


def test_a_fit_on_a_tank_with_one_valve_needs_no_position() -> None:
    """There is only one place it can have been (common practice, no source)."""
    shop = _shop(valve(), seal(), says("fits", build="tovelin-a"))
    assert _positions_it_fits(shop) == ["main"]


def test_a_fit_on_a_tank_with_two_valves_counts_where_it_was_seen() -> None:
    """The two valves take different seals (common practice, no source)."""
    shop = _two_valves(says("fits", build="tovelin-a", position="rinse"))
    assert _positions_it_fits(shop) == ["rinse"]


def test_a_fit_on_a_tank_with_two_valves_without_a_position_counts_nowhere() -> None:
    """Nobody can tell which of the two was meant (common practice, no source)."""
    assert _positions_it_fits(_two_valves(says("fits", build="tovelin-a"))) == []


def test_a_no_on_a_tank_with_two_valves_without_a_position_counts_for_both() -> None:
    """Where it leaked is not known, so it is not offered for either (common practice, no
    source)."""
    shop = _two_valves(says("does not fit", build="tovelin-a"), says("fits", valve="gate-2"))
    assert [judge(shop, "UQ-10", one).verdict for one in scenario(shop).places] == [UNKNOWN, NO]


def test_evidence_on_one_toilet_says_nothing_of_another_with_the_same_valve() -> None:
    """A report on one tank is about that tank (common practice, no source)."""
    shop = tables(
        *(valve(), seal(), says("fits", build="tovelin-a")),
        *(build("tovelin-a"), build("tovelin-b"), sits(), sits(build="tovelin-b")),
    )
    assert [*fitting(shop, place(shop, "tovelin-a"))] == ["UQ-10"]
    assert fitting(shop, place(shop, "tovelin-b")) == {}
