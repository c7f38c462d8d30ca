"""Notes leave parts, prices, makers and models to the tables."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.linting.finding import Finding, Rule
from assistant.linting.gathered import Gathered
from assistant.linting.rules.notes.quoted import fallen


def find(gathered: Gathered) -> Iterator[Finding]:
    """Sentences that name what only the tables can vouch for."""
    for one in fallen(gathered):
        if one.fault == "named":
            named = f"'{one.claim}'" if one.claim else "something"
            yield Finding(
                path=gathered.note_at(one.note),
                line=one.line.line,
                what=f'names {named}, for which no note can vouch: "{one.shown}"',
                mend="put it in the tables, and say here what holds for the kind",
            )


RULE = Rule(
    "names-a-part",
    "error",
    "A part, a price, a maker or a model is looked up in the tables whenever it is said; a note "
    "that names one goes stale without anybody seeing it, and is not quoted.",
    find,
)
