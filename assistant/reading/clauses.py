"""The words just before and just after a phrase, as far as they can speak of it.

Bounded by the sentence and by a fixed width, so that reading stays linear in the message.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from functools import lru_cache

from assistant.reading.text import Text

WIDTH = 110  # characters on either side; a negation or a doubt never reached farther
SHORT_LINE = 40  # a line broken off before this was ended on purpose, not wrapped

# A full stop ends a sentence although many go on in small letters; one behind an abbreviation
# does so only before a capital.
_SHORTENED = "".join(
    rf"(?<!\b{short})"
    for short in (
        "[A-Za-z]",
        "no",
        "No",
        "in",
        "ft",
        "vs",
        "gal",
        "mfg",
        "approx",
        "circa",
        r"e\.g",
    )
)
_STOP = re.compile(rf"(?:[!?]+|{_SHORTENED}\.+|\.(?=\s{{1,3}}[A-Z]))(?=\s)")


def sentence_of(text: Text, place: int) -> tuple[int, int]:
    """Start and end of the sentence at a place; the blank after a full stop begins the next."""
    starts = _starts(text)
    at = bisect_right(starts, max(place, 0))
    return starts[at - 1], starts[at] if at < len(starts) else len(text.said)


@lru_cache(maxsize=4)  # every fact of a message asks for its sentence
def _starts(text: Text) -> tuple[int, ...]:
    ends = {end for _, end in text.sentences}
    return tuple(sorted({0, *ends, *(stop.end() for stop in _STOP.finditer(text.visible))}))


def _wrapped(said: str, place: int) -> bool:
    """Whether the line break at a place only wraps a long line."""
    begin = said.rfind("\n", max(0, place - 400), place) + 1
    return place - begin >= SHORT_LINE


def before(text: Text, start: int, width: int = WIDTH) -> str:
    """What stands before a place in its sentence, from the last line that ended on purpose."""
    low = max(sentence_of(text, start)[0], start - width)
    said = text.said
    at = said.rfind("\n", low, start)
    while at >= 0:
        if not _wrapped(said, at):
            low = at + 1
            break
        at = said.rfind("\n", low, at)
    return said[low:start]


def after(text: Text, end: int, width: int = WIDTH) -> str:
    """What stands after a place in its sentence, up to a line that ends on purpose."""
    high = min(sentence_of(text, max(end - 1, 0))[1], end + width)
    said = text.said
    at = said.find("\n", end, high)
    while at >= 0:
        if not _wrapped(said, at):
            return said[end:at]
        at = said.find("\n", at + 1, high)
    return said[end:high]
