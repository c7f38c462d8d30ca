"""Labelled questions and looks: `eval/questions.jsonl` and `eval/looks.jsonl`.

Each row belongs to one of two splits. Limits are fitted on 'tune' alone; 'measure' is only
measured.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path
from typing import Any, Literal

from assistant.reading.facts import Facts
from assistant.reading.letters import letter_from_text
from assistant.reading.questions import questions as in_letter
from assistant.reading.requests import read_requests

Split = Literal["tune", "measure"]
SERVES = 2  # the grade from which a section serves the asker


@dataclass(frozen=True)
class Question:
    """A question to the notes; `answered_by` grades sections ('note#section') from 1 to 3."""

    id: str
    asker: str
    text: str
    answered_by: Mapping[str, int]

    @property
    def audience(self) -> str:
        """Who reads the answer."""
        return "customers" if self.asker == "customer" else "staff"

    @cached_property
    def asked(self) -> str:
        """The question in it as the assistant finds it: without the story before it."""
        text = letter_from_text(self.text).text
        found = in_letter(text, Facts(tuple(read_requests(text))))
        plain = [one for one in found if one.plain] or found
        return plain[-1].text if plain else self.text

    @property
    def answerable(self) -> bool:
        """Whether some section serves the asker."""
        return any(grade >= SERVES for grade in self.answered_by.values())

    def served_by(self, note: str, section: str) -> bool:
        """Whether a section serves the asker."""
        return self.answered_by.get(f"{note}#{section}", 0) >= SERVES


@dataclass(frozen=True)
class Look:
    """A wording and the style of seal that it singles out, if it does."""

    id: str
    text: str
    style: str | None


def questions(folder: Path, split: Split) -> list[Question]:
    """The questions of one split; the other's lines are not looked at."""
    return [
        Question(row["id"], row["asker"], row["text"], row["answered_by"])
        for row in _rows(folder / "questions.jsonl", split)
    ]


def looks(folder: Path, split: Split) -> list[Look]:
    """The looks of one split."""
    return [
        Look(row["id"], row["text"], row["style"]) for row in _rows(folder / "looks.jsonl", split)
    ]


def _rows(path: Path, split: Split) -> list[dict[str, Any]]:
    rows = map(json.loads, path.read_text(encoding="utf-8").splitlines())
    return [row for row in rows if row["split"] == split]
