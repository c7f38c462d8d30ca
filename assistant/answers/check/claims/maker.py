"""Who makes a seal, whether it is the maker's own, and the numbers moulded on it."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.answers.check.attributes import Attribute
from assistant.answers.check.frames import Frame, Reading
from assistant.answers.check.line import Line
from assistant.answers.check.lookup import cited
from assistant.answers.check.patterns import PIECES
from assistant.answers.check.results import Finding, Result, result_of
from assistant.records.rows import Seal
from assistant.records.tables import Tables


def _makers(line: Line, stretch: str) -> tuple[str, ...] | None:
    return tuple(v for item in line.within(stretch, "B") for v in item.values["B"]) or None


def _genuine(line: Line, stretch: str) -> bool:
    return not {"compatible", "aftermarket"} & set(stretch.split())


def _made_by(tables: Tables, seal: Seal, said: Sequence[str]) -> bool | None:
    if seal.maker is None:
        return None
    row = tables.brands.get(seal.maker)
    return any(name in said for name in (seal.maker, *(row.aliases if row else ())))


_OWN = "({B} 's|(the|its)? maker 's) own"

ATTRIBUTES = (
    Attribute(
        name="genuine",
        read=_genuine,
        test=lambda tables, seal, said: None if seal.genuine is None else seal.genuine == said,
        adj=("compatible", "aftermarket", "genuine", _OWN),
    ),
    Attribute(
        name="maker",
        read=_makers,
        test=_made_by,
        adj=(_OWN, "{B} 's?"),
        post=("(made)? (by|from) {B}",),
    ),
)


def belongs(reading: Reading) -> Sequence[Finding]:
    """A number, moulded on an old seal or quoted from a letter, belongs to the parts named."""
    tables = reading.context.given.tables
    parts = reading.subject("s")
    numbers = [v for item in reading.items("N", "n") for v in item.values["N"]]
    numbers += [item.values["Q"] for item in reading.items("Q", "n")]
    reading.context.parts = parts
    reading.context.old_part = parts[0]
    reading.context.quotes += tuple(i.values["Q"] for i in reading.items("Q", "n"))
    return [
        Finding(f"{number} belongs to {part}", "maker-number", _carries(tables, part, number), row)
        for part in parts
        for number in numbers
        if (row := cited(tables.seals[part]))
    ]


def _carries(tables: Tables, part: str, number: str) -> Result:
    seal = tables.seals[part]
    held = {_bare(n) for n in (*seal.maker_no, seal.part_no)}
    return result_of(_bare(number) in held if seal.maker_no or _bare(number) in held else None)


def _bare(number: str) -> str:
    return re.sub(r"[\W_]+", "", number).casefold()


PIECES["number"] = "({N}|{Q}) ({joined} ({N}|{Q}))*"

FRAMES = (
    Frame(
        "maker-number",
        "(the|its)? (maker 's)? number? {n:number} (belongs|belong) to {s:parts}",
        belongs,
    ),
    Frame(
        "maker-number",
        "(the|its)? (maker 's)? number? {n:number} is (the|a) (maker 's)? number of {s:parts}",
        belongs,
    ),
    Frame(
        "maker-number",
        "(the|its)? (maker 's)? number? {n:number}"
        " is (moulded|stamped|printed) (on|into) {s:parts}",
        belongs,
    ),
    Frame(
        "maker-number",
        "{s:part} (carries|bears|has|is sold under) the (maker 's)? number {n:number}",
        belongs,
    ),
    Frame("maker-number", "its (maker 's)? number is {n:number}", belongs),
)
