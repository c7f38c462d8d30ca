"""The few seals that remain where nothing that may still be asked tells them apart."""

from __future__ import annotations

from dataclasses import replace

from assistant.fitment.decide import Counter
from assistant.fitment.decision import Branch, Decision, Outcome, Why
from assistant.fitment.features import Condition
from assistant.fitment.picks import groups_of

MOST = 6  # more than this is no choice any more


def few_left(counter: Counter, decision: Decision) -> Decision | None:
    """Each seal with the builds that take it, which is all that tells them apart.

    `None` where more remain than anybody would go through, or where a seal is known for none.
    """
    builds = [s.build for s in decision.scenarios]
    if decision.why is not Why.TOO_MANY or not builds or None in builds:
        return None
    groups = groups_of(counter.tables, decision.scenarios, counter.first)
    if not 1 < len(groups) <= MOST or all(group.is_silent for group in groups):
        return None
    branches = tuple(
        Branch(g, Condition("build", tuple(s.build.build for s in g.scenarios if s.build)))
        for g in groups
    )
    return replace(
        decision,
        outcome=Outcome.DEPENDS,
        why=Why.FEW_LEFT,
        branches=branches,
        question=None,
        choices=(),
        facts=(),
    )
