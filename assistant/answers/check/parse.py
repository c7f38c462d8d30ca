"""Covers a line with frames, end to end: what no frame reads must be a plain connecting word."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache

from assistant.answers.check.frames import SELECTS, WHEN, Frame
from assistant.answers.check.line import Line
from assistant.answers.check.patterns import compiled
from assistant.answers.check.plain_words import CLOSING, CONNECTORS
from assistant.answers.check.registry import frames

MOST_COVERS = 12  # readings of one sentence that are tried
MOST_STEPS = 4000  # a sentence that needs more is nothing that a composer of ours writes


@dataclass(frozen=True)
class Piece:
    """A frame and its match, or (`frame` is None) connecting words."""

    frame: Frame | None
    match: re.Match[str]

    @classmethod
    def none(cls) -> Piece:
        """No words at all."""
        nothing = re.match("", "")
        assert nothing is not None
        return cls(None, nothing)

    @property
    def words(self) -> str:
        """The matched stretch of the line."""
        return self.match.group()


@cache
def _connectors() -> tuple[re.Pattern[str], ...]:
    return tuple(compiled(words) for words in (*CONNECTORS, "{open}", "{close}"))


def covers(line: Line) -> Iterator[list[Piece]]:
    """Ways to read the whole line, those with the longest frames first."""
    return _Cover(line).all()


class _Cover:
    def __init__(self, line: Line) -> None:
        self.text = line.text
        kinds = {kind for item in line.items for kind in item.kinds}
        self.frames = [
            frame
            for frame in frames()
            if all(n in kinds if len(n) == 1 else n in line.text for n in frame.needs)
        ]
        self.dead: set[tuple[int, bool]] = set()
        self.found: dict[int, list[Piece]] = {}
        self.steps = 0

    def all(self) -> Iterator[list[Piece]]:
        for count, pieces in enumerate(self._from(0, False), start=1):
            yield pieces
            if count == MOST_COVERS:
                return

    def _from(self, at: int, after_frame: bool) -> Iterator[list[Piece]]:
        if at == len(self.text):
            yield []
            return
        self.steps += 1
        if (at, after_frame) in self.dead or self.steps > MOST_STEPS:
            return
        any_found = False
        for piece in self._pieces(at):
            frame = piece.frame
            last = piece.match.end() == len(self.text)
            if frame is None and last and piece.words.strip() not in CLOSING:
                continue
            if frame is not None and after_frame and not frame.joins and not _relative(piece):
                continue
            for rest in self._from(piece.match.end(), _is_clause(frame)):
                any_found = True
                yield [piece, *rest]
        if not any_found:
            self.dead.add((at, after_frame))

    def _pieces(self, at: int) -> list[Piece]:
        if at in self.found:
            return self.found[at]
        matches = [
            Piece(frame, match)
            for frame in self.frames
            if (match := frame.regex.match(self.text, at))
            and match.end() > at
            and self._followed(frame, at, match.end())
        ]
        matches += [
            Piece(None, match) for words in _connectors() if (match := words.match(self.text, at))
        ]
        matches.sort(key=lambda piece: -piece.match.end())
        self.found[at] = matches
        return matches

    def _followed(self, frame: Frame, at: int, end: int) -> bool:
        if frame.whole:
            return at == 0 and end == len(self.text)
        if not frame.before:
            return True
        following = self.text[end:]
        return not following or following.startswith(f" {frame.before}")


def _is_clause(frame: Frame | None) -> bool:
    """Whether what comes next needs a comma or 'and' before it."""
    return frame is not None and frame.role not in (WHEN, SELECTS)


def _relative(piece: Piece) -> bool:
    return piece.words.split()[0] in ("which", "that", "whose", "with", "where")
