"""What a case stands at, as `--json` prints it, and the line that tells what changed."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from assistant.answers.answer import Reply, as_json
from assistant.cases.case import Case, Change, Standing, Told
from assistant.cases.known import Known

# What is said before the words of a measure or a year, which alone do not tell what they are.
LABELS = {
    "made": "made",
    "bought": "bought",
    "year": "year",
    "opening": "opening",
    "disc": "width of the seal",
    "hinge_width": "hinge width",
    "tube": "tube",
    "flush": "flush",
    "model_no": "number",
    "part_no": "number of the part",
    "ears": "ears",
    "pieces": "pieces",
    "overflow": "overflow tube",
}


def last_changes(case: Case, standing: Standing) -> tuple[Change, ...]:
    """What the latest of the customer's messages changed."""
    numbers = [m.number for m in case.messages if m.who != "counter"]
    return tuple(c for c in standing.changes if numbers and c.message == numbers[-1])


def changed_line(changes: Iterable[Change]) -> str | None:
    """'Changed: made "1998", now "2008".', in the customer's own words; `None` for no change."""
    told = [_told(change) for change in changes]
    return f"Changed: {'; '.join(told)}." if told else None


def _told(change: Change) -> str:
    label = LABELS.get(change.name, "")
    old, now = _one_line(change.old), _one_line(change.now)
    words = f'"{old}", now "{now}"' if now else f'"{old}" no longer counts'
    return f"{label} {words}" if label and label not in old.lower() else words


def _one_line(words: str) -> str:
    return " ".join(words.split()).strip('.,;:!?"')


def case_as_json(reply: Reply, case: Case, standing: Standing, read: Known) -> dict[str, Any]:
    """The object of a reply with its case; a fact's place is that in its own message."""
    printed = as_json(reply)
    for fact, told in zip(printed["facts"], reply.facts, strict=True):
        number, start, end = read.letter.origin(told.start, told.end)
        fact |= {"message": number, "start": start, "end": end}
    return printed | {
        "case": case.id,
        "changed": [_change(c) for c in last_changes(case, standing)],
        "standing": {
            "messages": len(case.messages),
            "changes": [_change(c) for c in standing.changes],
            "contradictions": [[_place(told) for told in one] for one in standing.contradictions],
            "asked": list(standing.asked),
            "answered": sorted(standing.answered),
            "unknown": sorted(standing.unknown),
            "possible": [
                {
                    "toilet": one.toilet,
                    "named": one.named,
                    "builds": list(one.builds),
                    "seals": list(one.seals),
                }
                for one in standing.possible
            ],
        },
    }


def _change(change: Change) -> dict[str, Any]:
    return {
        "name": change.name,
        "old": change.old,
        "old_message": change.old_message,
        "now": change.now,
        "message": change.message,
    }


def _place(told: Told) -> dict[str, Any]:
    return {"name": told.fact.name, "words": told.words, "message": told.message}
