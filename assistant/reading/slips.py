"""Slips of the pen in ordinary words: 'watter', 'flsuh', 'toliet' read as what was meant.

Only a word that is no English one is mended, only into one that letters about toilets are made
of, and only where one slip (a letter too many, too few, wrong, or two exchanged) parts them.
Names are left alone: their reader weighs likeness by itself.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from assistant.reading.facts import Fact
from assistant.reading.names.slip import mended
from assistant.reading.rewritten import Piece, Rewritten
from assistant.reading.text import Text

_WORD = re.compile(r"(?<![\w'/.@-])[^\W\d_]{4,16}(?![\w@/]|['-]\w|\.\w)")


class Mended(Rewritten):
    """`text` with slips mended, and `back` to lead a fact read there into the message."""

    def __init__(self, message: Text, names: Iterable[Fact]) -> None:
        pieces = list(_pieces(message, [(n.start, n.end) for n in names]))
        super().__init__(message, pieces)
        self.has_slips = bool(pieces)


def _pieces(message: Text, taken: list[tuple[int, int]]) -> Iterator[Piece]:
    for found in message.find(_WORD):
        start, end = found.span()
        if any(start < e and s < end for s, e in taken):
            continue
        meant = mended(found[0])
        if meant is not None:
            yield Piece(start, end, meant)
