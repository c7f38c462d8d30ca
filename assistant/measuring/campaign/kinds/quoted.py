"""Words that no note and no letter has: a note's sentence turned, a quotation made up."""

from __future__ import annotations

import re
from functools import cache

from assistant.measuring.campaign.corruption import sentences
from assistant.measuring.campaign.told import Falsehoods, Told
from assistant.measuring.campaign.truth import Truth

_WORDS = (
    ("off", "on"), ("before", "after"), ("below", "above"), ("out of", "into"), ("new", "old"),
    ("flat", "upright"), ("nothing", "everything"), ("bright", "dull"), ("wide", "narrow"),
)  # fmt: skip
_NEVER_WRITTEN = ("77 mm", "Q 999", "never touched")
_FEW = 3


def note_altered(told: Told, sentence: str) -> Falsehoods:
    """A general sentence with one word turned, which no note or table has."""
    said = general(told.truth)
    if told.truth.part_no.search(sentence) or _words(sentence) not in said:
        return
    made = 0
    for word, other in _WORDS:
        altered = re.sub(rf"\b{word}\b", other, sentence, count=1)
        if altered != sentence and _words(altered) not in said and made < _FEW:
            made += 1
            yield "a note altered", altered


def quote_altered(told: Told, sentence: str) -> Falsehoods:
    """Words in quotation marks that the letter does not have."""
    for quoted in re.findall(r'"([^"]+)"', sentence):
        for other in _NEVER_WRITTEN:
            if other not in told.letter:
                yield "words never written", sentence.replace(f'"{quoted}"', f'"{other}"')


@cache
def general(truth: Truth) -> frozenset[str]:
    """Every sentence of the notes, of the shop's settings, and of its questions and causes."""
    knowledge = truth.tables.parent
    files = [*sorted((knowledge / "notes").glob("*.md")), knowledge / "shop.toml"]
    texts = [path.read_text(encoding="utf-8") for path in files if path.is_file()]
    for table in ("questions", "causes"):
        if (truth.tables / f"{table}.csv").is_file():
            texts += [cell for row in truth.rows(table) for cell in row.values()]
    return frozenset(_words(sentence) for text in texts for sentence in sentences(text))


def _words(sentence: str) -> str:
    return " ".join(sentence.split())


KINDS = (note_altered, quote_altered)
