"""Reciprocal rank fusion (Cormack, Clarke and Buettcher 2009)."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence

DAMPING = 60  # the paper's own constant


def fused(*rankings: Sequence[int]) -> list[tuple[int, float]]:
    """Places and their fused scores, best first; ties go to the lower place.

    Each ranking lists places best first; `1 / (60 + rank)` is summed over the rankings.
    """
    scores: dict[int, float] = defaultdict(float)
    for ranking in rankings:
        for rank, place in enumerate(ranking, start=1):
            scores[place] += 1 / (DAMPING + rank)
    return sorted(scores.items(), key=lambda item: (-item[1], item[0]))
