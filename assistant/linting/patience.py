"""Tells which step takes long, and nothing where none does."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from threading import Timer

PATIENCE = 2.0  # seconds without a word

Say = Callable[[str], None]


@contextmanager
def told_where_slow(say: Say) -> Iterator[Say]:
    """Takes in each step as it begins, and says it once it has run for a while."""
    running: list[Timer] = []

    def stop() -> None:
        while running:
            running.pop().cancel()

    def tell(step: str) -> None:
        stop()
        running.append(Timer(PATIENCE, say, [step]))
        running[-1].daemon = True
        running[-1].start()

    try:
        yield tell
    finally:
        stop()
