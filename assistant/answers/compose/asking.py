"""Too little is known: the one best next question, and why it is asked."""

from __future__ import annotations

from assistant.answers.compose.case import Case, wrote
from assistant.answers.draft import Draft
from assistant.answers.words import listed
from assistant.fitment.decision import Decision, Outcome, Why

TELLS_WHAT_WAS_WRITTEN = (
    Why.VALVE_REPLACED,
    Why.TRIED_IN_VAIN,
    Why.WHAT_WAS_MEASURED,
    Why.ONE_OF_TWO,
    Why.TROUBLE,
)


def ask(case: Case, decision: Decision) -> Draft:
    """What stands in the way, then the question, why it is asked, how to find out."""
    draft = Draft(Outcome.ASK)
    case.say_back(draft, decision)
    draft.say(_why(case, draft, decision))
    case.sounds_like(draft, decision.told)
    if not case.ask(draft, decision, main=True, again=decision.why is Why.CONTRADICTION):
        draft.say(*_to_a_person(case, draft), main=True)
    return draft


def _to_a_person(case: Case, draft: Draft) -> tuple[str | None, ...]:
    """Every question that helps was put: what would still help, and who looks at it."""
    return tuple(draft.quote(case.notes, "what-helps-us", s) for s in ("silent-tables", "person"))


def _why(case: Case, draft: Draft, decision: Decision) -> str | None:
    names = [f"the {name}" for name in decision.identity.names]
    said = wrote(decision.facts)
    if decision.why is Why.CONTRADICTION:
        return f"You wrote {said}. They do not go together."
    if decision.why is Why.DISAGREES and names and decision.facts:
        named = listed(names, "or")
        return f"You wrote {said}, and that does not agree with {named} in our table."
    if decision.why is Why.DISAGREES and decision.facts:
        return f"You wrote {said}. They do not go together."
    if decision.why is Why.MODEL_ONLY and 0 < len(names) <= 3:
        return f"Our table lists {listed(names)}."
    if decision.why is Why.SEVERAL_NAMES and 0 < len(names) <= 4:
        return f"It may be {listed(names, 'or')}."
    if (
        decision.why
        in (Why.VALVE_REPLACED, Why.TRIED_IN_VAIN, Why.WHAT_WAS_MEASURED, Why.ONE_OF_TWO)
        and decision.facts
    ):
        told = f"You wrote {said}."
        if decision.why is Why.VALVE_REPLACED:
            means = draft.quote(case.notes, "is-the-valve-the-original", "what-it-means")
            return f"{told} {means}" if means else told
        return told
    return None
