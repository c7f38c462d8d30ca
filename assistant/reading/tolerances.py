"""How much a number may be off, by what it counts and by how it was said. One card each.

All widths are common practice, no source: set wide enough that a boundary never decides, and
narrow enough that the nominal openings (2, 2 1/2, 3, 3 1/4, 4 in) stay apart where the
customer plainly told one of them. `tests/test_reading_quantities.py` holds their edges.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from assistant.reading.facts import Interval
from assistant.reading.wording import Said


@dataclass(frozen=True)
class Width:
    """How far below and above the number the truth may lie, and why."""

    below: float
    above: float
    because: str


# Millimetres, by unit and by how fine the number is.
MEASURED = {
    ("mm", "whole"): Width(2, 2, "A rule held over a wet, rounded edge is read to 2 mm."),
    ("mm", "quarter"): Width(2, 2, "A decimal of a millimetre is converted, not measured."),
    ("mm", "fine"): Width(2, 2, "A decimal of a millimetre is converted, not measured."),
    ("cm", "whole"): Width(5, 5, "Whole centimetres are rounded: half a centimetre either way."),
    ("cm", "quarter"): Width(2, 2, "With a decimal it was read to the millimetre, as in mm."),
    ("cm", "fine"): Width(2, 2, "With a decimal it was read to the millimetre, as in mm."),
    ("in", "whole"): Width(3, 3, "A whole inch is a trade size, or rounded to the eighth."),
    ("in", "quarter"): Width(2.5, 2.5, "Halves and quarters are rounded to the nearest sixteenth"
                             " or two."),
    ("in", "fine"): Width(2, 2, "Eighths and finer were read on a rule, over the same wet edge."),
}  # fmt: skip
BARE = Width(2, 2, "No unit was written: inches is our reading, so it gets more room.")

# Millimetres, added to (or for one side instead of) the width above.
LENGTH_SAID = {
    Said.PLAINLY: Width(0, 0, "Said plainly: the width of the measurement alone."),
    Said.ABOUT: Width(3, 3, "'About' is an eighth of an inch either way."),
    Said.BIT_OVER: Width(
        -1, 6, "'A bit over' adds a quarter of an inch above, and nothing is below."
    ),
    Said.ALMOST: Width(6, -1, "'Almost' adds a quarter of an inch below, and nothing is above."),
    Said.OVER: Width(-1, 20, "'More than' names a lower limit only."),
    Said.UNDER: Width(20, -1, "'Less than' names an upper limit only."),
}

# US gallons.
GALLONS_LEAST = Width(
    0.02, 0.02, "1.28 is written as 1.3 or 1.25 by nobody, but is a rounded 4.8 L."
)
LITRES_LEAST = Width(0.1, 0.1, "Litres with a decimal are rounded gallons. In litres.")
VOLUME_ABOUT = Width(0.25, 0.25, "'About' so many gallons: a quarter of a gallon either way.")

# Years.
DECADE = Width(2, 2, "Nobody remembers the decade of a bathroom to the year.")
ABOUT_YEAR = Width(3, 3, "'Around 2008' is three years either way.")
AGE = Width(1, 1, "An age is counted in whole years, from a day nobody wrote down.")
AGE_ABOUT = Width(2, 2, "'About 20 years' was said from memory.")
NEW = Width(2, 0, "A new toilet may have stood in the shop for a year or two.")
A_DECADE = Width(4, 4, "'A couple of decades' counts decades: four years for each, either way.")
AGE_SHARE = Width(0.15, 0.15, "The longer ago, the rounder the number: a sixth or so of the age.")

# How much wider the disc of a seal is than the opening that it closes, in mm. Common practice,
# no source: 1/4 to 1 in; a quarter more, as small flappers with a wide skirt are about.
DISC_OVER_OPENING = Interval(6.35, 31.75)

NOMINAL_IN = (2.0, 2.5, 3.0, 3.25, 4.0)
MM_PER_IN = 25.4  # exact: NIST SP 811


def length(low: float, high: float, unit: str, grain: str, said: Said, bare: bool) -> Interval:
    """The interval in mm of a length told as low..high in its unit (mm, cm, in)."""
    factor = {"mm": 1.0, "cm": 10.0, "in": MM_PER_IN}[unit]
    base, how = MEASURED[unit, grain], LENGTH_SAID[said]
    extra = BARE if bare else Width(0, 0, "")
    below = base.below + extra.below + how.below if how.below >= 0 else -how.below
    above = base.above + extra.above + how.above if how.above >= 0 else -how.above
    return Interval(round(low * factor - below, 2), round(high * factor + above, 2))


def volume(low: float, high: float, last_place: float, litres: float, said: Said) -> Interval:
    """The interval in US gallons of a volume told as low..high in units of `litres` litres.

    `last_place` is the worth of the last digit written: half of it may be rounding.
    """
    gallon = 3.785411784  # litres, exact: NIST SP 811
    factor = litres / gallon
    least = LITRES_LEAST.above / gallon if litres == 1 else GALLONS_LEAST.above
    room = max(last_place / 2 * factor, least)
    below = above = room
    if said is not Said.PLAINLY:
        below, above = room + VOLUME_ABOUT.below, room + VOLUME_ABOUT.above
    return Interval(round(max(low * factor - below, 0), 3), round(high * factor + above, 3))


def age(years: float, said: Said) -> Width:
    """How many years an age of so many years may be off, in whole years."""
    card = AGE if said is Said.PLAINLY else AGE_ABOUT
    return Width(
        math.ceil(card.below + AGE_SHARE.below * years),
        math.ceil(card.above + AGE_SHARE.above * years),
        card.because,
    )


def decades(count: float) -> Width:
    """How many years an age of so many decades may be off, in whole years."""
    return Width(
        math.ceil(A_DECADE.below * count), math.ceil(A_DECADE.above * count), A_DECADE.because
    )


def nominal(interval: Interval) -> tuple[float, ...]:
    """The nominal openings that an interval in mm meets, in inches."""
    return tuple(size for size in NOMINAL_IN if round(size * MM_PER_IN, 2) in interval)


def closed_by(disc: Interval) -> tuple[float, ...]:
    """The nominal openings that a seal with this disc would close, in inches."""
    return nominal(Interval(disc.low - DISC_OVER_OPENING.high, disc.high - DISC_OVER_OPENING.low))
