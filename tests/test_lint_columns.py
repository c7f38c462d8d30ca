"""What lint finds in columns is what fitment finds row by row, on small and nasty shops."""

from __future__ import annotations

import tempfile
from pathlib import Path

from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.fitment.findings import Says
from assistant.fitment.judge import fitting
from assistant.fitment.places import Place, of_build
from assistant.fitment.proof import forerunners, proof
from assistant.fitment.rules import RULES
from assistant.linting.gather import gather
from assistant.linting.gathered import Gathered
from assistant.records.rows import Row
from assistant.records.tables import Tables, load_tables
from tests.demonstration import FOLDER
from tests.linting import OLDEST, TODAY, shop, told_of
from tests.shops import Drawn, shops, thorough

_OURS = {"geometry-against": "fits", "change-overruled": "fits with change"}


def gathered(tables: Tables) -> Gathered:
    """The tables written as a shop on disk, and gathered from there."""
    rows: list[Row] = []
    for read in (tables.styles, tables.valves, tables.builds, tables.build_valves, tables.seals):
        rows += read.values()
    with tempfile.TemporaryDirectory() as place:
        return gather(shop(Path(place), *rows, *tables.evidence.values()), TODAY, OLDEST)


def objected(tables: Tables) -> dict[str, list[str]]:
    """The pieces of evidence for a seal to which some rule objects where it was tried."""
    found: dict[str, list[str]] = {verdict: [] for verdict in _OURS.values()}
    for name, piece in tables.evidence.items():
        if piece.verdict == "does not fit":
            continue
        if piece.valve is not None:
            places = [Place(tables.valves[piece.valve])]
        else:
            places = [
                place
                for place in of_build(tables, tables.builds[piece.build or ""]).places
                if piece.position == place.position or (piece.position is None and place.alone)
            ]
        seal = tables.seals[piece.part_no]
        if any(rule(seal, place).says is Says.OBJECTS for rule in RULES for place in places):
            found[piece.verdict].append(name)
    return found


@settings(thorough, max_examples=300)
@given(st.booleans().flatmap(lambda sized: shops(sized=sized)))
def test_columns_find_what_rows_do(drawn: Drawn) -> None:
    tables = drawn.tables
    ours = gathered(tables)
    lines = {name: at for at, name in enumerate(tables.evidence, start=2)}

    def at(rule: str) -> list[int]:
        return [int(line.split(":")[1]) for line in told_of(ours, rule)]

    for rule, verdict in _OURS.items():
        assert at(rule) == [lines[name] for name in objected(tables)[verdict]]

    tried = {
        part
        for part in tables.seals
        for old in (part, *forerunners(tables, part))
        for piece in tables.evidence_of_part.get(old, ())
        if piece.verdict == "fits" or (old == part and piece.verdict != "does not fit")
    }
    assert at("never-fitted") == [n for n, p in enumerate(tables.seals, start=2) if p not in tried]

    unserved = [
        number
        for number, build in enumerate(tables.builds.values(), start=2)
        for place in of_build(tables, build).places
        if not fitting(tables, place)
    ]
    assert at("no-seal") == unserved

    for part in tables.seals:
        for valve in tables.valves.values():
            known = proof(tables, part, Place(valve))
            line = max((lines[e.evidence] for e in (*known.fits, *known.with_change,
                                                    *known.against)), default=0)  # fmt: skip
            assert (line in at("conflicting-evidence")) == known.conflicts


def test_the_tables_that_lint_reads_are_those_that_answers_rest_on() -> None:
    ours, theirs = gather(FOLDER, TODAY, OLDEST).tables, load_tables(FOLDER / "knowledge/tables")
    assert ours == theirs
    assert ours.evidence_of_part == theirs.evidence_of_part  # rows made when asked for
