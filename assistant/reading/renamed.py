"""A message in which every name of a toilet is the word 'toilet', with the way back.

The reader of years knows what dates a toilet, but no makers' names. It reads this text, and
its places are then led back into the message.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable
from dataclasses import replace

from assistant.reading.facts import Fact
from assistant.reading.text import Text

_WORD = "toilet"


class Renamed:
    """`text` to read from, and `back` to lead a fact read there into the message."""

    def __init__(self, message: Text, names: Iterable[Fact]) -> None:
        self._message = message
        pieces: list[str] = []
        self._new, self._old = [0], [0]  # where stretches begin in the new and in the old text
        at = length = 0
        for start, end in _runs(message, names):
            if start < at:
                continue
            kept = message.visible[at:start]
            pieces += [kept, _WORD]
            self._mark(length + len(kept), start)
            length += len(kept) + len(_WORD)
            self._mark(length, end)
            at = end
        pieces.append(message.visible[at:])
        self.text = Text("".join(pieces))

    def _mark(self, new: int, old: int) -> None:
        self._new.append(new)
        self._old.append(old)

    def _place(self, new: int) -> int:
        stretch = bisect_right(self._new, new) - 1
        return self._old[stretch] + new - self._new[stretch]

    def there(self, old: int) -> int:
        """Where a place of the message, outside every name, stands in the text."""
        stretch = bisect_right(self._old, old) - 1
        return self._new[stretch] + old - self._old[stretch]

    def back(self, fact: Fact) -> Fact:
        """The fact with its place and words in the message."""
        start = self._place(fact.start)
        end = start + fact.end - fact.start
        return replace(fact, start=start, end=end, words=self._message.raw[start:end])


def _runs(message: Text, names: Iterable[Fact]) -> list[tuple[int, int]]:
    """Places of names, with maker and model side by side as one, and a 'toilet' that follows."""
    runs: list[tuple[int, int]] = []
    for start, end in sorted({(n.start, n.end) for n in names}):
        if runs and not message.said[runs[-1][1] : start].strip(" ,'s"):
            runs[-1] = (runs[-1][0], max(end, runs[-1][1]))
        else:
            runs.append((start, end))
    return runs
