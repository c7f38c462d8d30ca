"""Which seal a number on the old one means, where several seals bear it.

Makers reuse short numbers. What the letter tells of the old seal itself (how it is held, its
opening, its ears) leaves those that look so; where it leaves none, all are kept.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from assistant.reading.facts import Fact, Facts
from assistant.records.rows import Seal
from assistant.records.tables import Tables

Agrees = Callable[[Seal, Fact], bool]


def _mount(seal: Seal, fact: Fact) -> bool:
    shared = {*seal.mount} & {*fact.choices}
    return not shared if fact.negated else not seal.mount or bool(shared)


def _opening(seal: Seal, fact: Fact) -> bool:
    known = seal.opening_in is not None and bool(fact.nominal_in)
    return not known or fact.negated or seal.opening_in in fact.nominal_in


def _ears(seal: Seal, fact: Fact) -> bool:
    return seal.ears is None or fact.negated or seal.ears in fact.choices


def _colour(seal: Seal, fact: Fact) -> bool:
    return seal.colour is None or fact.negated or any(c in seal.colour for c in fact.choices)


TESTS: dict[str, Agrees] = {
    "mount": _mount, "opening": _opening, "ears": _ears, "colour": _colour,
}  # fmt: skip


OF_THE_TOILET = frozenset({"brand", "model", "model_no", "unlisted", "made", "bought", "pieces"})


def with_numbers_settled(tables: Tables, facts: Facts) -> Facts:
    """The facts, each number on an old seal meaning only seals that look as the letter tells.

    A seal from a valve that was put in later says what the valve is, and the toilet's own name,
    number and years nothing: they are left out.
    """
    told = [f for f in facts.named(*TESTS) if f.sure]
    facts = Facts(tuple(_settled(tables, f, told) if f.name == "part_no" else f for f in facts))
    if not (is_replaced(facts) and facts.has_of("part_no", "old")):
        return facts
    return Facts(tuple(f for f in facts if f.name not in OF_THE_TOILET))


def is_replaced(facts: Facts) -> bool:
    """Whether the customer says that the flush valve is not the first one."""
    denied = any(f.negated for f in facts.named("valve_original"))
    return denied or facts.has("valve_replaced") or bool(facts.named("valve_put_in"))


def _settled(tables: Tables, number: Fact, told: list[Fact]) -> Fact:
    if len(number.choices) < 2:
        return number
    kept = tuple(
        part_no
        for part_no in number.choices
        if part_no in tables.seals
        and all(TESTS[fact.name](tables.seals[part_no], fact) for fact in told)
    )
    return replace(number, value=kept) if kept else number
