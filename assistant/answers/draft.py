"""An answer as composed, before the check: sentences in paragraphs, and what they rest on."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from assistant.fitment.decision import Outcome
from assistant.records.notes import Note


@dataclass(frozen=True)
class Source:
    """A place in a note that an answer quotes or rests on: file, heading, lines from 1.

    `score` tells how near it was found to be, from 0 to 1; `None` where it is quoted by name.
    """

    note: str
    section: str
    lines: tuple[int, int]
    score: float | None = None


@dataclass(frozen=True)
class Part:
    """A seal named in an answer. `basis` is evidence, replacement or geometry."""

    part_no: str
    position: str
    quantity: int | None
    condition: str | None
    basis: str
    status: str
    because: tuple[str, ...]


@dataclass(frozen=True)
class Ruled:
    """A seal ruled out, why, and the rule or row that decides."""

    part_no: str
    because: str
    rule: str


@dataclass(frozen=True)
class Asked:
    """A question put to the customer."""

    asks: str
    text: str
    why: str
    choices: tuple[str, ...] = ()
    drawing: str | None = None


@dataclass
class Draft:
    """What is to be said. `main` are the sentences without which the answer does not stand."""

    outcome: Outcome
    paragraphs: list[list[str]] = field(default_factory=list)
    main: list[str] = field(default_factory=list)
    parts: list[Part] = field(default_factory=list)
    also_fits: list[str] = field(default_factory=list)
    ruled_out: list[Ruled] = field(default_factory=list)
    question: Asked | None = None
    also_asked: list[Asked] = field(default_factory=list)
    causes: list[str] = field(default_factory=list)
    sources: list[Source] = field(default_factory=list)
    cautions: list[str] = field(default_factory=list)
    quoted: list[str] = field(default_factory=list)  # from notes that are quoted by name

    def say(self, *sentences: str | None, main: bool = False) -> None:
        """Adds a paragraph."""
        said = [s for s in sentences if s]
        if said:
            self.paragraphs.append(said)
        if main:
            self.main += said

    def list(
        self, intro: str, items: Iterable[str], *, main: bool = False, numbered: bool = False
    ) -> None:
        """Adds an introduced list."""
        points = list(items)
        marks = [f"{n}." if numbered else "-" for n in range(1, len(points) + 1)]
        lines = "\n".join(f"{mark} {item}" for mark, item in zip(marks, points, strict=True))
        self.paragraphs.append([f"{intro}\n\n{lines}"])
        if main:
            self.main += points

    def quote(self, notes: Mapping[str, Note], note: str, section: str) -> str | None:
        """The sentences of a note's section, cited; `None` where the shop has no such note."""
        found = notes.get(note)
        part = found.sections.get(section) if found else None
        if part is None:
            return None
        lines = (part.sentences[0].line, part.sentences[-1].line)
        source = Source(f"{note}.md", part.heading, lines)
        if source not in self.sources:
            self.sources.append(source)
        said = " ".join(sentence.text for sentence in part.sentences)
        self.quoted.append(said)
        return said

    def unsay(self, sentences: Iterable[str]) -> None:
        """Takes sentences out that were said before; a main one stays."""
        again = {*sentences} - {*self.main}
        kept = [[said for said in one if said not in again] for one in self.paragraphs]
        self.paragraphs = [one for one in kept if one]

    @property
    def text(self) -> str:
        """The whole as Markdown."""
        return "\n\n".join(" ".join(sentences) for sentences in self.paragraphs)
