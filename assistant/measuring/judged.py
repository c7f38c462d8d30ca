"""A reply held against what was labelled: what was named, kept silent, asked and read."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
from scipy.optimize import linear_sum_assignment

from assistant.answers.answer import Answer, Reply
from assistant.measuring.campaign.truth import Truth
from assistant.measuring.conditions import conditions_right, unchanged
from assistant.measuring.messages import Expected, Message, Stated
from assistant.reading.facts import Fact, Facts, Interval

INCH = 25.4  # mm
LENGTHS = frozenset({"opening", "disc", "hinge_width", "tube", "rim", "length"})
# Facts whose labels are whole: what is read beside them was not said.
COUNTED = frozenset(
    {"brand", "model", "model_no", "part_no", "unlisted", "made", "bought", "opening", "disc"}
    | {"hinge_width", "ears", "overflow", "flush", "pieces", "tank_kind"}
)
# In what an answer may not be as labelled, the worst first.
KINDS_OFF = ("wrong parts", "outcome", "no part named", "set", "conditions", "question")


@dataclass(frozen=True)
class Judged:
    """One answer against its label; `None` where a question does not arise."""

    expected: Expected | None  # `None`: an answer that nothing asked for
    answer: Answer | None
    outcome: str | None  # `None`: no answer at all
    named: frozenset[str]
    wrong: frozenset[str]  # named as fitting though they must not be
    exact: bool | None
    conditions: bool | None
    asked_well: bool | None

    @property
    def right_outcome(self) -> bool:
        """Whether the outcome is one of those accepted."""
        return self.expected is not None and self.outcome in self.expected.outcomes

    @property
    def off(self) -> tuple[str, ...]:
        """In what it is not as labelled, the worst first."""
        named = self.answered or self.expected is None or not self.expected.answerable
        found = (
            bool(self.wrong),
            not self.right_outcome,
            not named,
            self.exact is False,
            self.conditions is False,
            self.asked_well is False,
        )
        return tuple(kind for kind, is_off in zip(KINDS_OFF, found, strict=True) if is_off)

    @property
    def answered(self) -> bool:
        """Whether a seal was named."""
        return bool(self.named)

    @property
    def silent(self) -> bool:
        """Whether no seal was named."""
        return not self.named


@dataclass(frozen=True)
class Read:
    """Facts of one name in one message: stated and found, missed, or read and not stated."""

    name: str
    found: int
    missed: int
    beside: int


@dataclass(frozen=True)
class Case:
    """One message with everything that was judged, and how long the reply took."""

    message: Message
    answers: tuple[Judged, ...]
    facts: tuple[Read, ...]
    took_ms: float


def judged(message: Message, reply: Reply, truth: Truth) -> Case:
    """The reply to a message, held against its label."""
    seals = [a for a in reply.answers if str(a.outcome) != "note"] or list(reply.answers)
    wanted = [e for e in message.answers if e.outcomes != ("note",)] or list(message.answers)
    judged_each = [_answer(truth, e, a) for e, a in _paired(wanted, seals)]
    return Case(
        message, tuple(judged_each), tuple(_facts(message.facts, reply.facts)), reply.took_ms
    )


def _paired(
    wanted: Sequence[Expected], given: Sequence[Answer]
) -> list[tuple[Expected | None, Answer | None]]:
    """Each label with the answer that meets it best; ties go by the order asked."""
    cost = np.array([[_unlike(e, a) + abs(i - j) / 100 for j, a in enumerate(given)]
                     for i, e in enumerate(wanted)])  # fmt: skip
    rows, columns = linear_sum_assignment(cost) if cost.size else ((), ())
    met: dict[int, int] = dict(zip(map(int, rows), map(int, columns), strict=True))
    pairs: list[tuple[Expected | None, Answer | None]] = [
        (e, given[met[i]] if i in met else None) for i, e in enumerate(wanted)
    ]
    return [*pairs, *((None, a) for j, a in enumerate(given) if j not in met.values())]


def _unlike(expected: Expected, answer: Answer) -> int:
    """How far an answer is from a label: another outcome, a seal that may not be named."""
    return (str(answer.outcome) not in expected.outcomes) + bool(
        named_by(answer) - expected.may_name
    )


def named_by(answer: Answer) -> frozenset[str]:
    """The seals that an answer names as fitting."""
    return frozenset(part.part_no for part in answer.parts) | frozenset(answer.also_fits)


def _answer(truth: Truth, expected: Expected | None, answer: Answer | None) -> Judged:
    if answer is None:
        return Judged(expected, None, None, frozenset(), frozenset(), _no(expected), None, None)
    named = named_by(answer)
    may = expected.may_name if expected is not None else frozenset()
    wrong = named - may
    if expected is None:
        return Judged(None, answer, str(answer.outcome), named, wrong, None, None, None)
    return Judged(
        expected,
        answer,
        str(answer.outcome),
        named,
        wrong,
        _exact(truth, expected, named) if expected.answerable else None,
        _conditions(truth, expected, answer) if expected.branches and named else None,
        _asked_well(expected, answer) if expected.question else None,
    )


def _no(expected: Expected | None) -> bool | None:
    return False if expected is not None and expected.answerable else None


def _exact(truth: Truth, expected: Expected, named: frozenset[str]) -> bool:
    """Whether all that fit as they are were named, or one under each condition, and no other."""
    if named - expected.may_name:
        return False
    if expected.branches and not expected.parts:
        return all(named & branch.parts for branch in expected.branches if branch.parts)
    return unchanged(truth, expected) <= named


def _conditions(truth: Truth, expected: Expected, answer: Answer) -> bool:
    """Whether what is named under a condition fits just what the condition selects."""
    if str(answer.outcome) == "part":
        return not named_by(answer) - expected.parts or len(expected.branches) == 1
    parts = [(p.part_no, p.position, p.condition or "") for p in answer.parts]
    return conditions_right(truth, expected, parts)


def _asked_well(expected: Expected, answer: Answer) -> bool:
    return answer.question is not None and answer.question.asks in expected.question


def _facts(stated: Sequence[Stated], read: Facts) -> Iterator[Read]:
    names = dict.fromkeys([*(_kind(s.name) for s in stated), *(_kind(f.name) for f in read)])
    for name in names:
        if name not in COUNTED:
            continue
        wanted = [s for s in stated if _kind(s.name) == name]
        there = [f for f in read if _kind(f.name) == name]
        found = sum(any(says(fact, one) for fact in there) for one in wanted)
        beside = sum(not any(says(fact, one) for one in wanted) for fact in there)
        yield Read(name, found, len(wanted) - found, beside)


def _kind(name: str) -> str:
    """A year beside a toilet's name dates its making, whether the writer says so or not."""
    return "made" if name == "year" else name


def says(fact: Fact, stated: Stated) -> bool:
    """Whether a fact says what was stated."""
    if _kind(fact.name) != _kind(stated.name) or fact.negated != stated.negated:
        return False
    if not isinstance(fact.value, Interval):
        return str(stated.value).lower() in {choice.lower() for choice in fact.choices}
    ends = stated.value if isinstance(stated.value, tuple) else (stated.value,)
    try:
        numbers = [float(end) for end in ends]
    except (TypeError, ValueError):
        return False
    if fact.name in LENGTHS and stated.unit == "in":
        numbers = [number * INCH for number in numbers]
    return all(number in fact.value for number in numbers)
