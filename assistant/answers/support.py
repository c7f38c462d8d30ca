"""The passages of the shop's notes that answer a question, or that an answer rests on."""

from __future__ import annotations

from assistant.answers.compose.case import Case
from assistant.answers.draft import Draft, Source
from assistant.answers.words import how_it_holds, inches
from assistant.fitment.decision import Decision
from assistant.reading.facts import Facts
from assistant.search.searching import Found, Search

MOST = 3  # passages


# Names that only a table knows. In a question to the notes they drown what it asks.
_NAMES = ("brand", "model", "model_no", "part_no", "unlisted", "made", "bought")


def looked_up(
    case: Case, facts: Facts, question: str, styles: frozenset[str], search: Search
) -> list[Found]:
    """The sentences that answer a question, of notes about these styles where any are told.

    'I bought PBK-6230. How do I hook it on?' is asked again as 'I bought the flapper on pegs'.
    """
    found = search.answer(question, case.audience, styles)
    if found:
        return found
    reworded = _reworded(case, facts, question, styles)
    return [] if reworded == question else search.answer(reworded, case.audience, styles)


def _reworded(case: Case, facts: Facts, question: str, styles: frozenset[str]) -> str:
    """The question with names left out, and the one style that is told said in their place."""
    style = case.tables.styles[next(iter(styles))].plain_name if len(styles) == 1 else ""
    said = question
    for fact in facts.named(*_NAMES):
        part = style and fact.name == "part_no" and fact.words in said
        said = said.replace(fact.words, f"the {style}" if part else "")
    if style and style not in said:
        said += f" ({style})"
    return " ".join(said.split())


def told_styles(case: Case, decision: Decision, facts: Facts) -> frozenset[str]:
    """The styles that the seal in question may have; none where the letter does not tell.

    Told by the seal's number, by the toilet, or by how it is held.
    """
    seals = case.tables.seals
    numbers = [c for f in facts.named("part_no") if not f.negated for c in f.choices]
    if named := frozenset(seals[n].style for n in numbers if n in seals):
        return named
    if facts.named("model", "model_no"):
        places = [p for s in decision.scenarios for p in s.places]
        if styles := frozenset(place.valve.style for place in places):
            return styles
    held = [f for f in facts.named("mount") if f.sure and not f.negated]
    ways = {choice for fact in held for choice in fact.choices} - {"pegs"}  # most hang on pegs
    return frozenset(
        seal.style for seal in seals.values() if ways and ways >= {*seal.mount} != set()
    )


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
