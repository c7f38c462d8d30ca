"""Which scenarios the facts leave: one small test for each kind of fact.

A test says whether a scenario could be so: `True`, `False`, or `None` where the table does
not know. Only a plain `False` removes a scenario, and only for a fact its writer was sure of.
To add one, write the function and name it in `TESTS`.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import replace

from assistant.fitment.places import Place, Scenario
from assistant.fitment.rules.mount import RING_SLACK_MM, SPAN_SLACK_MM
from assistant.reading.facts import Fact, Facts, Interval
from assistant.records.cells import OPEN_FROM, OPEN_TO

DOUBTED_YEARS = 5  # how far memory strays when its owner says so, common practice, no source
BOUGHT_AFTER_MAKING = 5  # years a toilet may wait in a warehouse, common practice, no source

Test = Callable[[Scenario, Fact], bool | None]


def _any(results: Iterable[bool | None]) -> bool | None:
    """Some valve of the tank could be the one meant."""
    seen = list(results)
    if True in seen:
        return True
    return None if None in seen or not seen else False


def _on_valves(test: Callable[[Place, Fact], bool | None]) -> Test:
    return lambda scenario, fact: _any(test(place, fact) for place in scenario.places)


def _equal(known: object, fact: Fact) -> bool | None:
    return None if known is None else str(known) in fact.choices


def made(scenario: Scenario, fact: Fact) -> bool | None:
    """The build's years must meet the years in which the toilet may have been made."""
    build = scenario.build
    if build is None or (build.made_from is None and build.made_to is None):
        return None
    low, high = fact.interval.low, fact.interval.high
    if fact.name == "bought":
        low -= BOUGHT_AFTER_MAKING
    first = OPEN_FROM if build.made_from is None else build.made_from
    last = OPEN_TO if build.made_to is None else build.made_to
    return Interval(first, last).meets(Interval(low, high))


def flush(scenario: Scenario, fact: Fact) -> bool | None:
    """The toilet's own full flush, as printed on it or known to its owner."""
    gallons = scenario.build.flush_full_gpf if scenario.build else None
    return None if gallons is None else gallons in fact.interval


def flush_reduced(scenario: Scenario, fact: Fact) -> bool | None:
    """The smaller flush of a toilet that has two."""
    gallons = scenario.build.flush_reduced_gpf if scenario.build else None
    return None if gallons is None else gallons in fact.interval


def pieces(scenario: Scenario, fact: Fact) -> bool | None:
    """One piece, or tank and bowl apart."""
    return _equal(scenario.build.pieces if scenario.build else None, fact)


def tank_kind(scenario: Scenario, fact: Fact) -> bool | None:
    """Gravity, dual-flush, pressure-assisted, tipping or concealed."""
    build = scenario.build
    if build is not None and build.kind == "concealed" and fact.choices == ("dual-flush",):
        return True if build.flush_reduced_gpf is not None else None  # two buttons on its plate
    return _equal(build.kind if build else None, fact)


def opening(place: Place, fact: Fact) -> bool | None:
    """The nominal opening that a measurement of it meets."""
    if place.valve.opening_in is None or not fact.nominal_in:
        return None
    return place.valve.opening_in in fact.nominal_in


def ears(place: Place, fact: Fact) -> bool | None:
    """Ears on the old seal tell of the pegs that held it; a seal without ears held otherwise."""
    valve = place.valve
    if fact.choices == ("none",):
        return any(way != "pegs" for way in valve.mount) if valve.mount else None
    if valve.mount and "pegs" not in valve.mount:
        return False
    return _equal(valve.pegs, fact)


def mount(place: Place, fact: Fact) -> bool | None:
    """The way the old seal holds must be one that the valve offers."""
    if not place.valve.mount:
        return None
    return any(way in place.valve.mount for way in fact.choices)


def hinge_width(place: Place, fact: Fact) -> bool | None:
    """Ears sit as far apart as the pegs, give or take what rubber gives."""
    return _near(place.valve.peg_span_mm, fact, SPAN_SLACK_MM)


def tube(place: Place, fact: Fact) -> bool | None:
    """The overflow tube's outside diameter."""
    return _near(place.valve.overflow_mm, fact, RING_SLACK_MM)


def overflow(place: Place, fact: Fact) -> bool | None:
    """A round tube, a square one or none."""
    return _equal(place.valve.overflow, fact)


def lift(place: Place, fact: Fact) -> bool | None:
    """Balls and canisters rise straight, flappers hinge, buckets tilt."""
    ways = {
        "straight up": {"wire", "canister", "tower"},
        "hinged": {"pegs", "ring", "clip", "strap"},
        "tilts": {"push", "thread"},
    }
    if not place.valve.mount:
        return None
    return any({*place.valve.mount} & ways.get(choice, set()) for choice in fact.choices)


def seals_in_tank(scenario: Scenario, fact: Fact) -> bool | None:
    """How many seals the tank takes in all."""
    needed = [place.needed for place in scenario.places]
    if not needed or None in needed:
        return None
    return str(sum(n for n in needed if n is not None)) in fact.choices


def _near(known: float | None, fact: Fact, slack: float) -> bool | None:
    if known is None:
        return None
    return Interval(known - slack, known + slack).meets(fact.interval)


TESTS: dict[str, Test] = {
    "made": made,
    "bought": made,
    "flush": flush,
    "flush_reduced": flush_reduced,
    "pieces": pieces,
    "tank_kind": tank_kind,
    "seals_in_tank": seals_in_tank,
    "opening": _on_valves(opening),
    "disc": _on_valves(opening),
    "ears": _on_valves(ears),
    "mount": _on_valves(mount),
    "hinge_width": _on_valves(hinge_width),
    "tube": _on_valves(tube),
    "overflow": _on_valves(overflow),
    "lift": _on_valves(lift),
}

ABOUT_VALVE = frozenset(
    {"opening", "disc", "ears", "mount", "hinge_width", "tube", "overflow", "lift"}
)


def allows(scenario: Scenario, fact: Fact) -> bool:
    """Whether a fact leaves a scenario possible."""
    test = TESTS.get(fact.name)
    if fact.name == "made" and not fact.sure and not fact.negated:
        told = fact.interval  # 'I think 1985' is a year or a few beside it, not any year at all
        low, high = told.low - DOUBTED_YEARS, told.high + DOUBTED_YEARS
        fact = replace(fact, value=Interval(low, high), sure=True)
    if test is None or not fact.sure:
        return True
    result = test(scenario, fact)
    if fact.negated:
        # 'Not the ring kind' removes only what could be nothing else.
        return not (result is True and _is_only_way(scenario, fact))
    return result is not False


def is_original(facts: Facts) -> bool:
    """Whether the customer says that the flush valve is the first one, and nothing against it."""
    told = facts.named("valve_original")
    against = facts.has("valve_replaced") or facts.named("valve_put_in")
    return any(f.sure and not f.negated for f in told) and not (
        against or any(f.negated for f in told)
    )


def dating(facts: Facts) -> Facts:
    """Without the purchase where the making is told: a toilet may be bought old, or kept."""
    if not any(f.sure and not f.negated for f in facts.named("made")):
        return facts
    return Facts(tuple(f for f in facts if f.name != "bought"))


def told_volume(facts: Facts) -> Interval | None:
    """The full flush as the customer told it, where it is told once and surely."""
    told = [f.interval for f in facts.named("flush") if f.sure and not f.negated]
    return told[0] if len(told) == 1 else None


def _is_only_way(scenario: Scenario, fact: Fact) -> bool:
    if fact.name == "mount":
        return all(set(p.valve.mount) <= set(fact.choices) for p in scenario.places)
    return fact.name in ("tank_kind", "pieces", "overflow", "lift")


def narrowed(
    scenarios: Iterable[Scenario], facts: Facts
) -> tuple[tuple[Scenario, ...], tuple[Fact, ...]]:
    """The scenarios left, and the facts that each alone rule out every one of them."""
    all_of_them = tuple(scenarios)
    left = tuple(s for s in all_of_them if all(allows(s, fact) for fact in facts))
    killers = tuple(f for f in facts if all_of_them and not any(allows(s, f) for s in all_of_them))
    return left, killers
