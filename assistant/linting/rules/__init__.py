"""The rules of lint, in the order in which they are looked through.

A rule is a card: its name, its level, why the trade wants it, and a function from what was
gathered to findings. To add one, write it in a module beside its likes and name it in the
`RULES` of that module.
"""

from __future__ import annotations

from assistant.linting.finding import Rule
from assistant.linting.rules.notes import NOTE_RULES
from assistant.linting.rules.tables import TABLE_RULES

RULES: tuple[Rule, ...] = (*TABLE_RULES, *NOTE_RULES)
