"""Finds the pieces of a letter that are a listed number, however it is spaced and dashed.

Case, spaces, dashes and dots do not count, nor O for 0 and I for 1. Any other difference is
another number: a wrong digit is never taken for a slip.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from assistant.reading.names.book import NameBook
from assistant.reading.names.cues import place_of
from assistant.reading.names.letter import Letter, Word
from assistant.reading.names.not_numbers import Taken
from assistant.reading.names.ordinary import ordinary

_GAP = re.compile(r"[ \t]?[-–./_#]?[ \t]?")
_GLUE = re.compile(r"[-./_,]")
_LABELS = frozenset(
    ("no", "nr", "num", "number", "model", "part", "item", "sku", "pn", "n", "tank", "type", "ref")
)
_MOST = 6  # pieces of a number


@dataclass(frozen=True)
class Number:
    """A listed number in the letter, and the keys it may be in the lists of builds and parts."""

    first: int
    last: int
    start: int
    end: int
    build_keys: tuple[str, ...]
    part_keys: tuple[str, ...]


def glued(letter: Letter, at: int) -> bool:
    """Whether word `at` and the next are pieces of one number ('4412-88', '4.412')."""
    words = letter.words
    if at < 0 or at + 1 >= len(words):
        return False
    gap = letter.said[words[at].end : words[at + 1].start]
    if gap == "":
        return True
    if not _GLUE.fullmatch(gap):
        return False
    left, right = words[at].key, words[at + 1].key
    if gap == "/":  # '4412/4413' are two
        return min(len(left), len(right)) < 3
    if gap in ".,":
        return right[0].isdigit() and left[-1].isdigit()
    return left not in _LABELS


def listed_numbers(letter: Letter, book: NameBook, taken: Taken) -> Iterator[Number]:
    """Listed numbers in their order, the longest at each place."""
    words = letter.words
    longest = max(book.numbers.longest, book.parts.longest) + 1  # for a plural s
    past = -1
    for first in range(len(words)):
        if first <= past or glued(letter, first - 1):
            continue
        for last in reversed(range(first, _furthest(letter, first, longest) + 1)):
            number = _number(letter, book, words, first, last)
            if number and not _is_amount(letter, number, taken):
                past = last
                yield number
                break


def _is_amount(letter: Letter, number: Number, taken: Taken) -> bool:
    """Whether the digits are a size or the like: '44 in' is, 'VS 44 in' is not, nor is '7 L'
    where it is said to stand on a seal."""
    words = letter.words[number.first : number.last + 1]
    if words[0].key.isalpha() and words[0].key not in _LABELS:
        return taken.meets(number.start, words[0].end)
    if not taken.meets(number.start, number.end):
        return False
    digits_only = all(w.key.isdecimal() for w in words)
    return digits_only or place_of(letter, number.start, number.end) != "seal"


def _furthest(letter: Letter, first: int, longest: int) -> int:
    words, last = letter.words, first
    size = len(words[first].key)
    while (
        last + 1 < len(words)
        and last - first < _MOST - 1
        and size + len(words[last + 1].key) <= longest
        and _GAP.fullmatch(letter.said, words[last].end, words[last + 1].start)
    ):
        last += 1
        size += len(words[last].key)
    return last


def _number(
    letter: Letter, book: NameBook, words: Sequence[Word], first: int, last: int
) -> Number | None:
    key = "".join(w.key for w in words[first : last + 1])
    end = words[last].end
    builds, parts = book.numbers.find(key), book.parts.find(key)
    if not builds and not parts and key[-1] == "s" and key[-2:-1].isdigit():  # 'two of the 6203s'
        builds, parts, end = book.numbers.find(key[:-1]), book.parts.find(key[:-1]), end - 1
    if not builds and not parts:
        return None
    if glued(letter, last) or _stray(letter, first, last):
        return None
    return Number(first, last, words[first].start, end, builds, parts)


def _stray(letter: Letter, first: int, last: int) -> bool:
    """Whether an ordinary word at the edge only looks like a piece ('a 4412' for 'A-4412')."""
    words = letter.words
    if first == last:
        return False
    for at, other in ((first, first + 1), (last, last - 1)):
        low, high = sorted((at, other))
        gap = letter.said[words[low].end : words[high].start]
        raw = letter.text.raw[words[at].start : words[at].end]
        if (
            words[at].key.isalpha()
            and words[at].key not in _LABELS
            and gap.strip() == ""
            and ordinary(words[at].key)
            and not (letter.mixed and raw.isupper())
        ):
            return True
    return False
