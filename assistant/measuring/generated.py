"""Tables and vectors of any size for benchmarks; the same ones for the same seed."""

from __future__ import annotations

import dataclasses
import random
from typing import Any, TypeVar

import numpy as np

from assistant.reading.facts import Fact, Facts, Interval
from assistant.records.rows import (
    Brand,
    Build,
    BuildValve,
    Evidence,
    FlushValve,
    Row,
    Seal,
    Style,
)
from assistant.records.tables import Tables
from assistant.search.vectors import Vectors

TRIED = 100  # seals tried on each valve
BUILDS = 3  # builds of each model, one after the other


def tables_with(evidence: int, seed: int = 1) -> Tables:
    """Tables with so many pieces of evidence: a hundred seals tried on each valve."""
    chance = random.Random(seed)
    count = max(1, evidence // TRIED)
    valves = {f"v{n}": _valve(n, chance) for n in range(count)}
    seals = {f"S-{n}": _seal(n, chance) for n in range(max(TRIED, count))}
    parts = list(seals)
    builds, sits = {}, {}
    for n in range(count):
        for at in range(BUILDS):
            build = _build(n, at)
            builds[build.build] = build
            valve = f"v{n if at == 0 else chance.randrange(count)}"
            sits[f"{build.build}/main"] = _row(
                BuildValve, build=build.build, position="main", valve=valve, seals_needed=1
            )
    rows = (
        _evidence(f"E{n}-{at}", f"v{n}", part, chance)
        for n in range(count)
        for at, part in enumerate(chance.sample(parts, TRIED))
    )
    return Tables(
        brands={"Bench": _row(Brand, brand="Bench")},
        styles={"flapper": _row(Style, style="flapper", plain_name="flapper")},
        valves=valves,
        builds=builds,
        build_valves=sits,
        seals=seals,
        evidence={row.evidence: row for row in rows},
    )


R = TypeVar("R", bound=Row)


def _row(of: type[R], /, **cells: Any) -> R:
    """A row with these cells filled and the others empty."""
    several = ("aliases", "maker_no", "mount", "usual_openings_in")
    fields = {f.name: () if f.name in several else None for f in dataclasses.fields(of)}  # type: ignore[arg-type]
    return of(**{**fields, **cells})


def _valve(n: int, chance: random.Random) -> FlushValve:
    return _row(
        FlushValve,
        valve=f"v{n}",
        style="flapper",
        opening_in=chance.choice((2.0, 3.0)),
        mount=("pegs",),
        peg_span_mm=chance.choice((75.0, 82.0, 90.0)),
        pegs="up",
    )


def _seal(n: int, chance: random.Random) -> Seal:
    return _row(
        Seal,
        part_no=f"S-{n}",
        name=f"Seal {n}",
        style="flapper",
        opening_in=chance.choice((2.0, 3.0)),
        mount=("pegs",),
        ear_span_mm=chance.choice((75.0, 82.0, 90.0)),
        ears="up",
        status="stocked",
    )


def _build(n: int, at: int) -> Build:
    return _row(
        Build,
        build=f"m{n}-{at}",
        brand="Bench",
        model=f"Model{n}",
        made_from=1960 + 15 * at,
        made_to=1974 + 15 * at,
    )


def _evidence(name: str, valve: str, part: str, chance: random.Random) -> Evidence:
    verdict = "fits" if chance.random() < 0.7 else "does not fit"
    return _row(
        Evidence,
        evidence=name,
        valve=valve,
        part_no=part,
        verdict=verdict,
        kind="tried at the bench",
    )


def told_of(model: int, year: int) -> Facts:
    """What a letter says that names one of the generated models and a year."""
    name = f"Bench Model{model}"
    made = Interval(year, year)
    return Facts(
        (
            Fact(name="brand", value=("Bench",), words="Bench", start=0, end=5),
            Fact(name="model", value=(name,), words=name, start=0, end=len(name)),
            Fact(name="made", value=made, words=str(year), start=20, end=24, of="stated"),
        )
    )


def clustered(
    count: int, queries: int, dimensions: int = 384, seed: int = 1
) -> tuple[Vectors, Vectors]:
    """Vectors of length 1 as notes give them, shapes `(count, dimensions)` and `(queries, ...)`.

    As measured on the vectors of the demonstration's notes: all share a direction (length 0.44);
    passages on one subject lie about a centre of length 0.62, at 0.78 from it; and the variance
    falls along the directions as exp(-0.35 sqrt(k)). The queries lie near passages, as a question
    lies near its answer (cosine about 0.7).
    """
    chance = np.random.default_rng(seed)
    axes = np.exp(-0.175 * np.sqrt(np.arange(dimensions))).astype(np.float32)
    axes /= np.linalg.norm(axes)
    common = np.zeros(dimensions, dtype=np.float32)
    common[dimensions // 2] = 0.44
    subjects = max(1, count // 50)
    centres = common + 0.44 * axes * chance.standard_normal((subjects, dimensions), np.float32)
    often = 1 / np.sqrt(np.arange(1, subjects + 1))
    of = chance.choice(subjects, size=count, p=often / often.sum())
    vectors = np.empty((count, dimensions), dtype=np.float32)
    for first in range(0, count, 100_000):
        own = of[first : first + 100_000]
        strewn = axes * chance.standard_normal((len(own), dimensions), np.float32)
        vectors[first : first + len(own)] = _unit(centres[own] + 0.78 * strewn)
    near = vectors[chance.integers(0, count, queries)]
    asked = _unit(near + axes * chance.standard_normal(near.shape, np.float32))
    return vectors, asked


def _unit(vectors: Vectors) -> Vectors:
    lengths = np.linalg.norm(vectors, axis=1, keepdims=True)
    unit: Vectors = (vectors / lengths).astype(np.float32, copy=False)
    return unit
