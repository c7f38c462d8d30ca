"""How values of the tables are put in words: sizes, spans, years, names, lists."""

from __future__ import annotations

import zlib
from collections.abc import Callable, Hashable, Sequence
from fractions import Fraction

from assistant.fitment.features import Condition, Years, is_open
from assistant.records.rows import Build, Seal

COUNTS = {1: "one", 2: "two", 3: "three", 4: "four"}


def vary(variants: Sequence[str], seed: str) -> str:
    """One of several wordings, always the same one for the same seed."""
    return variants[zlib.crc32(seed.encode()) % len(variants)]


def inches(size: float) -> str:
    """A nominal size, such as '2 1/2 in'."""
    whole, rest = divmod(Fraction(size).limit_denominator(16), 1)
    parts = [str(whole)] if whole else []
    if rest:
        parts.append(f"{rest.numerator}/{rest.denominator}")
    return " ".join(parts) + " in"


def millimetres(size: float) -> str:
    """A length as kept in the table, such as '95 mm'."""
    return f"{size:g} mm"


def gallons(volume: float) -> str:
    """A flush volume, such as '1.6 gallons'."""
    return f"{volume:g} gallon" if volume == 1 else f"{volume:g} gallons"


def years(span: Years) -> str:
    """When a build was made: 'made from 1986 to 1993', 'made up to 1993', 'made since 1994'."""
    from_open, to_open = is_open(span)
    if from_open and to_open:
        return "of any year"
    if from_open:
        return f"made up to {span[1]}"
    if to_open:
        return f"made since {span[0]}"
    if span[0] == span[1]:
        return f"made in {span[0]}"
    return f"made from {span[0]} to {span[1]}"


def listed(items: Sequence[str], last: str = "and") -> str:
    """'a', 'a and b', 'a, b and c'."""
    if len(items) < 2:
        return "".join(items)
    return f"{', '.join(items[:-1])} {last} {items[-1]}"


def bold(part_no: str) -> str:
    """A part number as it is set in an answer."""
    return f"**{part_no}**"


def the(build: Build) -> str:
    """A model with its maker, such as 'the Brand Model'."""
    return f"the {build.full_name}"


def qualified(condition: Condition) -> str:
    """A condition as words that follow a model's name."""
    feature, found = condition.feature, condition.values
    if feature == "made":
        return listed([years(v) for v in found if isinstance(v, tuple)], "or")
    said = listed([value(feature, v) for v in found], "or")
    return {
        "model_no": f"with {said} stamped in the tank",
        "pieces": f"in {said}",
        "flush": f"that flushes {said}",
        "tank_kind": f"with a {said} tank",
        "opening": f"with a {said} opening",
        "ears": f"whose pegs point {said}" if "none" not in found else "without pegs",
        "overflow": f"with a {said} overflow tube",
        "hinge_width": f"with pegs {said} apart",
    }.get(feature, said)


def selecting(condition: Condition) -> str:
    """A condition as the beginning of a sentence, without 'if': 'it was made up to 1993'."""
    feature, found = condition.feature, condition.values
    if feature == "made":
        return "it was " + listed([years(v) for v in found if isinstance(v, tuple)], "or")
    said = listed([value(feature, v) for v in found], "or")
    return {
        "model": f"it is the {said}",
        "model_no": f"{said} is stamped in the tank",
        "pieces": f"it is made in {said}",
        "flush": f"it flushes {said}",
        "tank_kind": f"it is a {said} tank",
        "opening": f"the opening is {said}",
        "mount": f"the seal holds by {said}",
        "ears": f"the pegs point {said}" if "none" not in found else "there are no pegs",
        "overflow": f"the overflow tube is {said}",
        "hinge_width": f"the pegs are {said} apart",
    }.get(feature, f"the {feature.replace('_', ' ')} is {said}")


def value(feature: str, found: Hashable) -> str:
    """One value of a feature in words."""
    if isinstance(found, tuple) and feature == "made":
        return years((int(found[0]), int(found[1])))
    if isinstance(found, tuple):
        return listed([str(item) for item in found], "or")
    if isinstance(found, (int, float)):
        return _NUMBERS.get(feature, _plain)(found)
    return str(found)


def _plain(number: float) -> str:
    return f"{number:g}"


def _pieces(number: float) -> str:
    return "one piece" if number == 1 else f"{COUNTS.get(int(number), int(number))} pieces"


_NUMBERS: dict[str, Callable[[float], str]] = {
    "opening": inches,
    "hinge_width": millimetres,
    "flush": gallons,
    "pieces": _pieces,
}


def how_it_holds(seal: Seal) -> str | None:
    """How a seal holds to its valve, as a verb phrase; `None` where the table does not say."""
    if "pegs" in seal.mount and seal.ears in ("up", "down"):
        apart = f" and stand {millimetres(seal.ear_span_mm)} apart" if seal.ear_span_mm else ""
        return f"its ears point {seal.ears}{apart}"
    if "ring" in seal.mount and seal.ring_mm:
        return f"its ring slides over a round tube of {millimetres(seal.ring_mm)}"
    if "wire" in seal.mount:
        return "it hangs on a lift wire"
    return None
