"""What one sentence of an answer is about, and which seals would make it false."""

from __future__ import annotations

import random
import re
from collections.abc import Iterable, Sequence
from functools import lru_cache
from typing import TypeVar

from assistant.measuring.campaign.told import Falsehoods, Kind, Told
from assistant.measuring.campaign.truth import Row, Truth

T = TypeVar("T")

PART = re.compile(r"PBK-\d{4}")
AFFIRMS = re.compile(r"\bfits? (?:the|it)\b|\bit takes\b|\bThe seal for\b|\bthat is the set\b")
NEXT = re.compile(r"(?<=\.) (?=\*\*PBK-|It |For the counter)")  # where another sentence begins
LIVING = ("stocked", "to order")
MOST = 4  # falsehoods of one kind for a sentence


def some(sentence: str, options: Iterable[T], most: int = 2) -> list[T]:
    """A few of the options, always the same ones for the same sentence."""
    pool = list(options)
    return random.Random(sentence).sample(pool, min(most, len(pool)))


def by_sentence(kind: Kind) -> Kind:
    """The kind at work on each sentence, where two or more are handed over as one."""

    def each(told: Told, sentence: str) -> Falsehoods:
        said = NEXT.split(sentence)
        made = [
            (name, " ".join([*said[:at], false, *said[at + 1 :]]))
            for at, one in enumerate(said)
            for name, false in kind(told, one)
        ]
        yield from some(sentence, made, MOST)

    return each


def bold(part_no: str) -> str:
    """A part number as it is set in an answer."""
    return f"**{part_no}**"


def parts_in(sentence: str) -> tuple[str, ...]:
    """The parts that a sentence names, in order."""
    return tuple(dict.fromkeys(PART.findall(sentence)))


def affirms(told: Told, sentence: str) -> bool:
    """Whether it says of the parts it names that the toilet, or a build of it, takes them."""
    return bool(
        told.builds
        and parts_in(sentence)
        and AFFIRMS.search(sentence)
        and "not fit" not in sentence
        and "settle" not in sentence
    )


def denied(sentence: str) -> str:
    """The part of which it says that it does not fit, if it is a single one."""
    parts = parts_in(sentence)
    return parts[0] if len(parts) == 1 and "does not fit" in sentence else ""


def part_meant(told: Told, sentence: str) -> str:
    """The part that a sentence describes: the one it names, else the last one before it."""
    if parts := parts_in(sentence):
        return parts[0]
    names = {row["name"]: part_no for part_no, row in told.truth.seals.items()}
    for name in sorted(names, key=len, reverse=True):
        if f" is the {name}, " in sentence:
            return names[name]
    before = PART.findall(told.text[: max(told.text.find(sentence), 0)])
    return before[-1] if before and re.match(r"It\b|Its\b", sentence) else ""


def row_meant(told: Told, sentence: str) -> Row | None:
    """The row of the part that a sentence describes."""
    return told.truth.seals.get(part_meant(told, sentence))


def is_misfit(told: Told, part_no: str) -> bool:
    """Whether the part is known not to fit anywhere in any toilet that may be meant."""
    return part_no in misfits(told)


def misfits(told: Told) -> tuple[str, ...]:
    """The seals that fit no valve of any toilet that may be meant; not those of which no more
    is known than that nobody has tried."""
    return _misfits(told.truth, told.builds)


@lru_cache(maxsize=4096)
def _misfits(truth: Truth, builds: tuple[str, ...]) -> tuple[str, ...]:
    places = [(build, position) for build in builds for position in truth.valves[build]]
    if not places:
        return ()
    return tuple(
        part_no
        for part_no in truth.seals
        if all(truth.verdicts.get((b, at, part_no)) == "does not fit" for b, at in places)
    )


def never_at(told: Told, part_no: str, position: str) -> bool:
    """Whether the part is known not to fit this valve in any toilet that may be meant."""
    return _never(told.truth, part_no, told.builds, position)


def never_in(truth: Truth, part_no: str, builds: Sequence[str]) -> bool:
    """Whether the part is known not to fit any valve of these builds, of which there are some."""
    return part_no in _misfits(truth, tuple(builds))


def _never(truth: Truth, part_no: str, builds: Sequence[str], position: str) -> bool:
    there = [b for b in builds if position in truth.valves[b]]
    return bool(there) and all(
        truth.verdicts.get((b, position, part_no)) == "does not fit" for b in there
    )


def tempting(told: Told, sentence: str, most: int = 2) -> list[str]:
    """Misfits that somebody would mistake for the right part: seen in the answer, or alike."""
    seals = told.truth.seals
    right = seals.get(told.main or next(iter(parts_in(sentence)), ""))

    def unlike(part_no: str) -> tuple[bool, bool, bool, str]:
        row = seals[part_no]
        return (
            part_no not in told.text,
            right is None or row["style"] != right["style"],
            right is None or row["opening_in"] != right["opening_in"],
            part_no,
        )

    return some(sentence, sorted(misfits(told), key=unlike)[:6], most)


def fits_everywhere(told: Told, part_no: str) -> bool:
    """Whether every toilet that may be meant takes the part at one and the same valve."""
    return any(told.takes(part_no, position) for position in told.positions)


def others_that_fit(told: Told, part_no: str) -> list[str]:
    """Living seals, beside this one, that every toilet that may be meant takes where it does."""
    positions = [at for at in told.positions if told.takes(part_no, at)]
    return [
        other
        for other, row in told.truth.seals.items()
        if other != part_no
        and row["status"] in LIVING
        and any(told.takes(other, at) for at in positions)
    ]


def model_meant(told: Told, sentence: str) -> str:
    """Maker and model of the toilet that a sentence is about, where there is but one."""
    names = {told.truth.name_of(build) for build in told.builds}
    return names.pop() if len(names) == 1 else ""


def evidence(told: Told, part_no: str) -> set[str]:
    """The kinds of evidence that tell anything of the part in the toilets that may be meant."""
    valves = {v["valve"] for build in told.builds for v in told.truth.valves[build].values()}
    return {
        row["kind"]
        for row in told.truth.rows("fitment")
        if row["part_no"] == part_no and (row["build"] in told.builds or row["valve"] in valves)
    }


def ended(sentence: str, clause: str) -> str:
    """A sentence with a clause before its full stop."""
    return f"{sentence[:-1]}{clause}." if sentence.endswith(".") else f"{sentence}{clause}"
