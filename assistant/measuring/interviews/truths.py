"""What is true of simulated toilets: the CSV files with a row more for each that they lack."""

from __future__ import annotations

from collections.abc import Iterable

from assistant.measuring.campaign.truth import Row, Truth
from assistant.measuring.interviews.toilets import LISTED, NOT_LISTED, Toilet
from assistant.records.rows import FlushValve


class TruthOf(Truth):
    """The truth of a shop, and of toilets that its files do not have.

    Evidence about a build itself says nothing of such a toilet; evidence about its valve does.
    """

    def __init__(self, truth: Truth, toilets: Iterable[Toilet]) -> None:
        super().__init__(truth.tables)
        self._truth = truth
        made = [toilet for toilet in toilets if toilet.group != LISTED]
        had = {row["valve"] for row in truth.rows("flush_valves")}
        fresh = {v.valve: v for t in made for v in t.valves.values() if v.valve not in had}
        self._more: dict[str, tuple[Row, ...]] = {
            "toilets": tuple(map(_build, made)),
            "flush_valves": tuple(map(_valve, fresh.values())),
            "build_valves": tuple(
                {"build": t.name, "position": at, "valve": v.valve}
                for t in made
                for at, v in t.valves.items()
            ),
        }

    def rows(self, table: str) -> tuple[Row, ...]:
        """The rows of a table's file, and those of the simulated toilets."""
        return (*self._truth.rows(table), *self._more.get(table, ()))

    def fitting(self, toilet: Toilet) -> tuple[str, ...]:
        """The seals that fit the worn valve as they are."""
        at = toilet.name, toilet.worn
        return tuple(p for p in self.seals if self.verdicts.get((*at, p)) == "fits")

    def may_sit(self, toilet: Toilet) -> tuple[str, ...]:
        """The seals that may be in the tank now: those that fit.

        In a toilet that is not listed somebody put in what he found: a seal with the opening of
        the valve and a way of holding to it, to which nothing objects.
        """
        if toilet.group != NOT_LISTED:
            return self.fitting(toilet)
        return tuple(
            part_no
            for part_no in self.seals
            if self.verdicts.get((toilet.name, toilet.worn, part_no)) == "unknown"
            and self._alike(toilet, part_no)
        )

    def _alike(self, toilet: Toilet, part_no: str) -> bool:
        valve, seal = self.valves[toilet.name][toilet.worn], self.seals[part_no]
        shared = {*valve["mount"].split(";")} & {*seal["mount"].split(";")} - {""}
        same = valve["opening_in"] and seal["opening_in"]
        return bool(shared and same) and float(valve["opening_in"]) == float(seal["opening_in"])


def _cell(value: object) -> str:
    return "" if value is None else str(value)


def _build(toilet: Toilet) -> Row:
    build = toilet.build
    return {
        "build": toilet.name,
        "brand": build.brand,
        "model": build.model,
        "model_no": _cell(build.model_no),
        "tank_mark": _cell(build.tank_mark),
        "made_from": _cell(toilet.year),
        "made_to": _cell(toilet.year),
        "flush_full_gpf": _cell(build.flush_full_gpf),
    }


def _valve(valve: FlushValve) -> Row:
    return {
        "valve": valve.valve,
        "style": valve.style,
        "opening_in": _cell(valve.opening_in),
        "mount": ";".join(valve.mount),
        "peg_span_mm": _cell(valve.peg_span_mm),
        "pegs": _cell(valve.pegs),
        "overflow": _cell(valve.overflow),
        "overflow_mm": _cell(valve.overflow_mm),
    }
