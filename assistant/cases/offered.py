"""What a reply leaves open: the questions it puts, and the parts that it names."""

from __future__ import annotations

from typing import Any

from assistant.answers.answer import Reply
from assistant.cases.case import Offered, Put


def offered_by(reply: Reply) -> Offered:
    """The questions and parts of a reply, in its order."""
    asked = [q for a in reply.answers for q in (a.question, *a.also_asked) if q]
    parts = dict.fromkeys(part.part_no for a in reply.answers for part in a.parts)
    return Offered(tuple(Put(q.asks, q.choices) for q in asked), tuple(parts))


def to_object(offered: Offered) -> dict[str, Any]:
    """As it is kept."""
    questions = [{"asks": p.asks, "choices": list(p.choices)} for p in offered.questions]
    return {"questions": questions, "parts": list(offered.parts)}


def from_object(kept: dict[str, Any]) -> Offered:
    """As it was."""
    return Offered(
        tuple(Put(q["asks"], tuple(q["choices"])) for q in kept["questions"]),
        tuple(kept["parts"]),
    )
