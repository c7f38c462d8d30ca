"""A note has a title of its own, and its file is named after it."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.linting.finding import Finding, Rule
from assistant.linting.gathered import Gathered
from assistant.linting.rules.notes.source import sources
from assistant.records.sections import slug


def find_twice(gathered: Gathered) -> Iterator[Finding]:
    """Titles that an earlier note has already."""
    first: dict[str, str] = {}
    for name, source in sources(gathered).items():
        title = gathered.notes[name].title
        other = first.setdefault(slug(title), name)
        if other != name:
            yield Finding(
                path=gathered.note_at(name),
                line=source.line_of("title"),
                what=f"{gathered.note_at(other)} has this title too",
                mend="give one of them another title, or make one note of the two",
            )


def find_apart(gathered: Gathered) -> Iterator[Finding]:
    """Files whose name and title speak of different things."""
    from assistant.search.words import stems

    for name, source in sources(gathered).items():
        title = gathered.notes[name].title
        called, titled = set(stems(name.replace("-", " "))), set(stems(title))
        if slug(title) != name and not (called <= titled or titled <= called):
            yield Finding(
                path=gathered.note_at(name),
                line=source.line_of("title"),
                what=f"the title '{title}' is not what the file is called",
                mend=f"name the file '{slug(title)}.md', or put words of its name in the title",
            )


TWICE = Rule(
    "title-twice",
    "warning",
    "Answers cite a note by its title, and of two alike nobody can tell which was meant.",
    find_twice,
)
APART = Rule(
    "title-and-file",
    "warning",
    "Readers know a note by its title, and links by its file: where the two speak of different "
    "things the one is not found by the other. One may say less than the other; little words and "
    "endings do not count.",
    find_apart,
)
