"""Which clauses of a letter are questions to be answered from notes, and in what words."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from assistant.reading.clauses import sentence_of
from assistant.reading.facts import Fact, Facts
from assistant.reading.lexicon import words
from assistant.reading.text import Text

OF_HOW = frozenset({"how to", "why", "what is", "measure how"})
# Questions that the tables, the shop's policies or a person answer, and no note.
_OF_THE_SHOP = frozenset(
    {"which part", "price", "stock", "order status", "a person", "shop hours", "discount"}
    | {"fitting service", "returns", "shipping"}
)
_SUBJECT = (  # 'can I', 'is vinegar'; not 'will be', 'does not', nor 'is leaking'
    r"(?:can|could|should|do|does|did|is|are|was|were|will|would|must|may|shall|am|has|have)"
    r"(?! (?:be|been|not|also|just|still|now|\w+ing)\b)(?= \w)"
)
_ASKING_WORD = (
    r"(?:how|why|which|who|what(?! (?:a|an) )|where(?! (?:it|the)\b)"
    r"|when (?:is|are|do|does|did|will|can|should|must)"
    rf"|{_SUBJECT})\b"
)
_BEGINS = words(
    r"^[\W_]*(?:(?:so|and|but|also|or|ok|please|hi|hello|well|quick question"
    rf"|just wondering)[\W_]+)*(?:{_ASKING_WORD}|what(?! an? )|where|any idea|tell me|explain"
    r"|wondering)"
)
# Where a second question begins in a sentence: 'and how long', ', can I do it with a brush'.
_NEXT = words(
    r"(?:[,;(] ?|[,;(]? \b(?:and|or|also|but|plus|then)[, ] ?)(?:(?:and|or|also|but|plus|then"
    rf"|please)[, ] ?)*(?!\w+ (?:it|that|he|she|they|you)\W*$)(?=(?:{_ASKING_WORD}))"
)
_LEADS_IN = words(r"^[\W_]*(?:(?:so|and|but|ok|please|hi|hello|well)\b[\W_]*)*$")
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


@dataclass(frozen=True)
class _Clause:
    start: int
    end: int
    asks: bool
    how: Fact | None  # its own words ask how or why
    busy: bool  # the tables, the policies or a person answer it


def questions(text: Text, facts: Facts) -> list[Question]:
    """The questions of how and why in a letter, and others that a note may answer, in order."""
    found = list(_clauses(text, facts))
    asking = [clause for clause in found if clause.asks and not clause.busy]
    alone = len(asking) == 1 and not any(clause.busy for clause in found)
    if alone and len(text.visible.split()) <= SHORT_LETTER:
        whole = " ".join(text.visible.split())  # the story round a question is part of it
        return [_question(text, asking[0], whole)]
    return [_question(text, clause, _in_full(text, clause, found)) for clause in asking]


def statement(text: Text) -> Question | None:
    """A short letter that asks nothing, as the question 'what of this?'; `None` for a long one."""
    told = " ".join(text.visible.split())
    if not 2 < len(told.split()) <= SHORT_LETTER:
        return None
    return Question(told, _first_word(text, 0), plain=False)


def _clauses(text: Text, facts: Facts) -> Iterator[_Clause]:
    """Every sentence, cut where another question begins in it."""
    asks = [f for f in facts.named("asks") if not f.negated]
    wanted = [f for f in facts.named("wanted") if not f.negated]
    done = 0
    for start, end in text.sentences:
        first, last = sentence_of(text, _first_word(text, start))
        for low, high in _pieces(text, max(first, done), max(last, end)):
            begin = _first_word(text, low)
            if begin >= high:
                continue
            inside = [f for f in asks if begin <= f.start < high]
            how = next((f for f in inside if OF_HOW & {*f.choices}), None)
            shop = [f for f in inside if _OF_THE_SHOP & {*f.choices}]
            busy = how is None and bool(shop or [f for f in wanted if begin <= f.start < high])
            yield _Clause(begin, high, how is not None or _asks(text, begin, high), how, busy)
            done = max(done, high)


def _pieces(text: Text, low: int, high: int) -> Iterator[tuple[int, int]]:
    """The sentences of a span (a line's end may hide one), cut before each further question."""
    while low < high:
        end = min(max(sentence_of(text, _first_word(text, low))[1], low + 1), high)
        at = low
        for cut in _NEXT.finditer(text.said, low, end):
            if not _LEADS_IN.match(text.said[at : cut.start()]):
                yield at, cut.start()
                at = cut.end()
        yield at, end
        low = end


def _asks(text: Text, start: int, end: int) -> bool:
    said = text.said[start:end].strip()
    return said.endswith("?") or _BEGINS.match(said) is not None


def _question(text: Text, clause: _Clause, asked: str) -> Question:
    start = clause.how.start if clause.how and asked != _words(text, clause) else clause.start
    return Question(asked, start, plain=clause.how is not None)


def _words(text: Text, clause: _Clause) -> str:
    return " ".join(text.visible[clause.start : clause.end].split())


def _first_word(text: Text, start: int) -> int:
    """The place of the first character that is no blank."""
    found = _SOMETHING.search(text.said, start)
    return found.start() if found else len(text.said)


def _in_full(text: Text, clause: _Clause, all_clauses: Sequence[_Clause]) -> str:
    """The question; with what stands before it where it is short and points back to it."""
    asked = _words(text, clause)
    if len(asked.split()) > _ENOUGH or not _POINTS_BACK.search(asked.lower()):
        return asked
    earlier = [one for one in all_clauses if one.start < clause.start]
    if not earlier:
        return asked
    return f"{_words(text, earlier[-1])} {asked}"
