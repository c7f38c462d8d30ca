"""Answers made false, one sentence at a time, and the few falsehoods that only a whole shows."""

from __future__ import annotations

import html
import random
import re
import unicodedata
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from assistant.answers.compose.case import Audience
from assistant.measuring.campaign.told import Kind, Told

# Nothing in any table could bear these out, whatever the shop.
EMPTY_PROMISES = (
    "It is guaranteed for life.", "It fits every toilet.", "It never leaks.", "Any seal will do.",
    "It lasts 10 years.", "This is a universal seal.", "It always fits.",
)  # fmt: skip

RESERVED = re.compile(
    r",? (?:if the flush valve is the original one|as long as the valve has not been replaced"
    r"|as long as the flush valve is the original one)"
    r"|\n\nAll of this holds if the flush valve is the original one\."
)
_WORD = re.compile(r"[^\W_]+")
_POINT = re.compile(r"^\s*\d{1,9}[.)](?:\s+|$)")  # the number of a point, which says nothing
_BETWEEN = re.compile(r"(?<=[.?!])(?<!No\.) +|\n+")


@dataclass(frozen=True)
class Corrupted:
    """An answer with one sentence made false. `alone`: all its other sentences stay true."""

    kind: str
    text: str
    sentence: str
    audience: Audience = "staff"
    alone: bool = True
    was: str = ""  # the true sentence in whose place the false one stands, if any


def plain(text: str) -> str:
    """The words of a Markdown text."""
    return " ".join(text.replace("*", "").split())


def as_read(text: str) -> str:
    """A text's letters and figures alone, as a reader takes them in whatever their marks."""
    flat = unicodedata.normalize("NFKC", html.unescape(text)).casefold()
    flat = "".join(c for c in flat if unicodedata.category(c) != "Cf" and c not in "*_`~")
    return f" {' '.join(_WORD.findall(flat))} "


def spans(text: str) -> Iterator[tuple[int, int]]:
    """Where the sentences of an answer begin and end; a mark such as 'No. 7' ends none."""
    start = 0
    for stop in (*_BETWEEN.finditer(text), None):
        end = stop.start() if stop else len(text)
        if text[start:end].strip():
            yield start, end
        start = stop.end() if stop else len(text)


def sentences(text: str) -> list[str]:
    """The sentences of an answer."""
    return [text[start:end] for start, end in spans(text)]


def let_through(told: Told, false: Corrupted, shown: str) -> bool:
    """Whether the false sentence still stands in what is shown, or anything new that was in it.

    What is shown of a false answer must be sentences of the true one and nothing else.
    """
    if plain(false.sentence) in plain(shown):
        return True
    true = {as_read(sentence) for sentence in sentences(told.text)} | {as_read("")}
    return any(as_read(_POINT.sub("", sentence)) not in true for sentence in sentences(shown))


def corrupted(told: Told, kinds: Sequence[Kind]) -> Iterator[Corrupted]:
    """Every false answer that one good answer gives rise to."""
    true = plain(told.text)
    for start, end in spans(told.text):
        sentence = told.text[start:end]
        for make in kinds:
            for kind, false in make(told, sentence):
                said = false.removeprefix("- ")
                if plain(said) and plain(said) not in true:
                    text = told.text[:start] + false + told.text[end:]
                    yield Corrupted(kind, text, said, told.audience, was=sentence)
    yield from _promises(told)
    yield from _unreserved(told)
    yield from _secrets(told)


def _promises(told: Told) -> Iterator[Corrupted]:
    """A bare promise at the end, or at the end of a paragraph."""
    paragraphs = told.text.split("\n\n")
    into = [n for n, p in enumerate(paragraphs) if not p.startswith(("-", ">", "1."))]
    for promise in EMPTY_PROMISES:
        at = random.Random(told.text + promise).choice([*into, len(paragraphs)])
        if at == len(paragraphs):
            text = f"{told.text}\n\n{promise}"
        else:
            changed = [*paragraphs[:at], f"{paragraphs[at]} {promise}", *paragraphs[at + 1 :]]
            text = "\n\n".join(changed)
        yield Corrupted("a promise added", text, promise, told.audience)


def _unreserved(told: Told) -> Iterator[Corrupted]:
    """That a seal fits, without the reservation that the flush valve is the original one."""
    text = RESERVED.sub("", told.text)
    if told.original or not told.main or text == told.text or "original" in text:
        return
    for sentence in sentences(told.text):
        bare = RESERVED.sub("", sentence)
        if bare != sentence:
            yield Corrupted(
                "reservation dropped", text, bare.removeprefix("- "), told.audience, alone=False
            )


def _secrets(told: Told) -> Iterator[Corrupted]:
    """What is for staff alone, said to customers."""
    row = told.truth.seals.get(told.main, {})
    if told.audience != "customers" or not row.get("on_hand") or not row.get("cost"):
        return
    for secret in (
        f"For the counter: {told.main}: {row['on_hand']} on hand, it costs us ${row['cost']}.",
        f"**{told.main}** costs us ${row['cost']}.",
        f"We have {row['on_hand']} on hand.",
    ):
        yield Corrupted(
            "staff's own, for customers", f"{told.text}\n\n{secret}", secret, "customers"
        )
