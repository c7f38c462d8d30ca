"""What customers tell in passing: a danger, another part that fails, a valve put in later.

The reader's patterns know the words that they know. Here a sentence is weighed by its meaning,
against the shop's own rows of how people put it: a logistic regression over the model's
sentence vectors, fitted to those rows each time an index is opened (under a second). What is
heard so is never sure; it keeps a seal from being named, and names none itself.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from sklearn.linear_model import LogisticRegression

from assistant.search.content import LOOK, Description
from assistant.search.index import Index
from assistant.search.vectors import Vectors

SOFTNESS = 10.0  # inverse strength of the regularisation
FEWEST = 20  # rows of a kind, under which nothing can be learnt of it


@dataclass(frozen=True)
class Heard:
    """What a sentence tells, the sign that it is likest to, and how likely, from 0 to 1."""

    tells: str
    sign: str
    likely: float


@dataclass(frozen=True, eq=False)
class Ear:
    """The rows with their vectors, of shape `(rows, dimensions)`, and what was learnt of them."""

    rows: tuple[Description, ...]
    vectors: Vectors
    model: LogisticRegression

    def heard(self, meanings: Vectors, at: float) -> list[Heard | None]:
        """What each sentence tells, if it is as likely as that."""
        return [
            heard if heard.tells and heard.likely >= at else None
            for heard in self.likeliest(meanings)
        ]

    def likeliest(self, meanings: Vectors) -> list[Heard]:
        """What each sentence most likely tells of all that is of any weight."""
        kinds = [str(kind) for kind in self.model.classes_]
        weighty = [n for n, kind in enumerate(kinds) if kind]
        likely = self.model.predict_proba(meanings)[:, weighty]
        best = likely.argmax(axis=1)
        return [
            Heard(kinds[weighty[n]], self._sign(kinds[weighty[n]], meaning), float(row[n]))
            for n, row, meaning in zip(best.tolist(), likely, meanings, strict=True)
        ]

    def _sign(self, kind: str, meaning: Vectors) -> str:
        """The sign of the row that is nearest among those of a kind."""
        own = np.array([row.of == kind for row in self.rows])
        nearest = int(np.where(own, self.vectors @ meaning, -2.0).argmax())
        return self.rows[nearest].style


def ear_of(index: Index) -> Ear | None:
    """What is learnt of an index's rows; `None` where there are too few to learn from."""
    own = [at for at, told in enumerate(index.descriptions) if told.of != LOOK]
    rows = tuple(index.descriptions[at] for at in own)
    return learnt(rows, index.described[own]) if own else None


def learnt(rows: Sequence[Description], vectors: Vectors) -> Ear | None:
    """The same for rows and their vectors."""
    kinds = [row.of for row in rows]
    if len(set(kinds)) < 2 or min(map(kinds.count, set(kinds))) < FEWEST:
        return None
    return Ear(tuple(rows), vectors, classifier().fit(vectors, kinds))


def classifier() -> LogisticRegression:
    """What learns the rows; the same for the same rows."""
    return LogisticRegression(C=SOFTNESS, class_weight="balanced", max_iter=2000)
