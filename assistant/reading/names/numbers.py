"""Facts of identifying numbers: model numbers, marks in the tank, numbers of parts."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from itertools import pairwise

from assistant.reading.facts import Fact
from assistant.reading.names.book import NameBook
from assistant.reading.names.cues import place_of
from assistant.reading.names.doubt import hard_to_read
from assistant.reading.names.letter import Letter
from assistant.reading.names.not_numbers import Taken
from assistant.reading.names.number_cues import agrees, meant
from assistant.reading.names.number_spans import Number, listed_numbers
from assistant.reading.names.roles import role
from assistant.reading.names.spans import Hit

_OR = re.compile(r"\s*(?:,\s*)?\(?or\s+(?:the\s+|maybe\s+|is it\s+)?|\s*/\s*")
_AND = re.compile(r"[\s,]*(?:and|&|vs\.?|versus|\+)?[\s,]*(?:an?\s|the\s|your\s|#)?[\s]*")
_ALSO_CALLED = re.compile(
    r"[\w\s,]{0,30}[(=]\s*(?:(?:your|our|shop|part|no\.?|number|aka|is|i\.e\.)\s*){0,3}[\s#:]*"
)


def read_numbers(
    letter: Letter, book: NameBook, taken: Taken, makers: Sequence[Hit], models: Sequence[Hit]
) -> list[Fact]:
    """Facts of listed numbers; and 'unlisted' for a tank's number that stands on a seal."""
    named = frozenset(name for hit in models for name in hit.values)
    found = [
        number
        for number in listed_numbers(letter, book, taken)
        if meant(letter, book, number, (makers, models)) or agrees(book, number, named)
    ]
    runs = _runs(letter, found)
    facts: list[Fact] = []
    for i, run in enumerate(runs):
        before = runs[i - 1][-1].end if i else 0
        after = runs[i + 1][0].start if i + 1 < len(runs) else len(letter.said)
        said_of = role(letter, run[0].start, run[-1].end, (before, after))
        if said_of == "unsaid":
            # Nobody learns a maker's number but from the part in his hand.
            ours = any(k in book.ours for n in run for k in n.part_keys)
            said_of = "asked" if ours else "old"
        for number in run:
            facts.extend(_facts(letter, book, number, said_of, either=_either(letter, run)))
    return facts


def _runs(letter: Letter, found: Sequence[Number]) -> list[list[Number]]:
    """Numbers that stand together ('this or that', 'this (your that)'): one is said of all."""
    runs: list[list[Number]] = []
    for number in found:
        if runs and _together(letter, runs[-1][-1], number):
            runs[-1].append(number)
        else:
            runs.append([number])
    return runs


def _together(letter: Letter, one: Number, other: Number) -> bool:
    between = letter.said[one.end : other.start]
    return len(between) <= 45 and any(p.fullmatch(between) for p in (_OR, _AND, _ALSO_CALLED))


def _either(letter: Letter, run: Sequence[Number]) -> bool:
    """Whether the writer wavers between the numbers of a run."""
    return any(_OR.fullmatch(letter.said, one.end, other.start) for one, other in pairwise(run))


def _facts(
    letter: Letter, book: NameBook, number: Number, said_of: str, *, either: bool
) -> Iterator[Fact]:
    start, end = number.start, number.end
    words = letter.text.raw[start:end]
    builds = book.numbers.values(number.build_keys)
    parts = book.parts.values(number.part_keys)
    ours = any(key in book.shop_numbers for key in number.part_keys)
    place = place_of(letter, start, end)
    read_badly = hard_to_read(letter.before(start, end), letter.after(start, end))
    sure_part = not _goes_on(letter, number) and not read_badly
    sure_build = sure_part and not either
    if place == "bowl":
        builds = tuple(n for n in builds if n in book.on_bowls)
        parts = parts if ours else ()
    elif place == "seal":
        if not parts:
            yield Fact(
                name="unlisted", value=(words,), words=words, start=start, end=end, of="part"
            )
        builds = ()
    elif place in ("tank", "model"):
        sure_part = sure_part and ours
        parts = () if builds else parts
    elif place == "part":
        sure_build = False
        builds = () if parts else builds
    if builds:
        yield Fact(
            name="model_no", value=builds, words=words, start=start, end=end, sure=sure_build
        )
    if parts:
        yield Fact(
            name="part_no",
            value=parts,
            words=words,
            start=start,
            end=end,
            of=said_of,
            sure=sure_part,
        )


def _goes_on(letter: Letter, number: Number) -> bool:
    """Whether a lone capital follows that may be a piece of a longer number ('4412 B')."""
    if number.last + 1 >= len(letter.words) or not letter.mixed:
        return False
    after = letter.words[number.last + 1]
    raw = letter.text.raw[after.start : after.end]
    gap = letter.said[number.end : after.start]
    return len(raw) == 1 and raw.isupper() and raw not in "AI" and gap in (" ", " - ")
