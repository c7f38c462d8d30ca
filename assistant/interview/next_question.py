"""The next question: what tells most of what would be sold, weighed by who can answer it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from assistant.fitment.asking import USUAL_EASE
from assistant.fitment.decide import Counter
from assistant.interview.answering import HAIR, gain_of
from assistant.interview.hypotheses import Hypotheses
from assistant.interview.listed import Listed
from assistant.interview.sold import Sold
from assistant.interview.together import asked_together
from assistant.reading.facts import Facts
from assistant.records.rows import Question

ABLE = 0.2  # what fewer of such customers than this can answer is not asked
LESS_ABLE = 0.5  # who could not answer one question answers half as many of its kind
BY_PERSON = "person"  # the kind of question of which no program reads the answer
STAFF = "staff"  # stands at the toilet; anybody else writes from memory

# Facts that answer a question, where they are not called as it is.
TOLD_BY: Mapping[str, tuple[str, ...]] = {
    "valve_replaced": ("valve_replaced", "valve_original", "valve_put_in"),
}


@dataclass(frozen=True)
class State:
    """What is known of one toilet, and what was asked so far.

    `unknown` are questions answered with 'don't know'; `asked` are in order, and none of them
    is asked again.
    """

    facts: Facts
    unknown: frozenset[str] = frozenset()
    asked: tuple[str, ...] = ()


@dataclass(frozen=True)
class Weighed:
    """A question, what it is expected to tell of what would be sold, and who can answer it."""

    question: str
    gain: float  # bits
    ease: float
    by_person: bool = False  # the answer is a picture, which somebody at the shop looks at

    @property
    def utility(self) -> float:
        """What is to be expected of asking it."""
        return self.gain * self.ease


@dataclass(frozen=True)
class Reckoning:
    """What is still possible and what each question would tell.

    `solds` are what may be sold with the share of each, the likeliest first; `questions` stand
    in the order of questions.csv, without those that are answered or were asked.
    """

    left: Hypotheses
    solds: tuple[tuple[Sold, float], ...]
    questions: tuple[Weighed, ...]

    @property
    def certain(self) -> bool:
        """Whether the same would be sold whatever is the case."""
        return len(self.solds) == 1

    @property
    def best(self) -> str | None:
        """The question of most use; `None` where it is certain or no answer narrows further."""
        return _best(self.questions)  # where it is certain, no question has any gain

    @property
    def best_at_once(self) -> str | None:
        """The same where answers come at once: what a person has to look at is asked for last."""
        return _best(q for q in self.questions if not q.by_person) or self.best

    def best_set(self, most: int) -> tuple[str, ...]:
        """The questions to ask together, the best one first."""
        eases = {q.question: q.ease for q in self.questions if q.gain > 0 and q.ease >= ABLE}
        return asked_together(self.left, eases, most)


def _best(questions: Iterable[Weighed]) -> str | None:
    useful = [q for q in questions if q.gain > 0 and q.ease >= ABLE]
    if not useful:
        return None
    return max(useful, key=lambda q: round(q.utility / HAIR)).question  # the first of the best


class Interviewer:
    """Chooses questions for one kind of customer; made once, used for every message."""

    def __init__(
        self, counter: Counter, customer: str = "customer", this_year: int | None = None
    ) -> None:
        self.counter = counter
        self.customer = customer
        self.listed = Listed(counter, this_year)

    def reckoning(self, state: State) -> Reckoning:
        """The hypotheses left, and each question that may still be asked."""
        left = Hypotheses.of(self.counter, state.facts, self.listed)
        return self.reckoned(left, state)

    def reckoned(self, left: Hypotheses, state: State) -> Reckoning:
        """The same of hypotheses that are given."""
        questions = tuple(
            Weighed(name, gain_of(left, name), self.ease(row, state.unknown), row.kind == BY_PERSON)
            for name, row in self.counter.tables.questions.items()
            if not is_answered(name, state)
        )
        return Reckoning(left, left.solds, questions)

    def best(self, state: State) -> str | None:
        """The id of the question to ask, or `None`: it is certain, or nothing narrows further."""
        return self.reckoning(state).best

    def best_set(self, state: State, most: int = 3) -> tuple[str, ...]:
        """The questions to ask together, where a round trip is slow; the best one first."""
        return self.reckoning(state).best_set(most)

    def is_certain(self, state: State) -> bool:
        """Whether the same would be sold whatever is the case."""
        return len(Hypotheses.of(self.counter, state.facts, self.listed).solds) == 1

    def ease(self, row: Question, unknown: frozenset[str]) -> float:
        """The share of such customers who can answer it, after the 'don't know's so far."""
        told = row.ease_staff if self.customer == STAFF else row.ease
        questions = self.counter.tables.questions
        alike = [
            q for q in unknown if row.kind and q in questions and questions[q].kind == row.kind
        ]
        return (USUAL_EASE if told is None else told) * float(LESS_ABLE ** len(alike))


def is_answered(question: str, state: State) -> bool:
    """Whether it was asked, or the letter told it of itself."""
    if question in state.unknown or question in state.asked:
        return True
    if question == "old_part":
        return state.facts.has_of("part_no", "old")
    told = state.facts.named(*TOLD_BY.get(question, (question,)))
    return any(f.sure and not (f.negated and question not in TOLD_BY) for f in told)
