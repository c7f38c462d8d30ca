"""Seals that would be taken for the right one and do not fit."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import islice

from assistant.fitment.judge import Judgement, Verdict, judge
from assistant.fitment.picks import Pick
from assistant.fitment.places import Scenario
from assistant.records.tables import Tables

LOOKED_AT = 200  # seals of the same style that are compared at the most


def look_alikes(
    tables: Tables, pick: Pick, scenarios: Sequence[Scenario], most: int
) -> tuple[Judgement, ...]:
    """Seals like the one picked that fit none of the scenarios, nearest first.

    First those somebody tried in this very valve and wrote down as wrong, then those of the
    same style that one measure alone rules out.
    """
    places = [scenario.at(pick.position) for scenario in scenarios]
    chosen = tables.seals[pick.part_no]
    written = [
        part for place in places for part in tables.parts_tried_on_valve.get(place.valve.valve, ())
    ]
    alike = (s.part_no for s in islice(tables.seals_of_style.get(chosen.style, ()), LOOKED_AT))
    ranked: list[tuple[tuple[object, ...], Judgement]] = []
    for part_no in dict.fromkeys([*written, *alike]):
        seal = tables.seals[part_no]
        if part_no == pick.part_no or seal.status == "discontinued":
            continue
        verdicts = [judge(tables, part_no, place) for place in places]
        if any(v.verdict is not Verdict.DOES_NOT_FIT for v in verdicts):
            continue
        differing = sum(
            getattr(seal, name) != getattr(chosen, name)
            for name in ("style", "opening_in", "ears", "ear_span_mm", "ring_mm", "colour")
        )
        ranked.append(((part_no not in written, differing, part_no), verdicts[0]))
    return tuple(judgement for _, judgement in islice(sorted(ranked, key=_first), most))


def _first(item: tuple[tuple[object, ...], Judgement]) -> tuple[object, ...]:
    return item[0]


def ruled_out(
    tables: Tables, part_nos: Iterable[str], scenarios: Sequence[Scenario]
) -> tuple[Judgement, ...]:
    """Those of the parts that fit nowhere in any of the scenarios."""
    found = []
    for part_no in part_nos:
        verdicts = [judge(tables, part_no, place) for s in scenarios for place in s.places]
        everywhere = all(s.places for s in scenarios)  # of a tank without a valve nothing is known
        if verdicts and everywhere and all(v.verdict is Verdict.DOES_NOT_FIT for v in verdicts):
            found.append(verdicts[0])
    return tuple(found)
