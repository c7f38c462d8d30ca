"""Which words are English, by a frequency list of some 80,000 that a package carries.

The list is the one of SymSpell (from SCOWL and Google Books Ngrams), British and American.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from importlib import resources

COMMON = 100_000  # occurrences in its corpus; below it stand rarities and slips
_LIST = "frequency_dictionary_en_82_765.txt"


@lru_cache(maxsize=1)
def frequencies() -> Mapping[str, int]:
    """How often each lower-case word was counted; without apostrophes."""
    lines = resources.files("symspellpy").joinpath(_LIST).read_text(encoding="utf-8-sig")
    pairs = (line.split() for line in lines.splitlines())
    return {word.replace("'", ""): int(count) for word, count in pairs}


def is_english(word: str) -> bool:
    """Whether a lower-case word stands in the list."""
    return word in frequencies()


def is_common(word: str) -> bool:
    """Whether a word of four letters or more stands among common ones: 'cattle' is no slip."""
    return len(word) >= 4 and frequencies().get(word, 0) >= COMMON
