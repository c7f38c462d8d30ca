"""'A 3 inch flapper' names an opening only where it is the one in the tank.

One that is asked about, was sold by somebody, fell through, or sits in another toilet says
nothing sure of the opening.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import replace

from assistant.reading.facts import Fact
from assistant.reading.text import Text
from assistant.reading.wishes import observed

_PART_FOLLOWS = re.compile(
    r"[\s-]*(?:\w+ ){0,2}(?:flapp?er|flaper|seal|stopper|ball|disc|gasket)s?\b"
)
_ELSEWHERE = re.compile(
    r"\b(?:sold|gave|sent|bought|tried|ordered|picked up|got me)\b|\bother (?:toilet|one|bathroom)"
    r"|\b(?:falls?|fell|drops?|slips?) (?:right )?(?:through|in|off)\b"
    r"|\btoo (?:big|small|large|wide)"
    r"|\b(?:should|could|can|would|will|might) (?:i|we|it|this|that|a|an|the|my|you)\b"
    r"|\b(?:does|do|is|are) (?:it|this|that|a|an|the|they)\b[^.?!]*\?"
)


def as_seen(text: Text, lengths: Iterable[Fact]) -> list[Fact]:
    """The lengths, with the sizes of parts that are not in the tank left unsure."""
    return [replace(f, sure=False) if _is_elsewhere(text, f) else f for f in lengths]


def _is_elsewhere(text: Text, fact: Fact) -> bool:
    if fact.name != "opening" or not _PART_FOLLOWS.match(text.said, fact.end):
        return False
    start, end = text.sentence_at(fact.start)
    return bool(_ELSEWHERE.search(text.said, start, end)) or (
        observed(text, fact.start, fact.end) is False
    )
