"""General statements: a sentence of the shop's notes, said word for word."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from assistant.answers.check.general_words import plainly
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


def names_something(line: Line) -> bool:
    """Whether a sentence names a part, a model, a maker or a number of theirs."""
    return any(
        kind in "PMB" or (kind in "NKW" and not item.text.isdigit())
        for item in line.items
        for kind in item.kinds
    )


_LEANING = frozenset(
    {"it", "they", "this", "these", "that", "those", "its", "their", "both", "such", "he", "she"}
)


def leans(sentence: str, statement: Statement, before: Statement | None) -> bool:
    """Whether the sentence speaks of something said before it, which is not its own note.

    'It never leaks' may be true in its note and false after a part's name.
    """
    first = plainly(sentence).split(" ", 1)[0].strip(",'").lower().removesuffix("'s")
    if first not in _LEANING or statement.source.startswith(("questions:", "causes:")):
        return False
    return before is None or _file(before) != _file(statement)


def _file(statement: Statement) -> str:
    return statement.source.rsplit(":", 1)[0]
