"""The seal must be made for the size of the opening."""

from __future__ import annotations

from assistant.fitment.findings import Finding, compare, silent
from assistant.fitment.places import Place
from assistant.records.rows import Seal


def opening(seal: Seal, place: Place) -> Finding:
    """A smaller disc falls through, a larger one does not seat: only the same size closes."""
    if seal.opening_in is None or place.valve.opening_in is None:
        return silent("opening")
    same = seal.opening_in == place.valve.opening_in
    return compare("opening", seal.opening_in, place.valve.opening_in, same)
