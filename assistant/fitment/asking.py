"""How easily a question is answered, and the one feature that tells a few seals apart."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from assistant.fitment.features import FEATURES, Feature, separates
from assistant.fitment.picks import Group
from assistant.records.rows import Question

USUAL_EASE = 0.5  # for a question whose row does not say


def ease(questions: Mapping[str, Question], name: str) -> float:
    """The share of customers who can answer it."""
    row = questions.get(name)
    return USUAL_EASE if row is None or row.ease is None else row.ease


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
