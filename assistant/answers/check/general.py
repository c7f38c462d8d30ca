"""General statements: a sentence of the shop's notes, said word for word."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from assistant.answers.check.general_words import plainly
from assistant.answers.check.lexicon import Lexicon
from assistant.answers.check.line import Line
from assistant.answers.check.markdown import sentence_spans


@dataclass(frozen=True)
class Statement:
    """A sentence that may be said, and where it stands ('note.md:12', 'questions:opening').

    `title` is that of the note it stands in.
    """

    text: str
    source: str
    staff_only: bool = False
    title: str = ""

    @property
    def line(self) -> int | None:
        """The line of the note in which it stands."""
        last = self.source.rsplit(":", 1)[-1]
        return int(last) if self.title and last.isdigit() else None


class Statements:
    """Statements by their plain words; prepared once where many answers are checked."""

    def __init__(self, statements: Sequence[Statement]) -> None:
        self._by_words: dict[str, list[Statement]] = {}
        for statement in statements:
            self._keep(statement.text, statement)
            spans = sentence_spans(statement.text, None)
            if len(spans) > 1:
                for start, end in spans:
                    self._keep(statement.text[start:end], statement)

    def _keep(self, text: str, statement: Statement) -> None:
        held = self._by_words.setdefault(plainly(text), [])
        if statement.staff_only:
            held.append(statement)
        else:  # what customers may read, staff may too
            held.insert(sum(not other.staff_only for other in held), statement)

    def find(self, sentence: str) -> Statement | None:
        """The statement that a sentence repeats."""
        return next(iter(self.all(sentence)), None)

    def all(self, sentence: str) -> Sequence[Statement]:
        """Every statement of just these words: two notes may say the same."""
        return self._by_words.get(plainly(sentence), ())


_ON_THE_SHELF = re.compile(
    r"^(?!.*\b(?:whether|if)\b).*\b(?:is|are) (?:\w+ )?(?:in|out of) stock\b"
    r"|\b\d+ (?:\w+ ){0,3}on hand\b",
    re.IGNORECASE,
)


def names_something(line: Line, sentence: str, statement: Statement, lexicon: Lexicon) -> bool:
    """Whether a sentence names a part, a model, a maker or a number of theirs, price or stock.

    No note may vouch for that: the tables must. The shop's own policies may speak of money.
    """
    kinds = {
        kind
        for item in line.items
        for kind in item.kinds
        if kind in "PMBS" or (kind in "NKW" and not item.text.isdigit())
    }
    of_the_shop = bool(statement.title) and (
        any("D" in item.values for item in line.items) or _ON_THE_SHELF.search(sentence) is not None
    )
    return bool(kinds) or of_the_shop or lexicon.may_name(sentence)


_LEANING = frozenset(
    {"it", "they", "this", "these", "that", "those", "its", "their", "both", "such", "he", "she"}
    | {"either", "neither", "same"}
)
_BEFORE_IT = frozenset({"and", "but", "so", "then", "or", "the"})
_NAMES_THEM = frozenset({"a", "an", "the", "way", "too"})  # 'neither a ball nor its wire'
_WORD = re.compile(r"[^\W_]+")


def leans(sentence: str, statement: Statement, before: Sequence[Statement]) -> bool:
    """Whether the sentence speaks of something said before it, which is not its own note.

    'It never leaks' may be true in its note and false after a part's name.
    """
    row = [word.lower() for word in _WORD.findall(plainly(sentence)[:60])]
    while row and row[0] in _BEFORE_IT:
        row = row[1:]
    if row[:1] in (["either"], ["neither"]) and row[1:2] and row[1] in _NAMES_THEM:
        return False
    if not row or row[0] not in _LEANING or statement.source.startswith(("questions:", "causes:")):
        return False
    return _file(statement) not in {_file(other) for other in before}


def _file(statement: Statement) -> str:
    return statement.source.rsplit(":", 1)[0]
