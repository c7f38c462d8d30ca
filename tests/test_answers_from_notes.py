"""Questions of how and why, answered in the words of the notes and cited to the line."""

from __future__ import annotations

import re
from datetime import date
from functools import cache

import pytest
from demonstration import FOLDER, PART_NO, shop
from searching import demo_search

from assistant.answers.answer import Answer, Reply, as_json
from assistant.answers.compose.case import Audience
from assistant.answers.reply import reply
from assistant.reading.letters import letter_from_text

TODAY = date(2026, 11, 25)
CITED = re.compile(r"That is from our note “(.+?)”, lines? (\d+)(?: to (\d+))?\.")
SCALE = "How do I get the scale off the seat?"
TWICE = "Why does it flush twice?"
PART = "Which flapper fits a Quellwick Tamsel from 1988?"
SILENT = "Our notes do not say."


@cache
def answered(text: str, audience: Audience = "customers", *, searched: bool = True) -> Reply:
    """The reply to a letter, worked out once."""
    search = demo_search() if searched else None
    letter = letter_from_text(text)
    return reply(shop(), letter, audience=audience, today=TODAY, search=search)


def only(text: str, audience: Audience = "customers") -> Answer:
    """The one answer to a letter."""
    (answer,) = answered(text, audience).answers
    return answer


def note_titled(title: str) -> list[str]:
    """The lines of the note's file, links without their marks."""
    note = next(n for n in shop().notes.values() if n.title == title)
    text = (FOLDER / "knowledge" / "notes" / f"{note.name}.md").read_text(encoding="utf-8")
    return re.sub(r"\[([^]]*)\]\([^)]*\)", r"\1", text).split("\n")


QUESTIONS = [
    SCALE,
    TWICE,
    "how do i take the tower out",
    "Why does my tank sweat?",
    "How do I measure the opening?",
    "What is a phantom flush?",
    "why must the chain have some slack?",
    "do the ears always point up?",
    "How do I change the ring under a canister?",
]


@pytest.mark.parametrize("question", QUESTIONS)
def test_what_is_quoted_stands_in_the_lines_cited(question: str) -> None:
    answer = only(question)
    assert answer.outcome == "note"
    cited = CITED.findall(answer.text)
    assert cited
    paragraphs = answer.text.split("\n\n")
    for title, first, last in cited:
        at = next(n for n, text in enumerate(paragraphs) if f"“{title}”" in text and first in text)
        stands = " ".join(note_titled(title)[int(first) - 1 : int(last or first)])
        assert paragraphs[at - 1] in re.sub(r"\d+\. ", "", stands)


@pytest.mark.parametrize("question", QUESTIONS)
def test_nothing_quoted_is_taken_out_and_no_part_is_named(question: str) -> None:
    answer = only(question)
    assert [check for check in answer.checks if check.result != "supported"] == []
    assert not PART_NO.search(answer.text)


@pytest.mark.parametrize(
    ("question", "note"),
    [
        (SCALE, "scale-and-dirt-on-the-seat.md"),
        (TWICE, "when-it-flushes-twice-or-too-long.md"),
        ("Why does my tank sweat?", "a-tank-that-sweats.md"),
        ("how do i take the tower out", "fitting-a-ring-under-a-tower.md"),
        ("How do I measure the opening?", "measuring-the-opening.md"),
    ],
)
def test_the_answer_comes_from_the_note_on_the_subject(question: str, note: str) -> None:
    source = only(question).sources[0]
    assert source.note == note
    assert source.score is not None
    assert 0 < source.score <= 1


@pytest.mark.parametrize(
    "question",
    [
        "Why does my laptop get so hot?",
        "How do I knit a heel on a sock?",
        "why is the sky blue",
        "What is the capital of Peru?",
        "How do I paint a cistern?",
    ],
)
def test_what_the_notes_do_not_answer_goes_to_a_person(question: str) -> None:
    answer = only(question)
    assert answer.outcome == "note"
    assert answer.text.startswith(SILENT)
    assert "A person at the shop" in answer.text
    assert not CITED.search(answer.text)


@pytest.mark.parametrize(
    ("letter", "outcomes"),
    [
        (f"{PART} And {SCALE[0].lower()}{SCALE[1:]}", ["part", "note"]),
        (f"{SCALE} And {PART[0].lower()}{PART[1:]}", ["note", "part"]),
    ],
)
def test_a_part_and_a_how_are_answered_in_the_order_asked(letter: str, outcomes: list[str]) -> None:
    answers = answered(letter).answers
    assert [str(answer.outcome) for answer in answers] == outcomes
    by_outcome = {str(answer.outcome): answer for answer in answers}
    assert by_outcome["part"].text == only(PART).text
    assert by_outcome["note"].text == only(SCALE).text


def test_two_questions_get_two_answers_in_their_order() -> None:
    first, second = answered(f"{SCALE} And why does it flush twice?").answers
    assert first.text == only(SCALE).text
    assert second.sources[0].note == "when-it-flushes-twice-or-too-long.md"


def test_a_question_asked_twice_is_answered_once() -> None:
    assert len(answered(f"{SCALE} I ask again: {SCALE[0].lower()}{SCALE[1:]}").answers) == 1


def test_staff_notes_are_quoted_to_staff_alone() -> None:
    question = "How many questions do we put to a customer in one letter?"
    assert only(question, "staff").sources[0].note == "how-we-answer-a-letter.md"
    assert "how-we-answer-a-letter.md" not in {s.note for s in only(question).sources}


def test_a_hazard_comes_before_every_question() -> None:
    answer = only(f"The tank has a crack and water is on the floor. {SCALE}")
    assert answer.outcome == "hand over"
    assert "note “" not in answer.text


def test_work_in_the_tank_comes_with_its_cautions() -> None:
    answer = only("How do I take the tower out?")
    assert "Shut the water off at the stop below the tank" in " ".join(answer.cautions)
    assert "porcelain cracks without warning" in answer.text


def test_an_answer_that_names_a_part_carries_passages_on_its_style() -> None:
    answer = only(PART)
    found = [source for source in answer.sources if source.score is not None]
    assert len(found) == 3
    assert all("pegged-flapper" in shop().notes[s.note.removesuffix(".md")].styles for s in found)
    shown = as_json(answered(PART))["answers"][0]["sources"]
    assert [s["score"] for s in shown if s["score"] is not None] == [s.score for s in found]


def test_without_a_search_the_part_is_the_same_and_the_question_goes_to_a_person() -> None:
    part, how = answered(f"{PART} {SCALE}", searched=False).answers
    assert part.text == only(PART).text
    assert how.text.startswith(SILENT)
