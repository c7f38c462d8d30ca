"""Times things against each other in one run: machines are noisy, ratios less so."""

from __future__ import annotations

import os
import statistics
import subprocess
import sys
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass

Work = Callable[[], object]


@dataclass(frozen=True)
class Ratio:
    """A figure against its goal. `at_most` is false where more is better."""

    what: str
    value: float
    goal: float
    at_most: bool = True

    @property
    def reached(self) -> bool:
        """Whether the goal is reached."""
        return self.value <= self.goal if self.at_most else self.value >= self.goal


@dataclass(frozen=True)
class Measured:
    """What a benchmark found: ratios against goals, and plain figures with their unit."""

    ratios: tuple[Ratio, ...]
    figures: tuple[tuple[str, str], ...] = ()


def seconds(work: Work) -> float:
    """How long a piece of work takes, once."""
    began = time.perf_counter()
    work()
    return time.perf_counter() - began


def by_turns(*works: Work, rounds: int) -> list[float]:
    """The median seconds of each piece of work, all done in turns so that noise hits all alike."""
    times: list[list[float]] = [[] for _ in works]
    for _ in range(rounds):
        for at, work in enumerate(works):
            times[at].append(seconds(work))
    return [statistics.median(taken) for taken in times]


@dataclass(frozen=True)
class Process:
    """How a process of its own went: seconds, and its largest memory in MiB."""

    seconds: float
    peak_mib: float


def process(arguments: Sequence[str]) -> Process:
    """Runs this Python with some arguments to its end.

    Raises:
        RuntimeError: it failed.
    """
    began = time.perf_counter()
    child = subprocess.Popen(
        [sys.executable, *arguments], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL
    )
    _, status, usage = os.wait4(child.pid, 0)
    took = time.perf_counter() - began
    child.returncode = os.waitstatus_to_exitcode(status)
    if child.returncode:
        raise RuntimeError(f"python {' '.join(arguments)} ended with {child.returncode}")
    return Process(took, usage.ru_maxrss / 1024)


def ms(seconds_taken: float) -> str:
    """Seconds as milliseconds."""
    return f"{seconds_taken * 1000:.1f} ms"
