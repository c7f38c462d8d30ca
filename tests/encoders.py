"""A model for tests: no weights to load, the same vectors every time, and it counts its work.

Each word falls into one of a few directions by its SHA-256, so that texts that share words
point the same way. It knows nothing of meaning; what a real model finds is tested elsewhere.
"""

from __future__ import annotations

import hashlib
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from assistant.search.model import DEFAULT
from assistant.search.words import stems

DIMENSIONS = 32


class WordHashes:
    """An encoder; `given` holds every text that it was ever asked to turn into a vector."""

    def __init__(self, name: str = DEFAULT, weights: str = "5eed" * 16) -> None:
        self.name, self.weights = name, weights
        self.given: list[str] = []

    def encode(self, texts: Sequence[str]) -> NDArray[np.float32]:
        """Vectors of length 1, shape `(len(texts), DIMENSIONS)`."""
        self.given += texts
        return np.array([self._vector(text) for text in texts], dtype=np.float32)

    def _vector(self, text: str) -> NDArray[np.float32]:
        # The model's name and weights take part: another model's vectors are other vectors.
        vector = np.zeros(DIMENSIONS, dtype=np.float32)
        for word in stems(text) or [""]:
            seed = f"{self.name} {self.weights} {word}".encode("utf-8", "surrogatepass")
            told = hashlib.sha256(seed).digest()
            vector[told[0] % DIMENSIONS] += 1
            vector[told[1] % DIMENSIONS] += 0.5
        return vector / np.linalg.norm(vector)


class NoModel(WordHashes):
    """An encoder whose model must not be needed."""

    def encode(self, texts: Sequence[str]) -> NDArray[np.float32]:
        """Fails the test."""
        raise AssertionError(f"the model was asked for {list(texts)}")
