"""Puts the clauses of a sentence together with their conditions, changes and reservations."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from assistant.answers.check.cards import limits
from assistant.answers.check.context import Unreadable
from assistant.answers.check.frames import (
    AHEAD,
    BARE,
    CHANGE,
    FITS,
    IS_MODEL,
    ORIGINAL,
    TRAIT,
    WHEN,
    Frame,
)  # fmt: skip
from assistant.answers.check.line import Line
from assistant.answers.check.parse import Piece
from assistant.answers.check.scope import Limit

ENDS_CONDITION = frozenset({",", ":", "then", ", then"})


@dataclass(frozen=True)
class Clause:
    """A clause, the limits of its conditions, the toilets named in them, and its change."""

    piece: Piece
    limits: tuple[Limit, ...] = ()
    named_in: tuple[Piece, ...] = ()
    change: Piece | None = None


class Grouping:
    """The clauses of one sentence, in the order in which they are looked up.

    A condition before a clause holds until a semicolon or the next such condition; one that
    directly follows a clause belongs to that clause alone.
    """

    def __init__(self, line: Line) -> None:
        self.line = line
        self.clauses: list[Clause] = []
        self.original = False
        self._before = Clause(Piece.none())  # the condition in force
        self._used = True
        self._condition: Clause | None = None  # being read
        self._after = False  # it follows its clause
        self._last: int | None = None  # the clause that a condition may follow
        self._since: list[str] = []  # connecting words since then

    def of(self, pieces: Sequence[Piece]) -> Grouping:
        """Reads the pieces in order.

        Raises:
            Unreadable: a condition without a clause, or a change that belongs to none.
        """
        for piece in pieces:
            if piece.frame is None:
                self._connect(piece.words.strip())
            else:
                self._add(piece, piece.frame)
        self._close()
        if not self._used:
            raise Unreadable("what the condition is for")
        self.clauses.sort(key=lambda c: c.piece.frame is None or c.piece.frame.role != AHEAD)
        return self

    def _connect(self, words: str) -> None:
        if self._condition is not None:
            if words in ENDS_CONDITION or words == ";":
                self._close()
            elif words != "and":
                raise Unreadable("how the conditions are joined")
        if words == ";":
            if not self._used:
                raise Unreadable("what the condition is for")
            self._before, self._last = Clause(Piece.none()), None
        self._since.append(words)

    def _add(self, piece: Piece, frame: Frame) -> None:
        if self._condition is not None:
            if frame.role in (TRAIT, IS_MODEL):
                self._limit(piece, frame)
                return
            self._close()
        if frame.role == WHEN:
            self._after = self._last is not None and set(self._since) <= {","}
            self._condition = Clause(piece)
        elif frame.role == ORIGINAL:
            self.original = True
        elif frame.role == CHANGE and self._last is not None:
            last = self.clauses[self._last]
            if last.change is not None:
                raise Unreadable("which part the change is for")
            self.clauses[self._last] = replace(last, change=piece)
        else:
            self.clauses.append(replace(self._before, piece=piece))
            self._used = True
            if frame.role in (FITS, BARE):
                self._last = len(self.clauses) - 1
            elif not frame.joins:  # an afterthought leaves the clause before it open
                self._last = None
            self._since = []

    def _limit(self, piece: Piece, frame: Frame) -> None:
        assert self._condition is not None
        found = [lim for i in self.line.within(piece.words, "O") for lim in i.values["O"]]
        found += limits(frame.traits, self.line, piece.words)
        words = piece.words.split()
        if "not" in words or "never" in words or not (found or frame.role == IS_MODEL):
            raise Unreadable("what the condition is")
        meant = [i.values["X"] for i in self.line.within(piece.words, "X")]
        kinds = {lim.trait.name for lim in (*found, *self._condition.limits)}
        if any(lim.trait.name in kinds for scope in meant for lim in scope.limits):
            raise Unreadable("which of two conditions counts")
        named = (piece,) if meant else ()
        self._condition = replace(
            self._condition,
            limits=(*self._condition.limits, *found),
            named_in=(*self._condition.named_in, *named),
        )

    def _close(self) -> None:
        condition, self._condition = self._condition, None
        if condition is None:
            return
        if not condition.limits and not condition.named_in:
            raise Unreadable("what the condition is")
        if self._after and self._last is not None:
            last = self.clauses[self._last]
            self.clauses[self._last] = replace(
                last,
                limits=(*last.limits, *condition.limits),
                named_in=(*last.named_in, *condition.named_in),
            )
        else:
            self._before, self._used = condition, False
