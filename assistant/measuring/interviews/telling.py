"""What somebody who knows a toilet would tell to each question, as facts and not as words."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass

from assistant.measuring.interviews.toilets import NOT_LISTED, REPLACED, Toilet
from assistant.reading.facts import Fact, Interval, Value
from assistant.records.rows import FlushValve
from assistant.records.tables import Tables

INCH = 25.4  # mm
RULE_MM = 2.0  # how far a rule over a wet, rounded edge may be off, common practice, no source
PRINTED_GPF = 0.02  # a printed volume is rounded to a hundredth or two of a gallon


@dataclass(frozen=True)
class Known:
    """A toilet, how its seal holds on, and the seal that sits there now."""

    tables: Tables
    toilet: Toilet
    mount: str | None  # one of the ways its valve offers
    old_part: str | None  # by the shop's number


def told(known: Known, question: str) -> tuple[Fact, ...]:
    """The true answer to a question; none where there is nothing to tell."""
    tell = TELLS.get(question)
    return tell(known) if tell else ()


def fact(name: str, value: Value, of: str | None = None, *, inches: float | None = None) -> Fact:
    """A sure fact that no words stand behind."""
    nominal = () if inches is None else (inches,)
    return Fact(name=name, value=value, words=_words(value), start=0, end=0, of=of,
                nominal_in=nominal)  # fmt: skip


def opening(inches: float) -> Fact:
    """A measurement of the opening that is so wide."""
    wide = inches * INCH
    return fact("opening", Interval(wide - RULE_MM, wide + RULE_MM), inches=inches)


def made(year: int) -> Fact:
    """A date stamped in the tank."""
    return fact("made", Interval(year, year), "stamp")


def _words(value: Value) -> str:
    return str(value.low) if isinstance(value, Interval) else value[0]


def _number(known: Known) -> tuple[Fact, ...]:
    build = known.toilet.build
    number = build.tank_mark or build.model_no
    if number is None:
        return ()
    if known.toilet.group == NOT_LISTED:
        return (fact("unlisted", (number,), "number"),)
    alike = tuple(n for n in known.tables.numbered if _bare(n) == _bare(number))
    return (fact("model_no", alike),)


def _bare(number: str) -> str:
    return re.sub(r"[^0-9A-Z]", "", number.upper())


def _brand(known: Known) -> tuple[Fact, ...]:
    brand = known.toilet.build.brand
    listed = known.toilet.maker_listed
    return (fact("brand", (brand,)) if listed else fact("unlisted", (brand,), "brand"),)


def _model(known: Known) -> tuple[Fact, ...]:
    """The model's name alone, which several makers may have used."""
    model = known.toilet.build.model
    names = tuple(n for n, builds in known.tables.models.items() if builds[0].model == model)
    return (fact("model", names) if names else fact("unlisted", (model,), "model"),)


def _made(known: Known) -> tuple[Fact, ...]:
    return () if known.toilet.year is None else (made(known.toilet.year),)


def _pieces(known: Known) -> tuple[Fact, ...]:
    pieces = known.toilet.build.pieces
    return () if pieces is None else (fact("pieces", (str(pieces),)),)


def _flush(known: Known) -> tuple[Fact, ...]:
    flush = known.toilet.build.flush_full_gpf
    if flush is None:
        return ()
    return (fact("flush", Interval(flush - PRINTED_GPF, flush + PRINTED_GPF)),)


def _tank_kind(known: Known) -> tuple[Fact, ...]:
    kind = known.toilet.build.kind
    return () if kind is None else (fact("tank_kind", (kind,)),)


def _of_valve(tell: Callable[[FlushValve], Fact | None]) -> Callable[[Known], tuple[Fact, ...]]:
    def of(known: Known) -> tuple[Fact, ...]:
        found = tell(known.toilet.valve) if known.toilet.valve else None
        return () if found is None else (found,)

    return of


def _span(valve: FlushValve) -> Fact | None:
    span = valve.peg_span_mm
    return None if span is None else fact("hinge_width", Interval(span - RULE_MM, span + RULE_MM))


_opening = _of_valve(lambda v: None if v.opening_in is None else opening(v.opening_in))
_ears = _of_valve(lambda v: None if v.pegs is None else fact("ears", (v.pegs,)))
_overflow = _of_valve(lambda v: None if v.overflow is None else fact("overflow", (v.overflow,)))


def _mount(known: Known) -> tuple[Fact, ...]:
    return () if known.mount is None else (fact("mount", (known.mount,)),)


def _valve_replaced(known: Known) -> tuple[Fact, ...]:
    name = "valve_replaced" if known.toilet.group == REPLACED else "valve_original"
    return (fact(name, ("yes",)),)


def _photograph(known: Known) -> tuple[Fact, ...]:
    """What a person at the shop sees on it: the valve, and every way in which a seal may hold."""
    ways = known.toilet.valve.mount if known.toilet.valve else ()
    held = tuple(fact("mount", (way,)) for way in ways)
    return (*held, *_opening(known), *_ears(known), *_overflow(known), *_tank_kind(known))


def _old_part(known: Known) -> tuple[Fact, ...]:
    """Its maker's number, or ours where it bears none; makers reuse short numbers."""
    if known.old_part is None:
        return ()
    seals = known.tables.seals
    number = next(iter(seals[known.old_part].maker_no), None)
    bearing = tuple(p for p, seal in seals.items() if number in seal.maker_no)
    return (fact("part_no", bearing or (known.old_part,), "old"),)


def _position(known: Known) -> tuple[Fact, ...]:
    two = len(known.toilet.valves) > 1
    return (fact("position", (known.toilet.worn,)),) if two else ()


TELLS: dict[str, Callable[[Known], tuple[Fact, ...]]] = {
    "model_no": _number,
    "brand": _brand,
    "model": _model,
    "made": _made,
    "pieces": _pieces,
    "flush": _flush,
    "tank_kind": _tank_kind,
    "opening": _opening,
    "mount": _mount,
    "ears": _ears,
    "overflow": _overflow,
    "hinge_width": _of_valve(_span),
    "valve_replaced": _valve_replaced,
    "photograph": _photograph,
    "old_part": _old_part,
    "position": _position,
}
