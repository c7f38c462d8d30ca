"""Notes cut into passages: what stands under one heading, short enough for the model."""

from __future__ import annotations

import hashlib
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from assistant.records.notes import Note
from assistant.records.sections import Line, Section

PHRASES = "phrases"
LONGEST = 150  # words; the model reads 256 of its tokens, and the headings take some


@dataclass(frozen=True)
class Passage:
    """A section of a note, or a piece of a long one, and the lines where it stands.

    `path` is the note's title and the headings down to its own; `section` its address.
    """

    note: str
    section: str
    path: tuple[str, ...]
    audience: str
    styles: tuple[str, ...]
    tags: tuple[str, ...]
    sentences: tuple[Line, ...]
    lines: tuple[int, int]
    asked: tuple[str, ...] = ()

    @property
    def title(self) -> str:
        """The title of its note."""
        return self.path[0]

    @property
    def heading(self) -> str:
        """Its own heading."""
        return self.path[-1]

    @property
    def wordings(self) -> tuple[str, ...]:
        """Its heading and other wordings of the question that it answers."""
        return (self.heading, *self.asked)

    @property
    def body(self) -> str:
        """Its sentences in a row."""
        return " ".join(sentence.text for sentence in self.sentences)

    @cached_property
    def text(self) -> str:
        """What is embedded: the headings, then the sentences."""
        return f"{'. '.join(self.path)}. {self.body}"

    @cached_property
    def words(self) -> str:
        """What is indexed by its words: the text, and the wordings of its question."""
        return " ".join((self.text, *self.asked))

    def seen_by(self, audience: str) -> bool:
        """Whether the reader may see it; staff see everything."""
        return audience == "staff" or self.audience == "customers"


def digest(text: str) -> str:
    """The SHA-256 of a text."""
    return hashlib.sha256(text.encode("utf-8", "surrogatepass")).hexdigest()


def passages_of(notes: Mapping[str, Note]) -> tuple[Passage, ...]:
    """Every passage of every note, in the order of names and lines.

    Notes tagged 'phrases' hold sentences that answers quote by name; they are not searched.
    """
    return tuple(
        passage
        for note in notes.values()
        if PHRASES not in note.tags
        for section in note.sections.values()
        for passage in _cut(note, section)
    )


def _cut(note: Note, section: Section) -> Iterator[Passage]:
    pieces = list(_pieces(section.sentences))
    for at, sentences in enumerate(pieces):
        last = section.lines[1] if at + 1 == len(pieces) else sentences[-1].last
        yield Passage(
            note.name,
            section.slug,
            section.path,
            note.audience,
            note.styles,
            note.tags,
            tuple(sentences),
            (sentences[0].line, last),
            section.asked,
        )


def _pieces(sentences: Iterable[Line]) -> Iterator[list[Line]]:
    """Sentences in runs of at most `LONGEST` words; a longer sentence is a run of its own."""
    held: list[Line] = []
    length = 0
    for sentence in sentences:
        words = len(sentence.text.split())
        if held and length + words > LONGEST:
            yield held
            held, length = [], 0
        held.append(sentence)
        length += words
    if held:
        yield held


def as_row(passage: Passage) -> dict[str, Any]:
    """A passage as one JSON object."""
    return {
        "note": passage.note,
        "section": passage.section,
        "path": passage.path,
        "audience": passage.audience,
        "styles": passage.styles,
        "tags": passage.tags,
        "sentences": [[s.line, s.last, s.text, s.mark, s.points] for s in passage.sentences],
        "lines": passage.lines,
        "asked": passage.asked,
    }


def from_row(row: Mapping[str, Any]) -> Passage:
    """The passage of a JSON object; a `KeyError`, `TypeError` or `ValueError` if it is none."""
    first, last = row["lines"]
    return Passage(
        row["note"],
        row["section"],
        _words(row["path"]),
        row["audience"],
        _words(row["styles"]),
        _words(row["tags"]),
        tuple(
            Line(text, line, last, mark, points)
            for line, last, text, mark, points in row["sentences"]
        ),
        (first, last),
        _words(row["asked"]),
    )


def _words(items: Sequence[str]) -> tuple[str, ...]:
    return tuple(items)
