"""A reply to several questions: '1. a photo follows 2. round', or a line for each."""

from __future__ import annotations

import re
from itertools import pairwise
from typing import TypeAlias

Place: TypeAlias = tuple[int, int, int]  # start, end, and which question, from 0

SHORT = 6  # words; a longer line says for itself what it answers
_NUMBER = re.compile(r"(?:^|(?<=\s))\(?(\d)[.):][ \t]+(?=\S)", re.MULTILINE)
_LINE = re.compile(r"[^\n]*\S[^\n]*")


def answers_in(text: str, questions: int) -> tuple[Place, ...]:
    """Where each of several questions is answered; nothing where the text does not say.

    The questions' numbers rise, though some may be left out; without numbers there are as many
    short lines as questions.
    """
    if questions < 2:
        return ()
    return _by_number(text, questions) or _by_line(text, questions)


def _by_number(text: str, questions: int) -> tuple[Place, ...]:
    found = [(m, int(m[1]) - 1) for m in _NUMBER.finditer(text)]
    which = [at for _, at in found]
    rising = all(a < b for a, b in pairwise(which))
    if not found or not rising or which[0] < 0 or which[-1] >= questions:
        return ()
    if text[: found[0][0].start()].rpartition("\n")[2].strip():
        return ()  # 'The opening is 2. Also ...'
    ends = [m.start() for m, _ in found[1:]] + [len(text)]
    return tuple((m.end(), end, at) for (m, at), end in zip(found, ends, strict=True))


def _by_line(text: str, questions: int) -> tuple[Place, ...]:
    lines = list(_LINE.finditer(text))
    if len(lines) != questions or any(len(line[0].split()) > SHORT for line in lines):
        return ()
    return tuple((line.start(), line.end(), at) for at, line in enumerate(lines))
