"""Lengths, sizes and volumes copied carelessly."""

from __future__ import annotations

import re
from collections.abc import Iterator

from assistant.measuring.campaign.kinds.careless_said import row_meant, some
from assistant.measuring.campaign.told import Falsehoods, Kind, Told

LENGTH = re.compile(r"\b(\d+(?:\.\d+)?) mm\b")
OPENING = re.compile(r"\b(\d(?: 1/[24])?) in opening|opening is (\d(?: 1/[24])?) in\b")
SIZES = ("2", "2 1/2", "3", "3 1/4", "4")
PAIRS = (
    r"ears stand (\S+) mm apart, and the (?:\w+ )?valve's pegs (\S+) mm",
    r"tube of (\S+) mm, and the (?:\w+ )?valve's tube is (\S+) mm",
    r"closes a (.+?) in opening, and the (?:\w+ )?valve's opening is (.+?) in\b",
    r"ears point (up|down), and the (?:\w+ )?valve's pegs point (up|down)",
)


def _at(sentence: str, span: tuple[int, int], said: str) -> str:
    return sentence[: span[0]] + said + sentence[span[1] :]


def _ours(sentence: str, pattern: re.Pattern[str]) -> Iterator[re.Match[str]]:
    """Where the shop says it, and not where the customer's words are quoted."""
    if "wrote" not in sentence:
        yield from pattern.finditer(sentence)


def rounded_length(told: Told, sentence: str) -> Falsehoods:
    """82 mm is 'eighty or so' to somebody in a hurry, and no hinge forgives that."""
    for found in _ours(sentence, LENGTH):
        exact = float(found[1])
        for step in (5, 10):
            near = round(exact / step) * step
            if near != exact:
                yield "a length rounded", _at(sentence, found.span(1), f"{near}")
                break


def swapped_digits(told: Told, sentence: str) -> Falsehoods:
    """28 for 82."""
    for found in _ours(sentence, LENGTH):
        whole, dot, rest = found[1].partition(".")
        if whole != whole[::-1] and not whole.endswith("0"):
            yield "digits swapped", _at(sentence, found.span(1), whole[::-1] + dot + rest)


def length_of_another(told: Told, sentence: str) -> Falsehoods:
    """The figure that stands one line below in the list."""
    row = row_meant(told, sentence)
    if row is None:
        return
    alike = [r for r in told.truth.seals.values() if r["mount"] == row["mount"]]
    for found in _ours(sentence, LENGTH):
        column = "ring_mm" if "ring" in sentence or "tube" in sentence else "ear_span_mm"
        others = {r[column] for r in alike} - {"", found[1]}
        for other in some(sentence, sorted(others), 1):
            yield "the length of another seal", _at(sentence, found.span(1), other)


def unit_slip(told: Told, sentence: str) -> Falsehoods:
    """Inches for millimetres, centimetres for inches."""
    if "wrote" in sentence:
        return
    if LENGTH.search(sentence):
        for unit in ("in", "cm"):
            yield "another unit", LENGTH.sub(rf"\1 {unit}", sentence)
    if OPENING.search(sentence):
        for unit in ("cm", "mm"):
            yield "another unit", re.sub(r" in opening", f" {unit} opening", sentence, count=1)


def inches_worked_out(told: Told, sentence: str) -> Falsehoods:
    """A length turned into inches in the head, and half an inch off."""
    for found in _ours(sentence, LENGTH):
        halves = int(float(found[1]) / 25.4 * 2) / 2 - 0.5
        yield "inches worked out wrongly", _at(sentence, found.span(), f"{halves:g} in")


def both_sides_exchanged(told: Told, sentence: str) -> Falsehoods:
    """The seal's measure given to the valve, and the valve's to the seal."""
    for pattern in PAIRS:
        found = re.search(pattern, sentence)
        if found and found[1] != found[2]:
            turned = _at(_at(sentence, found.span(2), found[1]), found.span(1), found[2])
            yield "the seal's side for the valve's", turned


def other_opening(told: Told, sentence: str) -> Falsehoods:
    """Another of the sizes; a half forgotten; two sizes where there is one."""
    for found in _ours(sentence, OPENING):
        at = 1 if found[1] else 2
        others = [size for size in SIZES if size != found[at]]
        for size in some(sentence, others, 2):
            yield "another opening", _at(sentence, found.span(at), size)
        if found[at].split()[1:]:
            yield "a fraction forgotten", _at(sentence, found.span(at), found[at].split()[0])
        if at == 1:
            either = f"{found[at]} or {others[0]}"
            yield "two openings for one", _at(sentence, found.span(at), either)


def ears_turned(told: Told, sentence: str) -> Falsehoods:
    """Up for down: read off the seal while it lay on its back."""
    for found in _ours(sentence, re.compile(r"\bpoint (up|down)\b")):
        turned = "down" if found[1] == "up" else "up"
        yield "ears or pegs turned", _at(sentence, found.span(1), turned)
        yield "ears or pegs either way", _at(sentence, found.span(1), "up or down")


def other_volume(told: Told, sentence: str) -> Falsehoods:
    """Litres for gallons, a decimal point lost, the limits of another seal."""
    for found in _ours(sentence, re.compile(r"flush(?:es)? (?:\S+ to )?(\d+(?:\.\d+)?) gallons?")):
        yield "litres for gallons", re.sub(r"gallons?", "litres", sentence)
        more = f"{float(found[1]) + 2:g}"
        yield "another volume", _at(sentence, found.span(1), more)


def other_tube(told: Told, sentence: str) -> Falsehoods:
    """A square tube called round, a tube where there is none."""
    for true, false in (
        ("tube is square", "tube is round"),
        ("has no tube", "has a tube"),
        ("a round tube", "a square tube"),
        ("has no pegs", "has pegs"),
    ):
        if true in sentence and "wrote" not in sentence:
            yield "another tube or pegs", sentence.replace(true, false)


KINDS: tuple[Kind, ...] = (
    rounded_length,
    swapped_digits,
    length_of_another,
    unit_slip,
    inches_worked_out,
    both_sides_exchanged,
    other_opening,
    ears_turned,
    other_volume,
    other_tube,
)
