"""Where a note says so: the title and the lines cited hold what was said."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.answers.check.general import Statement
from assistant.answers.check.results import CONTRADICTED, SUPPORTED, Finding
from assistant.answers.check.words import alike

_CITATION = re.compile(
    r'that is from our note "(?P<title>.+)", lines? (?P<first>\d{1,6})'
    r"(?: to (?P<last>\d{1,6}))?\.?",
    re.IGNORECASE,
)


def citation(sentence: str, said: Sequence[Statement]) -> Finding | None:
    """The finding on a sentence that cites a note; `None` where it is no such sentence.

    It holds if something of that note was said before it, and all that was said of it since the
    last citation stands in the lines named.
    """
    match = _CITATION.fullmatch(" ".join(alike(sentence).split()))
    if match is None:
        return None
    first, last = int(match["first"]), int(match["last"] or match["first"])
    own = [s for s in said if s.title and _flat(s.title) == _flat(match["title"])]
    held = bool(own) and all(s.line is not None and first <= s.line <= last for s in own)
    row = own[0].source if own else None
    return Finding(sentence, "citation", SUPPORTED if held else CONTRADICTED, row)


def _flat(text: str) -> str:
    return " ".join(alike(text).lower().split())
