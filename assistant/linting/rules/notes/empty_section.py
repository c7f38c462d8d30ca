"""Every heading has something to say."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.linting.finding import Finding, Rule
from assistant.linting.gathered import Gathered
from assistant.linting.rules.notes.source import Source, sources
from assistant.records.sections import Heading, headings


def empty(source: Source) -> Iterator[Heading]:
    """Headings with neither text nor a lower heading under them."""
    found = iter(headings(source.tokens))
    open_: Heading | None = None
    previous = ""
    for token in source.tokens:
        if token.type == "heading_open" and token.map:
            heading = next(found)
            if open_ is not None and heading.level <= open_.level:
                yield open_
            open_ = heading
        elif token.type == "inline" and previous != "heading_open" and token.content.strip():
            open_ = None
        previous = token.type
    if open_ is not None:
        yield open_


def find(gathered: Gathered) -> Iterator[Finding]:
    """Sections without text."""
    for name, source in sources(gathered).items():
        for heading in empty(source):
            yield Finding(
                path=gathered.note_at(name),
                line=heading.line,
                what=f"nothing stands under '{heading.text}'",
                mend="write what answers it, or take the heading out",
            )


RULE = Rule(
    "empty-section",
    "warning",
    "A heading is a question; one without text promises an answer that is not there. Code and "
    "pages' own marks are not text, because no answer can quote them.",
    find,
)
