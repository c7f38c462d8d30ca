"""A reply held against what was labelled: what was named, kept silent, asked and read."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import zip_longest

from assistant.answers.answer import Answer, Reply
from assistant.measuring.messages import Expected, Message, Stated
from assistant.reading.facts import Fact, Facts, Interval

INCH = 25.4  # mm
LENGTHS = frozenset({"opening", "disc", "hinge_width", "tube", "rim", "length"})
# Facts whose labels are whole: what is read beside them was not said.
COUNTED = frozenset(
    {"brand", "model", "model_no", "part_no", "unlisted", "made", "bought", "opening", "disc"}
    | {"hinge_width", "ears", "overflow", "flush", "pieces", "tank_kind"}
)
_NUMBER = re.compile(r"\d+(?:\.\d+)?")


@dataclass(frozen=True)
class Judged:
    """One answer against its label; `None` where a question does not arise."""

    expected: Expected | None  # `None`: an answer that nothing asked for
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


def judged(message: Message, reply: Reply) -> Case:
    """The reply to a message, held against its label."""
    seals = [a for a in reply.answers if str(a.outcome) != "note"] or list(reply.answers)
    wanted = [e for e in message.answers if e.outcomes != ("note",)] or list(message.answers)
    paired = [_answer(e, a) for e, a in zip_longest(wanted, seals)]
    return Case(message, tuple(paired), tuple(_facts(message.facts, reply.facts)), reply.took_ms)


def named_by(answer: Answer) -> frozenset[str]:
    """The seals that an answer names as fitting."""
    return frozenset(part.part_no for part in answer.parts) | frozenset(answer.also_fits)


def _answer(expected: Expected | None, answer: Answer | None) -> Judged:
    if answer is None:
        return Judged(expected, None, frozenset(), frozenset(), _no(expected), None, None)
    named = named_by(answer)
    may = expected.may_name if expected is not None else frozenset()
    wrong = named - may
    if expected is None:
        return Judged(None, str(answer.outcome), named, wrong, None, None, None)
    return Judged(
        expected,
        str(answer.outcome),
        named,
        wrong,
        named == may if expected.answerable else None,
        _conditions(expected, answer) if expected.branches and named else None,
        _asked_well(expected, answer) if expected.question else None,
    )


def _no(expected: Expected | None) -> bool | None:
    return False if expected is not None and expected.answerable else None


def _conditions(expected: Expected, answer: Answer) -> bool:
    """Whether each seal stands under figures of a branch that holds it."""
    return all(
        any(
            part.part_no in branch.parts
            and (_figures(branch.condition) == _figures(part.condition or "") or not part.condition)
            for branch in expected.branches
        )
        for part in answer.parts
    )


def _figures(condition: str) -> frozenset[str]:
    return frozenset(_NUMBER.findall(condition))


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
