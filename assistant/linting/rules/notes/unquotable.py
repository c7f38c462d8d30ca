"""Every sentence of a note can be quoted."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.linting.finding import Finding, Rule
from assistant.linting.gathered import Gathered
from assistant.linting.rules.notes.quoted import fallen
from assistant.search.excerpt import leans


def find(gathered: Gathered) -> Iterator[Finding]:
    """Sentences that the check of answers takes out, though no row is against them."""
    for one in fallen(gathered):
        if one.fault == "unquotable":
            points_back = leans(one.line.text)
            yield Finding(
                path=gathered.note_at(one.note),
                line=one.line.line,
                what=f'no answer can quote this as it stands: "{one.shown}"',
                mend="say again what it speaks of, for nothing stands before it in its section"
                if points_back
                else "make it shorter and plainer, without marks or code",
            )


RULE = Rule(
    "not-quotable",
    "warning",
    "A section is quoted without the ones before it, so its first sentence must stand by itself; "
    "one that the check of answers cannot follow is never said.",
    find,
)
