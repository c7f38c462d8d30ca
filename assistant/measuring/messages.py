"""Labelled messages: `eval/messages.jsonl`, what must come out worked out by hand from the tables.

Each row belongs to one of two splits. What is fitted is fitted on 'tune' alone; 'measure' is only
measured.
"""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Literal, TypeAlias

from assistant.cases.in_full import in_full
from assistant.errors import KnowledgeError

NAMING = frozenset({"part", "depends"})  # outcomes that name a seal
Split = Literal["tune", "measure"]
Number: TypeAlias = float | int


@dataclass(frozen=True)
class Branch:
    """Under which condition, in words, which seals fit."""

    condition: str
    parts: frozenset[str]


@dataclass(frozen=True)
class Expected:
    """What one answer may be.

    `parts` are all seals that fit every build still possible; `never` those that a careless
    seller would name; `question` the questions of which one should follow, if any.
    """

    outcomes: tuple[str, ...]
    answerable: bool
    reason: str
    parts: frozenset[str]
    branches: tuple[Branch, ...]
    never: frozenset[str]
    question: tuple[str, ...]

    @property
    def must_be_silent(self) -> bool:
        """Whether no accepted outcome names a seal."""
        return not self.answerable and not {*self.outcomes} & NAMING

    @property
    def may_name(self) -> frozenset[str]:
        """Every seal that may be named as fitting, under a condition or without."""
        return self.parts.union(*(branch.parts for branch in self.branches))


@dataclass(frozen=True)
class Stated:
    """A fact that a message states: its name, and its value as the table names it or in figures."""

    name: str
    value: str | Number | tuple[Number, ...]
    unit: str | None = None
    negated: bool = False


@dataclass(frozen=True)
class Message:
    """A customer's message; `earlier` is what he wrote before, `asked` what he was asked then."""

    id: str
    kind: tuple[str, ...]
    said: str
    earlier: tuple[str, ...]
    asked: str | None
    answers: tuple[Expected, ...]
    facts: tuple[Stated, ...]

    @property
    def text(self) -> str:
        """All that is to be read: the earlier messages, and this one."""
        return "\n\n".join((*self.earlier, in_full(self.said, self.asked)))


def messages(path: Path, split: Split) -> list[Message]:
    """The messages of one split; the other's rows are passed over.

    Raises:
        KnowledgeError: a line is no message as described in eval/README.md.
    """
    found = []
    for number, line in enumerate(_lines(path), start=1):
        try:
            row = json.loads(line)
            if row["split"] == split:
                found.append(message_of(row))
        except (ValueError, KeyError, TypeError, AttributeError) as error:
            raise KnowledgeError(
                f"{path}, line {number}",
                f"is no labelled message ({_fault(error)})",
                "write it as eval/README.md tells",
            ) from error
    return found


def _fault(error: Exception) -> str:
    """What is wrong with a line, in words."""
    if isinstance(error, json.JSONDecodeError):
        return f"it breaks off at its sign {error.colno}"
    if isinstance(error, KeyError):
        return f"'{error.args[0]}' is missing"
    return "a field holds another kind of value"


def _lines(path: Path) -> Sequence[str]:
    try:
        return path.read_text(encoding="utf-8").splitlines()
    except (OSError, UnicodeDecodeError) as error:
        raise KnowledgeError(
            str(path), "cannot be read", "put labelled messages there, or name another --shop"
        ) from error


def message_of(row: Mapping[str, Any]) -> Message:
    """The message of one labelled row."""
    return Message(
        row["id"],
        tuple(row["kind"]),
        row["text"],
        tuple(row.get("earlier") or ()),
        row.get("asked"),
        tuple(_expected(answer) for answer in row["answers"]),
        tuple(_stated(fact) for fact in row["facts"]),
    )


def _expected(row: Mapping[str, Any]) -> Expected:
    return Expected(
        tuple(row["outcome"]),
        bool(row["answerable"]),
        row["reason"],
        frozenset(row.get("parts") or ()),
        tuple(Branch(b["if"], frozenset(b["parts"])) for b in row.get("branches") or ()),
        frozenset(row.get("never") or ()),
        tuple(row.get("question") or ()),
    )


def _stated(row: Mapping[str, Any]) -> Stated:
    value = row["value"]
    held = tuple(value) if isinstance(value, list) else value
    return Stated(row["name"], held, row.get("unit"), bool(row.get("negated")))
