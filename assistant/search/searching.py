"""What answers ask of the index: sentences that answer, passages that support, looks."""

from __future__ import annotations

from collections.abc import Sequence, Set
from dataclasses import dataclass

import numpy as np

from assistant.records.sections import Line
from assistant.search.excerpt import excerpt
from assistant.search.fusion import DAMPING
from assistant.search.index import Hit, Index
from assistant.search.lexical import shared
from assistant.search.limits import Limits, Signals
from assistant.search.model import Encoder
from assistant.search.passages import Passage
from assistant.search.vectors import Vectors

CANDIDATES = 12  # passages found that are looked at closely
FIRST_IN_ALL = 3 / (DAMPING + 1)  # the fused score of a passage that all three rank first
NEARLY = 0.85  # of the first passage's likelihood, for a second one to be quoted beside it
FEW = 7  # sentences of an answer from two passages
NEAREST = 3  # descriptions of a style that are weighed


@dataclass(frozen=True)
class Found:
    """A passage, the sentences of it that answer, and how likely they do, from 0 to 1."""

    passage: Passage
    sentences: tuple[Line, ...]
    likely: float

    @property
    def lines(self) -> tuple[int, int]:
        """The first and the last line of the sentences."""
        return (self.sentences[0].line, self.sentences[-1].last)


def _goes_along(second: Found, first: Found) -> bool:
    near = second.likely >= NEARLY * first.likely
    return near and len(first.sentences) + len(second.sentences) <= FEW


@dataclass(frozen=True)
class Alike:
    """A style that words describe by their meaning, its cosine, and how far it is ahead."""

    style: str
    cosine: float
    ahead: float


@dataclass(frozen=True, eq=False)
class Search:
    """An index, the model that made it, and the limits fitted for that model."""

    index: Index
    encoder: Encoder
    limits: Limits

    def candidates(
        self, question: str, audience: str, count: int = CANDIDATES
    ) -> list[tuple[Hit, Signals]]:
        """The passages nearest to a question and what speaks for each."""
        return self._weighed(question, self._meaning(question), audience, count)

    def ranked(
        self,
        question: str,
        audience: str,
        count: int = CANDIDATES,
        styles: Set[str] = frozenset(),
    ) -> list[Found]:
        """The passages nearest to a question, the likeliest to answer it first.

        With `styles`, no passage of a note that is about other styles only.
        """
        meaning = self._meaning(question)
        found = [
            Found(hit.passage, self._excerpt(hit, meaning), self.limits.likely(signals))
            for hit, signals in self._weighed(question, meaning, audience, CANDIDATES)
            if not styles or not hit.passage.styles or styles & {*hit.passage.styles}
        ]
        return sorted(found, key=lambda one: -one.likely)[:count]

    def _weighed(
        self, question: str, meaning: Vectors, audience: str, count: int
    ) -> list[tuple[Hit, Signals]]:
        hits = self.index.find(question, meaning, count, self.index.allowed(audience))
        weights = self.index.lexical.weights(question)
        return [(hit, self._signals(hit, meaning, weights)) for hit in hits]

    def answer(self, question: str, audience: str, styles: Set[str] = frozenset()) -> list[Found]:
        """The sentences that answer a question; none where the notes do not say.

        Two passages where the second is nearly as likely and both are short.
        """
        ranked = self.ranked(question, audience, styles=styles)
        found = [f for f in ranked if f.likely >= self.limits.answers_at]
        if len(found) > 1 and _goes_along(found[1], found[0]):
            return found[:2]
        return found[:1]

    def supporting(
        self, style: str, words: str, audience: str, count: int = 3
    ) -> list[tuple[Passage, float]]:
        """Passages that speak of a style of seal, with their cosine to its description.

        Only notes that name the style in their front matter. The description's vector lies in
        the index, so that the model need not be loaded.
        """
        meaning = self._described(style)
        about = np.array([style in p.styles for p in self.index.passages], dtype=bool)
        seen = self.index.allowed(audience)
        allowed = about if seen is None else about & seen
        if meaning is None or not allowed.any():
            return []
        hits = self.index.find(words, meaning, count, allowed)
        return [(hit.passage, hit.likeness) for hit in hits]

    def alike(self, wordings: Sequence[str]) -> list[Alike | None]:
        """For each wording the style that it describes, if one stands out clearly enough."""
        if not wordings or not len(self.index.described):
            return [None] * len(wordings)
        return [self._standing_out(v) for v in self.encoder.encode(wordings)]

    def likest(self, meaning: Vectors) -> list[tuple[str, float]]:
        """Every style with its likeness to a wording's vector, best first.

        The mean of its three nearest descriptions: one alone may be near by chance. '' stands for
        what is no seal.
        """
        near: dict[str, list[float]] = {}
        cosines = self.index.described @ meaning
        for told, cosine in zip(self.index.descriptions, cosines.tolist(), strict=True):
            near.setdefault(told.style, []).append(cosine)
        best = {style: sorted(all_)[-NEAREST:] for style, all_ in near.items()}
        means = {style: sum(few) / len(few) for style, few in best.items()}
        return sorted(means.items(), key=lambda item: (-item[1], item[0]))

    def _standing_out(self, meaning: Vectors) -> Alike | None:
        ranked = self.likest(meaning)
        style, cosine = ranked[0]
        ahead = cosine - ranked[1][1] if len(ranked) > 1 else cosine
        if not style or cosine < self.limits.looks_at or ahead < self.limits.looks_ahead:
            return None
        return Alike(style, cosine, ahead)

    def _meaning(self, text: str) -> Vectors:
        meaning: Vectors = self.encoder.encode([text])[0]
        return meaning

    def _described(self, style: str) -> Vectors | None:
        own = [
            vector
            for told, vector in zip(self.index.descriptions, self.index.described, strict=True)
            if told.style == style
        ]
        if not own:
            return None
        mean: Vectors = np.mean(own, axis=0)
        unit: Vectors = mean / np.linalg.norm(mean)
        return unit

    def _signals(self, hit: Hit, meaning: Vectors, weights: dict[str, float]) -> Signals:
        """What speaks for a passage."""
        cosines = self.index.sentences_of(hit.place) @ meaning
        sentence = float(cosines.max()) if len(cosines) else 0.0
        return Signals(
            passage=hit.likeness,
            wording=hit.wording,
            sentence=sentence,
            likest=max(hit.likeness, hit.wording, sentence),
            words=shared(weights, hit.passage.words) / 10,
            length=len(weights) / 10,
            ranks=hit.fused / FIRST_IN_ALL,
        )

    def _excerpt(self, hit: Hit, meaning: Vectors) -> tuple[Line, ...]:
        return excerpt(hit.passage.sentences, self.index.sentences_of(hit.place) @ meaning)
