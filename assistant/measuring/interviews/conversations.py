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
from assistant.answers.reply import reply
from assistant.cases.in_full import in_full
from assistant.errors import KnowledgeError
from assistant.fitment.decision import Outcome
from assistant.interview.next_question import Interviewer, State
from assistant.measuring.campaign.truth import Truth
from assistant.measuring.interviews.interview import MOST
from assistant.measuring.judged import Judged, judged
from assistant.measuring.messages import Branch, Expected, Message
from assistant.reading.facts import Facts
from assistant.reading.letters import letter_from_text
from assistant.reading.read import read
from assistant.shop import Shop

# Nobody is there to look at a photograph, so none is asked for: his words alone decide.
NOT_ASKED = ("photograph",)
# Whoever is sent elsewhere is asked nothing about a seal.
ELSEWHERE = frozenset({Outcome.NOT_THE_SEAL, Outcome.HAND_OVER})


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
    outcomes, parts = tuple(settled["outcome"]), frozenset(settled["parts"])
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


def held(
    shop: Shop, interviewer: Interviewer, truth: Truth, labelled: Labelled, today: date
) -> Conversation:
    """Asks until nothing is left to ask, and holds the last reply against the label."""
    said = [labelled.opening]
    state = State(facts=_read(shop, said, today), asked=NOT_ASKED)
    corrects, too_many = labelled.corrects, 0
    while True:
        made, came = _judged(shop, truth, labelled, said, today)
        elsewhere = any(a.outcome in ELSEWHERE for a in made.answers)
        most = len(state.asked) - len(NOT_ASKED) >= MOST
        question = None if elsewhere or most else interviewer.best(state)
        if question is None and corrects is None:
            break
        if question is not None:
            too_many = too_many + 1 if _is_settled(came) else 0
            said.append(in_full(labelled.knows.get(question) or "", question))
        if corrects is not None:
            said.append(corrects)
            corrects = None
        state = _heard(state, question, _read(shop, said, today))
    return Conversation(
        labelled,
        state.asked[len(NOT_ASKED) :],
        state.unknown,
        came.outcome or "no answer",
        came.named,
        came.wrong,
        _is_settled(came),
        too_many,
    )


def _judged(
    shop: Shop, truth: Truth, labelled: Labelled, said: list[str], today: date
) -> tuple[Reply, Judged]:
    """The reply to all that was said, and how the answer that counts meets the label."""
    text = _whole(said)
    made = reply(shop, letter_from_text(text), audience="customers", today=today)
    message = Message(labelled.id, labelled.kind, text, (), None, (labelled.expected,), ())
    return made, next(a for a in judged(message, made, truth).answers if a.expected)


def _is_settled(came: Judged) -> bool:
    return came.right_outcome and not came.wrong and came.exact is not False


def _whole(said: list[str]) -> str:
    return "\n\n".join(filter(None, said))


def _heard(state: State, question: str | None, facts: Facts) -> State:
    """An answer of which nothing new could be read is a 'don't know'."""
    if question is None:
        return State(facts, state.unknown, state.asked)
    dumb = _values(facts) == _values(state.facts)
    unknown = state.unknown | {question} if dumb else state.unknown
    return State(facts, unknown, (*state.asked, question))


def _values(facts: Facts) -> set[tuple[str, str, bool]]:
    return {(fact.name, str(fact.value), fact.negated) for fact in facts}


def _read(shop: Shop, said: list[str], today: date) -> Facts:
    """All that was said, read as one letter; what is told of another toilet is left out."""
    facts = read(letter_from_text(_whole(said)), shop.names, today)
    return facts.of_toilet(facts.toilets[0])
