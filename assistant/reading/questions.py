"""Which sentences of a letter are questions to be answered from notes, and in what words."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from assistant.reading.clauses import sentence_of
from assistant.reading.facts import Fact, Facts
from assistant.reading.lexicon import words
from assistant.reading.text import Text

OF_HOW = frozenset({"how to", "why", "what is", "measure how"})
# Questions that the tables, the shop's policies or a person answer, and no note.
_OF_THE_SHOP = frozenset(
    {"which part", "price", "stock", "order status", "a person", "shop hours", "discount"}
)
_BEGINS = words(
    r"^[\W_]*(?:(?:so|and|but|also|ok|please|hi|hello|well|quick question|just wondering)[\W_]+)*"
    r"(?:how|why|what|when|where|which way|who|is|are|was|do|does|did|can|could|should|shall|would"
    r"|will|must|may|am i|any idea|tell me|explain|wondering)\b"
)
_POINTS_BACK = words(r"\b(?:it|its|that|this|those|these|they|them|one|there|so)\b")
_SOMETHING = re.compile(r"\S")
SHORT_LETTER = 45  # words; such a letter with one question is about nothing else
_ENOUGH = 9  # words; a longer question says itself what it is about


@dataclass(frozen=True)
class Question:
    """A question in the letter's own words.

    `start` is its place in the message. `plain` says that its words ask how or why, so that
    nothing but the notes can answer it; else it may be any question.
    """

    text: str
    start: int
    plain: bool


def questions(text: Text, facts: Facts) -> list[Question]:
    """The questions of how and why in a letter, and others that a note may answer, in order."""
    how = [f for f in facts.named("asks") if OF_HOW & {*f.choices}]
    shop = [f for f in facts.named("asks") if _OF_THE_SHOP & {*f.choices}]
    shop += facts.named("wanted")
    busy = {sentence_of(text, fact.start) for fact in (*how, *shop)}
    other = []
    for start, _ in text.sentences:
        span = sentence_of(text, _first_word(text, start))
        if span not in busy and _is_a_question(text, span):
            other.append(span)
    if not shop and len(how) <= 1 and len(text.visible.split()) <= SHORT_LETTER:
        whole = " ".join(text.visible.split())  # the story before a question is part of it
        if how:
            return [Question(whole, how[0].start, plain=True)]
        return [Question(whole, _first_word(text, span[0]), plain=False) for span in other[:1]]
    found = [_plainly_asked(text, fact, [*how, *shop]) for fact in how]
    found += [Question(_in_full(text, s), _first_word(text, s[0]), plain=False) for s in other]
    return sorted(found, key=lambda question: question.start)


def _plainly_asked(text: Text, asked: Fact, all_asked: Sequence[Fact]) -> Question:
    """A question of how or why; of a sentence that asks for something else too, its own part."""
    low, high = sentence_of(text, asked.start)
    others = [f.start for f in all_asked if low <= f.start < high and f.start != asked.start]
    if any(start < asked.start for start in others):
        low = asked.start
    high = min((start for start in others if start > asked.start), default=high)
    return Question(_in_full(text, (low, high)), asked.start, plain=True)


def _first_word(text: Text, start: int) -> int:
    """The place of the first character that is no blank."""
    found = _SOMETHING.search(text.said, start)
    return found.start() if found else start


def _is_a_question(text: Text, span: tuple[int, int]) -> bool:
    said = text.said[span[0] : span[1]].strip()
    return said.endswith("?") or _BEGINS.match(said) is not None


def _in_full(text: Text, span: tuple[int, int]) -> str:
    """The question; with the sentence before it where it is short and points back to it."""
    asked = " ".join(text.visible[span[0] : span[1]].split())
    begins = sentence_of(text, span[0])[0] == span[0]
    if len(asked.split()) > _ENOUGH or not _POINTS_BACK.search(asked.lower()) or not begins:
        return asked
    if span[0] == 0:
        return asked
    before = sentence_of(text, span[0] - 1)
    if _is_a_question(text, before):  # which has an answer of its own
        return asked
    return " ".join(f"{text.visible[before[0] : before[1]]} {asked}".split())
