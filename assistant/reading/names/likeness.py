"""Finds listed names that are a slip or two away from what was written.

A slip is a letter left out, put in, changed, or swapped with its neighbour (the optimal string
alignment distance). Names of fewer than five letters are never matched by likeness.

No message scans the list. One slip: names that share a form with one letter deleted. Two slips:
one half of the name then holds at most one, so halves are kept with one letter deleted; as
many letters of what was written, less one, meet them there whatever the slip.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterable, Iterator
from functools import lru_cache

from rapidfuzz.distance import OSA

_DIGITS = re.compile(r"\d+")
_TWO_SLIPS_FROM = 8


def slips_allowed(key: str) -> int:
    """How many slips a listed name of this length allows."""
    return 0 if len(key) < 5 else 1 if len(key) < _TWO_SLIPS_FROM else 2


def slips(written: str, key: str, allowed: int) -> int | None:
    """Slips between what was written and a key, or `None` beyond the limit.

    Digits do not slip: 'Alder 200' is not 'Alder 250' misspelled.
    """
    distance = OSA.distance(written, key, score_cutoff=allowed)
    if distance > allowed or _DIGITS.findall(written) != _DIGITS.findall(key):
        return None
    return distance


def _less_one(form: str) -> Iterator[str]:
    yield form
    for i in range(len(form)):
        yield form[:i] + form[i + 1 :]


class Likeness:
    """An index of keys by their forms with a letter less."""

    def __init__(self, keys: Iterable[str]) -> None:
        self.near = lru_cache(maxsize=4096)(self._near)
        self._short: dict[str, list[str]] = defaultdict(list)
        self._heads: dict[tuple[int, str], list[str]] = defaultdict(list)
        self._tails: dict[tuple[int, str], list[str]] = defaultdict(list)
        for key in keys:
            size = len(key)
            if slips_allowed(key) == 1:
                for form in set(_less_one(key)):
                    self._short[form].append(key)
            elif slips_allowed(key) == 2:
                for form in set(_less_one(key[: size // 2])):
                    self._heads[size, form].append(key)
                for form in set(_less_one(key[size // 2 :])):
                    self._tails[size, form].append(key)

    def _near(self, written: str) -> dict[str, int]:
        """Keys within their limit of slips, with the slips."""
        found: dict[str, int] = {}
        for key in self._candidates(written):
            if (distance := slips(written, key, slips_allowed(key))) is not None:
                found[key] = distance
        return found

    def _candidates(self, written: str) -> set[str]:
        near: set[str] = set()
        length = len(written)
        if 4 <= length <= _TWO_SLIPS_FROM:
            for form in _less_one(written):
                near.update(self._short.get(form, ()))
        for size in range(max(_TWO_SLIPS_FROM, length - 2), length + 3):
            half, rest = size // 2, size - size // 2
            for form in _less_one(written[:half]):
                near.update(self._heads.get((size, form), ()))
            for form in _less_one(written[max(0, length - rest) :]):
                near.update(self._tails.get((size, form), ()))
        return near
