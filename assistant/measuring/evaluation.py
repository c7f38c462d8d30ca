"""Runs the evaluation set: every message answered and judged, every question searched."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from assistant.answers.reply import reply
from assistant.measuring.campaign.truth import Truth
from assistant.measuring.judged import Case, judged
from assistant.measuring.labelled import SERVES, Question, questions
from assistant.measuring.messages import Split, messages
from assistant.measuring.retrieval.measures import Grades, Scores, scores
from assistant.measuring.retrieval.runs import SYSTEMS, Run, rankings
from assistant.reading.letters import letter_from_text
from assistant.search.passages import Passage
from assistant.search.searching import Search
from assistant.shop import Shop

TODAY = date(2026, 11, 25)  # the day on which the labels hold
SPLITS: tuple[Split, ...] = ("tune", "measure")

Progress = Callable[[int, int], None]  # done, and in all


@dataclass(frozen=True)
class Retrieval:
    """The runs of all rankings over the questions of one split, their scores, and the answers."""

    runs: Mapping[str, Run]
    grades: Grades
    scores: Mapping[str, Scores]
    right: int  # questions answered from a section that serves
    wrong: int  # answered from another
    silent: int  # answerable, and not answered
    false: int  # answered though no section serves
    quiet: int  # not answered, and rightly so


@dataclass(frozen=True)
class Evaluation:
    """Everything measured, by split."""

    cases: Mapping[Split, tuple[Case, ...]]
    retrieval: Mapping[Split, Retrieval]


def evaluated(shop: Shop, search: Search, progress: Progress = lambda done, of: None) -> Evaluation:
    """Answers every message as a customer would see it, and searches for every question.

    Raises:
        KnowledgeError: a row of the evaluation set cannot be read.
    """
    rows = shop.folder / "eval"
    sets = {split: messages(rows / "messages.jsonl", split) for split in SPLITS}
    asked = {split: questions(rows, split) for split in SPLITS}
    every = sum(map(len, sets.values())) + sum(map(len, asked.values()))
    done = 0

    def tick() -> None:
        nonlocal done
        done += 1
        progress(done, every)

    truth = Truth(shop.folder / "knowledge" / "tables")
    cases: dict[Split, tuple[Case, ...]] = {}
    for split in SPLITS:
        found = []
        for message in sets[split]:
            made = reply(
                shop,
                letter_from_text(message.text),
                audience="customers",
                today=TODAY,
                search=search,
            )
            found.append(judged(message, made, truth))
            tick()
        cases[split] = tuple(found)
    return Evaluation(cases, {s: _retrieval(search, asked[s], tick) for s in SPLITS})


def _retrieval(search: Search, asked: list[Question], tick: Callable[[], None]) -> Retrieval:
    runs: dict[str, dict[str, list[str]]] = {system: {} for system in SYSTEMS}
    right = wrong = silent = false = quiet = 0
    for question in asked:
        meaning = search.encoder.encode([question.asked])[0]
        found = rankings(search.index, question.asked, meaning, question.audience, _section)
        for system in SYSTEMS:
            runs[system][question.id] = found[system]
        answers = search.answer(question.asked, question.audience)
        if question.answerable and not answers:
            silent += 1
        elif not question.answerable:
            false, quiet = false + bool(answers), quiet + (not answers)
        elif any(question.served_by(a.passage.note, a.passage.section) for a in answers):
            right += 1
        else:
            wrong += 1
        tick()
    grades = {question.id: dict(question.answered_by) for question in asked}
    scored = {system: scores(runs[system], grades, SERVES) for system in SYSTEMS}
    return Retrieval(dict(runs), grades, scored, right, wrong, silent, false, quiet)


def _section(passage: Passage) -> str:
    return f"{passage.note}#{passage.section}"


def folder_of(shop: Shop) -> Path:
    """Where reports and runs are written."""
    return shop.folder / "eval"
