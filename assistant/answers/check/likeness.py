"""What a description of a seal says: 'a red 2 in flapper with a float'."""

from __future__ import annotations

import re
from functools import cache
from typing import Any

from assistant.answers.check import cards
from assistant.answers.check.attributes import Said
from assistant.answers.check.line import Line
from assistant.answers.check.patterns import compiled


@cache
def _adjectives() -> list[tuple[re.Pattern[str], list[Any]]]:
    wordings = cards.by_wording(cards.attributes(), "adj")
    return [(compiled(p), wordings[p]) for p in sorted(wordings, key=len, reverse=True)]


def likeness(line: Line, stretch: str) -> list[Said]:
    """Everything that a description says."""
    found: list[Said] = []
    at = 0
    while at < len(stretch):
        step = None
        for pattern, said in _adjectives():
            if (match := pattern.match(stretch, at)) and match.end() > at:
                found += cards.said(said, line, match.group())
                step = match.end()
                break
        if step is None:
            step = stretch.find(" ", at + 1)
            step = len(stretch) if step < 0 else step
            for item in line.within(stretch[at:step]):
                found += item.values.get("F", ()) or item.values.get("J", ())
        at = step
    return found
