"""The seal must give the toilet back its own flush volume."""

from __future__ import annotations

from assistant.fitment.findings import Finding, compare, silent
from assistant.fitment.places import MAIN, Place
from assistant.reading.facts import Interval
from assistant.records.rows import Seal


def volume(seal: Seal, place: Place) -> Finding:
    """A seal held up for another volume flushes too little, or wastes water: neither is sold.

    Only the main valve is judged: what a rinse valve lets go is not the toilet's volume.
    """
    known = place.build.flush_full_gpf if place.build else None
    told = place.told_gpf if known is None else Interval(known, known)
    low, high = seal.flush_gpf_min, seal.flush_gpf_max
    if place.position != MAIN or told is None or (low is None and high is None):
        return silent("volume")
    if known is None and restores(seal, told):
        return silent("volume")  # what a customer tells may rule out, and proves nothing
    middle = (told.low + told.high) / 2
    return compare("volume", (low, high), middle, restores(seal, told))


def restores(seal: Seal, flush: Interval) -> bool:
    """Whether the seal is made for a volume among those given, in US gallons."""
    low, high = seal.flush_gpf_min, seal.flush_gpf_max
    return (low is None or low <= flush.high) and (high is None or flush.low <= high)
