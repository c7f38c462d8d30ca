"""All messages of a case as one letter, from which every place leads back to its message."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass

from assistant.answers.subject import is_civil
from assistant.cases.case import Message, Offered
from assistant.cases.in_full import pieces_of
from assistant.reading.said import masked_spans
from assistant.reading.text import Text

BETWEEN = "\n\n"


@dataclass(frozen=True)
class Origin:
    """A stretch of the letter, and the place in a message that it comes from.

    What is `added` stands for its whole place; else letter and message agree sign for sign.
    """

    at: int
    message: int
    start: int
    end: int
    added: bool


@dataclass(frozen=True)
class CaseLetter:
    """The letter; `origins` are in the order of their places."""

    text: Text
    origins: tuple[Origin, ...]

    def origin(self, start: int, end: int) -> tuple[int, int, int]:
        """The message from which a place comes, and the place there."""
        at = max(0, bisect_right(self.origins, start, key=lambda o: o.at) - 1)
        found = self.origins[at]
        if found.added:  # what it stands for stands right before it
            own = self.text.raw[found.at - (found.end - found.start) : found.at]
            place = own.find(self.text.raw[start:end])
            if place < 0:
                return found.message, found.start, found.end
            return found.message, found.start + place, found.start + place + end - start
        last = min(found.start + end - found.at, found.end)
        return found.message, min(found.start + start - found.at, last), last

    def span(self, message: int) -> tuple[int, int]:
        """Where a message begins and ends in the letter."""
        places = [o.at for o in self.origins if o.message == message]
        later = [o.at for o in self.origins if o.message > message]
        end = min(later, default=len(self.text.raw))
        return min(places, default=end), end


def open_before(messages: Sequence[Message], at: int) -> Offered | None:
    """What the message at a place may reply to."""
    before = [m for m in messages[:at] if m.who == "counter"]
    return before[-1].asked if before else None


def heard(messages: Sequence[Message]) -> list[tuple[Message, Offered | None]]:
    """The messages that say something of the matter, with what each may reply to."""
    return [
        (message, open_before(messages, at))
        for at, message in enumerate(messages)
        if message.who != "counter" and not is_civil(message.text)
    ]


def letter_of(messages: Sequence[Message]) -> CaseLetter:
    """The one letter that the messages make."""
    raw: list[str] = []
    masked: list[tuple[int, int]] = []
    origins: list[Origin] = []
    at = 0
    for message, offered in heard(messages):
        if raw:
            raw.append(BETWEEN)
            at += len(BETWEEN)
        courtesy = masked_spans(message.text, 0)
        for piece in pieces_of(message.text, offered):
            raw.append(piece.text)
            origins.append(Origin(at, message.number, piece.start, piece.end, piece.added))
            if piece.hidden:
                masked.append((at, at + len(piece.text)))
            elif not piece.added:
                masked += _within(courtesy, piece.start, piece.end, at)
            at += len(piece.text)
    return CaseLetter(Text("".join(raw), tuple(masked)), tuple(origins))


def _within(
    spans: Sequence[tuple[int, int]], start: int, end: int, at: int
) -> list[tuple[int, int]]:
    """Those parts of some places that lie in a piece, by their places in the letter."""
    cut = [(max(start, low), min(end, high)) for low, high in spans]
    return [(low - start + at, high - start + at) for low, high in cut if low < high]
