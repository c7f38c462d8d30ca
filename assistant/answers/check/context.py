"""What has been said so far: which part 'it' is, which toilet, which words were quoted."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Literal

from assistant.answers.check.lexicon import Lexicon
from assistant.answers.check.results import Audience
from assistant.answers.check.scope import Limit, Scope
from assistant.records.tables import Tables

Relation = Literal["fits", "could fit", "does not fit", "unknown"]


class Unreadable(Exception):  # noqa: N818 - no fault: the sentence is merely not understood
    """A clause whose subject is not certain."""


@dataclass(frozen=True)
class Given:
    """What stays the same for a whole text."""

    tables: Tables
    lexicon: Lexicon
    audience: Audience
    message: str | None
    currency: str


@dataclass
class Context:
    """Grows from sentence to sentence; a sentence that falls leaves no trace in it."""

    given: Given
    scope: Scope | None = None
    parts: tuple[str, ...] = ()
    old_part: str | None = None
    quotes: tuple[str, ...] = ()
    listing: Relation | None = None  # what the bullets that follow are introduced as
    introduces: bool = False  # a list follows the sentence
    # within a sentence
    relation: Relation | None = None
    limits: tuple[Limit, ...] = ()
    selected: bool = False  # a condition, or 'for …', selects the clause
    position: str | None = None
    by_measures: bool = False
    topic: bool = False  # a part was named and nothing said of it yet
    changes_said: frozenset[str] = frozenset()
    changes_after: frozenset[tuple[str | None, str]] = frozenset()  # part, change
    named_fit: bool = False  # the sentence says that a part fits a named model

    def copy(self) -> Context:
        """A copy, so that a sentence can be tried."""
        return replace(self)

    def changes_next(self, part: str) -> set[str]:
        """Changes that the sentence after this one says of a part."""
        return {change for of, change in self.changes_after if of in (None, part)}

    def for_sentence(self, changes: frozenset[tuple[str | None, str]]) -> Context:
        """A copy in which nothing of the sentence before is left but its subjects.

        `changes` are those that the sentence after it says.
        """
        return replace(
            self, relation=None, limits=(), selected=False, position=None,
            by_measures=False, topic=False, changes_said=frozenset(), changes_after=changes,
            named_fit=False,
        )  # fmt: skip
