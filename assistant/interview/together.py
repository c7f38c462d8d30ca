"""Several questions in one letter: the set that together tells most, were some not answered."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

import numpy as np

from assistant.interview.answering import HAIR, gain_of, given, joint
from assistant.interview.hypotheses import Hypotheses
from assistant.interview.information import Floats, Ints

ANSWERS_TRIED = 12  # of a question's answers, spread evenly over how likely they are

World = tuple[float, Hypotheses]  # how likely, and what is left in it


def asked_together(left: Hypotheses, eases: Mapping[str, float], most: int) -> tuple[str, ...]:
    """The best of these questions, then what adds most to those chosen, and so on.

    Each is answered as often as its ease says: one that would tell what another tells already
    adds little, unless the other is hard to answer.
    """
    chosen: list[str] = []
    worlds: list[World] = [(1.0, left)]
    open_ = dict(eases)
    while open_ and len(chosen) < most:
        adds = {
            name: ease * sum(share * gain_of(world, name) for share, world in worlds)
            for name, ease in open_.items()
        }
        best = max(adds, key=lambda name: round(adds[name] / HAIR))  # the first of the best
        if adds[best] <= HAIR:
            break
        chosen.append(best)
        ease = open_.pop(best)
        worlds = [world for old in worlds for world in _after(old, best, ease)]
    return tuple(chosen)


def _after(world: World, question: str, ease: float) -> Iterator[World]:
    """The world with the question unanswered, and with each of the answers that are tried."""
    share, left = world
    told = joint(left, question)
    if told is None or not len(told.shares):
        yield world
        return
    if ease < 1:
        yield share * (1 - ease), left
    tried, count = np.unique(_spread(np.cumsum(told.shares)), return_counts=True)
    for answer, times in zip(tried.tolist(), count.tolist(), strict=True):
        yield share * ease * times / ANSWERS_TRIED, given(left, question, answer)


def _spread(up_to: Floats) -> Ints:
    """Answers at even steps of how likely they are, the same ones every time."""
    steps = (np.arange(ANSWERS_TRIED) + 0.5) / ANSWERS_TRIED * up_to[-1]
    found: Ints = np.searchsorted(up_to, steps - HAIR)  # just at an edge, rounding decides nothing
    return found
