"""Where a note says so: the title and the lines cited hold what was said."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.answers.check.general import Statement
from assistant.answers.check.results import CONTRADICTED, SUPPORTED, Audience, Finding
from assistant.answers.check.words import alike

_CITATION = re.compile(
    r'that is from our note "(?P<title>.+)", lines? (?P<first>\d{1,6})'
    r"(?: to (?P<last>\d{1,6}))?\.?",
    re.IGNORECASE,
)


def citation(
    sentence: str, said: Sequence[Sequence[Statement]], audience: Audience
) -> Finding | None:
    """The finding on a sentence that cites a note; `None` where it is no such sentence.

    `said` are the sentences since the last citation, each with the places that say it. The
    citation holds if there are some, and each stands in the note and the lines named.
    """
    match = _CITATION.fullmatch(" ".join(alike(sentence).split()))
    if match is None:
        return None
    first, last = int(match["first"]), int(match["last"] or match["first"])

    def cited(place: Statement) -> bool:
        may_see = audience == "staff" or not place.staff_only
        of_the_note = bool(place.title) and _flat(place.title) == _flat(match["title"])
        return may_see and of_the_note and place.line is not None and first <= place.line <= last

    held = bool(said) and all(any(map(cited, places)) for places in said)
    row = next((place.source for places in said for place in places if cited(place)), None)
    return Finding(sentence, "citation", SUPPORTED if held else CONTRADICTED, row)


def _flat(text: str) -> str:
    return " ".join(alike(text).lower().split())
