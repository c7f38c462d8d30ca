"""The benchmarks, one after the other, and their report."""

from __future__ import annotations

import platform
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass

from assistant.measuring.benches import answering, building, deciding, nearest, starting
from assistant.measuring.timing import Measured

Run = Callable[[], Measured]
BENCHES: dict[str, Run] = {
    "answering": answering.run,
    "starting": starting.run,
    "building": building.run,
    "deciding": deciding.run,
    "nearest": nearest.run,
}


@dataclass(frozen=True)
class Benched:
    """What one benchmark found."""

    name: str
    measured: Measured


def bench(names: Iterable[str]) -> Iterator[Benched]:
    """Runs the benchmarks of these names, and gives each as it is done."""
    for name in names:
        yield Benched(name, BENCHES[name]())


def lines(benched: Benched) -> list[str]:
    """One benchmark for people: each ratio with its goal, then the figures behind it."""
    found = []
    for ratio in benched.measured.ratios:
        sign = "≤" if ratio.at_most else "≥"
        reached = "reached" if ratio.reached else "NOT reached"
        found.append(f"{ratio.value:8.3f}  {ratio.what} (goal {sign} {ratio.goal:g}: {reached})")
    found += [f"          {what}: {value}" for what, value in benched.measured.figures]
    return found


def machine() -> str:
    """On what the figures were taken."""
    return f"Python {platform.python_version()}, {platform.machine()}, {_cores()} cores"


def _cores() -> int:
    import os

    return len(os.sched_getaffinity(0))
