"""What several rules look up in the same knowledge is worked out once."""

from __future__ import annotations

import weakref
from collections.abc import Callable
from functools import wraps
from typing import TypeVar

from assistant.linting.gathered import Gathered

T = TypeVar("T")


def once(work: Callable[[Gathered], T]) -> Callable[[Gathered], T]:
    """The same work, done at the first call and kept as long as the knowledge lives."""
    kept: dict[int, tuple[weakref.ref[Gathered], T]] = {}

    @wraps(work)
    def done(gathered: Gathered) -> T:
        key = id(gathered)
        held = kept.get(key)
        if held is None or held[0]() is not gathered:
            gone = weakref.ref(gathered, lambda _: kept.pop(key, None))
            held = kept[key] = gone, work(gathered)
        return held[1]

    return done
