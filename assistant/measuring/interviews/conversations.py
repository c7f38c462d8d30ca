"""The labelled conversations in which the customer answers as asked: `eval/dialogues.jsonl`.

His words go through the reading code, as they do in a chat. Of 'tune' single conversations are
told, of 'measure' nothing but sums.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Any

from assistant.answers.answer import Reply
from assistant.cases.known import known
from assistant.cases.so_far import not_known_so_far
from assistant.cases.talk import Talk
from assistant.errors import KnowledgeError
from assistant.measuring.campaign.truth import Truth
from assistant.measuring.interviews.interview import MOST
from assistant.measuring.judged import Judged, judged
from assistant.measuring.messages import Branch, Expected, Message
from assistant.shop import Shop

NOT_ANSWERED = (None, "photograph")
DOES_NOT_KNOW = "I don't know."


@dataclass(frozen=True)
class Labelled:
    """A customer as labelled: what he writes first, his answer to each question, the outcome."""

    id: str
    split: str
    kind: tuple[str, ...]
    opening: str
    knows: Mapping[str, str | None]
    corrects: str | None  # what he says of himself once he had the first reply
    fewest: int
    expected: Expected


@dataclass(frozen=True)
class Conversation:
    """One conversation held: what was asked, what of it was not known, and how it ended.

    `settled`: an accepted outcome and the seals that the label names; `too_many` questions
    were asked after that.
    """

    labelled: Labelled
    asked: tuple[str, ...]
    unknown: frozenset[str]
    outcome: str
    named: frozenset[str]
    wrong: frozenset[str]
    settled: bool
    too_many: int


def labelled(path: Path) -> list[Labelled]:
    """The open conversations of the file.

    Raises:
        KnowledgeError: a line is no conversation as described in eval/README.md.
    """
    found = []
    try:
        lines = path.read_text(encoding="utf-8").splitlines()
    except (OSError, UnicodeDecodeError) as error:
        mend = "put labelled conversations there, or name another --shop"
        raise KnowledgeError(str(path), "cannot be read", mend) from error
    for number, line in enumerate(lines, start=1):
        try:
            row = json.loads(line)
            if row["form"] == "open":
                found.append(_labelled(row))
        except (ValueError, KeyError, TypeError, AttributeError) as error:
            raise KnowledgeError(
                f"{path}, line {number}",
                f"is no labelled conversation ({type(error).__name__}: {error})",
                "write it as eval/README.md tells",
            ) from error
    return found


def _labelled(row: Mapping[str, Any]) -> Labelled:
    settled = row["settled"]
    branches = tuple(Branch("", frozenset(b["parts"])) for b in settled["branches"])
    outcomes = tuple(settled["outcome"])
    parts = frozenset(() if branches else settled["parts"])  # else those of all branches
    expected = Expected(
        outcomes=outcomes,
        answerable=bool(parts or branches) and {*outcomes} <= {"part", "depends"},
        reason=" ".join(settled["builds"]),
        parts=parts,
        branches=branches,
        never=frozenset(row["never"]),
        question=(),
    )
    corrects = row.get("corrects")
    return Labelled(
        row["id"],
        row["split"],
        tuple(row["kind"]),
        row["opening"],
        row["knows"],
        corrects["says"] if corrects else None,
        row["fewest"],
        expected,
    )


def held(shop: Shop, truth: Truth, labelled: Labelled, today: date) -> Conversation:
    """Talks as `counterhand chat` does till nothing is asked, and judges the last reply.

    What the customer says of himself comes with his first answer.
    """
    talk = Talk(shop, "customers", today)
    reply = talk.say(labelled.opening).reply
    corrects, too_many = labelled.corrects, 0
    asked: list[str] = []
    while True:
        came = _judged(truth, labelled, reply)
        question = _question(reply) if len(asked) < MOST else None
        if question is None and corrects is None:
            break
        said = []
        if question is not None:
            too_many = too_many + 1 if _is_settled(came) else 0
            asked.append(question)
            said.append(labelled.knows.get(question) or DOES_NOT_KNOW)
        reply = talk.say("\n\n".join([*said, *([corrects] if corrects else [])])).reply
        corrects = None
    messages = talk.case.messages if talk.case else ()
    unknown = not_known_so_far(known(messages, shop.names, today), messages)
    return Conversation(
        labelled, tuple(asked), unknown, came.outcome or "no answer", came.named, came.wrong,
        _is_settled(came), too_many,
    )  # fmt: skip


def _question(reply: Reply) -> str | None:
    """What is asked; nobody is there to look at a photograph, so one that is wanted ends it."""
    asked = next((a.question.asks for a in reply.answers if a.question), None)
    return asked if asked not in NOT_ANSWERED else None


def _judged(truth: Truth, labelled: Labelled, reply: Reply) -> Judged:
    """How the answer that counts meets the label."""
    said = Message(labelled.id, labelled.kind, "", (), None, (labelled.expected,), ())
    return next(a for a in judged(said, reply, truth).answers if a.expected)


def _is_settled(came: Judged) -> bool:
    return came.right_outcome and not came.wrong and came.exact is not False
