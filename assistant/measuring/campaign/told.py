"""A good answer that is to be made false: its letter, the toilets meant, and the true tables."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import TypeAlias

from assistant.answers.answer import Answer
from assistant.answers.compose.case import Audience
from assistant.measuring.campaign.truth import Truth

# What kind of falsehood it is, and the false sentence.
Falsehoods: TypeAlias = Iterator[tuple[str, str]]


@dataclass(frozen=True)
class Told:
    """A composed answer, its letter, and the builds that the letter leaves possible."""

    truth: Truth
    letter: str
    audience: Audience
    builds: tuple[str, ...]
    answer: Answer
    old: str = ""  # the seal that is in there now, where that alone is known
    original: bool = False  # whether the letter says that the flush valve is the original one
    source: str = ""  # the labelled message that it answers, if any

    @property
    def text(self) -> str:
        """The answer as shown."""
        return self.answer.text

    @property
    def positions(self) -> tuple[str, ...]:
        """Where the toilet has flush valves."""
        return tuple(dict.fromkeys(p for build in self.builds for p in self.truth.valves[build]))

    @property
    def main(self) -> str:
        """The part named first, if any."""
        return self.answer.parts[0].part_no if self.answer.parts else ""

    def takes(self, part_no: str, position: str) -> bool:
        """Whether every build that is possible takes the seal there, unchanged."""
        return self.truth.fits_all(part_no, self.builds, position)


# A way of making one sentence of an answer false: yields only what the tables show to be false.
Kind: TypeAlias = Callable[[Told, str], Falsehoods]
