"""Every style of seal that the shop knows has a note about it, and one about fitting it."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.linting.finding import Finding, Rule
from assistant.linting.gathered import Gathered
from assistant.linting.rules.notes.source import all_read
from assistant.records.rows import Style

INSTALLING = "installing"


def find_unwritten(gathered: Gathered) -> Iterator[Finding]:
    """Styles that no note names in its front matter."""
    if not all_read(gathered):
        return
    about = {style for note in gathered.notes.values() for style in note.styles}
    for style in gathered.tables.styles:
        if style not in about:
            yield _at(gathered, style, f"no note is about '{style}'", "write one")


def find_unfitted(gathered: Gathered) -> Iterator[Finding]:
    """Styles that no note tagged 'installing' names."""
    if not all_read(gathered):
        return
    fitted = {
        style
        for note in gathered.notes.values()
        if INSTALLING in note.tags
        for style in note.styles
    }
    for style in gathered.tables.styles:
        if style not in fitted:
            yield _at(
                gathered,
                style,
                f"no note tells how to fit '{style}'",
                f"write one and tag it '{INSTALLING}'",
            )


def _at(gathered: Gathered, style: str, what: str, mend: str) -> Finding:
    path, line = gathered.at(Style.file, style)
    return Finding(
        path=path,
        line=line,
        what=what,
        mend=f"{mend}, with 'styles: [{style}]' in its front matter",
    )


UNWRITTEN = Rule(
    "style-without-note",
    "warning",
    "A customer who is told of a seal may ask what it is and how it holds, and an answer quotes "
    "only notes that name the style.",
    find_unwritten,
)
UNFITTED = Rule(
    "style-without-fitting",
    "warning",
    "Whoever buys a seal has to put it in, and each style goes in in its own way.",
    find_unfitted,
)
