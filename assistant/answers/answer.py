"""An answer as it is shown, and the object that `--json` prints."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from assistant.answers.check import Check
from assistant.answers.draft import Asked, Part, Ruled, Source
from assistant.fitment.decision import Outcome
from assistant.reading.facts import Fact, Facts, Interval


@dataclass(frozen=True, kw_only=True)
class Answer:
    """One question's answer, checked. `text` is Markdown; what was taken out is in `checks`."""

    outcome: Outcome
    text: str
    parts: tuple[Part, ...] = ()
    also_fits: tuple[str, ...] = ()
    ruled_out: tuple[Ruled, ...] = ()
    question: Asked | None = None
    also_asked: tuple[Asked, ...] = ()
    causes: tuple[str, ...] = ()
    checks: tuple[Check, ...] = ()
    sources: tuple[Source, ...] = ()
    cautions: tuple[str, ...] = ()
    toilet: int = 0


@dataclass(frozen=True)
class Reply:
    """The answers to a letter, in the order asked, and the facts they rest on."""

    answers: tuple[Answer, ...]
    facts: Facts
    audience: str
    took_ms: float

    @property
    def text(self) -> str:
        """All answers as one Markdown text."""
        return "\n\n---\n\n".join(answer.text for answer in self.answers)


def as_json(reply: Reply) -> dict[str, Any]:
    """The object that `--json` prints. Checks are shown to staff alone."""
    staff = reply.audience == "staff"
    return {
        "answers": [answer_as_json(answer, staff) for answer in reply.answers],
        "facts": [_fact(fact) for fact in reply.facts],
        "audience": reply.audience,
        "took_ms": round(reply.took_ms, 1),
    }


def answer_as_json(answer: Answer, staff: bool) -> dict[str, Any]:
    """One answer of a reply, with its checks for staff."""
    return {
        "outcome": str(answer.outcome),
        "toilet": answer.toilet,
        "answer": answer.text,
        "parts": [
            {
                "part_no": part.part_no,
                "quantity": part.quantity,
                "position": part.position,
                "condition": part.condition,
                "basis": part.basis,
                "status": part.status,
                "because": list(part.because),
            }
            for part in answer.parts
        ],
        "also_fits": list(answer.also_fits),
        "ruled_out": [vars(ruled) for ruled in answer.ruled_out],
        "question": _asked(answer.question) if answer.question else None,
        "also_asked": [_asked(asked) for asked in answer.also_asked],
        "causes": list(answer.causes),
        "checks": _checks(answer.checks) if staff else [],
        "sources": [
            {"note": s.note, "section": s.section, "lines": list(s.lines), "score": s.score}
            for s in answer.sources
        ],
        "cautions": list(answer.cautions),
    }


def _asked(asked: Asked) -> dict[str, Any]:
    return {
        "asks": asked.asks,
        "text": asked.text,
        "why": asked.why,
        "choices": list(asked.choices),
        "drawing": asked.drawing,
    }


def _checks(checks: Sequence[Check]) -> list[dict[str, Any]]:
    return [{"claim": c.claim, "rule": c.rule, "result": c.result, "row": c.row} for c in checks]


def _fact(fact: Fact) -> dict[str, Any]:
    interval = isinstance(fact.value, Interval)
    return {
        "name": fact.name,
        "value": [fact.interval.low, fact.interval.high] if interval else list(fact.choices),
        "unit": fact.unit,
        "nominal_in": list(fact.nominal_in),
        "of": fact.of,
        "words": fact.words,
        "start": fact.start,
        "end": fact.end,
        "sure": fact.sure,
        "negated": fact.negated,
        "similar": fact.similar,
        "toilet": fact.toilet,
    }
