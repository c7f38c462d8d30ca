"""What the check gives back: a result for each claim, and the text that may be shown."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Audience = Literal["staff", "customers"]
Result = Literal["supported", "contradicted", "not in the tables"]

SUPPORTED: Result = "supported"
CONTRADICTED: Result = "contradicted"
UNKNOWN: Result = "not in the tables"


@dataclass(frozen=True)
class Finding:
    """A claim as read, the rule that judged it, and the row that decides ('seals:…')."""

    claim: str
    rule: str
    result: Result
    row: str | None = None

    @property
    def sound(self) -> bool:
        """Whether the tables support the claim."""
        return self.result == SUPPORTED


@dataclass(frozen=True)
class Check:
    """A finding with the sentence in which the claim stands."""

    claim: str
    rule: str
    result: Result
    row: str | None
    sentence: str


@dataclass(frozen=True)
class Checked:
    """The text that may be shown (Markdown), every check, and the sentences taken out."""

    text: str
    checks: tuple[Check, ...]
    taken_out: tuple[str, ...]

    @property
    def sound(self) -> bool:
        """Whether nothing was taken out."""
        return not self.taken_out


def result_of(holds: bool | None) -> Result:
    """Yes, no, or not known, as a result."""
    if holds is None:
        return UNKNOWN
    return SUPPORTED if holds else CONTRADICTED


def worst(results: list[Result]) -> Result:
    """A contradiction outweighs silence, and silence outweighs support."""
    for result in (CONTRADICTED, UNKNOWN):
        if result in results:
            return result
    return SUPPORTED
