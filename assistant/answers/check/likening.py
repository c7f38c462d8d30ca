"""'"…" sounds like a …': the words stand in the letter, the style in the table. No more is said."""

from __future__ import annotations

import re

from assistant.answers.check.claims.echo import quoted
from assistant.answers.check.context import Context
from assistant.answers.check.lookup import cited
from assistant.answers.check.results import SUPPORTED, UNKNOWN, Finding
from assistant.answers.check.words import alike

_LIKENED = re.compile(
    r'"(?P<words>[^"]+)" sounds like an? (?P<style>[^",.]+),'
    r" but words alone do not settle it\."
)


def likening(context: Context, sentence: str) -> list[Finding] | None:
    """The findings on a sentence that likens; `None` where it is no such sentence."""
    match = _LIKENED.fullmatch(" ".join(alike(sentence).split()))
    if match is None:
        return None
    styles = context.given.tables.styles.values()
    row = next((s for s in styles if s.plain_name.lower() == match["style"].lower()), None)
    known = Finding(match["style"], "listed", SUPPORTED, cited(row)) if row else None
    return [
        quoted(context, match["words"]),
        known or Finding(match["style"], "listed", UNKNOWN),
    ]
