"""What cannot be read at all: files, headers, cells, ids that stand twice, settings."""

from __future__ import annotations

from collections.abc import Iterable

from assistant.linting.finding import Finding, Rule
from assistant.linting.gathered import Gathered


def unreadable(gathered: Gathered) -> Iterable[Finding]:
    """Every fault met while reading; all of them, since a shop mends a table in one sitting."""
    return gathered.faults


RULES = (
    Rule(
        "unreadable",
        "error",
        "Until it is mended no letter is answered at all: half a table would give half an answer.",
        unreadable,
    ),
)
