"""Builds for which the shop can name no seal."""

from __future__ import annotations

import dataclasses
from collections import defaultdict
from collections.abc import Iterable, Iterator

import numpy as np

from assistant.fitment.findings import Says
from assistant.fitment.judge import fitting
from assistant.fitment.places import Place, of_build
from assistant.fitment.rules import RULES as FITMENT
from assistant.linting.columns import Marks
from assistant.linting.finding import Finding, Rule
from assistant.linting.gathered import Gathered
from assistant.records.rows import Build
from assistant.records.tables import Tables

FILES = ("toilets.csv", "build_valves.csv", "flush_valves.csv", "seals.csv", "fitment.csv")


def no_valve(gathered: Gathered) -> Iterator[Finding]:
    """A pressure tank has no seal of ours; of any other the valve is still to be found out."""
    if not gathered.are_whole("toilets.csv", "build_valves.csv"):
        return
    for build in gathered.tables.builds.values():
        if build.kind != "pressure" and build.build not in gathered.tables.valves_in:
            path, line = gathered.at("toilets.csv", build.build)
            yield Finding(
                path=path,
                line=line,
                what=f"no flush valve is listed for {_named(build)}",
                mend="list it in build_valves.csv, or write 'pressure' as its kind if it is so",
            )


def no_seal(gathered: Gathered) -> Iterator[Finding]:
    """Of each valve of each build: does any seal still sold fit it?"""
    if not gathered.are_whole(*FILES):
        return
    tables = gathered.tables
    places = [place for build in tables.builds.values() for place in of_build(tables, build).places]
    left = [*_without_plain_evidence(gathered, places)]
    of_these = _only_about(gathered, left)
    for place in left:
        if place.build is None or fitting(of_these, place):
            continue
        path, line = gathered.at("toilets.csv", place.build.build)
        valve = "the valve" if place.alone else f"the {place.position} valve"
        yield Finding(
            path=path,
            line=line,
            what=f"no seal that is still sold fits {valve} of {_named(place.build)}",
            mend=f"try seals on valve '{place.valve.valve}' and enter what fits",
        )


def _named(build: Build) -> str:
    return f"'{build.build}'"


def _without_plain_evidence(gathered: Gathered, places: Iterable[Place]) -> Iterator[Place]:
    """The places whose valve has no sold seal plainly proven, with nothing against it.

    Most have one, so that few are judged at length.
    """
    trials, tables = gathered.trials, gathered.tables
    sold = np.array([tables.seals[p].status != "discontinued" for p in trials.parts], np.bool_)
    plain = trials.fits & ~trials.objected & ~np.isin(trials.pair, trials.at_odds)
    good = np.flatnonzero(plain & sold[trials.part])
    by_valve: dict[str, list[str]] = defaultdict(list)
    for target, part in zip(trials.target[good].tolist(), trials.part[good].tolist(), strict=True):
        if (valve := trials.targets[target].valve) is not None:
            by_valve[valve].append(trials.parts[part])
    against = {
        (trials.targets[int(trials.target[piece])].build, trials.parts[int(trials.part[piece])])
        for piece in np.flatnonzero(trials.against & _on_builds(gathered))
    }
    for place in places:
        build = place.build.build if place.build else None
        if not any(
            (build, part) not in against
            and not any(rule(tables.seals[part], place).says is Says.OBJECTS for rule in FITMENT)
            for part in by_valve.get(place.valve.valve, ())
        ):
            yield place


def _on_builds(gathered: Gathered) -> Marks:
    trials = gathered.trials
    builds = [at for at, target in enumerate(trials.targets) if target.valve is None]
    return np.isin(trials.target, builds)


def _only_about(gathered: Gathered, places: Iterable[Place]) -> Tables:
    """The tables with the evidence on these places alone, and all of that."""
    trials = gathered.trials
    named = {place.valve.valve for place in places}
    named |= {place.build.build for place in places if place.build}
    wanted = [at for at, t in enumerate(trials.targets) if (t.valve or t.build) in named]
    names = map(trials.name, np.flatnonzero(np.isin(trials.target, wanted)).tolist())
    evidence = gathered.tables.evidence
    return dataclasses.replace(gathered.tables, evidence={name: evidence[name] for name in names})


RULES = (
    Rule(
        "no-valve",
        "warning",
        "A build without a valve can be recognised, and never answered.",
        no_valve,
    ),
    Rule(
        "no-seal",
        "warning",
        "The letters about this build all end with 'we know of none': a trial at the bench helps.",
        no_seal,
    ),
)
