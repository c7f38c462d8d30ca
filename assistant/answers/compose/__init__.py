"""Puts a decision into words. What is decided is decided before; what may be shown, after."""

from __future__ import annotations

from assistant.answers.compose.asking import ask
from assistant.answers.compose.case import Case
from assistant.answers.compose.depends import by_branches, by_measures
from assistant.answers.compose.part import part
from assistant.answers.compose.silent import no_match
from assistant.answers.draft import Draft
from assistant.fitment.decision import Decision, Outcome, Why


def compose(case: Case, decision: Decision) -> Draft:
    """The draft of an answer about one toilet."""
    if decision.outcome is Outcome.PART:
        return part(case, decision)
    if decision.outcome is Outcome.DEPENDS:
        if decision.why is Why.DOUBTED:
            return part(case, decision)
        return (by_measures if decision.why is Why.MEASURES else by_branches)(case, decision)
    if decision.outcome is Outcome.ASK:
        return ask(case, decision)
    return no_match(case, decision)
