"""Names that lead nowhere, and rows at odds with themselves."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from assistant.linting.finding import Finding, Rule
from assistant.linting.gathered import TABLES, Gathered
from assistant.linting.settle import names_both_or_neither, references, reversed_ranges
from assistant.records.rows import TABLES as KINDS
from assistant.records.tables import RANGES
from assistant.settings import meant

MOST_MEANT = 20  # near names are looked for this often: looking takes long in a long table
# A table may be used with these reversed, but then they say nothing.
MEASURES = {"seals.csv": (("flush_gpf_min", "flush_gpf_max"),)}


def unknown_name(gathered: Gathered) -> Iterator[Finding]:
    """A row may name only rows that are there, sound or not."""
    looked = 0
    for kind in KINDS:
        columns = gathered.columns[kind.file]
        for column, to in references(kind).items():
            if to not in gathered.ids:
                continue  # what that table holds is not known
            ids, coded = gathered.ids[to], columns.coded(column)
            mends = {}
            for value in coded.values:
                if value and value not in ids:
                    near = meant(value, ids) if looked < MOST_MEANT else []
                    looked += 1
                    mends[value] = (
                        f"perhaps '{near[0]}' is meant" if near else "add it there or correct it"
                    )
            for row in coded.rows_of(mends):
                name = columns.cells[column][row]
                yield Finding(
                    path=f"{TABLES}/{kind.file}",
                    line=columns.lines[row],
                    what=f"{column} '{name}' is not in {to}",
                    mend=mends[name],
                )


def reversed_range(gathered: Gathered) -> Iterator[Finding]:
    """The first year or the smaller volume comes first."""
    for kind in KINDS:
        columns = gathered.columns[kind.file]
        for low, high in (*RANGES.get(kind.file, ()), *MEASURES.get(kind.file, ())):
            for row in reversed_ranges(columns, kind, low, high):
                first, last = columns.cells[low][row], columns.cells[high][row]
                yield Finding(
                    path=f"{TABLES}/{kind.file}",
                    line=columns.lines[row],
                    what=f"{low} {first} is above {high} {last}",
                    mend="swap the two or correct one",
                )


def valve_or_build(gathered: Gathered) -> Iterator[Finding]:
    """A seal was tried on a valve, or on a build whose valve nobody wrote down."""
    columns = gathered.columns["fitment.csv"]
    for row in map(int, np.flatnonzero(names_both_or_neither(columns))):
        both = bool(columns.cells["valve"][row])
        yield Finding(
            path=f"{TABLES}/fitment.csv",
            line=columns.lines[row],
            what="the row names both a valve and a build"
            if both
            else "the row names neither a valve nor a build",
            mend="keep the one that was tried and empty the other"
            if both
            else "fill in the one that was tried",
        )


RULES = (
    Rule(
        "unknown-name",
        "error",
        "A row that names what is not listed says nothing of what is; nothing is answered with it.",
        unknown_name,
    ),
    Rule(
        "reversed-range",
        "error",
        "No year and no volume lies in a range that ends before it begins.",
        reversed_range,
    ),
    Rule(
        "valve-or-build",
        "error",
        "A seal closes a valve; evidence that could mean two things proves neither.",
        valve_or_build,
    ),
)
