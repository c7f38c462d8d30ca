"""What lint finds, and the card of a rule that finds it. Wording for people is in `report`."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from assistant.linting.gathered import Gathered

Level = Literal["error", "warning"]


@dataclass(frozen=True, kw_only=True)
class Finding:
    """One thing to mend: `path` as seen from the shop's folder, `line` of the file from 1."""

    path: str
    line: int
    what: str
    mend: str


@dataclass(frozen=True)
class Rule:
    """A check of the knowledge: its name, how bad a finding is, and why it is one.

    Errors make the command end with exit code 1; warnings do not.
    """

    name: str
    level: Level
    reason: str
    find: Callable[[Gathered], Iterable[Finding]]
