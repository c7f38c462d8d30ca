"""Every good answer made false in every way; some are drawn, and each given to the checker."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from assistant.measuring.campaign.answers import Gathered
from assistant.measuring.campaign.checking import CheckAll, Unchecked
from assistant.measuring.campaign.corruption import (
    Corrupted,
    corrupted,
    let_through,
    plain,
    sentences,
)
from assistant.measuring.campaign.drawing import drawn
from assistant.measuring.campaign.told import Kind, Told
from assistant.measuring.evaluation import Progress
from assistant.measuring.totals import Share


@dataclass
class Tally:
    """One kind of falsehood: how many could be made, were checked and were let through.

    `beside` are the true sentences that stood beside the false ones, `lost` those of them that
    went with it.
    """

    made: int = 0
    checked: int = 0
    missed: int = 0
    beside: int = 0
    lost: int = 0


@dataclass(frozen=True)
class Missed:
    """A false sentence that would have been shown."""

    told: Told
    false: Corrupted
    shown: str


@dataclass(frozen=True)
class Campaign:
    """Everything that came of it. `again`: true sentences taken out of good answers as they are."""

    seed: int
    gathered: Gathered
    kinds: dict[str, Tally]
    missed: tuple[Missed, ...]
    again: Share
    again_lost: tuple[tuple[Told, str], ...] = field(default=())

    @property
    def checked(self) -> int:
        """How many false answers were checked."""
        return sum(tally.checked for tally in self.kinds.values())

    @property
    def made(self) -> int:
        """How many false answers could be made of the good ones."""
        return sum(tally.made for tally in self.kinds.values())

    @property
    def beside(self) -> Share:
        """The true sentences lost beside a false one, of all that stood there."""
        tallies = self.kinds.values()
        return Share(sum(t.lost for t in tallies), sum(t.beside for t in tallies))


def campaign(
    gathered: Gathered,
    kinds: Sequence[Kind],
    check_all: CheckAll,
    *,
    count: int,
    seed: int,
    progress: Progress = lambda done, of: None,
) -> Campaign:
    """Checks the good answers as they are, and `count` of the false ones made of them."""
    every = list(falsified(gathered.good, kinds))
    tallies = {kind: Tally(made=n) for kind, n in sorted(Counter(f.kind for _, f in every).items())}
    chosen = drawn([(false.kind, (told, false)) for told, false in every], count, seed)
    texts = [_unchecked(told, told.text) for told in gathered.good]
    texts += [_unchecked(told, false.text) for told, false in chosen]
    seen = check_all(texts)
    of, stood = len(texts), 0
    again_lost: list[tuple[Told, str]] = []
    for done, (told, shown) in enumerate(zip(gathered.good, seen, strict=False), start=1):
        said, left = sentences(told.text), plain(shown)
        stood += len(said)
        again_lost += [(told, sentence) for sentence in said if plain(sentence) not in left]
        progress(done, of)
    missed = []
    for done, ((told, false), shown) in enumerate(
        zip(chosen, seen, strict=True), start=1 + len(gathered.good)
    ):
        if _count(tallies[false.kind], told, false, shown):
            missed.append(Missed(told, false, shown))
        progress(done, of)
    again = Share(len(again_lost), stood)
    return Campaign(seed, gathered, tallies, tuple(missed), again, tuple(again_lost))


def falsified(good: Sequence[Told], kinds: Sequence[Kind]) -> Iterator[tuple[Told, Corrupted]]:
    """Every false answer once: what two letters or two kinds give alike is not counted twice."""
    before: set[tuple[str, ...]] = set()
    for told in good:
        for false in corrupted(told, kinds):
            quotes = told.letter if '"' in false.text or "\n>" in false.text else ""
            key = (false.text, false.sentence, told.audience, str(told.original), quotes)
            if key not in before:
                before.add(key)
                yield told, false


def _count(tally: Tally, told: Told, false: Corrupted, shown: str) -> bool:
    """Counts one false answer; whether its false sentence still stands."""
    missed = let_through(told, false, shown)
    tally.checked += 1
    tally.missed += missed
    if false.alone:
        true = set(sentences(told.text))
        beside, left = [s for s in sentences(false.text) if s in true], plain(shown)
        tally.beside += len(beside)
        tally.lost += sum(plain(sentence.removeprefix("- ")) not in left for sentence in beside)
    return missed


def _unchecked(told: Told, text: str) -> Unchecked:
    return Unchecked(text, told.audience, told.letter, told.original)
