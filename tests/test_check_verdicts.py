"""The checker's own reading of the tables, seal by seal and valve by valve."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator, Mapping

import pytest
from checking_answers import ANSWERS, LETTER
from checking_tables import BUILDS, EVIDENCE, SEALS, TABLES, TRUTH, VALVES, by_key, row

from assistant.answers.check import check
from assistant.answers.check.lookup import Place, objection, verdict
from assistant.records.rows import BuildValve, Evidence, FlushValve
from assistant.records.tables import Tables

SAYS = {
    "F": "fits", "C": "fits with change", "M": "could fit", "N": "does not fit", "?": "unknown",
}  # fmt: skip


def tables(*evidence: Evidence, **valves: tuple[str, ...]) -> Tables:
    """The invented shop with other evidence, and builds with other valves (build=positions)."""
    sits = [
        row(BuildValve, build=build, position=position, valve="p2u", seals_needed=1)
        for build, positions in valves.items()
        for position in positions
    ]
    return dataclasses.replace(
        TABLES,
        evidence=by_key(*evidence),
        build_valves={**TABLES.build_valves, **by_key(*sits)},
    )


def says(shop: Tables, part: str, build: str | None = None, position: str = "main") -> str:
    """What is said of a part on the pegged 2 in valve."""
    place = Place(BUILDS[build] if build else None, position, VALVES["p2u"])
    return verdict(shop, part, place).says


def evidence(says: str, part: str = "SL-2044", **cells: str) -> Evidence:
    """A row of evidence on the pegged 2 in valve, if it names no build."""
    where = cells if "build" in cells else {"valve": "p2u", **cells}
    return row(Evidence, evidence=f"E{says}{part}", part_no=part, verdict=says, **where)


@pytest.mark.parametrize("part", TRUTH)
def test_every_seal_on_every_valve_is_as_worked_out_by_hand(part: str) -> None:
    found = {v: verdict(TABLES, part, Place(None, None, VALVES[v])).says for v in TRUTH[part]}
    assert found == {valve: SAYS[letter] for valve, letter in TRUTH[part].items()}


def test_evidence_for_and_against_is_no_evidence() -> None:
    assert says(tables(evidence("fits"), evidence("does not fit")), "SL-2044") == "unknown"


def test_a_rule_against_outweighs_evidence() -> None:
    assert says(tables(evidence("fits", "SL-2046")), "SL-2046") == "does not fit"


def test_a_volume_outside_the_seal_s_range_is_against_it_in_the_main_valve_only() -> None:
    thirsty = dataclasses.replace(BUILDS["zt2"], flush_full_gpf=6.0)
    where = Place(thirsty, "main", VALVES["p2u"])
    assert verdict(TABLES, "SL-2041", where).says == "does not fit"
    assert verdict(TABLES, "SL-2041", Place(thirsty, "rinse", VALVES["p2u"])).says == "fits"


def test_a_row_on_a_build_speaks_for_its_only_valve() -> None:
    shop = tables(evidence("fits", build="zt2"))
    assert says(shop, "SL-2044", "zt2") == "fits"
    assert says(shop, "SL-2044", "zo1") == "could fit"


def test_a_row_on_a_build_with_several_valves_counts_only_against() -> None:
    both = {"zt2": ("main", "rinse")}
    shop = tables(evidence("fits", build="zt2"), **both)
    assert says(shop, "SL-2044", "zt2") == "could fit"
    shop = tables(evidence("does not fit", build="zt2"), **both)
    assert {says(shop, "SL-2044", "zt2", p) for p in both["zt2"]} == {"does not fit"}
    shop = tables(evidence("fits", build="zt2", position="rinse"), **both)
    assert (says(shop, "SL-2044", "zt2"), says(shop, "SL-2044", "zt2", "rinse")) == (
        "could fit",
        "fits",
    )


def test_evidence_is_handed_down_a_chain_but_never_over_evidence_of_its_own() -> None:
    assert says(tables(evidence("fits", "SL-1970")), "SL-2041") == "fits"
    own = evidence("does not fit", "SL-2041")
    assert says(tables(evidence("fits", "SL-1970"), own), "SL-2041") == "does not fit"
    clouded = (evidence("fits", "SL-1970"), evidence("does not fit", "SL-1970"))
    assert says(tables(*clouded), "SL-2041") == "could fit"
    assert says(tables(evidence("fits with change", "SL-1970", change="x")), "SL-2041") != "fits"
    silent = evidence("fits with change", "SL-2041")  # its change is not told
    assert says(tables(evidence("fits", "SL-1970"), silent), "SL-2041") == "unknown"


def test_a_change_that_the_row_does_not_name_supports_nothing() -> None:
    assert says(tables(evidence("fits with change")), "SL-2044") == "unknown"


def test_a_ring_within_two_millimetres_sits_and_ears_within_three_hook_on() -> None:
    ring, tube = SEALS["SL-2060"], VALVES["r2"]
    for mm, rule in ((30.0, None), (26.0, None), (30.5, "ring-size")):
        there = dataclasses.replace(tube, overflow_mm=mm)
        assert objection(ring, there, Place(None, None, there)) == rule
    for mm, rule in ((98.0, None), (92.0, None), (98.5, "ear-span")):
        pegs = dataclasses.replace(VALVES["p2u"], peg_span_mm=mm)
        assert objection(SEALS["SL-2041"], pegs, Place(None, None, pegs)) == rule


def test_one_good_way_of_holding_suffices() -> None:
    both = row(
        FlushValve, valve="both", style="pegged-flapper", opening_in=2.0, mount=("pegs", "ring"),
        pegs="down", overflow="round", overflow_mm=28.0,
    )  # fmt: skip
    where = Place(None, None, both)
    assert objection(SEALS["SL-2065"], both, where) is None
    assert objection(SEALS["SL-2041"], both, where) == "ears"


def test_a_canister_seal_of_another_style_is_for_another_valve() -> None:
    other = dataclasses.replace(VALVES["c3"], style="tank-ball")
    assert objection(SEALS["SL-4010"], other, Place(None, None, other)) == "own-valve"


def test_an_empty_cell_never_objects() -> None:
    for part in ("SL-2041", "SL-2044", "SL-2075"):
        assert verdict(TABLES, part, Place(None, None, VALVES["blank"])).says == "unknown"


class Watched(Mapping[str, Evidence]):
    """Evidence that counts how often it is walked through."""

    def __init__(self, rows: Mapping[str, Evidence]) -> None:
        self.rows, self.walks = rows, 0

    def __getitem__(self, key: str) -> Evidence:
        return self.rows[key]

    def __len__(self) -> int:
        return len(self.rows)

    def __iter__(self) -> Iterator[str]:
        self.walks += 1
        return iter(self.rows)


def test_no_answer_walks_through_the_evidence_once_the_indexes_are_made() -> None:
    watched = Watched(EVIDENCE)
    shop = dataclasses.replace(TABLES, evidence=watched)
    for _ in range(2):
        before = watched.walks
        for answer in ANSWERS:
            check(answer.text, shop, audience="staff", message=LETTER)
    assert before > 0
    assert watched.walks == before
