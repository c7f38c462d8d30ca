"""Every rule on everything of a shop."""

from __future__ import annotations

import gc
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager
from datetime import date
from itertools import islice
from pathlib import Path

from assistant.linting.finding import Finding, Rule
from assistant.linting.gather import gather
from assistant.linting.rules import RULES

Found = tuple[Rule, Finding]
MOST = 10_000  # of one rule
Tell = Callable[[str], None]


def lint(folder: Path, today: date, oldest: int, tell: Tell = lambda step: None) -> list[Found]:
    """What the rules find, in the order of path and line.

    `tell` hears of each step before it is taken.

    Raises:
        KnowledgeError: the folder is no shop's.
    """
    with _without_collecting():
        tell("reading the shop")
        gathered = gather(folder, today, oldest)
        found: list[Found] = []
        for rule in RULES:
            tell(f"at the rule '{rule.name}'")
            found += [(rule, finding) for finding in _some(rule.find(gathered))]
    found.sort(key=lambda one: (one[1].path, one[1].line))
    return found


def _some(findings: Iterable[Finding]) -> Iterator[Finding]:
    """The findings of a rule, up to so many that nobody reads on, and then that there are more."""
    left = iter(findings)
    yield from islice(left, MOST)
    if (last := next(left, None)) is not None:
        yield Finding(
            path=last.path,
            line=last.line,
            what=f"there are more than {MOST:,} findings of this kind, and from here on they are "
            "not listed",
            mend="mend those above, and look again",
        )


@contextmanager
def _without_collecting() -> Iterator[None]:
    """A million rows in hand would be walked through again and again, for nothing to throw away."""
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            gc.enable()
