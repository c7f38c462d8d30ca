"""The rules of fitment: each one small function that a plumber could follow.

A rule takes a seal and a place and says agrees, objects or silent. To add one, write its
function in a module of this folder and name it in `RULES`. Tolerances and practice here are
common practice of the trade, no source.
"""

from __future__ import annotations

from collections.abc import Callable

from assistant.fitment.findings import Finding
from assistant.fitment.places import Place
from assistant.fitment.rules.mount import mount
from assistant.fitment.rules.opening import opening
from assistant.fitment.rules.volume import volume
from assistant.records.rows import Seal

Rule = Callable[[Seal, Place], Finding]

RULES: tuple[Rule, ...] = (opening, mount, volume)
