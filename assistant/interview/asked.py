"""A decision that asks, with the interview's question in place of its own."""

from __future__ import annotations

from collections.abc import Hashable
from dataclasses import replace

from assistant.fitment.decide import Counter
from assistant.fitment.decision import Decision, Outcome, Why
from assistant.fitment.features import FEATURES, values
from assistant.interview.next_question import Interviewer, State
from assistant.reading.facts import Facts

WANTS_FACTS = (Why.TOO_MANY, Why.NOTHING_TOLD, Why.BRAND_ONLY)
MOST_CHOICES = 8  # more than this nobody reads in a question

_made: list[Interviewer] = []  # for the counter used last, one for each kind of customer


def with_best_question(
    counter: Counter,
    facts: Facts,
    decision: Decision,
    state: State,
    customer: str = "customer",
) -> Decision:
    """The decision with the question that tells most of what would be sold.

    Replaced is the question of a decision that asks because too little is told, or that depends:
    of `ASK` those for `WANTS_FACTS`, and for a model without its maker where several makers bear
    it; of `DEPENDS` all, but where the name itself is doubted only once its question was asked.
    A contradiction, a measure of which nobody said what it measures, and several names are asked
    about as they are: no fact can be built upon before that is settled.

    `facts` are those about this toilet; of `state` what was asked and not known counts. The
    choices are the values among the decision's own scenarios, where the table knows them all.
    The decision is returned as it is where the interview has no question: what would be sold is
    certain, or nothing that may still be asked narrows it. Its own question may then be one that
    was asked before (`decision.question in state.asked`): there a person is to be offered.
    """
    if not _wants_facts(decision, state):
        return decision
    best = interviewer_for(counter, customer).best(replace(state, facts=facts))
    if best is None or best == decision.question:
        return decision
    return replace(decision, question=best, choices=_choices(best, decision))


def interviewer_for(counter: Counter, customer: str = "customer") -> Interviewer:
    """The interviewer of a counter, made at the first message and kept till another counter's."""
    _made[:] = [one for one in _made if one.counter is counter]
    for one in _made:
        if one.customer == customer:
            return one
    _made.append(Interviewer(counter, customer))
    return _made[-1]


def _wants_facts(decision: Decision, state: State) -> bool:
    asked = decision.question in state.asked or decision.question in state.unknown
    if decision.outcome is Outcome.DEPENDS:
        return decision.why is not Why.DOUBTED or asked
    if decision.outcome is not Outcome.ASK:
        return False
    if decision.why is Why.MODEL_ONLY:
        return len({s.build.brand for s in decision.scenarios if s.build}) > 1
    return decision.why in WANTS_FACTS


def _choices(question: str, decision: Decision) -> tuple[Hashable, ...]:
    """What the answer decides between; nothing where that is open or would be a long list."""
    if question == "brand":
        found: tuple[Hashable, ...] = tuple(
            dict.fromkeys(s.build.brand for s in decision.scenarios if s.build)
        )
    else:
        feature = next((f for f in FEATURES if f.name == question), None)
        found = (values(feature, decision.scenarios) or ()) if feature else ()
    return found if len(found) <= MOST_CHOICES else ()
