"""The next question: what narrows the seal most, weighed by how easily it is answered."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Hashable, Iterable, Mapping, Sequence

from assistant.fitment.features import FEATURES, Feature, separates
from assistant.fitment.picks import Group
from assistant.records.rows import Question

USUAL_EASE = 0.5  # for a question whose row does not say


def ease(questions: Mapping[str, Question], name: str) -> float:
    """The share of customers who can answer it."""
    row = questions.get(name)
    return USUAL_EASE if row is None or row.ease is None else row.ease


def narrowing(feature: Feature, groups: Sequence[Group]) -> float:
    """Expected information about which group it is, in bits, weighed by sales.

    A scenario whose value is not known falls into a class of its own with no gain counted
    for it, so that an empty cell never looks like an answer.
    """
    classes: dict[Hashable, dict[int, float]] = defaultdict(lambda: defaultdict(float))
    total = 0.0
    for at, group in enumerate(groups):
        for scenario in group.scenarios:
            classes[feature.of(scenario)][at] += scenario.weight
            total += scenario.weight
    prior: dict[int, float] = defaultdict(float)
    for members in classes.values():
        for at, weight in members.items():
            prior[at] += weight
    left = sum(
        sum(members.values()) / total * _entropy(members.values()) for members in classes.values()
    )
    return _entropy(prior.values()) - left


def _entropy(weights: Iterable[float]) -> float:
    masses = [w for w in weights if w > 0]
    total = sum(masses)
    return -sum(w / total * math.log2(w / total) for w in masses)


def best_question(
    groups: Sequence[Group], questions: Mapping[str, Question], known: frozenset[str]
) -> str | None:
    """The feature to ask for, or `None` where no question would tell the groups apart.

    `known` are features that the customer already told: they are not asked again.
    """
    scored = [
        (-narrowing(f, groups) * ease(questions, f.name), at, f.name)
        for at, f in enumerate(FEATURES)
        if f.name not in known
    ]
    gain, _, name = min(scored)
    return name if gain < -1e-9 else None


# What selects a branch: first what the table knows of the toilet, then what can be seen of
# its valve. A date and a number say which build it is even where the valve was changed.
SETTLES = (
    "model", "made", "pieces", "model_no", "flush", "tank_kind",
    "opening", "ears", "overflow", "mount", "hinge_width",
)  # fmt: skip


def settling(groups: Sequence[Group]) -> Feature | None:
    """The first feature that alone tells every group from every other."""
    able = {f.name: f for f in FEATURES if separates(f, groups)}
    return next((able[name] for name in SETTLES if name in able), None)
