"""A message in which every name of a toilet is the word 'toilet', with the way back.

The reader of years knows what dates a toilet, but no makers' names: it reads this text.
"""

from __future__ import annotations

from collections.abc import Iterable

from assistant.reading.facts import Fact
from assistant.reading.rewritten import Piece, Rewritten
from assistant.reading.text import Text

_WORD = "toilet"


class Renamed(Rewritten):
    """`text` to read from, and `back` to lead a fact read there into the message."""

    def __init__(self, message: Text, names: Iterable[Fact]) -> None:
        super().__init__(message, (Piece(*run, _WORD) for run in _runs(message, names)))


def _runs(message: Text, names: Iterable[Fact]) -> list[tuple[int, int]]:
    """Places of names, with maker and model side by side as one, and a 'toilet' that follows."""
    runs: list[tuple[int, int]] = []
    for start, end in sorted({(n.start, n.end) for n in names}):
        if runs and not message.said[runs[-1][1] : start].strip(" ,'s"):
            runs[-1] = (runs[-1][0], max(end, runs[-1][1]))
        else:
            runs.append((start, end))
    return runs
