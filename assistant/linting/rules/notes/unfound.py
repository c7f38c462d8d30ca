"""Every note is found by some question."""

from __future__ import annotations

import json
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from assistant.linting.finding import Finding, Rule
from assistant.linting.gathered import Gathered
from assistant.linting.rules.notes.embedded import Embedded, embedded

if TYPE_CHECKING:
    from assistant.measuring.labelled import Question
    from assistant.search.model import Encoder

QUESTIONS = "eval/questions.jsonl"
FOUND = 10  # the first places of a ranking
_STRETCH = 64  # questions that are turned into vectors at once


def find(gathered: Gathered, encoder: Encoder | None = None) -> Iterator[Finding]:
    """Searched notes that no labelled question has among the first places for its asker."""
    path = gathered.folder / QUESTIONS
    if not path.is_file():
        return
    if line := _line_at_fault(path):
        yield Finding(
            path=QUESTIONS,
            line=line,
            what="is no labelled question",
            mend="write one JSON object, with id, asker, text, split and answered_by",
        )
        return
    asked = _questions(path.parent)
    found = embedded(gathered, encoder)
    if found is None or not asked:
        return
    for name in sorted(_unfound(found, asked)):
        yield Finding(
            path=gathered.note_at(name),
            line=1,
            what=f"no question of {QUESTIONS} finds it among the first {FOUND}",
            mend="word its headings and 'asked' as people ask, or label questions that it answers",
        )


def _questions(folder: Path) -> list[Question]:
    from assistant.measuring.labelled import questions

    return [*questions(folder, "tune"), *questions(folder, "measure")]


def _unfound(found: Embedded, asked: Sequence[Question]) -> set[str]:
    """The searched notes that no question finds.

    Questions labelled with a note are asked first: they mostly find it, and most others need not
    be asked at all.
    """
    left = {passage.note for passage in found.index.passages}
    best: dict[str, tuple[int, Question]] = {}
    for question in asked:
        for place, grade in question.answered_by.items():
            note = place.split("#")[0]
            if note not in best or grade > best[note][0]:
                best[note] = grade, question
    likely = list({id(question): question for _, question in best.values()}.values())
    chosen = {id(question) for question in likely}
    rest = [question for question in asked if id(question) not in chosen]
    for row in (likely, rest):
        for start in range(0, len(row), _STRETCH):
            if not left:
                return left
            left -= _finds(found, row[start : start + _STRETCH])
    return left


def _finds(found: Embedded, asked: Sequence[Question]) -> set[str]:
    """The notes among the first places for some of the questions."""
    index = found.index
    meanings = found.encoder.encode([question.asked for question in asked])
    return {
        hit.passage.note
        for question, meaning in zip(asked, meanings, strict=True)
        for hit in index.find(question.asked, meaning, FOUND, index.allowed(question.audience))
    }


def _line_at_fault(path: Path) -> int | None:
    """The first line that is no row of labelled questions."""
    try:
        lines = path.read_bytes().decode("utf-8").splitlines()
    except UnicodeDecodeError as error:
        return 1 + error.object.count(b"\n", 0, error.start)
    return next((at for at, line in enumerate(lines, start=1) if not _is_row(line)), None)


def _is_row(line: str) -> bool:
    try:
        row = json.loads(line)
        words = [row["split"], row["id"], row["asker"], row["text"], *row["answered_by"]]
        grades = row["answered_by"].values()
    except (ValueError, KeyError, TypeError, AttributeError, RecursionError):
        return False
    return all(isinstance(w, str) for w in words) and all(isinstance(g, int) for g in grades)


RULE = Rule(
    "never-found",
    "warning",
    "A note that none of the shop's labelled questions brings up is one that nobody will read, or "
    "its subject is one that nobody measures. Notes tagged 'phrases' are never searched.",
    find,
)
