"""What an index is built from: the notes, and what each style of seal looks like."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property

from assistant.records.notes import Note
from assistant.records.rows import Likeness, Style
from assistant.records.sections import in_sentences
from assistant.search.passages import Passage, digest, passages_of


@dataclass(frozen=True)
class Description:
    """One way in which a style of seal is described; without a style, what is no seal."""

    style: str
    text: str


@dataclass(frozen=True, eq=False)
class Content:
    """The notes and the styles' descriptions; cut into pieces only when they are needed."""

    notes: Mapping[str, Note]
    styles: Mapping[str, Style]
    likenesses: Mapping[str, Likeness] = field(default_factory=dict)

    @cached_property
    def digests(self) -> dict[str, str]:
        """A SHA-256 for every note, and one for all descriptions of styles."""
        told = json.dumps([[d.style, d.text] for d in self.descriptions])
        notes = {f"notes/{name}.md": note.digest for name, note in sorted(self.notes.items())}
        return {**notes, "descriptions of styles": digest(told)}

    @cached_property
    def passages(self) -> tuple[Passage, ...]:
        """The passages of all notes."""
        return passages_of(self.notes)

    @cached_property
    def descriptions(self) -> tuple[Description, ...]:
        """How each style looks: its name and looks in the trade's words, and in customers'."""
        own = [
            Description(style.style, text)
            for style in self.styles.values()
            for text in (style.plain_name, *in_sentences(style.looks or ""))
        ]
        return (
            *own,
            *(Description(row.style or "", row.words) for row in self.likenesses.values()),
        )
