"""The rules for notes, each with its reason in a module of its own."""

from __future__ import annotations

from assistant.linting.finding import Rule
from assistant.linting.rules.notes import (
    alike,
    asked_twice,
    contradicted,
    empty_section,
    labels,
    length,
    links,
    named,
    staff_words,
    styles,
    titles,
    unembedded,
    unfinished,
    unfound,
    unquotable,
    updated,
)

NOTE_RULES: tuple[Rule, ...] = (
    links.RULE,
    contradicted.RULE,
    named.RULE,
    unquotable.RULE,
    staff_words.RULE,
    unfinished.RULE,
    empty_section.RULE,
    length.RULE,
    updated.RULE,
    titles.TWICE,
    titles.APART,
    asked_twice.RULE,
    styles.UNWRITTEN,
    styles.UNFITTED,
    unembedded.RULE,
    alike.RULE,
    unfound.RULE,
    labels.RULE,
)
