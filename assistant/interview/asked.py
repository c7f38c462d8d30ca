"""A decision that asks, with the interview's question in place of its own."""

from __future__ import annotations

from collections.abc import Hashable
from dataclasses import replace

from assistant.fitment.asking import ease
from assistant.fitment.decide import Counter, decide
from assistant.fitment.decision import Decision, Outcome, Why
from assistant.fitment.features import FEATURES, values
from assistant.fitment.remaining import few_left
from assistant.interview.next_question import ABLE, Interviewer, State
from assistant.reading.facts import Facts

WANTS_FACTS = (Why.TOO_MANY, Why.NOTHING_TOLD, Why.BRAND_ONLY)
AS_IT_IS = (Why.CONTRADICTION, Why.DISAGREES)  # no fact can be built upon before that is settled
ASKED_ONCE = {Why.ONE_OF_TWO: "position", Why.TROUBLE: "trouble"}  # then it is let be
VALVE = "valve_replaced"
MOST_CHOICES = 8  # more than this nobody reads in a question

_made: list[Interviewer] = []  # for the counter used last, one for each kind of customer


def with_best_question(
    counter: Counter,
    facts: Facts,
    decision: Decision,
    state: State,
    customer: str = "customer",
    *,
    most: int = 1,
    talking: bool = False,
) -> Decision:
    """The decision with the question that tells most of what would be sold.

    Replaced is the question of a decision that asks because too little is told, or that depends:
    of `ASK` those for `WANTS_FACTS`, and whose model it is where hardly anybody could say; of
    `DEPENDS` all, but where the name itself is doubted only once its question was asked.
    Any other that was asked before gives way too, but one of facts that do not go together.

    `facts` are those about this toilet; of `state` what was asked and not known counts. The
    choices are the values among the decision's own scenarios, where the table knows them all.
    Where `most` are more than one, as in a letter, those are chosen that together tell most. In a
    talk, where an answer costs nothing, a part that hangs on the valve's being the first
    one comes with that question. The question is `None` where it was asked before and none
    narrows any further: there a person is to be offered.
    """
    if (asked_for := ASKED_ONCE.get(decision.why)) and _was_asked(decision, state):
        facts = Facts(tuple(f for f in facts if f.name != asked_for))
        decision = decide(counter, facts)
    if not _asks_anew(counter, decision, state, talking):
        return decision
    state = replace(state, facts=facts)
    interviewer = interviewer_for(counter, customer)
    reckoning = interviewer.reckoning(state)
    if decision.outcome is Outcome.PART:
        matters = any(q.question == VALVE and q.gain > 0 for q in reckoning.questions)
        return replace(decision, question=VALVE) if matters else decision
    if decision.why is Why.BRANCHES:  # told of the first valve: the question is which of them
        branches = interviewer.reckoned(reckoning.left.with_first_valve, state)
        reckoning = branches if branches.best else reckoning
    together = reckoning.best_set(most) if most > 1 else ()
    best = next(iter(together), None) or reckoning.best_at_once
    if best is None and not _was_asked(decision, state):
        return decision
    only_a_person = all(q.by_person for q in reckoning.questions if q.question == best)
    if state.asked and only_a_person and (left := few_left(counter, decision)):
        return replace(left, question=best)
    if best is None:
        return replace(decision, question=None, choices=())
    choices = decision.choices if best == decision.question else _choices(best, decision)
    return replace(decision, question=best, choices=choices, also_ask=together[1:])


def interviewer_for(counter: Counter, customer: str = "customer") -> Interviewer:
    """The interviewer of a counter, made at the first message and kept till another counter's."""
    _made[:] = [one for one in _made if one.counter is counter]
    for one in _made:
        if one.customer == customer:
            return one
    _made.append(Interviewer(counter, customer))
    return _made[-1]


def _was_asked(decision: Decision, state: State) -> bool:
    return decision.question in state.asked or decision.question in state.unknown


def _asks_anew(counter: Counter, decision: Decision, state: State, talking: bool) -> bool:
    asked = _was_asked(decision, state)
    if decision.outcome is Outcome.PART:
        return talking and decision.question is None and not decision.valve_is_original
    if decision.outcome is Outcome.DEPENDS:
        return decision.why is not Why.DOUBTED or asked
    if decision.outcome is not Outcome.ASK:
        return False
    if decision.why is Why.MODEL_ONLY:  # two makers are told of already: which one comes first
        return asked or ease(counter.tables.questions, "brand") < ABLE
    return decision.why in WANTS_FACTS or (asked and decision.why not in AS_IT_IS)


def _choices(question: str, decision: Decision) -> tuple[Hashable, ...]:
    """What the answer decides between; nothing where that is open or would be a long list."""
    if question == "brand":
        found: tuple[Hashable, ...] = tuple(
            dict.fromkeys(s.build.brand for s in decision.scenarios if s.build)
        )
    else:
        feature = next((f for f in FEATURES if f.name == question), None)
        found = (values(feature, decision.scenarios) or ()) if feature else ()
        if question == "mount":  # a seal that may hang on pegs or sit on a ring is told as one
            found = tuple(
                dict.fromkeys(w for ways in found if isinstance(ways, tuple) for w in ways)
            )
    return found if len(found) <= MOST_CHOICES else ()
