"""How much there is to learn of what would be sold, and how few questions could ever do."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterable

from assistant.fitment.asking import ease
from assistant.fitment.decide import Counter
from assistant.fitment.features import FEATURES
from assistant.fitment.places import of_build
from assistant.interview.sold import Sold, sold_to
from assistant.measuring.interviews.toilets import EARLIEST, LATEST
from assistant.records.rows import FlushValve
from assistant.records.tables import Tables


def bits(weights: Iterable[float]) -> float:
    """The entropy of shares that need not add up to 1."""
    masses = [weight for weight in weights if weight > 0]
    total = sum(masses)
    return -sum(mass / total * math.log2(mass / total) for mass in masses)


def bits_of_sold(counter: Counter, *, by_sales: bool) -> float:
    """How much there is to learn of what would be sold, over the listed builds."""
    held: dict[Sold, float] = defaultdict(float)
    for build in counter.tables.builds.values():
        scenario = of_build(counter.tables, build)
        held[sold_to(counter, scenario)] += scenario.weight if by_sales else 1.0
    return bits(held.values())


def fewest_questions(counter: Counter, to_learn: float) -> float:
    """A number that the mean of no strategy can be under, for all it knows.

    A question with k answers brings log2(k) bits at most, and brings them to those alone who can
    answer it. The richest questions are counted first, each once.
    """
    if to_learn <= 0:
        return 0.0
    questions = counter.tables.questions
    richest = sorted(
        (ease(questions, q) * math.log2(answers_to(counter.tables, q)) for q in questions),
        reverse=True,
    )
    asked = 0.0
    for most in richest:
        if to_learn <= most:
            return max(1.0, asked + to_learn / most)
        to_learn -= most
        asked += 1
    return math.inf


def answers_to(tables: Tables, question: str) -> int:
    """How many different answers there are, at least one."""
    valves = tables.valves.values()
    if question == "made":
        return LATEST - EARLIEST + 1
    if question == "brand":
        return max(1, len(tables.brands))
    if question == "old_part":
        return max(1, len(tables.seals))
    if question == "photograph":
        return max(1, len({(_seen(v), b.kind) for b in tables.builds.values() for v in valves}))
    if question in ("valve_replaced", "position"):
        return 2
    feature = next((f for f in FEATURES if f.name == question), None)
    if feature is None:
        return 1
    found = {feature.of(of_build(tables, build)) for build in tables.builds.values()}
    if question == "mount":
        found |= {way for valve in valves for way in valve.mount}
    return max(1, len(found))


def _seen(valve: FlushValve) -> tuple[object, ...]:
    return valve.mount, valve.opening_in, valve.pegs, valve.overflow
