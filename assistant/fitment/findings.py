"""What a rule finds about a seal in a place: detection only, the wording is elsewhere."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum


class Says(Enum):
    """The three values of a rule."""

    AGREES = "agrees"
    OBJECTS = "objects"
    SILENT = "silent"  # a cell that it needs is empty: not known


@dataclass(frozen=True)
class Finding:
    """One rule's word on a seal in a place: the two values it compared, and the rows."""

    rule: str
    says: Says
    seal_has: object = None
    place_has: object = None
    rows: tuple[str, ...] = ()


def compare(rule: str, seal_has: object, place_has: object, agrees: bool) -> Finding:
    """Agrees or objects, both values known."""
    return Finding(rule, Says.AGREES if agrees else Says.OBJECTS, seal_has, place_has)


def silent(rule: str) -> Finding:
    """The rule cannot tell."""
    return Finding(rule, Says.SILENT)
