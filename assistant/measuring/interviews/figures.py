"""Interviews and conversations as one plain object: what `--json` prints and the page shows."""

from __future__ import annotations

from collections import Counter as Count
from collections.abc import Callable, Mapping, Sequence
from typing import Any

import numpy as np

from assistant.fitment.decide import Counter
from assistant.fitment.places import of_build
from assistant.measuring.interviews.bound import bits_of_sold, fewest_questions
from assistant.measuring.interviews.conversations import Conversation
from assistant.measuring.interviews.interview import CERTAIN, Interview
from assistant.measuring.interviews.policies import BEST
from assistant.measuring.interviews.run import Series
from assistant.measuring.retrieval.measures import chance, interval

FORMAT = 1


def figures(
    counter: Counter,
    series: Sequence[Series],
    conversations: Mapping[str, Sequence[Conversation]],
    *,
    seed: int,
) -> dict[str, Any]:
    """The bound, a block for each series, and both splits of the conversations."""
    return {
        "format": FORMAT,
        "seed": seed,
        "bound": _bound(counter),
        "series": [_series(counter, one, _ours(series, one)) for one in series],
        "conversations": {
            split: _conversations(rows, cases=split == "tune")
            for split, rows in conversations.items()
        },
    }


def _bound(counter: Counter) -> dict[str, Any]:
    found = {}
    for name, by_sales in (("each build once", False), ("by sales", True)):
        to_learn = bits_of_sold(counter, by_sales=by_sales)
        least = fewest_questions(counter, to_learn)
        found[name] = {"bits": round(to_learn, 3), "questions": round(least, 3)}
    return found


def _ours(series: Sequence[Series], one: Series) -> Series | None:
    """The same customers interviewed by our policy, where another is looked at."""
    same = (s for s in series if (s.group, s.policy) == (one.group, BEST))
    return None if one.policy == BEST else next(same, None)


def _series(counter: Counter, series: Series, ours: Series | None) -> dict[str, Any]:
    held = series.interviews
    certain = [i for i in held if i.ended == CERTAIN]
    false = [i for i in held if i.false]
    told: dict[str, Any] = {
        "customers": series.group.toilets,
        "memory": series.group.memory.name,
        "letter": list(series.group.letter),
        "policy": series.policy,
        "interviews": len(held),
        "questions": _mean([len(i.asked) for i in held]),
        "questions to certainty": _mean([len(i.asked) for i in certain]),
        "questions until a part could be named": _mean(
            [i.namable for i in held if i.namable is not None]
        ),
        "questions by sales": _by_sales(counter, held),
        "ended": dict(Count(i.ended for i in held).most_common()),
        "outcomes": _outcomes(held),
        "of those certain": _outcomes(certain),
        "certain": [len(certain), len(held)],
        "right part named": [sum(i.settled for i in held), len(held)],
        "wrong part named": _count(held, lambda i: bool(i.named.wrong)),
        "wrong part named, though certain": _count(certain, lambda i: bool(i.named.wrong)),
        "unproven part named": _count(held, lambda i: bool(i.named.unproven)),
        "named for the first valve, which is gone": _count(held, lambda i: bool(i.named.for_first)),
        "'could fit' that cannot": _count(held, lambda i: bool(i.named.cannot)),
        "told something false": [len(false), len(held)],
        "of those, caught": _count(false, lambda i: i.caught),
        "of those, wrong part named": _count(false, lambda i: bool(i.named.wrong)),
        "of those, right part named": _count(false, lambda i: i.settled),
        "asked first": dict(Count(i.asked[0] for i in held if i.asked).most_common(5)),
        "asked": dict(Count(q for i in held for q in i.asked).most_common()),
    }
    if ours is not None:
        told["more than ours"] = _against(held, ours.interviews)
    return told


def _count(held: Sequence[Interview], holds: Callable[[Interview], bool]) -> list[int]:
    return [sum(map(holds, held)), len(held)]


def _outcomes(held: Sequence[Interview]) -> dict[str, int]:
    return dict(Count(f"{i.outcome}: {i.why}" for i in held).most_common())


def _mean(numbers: Sequence[int]) -> dict[str, Any]:
    if not numbers:
        return {"mean": None, "interval": None}
    asked = [float(number) for number in numbers]
    return {
        "mean": round(float(np.mean(asked)), 3),
        "interval": [round(end, 3) for end in interval(asked)],
    }


def _by_sales(counter: Counter, held: Sequence[Interview]) -> float | None:
    """The mean over listed builds, each as often as it was sold."""
    builds = counter.tables.builds
    if not held or any(i.customer not in builds for i in held):
        return None
    weights = [of_build(counter.tables, builds[i.customer]).weight for i in held]
    return round(float(np.average([len(i.asked) for i in held], weights=weights)), 3)


def _against(held: Sequence[Interview], ours: Sequence[Interview]) -> dict[str, float]:
    """How many more questions than ours on the same customers, and by how much chance."""
    mine = {i.customer: float(len(i.asked)) for i in ours}
    other = {i.customer: float(len(i.asked)) for i in held}
    mean = float(np.mean([other[c] - mine[c] for c in mine])) if mine else 0.0
    return {"mean": round(mean, 3), "p": round(chance(mine, other), 4) if mine else 1.0}


def _conversations(held: Sequence[Conversation], *, cases: bool) -> dict[str, Any]:
    settled = [c for c in held if c.settled]
    told: dict[str, Any] = {
        "conversations": len(held),
        "settled as labelled": [len(settled), len(held)],
        "wrong part named": [sum(bool(c.wrong) for c in held), len(held)],
        "questions asked": sum(len(c.asked) for c in held),
        "fewest that do": sum(c.labelled.fewest for c in held),
        "questions asked, of those settled": sum(len(c.asked) for c in settled),
        "fewest that do, of those settled": sum(c.labelled.fewest for c in settled),
        "of them, after it was settled": sum(c.too_many for c in settled),
        "not known": sum(len(c.unknown) for c in held),
    }
    if cases:
        told["cases"] = [
            {
                "id": c.labelled.id,
                "kind": list(c.labelled.kind),
                "asked": list(c.asked),
                "not known": sorted(c.unknown),
                "fewest": c.labelled.fewest,
                "outcome": c.outcome,
                "labelled": list(c.labelled.expected.outcomes),
                "named": sorted(c.named),
                "wrong": sorted(c.wrong),
                "settled": c.settled,
            }
            for c in held
        ]
    return told
