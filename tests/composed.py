"""Every letter that the demonstration shop's tables give rise to, and its composed answer.

For every build by its year and by its number, every model without a year, every seal as the old
one and every seal that is asked about. `builds` are those that the letter leaves possible, found
by look-up.
"""

from __future__ import annotations

import random
from collections.abc import Iterator
from datetime import date
from functools import cache

from demonstration import (
    TRUTH,
    builds,
    made_within,
    models,
    name_of,
    seals,
    shop,
    span,
    valves_of,
    with_number,
)

from assistant.answers.compose.case import Audience
from assistant.answers.reply import reply
from assistant.measuring.campaign.told import Told
from assistant.reading.letters import letter_from_text

TODAY = date(2026, 11, 25)
SEED = 1911
ASKED_ABOUT = 90  # of some 2,700 pairs of seal and model


def letters() -> Iterator[tuple[str, tuple[str, ...], str]]:
    """A letter, the builds it leaves possible, and the old seal where it tells one."""
    for build in builds():
        name = name_of(build)
        for year in sorted({y for y in span(build) if 1900 < y < 2026} or {2020}):
            yield f"Our {name} was made in {year}. Which seal?", made_within(name, year, year), ""
        for number in dict.fromkeys((builds()[build]["model_no"], builds()[build]["tank_mark"])):
            if number:
                told = f"The number stamped in the tank is {number}. Which seal fits?"
                yield told, with_number(number), ""
    for name, ids in models().items():
        sizes = {v["opening_in"] for build in ids for v in valves_of(build).values()}
        yield f"Which seal do I need for a {name}?", ids, ""
        yield f"{name}, made in 1900. Which seal?", (), ""
        yield f"{name}, but the flush valve has been replaced. Which seal?", (), ""
        for size in sorted(sizes - {""}):
            if len(sizes) == 1:
                yield f"{name}, and the opening is {size} inches. Which seal?", ids, ""
    for part_no in seals():
        yield f"The number moulded on the old seal is {part_no}. Which seal?", (), part_no
    pairs = [(part_no, build) for part_no in seals() for build in builds()]
    for part_no, build in random.Random(SEED).sample(pairs, ASKED_ABOUT):
        name, year = name_of(build), max(1950, min(span(build)[1], 2020))
        yield f"Will {part_no} fit a {name} of {year}?", made_within(name, year, year), ""


@cache
def composed(audience: Audience) -> tuple[Told, ...]:
    """The answers to all the letters."""
    found = []
    for letter, possible, old in letters():
        made = reply(shop(), letter_from_text(letter), audience=audience, today=TODAY)
        found += [Told(TRUTH, letter, audience, possible, a, old) for a in made.answers]
    return tuple(found)
