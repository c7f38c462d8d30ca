"""Which questions were put in a case, and which of them came to 'don't know'."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.cases.case import Message
from assistant.cases.in_full import unknown
from assistant.cases.known import Known
from assistant.cases.letter import heard
from assistant.cases.takes_back import answers
from assistant.reading.facts import Fact


def asked_so_far(messages: Sequence[Message]) -> tuple[str, ...]:
    """The questions that were put, in order, each once."""
    put = (p.asks for m in messages if m.who == "counter" and m.asked for p in m.asked.questions)
    return tuple(dict.fromkeys(put))


def not_known_so_far(read: Known, messages: Sequence[Message]) -> frozenset[str]:
    """The questions answered with 'don't know' and with nothing better since."""
    found: set[str] = set()
    for message, offered in heard(messages):
        here = facts_in(read, message)
        found |= {q for u in unknown(message.text, offered) for q in u.questions}
        found = {q for q in found if not any(answers(q, fact) for fact in here)}
    return frozenset(found)


def facts_in(read: Known, message: Message) -> list[Fact]:
    """What one message says."""
    return [
        fact
        for fact in read.facts
        if not fact.negated and read.letter.origin(fact.start, fact.end)[0] == message.number
    ]
