"""The seal must be able to hold to the valve.

A seal may offer several ways (ears, and a ring that can be cut off) and so may a valve (pegs,
and a round tube). One good way is enough; the seal is out only when every shared way fails.
"""

from __future__ import annotations

from assistant.fitment.findings import Finding, Says, compare, silent
from assistant.fitment.places import Place
from assistant.records.rows import Seal

OWN_VALVE_ONLY = frozenset({"clip", "strap", "canister", "tower", "push", "thread"})
SPAN_SLACK_MM = 3.0  # rubber ears give this much; beyond it they slip off or bind
RING_SLACK_MM = 2.0  # a ring stretches over a slightly larger tube, and grips no smaller one


def mount(seal: Seal, place: Place) -> Finding:
    """At least one way of holding must be shared and its measures must agree."""
    valve = place.valve
    if not seal.mount or not valve.mount:
        return silent("mount")
    shared = [way for way in seal.mount if way in valve.mount]
    if not shared:
        return compare("mount", seal.mount, valve.mount, False)
    found = [_way(way, seal, place) for way in shared]
    for wanted in (Says.AGREES, Says.SILENT):
        for finding in found:
            if finding.says is wanted:
                return finding
    return found[0]


def _way(way: str, seal: Seal, place: Place) -> Finding:
    if way == "pegs":
        return _pegs(seal, place)
    if way == "ring":
        return _ring(seal, place)
    if way in OWN_VALVE_ONLY:
        # A clip, a strap or a base seal belongs to the one kind of valve it was made for.
        return compare("own-valve", seal.style, place.valve.style, seal.style == place.valve.style)
    return compare("mount", seal.mount, place.valve.mount, True)


def _pegs(seal: Seal, place: Place) -> Finding:
    """Ears hook on pegs that point the same way and stand as far apart."""
    valve = place.valve
    if None not in (seal.ears, valve.pegs) and seal.ears != valve.pegs:
        return compare("ears", seal.ears, valve.pegs, False)
    if seal.ear_span_mm is None or valve.peg_span_mm is None:
        return silent("ear-span")
    near = _within(SPAN_SLACK_MM, seal.ear_span_mm, valve.peg_span_mm)
    finding = compare("ear-span", seal.ear_span_mm, valve.peg_span_mm, near)
    if finding.says is Says.AGREES and None in (seal.ears, valve.pegs):
        return silent("ears")
    return finding


def _ring(seal: Seal, place: Place) -> Finding:
    """A ring needs a round tube of its own size; a square tube takes none."""
    valve = place.valve
    if valve.overflow in ("square", "none"):
        return compare("overflow", "ring", valve.overflow, False)
    if seal.ring_mm is None or valve.overflow_mm is None:
        return silent("ring-size")
    near = _within(RING_SLACK_MM, seal.ring_mm, valve.overflow_mm)
    if near and valve.overflow is None:
        return silent("overflow")
    return compare("ring-size", seal.ring_mm, valve.overflow_mm, near)


def _within(slack: float, one: float, other: float) -> bool:
    """Compared in whole micrometres: 64.9 and 61.9 are 3 mm apart, whatever binary makes of it."""
    return round(abs(one - other), 3) <= slack
