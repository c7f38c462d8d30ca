"""The facts of a case: its messages read as one letter, later words above earlier ones."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date
from functools import lru_cache

from assistant.cases.case import Message
from assistant.cases.letter import CaseLetter, heard, letter_of
from assistant.cases.takes_back import with_measured, without_taken_back
from assistant.reading.facts import Fact, Facts
from assistant.reading.letters import Letter
from assistant.reading.names import NameBook
from assistant.reading.read import read


@dataclass(frozen=True)
class Known:
    """The letter and the facts in it; a fact's `words` are the customer's own."""

    letter: CaseLetter
    facts: Facts


@lru_cache(maxsize=256)
def known(messages: tuple[Message, ...], book: NameBook, today: date | None = None) -> Known:
    """What the messages say together.

    'Twenty years old' counts from `today`, else from the day of the first message.
    """
    letter = letter_of(messages)
    day = today or (messages[0].at.date() if messages else date.today())
    facts = [_in_own_words(fact, letter, messages) for fact in read(Letter(letter.text), book, day)]
    for message, offered in heard(messages):
        start, end = letter.span(message.number)
        said = letter.text.said[start:end]
        if offered and offered.only and offered.only.asks == "measured":
            facts = with_measured(facts, said, start)
        if start:
            facts = without_taken_back(facts, said, start, offered)
    return Known(letter, Facts(tuple(facts)))


def _in_own_words(fact: Fact, letter: CaseLetter, messages: Sequence[Message]) -> Fact:
    """A fact of a sentence that was said for the customer has the words that it stands for."""
    number, start, end = letter.origin(fact.start, fact.end)
    text = next(m.text for m in messages if m.number == number)
    own = text[start:end].strip()
    inside = fact.words.strip() in own
    return fact if inside or not own else replace(fact, words=own)
