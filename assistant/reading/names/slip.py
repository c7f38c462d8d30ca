"""What ordinary word a slip of the pen was meant to be."""

from __future__ import annotations

from functools import lru_cache

from rapidfuzz.distance import OSA

from assistant.reading.english import frequencies, is_english
from assistant.reading.names.ordinary import TRADE, WORDS

SHORTEST = 4  # letters: shorter words are a slip apart from too many others


@lru_cache(maxsize=1 << 14)
def mended(word: str) -> str | None:
    """The ordinary word that a lower-case word was meant to be; `None` where it is one, or none."""
    if len(word) < SHORTEST or is_english(word) or word in WORDS:
        return None
    near = [w for w in _of_length(len(word)) if OSA.distance(word, w, score_cutoff=1) <= 1]
    return max(near, key=lambda w: _likely(word, w), default=None)


def _likely(written: str, word: str) -> tuple[int, bool, int, str]:
    """A letter left out before two exchanged, one too many, one wrong; then the trade's words."""
    exchanged = len(word) == len(written) and sorted(word) == sorted(written)
    slip = (
        3 if len(word) > len(written) else 2 if exchanged else 1 if len(word) < len(written) else 0
    )
    return slip, word in TRADE, frequencies().get(word, 0), word


@lru_cache(maxsize=32)
def _of_length(length: int) -> tuple[str, ...]:
    return tuple(sorted(w for w in WORDS if abs(len(w) - length) <= 1 and len(w) >= SHORTEST))
