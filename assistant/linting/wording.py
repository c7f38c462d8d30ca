"""How findings count and list things in words."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.answers.words import listed

MOST_LISTED = 4


def counted(count: int, one: str, several: str | None = None) -> str:
    """'1 row', '2 rows', '1,000 rows'."""
    return f"{count:,} {one if count == 1 else several or one + 's'}"


def some(names: Sequence[str]) -> str:
    """The first few names, and how many more there are."""
    if len(names) <= MOST_LISTED:
        return listed(names)
    return f"{', '.join(names[: MOST_LISTED - 1])} and {len(names) - MOST_LISTED + 1:,} more"
