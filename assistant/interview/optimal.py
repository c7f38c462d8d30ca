"""The fewest questions that any strategy needs, on tables small enough to try them all.

Here every hypothesis has one answer to each question, and every question can be answered. The
measure is the expected number of questions till what would be sold is certain, or till no
question tells those apart that are left.
"""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Callable, Hashable, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from typing import TypeAlias

import numpy as np

from assistant.interview.answering import HAIR, gain_of
from assistant.interview.hypotheses import Hypotheses

Left: TypeAlias = frozenset[int]  # hypotheses by their place in the table
Policy: TypeAlias = Callable[[Left], str | None]

MOST = 16  # hypotheses: their sets are all tried


@dataclass(frozen=True)
class Table:
    """Hypotheses with their weight, what would be sold, and their answer to each question."""

    weights: tuple[float, ...]
    sold: tuple[Hashable, ...]
    answers: Mapping[str, tuple[Hashable, ...]]

    @property
    def everything(self) -> Left:
        """All hypotheses."""
        return frozenset(range(len(self.weights)))

    def weight(self, left: Left) -> float:
        """The weight of some hypotheses."""
        return math.fsum(self.weights[at] for at in left)

    def parts(self, left: Left, question: str) -> list[Left]:
        """What each answer leaves of some hypotheses."""
        found: dict[Hashable, set[int]] = defaultdict(set)
        for at in sorted(left):
            found[self.answers[question][at]].add(at)
        return [frozenset(part) for part in found.values()]

    @cached_property
    def settled(self) -> tuple[Hashable, ...]:
        """What can be known of each hypothesis at best.

        That is what would be sold, or all that it may be among those that answer alike.
        """
        alike: dict[Hashable, set[Hashable]] = defaultdict(set)
        told = [tuple(column[at] for column in self.answers.values()) for at in self.everything]
        for at, answers in enumerate(told):
            alike[answers].add(self.sold[at])
        return tuple(frozenset(alike[answers]) for answers in told)

    def is_settled(self, left: Left) -> bool:
        """Whether nothing more can be known."""
        return len({self.settled[at] for at in left}) <= 1

    def splitting(self, left: Left) -> list[str]:
        """The questions that tell some of the hypotheses apart, in order."""
        return [question for question in self.answers if len(self.parts(left, question)) > 1]


def optimal_questions(table: Table) -> float:
    """The expected number of questions of the best strategy there is.

    Raises:
        ValueError: there are too many hypotheses to try every set of them.
    """
    if len(table.weights) > MOST:
        raise ValueError(f"{len(table.weights)} hypotheses are more than {MOST}")
    total = table.weight(table.everything)
    found: dict[Left, float] = {}

    def asked(left: Left) -> float:
        """The weight of all questions asked from here on."""
        if table.is_settled(left):
            return 0.0
        if left not in found:
            found[left] = table.weight(left) + min(
                math.fsum(asked(part) for part in table.parts(left, question))
                for question in table.splitting(left)
            )
        return found[left]

    return asked(table.everything) / total


def expected_questions(policy: Policy, table: Table) -> float:
    """The expected number of questions that a policy asks.

    Where it stops too early, or asks what tells nothing, the first question that tells some of
    the hypotheses apart is asked instead: giving up is never cheaper than going on.
    """

    def asked(left: Left) -> float:
        if table.is_settled(left):
            return 0.0
        able = table.splitting(left)
        question = policy(left)
        parts = table.parts(left, question if question in able else able[0])
        return table.weight(left) + math.fsum(asked(part) for part in parts)

    return asked(table.everything) / table.weight(table.everything)


def entropy_bound(table: Table) -> float:
    """Fewer questions nobody needs: the bits to be known over the bits that an answer can hold."""
    weights: dict[Hashable, float] = defaultdict(float)
    for at, settled in enumerate(table.settled):
        weights[settled] += table.weights[at]
    total = math.fsum(weights.values())
    bits = -math.fsum(w / total * math.log2(w / total) for w in weights.values() if w > 0)
    most = max((len({*column}) for column in table.answers.values()), default=1)
    return bits / math.log2(most) if most > 1 else 0.0


def table_of(left: Hypotheses, questions: Sequence[str]) -> Table:
    """The listed hypotheses as a table of some questions, without the two open ones.

    An empty cell is an answer of its own here. Questions whose answer is not told by the
    hypothesis alone, as a year within a span, are left out.
    """
    columns = [left.listed.columns[name] for name in questions if name in left.listed.columns]
    return Table(
        tuple(left.weight.tolist()),
        tuple(left.listed.seller.solds[sold] for sold in left.sold.tolist()),
        {c.name: tuple(c.of_row[left.rows].tolist()) for c in columns if c.is_plain},
    )


def by_information(left: Hypotheses, questions: Sequence[str]) -> Policy:
    """The interviewer's way on such a table, where every question is as easy as another."""

    def policy(some: Left) -> str | None:
        rows = np.array(sorted(some), dtype=np.int64)
        there = replace(
            left, rows=left.rows[rows], weight=left.weight[rows], sold=left.sold[rows],
            valve=np.zeros_like(left.valve), unlisted=0.0,
        )  # fmt: skip
        gains = {name: gain_of(there, name) for name in questions}
        best = max(questions, key=lambda name: round(gains[name] / HAIR))
        return best if gains[best] > 0 else None

    return policy
