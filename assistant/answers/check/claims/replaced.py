"""Replaced numbers: which part took the place of which, and what that says of fit."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.answers.check.context import Unreadable
from assistant.answers.check.frames import Frame, Reading
from assistant.answers.check.lookup import chain_reaches, cited
from assistant.answers.check.old_part import everywhere
from assistant.answers.check.patterns import PIECES
from assistant.answers.check.results import CONTRADICTED, SUPPORTED, Finding


def replaces(reading: Reading) -> Sequence[Finding]:
    """The new part's number took the old one's place, in one step or more."""
    return _replaced(reading, reading.subject("s"), _old(reading, "o"))


def replaced_by(reading: Reading) -> Sequence[Finding]:
    """The same the other way round; after it 'it' would be either of the two."""
    old = reading.subject("s")
    found = _replaced(reading, reading.parts("n"), old)
    reading.context.parts = ()
    return found


def takes_its_place(reading: Reading) -> Sequence[Finding]:
    """'... is no longer made; ... takes its place.'"""
    context = reading.context
    old = context.parts if len(context.parts) == 1 else ()
    return _replaced(reading, reading.parts("s"), old)


def wherever(reading: Reading) -> Sequence[Finding]:
    """The new part fits every place where the old one has evidence that it does."""
    new, old = reading.subject("s"), reading.parts("o")
    reading.context.parts = new
    reading.context.old_part = old[0]
    return [everywhere(reading.context.given.tables, n, o) for n in new for o in old]


def again(reading: Reading) -> Sequence[Finding]:
    """The same part again: it must still be sold."""
    parts = reading.parts("s") or reading.context.parts
    seals = [reading.context.given.tables.seals[part] for part in parts]
    if not seals:
        raise Unreadable("which part is meant")
    reading.context.parts, reading.context.old_part = parts, parts[0]
    return [
        Finding(
            f"{s.part_no} can be had again",
            "status",
            CONTRADICTED if s.status == "discontinued" else SUPPORTED,
            cited(s),
        )
        for s in seals
    ]


def _old(reading: Reading, label: str) -> tuple[str, ...]:
    if named := reading.parts(label):
        return named
    parts = reading.context.parts
    if reading.text(label).split() == ["it"] and len(parts) == 1:
        return parts
    raise Unreadable("which part is replaced")


def _replaced(reading: Reading, new: Sequence[str], old: Sequence[str]) -> list[Finding]:
    tables = reading.context.given.tables
    if not new or not old:
        raise Unreadable("which part is replaced")
    reading.context.parts, reading.context.old_part = tuple(new), old[-1]
    return [
        Finding(
            f"{n} replaces {o}",
            "replaced-by",
            SUPPORTED if chain_reaches(tables, o, n) else CONTRADICTED,
            cited(tables.seals[o]),
        )
        for n in new
        for o in old
    ]


PIECES["old"] = "({parts}|it)"

FRAMES = (
    Frame("replaced", "{s:part}? {adv}* (replaces|replace|replaced|supersedes|succeeds"
          "|takes the place of|took the place of|{is} the replacement (for|of)"
          "|{is} sold instead of|stands in for) {o:old}", replaces),
    Frame("replaced", "{s:part}? ({is}|has been) (replaced|superseded|succeeded) by {n:parts}",
          replaced_by),
    Frame("replaced", "{s:parts} (takes|took|has taken) its place", takes_its_place),
    Frame("wherever", "{s:part}? {adv}* (fits|fit|closes|close|suits|suit|goes|go)"
          " (wherever|everywhere) {o:P} (did|does|do|fits|fitted|went|closed)", wherever),
    Frame("wherever", "{s:part}? {adv}* (fits|fit|closes|close|suits|suit) (every|all|each)"
          " (valve|valves) (in (the|our) {tables})? that? {o:P}"
          " (fits|fitted|does|did|closes|closed)", wherever),
    Frame("again", "you can have {s:P} again", again),
    Frame("again", "you can have the same again", again),
)  # fmt: skip
