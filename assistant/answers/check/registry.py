"""Every frame: those written out in `claims/`, and one for each clause of a card there."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import cache

from assistant.answers.check.attributes import Attribute
from assistant.answers.check.cards import attributes, by_wording, gathered, limits, said, traits
from assistant.answers.check.frames import PLAIN, TRAIT, Frame, Reading
from assistant.answers.check.likeness import likeness
from assistant.answers.check.patterns import PIECES
from assistant.answers.check.plain_words import CONNECTING, CONNECTORS
from assistant.answers.check.results import Finding
from assistant.answers.check.said_of import said_of
from assistant.answers.check.scope import Trait

PIECES["likeness"] = "({F}|{J}|{adj}) ((and|,) ({J}|{adj}))*"


@cache
def frames() -> tuple[Frame, ...]:
    """Every frame: those written out, and one for each clause of a card."""
    found = list(gathered("FRAMES"))
    for pattern, cards in by_wording(attributes(), "clause").items():
        found.append(Frame(cards[0].name, pattern, _of_seal(cards)))
    for pattern, cards in by_wording(traits(), "clause").items():
        found.append(Frame(cards[0].name, pattern, _of_toilet(cards), TRAIT, traits=tuple(cards)))
    found += [
        Frame(
            "described",
            "{s:part}? (is|are|comes|come) (just)? {d:likeness}",
            _described,
            describes=True,
        ),
        Frame("described", "(its|the|whose) ring is {d:J}", _described, describes=True),
        Frame("described", "{d:likeness}", _described, joins=True, describes=True),
        *(Frame("plain", pattern, lambda reading: (), PLAIN) for pattern in CONNECTING),
    ]
    return tuple(found)


def _of_seal(cards: Sequence[Attribute]) -> Callable[[Reading], Sequence[Finding]]:
    def read(reading: Reading) -> Sequence[Finding]:
        parts = reading.subject("s")
        reading.context.parts = parts
        found = said(cards, reading.line, reading.match.group())
        return reading.judge(parts, found)

    return read


def _of_toilet(cards: Sequence[Trait]) -> Callable[[Reading], Sequence[Finding]]:
    def read(reading: Reading) -> Sequence[Finding]:
        found: list[Finding] = []
        for limit in limits(cards, reading.line, reading.match.group()):
            for scope in reading.scopes("t"):
                found += said_of(reading, scope, limit)
        return found

    return read


def _described(reading: Reading) -> Sequence[Finding]:
    alone = not reading.text("s")
    parts = reading.subject("s", nearest=alone)
    if not alone:
        reading.context.parts = parts
    return [
        *reading.described("s"),
        *reading.judge(parts, likeness(reading.line, reading.text("d"))),
    ]


def accepted() -> list[tuple[str, str]]:
    """Every wording that the check reads, as (rule, pattern); see `patterns.py` for the language.

    The words that may stand between them have the rule 'connecting'.
    """
    wordings = [(frame.rule, frame.pattern) for frame in frames()]
    for attribute in attributes():
        wordings += [(attribute.name, pattern) for pattern in attribute.post]
        wordings += [(attribute.name, f"{pattern} {{T}}") for pattern in attribute.adj]
    for trait in traits():
        wordings += [(trait.name, f"{{M}} {pattern}") for pattern in trait.post]
        wordings += [(trait.name, f"{pattern} {{M}}") for pattern in trait.pre]
    return [*wordings, *(("connecting", words) for words in CONNECTORS)]
