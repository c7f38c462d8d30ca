"""The lexical index: BM25 over stems (Robertson and Zaragoza 2009), by way of bm25s."""

from __future__ import annotations

import math
from collections.abc import Sequence
from pathlib import Path

import bm25s
import numpy as np
from numpy.typing import NDArray

from assistant.search.words import stems

_NOTHING = "\x00"  # stands in a text without a word, which the library cannot index


class Lexical:
    """Texts by their words."""

    def __init__(self, bm25: bm25s.BM25) -> None:
        self._bm25 = bm25
        self._size = int(bm25.scores["num_docs"])
        self._found_in = np.diff(bm25.scores["indptr"])

    @classmethod
    def of(cls, texts: Sequence[str]) -> Lexical:
        """The index of some texts, in their order."""
        bm25 = bm25s.BM25(method="lucene", k1=1.2, b=0.75)
        bm25.index([stems(text) or [_NOTHING] for text in texts or [""]], show_progress=False)
        return cls(bm25)

    @classmethod
    def load(cls, folder: Path) -> Lexical:
        """The index kept in a folder."""
        return cls(bm25s.BM25.load(str(folder), show_progress=False, verbosity=0))

    def save(self, folder: Path) -> None:
        """Keeps the index in a folder, which is made."""
        self._bm25.save(str(folder), show_progress=False)

    def scores(self, query: str) -> NDArray[np.float32]:
        """The BM25 score of every text, shape `(texts,)`; zero where no word is shared."""
        known = [stem for stem in stems(query) if stem in self._bm25.vocab_dict]
        if not known:
            return np.zeros(self._size, dtype=np.float32)
        scores: NDArray[np.float32] = self._bm25.get_scores(known)
        return scores

    def weights(self, query: str) -> dict[str, float]:
        """How much each stem of the query tells: its inverse document frequency."""
        return {stem: self._idf(stem) for stem in dict.fromkeys(stems(query))}

    def _idf(self, stem: str) -> float:
        at = self._bm25.vocab_dict.get(stem)
        in_texts = 0 if at is None else int(self._found_in[at])
        return math.log(1 + (self._size - in_texts + 0.5) / (in_texts + 0.5))


def shared(weights: dict[str, float], text: str) -> float:
    """The weight of a query's stems that stand in a text."""
    held = set(stems(text))
    return sum(weight for stem, weight in weights.items() if stem in held)
