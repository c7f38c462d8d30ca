"""A question of how or why, answered in the words of the shop's notes and cited to the line."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby

from assistant.answers.compose.case import Case
from assistant.answers.draft import Draft, Source
from assistant.fitment.decision import Outcome
from assistant.records.sections import Line
from assistant.search.searching import Found

# Which cautions go with a note's tag: hands in the tank, and rubber that chemicals eat.
_CAUTIONS = {
    "installing": ("shut-the-supply", "porcelain"),
}


def explain(case: Case, found: Sequence[Found]) -> Draft:
    """The sentences that answer, where each stands, and the cautions for the work."""
    draft = Draft(Outcome.NOTE)
    for one in found:
        passage = one.passage
        quoted = [sentence.text for sentence in one.sentences]
        draft.paragraphs += as_written(one.sentences)
        draft.main += quoted if one is found[0] else []
        draft.say(citation(passage.title, one.lines))
        draft.sources.append(
            Source(f"{passage.note}.md", passage.heading, one.lines, round(one.likely, 2))
        )
    tags = [tag for one in found if one.passage.note != "safety" for tag in one.passage.tags]
    sections = dict.fromkeys(section for tag in tags for section in _CAUTIONS.get(tag, ()))
    said = [draft.quote(case.notes, "safety", section) for section in sections]
    draft.cautions += [s for s in said if s and s not in draft.text]
    draft.say(*draft.cautions)
    return draft


def as_written(sentences: Sequence[Line]) -> Iterator[list[str]]:
    """The sentences in paragraphs; the items of a list each on a line with the note's mark."""
    for is_list, run in groupby(sentences, key=lambda sentence: bool(sentence.mark)):
        if is_list:
            yield ["\n".join(f"{item.mark} {item.text}" for item in run)]
        else:
            yield [sentence.text for sentence in run]


def citation(title: str, lines: tuple[int, int]) -> str:
    """Where a note says so."""
    first, last = lines
    where = f"line {first}" if first == last else f"lines {first} to {last}"
    return f"That is from our note “{title}”, {where}."


def notes_silent(case: Case) -> Draft:
    """A question of how or why that the notes do not answer."""
    draft = Draft(Outcome.NOTE)
    draft.say(
        draft.quote(case.notes, "what-helps-us", "notes-silent"),
        draft.quote(case.notes, "what-helps-us", "person"),
    )
    return draft
