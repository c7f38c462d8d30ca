"""What a statement about toilets is about: builds of the table, and a position in them."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace
from typing import Any

from assistant.answers.check import years
from assistant.answers.check.line import Line
from assistant.answers.check.lookup import Place
from assistant.answers.check.old_part import fitted
from assistant.records.rows import Build, Row
from assistant.records.tables import Tables


@dataclass(frozen=True)
class Trait:
    """Something a build or its valve has, that singles it out or can be said of it.

    `post` follows a model's name, `pre` stands before it, `clause` is a whole clause. `read`
    gives the values meant (any of them may hold), `test` whether a place has one: yes, no,
    or `None` where the table is silent. `of_valve` says which of the two it belongs to.
    """

    name: str
    read: Callable[[Line, str], tuple[Any, ...] | None]
    test: Callable[[Place, Any], bool | None]
    row: Callable[[Place], Row | None]
    of_valve: bool = False
    every: bool = False  # all of the values must hold, not just any
    post: tuple[str, ...] = ()
    pre: tuple[str, ...] = ()
    clause: tuple[str, ...] = ()


@dataclass(frozen=True)
class Limit:
    """A trait with the values that it may have."""

    trait: Trait
    values: tuple[Any, ...]

    def met(self, place: Place) -> bool | None:
        """Whether a place has one of the values."""
        found = [self.trait.test(place, value) for value in self.values]
        if self.trait.every:
            return False if False in found else None if None in found else True
        return True if True in found else None if None in found else False


class Silent(Exception):  # noqa: N818 - no fault: the tables have nothing for such a scope
    """The tables hold no build of that description; `false` if they say otherwise."""

    def __init__(self, rule: str, *, false: bool = False) -> None:
        self.rule, self.false = rule, false
        super().__init__(rule)


@dataclass(frozen=True)
class Scope:
    """Builds by name (`None`: the ones last named), narrowed by limits and a position."""

    builds: tuple[str, ...] | None = None
    limits: tuple[Limit, ...] = ()
    position: str | None = None
    some: bool = False
    old_part: str | None = None  # instead of builds: wherever this part fits
    label: str = field(default="it", compare=False)  # in the words of the text

    def narrowed(self, limits: Sequence[Limit]) -> Scope:
        """The scope under further limits; of each kind the last one counts."""
        kept = {limit.trait.name: limit for limit in (*self.limits, *limits)}
        return replace(self, limits=tuple(kept.values()))

    def at(self, position: str | None) -> Scope:
        """The scope at a position, if one is named."""
        return self if position is None else replace(self, position=position)

    def rows(self, tables: Tables) -> list[Build]:
        """The builds, after every limit that belongs to a build."""
        builds = [tables.builds[name] for name in self.builds or ()]
        spans: tuple[years.Span, ...] = ()
        for limit in self.limits:
            if limit.trait.name == YEARS:
                spans = limit.values
            elif limit.trait.of_valve:
                has = [[limit.met(place) for place in _places(tables, b)] for b in builds]
                builds = _kept(builds, [_any(met) for met in has], limit.trait.name)
            else:
                met = [limit.met(Place(b, None, None)) for b in builds]
                builds = _kept(builds, met, limit.trait.name)
        return _in_years(builds, spans) if spans else builds

    def places(self, tables: Tables) -> list[Place]:
        """Every build, position and valve meant.

        Raises:
            Silent: no row answers to a limit, or a build has no such position.
        """
        if self.old_part is not None and not self.limits:
            if not (found := fitted(tables, self.old_part)):
                raise Silent("old-part")
            return found
        if self.builds is None:
            raise Silent("scope")
        found = []
        for build in self.rows(tables):
            inside = _places(tables, build)
            if self.position is not None:
                inside = [place for place in inside if place.position == self.position]
                if not inside:
                    raise Silent("position", false=True)
            for limit in self.limits:
                if limit.trait.of_valve:
                    inside = [place for place in inside if limit.met(place) is not False]
            found += inside
        if not found:
            raise Silent("scope")
        return found


YEARS = "years"


def _places(tables: Tables, build: Build) -> list[Place]:
    there = tables.valves_in.get(build.build, ())
    if not there:
        return [Place(build, None, None)]
    return [Place(build, v.position, tables.valves[v.valve]) for v in there]


def _any(met: Sequence[bool | None]) -> bool | None:
    return True if True in met else None if None in met else False


def _kept(builds: Sequence[Build], met: Sequence[bool | None], rule: str) -> list[Build]:
    """Builds not known to differ; one at least must be known to agree."""
    if True not in met:
        raise Silent(rule, false=None not in met and bool(met))
    return [build for build, m in zip(builds, met, strict=True) if m is not False]


def _in_years(builds: Sequence[Build], spans: Sequence[years.Span]) -> list[Build]:
    kept: dict[str, Build] = {}
    for span in spans:
        if span[0] == span[1]:
            sure = any(years.holds_year(b, span[0]) for b in builds)
        else:
            sure = years.states_run(builds, span)
        if not sure:
            raise Silent(YEARS, false=all(years.known(b) for b in builds) and bool(builds))
        kept |= {b.build: b for b in builds if years.meets(b, span)}
    return list(kept.values())
