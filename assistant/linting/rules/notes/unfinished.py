"""No note still shows the sentences that a new one begins with."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.linting.finding import Finding, Rule
from assistant.linting.gathered import Gathered
from assistant.new_note import EXAMPLE


def find(gathered: Gathered) -> Iterator[Finding]:
    """Sections in which a sentence of the template stands."""
    for name, note in gathered.notes.items():
        for section in note.sections.values():
            left = next((line for line in section.sentences if line.text in EXAMPLE), None)
            if left is not None:
                yield Finding(
                    path=gathered.note_at(name),
                    line=left.line,
                    what="the example that a new note begins with still stands here",
                    mend="write the note's own sentences, heading and 'asked' in its place",
                )


RULE = Rule(
    "unfinished-note",
    "warning",
    "What stands in a note may be quoted to a customer, the example too.",
    find,
)
