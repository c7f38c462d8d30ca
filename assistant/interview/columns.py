"""What each hypothesis would answer to a question: one column of values, and how they are told.

A value need not be told in one way: a seal that may hang on pegs or sit on the ring is told as
one or the other, and a build made for twenty years bears any of their dates.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterable
from dataclasses import dataclass, field
from functools import cached_property

import numpy as np

from assistant.interview.information import Floats, Ints, totals

NOT_KNOWN = -1


def coded(cells: Iterable[Hashable | None]) -> tuple[tuple[Hashable, ...], Ints]:
    """The different values, and for each cell which of them it holds.

    Values are put in an order of their own, so that nothing hangs on the order of a table's rows.
    """
    listed = list(cells)
    values = sorted({cell for cell in listed if cell is not None}, key=repr)
    code: dict[Hashable | None, int] = {value: at for at, value in enumerate(values)}
    return tuple(values), np.array([code.get(c, NOT_KNOWN) for c in listed], dtype=np.int64)


@dataclass(frozen=True)
class Column:
    """The values of one question over the listed hypotheses and over the valves.

    `of_valve` is `None` for what is asked about the toilet: a valve put in later says nothing
    of it. `others` is the value of a toilet that the table does not list, where it has one.
    """

    name: str
    values: tuple[Hashable, ...]
    of_row: Ints
    of_valve: Ints | None = None
    others: int | None = None
    _pairs: list[tuple[Ints, Ints, Ints]] = field(default_factory=list, compare=False, repr=False)

    @property
    def is_plain(self) -> bool:
        """Whether a value is told in one way only."""
        return True

    @property
    def answers(self) -> tuple[Hashable, ...]:
        """Everything that may be told."""
        return self.values

    def told(self, value: Ints, sold: Ints, weight: Floats) -> tuple[Ints, Ints, Floats]:
        """Values, each with what is sold, as the answers in which they are told."""
        return value, sold, weight

    def likelihood(self, answer: int) -> Floats:
        """For each value, how often it is told so."""
        return np.asarray(np.arange(len(self.values)) == answer, dtype=np.float64)

    def pairs(self, sold: Ints) -> tuple[Ints, Ints, Ints]:
        """Each row's pair of value and thing sold, and the pairs; made once for all rows."""
        if not self._pairs:
            kinds = int(sold.max(initial=0)) + 1
            pairs, place = np.unique((self.of_row + 1) * kinds + sold, return_inverse=True)
            self._pairs.append((place.astype(np.int64), pairs // kinds - 1, pairs % kinds))
        return self._pairs[0]


@dataclass(frozen=True)
class Ways(Column):
    """Each value is a set of ways, and one of them is told, any as often as another."""

    @property
    def is_plain(self) -> bool:
        """Only if none holds several."""
        return all(len(ways) == 1 for ways in self._ways)

    @property
    def _ways(self) -> list[tuple[Hashable, ...]]:
        return [value for value in self.values if isinstance(value, tuple)]

    @cached_property
    def answers(self) -> tuple[Hashable, ...]:
        """Every way."""
        return tuple(dict.fromkeys(way for ways in self._ways for way in ways))

    @cached_property
    def _told(self) -> Floats:
        """For each value, the share of each way."""
        found = np.zeros((len(self.values), len(self.answers)))
        for at, ways in enumerate(self._ways):
            for way in ways:
                found[at, self.answers.index(way)] += 1 / len(ways)
        return found

    def told(self, value: Ints, sold: Ints, weight: Floats) -> tuple[Ints, Ints, Floats]:
        """Each value's weight spread over its ways."""
        row, answer = np.nonzero(self._told[value])
        return answer, sold[row], weight[row] * self._told[value[row], answer]

    def likelihood(self, answer: int) -> Floats:
        """The share of the way in each value."""
        found: Floats = self._told[:, answer]
        return found


@dataclass(frozen=True)
class Years(Column):
    """Each value is a first and a last year, and any year between may be told."""

    @property
    def is_plain(self) -> bool:
        """Never: a date is one of many."""
        return False

    @cached_property
    def answers(self) -> tuple[Hashable, ...]:
        """Every year from the first to the last."""
        if not self.values:
            return ()
        return tuple(range(int(self._spans[:, 0].min()), int(self._spans[:, 1].max()) + 1))

    @cached_property
    def _spans(self) -> Ints:
        return np.array(self.values, dtype=np.int64).reshape(-1, 2)

    @cached_property
    def _places(self) -> tuple[Ints, Ints, Floats]:
        """The first and the last of the years by their place, and each one's share."""
        spans = self._spans - self._spans[:, 0].min(initial=9999)
        return spans[:, 0], spans[:, 1], 1.0 / (spans[:, 1] - spans[:, 0] + 1)

    def told(self, value: Ints, sold: Ints, weight: Floats) -> tuple[Ints, Ints, Floats]:
        """Each value's weight spread evenly over its years: added where it begins, taken away
        where it ends, and summed up.
        """
        first, last, share = self._places
        kinds, different = np.unique(sold, return_inverse=True)
        size = (len(self.answers) + 1) * len(kinds)
        each = weight * share[value]
        change = totals(first[value] * len(kinds) + different, each, size)
        change -= totals((last[value] + 1) * len(kinds) + different, each, size)
        # An end leaves a hair of weight behind, which must not pass for a hypothesis.
        spans = np.bincount(first[value] * len(kinds) + different, minlength=size)
        spans -= np.bincount((last[value] + 1) * len(kinds) + different, minlength=size)
        shape = (len(self.answers) + 1, len(kinds))
        by_year = np.cumsum(change.reshape(shape), axis=0)
        year, kind = np.nonzero(np.cumsum(spans.reshape(shape), axis=0))
        return year, kinds[kind], np.maximum(by_year[year, kind], 0.0)

    def likelihood(self, answer: int) -> Floats:
        """The share of the year in each span."""
        first, last, share = self._places
        return np.where((first <= answer) & (answer <= last), share, 0.0)
