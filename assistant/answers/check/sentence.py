"""One sentence: read it in every way the frames allow, and look its claims up."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from assistant.answers.check.chunks import chunk
from assistant.answers.check.claims.echo import quoted
from assistant.answers.check.context import Context, Unreadable
from assistant.answers.check.frames import AHEAD, IS_MODEL, SELECTS, Reading
from assistant.answers.check.grouping import Clause, Grouping
from assistant.answers.check.line import Line, line_of
from assistant.answers.check.parse import Piece, covers
from assistant.answers.check.results import UNKNOWN, Finding

# A name of a seal may be made of words that describe it: if the names do not hold, the words may.
NAMES_UNREAD: tuple[frozenset[str], ...] = (frozenset(), frozenset("S"))


@dataclass(frozen=True)
class Judged:
    """The findings on a sentence, and the context after it."""

    findings: tuple[Finding, ...]
    context: Context
    original: bool = False

    @property
    def sound(self) -> bool:
        """Whether every claim is supported."""
        return all(finding.sound for finding in self.findings)


def judge_sentence(text: str, context: Context) -> Judged:
    """The first reading whose claims all hold, or else the first that is a reading at all."""
    first: Judged | None = None
    given = context.given
    for without in NAMES_UNREAD:
        line = line_of(text, given.lexicon, given.currency, without)
        if line is None:
            break
        chunk(line)
        quotes = [quoted(context, i.values["Q"]) for i in line.items if "Q" in i.values]
        for pieces in covers(line):
            found = _judge(line, pieces, context.copy(), quotes)
            if found is None:
                continue
            if found.sound:
                return found
            first = first or found
            if any(f.result == "contradicted" for f in found.findings):
                break
    return first or Judged((Finding(text, "reading", UNKNOWN),), context)


def _judge(
    line: Line, pieces: Sequence[Piece], context: Context, quotes: Sequence[Finding]
) -> Judged | None:
    findings = [*quotes]
    try:
        grouped = Grouping(line).of(pieces)
        for clause in grouped.clauses:
            findings += _read(line, clause, context)
    except Unreadable:
        return None
    if context.topic and line.mark != ":":
        return None
    context.topic = False
    return Judged(tuple(findings), context, grouped.original)


def _read(line: Line, clause: Clause, context: Context) -> Sequence[Finding]:
    frame = clause.piece.frame
    assert frame is not None
    reading = Reading(context, line, clause.piece.match, frame.role)
    if frame.role in (SELECTS, AHEAD):
        return frame.findings(reading)
    if frame.role == IS_MODEL:
        raise Unreadable("which model it is")
    kept = context.limits, context.selected, context.changes_said
    for piece in clause.named_in:
        Reading(context, line, piece.match).scopes("t")
    if clause.limits or clause.named_in:
        context.limits = (*context.limits, *clause.limits)
        context.selected = True
    if clause.change is not None:
        items = line.within(clause.change.words, "H")
        context.changes_said = frozenset(c for item in items for c in item.values["H"])
    found = frame.findings(reading)
    context.limits, context.selected, context.changes_said = kept
    return found
