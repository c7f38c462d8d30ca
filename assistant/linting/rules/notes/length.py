"""Notes are neither too short nor too long."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.linting.finding import Finding, Rule
from assistant.linting.gathered import Gathered
from assistant.records.notes import Note
from assistant.search.passages import PHRASES

SHORTEST, LONGEST = 150, 600  # words


def words(note: Note) -> int:
    """The words of a note's text: without headings, front matter, and what is not shown."""
    lines = (line for section in note.sections.values() for line in section.sentences)
    return sum(len(line.text.split()) for line in lines)


def find(gathered: Gathered) -> Iterator[Finding]:
    """Notes that are too short to be found for what they say, or too long for one subject."""
    for name, note in gathered.notes.items():
        count = words(note)
        if PHRASES in note.tags or SHORTEST <= count <= LONGEST:
            continue
        yield Finding(
            path=gathered.note_at(name),
            line=1,
            what=f"has {count} words",
            mend=f"say more, up to {SHORTEST} at least, or put it in another note"
            if count < SHORTEST
            else f"split it into notes of at most {LONGEST}, one subject each",
        )


RULE = Rule(
    "length",
    "warning",
    "A note of a few sentences seldom answers more than one wording of a question, and one of many "
    "pages holds several subjects, of which its title names one. Notes tagged 'phrases' are left "
    "out: they hold single sentences that answers quote by name, and are not searched.",
    find,
)
