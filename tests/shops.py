"""Small and nasty shops for property tests: empty cells, odd mounts, loops, reports at odds."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from hypothesis import HealthCheck, settings
from hypothesis import strategies as st

from assistant.records.cells import OPEN_FROM, OPEN_TO
from assistant.records.rows import Evidence, Row
from tests.trade import build, says, seal, sits, tables, valve

VALVES, PARTS = ("v0", "v1", "v2"), ("s0", "s1", "s2", "s3")
opening = st.sampled_from((None, 2.0, 2.0, 2.0, 3.0))
span = st.sampled_from((None, None, 61.9, 64.9, 65.0, 66.0, 67.9))
across = st.sampled_from((None, None, 30.7, 32.7, 32.8, 34.8))
pointing = st.sampled_from((None, "up", "up", "down", "none"))
WAYS = "|pegs|pegs|ring|clip|wire|pegs ring|ring pegs|wire ring|clip pegs|push clip|ring push"
mount = st.sampled_from([tuple(ways.split()) for ways in WAYS.split("|")])
style = st.sampled_from(("pegged-flapper", "clip-flapper"))
gallons = st.sampled_from((None, None, 1.28, 1.6, 3.5))
UNSIZED: dict[str, Any] = {"opening_in": None, "mount": ()}

valve_sizes = st.fixed_dictionaries(
    {"style": style, "opening_in": opening, "mount": mount, "peg_span_mm": span, "pegs": pointing}
    | {"overflow": st.sampled_from((None, "round", "round", "square", "none"))}
    | {"overflow_mm": across}
)
seal_sizes = st.fixed_dictionaries(
    {"style": style, "opening_in": opening, "mount": mount, "ear_span_mm": span, "ears": pointing}
    | {"ring_mm": across, "flush_gpf_min": gallons, "flush_gpf_max": gallons}
)
seal_status = st.fixed_dictionaries(
    {"status": st.sampled_from(("stocked", "stocked", "to order", "discontinued"))}
    | {"replaced_by": st.sampled_from((None, *PARTS))}
)
build_columns = st.fixed_dictionaries(
    {"flush_full_gpf": gallons, "pieces": st.sampled_from((None, 1, 2))}
    | {"made_from": st.sampled_from((None, OPEN_FROM, 1970, 1986))}
    | {"made_to": st.sampled_from((None, 1986, 1999, OPEN_TO))}
)
POSITIONS = (("main",), ("main",), ("main", "rinse"), ("rinse", "main"), ("rinse",), ())
evidence = st.lists(
    st.tuples(
        st.sampled_from(("v0", "v0", *VALVES, "b0", "b1")),
        st.sampled_from((None, "main", "rinse")),
        st.sampled_from(PARTS),
        st.sampled_from((*["fits"] * 4, *["fits with change"] * 3, "does not fit")),
        st.booleans(),
    ),
    min_size=3,
    max_size=14,
)


def _evidence(target: str, position: str | None, part: str, verdict: str, stated: bool) -> Evidence:
    """A change is stated on valves for some parts and on builds for others, never on both."""
    on_valve = target in VALVES
    stated = stated and verdict == "fits with change" and on_valve == (part in ("s0", "s1"))
    return says(
        verdict,
        part,
        valve=target if on_valve else None,
        build=None if on_valve else target,
        position=None if on_valve else position,
        change=f"trim it as for {target}" if stated else None,
    )


class Drawn:
    """Tables that show their filled cells, row by row, where an example fails."""

    def __init__(self, rows: Sequence[Row]) -> None:
        self.tables = tables(*rows)
        self._rows = rows

    def __repr__(self) -> str:
        cells = [{k: v for k, v in vars(one).items() if v} for one in self._rows]
        return "".join(f"\n{row.file} {had}" for row, had in zip(self._rows, cells, strict=True))


@st.composite
def shops(draw: st.DrawFn, *, sized: bool, builds: Sequence[str] = ("b0", "b1")) -> Drawn:
    """Three valves, some builds with up to two of them, four seals, and any evidence at all.

    `sized` is whether their measures are known, so that rules may object.
    """
    valve_columns = valve_sizes if sized else st.just(UNSIZED)
    seal_columns = seal_sizes if sized else st.just(UNSIZED)
    rows: list[Row] = [valve(name, **draw(valve_columns)) for name in VALVES]
    rows += [seal(part, **draw(seal_columns), **draw(seal_status)) for part in PARTS]
    for name in builds:
        rows.append(build(name, **draw(build_columns)))
        for position in draw(st.sampled_from(POSITIONS)):
            rows.append(sits(draw(st.sampled_from(("v0", *VALVES))), name, position))
    rows += [_evidence(*one) for one in draw(evidence)]
    return Drawn(rows)


thorough = settings(
    max_examples=1000,
    derandomize=True,
    deadline=None,
    database=None,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.function_scoped_fixture],
)
