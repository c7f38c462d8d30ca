"""A built index, in memory: passages, their vectors, their words, the styles' descriptions."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Any

import faiss
import numpy as np
from numpy.typing import NDArray

from assistant.search import vectors
from assistant.search.content import Description
from assistant.search.fusion import fused
from assistant.search.lexical import Lexical
from assistant.search.passages import Passage
from assistant.search.vectors import Vectors

DEPTH = 50  # places that each ranking gives to the fusion
FORMAT = 4  # rises when what is embedded or how it is kept changes


@dataclass(frozen=True)
class Made:
    """Of what an index was made: its model and a digest of each piece of content."""

    model: str
    weights: str
    content: Mapping[str, str]
    version: str
    format: int = FORMAT


@dataclass(frozen=True)
class Hit:
    """A passage found: its place in the index, its fused score, and how alike its meaning is.

    `wording` is the cosine of the likest wording of its question, 0 where it has none.
    """

    place: int
    passage: Passage
    fused: float
    likeness: float
    wording: float


@dataclass(frozen=True, eq=False)
class Index:
    """Everything that a search looks into.

    `asked` holds the wordings of all passages' questions, `sentences`, of shape `(sentences of
    all passages, dimensions)`, their sentences; `described` has shape `(descriptions,
    dimensions)`. Every vector has length 1.
    """

    made: Made
    passages: tuple[Passage, ...]
    dense: faiss.Index
    asked: faiss.Index
    lexical: Lexical
    sentences: Vectors
    descriptions: tuple[Description, ...]
    described: Vectors

    @cached_property
    def _first_sentence(self) -> NDArray[np.int64]:
        return np.cumsum([0, *(len(passage.sentences) for passage in self.passages)])

    @cached_property
    def _owner(self) -> NDArray[np.int64]:
        """The passage of each wording."""
        counts = [len(passage.wordings) for passage in self.passages]
        return np.repeat(np.arange(len(counts)), counts)

    @cached_property
    def _first_wording(self) -> NDArray[np.int64]:
        return np.cumsum([0, *(len(passage.wordings) for passage in self.passages)])

    def sentences_of(self, place: int) -> Vectors:
        """The vectors of a passage's sentences."""
        first = self._first_sentence
        return self.sentences[first[place] : first[place + 1]]

    def _wording_cosine(self, place: int, query: Vectors) -> float:
        """The cosine of the likest wording of a passage's question."""
        first, last = self._first_wording[place : place + 2].tolist()
        own = [self.asked.reconstruct(at) for at in range(first, last)]
        return float((np.array(own) @ query).max()) if own else 0.0

    def vector_of(self, place: int) -> Vectors:
        """The vector of a passage."""
        found: Vectors = np.asarray(self.dense.reconstruct(place))
        return found

    @cached_property
    def _for_customers(self) -> NDArray[np.bool_]:
        return np.array([p.seen_by("customers") for p in self.passages], dtype=bool)

    def allowed(self, audience: str) -> NDArray[np.bool_] | None:
        """Which passages the reader may see; `None` for all."""
        return None if audience == "staff" else self._for_customers

    def by_meaning(
        self, query: Vectors, count: int, allowed: NDArray[np.bool_] | None = None
    ) -> tuple[list[int], dict[int, float]]:
        """Places by likeness of meaning, best first, and their cosines."""
        places, cosines = vectors.nearest(self.dense, query, count, allowed)
        return places.tolist(), dict(zip(places.tolist(), cosines.tolist(), strict=True))

    def by_wording(
        self, query: Vectors, count: int, allowed: NDArray[np.bool_] | None = None
    ) -> list[int]:
        """Places by the likest wording of their question, best first."""
        seen = None if allowed is None else allowed[self._owner]
        nearest, _ = vectors.nearest(self.asked, query, 3 * count, seen)
        return list(dict.fromkeys(self._owner[nearest].tolist()))[:count]

    def by_words(
        self, query: str, count: int, allowed: NDArray[np.bool_] | None = None
    ) -> list[int]:
        """Places by BM25, best first, of passages that share a word with the query."""
        scores = self.lexical.scores(query)[: len(self.passages)]
        if allowed is not None:
            scores = np.where(allowed, scores, 0)
        best = np.argsort(-scores, kind="stable")[:count]
        return [int(place) for place in best if scores[place] > 0]

    def find(
        self,
        words: str,
        meaning: Vectors,
        count: int,
        allowed: NDArray[np.bool_] | None = None,
    ) -> list[Hit]:
        """The passages found by meaning, by words and by wordings together, best first."""
        dense, cosines = self.by_meaning(meaning, DEPTH, allowed)
        by_wording = self.by_wording(meaning, DEPTH, allowed)
        merged = fused(dense, self.by_words(words, DEPTH, allowed), by_wording)[:count]
        return [
            Hit(
                place,
                self.passages[place],
                score,
                self._cosine(place, meaning, cosines),
                self._wording_cosine(place, meaning),
            )
            for place, score in merged
        ]

    def _cosine(self, place: int, meaning: Vectors, known: Mapping[int, float]) -> float:
        if place in known:
            return known[place]
        return float(self.vector_of(place) @ meaning)


def texts_of(passages: Sequence[Passage], descriptions: Sequence[Description]) -> list[str]:
    """Every text that is embedded, in the order in which the vectors stand."""
    return [
        *(passage.text for passage in passages),
        *(wording for passage in passages for wording in passage.wordings),
        *(sentence.text for passage in passages for sentence in passage.sentences),
        *(description.text for description in descriptions),
    ]


def assemble(
    made: Made,
    passages: tuple[Passage, ...],
    descriptions: tuple[Description, ...],
    vectors_of_all: Vectors,
) -> Index:
    """The index of passages and descriptions whose vectors stand in the order of `texts_of`."""
    counts = (
        len(passages),
        sum(len(passage.wordings) for passage in passages),
        sum(len(passage.sentences) for passage in passages),
    )
    whole, asked, sentences, described = np.split(vectors_of_all, np.cumsum(counts))
    return Index(
        made,
        passages,
        vectors.index_of(whole),
        vectors.index_of(asked),
        Lexical.of([passage.words for passage in passages]),
        sentences,
        descriptions,
        described,
    )


def vectors_of(index: Index) -> Vectors:
    """All vectors of an index, in the order of `texts_of`."""
    held = (vectors.all_of(index.dense), vectors.all_of(index.asked))
    kept = [part for part in (*held, index.sentences, index.described) if len(part)]
    return np.concatenate(kept) if kept else index.sentences


def as_row(made: Made) -> dict[str, Any]:
    """What an index is made of, as one JSON object."""
    return {
        "format": made.format,
        "version": made.version,
        "model": made.model,
        "weights": made.weights,
        "content": dict(made.content),
    }
