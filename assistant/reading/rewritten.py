"""A message with some places worded otherwise, and the way back to where they stood.

Readers see the new words; their findings are led back, so that facts cite the message as written.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Iterable
from dataclasses import dataclass, replace

from assistant.reading.facts import Fact
from assistant.reading.text import Text


@dataclass(frozen=True, order=True)
class Piece:
    """A place [start, end) of a message, and the words to read there instead."""

    start: int
    end: int
    words: str


class Rewritten:
    """`text` to read from, and `back` to lead a fact read there into the message."""

    def __init__(self, message: Text, pieces: Iterable[Piece]) -> None:
        self._message = message
        written: list[str] = []
        self._new, self._old = [0], [0]  # where stretches begin in the new and in the old text
        at = length = 0
        for piece in sorted(pieces):
            if piece.start < at:
                continue
            kept = message.visible[at : piece.start]
            written += [kept, piece.words]
            self._mark(length + len(kept), piece.start)
            length += len(kept) + len(piece.words)
            self._mark(length, piece.end)
            at = piece.end
        written.append(message.visible[at:])
        # Unchanged it is the message itself: what was worked out of that is not worked out again.
        self.text = Text("".join(written)) if len(written) > 1 else message

    def _mark(self, new: int, old: int) -> None:
        self._new.append(new)
        self._old.append(old)

    def there(self, old: int) -> int:
        """Where a place of the message, outside every piece, stands in the text."""
        stretch = bisect_right(self._old, old) - 1
        return self._new[stretch] + old - self._old[stretch]

    def back(self, fact: Fact) -> Fact:
        """The fact with its place and words in the message; a piece is cited whole."""
        start, end = self._start(fact.start), self._end(fact.end)
        return replace(fact, start=start, end=end, words=self._message.raw[start:end])

    def _start(self, new: int) -> int:
        stretch = bisect_right(self._new, new) - 1
        within = stretch % 2 == 1  # every other stretch is a piece
        return self._old[stretch] + (0 if within else new - self._new[stretch])

    def _end(self, new: int) -> int:
        stretch = bisect_left(self._new, new) - 1
        if stretch % 2 == 1:
            return self._old[stretch + 1]
        return self._old[max(stretch, 0)] + new - self._new[max(stretch, 0)]
