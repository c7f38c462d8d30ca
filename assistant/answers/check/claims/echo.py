"""Saying back what was written: every quotation stands word for word in the letter."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.answers.check.claims.silence import listed
from assistant.answers.check.context import Context, Unreadable
from assistant.answers.check.frames import CLAIM, Frame, Reading
from assistant.answers.check.lookup import cited
from assistant.answers.check.patterns import PIECES
from assistant.answers.check.results import CONTRADICTED, SUPPORTED, Finding
from assistant.answers.check.words import alike

PIECES["quotes"] = "{Q} ((,|and|or|, and) {Q})*"


def quoted(context: Context, quote: str) -> Finding:
    """Whether a quotation stands in the letter, where the letter is at hand."""
    message = context.given.message
    held = message is None or _flat(quote) in _flat(message)
    return Finding(f'"{quote}"', "quotation", SUPPORTED if held else CONTRADICTED, None)


def _flat(text: str) -> str:
    return " ".join(alike(text).casefold().split())


def echo(reading: Reading) -> Sequence[Finding]:
    """'You wrote ...'"""
    reading.context.quotes += tuple(item.values["Q"] for item in reading.items("Q"))
    return []


def read_as(reading: Reading) -> Sequence[Finding]:
    """'I read ... as ...': the name read stands in the tables."""
    echo(reading)
    if reading.items("X"):
        return listed(reading)
    tables = reading.context.given.tables
    makers = [v for item in reading.items("B") for v in item.values["B"]]
    rows = [tables.brands[m] for m in makers if m in tables.brands]
    found = [Finding(reading.words, "listed", SUPPORTED, cited(row)) for row in rows]
    parts = reading.parts("s")
    if parts:
        reading.context.parts, reading.context.old_part = parts, parts[0]
    found += [
        Finding(reading.words, "listed", SUPPORTED, cited(tables.seals[part])) for part in parts
    ]
    if not found:
        raise Unreadable("what was read")
    return found


FRAMES = (
    Frame("echo", "(you|your letter) (wrote|write|say|says|said|mention|mentions|mentioned|gave"
          "|call it|calls it|call|describe|describes|sent) {quotes}", echo),
    Frame("echo", "that agrees with what you wrote : {quotes}", echo),
    Frame("echo", "(i|we) (read|take|took|understand|understood) {Q} (as|to be|to mean|for)"
          " ({t:scopes}|the? {B}|{s:P})", read_as),
    Frame("echo", "that does not agree with {t:scopes} (in (the|our) {tables})?", listed, CLAIM),
)  # fmt: skip
