"""Conditions made false: in lists that depend, and the change without which a seal does not fit."""

from __future__ import annotations

import random
import re

from assistant.measuring.campaign.kinds.meaning import positions_of, put
from assistant.measuring.campaign.told import Falsehoods, Told

_BULLET = re.compile(r"^- if (?P<condition>.+?), it takes \*\*(?P<part>[^*]+)\*\*")
_CHANGE = re.compile(r",? with this change: (?P<change>.+?)(?=[.;]|, and|$)")
_FEW = 3


def bullets(told: Told, sentence: str) -> Falsehoods:
    """In a list of conditions: a part that no build takes, another's part, no condition."""
    found, truth = _BULLET.search(sentence), told.truth
    if not found or not told.builds or "with this change" in sentence:
        return
    part_no = found["part"]
    takers = _takers(told, part_no, positions_of(told, sentence, part_no))
    for other in dict.fromkeys(part.part_no for part in told.answer.parts):
        other_takers = _takers(told, other, told.positions)
        if takers and other_takers and not takers & other_takers:
            yield "another condition's part", put(sentence, part_no, other)
    nobody = [p for p in truth.seals if not _takers(told, p, told.positions)]
    for other in random.Random(sentence).sample(nobody, min(_FEW, len(nobody))):
        yield "a part that fits under no condition", put(sentence, part_no, other)
    if takers != set(told.builds):
        dropped = sentence.replace(f"if {found['condition']}, it takes", "it takes")
        yield "a list's condition dropped", dropped


def change_lost(told: Told, sentence: str) -> Falsehoods:
    """The change without which the seal does not fit, left out or turned into another."""
    found, parts = _CHANGE.search(sentence), told.truth.part_no.findall(sentence)
    if not found or not parts or not told.builds:
        return
    part_no, changes = parts[-1], told.truth.changes
    mine = {change for (_, _, part), change in changes.items() if part == part_no}
    if not mine or _takers(told, part_no, told.positions):
        return
    yield "change dropped", sentence.replace(found.group(), "")
    for other in sorted(set(changes.values()) - mine - {""})[:_FEW]:
        yield "another seal's change", sentence.replace(found["change"], other)


def _takers(told: Told, part_no: str, positions: tuple[str, ...]) -> set[str]:
    """The builds still possible that take a seal, unchanged, at one of these valves."""
    return {b for b in told.builds if any(told.truth.fits(part_no, b, at) for at in positions)}


KINDS = (bullets, change_lost)
