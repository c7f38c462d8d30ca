"""Two facts about one toilet that cannot both hold. They are shown, never resolved silently."""

from __future__ import annotations

from itertools import combinations

from assistant.reading.facts import Fact, Facts, Interval

# A toilet was made once and has one flush; a tank may have two valves, each of its own measure.
OF_THE_TOILET = frozenset({"made", "flush", "overflow", "pieces", "tank_kind"})
TWO_BUTTONS_IN_A_WALL = {"concealed", "dual-flush"}  # kinds of tank that one tank may be
OF_THE_VALVE = frozenset({"opening", "ears", "lift", "hinge_width"})


def contradictions(facts: Facts) -> tuple[tuple[Fact, Fact], ...]:
    """Pairs of sure facts of one name whose values exclude one another."""
    found = []
    two_valves = facts.has("seals_in_tank", "2") or facts.named("position")
    single = OF_THE_TOILET if two_valves else OF_THE_TOILET | OF_THE_VALVE
    for name in dict.fromkeys(f.name for f in facts if f.name in single):
        stated = [f for f in facts.named(name) if f.sure]
        for one, other in combinations(stated[:20], 2):
            if _exclude(one, other):
                found.append((one, other))
    return tuple(found)


def _exclude(one: Fact, other: Fact) -> bool:
    if one.negated and other.negated:
        return False
    if isinstance(one.value, Interval) or isinstance(other.value, Interval):
        if one.negated or other.negated:
            return False
        if one.nominal_in and other.nominal_in:
            return not {*one.nominal_in} & {*other.nominal_in}
        return not one.interval.meets(other.interval)
    if {*one.choices, *other.choices} == TWO_BUTTONS_IN_A_WALL:
        return False
    shared = {*one.choices} & {*other.choices}
    return bool(shared) if one.negated != other.negated else not shared
