"""A message with what its short answers mean said out beside them.

'2008' after 'When was it made?' is 'The toilet was made in 2008'. What the customer wrote stays
in the letter, unread, so that it alone is ever quoted to him; the sentence beside it is read.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from assistant.cases.case import Offered, Put
from assistant.cases.choosing import LEAD_INS, chosen, sentence
from assistant.cases.numbered import Place, answers_in
from assistant.reading.not_known import Unknown, not_known, says_nothing

ANSWERS = {
    "yes": re.compile(
        r"(?:yes|yeah|yep|yup|aye|sure|correct|(?:it|they|he|she|we|i) (?:was|were|has|have|did)\b"
        r"(?! ?n[o']t))",
        re.IGNORECASE,
    ),
    "no": re.compile(
        r"(?:no\b(?!,? (?:wait|sorry|hang|hold|actually|i meant|it(?: is|'?s) (?:an? |the )"
        r"(?!original)))|nope|nah|never|not (?:that|as far|to my)"
        r"|(?:it|they|he|she|we|i) (?:was|has|did|have)(?:n't| not)"
        r"|(?:it's |it is |all |still )?original)",
        re.IGNORECASE,
    ),
}
_YES_OR_NO = frozenset({"valve_replaced"})
_NUMBERS = frozenset({"model_no", "old_part"})  # after these a year may be any number
_YEAR = re.compile(
    r"(?:(?:about|around|circa|maybe|perhaps|probably|in|from|i think)\s+)*(?:19|20)\d\d"
    r"(?:\s*(?:or so|ish|maybe|perhaps|probably|i (?:think|guess|believe)|,))*",
    re.IGNORECASE,
)  # what else could be told by it?
_THINKS = re.compile(r"\bi (?:don'?t|do not) think so\b|\bprobably not\b", re.IGNORECASE)
_FIRST = re.compile(r"(.+?)([.!?]?)((?:(?<=[.!?])\s.*)?)$", re.DOTALL)
_CLAUSE = re.compile(r"[^,;:\n]+")
_LOST_STOP = re.compile(r"^[\s.,;!?]+|(?<=[\s.,;!?])[.,;!?]+(?=\s|$)")
SHORT = 4  # words; more than this says for itself what it answers


@dataclass(frozen=True)
class Piece:
    """A piece of the letter, and the place in the message that it stands for.

    `hidden` is what the customer wrote and is not to be read; `added` is said for him.
    """

    text: str
    start: int
    end: int
    hidden: bool = False
    added: bool = False


def in_full(line: str, asked: str | None) -> str:
    """A line that answers a question, as one text: what it does not know is left out."""
    offered = Offered((Put(asked),)) if asked else None
    shown = [piece.text for piece in pieces_of(line, offered) if not piece.hidden]
    return _LOST_STOP.sub("", "".join(shown)).strip()


def pieces_of(text: str, offered: Offered | None) -> tuple[Piece, ...]:
    """The pieces of a message that replies to what was offered."""
    if offered is None:
        return (Piece(text, 0, len(text)),)
    if places := answers_in(text, len(offered.questions)):
        return tuple(_one_by_one(text, places, offered))
    hidden = [(u.start, u.end) for u in not_known(text, _asked(offered))]
    at = _begins(text, hidden)
    # 'No idea, sorry' is over; 'No idea. It leaks!' goes on to something else.
    over = any(re.search(r"[.!?]", text[end:at]) for _, end in hidden if end <= at)
    over = over or (bool(hidden) and says_nothing(text[at:]))
    answer = None if over else _said_out(text[at:], offered)
    if answer is None:
        return _split(text, hidden, None, at)
    said, length = answer
    return _split(text, [*hidden, (at, at + length)], said, at + length)


def unknown(text: str, offered: Offered | None) -> tuple[Unknown, ...]:
    """What a message says that it does not know."""
    if offered and (places := answers_in(text, len(offered.questions))):
        return tuple(
            replace(one, start=one.start + start, end=one.end + start)
            for start, end, at in places
            for one in not_known(text[start:end], (offered.questions[at].asks,))
        )
    return not_known(text, _asked(offered) if offered else ())


def _one_by_one(text: str, places: Sequence[Place], offered: Offered) -> Iterator[Piece]:
    """The pieces of answers that stand by their numbers or on their lines, each a paragraph."""
    done = 0
    for start, end, at in places:
        if done < start:
            yield Piece(text[done:start], done, start, hidden=bool(done) or not _says(text[:start]))
        alone = Offered((offered.questions[at],), offered.parts)
        for piece in pieces_of(text[start:end], alone):
            yield replace(piece, start=piece.start + start, end=piece.end + start)
        yield Piece("\n\n", end, end, added=True)
        done = end
    if done < len(text):
        yield Piece(text[done:], done, len(text))


def _says(text: str) -> bool:
    """Whether there is anything before the first answer's number."""
    return re.search(r"[^\W\d_]", text) is not None


def _asked(offered: Offered) -> tuple[str, ...]:
    return tuple(put.asks for put in offered.questions)


def _begins(text: str, hidden: list[tuple[int, int]]) -> int:
    """Where the message begins to say what it knows: after 'Dunno, ...'."""
    at = 0
    while found := re.compile(r"[\s.,;!?-]*(?:but\b\s*)?").match(text, at):
        at = found.end()
        after = [end for start, end in hidden if start <= at < end]
        if not after:
            return at
        at = after[0]
    return at


def _said_out(text: str, offered: Offered) -> tuple[str, int] | None:
    """The sentence that the beginning of a text stands for, and how much of it that is."""
    found = _FIRST.match(text.rstrip())
    if found is None:
        return None
    first = found[1]
    only = offered.only
    stop = _stop(text, len(first))
    if only and only.asks in _YES_OR_NO:
        if _THINKS.match(first):
            return f"I think {_lower(sentence(only.asks, 'no') or '')}{stop}", len(first)
        for word, pattern in ANSWERS.items():
            if pattern.match(first):
                return f"{sentence(only.asks, word)}{stop}", len(first)
    clause = _CLAUSE.match(first)
    if only and only.asks in _YES_OR_NO:
        clause = None  # 'no, it is a ...' is no 'no'
    for part in dict.fromkeys((first, clause[0] if clause else first)):
        if picked := chosen(part, offered):
            comma = text[len(part) : len(part) + 1] in (",", ";", ":")  # it goes with the choice
            return f"{picked}{_stop(text, len(part))}", len(part) + comma
    by_year = not (only and only.asks in _NUMBERS) and _YEAR.fullmatch(first)
    lead_in = LEAD_INS["made"] if by_year else LEAD_INS.get(only.asks) if only else None
    if lead_in is None or len(first.split()) > SHORT:
        return None
    return f"{lead_in.format(first)}{stop}", len(first)


def _stop(text: str, at: int) -> str:
    return "" if text[at : at + 1] in (".", "!", "?") else "."


def _lower(said: str) -> str:
    return said[:1].lower() + said[1:]


def _split(
    text: str, hidden: list[tuple[int, int]], said: str | None, at: int
) -> tuple[Piece, ...]:
    """The message in pieces, with what is said for it behind what it stands for."""
    pieces: list[Piece] = []
    done = 0
    for start, end in sorted(hidden):
        if done < start:
            pieces.append(Piece(text[done:start], done, start))
        pieces.append(Piece(text[start:end], start, end, hidden=True))
        if said is not None and end == at:
            pieces.append(Piece(f" {said}", start, end, added=True))
        done = end
    if done < len(text):
        pieces.append(Piece(text[done:], done, len(text)))
    return tuple(pieces)
