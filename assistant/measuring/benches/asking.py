"""Choosing the next question, against encoding one message: few builds, and a great many."""

from __future__ import annotations

import gc
import random
from dataclasses import replace

from assistant.fitment.decide import counter_for
from assistant.interview.next_question import Interviewer, State
from assistant.measuring.timing import Measured, Ratio, by_turns, ms, seconds
from assistant.reading.facts import Fact, Facts, Interval
from assistant.records.rows import Build, BuildValve
from assistant.records.tables import Tables
from assistant.search.model import Model
from assistant.shop import DEMO, open_shop

LARGE = 100_000
ROUNDS = 30
MESSAGE = "Which flapper do I need for a Bench Model42 from 1968?"


def run() -> Measured:
    """The best question when nothing is told and when a little is, ÷ encoding."""
    model = Model()
    model.encode([MESSAGE])
    few = open_shop(DEMO).counter
    many = counter_for(many_builds(few.tables, LARGE), few.first)
    ratios, figures = [], []
    for counter in (few, many):
        size = f"{len(counter.tables.builds):,} builds"
        made: list[Interviewer] = []
        took = seconds(lambda counter=counter, made=made: made.append(Interviewer(counter)))  # type: ignore[misc]
        gc.freeze()  # a hundred thousand rows are not walked through again and again
        for what, facts in (("nothing told", Facts()), ("a little told", little_told())):
            state = State(facts)
            made[0].best(state)  # look-ups are made once
            best, encoding = by_turns(
                lambda made=made, state=state: made[0].best(state),  # type: ignore[misc]
                lambda: model.encode([MESSAGE]),
                rounds=ROUNDS,
            )
            ratios.append(
                Ratio(f"the best question of {size}, {what} ÷ encoding", best / encoding, 1.0)
            )
            figures.append((f"of {size}, {what}", f"{ms(best)}, encoding {ms(encoding)}"))
        gc.unfreeze()
        figures.append((f"made ready once for {size}", ms(took)))
    return Measured(tuple(ratios), tuple(figures))


def many_builds(tables: Tables, count: int, seed: int = 1) -> Tables:
    """So many made-up builds of the tables' makers and valves, each with its own name and number.

    Each is one of the tables' builds with its years moved, and other valves of the same kind of
    tank now and then.
    """
    chance = random.Random(seed)
    known = list(tables.builds.values())
    builds: dict[str, Build] = {}
    sits: dict[str, BuildValve] = {}
    for n in range(count):
        like = known[n % len(known)]
        name = f"{like.build}-{n}"
        builds[name] = _moved(replace(like, build=name, model=f"{like.model} {n // 4}"), chance, n)
        other = chance.choice(known) if chance.random() < 0.2 else like
        from_there = tables.valves_in.get((other if other.kind == like.kind else like).build, ())
        for one in from_there:
            sits[f"{name}/{one.position}"] = replace(one, build=name)
    return replace(tables, builds=builds, build_valves=sits)


def _moved(build: Build, chance: random.Random, n: int) -> Build:
    """The build some years earlier or later, with a number of its own."""
    by = chance.randrange(-8, 9)
    first, last = build.made_from, build.made_to
    if first is not None and last is not None and 1920 < first <= last < 2010:
        build = replace(build, made_from=first + by, made_to=last + by)
    return replace(build, model_no=build.model_no and f"N{n}", tank_mark=None, sold=None)


def little_told() -> Facts:
    """What a letter says that names no toilet: two looks and a decade."""
    told = (
        Fact(name="pieces", value=("2",), words="two pieces", start=0, end=10),
        Fact(name="overflow", value=("round",), words="round tube", start=20, end=30),
        Fact(name="made", value=Interval(1980, 1989), words="the eighties", start=40, end=52),
    )
    return Facts(told)
