"""The passages of the shop's notes that an answer naming a part rests on."""

from __future__ import annotations

from assistant.answers.compose.case import Case
from assistant.answers.draft import Draft, Source
from assistant.answers.words import how_it_holds, inches
from assistant.search.searching import Search

MOST = 3  # passages


def supported(case: Case, draft: Draft, search: Search) -> Draft:
    """The draft, with the passages on the styles of seal that it names among its sources."""
    for style in dict.fromkeys(case.seal(part.part_no).style for part in draft.parts):
        words = " ".join(_told_of(case, draft, style))
        for passage, likeness in search.supporting(style, words, case.audience, MOST):
            source = Source(
                f"{passage.note}.md", passage.heading, passage.lines, round(likeness, 2)
            )
            if all((s.note, s.section) != (source.note, source.section) for s in draft.sources):
                draft.sources.append(source)
    return draft


def _told_of(case: Case, draft: Draft, style: str) -> list[str]:
    """What the answer rests on, in words: the style, its opening, how it holds."""
    told = [case.tables.styles[style].plain_name]
    for part in draft.parts:
        seal = case.seal(part.part_no)
        if seal.style == style:
            told.append(f"{inches(seal.opening_in)} opening" if seal.opening_in else "")
            told.append(how_it_holds(seal) or "")
    return told
