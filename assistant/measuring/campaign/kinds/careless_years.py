"""Years, pieces and marks in the tank copied carelessly."""

from __future__ import annotations

import re
from collections.abc import Iterator

from assistant.measuring.campaign.kinds.careless_said import (
    affirms,
    model_meant,
    never_in,
    parts_in,
    some,
)
from assistant.measuring.campaign.told import Falsehoods, Kind, Told

FROM_TO = re.compile(r"made from (\d{4}) to (\d{4})")
UP_TO, SINCE = re.compile(r"made up to (\d{4})"), re.compile(r"made since (\d{4})")
PIECES = {"one piece": "two pieces", "two pieces": "one piece"}
COUNTED = {"one piece": "1", "two pieces": "2"}
EARLY, LATE = 1850, 2026


def _too_wide(told: Told, sentence: str, first: int, last: int) -> bool:
    """Whether a build of these years is known not to take the part that the sentence names."""
    model, parts = model_meant(told, sentence), parts_in(sentence)
    if not model or "stamped" in sentence or len(parts) != 1:
        return False
    within = told.truth.made_within(model, first, last)
    for said, count in COUNTED.items():
        if said in sentence:
            within = tuple(b for b in within if told.truth.builds[b]["pieces"] == count)
    return any(never_in(told.truth, parts[0], (build,)) for build in within)


def _span(first: int, last: int) -> str:
    if first <= EARLY:
        return f"made up to {last}"
    return f"made since {first}" if last >= LATE else f"made from {first} to {last}"


def _spans(sentence: str) -> Iterator[tuple[re.Match[str], int, int]]:
    for found in FROM_TO.finditer(sentence):
        yield found, int(found[1]), int(found[2])
    for found in UP_TO.finditer(sentence):
        yield found, EARLY, int(found[1])
    for found in SINCE.finditer(sentence):
        yield found, int(found[1]), LATE


def _redated(told: Told, sentence: str, found: re.Match[str], first: int, last: int) -> str:
    if first > last or not _too_wide(told, sentence, first, last):
        return ""
    return sentence[: found.start()] + _span(first, last) + sentence[found.end() :]


def years_shifted(told: Told, sentence: str) -> Falsehoods:
    """The '90s for the '80s: both ends of the span off by ten years or by twenty."""
    if affirms(told, sentence):
        for found, first, last in _spans(sentence):
            for by in (-20, -10, 10, 20):
                moved = first + by * (first > EARLY), last + by * (last < LATE)
                if said := _redated(told, sentence, found, *moved):
                    yield "years shifted", said


def years_widened(told: Told, sentence: str) -> Falsehoods:
    """The span made longer at one end, up to 'every one since'."""
    if affirms(told, sentence):
        for found, first, last in _spans(sentence):
            longer = [(first - 8, last), (first, last + 8), (first, LATE), (EARLY, last)]
            for new in some(sentence, [pair for pair in longer if pair != (first, last)], 3):
                if said := _redated(told, sentence, found, *new):
                    yield "years widened", said


def year_transposed(told: Told, sentence: str) -> Falsehoods:
    """'1938 for 1983', '94 for '84: a digit of one year wrong."""
    if affirms(told, sentence):
        for found, first, last in _spans(sentence):
            slips = [(_turned(first), last), (first, _turned(last)), (first - 10, last)]
            for new in slips:
                if new != (first, last) and (said := _redated(told, sentence, found, *new)):
                    yield "a year mistyped", said
                    break


def _turned(year: int) -> int:
    text = str(year)
    return int(text[:2] + text[3] + text[2])


def years_of_another_build(told: Told, sentence: str) -> Falsehoods:
    """The years of the line above or below in the table of toilets."""
    model = model_meant(told, sentence)
    if not model or not affirms(told, sentence):
        return
    for found, first, last in _spans(sentence):
        for build in some(sentence, told.truth.models[model], 4):
            begun, ended = told.truth.span(build)
            new = max(begun, EARLY), min(ended, LATE)
            outside = new[1] < first or last < new[0]
            if outside and (said := _redated(told, sentence, found, *new)):
                yield "the years of another build", said


def years_forgotten(told: Told, sentence: str) -> Falsehoods:
    """'Of any year': the builds that want another seal are forgotten."""
    if affirms(told, sentence):
        for found, _, _ in _spans(sentence):
            if said := _redated(told, sentence, found, EARLY, LATE):
                any_year = said.replace(f"made up to {LATE}", "of any year")
                yield "any year at all", any_year
                yield "any year at all", any_year.replace("of any year", "whenever it was made")


def pieces_exchanged(told: Told, sentence: str) -> Falsehoods:
    """The part of the one-piece for the two-piece of that name."""
    model, parts = model_meant(told, sentence), parts_in(sentence)
    if not model or len(parts) != 1 or not affirms(told, sentence):
        return
    for said, turned in PIECES.items():
        if said in sentence:
            others = [
                build
                for build in told.truth.models[model]
                if told.truth.builds[build]["pieces"] == COUNTED[turned]
            ]
            if never_in(told.truth, parts[0], others):
                yield "one piece and two exchanged", sentence.replace(said, turned)
                yield "one piece and two alike", sentence.replace(said, f"{said} or {turned}")


def mark_of_another(told: Told, sentence: str) -> Falsehoods:
    """The mark of another build; the number of the bowl for that of the tank."""
    model, parts = model_meant(told, sentence), parts_in(sentence)
    if not model or len(parts) != 1 or not affirms(told, sentence):
        return
    marks = {b: told.truth.builds[b]["tank_mark"] for b in told.truth.models[model]}
    for mark in sorted({*marks.values()} - {""}):
        if f"{mark} is stamped" not in sentence and f"{mark} stamped" not in sentence:
            continue
        for other in sorted({*marks.values()} - {"", mark}):
            there = [b for b, said in marks.items() if said == other]
            without = not any(told.truth.valves[b] for b in there)  # such as a pressure tank
            if without or never_in(told.truth, parts[0], there):
                yield "the mark of another build", sentence.replace(mark, other)


KINDS: tuple[Kind, ...] = (
    years_shifted,
    years_widened,
    year_transposed,
    years_of_another_build,
    years_forgotten,
    pieces_exchanged,
    mark_of_another,
)
