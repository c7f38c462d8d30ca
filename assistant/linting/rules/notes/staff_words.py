"""Customers' notes say nothing that is between the shop and its suppliers."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from assistant.linting.finding import Finding, Rule
from assistant.linting.gathered import Gathered
from assistant.linting.rules.notes.source import Source, sources
from assistant.records.notes import Note
from assistant.records.sections import headings

_COUNT = r"(?:\d+|an?|two|three|four|five|six|seven|eight|nine|ten|a dozen|a few|several)"
_GOODS = r"(?:seals?|parts?|flappers?|balls?|rings?|gaskets?|washers?|packs?|boxe?s?|items?|each)"
_SUPPLIER = r"(?:supplier|maker|manufacturer|dealer|wholesaler|buyer)(?:'?s|s')?"


@dataclass(frozen=True)
class Words:
    """Words for staff alone, why, and where the same words are harmless."""

    pattern: str
    reason: str
    harmless: str = "(?!)"


CARDS = (
    Words(
        r"our (?:own )?costs?\b|costs? (?:us|the shop)\b|cost prices?\b|unit costs?\b"
        r"|(?:at|above|below|over|under) cost\b",
        "what we pay is between us and the supplier",  # 'it costs nothing' speaks of the customer
    ),
    Words(
        r"margins?\b",
        "what we earn on a part is nobody else's business",
        r"margins? (?:of|for) (?:error|safety|doubt|play|about|an?|one|two|half|\d)"
        r"|(?:in|on|at) the margin|by an? (?:\w+ )?margin|safety margin",
    ),
    Words(
        r"mark-?ups?\b|(?:our|the|a) mark up\b|mark(?:ed|s)? (?:it|them|prices?) up\b"
        r"|marked up by\b",
        "how a price is made is nobody else's business",
    ),
    Words(
        r"wholesale(?:rs?)?\b",
        "where and how we buy is between us and the supplier",
        r"wholesale (?:change|replacement|clearance)",
    ),
    Words(
        r"(?:buying|trade|dealer|net) prices?\b|our purchase prices?\b|what we pay\b"
        r"|we (?:buy|get) (?:it|them|these|those) (?:for|at)\b",
        "what we pay is between us and the supplier",
        r"what we pay (?:back|you)",
    ),
    Words(
        rf"{_COUNT} (?:\w+ ){{0,3}}on hand\b|on[- ]hand (?:counts?|stock|figures?|numbers?)"
        rf"|stock counts?\b|we have (?:only )?{_COUNT} (?:\w+ )?left\b",
        "customers hear whether a part is in stock, never how many there are",
        r"(?:rags?|towels?|cloths?|buckets?|sponges?|tools?|gloves|people|helpers?|hands?) on hand",
    ),
    Words(
        r"for the counter\b|for (?:the )?staff(?: only)?\b|staff[- ]only"
        r"|(?:do not|don't|never) (?:tell|show)(?: \w+)?(?: to)? (?:the |a )?customers?\b",
        "it is said to us and not to the reader",
        r"(?:question|letter|job|task|matter|work|one|something)s? (?:is )?for the counter"
        r"|for the counter to\b",
    ),
    Words(
        rf"{_SUPPLIER} (?:\w+ )?(?:discounts?|rebates?|terms)\b"
        rf"|(?:discounts?|rebates?|terms) (?:from|of|by) (?:the|our|a) {_SUPPLIER}\b"
        r"|(?:discounts?|rebates?) (?:that )?we get\b",
        "what a supplier grants us is between us and the supplier",
    ),
)
_READ = tuple(
    (re.compile(rf"\b(?:{card.pattern})", re.IGNORECASE),
     re.compile(rf"\b(?:{card.harmless})", re.IGNORECASE), card.reason)
    for card in CARDS
)  # fmt: skip


def staff_words(text: str) -> tuple[str, str] | None:
    """The first words of a text that are for staff alone, and why they are."""
    plain = text.replace("’", "'")
    for words, harmless, reason in _READ:
        spared = [found.span() for found in harmless.finditer(plain)]
        for found in words.finditer(plain):
            if not any(start < found.end() and found.start() < end for start, end in spared):
                return found.group(), reason
    return None


def find(gathered: Gathered) -> Iterator[Finding]:
    """Titles, headings and sentences of customers' notes with words for staff alone."""
    for name, source in sources(gathered).items():
        note = gathered.notes[name]
        if note.audience != "customers":
            continue
        for line, text in _shown(note, source):
            if told := staff_words(text):
                words, reason = told
                yield Finding(
                    path=gathered.note_at(name),
                    line=line,
                    what=f"customers read '{words}' here: {reason}",
                    mend="take it out, or put it in a note with 'audience: staff'",
                )


def _shown(note: Note, source: Source) -> Iterator[tuple[int, str]]:
    """What readers see of a note, each with its line."""
    yield source.line_of("title"), note.title
    for heading in headings(source.tokens):
        if heading.text != note.title:
            yield heading.line, heading.text
    for section in note.sections.values():
        for line in section.sentences:
            yield line.line, line.text


RULE = Rule(
    "staff-words",
    "error",
    "Answers quote a customers' note to customers, who are to see neither cost nor counts nor what "
    "the shop agrees with its suppliers.",
    find,
)
