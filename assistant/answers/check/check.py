"""Reads the final text of an answer again and lets through what the tables support."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.answers.check import markdown
from assistant.answers.check.context import Context, Given
from assistant.answers.check.general import Statement, Statements
from assistant.answers.check.lexicon import lexicon_of
from assistant.answers.check.results import Audience, Check, Checked
from assistant.answers.check.walk import Walk
from assistant.records.tables import Tables


def check(
    text: str,
    tables: Tables,
    *,
    audience: Audience,
    statements: Sequence[Statement] | Statements = (),
    message: str | None = None,
    valve_is_original: bool = False,
    currency: str = "$",
) -> Checked:
    """What of an answer may be shown, and why the rest may not.

    `text` is Markdown; `message` the letter that quotations must come from, if it is at hand.
    A sentence with any claim that the tables do not support is taken out, and the rest is
    read again until all that is left stands by itself.
    """
    given = Given(tables, lexicon_of(tables), audience, message, currency)
    held = statements if isinstance(statements, Statements) else Statements(statements)
    fallen: list[Check] = []
    taken: list[str] = []
    while True:
        document = markdown.parse(text, given.lexicon)
        walk = Walk(Context(given), held, valve_is_original=valve_is_original)
        walk.through(document)
        out = [s for block in document.blocks for s in block.sentences if s.taken]
        if not out:
            return Checked(text, (*fallen, *walk.checks), tuple(taken))
        taken += [sentence.text for sentence in out]
        gone = {sentence.text for sentence in out}
        fallen += [c for c in walk.checks if c.sentence in gone and c.result != "supported"]
        text = markdown.render(document)
