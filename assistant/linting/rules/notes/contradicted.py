"""Notes agree with the tables."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.linting.finding import Finding, Rule
from assistant.linting.gathered import Gathered
from assistant.linting.rules.notes.quoted import fallen


def find(gathered: Gathered) -> Iterator[Finding]:
    """Sentences that say what a row of the tables denies."""
    for one in fallen(gathered):
        if one.fault == "contradicted":
            row = f" (row {one.row})" if one.row else ""
            yield Finding(
                path=gathered.note_at(one.note),
                line=one.line.line,
                what=f"the tables contradict '{one.claim}'{row}: \"{one.shown}\"",
                mend="correct the note, or the row if the note is right",
            )


RULE = Rule(
    "contradicts-tables",
    "error",
    "Answers keep silent about a sentence that a row denies, and one of the two is wrong.",
    find,
)
