"""What both campaigns of corruption share: the checker's own tables and the demonstration's."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Literal

# Nothing in any table could bear these out, whatever the shop.
EMPTY_PROMISES = (
    "It is guaranteed for life.", "It fits every toilet.", "It never leaks.", "Any seal will do.",
    "It lasts 10 years.", "This is a universal seal.", "It always fits.",
)  # fmt: skip

RESERVED = re.compile(
    r",? (?:if the flush valve is the original one|as long as the valve has not been replaced"
    r"|as long as the flush valve is the original one)"
    r"|\n\nAll of this holds if the flush valve is the original one\."
)


@dataclass(frozen=True)
class Corrupted:
    """An answer with one sentence made false."""

    kind: str
    text: str
    sentence: str
    audience: Literal["staff", "customers"] = "staff"


def transposed(part: str) -> str:
    """The number with its last two digits exchanged."""
    return part[:-2] + part[-1] + part[-2]


def plain(text: str) -> str:
    """The words of a Markdown text."""
    return " ".join(text.replace("*", "").split())
