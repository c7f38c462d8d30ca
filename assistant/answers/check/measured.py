"""A seal that could fit by the measurements of a letter, where no toilet is named."""

from __future__ import annotations

from assistant.answers.check.context import Context
from assistant.answers.check.items import Length
from assistant.answers.check.line import line_of
from assistant.answers.check.lookup import RING_MM, SPAN_MM, cited
from assistant.answers.check.results import CONTRADICTED, SUPPORTED, UNKNOWN, Finding
from assistant.records.rows import Seal

# What a tape held into a wet tank may be out by, on top of what the hinge forgives.
OPENING_MM = 6.0
BY_TAPE_MM = 3.0


def agrees_with_letter(context: Context, part: str) -> Finding:
    """Every length quoted from the letter must be one of the seal's own, or near it.

    The claim is a weak one ('could'), and stands only with the words quoted before it.
    """
    seal = context.given.tables.seals[part]
    claim = f"{part} could fit by the measurements of the letter"
    if not context.by_measures or not context.quotes or seal.opening_in is None:
        return Finding(claim, "measures", UNKNOWN, cited(seal))
    if seal.status == "discontinued":
        return Finding(claim, "discontinued", CONTRADICTED, cited(seal))
    fits = all(near(seal, length) for length in lengths_quoted(context))
    return Finding(claim, "measures", SUPPORTED if fits else CONTRADICTED, cited(seal))


def lengths_quoted(context: Context) -> list[Length]:
    """Every length in the words quoted from the letter so far."""
    given = context.given
    return [
        item.values["L"]
        for quote in context.quotes
        if (line := line_of(quote, given.lexicon, given.currency))
        for item in line.items
        if "L" in item.values
    ]


def near(seal: Seal, length: Length) -> bool:
    """Whether a length may be the seal's opening, hinge or ring, measured by tape."""
    known = (
        (seal.opening_in * 25.4 if seal.opening_in else None, OPENING_MM),
        (seal.ear_span_mm, SPAN_MM + BY_TAPE_MM),
        (seal.ring_mm, RING_MM + BY_TAPE_MM),
    )
    return any(mm is not None and abs(length.mm - mm) <= within for mm, within in known)
