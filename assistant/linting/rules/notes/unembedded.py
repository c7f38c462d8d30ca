"""Says so where the rules about meaning cannot look."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.errors import KnowledgeError
from assistant.linting.finding import Finding, Rule
from assistant.linting.gathered import Gathered
from assistant.linting.rules.notes.embedded import by_own_model


def find(gathered: Gathered) -> Iterator[Finding]:
    """A model that cannot be loaded."""
    error = by_own_model(gathered)
    if isinstance(error, KnowledgeError):
        yield Finding(
            path="knowledge/shop.toml",
            line=1,
            what=f"{error.problem}, so no two notes were compared",
            mend=error.mend,
        )


RULE = Rule(
    "no-model",
    "warning",
    "Notes that say the same, and notes that no question finds, are looked for with the model of "
    "the search.",
    find,
)
