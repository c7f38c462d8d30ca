"""The benchmarks, one after the other, and their report."""

from __future__ import annotations

import os
import platform
import resource
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass

from assistant.measuring.benches import (
    answering,
    asking,
    building,
    deciding,
    linting,
    nearest,
    starting,
)
from assistant.measuring.timing import Measured

Run = Callable[[], Measured]
BENCHES: dict[str, Run] = {
    "starting": starting.run,  # first: a process started later would count this one's memory as its
    "answering": answering.run,
    "asking": asking.run,
    "building": building.run,
    "deciding": deciding.run,
    "linting": linting.run,
    "nearest": nearest.run,
}


@dataclass(frozen=True)
class Benched:
    """What one benchmark found, and the most memory that this process took so far."""

    name: str
    measured: Measured
    peak_mib: float


def bench(names: Iterable[str]) -> Iterator[Benched]:
    """Runs the benchmarks of these names, and gives each as it is done."""
    for name in names:
        measured = BENCHES[name]()
        yield Benched(name, measured, resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024)


def lines(benched: Benched) -> list[str]:
    """One benchmark for people: each ratio with its goal, then the figures behind it."""
    found = []
    for ratio in benched.measured.ratios:
        sign = "≤" if ratio.at_most else "≥"
        reached = "reached" if ratio.reached else "NOT reached"
        found.append(f"{ratio.value:8.3f}  {ratio.what} (goal {sign} {ratio.goal:g}: {reached})")
    found += [f"          {what}: {value}" for what, value in benched.measured.figures]
    return [*found, f"          most memory so far: {benched.peak_mib:.0f} MiB"]


def machine() -> str:
    """On what the figures were taken."""
    cores = len(os.sched_getaffinity(0))
    return f"Python {platform.python_version()}, {platform.machine()}, {cores} cores"
