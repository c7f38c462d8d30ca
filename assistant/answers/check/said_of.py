"""A trait said of toilets: it must hold in every place meant."""

from __future__ import annotations

from assistant.answers.check.frames import Reading
from assistant.answers.check.lookup import cited
from assistant.answers.check.results import CONTRADICTED, UNKNOWN, Finding, result_of
from assistant.answers.check.scope import Limit, Scope, Silent


def said_of(reading: Reading, scope: Scope, limit: Limit) -> list[Finding]:
    """Whether every place of a scope has the trait."""
    claim = f"{scope.label}: {reading.words}"
    try:
        places = scope.places(reading.context.given.tables)
    except Silent as silent:
        result = CONTRADICTED if silent.false else UNKNOWN
        return [Finding(claim, silent.rule, result)]
    met = [(limit.met(place), place) for place in places]
    for wanted in (False, None, True):
        for holds, place in met:
            if holds is wanted:
                row = limit.trait.row(place)
                name = limit.trait.name
                return [Finding(claim, name, result_of(holds), cited(row) if row else None)]
    return []
