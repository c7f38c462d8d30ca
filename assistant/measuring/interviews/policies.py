"""Ways of choosing the next question: the interviewer's own, and those that it must beat.

The others are spared the questions that cannot narrow: they lose by their order alone.
"""

from __future__ import annotations

import random
from collections.abc import Iterable

from assistant.fitment.asking import ease
from assistant.fitment.decide import Counter
from assistant.interview.next_question import Interviewer, State
from assistant.measuring.interviews.interview import Policy
from assistant.measuring.interviews.tree import QuestionTree

BEST, FIXED, RANDOM, TREE = "the interview", "fixed order", "random", "decision tree"


def policies(counter: Counter, interviewer: Interviewer, seed: int) -> dict[str, Policy]:
    """Every policy by its name, the interviewer's own first."""
    return {
        BEST: interviewer.best,
        FIXED: fixed(counter, interviewer),
        RANDOM: at_random(interviewer, seed),
        TREE: by_tree(counter, interviewer, seed),
    }


def narrowing(interviewer: Interviewer, state: State) -> tuple[str, ...]:
    """The questions that were not asked yet and of which some answer would narrow."""
    return tuple(q.question for q in interviewer.reckoning(state).questions if q.gain > 0)


def by_ease(counter: Counter) -> tuple[str, ...]:
    """The questions, easiest first; of equal ones the first of the table."""
    questions = counter.tables.questions
    return tuple(sorted(questions, key=lambda name: -ease(questions, name)))


def fixed(counter: Counter, interviewer: Interviewer) -> Policy:
    """Always the easiest question left."""
    order = by_ease(counter)
    return lambda state: _first(order, narrowing(interviewer, state))


def at_random(interviewer: Interviewer, seed: int) -> Policy:
    """Any question left, drawn anew for every customer; the same in every run of a seed."""
    chance = random.Random(seed)

    def choose(state: State) -> str | None:
        left = narrowing(interviewer, state)
        return chance.choice(left) if left else None

    return choose


def by_tree(counter: Counter, interviewer: Interviewer, seed: int) -> Policy:
    """What a decision tree over the same table would look at next; then the easiest left."""
    tree, order = QuestionTree(counter, seed), by_ease(counter)

    def choose(state: State) -> str | None:
        left = narrowing(interviewer, state)
        return next((q for q in tree.path(state) if q in left), None) or _first(order, left)

    return choose


def _first(order: Iterable[str], left: tuple[str, ...]) -> str | None:
    return next((question for question in order if question in left), None)
