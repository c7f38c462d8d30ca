"""Years of making: as they are worded, and as the builds of a model hold them."""

from __future__ import annotations

import re
from collections.abc import Sequence
from datetime import date

from assistant.answers.check.items import Item
from assistant.answers.check.line import Line
from assistant.answers.check.patterns import compiled
from assistant.records.cells import OPEN_FROM, OPEN_TO
from assistant.records.rows import Build

Span = tuple[int, int]  # first and last year; the open ones as the tables keep them

_WORDINGS: tuple[tuple[str, str], ...] = (
    ("between {Y} and {Y}", "range"),
    ("from {Y} (to|until|through|up to|-) {Y}", "range"),
    ("{Y} (to|until|through|-) {Y}", "range"),
    ("from? {Y} (on|onward|onwards|or later|and later|and after)", "since"),
    ("(since|after) {Y}", "since"),
    ("(up to|until|till|before|to the end of) {Y} (or earlier)?", "until"),
    ("{Y} (or|and) earlier", "until"),
    ("(in the year|in) {Y}", "in"),
    ("of any year", "any"),
)


def read_years(line: Line) -> None:
    """Puts one item for each stretch of years in the line."""
    for pattern, how in _COMPILED:
        line.rewrite(pattern, lambda match, how=how: _span(line, match, how))  # type: ignore[misc]


_COMPILED = [(compiled(pattern), how) for pattern, how in _WORDINGS]


def _span(line: Line, match: re.Match[str], how: str) -> dict[str, Span] | None:
    years = [item.values["Y"] for item in line.within(match.group(), "Y")]
    words = match.group()
    if how == "any":
        return {"R": (OPEN_FROM, OPEN_TO)}
    if how == "range":
        return {"R": (years[0], years[1])} if years[0] <= years[1] else None
    if how == "since":
        return {"R": (years[0] + (1 if " after <" in words else 0), OPEN_TO)}
    if how == "until":
        return {"R": (OPEN_FROM, years[0] - (1 if " before <" in words else 0))}
    return {"R": (years[0], years[0])}


def spans(items: Sequence[Item]) -> tuple[Span, ...]:
    """The years that items stand for."""
    return tuple(item.values["R"] for item in items if "R" in item.values)


def known(build: Build) -> bool:
    """Whether the table says when a build began and ended (either may be open)."""
    return build.made_from is not None and build.made_to is not None


def _span_of(build: Build) -> Span | None:
    if build.made_from is None or build.made_to is None:
        return None
    return build.made_from, build.made_to


def states_run(builds: Sequence[Build], span: Span) -> bool:
    """Whether the span is exactly a build's, or that of a run of adjoining builds."""
    held = sorted(s for b in builds if (s := _span_of(b)))
    reached = {to for begin, to in held if begin == span[0] and to <= span[1]}
    for begin, to in held:
        if to <= span[1] and any(span[0] <= begin <= end + 1 for end in reached):
            reached.add(to)
    return span[1] in reached


EARLIEST = 1880  # tanks of pressed clay with a seal of rubber are no older


def holds_year(build: Build, year: int) -> bool | None:
    """Whether a build was made in a year; `None` where the table does not say.

    An open end is no end that anybody knows; it reaches no year beyond memory or to come.
    """
    if not EARLIEST <= year <= date.today().year:
        return False
    if build.made_from is not None and year < build.made_from:
        return False
    if build.made_to is not None and year > build.made_to:
        return False
    return True if known(build) else None


def meets(build: Build, span: Span) -> bool:
    """Whether a build may have been made in any year of the span."""
    before = build.made_to is not None and build.made_to < span[0]
    after = build.made_from is not None and build.made_from > span[1]
    return not before and not after


def runs(builds: Sequence[Build]) -> list[Span]:
    """The longest runs of adjoining builds."""
    found: list[Span] = []
    for begin, to in sorted(s for b in builds if (s := _span_of(b))):
        if found and begin <= found[-1][1] + 1:
            found[-1] = found[-1][0], max(found[-1][1], to)
        else:
            found.append((begin, to))
    return found
