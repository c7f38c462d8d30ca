"""Whether a word is English at all: 'cattle' is no slip of a model's name.

The words come from the English frequency dictionary that the package symspellpy carries.
"""

from __future__ import annotations

from functools import cache
from importlib.resources import files

_LIST = "frequency_dictionary_en_82_765.txt"
_COMMON = 100_000  # occurrences in its corpus; below it stand rarities and slips


@cache
def _words() -> frozenset[str]:
    lines = (files("symspellpy") / _LIST).read_text(encoding="utf-8-sig").splitlines()
    return frozenset(
        word for word, count in (line.split() for line in lines) if int(count) >= _COMMON
    )


def is_english(word: str) -> bool:
    """Whether a lower-case word of four letters or more stands among common English ones."""
    return len(word) >= 4 and word in _words()
