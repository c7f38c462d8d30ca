"""FAISS among a million passages: how much it finds of what an exact search finds, how fast."""

from __future__ import annotations

import itertools
import time

import faiss

from assistant.measuring.generated import clustered
from assistant.measuring.timing import Measured, Ratio, by_turns, ms
from assistant.search.vectors import index_of, nearest

LARGE = 1_000_000
QUERIES = 200
BEST = 10


def run() -> Measured:
    """Recall@10 against the exact search, and the speed of one query after another."""
    vectors, queries = clustered(LARGE, QUERIES)
    began = time.perf_counter()
    index = index_of(vectors)
    built = time.perf_counter() - began
    exact = faiss.IndexFlatIP(vectors.shape[1])
    exact.add(vectors)
    _, truth = exact.search(queries, BEST)
    found = [nearest(index, query, BEST)[0] for query in queries]
    held = [len({*own.tolist()} & {*all_.tolist()}) for own, all_ in zip(found, truth, strict=True)]
    some, others = itertools.cycle(queries), itertools.cycle(queries)
    quick, slow = by_turns(
        lambda: nearest(index, next(some), BEST), lambda: nearest(exact, next(others), BEST),
        rounds=100,
    )  # fmt: skip
    return Measured(
        (
            Ratio(f"recall@{BEST} among {LARGE:,} passages", sum(held) / len(held) / BEST, 0.98,
                  at_most=False),
            Ratio("exact search ÷ FAISS", slow / quick, 10.0, at_most=False),
        ),
        (("a query", ms(quick)), ("an exact query", ms(slow)), ("building", f"{built:.0f} s")),
    )  # fmt: skip
