"""A sentence as a line of words and typed items, the form in which every frame reads it."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

from assistant.answers.check.items import Item
from assistant.answers.check.lexicon import Lexicon
from assistant.answers.check.quantities import money, quantity
from assistant.answers.check.words import Word, words

LONGEST = 900  # letters; a longer sentence is nothing that a composer of ours writes
ITEM = re.compile(r" <([A-Z]+)(\d+)>")


class Line:
    """`text` holds every word or item after one blank; `items` what '<P0>' and so on stand for."""

    def __init__(self, text: str, items: list[Item], mark: str) -> None:
        self.text, self.items, self.mark = text, items, mark

    def within(self, stretch: str, kind: str | None = None) -> list[Item]:
        """The items of a stretch of the line, in order, perhaps of one kind only."""
        found = [self.items[int(number)] for _, number in ITEM.findall(stretch)]
        return [item for item in found if kind is None or kind in item.values]

    def rewrite(self, pattern: re.Pattern[str], make: Callable[[re.Match[str]], Any]) -> None:
        """Puts one item for each stretch that `make` gives a value by kind for."""

        def put(match: re.Match[str]) -> str:
            values = make(match)
            if values is None:
                return match.group()
            self.items.append(Item(values, self.plain(match.group())))
            return f" <{self.items[-1].kinds}{len(self.items) - 1}>"

        self.text = pattern.sub(put, self.text)

    def plain(self, stretch: str) -> str:
        """A stretch in words again."""
        return ITEM.sub(lambda m: " " + self.items[int(m.group(2))].text, stretch).strip()


def line_of(
    sentence: str, lexicon: Lexicon, currency: str, without: frozenset[str] = frozenset()
) -> Line | None:
    """The sentence as a line, its last mark kept apart; `None` if it is too long.

    `without` names kinds of names to leave unread, for a second look at the same words.
    """
    if len(sentence) > LONGEST:
        return None
    row = words(sentence)
    mark = ""
    while row and row[-1].low in ".!?:":
        mark, row = row[-1].low, row[:-1]
    text: list[str] = []
    items: list[Item] = []
    at = 0
    while at < len(row):
        values, length = _read(sentence, row, at, lexicon, currency, without)
        if values:
            said = sentence[row[at].start : row[at + length - 1].end]
            items.append(Item(values, said))
            text.append(f" <{items[-1].kinds}{len(items) - 1}>")
        else:
            text.append(f" {row[at].low}")
        at += length
    return Line("".join(text), items, mark)


def _is_inches(row: list[Word], at: int) -> bool:
    """Whether the mark stands for inches within a quotation: a number before, a mark after."""
    after = row[at + 1] if at + 1 < len(row) else None
    doubled = after is not None and after.low == '"' and after.start == row[at].end
    return doubled and row[at - 1].low[-1:].isdigit()


def _read(
    sentence: str,
    row: list[Word],
    at: int,
    lexicon: Lexicon,
    currency: str,
    without: frozenset[str],
) -> tuple[dict[str, Any], int]:
    if row[at].low == '"':
        for end in range(at + 1, len(row)):
            if row[end].low == '"' and not _is_inches(row, end):
                return {"Q": sentence[row[at].end : row[end].start]}, end + 1 - at
    if amount := money(row, at, currency):
        return amount
    named = lexicon.find(row, at, without)
    counted = quantity(row, at)
    if named and counted:
        if named[1] == counted[1]:
            return {**counted[0], **named[0]}, named[1]
        return max(named, counted, key=lambda found: found[1])
    return named or counted or ({}, 1)
