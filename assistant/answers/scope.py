"""Names the builds that a statement is about, so exactly that the tables can confirm it."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import combinations

from assistant.answers.words import listed, qualified, the
from assistant.fitment.features import FEATURES, Condition, separates, values
from assistant.fitment.picks import Group
from assistant.fitment.places import Scenario, of_build
from assistant.records.rows import Build
from assistant.records.tables import Tables

QUALIFYING = ("made", "pieces", "model_no", "flush", "opening", "ears", "overflow", "tank_kind")


def scope(tables: Tables, scenarios: Sequence[Scenario], last: str = "and") -> str | None:
    """'the Brand Model made from 1986 to 1993', or several such.

    `None` where no words of ours would single the builds out from the others of that name;
    a statement about them must then not be made.
    """
    chosen = [s for s in scenarios if s.build is not None]
    if len(chosen) != len(scenarios) or not chosen:
        return None
    names = dict.fromkeys(s.build.full_name for s in chosen if s.build)
    phrases = []
    for name in names:
        mine = [s for s in chosen if s.build and s.build.full_name == name]
        phrase = _one(tables, name, mine)
        if phrase is None:
            return None
        phrases.append(phrase)
    return listed(phrases, last)


def scope_of_year(tables: Tables, scenarios: Sequence[Scenario], year: int) -> str | None:
    """'the Brand Model made in 1991', where just these builds were made in that year."""
    builds = [s.build for s in scenarios if s.build]
    names = {b.full_name for b in builds}
    if len(names) != 1 or len(builds) != len(scenarios):
        return None
    name = names.pop()
    then = {b.build for b in tables.models[name] if made_in(b, year)}
    return f"the {name} made in {year}" if then == {b.build for b in builds} else None


def made_in(build: Build, year: int) -> bool:
    """Whether a build is known to have been made in a year."""
    if build.made_from is None or build.made_to is None:
        return False
    return build.made_from <= year <= build.made_to


def _one(tables: Tables, name: str, mine: Sequence[Scenario]) -> str | None:
    builds = tables.models[name]
    kept = {s.build.build for s in mine if s.build}
    # Positions may have been left out on purpose; the words are about whole builds.
    inside = Group(tuple(of_build(tables, b) for b in builds if b.build in kept), {})
    outside = Group(tuple(of_build(tables, b) for b in builds if b.build not in kept), {})
    called = the(builds[0])
    if not outside.scenarios:
        return called
    able = {f.name: f for f in FEATURES if f.name in QUALIFYING}
    for wanted in QUALIFYING:
        if separates(able[wanted], (inside, outside)):
            return f"{called} {_said(wanted, inside)}"
    for pair in combinations(QUALIFYING, 2):
        one, other = able[pair[0]], able[pair[1]]
        known = [values(f, inside.scenarios) for f in (one, other)]
        if None in known:
            continue
        rivals = [
            s for s in outside.scenarios if one.of(s) in {one.of(i) for i in inside.scenarios}
        ]
        if separates(other, (inside, Group(tuple(rivals), {}))):
            return f"{called} {_said(pair[1], inside)}, {_said(pair[0], inside)}"
    return None


def _said(feature: str, group: Group) -> str:
    found = next(f for f in FEATURES if f.name == feature)
    return qualified(Condition(feature, values(found, group.scenarios) or ()))
