"""The few sentences of a passage that answer, as they stand there."""

from __future__ import annotations

import re
from collections.abc import Sequence

import numpy as np

from assistant.records.sections import Line
from assistant.search.vectors import Vectors

_FIRST_WORD = re.compile(r"[^\W_]+")  # of "They're" as of 'It:' what counts
MOST = 5  # sentences; a section of a well-kept note is hardly longer
# A sentence that begins so speaks of the one before it and cannot open an answer.
_LEANING = frozenset(
    """
    it its this that these those they their them both such he she his her so then but and or
    otherwise instead also there either neither same
    """.split()  # noqa: SIM905 - a quoted list would be harder to read
)


def excerpt(sentences: Sequence[Line], cosines: Vectors) -> tuple[Line, ...]:
    """At most `MOST` sentences in a row: those most like the question, from a fit beginning.

    `cosines`, of shape `(sentences,)`, tell how like the question each is.
    """
    sentences = _without_pointers(sentences)
    cosines = cosines[: len(sentences)]
    if len(sentences) <= MOST:
        return tuple(sentences)
    best = int(np.argmax(cosines))
    starts = range(max(0, best - MOST + 1), min(best, len(sentences) - MOST) + 1)
    fit = [at for at in starts if not leans(sentences[at].text)]
    if not fit:  # reach back to the sentence that the best one leans on
        at = best
        while at > 0 and leans(sentences[at].text):
            at -= 1
        return tuple(sentences[at : at + MOST])
    start = max(fit, key=lambda at: (float(cosines[at : at + MOST].sum()), -at))
    return tuple(sentences[start : start + MOST])


def _without_pointers(sentences: Sequence[Line]) -> Sequence[Line]:
    """Without sentences at the end that only send the reader of the note on to another."""
    last = len(sentences)
    while last > 1 and sentences[last - 1].points:
        last -= 1
    return sentences[:last]


def leans(sentence: str) -> bool:
    """Whether a sentence begins with a word that points back."""
    first = _FIRST_WORD.search(sentence.lower().removeprefix("the "))  # 'the same' leans
    return first is not None and first[0] in _LEANING
