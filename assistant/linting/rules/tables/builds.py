"""Builds that are one and the same, or that nothing tells apart."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from itertools import combinations

from assistant.answers.words import years
from assistant.linting.finding import Finding, Rule
from assistant.linting.gathered import Gathered
from assistant.records.rows import Build

# What can be seen of a toilet, or read in it, without its date.
TELLING = ("kind", "pieces", "model_no", "tank_mark", "flush_full_gpf", "flush_reduced_gpf")


def _are_one(one: Build, other: Build) -> bool:
    """The same toilet to everyone who looks at it: maker, model, kind, pieces, number, years."""
    same = ("brand", "model", "kind", "pieces", "model_no", "made_from", "made_to")
    if any(getattr(one, name) != getattr(other, name) for name in same):
        return False
    return one.model_no is not None or not _told_apart(one, other)


def _told_apart(one: Build, other: Build) -> bool:
    """Something is known of both, and it is not the same."""
    return any(
        None not in (pair := (getattr(one, name), getattr(other, name))) and pair[0] != pair[1]
        for name in TELLING
    )


def _overlap(one: Build, other: Build) -> bool:
    """Both were made in some year; unknown years are not known to meet."""
    ends = (one.made_from, one.made_to, other.made_from, other.made_to)
    if None in ends:
        return False
    first, last, other_first, other_last = (end or 0 for end in ends)
    return first <= other_last and other_first <= last


def _pairs(gathered: Gathered) -> Iterator[tuple[Build, Build]]:
    """Builds of one model, two by two."""
    for builds in gathered.tables.models.values():
        yield from combinations(builds, 2)


def doubled_build(gathered: Gathered) -> Iterator[Finding]:
    """Told at each later row, with the first."""
    first: dict[str, Build] = {}
    for one, other in _pairs(gathered):
        if _are_one(one, other) and other.build not in first:
            first[other.build] = one
            path, line = gathered.at("toilets.csv", other.build)
            yield Finding(
                path=path,
                line=line,
                what=f"'{other.build}' is '{one.build}' again: the same maker, model, kind, "
                "pieces, number and years",
                mend="keep one row, or fill in what tells the two apart",
            )


def overlapping_builds(gathered: Gathered) -> Iterator[Finding]:
    """Told once for a build, at the later row, with all the earlier ones."""
    met: dict[str, list[Build]] = defaultdict(list)
    for one, other in _pairs(gathered):
        if _overlap(one, other) and not _told_apart(one, other) and not _are_one(one, other):
            met[other.build].append(one)
    for name, others in met.items():
        build = gathered.tables.builds[name]
        path, line = gathered.at("toilets.csv", name)
        named = " and ".join(f"'{one.build}' ({_made(one)})" for one in others)
        yield Finding(
            path=path,
            line=line,
            what=f"'{name}' ({_made(build)}) shares years with {named}, "
            "and nothing else tells them apart",
            mend="correct the years, or fill in number, mark, kind, pieces or volume",
        )


def _made(build: Build) -> str:
    return years((build.made_from or 0, build.made_to or 0))


RULES = (
    Rule(
        "doubled-build",
        "error",
        "A toilet that is listed twice gets two answers, and the date in the tank settles neither.",
        doubled_build,
    ),
    Rule(
        "overlapping-builds",
        "warning",
        "For a toilet of those years both answers hold, and no question can choose between them.",
        overlapping_builds,
    ),
)
