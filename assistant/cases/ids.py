"""Names of cases: short enough to be read out on the telephone, too many to be guessed."""

from __future__ import annotations

import secrets

# Without vowels no word comes about; 0 and o, 1 and i and l, 5 and s, 8 and b look alike.
SIGNS = "234679cdfghjkmnpqrtvwxyz"
LENGTH = 8  # 24 ** 8 is more than 10 ** 11


def new_id() -> str:
    """A name that nobody could have foreseen."""
    return "".join(secrets.choice(SIGNS) for _ in range(LENGTH))


def as_written(said: str) -> str:
    """A name as somebody typed it: capitals, blanks and hyphens do not matter."""
    return "".join(c for c in said.lower() if c.isalnum())
