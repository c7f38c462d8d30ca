"""When a model was made, when it was not, and when its flush valve changed."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.answers.check import years
from assistant.answers.check.frames import IS_MODEL, TRAIT, Frame, Reading
from assistant.answers.check.line import Line
from assistant.answers.check.lookup import Place, cited
from assistant.answers.check.results import CONTRADICTED, SUPPORTED, UNKNOWN, Finding, result_of
from assistant.answers.check.said_of import said_of
from assistant.answers.check.scope import YEARS, Scope, Silent, Trait
from assistant.records.rows import Build


def _spans(line: Line, stretch: str) -> tuple[years.Span, ...] | None:
    return years.spans(line.within(stretch)) or None


def _made(place: Place, said: years.Span) -> bool | None:
    build = place.build
    if build is None or not years.known(build):
        return None
    return build.made_from == said[0] and build.made_to == said[1]


TRAITS = (
    Trait(
        name=YEARS,
        read=_spans,
        test=_made,
        row=lambda place: place.build,
        post=("(made|built) {R} ((,|or|and|, and|, or) (made|built)? {R})*",),
    ),
)


def participle(reading: Reading) -> Sequence[Finding]:
    """'Was made from ... to ...', 'is marked ...': what singles builds out, said of a toilet."""
    found: list[Finding] = []
    limits = [limit for item in reading.items("O", "o") for limit in item.values["O"]]
    negated = reading.has("not", "never")
    for scope in reading.scopes("t"):
        for limit in limits:
            if limit.trait.name == YEARS:
                found += _years(reading, scope, limit.values, negated=negated)
            elif negated:
                found.append(Finding(reading.words, limit.trait.name, UNKNOWN))
            else:
                found += said_of(reading, scope, limit)
    return found


def _years(
    reading: Reading, scope: Scope, spans: Sequence[years.Span], *, negated: bool
) -> list[Finding]:
    claim = f"{scope.label}: {reading.words}"
    tables = reading.context.given.tables
    if scope.builds is None:
        return [Finding(claim, YEARS, UNKNOWN)]
    try:
        builds = scope.rows(tables)
    except Silent as silent:
        return [Finding(claim, silent.rule, CONTRADICTED if silent.false else UNKNOWN)]
    row = cited(builds[0])
    found = []
    for span in spans:
        if negated:
            held = [years.holds_year(b, span[0]) for b in builds] if span[0] == span[1] else [None]
            holds = False if True in held else None if None in held else True
        elif span[0] == span[1] and any(years.holds_year(b, span[0]) for b in builds):
            holds = True
        else:
            holds = span in years.runs(builds)
            holds = None if not holds and not all(years.known(b) for b in builds) else holds
        found.append(Finding(claim, YEARS, result_of(holds), row))
    return found


def valve_changed(reading: Reading) -> Sequence[Finding]:
    """A build with another valve begins in that year, right after the one before it ended."""
    tables = reading.context.given.tables
    found = []
    for scope in reading.scopes("t"):
        claim = f"{scope.label}: {reading.words}"
        try:
            builds = scope.rows(tables)
        except Silent as silent:
            found.append(Finding(claim, silent.rule, UNKNOWN))
            continue
        for year, _ in years.spans(reading.items("R")):
            new = [b for b in builds if b.made_from == year]
            old = [b for b in builds if b.made_to == year - 1]
            changed = [b for b in new for o in old if _valves(reading, b) != _valves(reading, o)]
            if changed:
                found.append(Finding(claim, "valve-changed", SUPPORTED, cited(changed[0])))
            else:
                sure = all(years.known(b) for b in builds)
                result = CONTRADICTED if sure else UNKNOWN
                found.append(Finding(claim, "valve-changed", result, cited(builds[0])))
    return found


def _valves(reading: Reading, build: Build) -> set[tuple[str, str]]:
    there = reading.context.given.tables.valves_in.get(build.build, ())
    return {(v.position, v.valve) for v in there}


def _which_model(reading: Reading) -> Sequence[Finding]:
    """Only ever a condition: 'if it is the ...'."""
    return []


FRAMES = (
    Frame(
        "model", "(it|this|that|yours|the toilet) is (one of)? {t:scopes}", _which_model, IS_MODEL
    ),
    Frame(
        YEARS,
        "{t:toilet}? (was|were|is|are|has been|have been) (not|never)? made? {o:O}",
        participle,
        TRAIT,
    ),
    Frame(
        "valve-changed",
        "{t:toilet}? (changed (its)? flush? (valve|valves)|got (a new|another) flush? valve) {R}",
        valve_changed,
    ),
    Frame("valve-changed", "{t:valve} (was|has been)? changed {R}", valve_changed),
)
