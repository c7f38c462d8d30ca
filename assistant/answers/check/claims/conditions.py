"""Conditions, changes, and the reservation that the valve is the original one."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.answers.check.frames import CHANGE, ORIGINAL, SELECTS, WHEN, Frame, Reading
from assistant.answers.check.general_words import plainly
from assistant.answers.check.lookup import verdict
from assistant.answers.check.results import UNKNOWN, Finding, result_of
from assistant.answers.check.scope import Silent


def nothing(reading: Reading) -> Sequence[Finding]:
    """Read where the sentence is put together."""
    return []


def limits(reading: Reading) -> Sequence[Finding]:
    """'Made up to 1993:' before what fits it."""
    context = reading.context
    context.limits = tuple(limit for item in reading.items("O") for limit in item.values["O"])
    context.selected = True
    return []


def change(reading: Reading) -> Sequence[Finding]:
    """What must be done to the part last named before it fits, in a sentence of its own."""
    context = reading.context
    tables = context.given.tables
    parts = reading.subject("s")
    said = {c for item in reading.items("H") for c in item.values["H"]}
    found = []
    for part in parts:
        for scope in reading.scopes():
            try:
                places = scope.places(tables)
            except Silent as silent:
                found.append(Finding(reading.words, silent.rule, UNKNOWN))
                continue
            for place in places:
                held = verdict(tables, part, place)
                result = result_of(said <= {plainly(c) for c in held.changes})
                found.append(Finding(f"{part}: {reading.words}", "change", result, held.row))
    return found


FRAMES = (
    Frame("condition", "(if|when|where|in case)", nothing, WHEN, joins=True),
    Frame("condition", "(the|a)? (one|ones|those)? {O}", limits, SELECTS, before=":"),
    Frame("original-valve", "{original}", nothing, ORIGINAL, joins=True),
    Frame(
        "original-valve",
        "(all of this|this|that|it|all this|the answer) (holds|is so|stands|is true|applies)"
        " {original}",
        nothing,
        ORIGINAL,
    ),
    Frame(
        "change",
        "(once|after|when|if|provided|(with|needs|after) (this|a|the|one) change :?|but) {H}"
        " first?",
        change,
        CHANGE,
        joins=True,
    ),
    Frame("change", "(the|this) change ({is}|:)? {H} first?", change, CHANGE),
    Frame("change", "{H} first?", change, CHANGE),
)
