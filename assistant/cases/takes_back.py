"""What a later message takes back of an earlier one without saying 'no, wait'.

Whoever was asked about two things that do not go together, and answers, has decided. An alarm
that proved false is over. A part that was renewed since no longer shows its signs.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import replace

from assistant.cases.case import Offered
from assistant.reading.contradictions import contradictions
from assistant.reading.facts import Fact, Facts
from assistant.reading.tolerances import nominal

# Facts that answer a question, where they do not bear its name.
ANSWERED_BY: Mapping[str, frozenset[str]] = {
    "made": frozenset({"made", "bought", "year", "house"}),
    "opening": frozenset({"opening", "length"}),
    "measured": frozenset({"opening", "disc", "rim", "hinge_width"}),
    "old_part": frozenset({"part_no"}),
    "mount": frozenset({"mount", "lift"}),
    "flush": frozenset({"flush", "flush_reduced"}),
    "hinge_width": frozenset({"hinge_width", "length"}),
    "model": frozenset({"model", "unlisted"}),
    "brand": frozenset({"brand", "unlisted"}),
    "model_no": frozenset({"model_no", "unlisted"}),
    "valve_replaced": frozenset({"valve_replaced", "valve_original", "valve_put_in"}),
    "photograph": frozenset({"photo"}),
}
_OF_WATER = frozenset({"water on the floor", "leak at the floor"})
_ALL_CLEAR = re.compile(
    r"\b(?:panic over|false alarm|all clear|(?:everything|floor|it) is (?:all )?(?:bone )?dry"
    r"|it was only (?:the|a|my|some)|that was only (?:the|a|my|some)"
    r"|was (?:just|only) (?:condensation|a bucket|the bucket|spilled))\b"
)
_NEW_FILL_VALVE = re.compile(
    r"\b(?:new|changed|replaced|renewed|fitted|swapped) (?:the |a |my |out the )*(?:new )?"
    r"(?:fill|inlet|float) valve\b|\bwater (?:level )?(?:now |is now |is |now is )*"
    r"(?:stands|sits|stops|is|stays)\b[^.!?]{0,30}\bbelow\b"
)
_OF_FILLING = frozenset({"water over the overflow", "runs on"})
_MEASURED = (
    ("opening", re.compile(r"\b(?:opening|hole|inside of|across the (?:pipe|drain))\b")),
    ("disc", re.compile(r"\b(?:old (?:seal|flapper|rubber|disc)|the (?:seal|flapper|rubber|disc)"
                        r"(?: itself)?)\b")),
)  # fmt: skip


def answers(asks: str, fact: Fact) -> bool:
    """Whether a fact answers a question."""
    return fact.name in ANSWERED_BY.get(asks, {asks})


def with_measured(facts: Sequence[Fact], said: str, start: int) -> list[Fact]:
    """'What did you measure?' 'The opening': the length told before is the opening's."""
    found = [(m.start(), name) for name, pattern in _MEASURED if (m := pattern.search(said))]
    if not found or any(f.name in ("opening", "disc") and f.start >= start for f in facts):
        return [*facts]
    name = min(found)[1]
    return [_named(f, name) if f.name == "length" and f.start < start else f for f in facts]


def _named(fact: Fact, name: str) -> Fact:
    meets = nominal(fact.interval) if name == "opening" else fact.nominal_in
    return replace(fact, name=name, nominal_in=meets)


def without_taken_back(
    facts: Sequence[Fact], said: str, start: int, offered: Offered | None
) -> list[Fact]:
    """The facts without those that a message, which begins at a place, takes back."""
    left = [*facts]
    if _ALL_CLEAR.search(said):
        left = [f for f in left if f.name != "hazard" or f.start >= start or not _is_wet(f)]
    if _NEW_FILL_VALVE.search(said):
        left = [f for f in left if f.start >= start or not _is_of_filling(f)]
    for put in offered.questions if offered else ():
        new = [f for f in left if f.start >= start and answers(put.asks, f) and not f.negated]
        old = [f for f in left if f.start < start and _against(f, new)]
        left = [f for f in left if f not in old]
    return left


def _against(old: Fact, new: Sequence[Fact]) -> bool:
    return any(
        old.toilet == one.toilet
        and old.name == one.name
        and (bool(contradictions(Facts((old, one)))) or _other_name(old, one))
        for one in new
    )


def _other_name(old: Fact, new: Fact) -> bool:
    """Two numbers, or two makers: no contradiction in itself, but one answer to one question."""
    named = old.name in ("model_no", "brand", "model", "valve_replaced", "position")
    return named and not {*old.choices} & {*new.choices}


def _is_wet(fact: Fact) -> bool:
    return bool({*fact.choices} & _OF_WATER)


def _is_of_filling(fact: Fact) -> bool:
    return fact.name == "symptom" and bool({*fact.choices} & _OF_FILLING)
