"""Sums over judged messages: what a shop owner asks first, in shares that name their base."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from assistant.measuring.judged import Case, Judged

LENGTHS = ((12, "up to 12 words"), (45, "13 to 45 words"), (10**9, "more than 45 words"))


@dataclass(frozen=True)
class Share:
    """So many of so many; without a base there is no share."""

    count: int
    of: int

    @property
    def share(self) -> float | None:
        """The share from 0 to 1."""
        return self.count / self.of if self.of else None

    def __str__(self) -> str:
        return f"{self.count} of {self.of} ({self.share:.1%})" if self.of else "none"


@dataclass(frozen=True)
class Totals:
    """What a set of messages came to. A seal named wrongly is counted by answer."""

    messages: int
    wrong: Share
    answered: Share
    silent: Share
    outcome: Share
    exact: Share
    conditions: Share
    asked: Share


def totals(cases: Sequence[Case]) -> Totals:
    """The sums over all answers of some messages."""
    every = [answer for case in cases for answer in case.answers]
    labelled = [a for a in every if a.expected is not None]
    answerable = [a for a in labelled if a.expected and a.expected.answerable]
    silent = [a for a in labelled if a.expected and a.expected.must_be_silent]
    return Totals(
        len(cases),
        _share(every, lambda a: bool(a.wrong)),
        _share(answerable, lambda a: a.answered and not a.wrong),
        _share(silent, lambda a: a.silent),
        _share(labelled, lambda a: a.right_outcome),
        _share([a for a in answerable if a.answered], lambda a: bool(a.exact)),
        _share([a for a in labelled if a.conditions is not None], lambda a: bool(a.conditions)),
        _share([a for a in labelled if a.asked_well is not None], lambda a: bool(a.asked_well)),
    )


def _share(answers: Sequence[Judged], holds: Callable[[Judged], bool]) -> Share:
    return Share(sum(map(holds, answers)), len(answers))


def breakdown(cases: Iterable[Case], by: Callable[[Case], Iterable[str]]) -> Mapping[str, Totals]:
    """The totals of each group of messages; a message may stand in several."""
    groups: dict[str, list[Case]] = {}
    for case in cases:
        for name in by(case):
            groups.setdefault(name, []).append(case)
    return {name: totals(groups[name]) for name in sorted(groups)}


def by_kind(case: Case) -> Iterable[str]:
    """The kinds of message that a message is."""
    return case.message.kind


def by_length(case: Case) -> Iterable[str]:
    """How long a message is."""
    words = len(case.message.text.split())
    return (next(name for most, name in LENGTHS if words <= most),)


@dataclass(frozen=True)
class ReadFacts:
    """Facts of one name over all messages."""

    name: str
    precision: Share
    recall: Share


def facts_read(cases: Iterable[Case]) -> list[ReadFacts]:
    """How much of what was stated was read, and how much of what was read was stated."""
    sums: dict[str, list[int]] = {}
    for case in cases:
        for read in case.facts:
            held = sums.setdefault(read.name, [0, 0, 0])
            held[0] += read.found
            held[1] += read.missed
            held[2] += read.beside
    return [
        ReadFacts(name, Share(found, found + beside), Share(found, found + missed))
        for name, (found, missed, beside) in sorted(sums.items())
    ]


def milliseconds(cases: Sequence[Case]) -> tuple[float, float]:
    """The median and the 95th percentile of the time that a reply took."""
    taken = [case.took_ms for case in cases]
    median, late = np.percentile(taken, [50, 95]) if taken else (0.0, 0.0)
    return float(median), float(late)
