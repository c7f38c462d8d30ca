"""What a case holds: its messages, and what it stands at after them.

Messages are kept as they were written and never changed. What the case stands at is computed
from them anew each time, so that it can be no other than what they say.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import Literal

from assistant.reading.facts import Fact, Facts

Who = Literal["customer", "staff", "counter"]


@dataclass(frozen=True)
class Put:
    """A question that was put, by its id, and the choices that were offered for it."""

    asks: str
    choices: tuple[str, ...] = ()


@dataclass(frozen=True)
class Offered:
    """What an answer leaves open: its questions, and the parts that it named, in its order."""

    questions: tuple[Put, ...] = ()
    parts: tuple[str, ...] = ()

    @property
    def only(self) -> Put | None:
        """The question, where there is just one: a short reply can answer no other."""
        return self.questions[0] if len(self.questions) == 1 else None


@dataclass(frozen=True)
class Message:
    """One message. `number` counts from 1 within its case; 0 is one that is not kept yet.

    `asked` stands in messages of the counter alone: what the next message may reply to.
    """

    number: int
    who: Who
    text: str
    at: datetime
    asked: Offered | None = None


@dataclass(frozen=True)
class Case:
    """All messages of one matter, in their order."""

    id: str
    opened: datetime
    messages: tuple[Message, ...] = ()

    def plus(self, message: Message) -> Case:
        """The case after one message more."""
        return Case(self.id, self.opened, (*self.messages, message))


@dataclass(frozen=True)
class Told:
    """A fact, the message that says it, and the customer's own words for it at their place."""

    fact: Fact
    message: int
    words: str
    start: int
    end: int


@dataclass(frozen=True)
class Change:
    """Later words that took the place of earlier ones. `now` is empty where they only fell."""

    name: str
    old: str
    old_message: int
    now: str
    message: int


@dataclass(frozen=True)
class Possible:
    """What one toilet of the case may still be, and the seals that are still possible.

    `named` is whether a name or a number narrows the builds at all.
    """

    toilet: int
    named: bool
    builds: tuple[str, ...]
    seals: tuple[str, ...]


@dataclass(frozen=True)
class Standing:
    """What a case stands at."""

    told: tuple[Told, ...] = ()
    changes: tuple[Change, ...] = ()
    contradictions: tuple[tuple[Told, ...], ...] = ()  # facts that cannot all hold
    asked: tuple[str, ...] = ()  # ids of questions, in order, each once
    answered: frozenset[str] = frozenset()  # those that were answered with something
    unknown: frozenset[str] = frozenset()  # those that were answered with 'don't know'
    possible: tuple[Possible, ...] = ()

    @property
    def facts(self) -> Facts:
        """The facts alone, as the interview and the tables take them."""
        return Facts(tuple(told.fact for told in self.told))
