"""Finds the words of a letter that are a listed name, letter for letter or nearly."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from rapidfuzz.distance import OSA

from assistant.reading.english import is_common
from assistant.reading.names.book import MOST_WORDS, Index, Values
from assistant.reading.names.keys import span_keys
from assistant.reading.names.letter import Letter, Word
from assistant.reading.names.ordinary import ordinary

Near = Callable[[int, str], Mapping[str, int]]


@dataclass(frozen=True)
class Hit:
    """Words from `first` to `last` (both included) that are a listed name."""

    first: int
    last: int
    key: str
    values: Values
    slips: int = 0
    plain: bool = False  # ordinary words, or too short: only a name where its place says so
    other_keys: tuple[str, ...] = ()

    def overlaps(self, other: Hit) -> bool:
        return self.first <= other.last and other.first <= self.last

    def within(self, other: Hit) -> bool:
        return other.first <= self.first and self.last <= other.last


def spans(letter: Letter, longest: int) -> Iterator[tuple[int, int]]:
    """Runs of words that could be one name, from each word, the longest first."""
    words = letter.words
    for first, word in enumerate(words):
        if word.possessive:
            continue
        last, size = first, len(word.key)
        lasts = [last] if size <= longest else []
        while words[last].joins and last - first < MOST_WORDS - 1 and size <= longest:
            last += 1
            size += len(words[last].key)
            if size <= longest:
                lasts.append(last)
        for last in reversed(lasts):
            if not words[last].possessive:
                yield first, last


def exact(letter: Letter, index: Index) -> list[Hit]:
    """Names letter for letter; where they overlap, the longest."""
    hits: list[Hit] = []
    for first, last in spans(letter, index.longest + 2):
        if hits and first <= hits[-1].last:
            continue
        words = letter.words[first : last + 1]
        keys = [key for key in span_keys(words) if key in index.values]
        if not keys:
            continue
        key = keys[0]
        apart = _apart(index, key, words)
        plain = apart or _plain(key, words)
        hits.append(Hit(first, last, key, index.values[key], slips=int(apart), plain=plain))
    return hits


def _apart(index: Index, key: str, words: tuple[Word, ...]) -> bool:
    """Whether an ordinary word only joins in by chance ('Ellis and' for 'Ellisand')."""
    return any(ordinary(w.key) and w.key not in index.words[key] for w in words[1:]) or (
        len(words) > 1 and ordinary(words[0].key) and words[0].key not in index.words[key]
    )


def _plain(key: str, words: tuple[Word, ...]) -> bool:
    return len(key) < 4 or key.isdecimal() or all(ordinary(w.key) for w in words)


def alike(letter: Letter, index: Index, near: Near) -> list[Hit]:
    """Names by likeness; `near` gives the keys close to what is written at a word."""
    found: list[Hit] = []
    for first, last in spans(letter, index.longest + 3):
        words = letter.words[first : last + 1]
        usual = [w.key for w in words if ordinary(w.key)]
        if len(usual) == len(words) or not index.vocabulary.issuperset(usual):
            continue
        written = "".join(w.key for w in words if not w.possessive)
        if len(written) < 5 or written.isdecimal():
            continue
        if all(is_common(w.key) or ordinary(w.key) for w in words):
            continue
        close = {
            key: slips
            for key, slips in near(first, written).items()
            if all(word in index.words[key] for word in usual)
        }
        if not close:
            continue
        best = min(close.values())
        keys = _as_near(index, written, close, best)
        values = dict.fromkeys(v for key in keys for v in index.values[key])
        found.append(Hit(first, last, keys[0], tuple(values), max(best, 1), False, tuple(keys)))
    return _best(found)


def _as_near(index: Index, written: str, close: Mapping[str, int], best: int) -> list[str]:
    """The keys not clearly further than the best, and those just beside the best."""
    keys = {key: slips for key, slips in close.items() if slips <= best + 1}
    for key in [key for key, slips in keys.items() if slips == best]:
        for other in index.likeness.near(key):
            distance = OSA.distance(written, other)
            if distance <= best + 1:
                keys.setdefault(other, distance)
    return sorted(keys, key=lambda key: (keys[key], key))


def _best(found: list[Hit]) -> list[Hit]:
    """Without overlaps: what has most letters right comes first."""
    kept: list[Hit] = []
    taken: set[int] = set()
    for hit in sorted(found, key=lambda h: (3 * h.slips - len(h.key), h.first)):
        places = range(hit.first, hit.last + 1)
        if taken.isdisjoint(places):
            kept.append(hit)
            taken.update(places)
    return sorted(kept, key=lambda h: h.first)


def nearby(hits: Sequence[Hit], hit: Hit, words: int = 12) -> Sequence[Hit]:
    """Of hits in their order, those within so many words of another one."""
    low = bisect_left(hits, hit.first - words, key=lambda h: h.first)
    high = bisect_left(hits, hit.last + words + 1, key=lambda h: h.first)
    return hits[low:high]
