"""Whether a claim of fit holds for every place it speaks of."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

from assistant.answers.check.context import Context, Relation
from assistant.answers.check.general_words import plainly
from assistant.answers.check.items import Length
from assistant.answers.check.lookup import OWN_VALVE, Place, Verdict, cited, verdict
from assistant.answers.check.old_part import in_place_of
from assistant.answers.check.results import (
    CONTRADICTED,
    SUPPORTED,
    UNKNOWN,
    Finding,
    Result,
    result_of,
)
from assistant.answers.check.scope import Scope, Silent
from assistant.records.rows import FlushValve


def fit(
    context: Context,
    parts: Sequence[str],
    scopes: Sequence[Scope],
    relation: Relation,
    *,
    offered: bool = False,
) -> list[Finding]:
    """One finding for each part and scope. `offered`: the sentence tells someone to take it."""
    found = []
    for scope in scopes:
        if scope.old_part is not None and relation == "fits":
            tables = context.given.tables
            found += [in_place_of(tables, part, scope.old_part) for part in parts]
            continue
        places = _places(context, scope)
        for part in parts:
            claim = f"{part} {relation}: {scope.label}"
            if isinstance(places, Silent):
                result = CONTRADICTED if places.false else UNKNOWN
                found.append(Finding(claim, places.rule, result))
                continue
            if places[0].build is None and scope.old_part is None:
                places = [_described_for(part, scope, context)]
            seal = context.given.tables.seals[part]
            if offered and seal.status == "discontinued":
                found.append(Finding(claim, "discontinued", CONTRADICTED, cited(seal)))
                continue
            found.append(_judged(context, part, places, relation, claim, some=scope.some))
            if relation == "fits" and places[0].build is not None:
                context.named_fit = True
    context.relation = relation
    return found


def exists(context: Context, scope: Scope, claim: str) -> Finding:
    """Whether the tables list such toilets at all."""
    if scope.builds is None:
        return Finding(claim, "listed", SUPPORTED)  # the one last spoken of
    try:
        row = scope.rows(context.given.tables)[0]
    except Silent as silent:
        return Finding(claim, silent.rule, CONTRADICTED if silent.false else UNKNOWN)
    return Finding(claim, "listed", SUPPORTED, cited(row))


def _places(context: Context, scope: Scope) -> list[Place] | Silent:
    if scope.builds is None and scope.old_part is None:
        return [Place(None, "main", None)]
    try:
        return scope.places(context.given.tables)
    except Silent as silent:
        return silent


def _judged(
    context: Context,
    part: str,
    places: Sequence[Place],
    relation: Relation,
    claim: str,
    *,
    some: bool,
) -> Finding:
    verdicts = [verdict(context.given.tables, part, place) for place in places]
    if relation == "unknown" and not context.changes_said:
        return _unsaid(verdicts, claim)
    results = [(_result(context, part, v, relation), v) for v in verdicts]
    if some:
        held = [v for r, v in results if r == SUPPORTED]
        whole = len(held) == len(results)
        row = (held or verdicts)[0]
        result = SUPPORTED if held and not whole else CONTRADICTED if whole else UNKNOWN
        return Finding(claim, f"some-{row.rule}", result, row.row)
    for wanted in (CONTRADICTED, UNKNOWN, SUPPORTED):
        for result, found in results:
            if result == wanted:
                return Finding(claim, _rule(result, found), result, found.row)
    raise AssertionError("a scope always holds a place")


def _rule(result: Result, found: Verdict) -> str:
    if result == CONTRADICTED and found.says == "fits with change":
        return "change-unsaid"
    return found.rule


def _result(context: Context, part: str, found: Verdict, relation: Relation) -> Result:
    if relation == "fits":
        changes = {plainly(change) for change in found.changes}
        if context.changes_said and found.says in ("fits", "fits with change"):
            return result_of(context.changes_said <= changes)
        if found.says == "fits with change" and changes & context.changes_next(part):
            return SUPPORTED
        if found.says == "fits":
            return SUPPORTED
        return CONTRADICTED if found.says in ("fits with change", "does not fit") else UNKNOWN
    if context.changes_said:  # a change belongs to what fits with it, to nothing else
        return UNKNOWN
    if relation == "does not fit":
        if found.says == "does not fit":
            return SUPPORTED
        return CONTRADICTED if found.says.startswith("fits") else UNKNOWN
    if not context.by_measures:  # 'could fit' must say that only the measurements speak for it
        return UNKNOWN
    if found.says == "could fit":
        return SUPPORTED
    return UNKNOWN if found.says == "unknown" else CONTRADICTED


def _unsaid(verdicts: Sequence[Verdict], claim: str) -> Finding:
    silent = [v for v in verdicts if v.says in ("unknown", "could fit")]
    if silent:
        return Finding(claim, "silence", SUPPORTED, silent[0].row)
    return Finding(claim, verdicts[0].rule, CONTRADICTED, verdicts[0].row)


_FIELDS = {
    "opening": "opening_in", "pegs": "pegs", "peg-span": "peg_span_mm",
    "overflow": "overflow", "tube": "overflow_mm",
}  # fmt: skip


def _described_for(part: str, scope: Scope, context: Context) -> Place:
    """A valve known only by what the sentence says of it, as far as it can be held to a seal."""
    said: dict[str, Any] = {}
    for limit in scope.limits:
        field = _FIELDS.get(limit.trait.name)
        if field is None or len(limit.values) != 1:
            return Place(None, None, None)
        value = limit.values[0]
        if isinstance(value, Length):
            value = value.mm if field.endswith("_mm") else value.mm / 25.4
            value = round(value * 16) / 16 if field == "opening_in" else value
        said[field] = value
    seal = context.given.tables.seals[part]
    mount = tuple(
        way
        for way, told in (
            ("pegs", said.get("pegs") in ("up", "down")),
            ("ring", said.get("overflow") == "round"),
        )
        if told and way in seal.mount and way not in OWN_VALVE
    )
    blank = FlushValve(
        valve="", style="", opening_in=None, mount=mount, peg_span_mm=None, pegs=None,
        overflow=None, overflow_mm=None, note=None,
    )  # fmt: skip
    return Place(None, "main", replace(blank, **said))
