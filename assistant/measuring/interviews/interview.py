"""One interview: questions until the part is certain, nothing narrows, or patience is at an end.

Only the facts gathered decide at the end, by `fitment.decide`; what was named is held against the
CSV files, which know nothing of fitment.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import TypeAlias

from assistant.fitment.decide import Counter, decide
from assistant.fitment.decision import Outcome, Why
from assistant.interview.next_question import Interviewer, State
from assistant.measuring.interviews.customer import Customer
from assistant.measuring.interviews.naming import Named, named
from assistant.reading.facts import Fact, Facts

MOST = 8  # questions, after which nobody answers any more
Policy: TypeAlias = Callable[[State], str | None]  # the next question, or none

CERTAIN, NOTHING_NARROWS, TOO_LONG = "certain", "nothing narrows", f"{MOST} questions"
CAUGHT = frozenset({Why.CONTRADICTION, Why.DISAGREES, Why.NOT_MADE_THEN})


@dataclass(frozen=True, kw_only=True)
class Interview:
    """What came of one: `asked` in order, those `unknown`, and those of which a lie was told."""

    customer: str
    group: str
    asked: tuple[str, ...]
    unknown: frozenset[str]
    false: frozenset[str]
    ended: str
    namable: int | None  # after how many questions the facts first named a part
    outcome: Outcome
    why: Why
    named: Named

    @property
    def caught(self) -> bool:
        """Whether it ended in telling the customer that two things cannot both be so."""
        return self.why in CAUGHT

    @property
    def settled(self) -> bool:
        """Whether he was given at least one seal, and none that is not his."""
        return bool(self.named.right) and not self.named.wrong and not self.named.unproven


def interviewed(
    counter: Counter,
    interviewer: Interviewer,
    policy: Policy,
    customer: Customer,
    letter: Sequence[str] = (),
) -> Interview:
    """Asks a customer by a policy, who told in his letter what answers some questions."""
    told = {name: customer.answer(name) for name in letter}
    state = State(Facts(tuple(f for answer in told.values() for f in answer.facts)))
    false = {name for name, answer in told.items() if answer.false}
    ended, namable = TOO_LONG, None
    for turn in range(MOST + 1):
        decision = decide(counter, state.facts)
        if namable is None and decision.outcome is Outcome.PART:
            namable = turn
        if interviewer.is_certain(state):
            ended = CERTAIN
            break
        question = policy(state) if turn < MOST else None
        if question is None:
            ended = NOTHING_NARROWS if turn < MOST else TOO_LONG
            break
        answer = customer.answer(question)
        state = answered(state, question, answer.facts)
        if answer.false:
            false.add(question)
    return Interview(
        customer=customer.toilet.name,
        group=customer.toilet.group,
        asked=state.asked,
        unknown=state.unknown,
        false=frozenset(false),
        ended=ended,
        namable=namable,
        outcome=decision.outcome,
        why=decision.why,
        named=named(customer.truth, customer.toilet, decision),
    )


def answered(state: State, question: str, facts: tuple[Fact, ...]) -> State:
    """What is known once a question was answered; no facts are a 'don't know'."""
    return State(
        facts=state.facts.plus(facts),
        unknown=state.unknown if facts else state.unknown | {question},
        asked=(*state.asked, question),
    )
