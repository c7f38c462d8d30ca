"""Invented tables for the interview: few valves in many builds, told apart by looks of any kind."""

from __future__ import annotations

import random
from collections.abc import Iterator

from hypothesis import strategies as st

from assistant.fitment.decide import Counter, counter_for
from assistant.reading.facts import Fact, Facts
from assistant.records.rows import Build, FlushValve, Question, Row
from tests.told import between, facts, opening, word
from tests.trade import FIRST, PEGGED, build, question, row, says, seal, sits, tables, valve

# What can be told of a toilet or its valve, each by its own answer and nothing else.
LOOKS = ("pieces", "flush", "tank_kind", "opening", "ears", "overflow", "hinge_width")
EASES = {
    "model_no": 0.7, "brand": 0.8, "model": 0.6, "made": 0.5, "pieces": 0.95, "flush": 0.5,
    "tank_kind": 0.7, "opening": 0.5, "mount": 0.7, "ears": 0.7, "overflow": 0.9,
    "hinge_width": 0.3, "valve_replaced": 0.6, "photograph": 0.8, "old_part": 0.5,
    "position": 0.8,
}  # fmt: skip


def questions(**ease: float) -> list[Question]:
    """The questions, each as easy as usual or as is said."""
    return [question(name, share) for name, share in (EASES | ease).items()]


def trade_rows(seed: int, builds: int = 8, filled: bool = True) -> list[Row]:
    """Valves and builds at random; in two valves the same seal may fit. Cells may be empty."""
    chance = random.Random(seed)
    valves = [_valve(n, chance, filled) for n in range(chance.randint(3, 7))]
    seals = [seal(f"UQ-{n}", opening_in=None, mount=(), ear_span_mm=None, ears=None)
             for n in range(chance.randint(2, 5))]  # fmt: skip
    evidence = [
        says("fits", part.part_no, valve=one.valve)
        for one in valves
        for part in chance.sample(seals, chance.randint(1, 2))
    ]
    toilets: list[Row] = []
    for n in range(builds):
        toilets += [_build(n, chance, filled), sits(chance.choice(valves).valve, f"tovelin-{n}")]
    return [*valves, *seals, *evidence, *toilets, *questions()]


def _valve(n: int, chance: random.Random, filled: bool) -> FlushValve:
    cells = {
        "opening_in": chance.choice((2.0, 3.0, 4.0)),
        "pegs": chance.choice(("up", "down", "none")),
        "overflow": chance.choice(("round", "square")),
        "peg_span_mm": chance.choice((75.0, 90.0, 105.0)),
    }
    emptied = {name: None for name in cells if not filled and chance.random() < 0.2}
    return valve(f"gate-{n}", PEGGED, **(cells | emptied | {"mount": ("pegs",)}))


def _build(n: int, chance: random.Random, filled: bool) -> Build:
    first = chance.randrange(1950, 2000)
    cells = {
        "pieces": chance.choice((1, 2)),
        "flush_full_gpf": chance.choice((1.6, 3.5, 5.0)),
        "kind": chance.choice(("gravity", "dual-flush", "concealed")),
        "made_from": first,
        "made_to": first + chance.randrange(1, 20),
    }
    emptied = {name: None for name in cells if not filled and chance.random() < 0.2}
    named = {"brand": chance.choice(("Ulmbraith", "Vosquith")), "model": f"Tovelin {n}"}
    sold = {"model_no": f"T{n}0", "sold": float(chance.randint(1, 60))}
    return build(f"tovelin-{n}", **(cells | emptied | named | sold))


def trade(seed: int, builds: int = 8, filled: bool = True) -> Counter:
    """A counter over such tables."""
    return counter_for(tables(*trade_rows(seed, builds, filled)), FIRST)


def shuffled(rows: list[Row], seed: int) -> list[Row]:
    """The same rows in another order, the questions in their own."""
    others = [r for r in rows if not isinstance(r, Question)]
    random.Random(seed).shuffle(others)
    return [*others, *(r for r in rows if isinstance(r, Question))]


def told_of(counter: Counter, name: str) -> Iterator[Fact]:
    """Everything that the owner of a build could tell of it, where the tables know it."""
    one = counter.tables.builds[name]
    gate = counter.tables.valves[counter.tables.valves_in[name][0].valve]
    if one.pieces:
        yield word("pieces", str(one.pieces))
    if one.flush_full_gpf:
        yield between("flush", one.flush_full_gpf)
    if one.kind:
        yield word("tank_kind", one.kind)
    if one.made_from:
        yield between("made", one.made_from, of="stamp")
    if gate.opening_in:
        yield opening(gate.opening_in)
    if gate.overflow:
        yield word("overflow", gate.overflow)
    if gate.peg_span_mm:
        yield between("hinge_width", gate.peg_span_mm)
    yield word("valve_original", "yes")
    yield word("brand", one.brand)
    yield word("model", one.full_name, words=one.model)
    yield word("model_no", one.model_no or "")


@st.composite
def letters(draw: st.DrawFn) -> tuple[Counter, str, Facts]:
    """Tables, the build somebody has, and a part of what could be told of it, in any order."""
    counter = trade(draw(st.integers(0, 300)), filled=draw(st.booleans()))
    name = draw(st.sampled_from(sorted(counter.tables.builds)))
    told = list(told_of(counter, name))
    kept = draw(st.lists(st.sampled_from(told), unique_by=lambda f: f.name))
    return counter, name, facts(*kept)


def with_prior(name: str, prior: float) -> Question:
    """A question of the table with the weight of its open hypothesis."""
    return row(Question, question=name, text="Well?", why="It decides.", ease=0.6, prior=prior)
