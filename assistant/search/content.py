"""What an index is built from: notes, looks of seals, and what customers tell in passing."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property

from assistant.records.notes import Note
from assistant.records.rows import Likeness, Style, Telltale
from assistant.records.sections import in_sentences
from assistant.search.passages import Passage, digest, passages_of

LOOK = "look"


@dataclass(frozen=True)
class Description:
    """One way in which something is told: a style of seal; without a style, what is no seal.

    Of what is told in passing, `of` says what it tells ('' where it only sounds so), and `style`
    is its sign.
    """

    style: str
    text: str
    of: str = LOOK


@dataclass(frozen=True, eq=False)
class Content:
    """The notes and the styles' descriptions; cut into pieces only when they are needed."""

    notes: Mapping[str, Note]
    styles: Mapping[str, Style]
    likenesses: Mapping[str, Likeness] = field(default_factory=dict)
    telltales: Mapping[str, Telltale] = field(default_factory=dict)

    @cached_property
    def digests(self) -> dict[str, str]:
        """A SHA-256 for every note, and one for all descriptions."""
        told = json.dumps([[d.style, d.text, d.of] for d in self.descriptions])
        notes = {f"notes/{name}.md": note.digest for name, note in sorted(self.notes.items())}
        return {**notes, "descriptions": digest(told)}

    @cached_property
    def passages(self) -> tuple[Passage, ...]:
        """The passages of all notes."""
        return passages_of(self.notes)

    @cached_property
    def descriptions(self) -> tuple[Description, ...]:
        """How each style looks, in the trade's words and customers'; what is told in passing."""
        own = [
            Description(style.style, text)
            for style in self.styles.values()
            for text in (style.plain_name, *in_sentences(style.looks or ""))
        ]
        return (
            *own,
            *(Description(row.style or "", row.words) for row in self.likenesses.values()),
            *(Description(row.sign, row.words, row.tells) for row in self.telltales.values()),
        )
