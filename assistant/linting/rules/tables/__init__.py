"""The rules for tables, drawings and settings, in the order in which they are looked through."""

from __future__ import annotations

from assistant.linting.finding import Rule
from assistant.linting.rules.tables import (
    builds,
    changes,
    conflicts,
    dates,
    drawings,
    geometry,
    placed,
    prices,
    readable,
    references,
    replacements,
    unfitted,
    unserved,
)

TABLE_RULES: tuple[Rule, ...] = (
    *readable.RULES,
    *references.RULES,
    *builds.RULES,
    *geometry.RULES,
    *changes.RULES,
    *placed.RULES,
    *conflicts.RULES,
    *replacements.RULES,
    *unfitted.RULES,
    *unserved.RULES,
    *drawings.RULES,
    *dates.RULES,
    *prices.RULES,
)
