"""Draws some of many by a seed: of every kind, rare kinds whole, the rest by chance."""

from __future__ import annotations

import random
from collections import defaultdict
from collections.abc import Sequence
from typing import TypeVar

T = TypeVar("T")


def drawn(kinds: Sequence[tuple[str, T]], count: int, seed: int) -> list[T]:
    """At most `count` things, each given with its kind, in the order they were given.

    Half of the places are shared out evenly: a kind with no more than its share is taken whole.
    The other half is drawn by chance from all that is left.
    """
    if len(kinds) <= count:
        return [thing for _, thing in kinds]
    chance = random.Random(seed)
    by_kind: dict[str, list[int]] = defaultdict(list)
    for at, (kind, _) in enumerate(kinds):
        by_kind[kind].append(at)
    share = max(1, count // (2 * len(by_kind)))
    sure = [at for ats in by_kind.values() for at in chance.sample(ats, min(share, len(ats)))]
    sure = sure[:count]
    taken = set(sure)
    left = [at for at in range(len(kinds)) if at not in taken]
    taken.update(chance.sample(left, count - len(sure)))
    return [kinds[at][1] for at in sorted(taken)]
