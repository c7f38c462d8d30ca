"""How many seals a tank takes."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.answers.check.context import Context
from assistant.answers.check.lookup import cited
from assistant.answers.check.results import CONTRADICTED, UNKNOWN, Finding, result_of, worst
from assistant.answers.check.scope import Scope, Silent


def needed(context: Context, scope: Scope) -> tuple[set[int | None], str | None] | Silent:
    """Seals needed at the scope's position (or in the whole tank), over all its builds."""
    tables = context.given.tables
    try:
        places = scope.places(tables)
    except Silent as silent:
        return silent
    totals: dict[str, int | None] = {}
    row = None
    for place in places:
        if place.build is None or place.position is None:
            return {None}, None
        valve = tables.build_valves[f"{place.build.build}/{place.position}"]
        row = row or cited(valve)
        before = totals.get(place.build.build, 0)
        here = valve.seals_needed
        totals[place.build.build] = None if before is None or here is None else before + here
    return set(totals.values()), row


def takes(context: Context, number: int, scopes: Sequence[Scope], claim: str) -> list[Finding]:
    """Whether the tank, or its valve at the position named, takes that many seals."""
    found = []
    for scope in scopes:
        held = needed(context, scope)
        if isinstance(held, Silent):
            result = CONTRADICTED if held.false else UNKNOWN
            found.append(Finding(claim, "seals-needed", result))
            continue
        results = [result_of(None if n is None else n == number) for n in held[0]]
        found.append(Finding(claim, "seals-needed", worst(results), held[1]))
    return found


def counted(
    context: Context, counts: Sequence[tuple[int | None, str]], scopes: Sequence[Scope]
) -> list[Finding]:
    """Whether the tank takes as many of each part as the sentence says."""
    return [
        finding
        for number, part in counts
        if number is not None
        for finding in takes(context, number, scopes, f"{number} of {part}")
    ]
