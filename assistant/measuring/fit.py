"""Fits the limits of the search to the labelled rows of the split 'tune', and writes them.

    python -m assistant.measuring.fit [SHOP]

A wrong answer undoes two right ones: better silence than a guess. A style is named by
meaning only where nine in ten such namings are right.
"""

from __future__ import annotations

import sys
from collections.abc import Sequence
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from sklearn.linear_model import LogisticRegression
from sklearn.model_selection import GroupKFold, cross_val_predict

from assistant.measuring.labelled import Look, Question, looks, questions
from assistant.search.limits import FITTED, OWN, Limits, Signals, limits_rows
from assistant.search.model import Model
from assistant.search.opening import open_search
from assistant.search.searching import CANDIDATES, Search
from assistant.shop import DEMO, open_shop

WRONG_COSTS = 2
SOFTNESS = 10.0  # inverse strength of the regularisation
FOLDS = 10
RIGHT_OF_TEN = 9
NOTHING = Limits(**dict.fromkeys(Limits.__dataclass_fields__, 0.0))


def fitted(search: Search, asked: Sequence[Question], told: Sequence[Look]) -> Limits:
    """The limits that serve these labelled rows best; the same for the same rows."""
    signals, serves, of, answerable = _candidates(search, asked)
    model = LogisticRegression(C=SOFTNESS, max_iter=5000)
    likely = cross_val_predict(
        model, signals, serves, groups=of, cv=GroupKFold(FOLDS), method="predict_proba"
    )[:, 1]
    model.fit(signals, serves)
    weights = dict(zip(Signals.__dataclass_fields__, model.coef_[0].tolist(), strict=True))
    looks_at, ahead = _for_looks(search, told)
    return Limits(
        **{name: round(weight, 3) for name, weight in weights.items()},
        bias=round(float(model.intercept_[0]), 3),
        answers_at=_threshold(likely, serves, of, answerable),
        looks_at=looks_at,
        looks_ahead=ahead,
    )


def _candidates(
    search: Search, asked: Sequence[Question]
) -> tuple[NDArray[np.float64], NDArray[np.bool_], NDArray[np.int64], list[bool]]:
    """Signals of every candidate, whether it serves, of which question, and what is answerable."""
    signals, serves, of = [], [], []
    for number, question in enumerate(asked):
        for hit, found in search.candidates(question.asked, question.audience, CANDIDATES):
            signals.append(list(vars(found).values()))
            serves.append(question.served_by(hit.passage.note, hit.passage.section))
            of.append(number)
    return np.array(signals), np.array(serves), np.array(of), [q.answerable for q in asked]


def _threshold(
    likely: NDArray[np.float64],
    serves: NDArray[np.bool_],
    of: NDArray[np.int64],
    answerable: Sequence[bool],
) -> float:
    """The likelihood from which an answer is worth more than silence, by likelihoods held out.

    The best of twelve candidates is right less often than its likelihood says, so how often is
    fitted once more (Platt, 1999: a logistic curve over the log-odds). Where that curve passes
    `WRONG_COSTS / (1 + WRONG_COSTS)`, right answers just outweigh wrong ones. A curve of two
    parameters moves little with a single question; the best point of a jagged count does.
    """
    tops = [np.flatnonzero(of == number) for number in range(len(answerable))]
    best = np.array([own[np.argmax(likely[own])] for own in tops if len(own)])
    odds = np.log(likely[best] / (1 - likely[best]))
    curve = LogisticRegression(C=SOFTNESS).fit(odds[:, None], serves[best])
    wanted = (np.log(WRONG_COSTS) - curve.intercept_[0]) / curve.coef_[0, 0]
    return round(float(1 / (1 + np.exp(-wanted))), 2)


def _for_looks(search: Search, told: Sequence[Look]) -> tuple[float, float]:
    """The limits of likeness and lead with most right namings, of which nine in ten are right."""
    ranked = [search.likest(v) for v in search.encoder.encode([look.text for look in told])]
    best, limits = -1, (1.0, 1.0)
    for at in np.round(np.arange(0.2, 0.8, 0.02), 2):
        for ahead in np.round(np.arange(0.0, 0.21, 0.01), 2):
            named = [
                (rank[0][0], look.style)
                for rank, look in zip(ranked, told, strict=True)
                if rank[0][0] and rank[0][1] >= at and rank[0][1] - rank[1][1] >= ahead
            ]
            right = sum(style == wanted for style, wanted in named)
            if right > best and right * 10 >= len(named) * RIGHT_OF_TEN:
                best, limits = right, (float(at), float(ahead))
    return limits


def main(folder: Path = DEMO) -> None:
    """Fits to a shop's labelled rows and writes the limits of its model."""
    shop = open_shop(folder)
    model = Model(shop.settings.model)
    search = open_search(shop.content, shop.index, model, print, limits=NOTHING)
    rows = folder / "eval"
    limits = fitted(search, questions(rows, "tune"), looks(rows, "tune"))
    path = FITTED if folder == DEMO else folder / OWN
    path.write_text(limits_rows(path, model.name, limits), encoding="utf-8")
    print(f"{path}: {limits}")


if __name__ == "__main__":
    main(*map(Path, sys.argv[1:2]))
