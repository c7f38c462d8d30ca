"""Choosing the seal in a table of a million pieces of evidence, against encoding one message."""

from __future__ import annotations

import gc
import itertools
from collections.abc import Iterator

from assistant.fitment.decide import Counter, counter_for, decide
from assistant.measuring.generated import TRIED, tables_with, told_of
from assistant.measuring.timing import Measured, Ratio, by_turns, ms
from assistant.search.model import Model

LARGE = 1_000_000
MESSAGE = "Which flapper do I need for a Bench Model42 from 1968?"


def run() -> Measured:
    """Fitment ÷ encoding, and its growth for ten times the rows."""
    model = Model()
    model.encode([MESSAGE])
    times = {}
    encoding = 0.0
    for size in (LARGE // 10, LARGE):
        counter = counter_for(tables_with(size), ("in stock", "price"))
        gc.freeze()  # a million rows are not walked through again and again
        models = itertools.cycle(range(0, size // TRIED, max(1, size // TRIED // 50)))

        def one(counter: Counter = counter, models: Iterator[int] = models) -> None:
            decide(counter, told_of(next(models), 1968))

        one()  # the tables' own look-ups are made once
        times[size], encoding = by_turns(one, lambda: model.encode([MESSAGE]), rounds=200)
        gc.unfreeze()
        del counter
    return Measured(
        (
            Ratio(f"a decision on {LARGE:,} pieces of evidence ÷ encoding a message",
                  times[LARGE] / encoding, 1.0),
            Ratio("its growth for ten times the rows", times[LARGE] / times[LARGE // 10], 2.0),
        ),
        (("a decision", ms(times[LARGE])), ("encoding", ms(encoding))),
    )  # fmt: skip
