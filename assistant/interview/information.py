"""How much an answer tells of what would be sold, in bits."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

Ints: TypeAlias = NDArray[np.int64]
Floats: TypeAlias = NDArray[np.float64]


@dataclass(frozen=True)
class Joint:
    """The weight of each pair of an answer and what would be sold, no pair twice.

    `any_answer` is, by what would be sold, the weight of hypotheses that say nothing of the
    answer: an empty cell, or a valve put in later when the toilet is asked about. They may give
    any answer, as often as those of which the table knows it.
    """

    answer: Ints
    sold: Ints
    weight: Floats
    any_answer: Floats

    @cached_property
    def _known(self) -> Floats:
        """The weight of every answer, where the hypothesis itself gives it."""
        return totals(self.answer, self.weight, 0)

    @cached_property
    def shares(self) -> Floats:
        """The share of every answer; none where nothing is known of any."""
        total = self._known.sum()
        return self._known / total if total > 0 else np.zeros(0)


def entropy(weights: Floats) -> float:
    """The entropy of a distribution that is given by weights, in bits."""
    total = float(weights.sum())
    if total <= 0:
        return 0.0
    return float(np.log2(total) - _plogp(weights).sum() / total)


def information(joint: Joint) -> float:
    """What the answer is expected to tell of what would be sold, in bits.

    The mass that may give any answer is spread over the answers without a table of answers by
    things sold, which would be large for numbers: only pairs that are known differ from it.
    """
    shares = joint.shares
    if not len(shares):
        return 0.0
    free = joint.any_answer
    spread = float(free.sum())
    sold = free + totals(joint.sold, joint.weight, len(free))
    total = float(sold.sum())
    log_shares = _log2(shares)
    by_share = float((shares * log_shares).sum())
    # Of pairs: spread out alone, and what comes to it where the pair is known.
    inside = float(_plogp(free).sum()) + by_share * spread
    if spread > 0:
        there = shares[joint.answer] * free[joint.sold]
        logs = log_shares[joint.answer] + _log2(free)[joint.sold]
        inside += float((_plogp(joint.weight + there) - there * logs).sum())
    else:
        inside += float(_plogp(joint.weight).sum())
    answers = total * by_share + total * float(np.log2(total))  # the sum of x · log2 x over answers
    return entropy(sold) - (answers - inside) / total


def _log2(weights: Floats) -> Floats:
    """Each log2 x, and 0 at 0 for what is multiplied by it."""
    if len(weights) and weights.min() > 0:
        return np.log2(weights)
    return np.log2(weights, out=np.zeros_like(weights), where=weights > 0)


def _plogp(weights: Floats) -> Floats:
    """Each x · log2 x, which is 0 at 0."""
    found: Floats = weights * _log2(weights)
    return found


def totals(at: Ints, weight: Floats, size: int) -> Floats:
    """The weights added up by place."""
    return np.bincount(at, weight, size).astype(np.float64, copy=False)  # whole where none is


def merged(answer: Ints, sold: Ints, weight: Floats, kinds_sold: int) -> tuple[Ints, Ints, Floats]:
    """Pairs of an answer and a thing sold, those that stand twice added up."""
    pairs, place = np.unique(answer * kinds_sold + sold, return_inverse=True)
    return pairs // kinds_sold, pairs % kinds_sold, totals(place, weight, len(pairs))
