"""Cards of what people say, and how a message is read with them.

In a card's pattern a blank stands for white space and `<n>` for up to n words between. A named
group, where one is filled, is what the fact cites; the rest is only looked at.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass

from assistant.reading.clauses import sentence_of
from assistant.reading.facts import Fact
from assistant.reading.stance import Stance, stance
from assistant.reading.text import Text


@dataclass(frozen=True)
class Card:
    """One thing people say: the fact it states, the words, and why they mean that.

    `denied` is the value that a denial states ('no ears'); without it the fact is negated.
    `unless` are words in the same sentence that make it speak of another part.
    """

    name: str
    value: tuple[str, ...]
    pattern: re.Pattern[str]
    reason: str
    denied: tuple[str, ...] | None = None
    unless: re.Pattern[str] | None = None


# A gap may not run over a comma, which begins another thought, nor over a denial.
_BETWEEN = r"(?!(?:not|never|no)\b|\w+n't\b)[\w'\"/&-]+"
_SHORT = re.compile(r"\[[^\]]*\]|\(\?<[!=][^)]*\)| ?<(?P<gap>\d)> ?|(?P<blank> \??)")


def words(pattern: str) -> re.Pattern[str]:
    """A pattern in a card's short form, compiled. White space is bounded: linear time."""
    return re.compile(_SHORT.sub(_long, pattern))


def _long(short: re.Match[str]) -> str:
    if short["gap"]:
        return rf"(?:\s{{1,3}}{_BETWEEN}){{0,{short['gap']}}}?\s{{1,3}}"
    if short["blank"]:
        return r"\s{0,3}" if short["blank"].endswith("?") else r"\s{1,3}"
    return short[0].replace(" ", r"\s")  # within [...] or a look behind: one blank


def card(
    name: str,
    value: str,
    pattern: str,
    reason: str,
    *,
    denied: str | None = None,
    unless: str | None = None,
) -> Card:
    """A card; a value with `|` is ambiguous between those."""
    return Card(
        name,
        tuple(value.split("|")),
        words(pattern),
        reason,
        None if denied is None else tuple(denied.split("|")),
        None if unless is None else words(unless),
    )


Accepts = Callable[[Text, int, int], bool | None]


def read_cards(
    text: Text,
    cards: Sequence[Card],
    *,
    accepts: Accepts = lambda text, start, end: True,
    how: Callable[[Text, int, int], Stance] = stance,
) -> list[Fact]:
    """The facts that the cards find, in order of place.

    An earlier card takes its words from the later ones of the same name. `accepts` says of a
    place whether it states anything: yes, no, or `None` for yes, but not surely.
    """
    found: list[Fact] = []
    taken: dict[str, list[tuple[int, int]]] = {}
    for one in cards:
        spans = taken.setdefault(one.name, [])
        new: list[tuple[int, int]] = []
        for match in text.find(one.pattern):
            start, end = _trimmed(text.said, *match.span(match.lastgroup or 0))
            if start >= end or _overlaps(spans, start, end) or _elsewhere(text, one, start):
                continue
            new.append((start, end))
            accepted = accepts(text, start, end)
            if accepted is not False:
                found.append(_fact(text, one, (start, end), how(text, start, end), accepted))
        if new:
            taken[one.name] = sorted([*spans, *new])
    return sorted(found, key=lambda f: (f.start, f.end, f.name))


def _trimmed(said: str, start: int, end: int) -> tuple[int, int]:
    cited = said[start:end]
    return end - len(cited.lstrip()), start + len(cited.rstrip())


def _overlaps(spans: Sequence[tuple[int, int]], start: int, end: int) -> bool:
    """Whether a place shares a character with one of the spans, which lie apart and in order."""
    low, high = 0, len(spans)
    while low < high:
        middle = (low + high) // 2
        if spans[middle][1] <= start:
            low = middle + 1
        else:
            high = middle
    return low < len(spans) and spans[low][0] < end


def _elsewhere(text: Text, one: Card, place: int) -> bool:
    if one.unless is None:
        return False
    low, high = sentence_of(text, place)
    return one.unless.search(text.said, max(low, place - 100), min(high, place + 100)) is not None


def _fact(
    text: Text, one: Card, span: tuple[int, int], held: Stance, accepted: bool | None
) -> Fact:
    start, end = span
    value, negated = one.value, held.negated
    if negated and one.denied is not None:
        value, negated = one.denied, False
    return Fact(
        name=one.name,
        value=value,
        words=text.raw[start:end],
        start=start,
        end=end,
        negated=negated,
        sure=not held.doubted and accepted is True,
    )


def values_of(cards: Iterable[Card], name: str) -> tuple[str, ...]:
    """Every value the cards may state for a name."""
    said = (value for c in cards if c.name == name for value in (*c.value, *(c.denied or ())))
    return tuple(dict.fromkeys(said))
