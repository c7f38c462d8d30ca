"""Numbers that were replaced: each chain must end, and end at a part that is sold."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.linting.finding import Finding, Rule
from assistant.linting.gathered import Gathered
from assistant.records.rows import Seal


def _followed(gathered: Gathered, seal: Seal) -> tuple[list[str], bool]:
    """The numbers from this one on, and whether they lead back to it."""
    chain, seals = [seal.part_no], gathered.tables.seals
    while (after := seals[chain[-1]].replaced_by) is not None:
        if after == seal.part_no:
            return chain, True
        if after in chain:
            break  # it leads into a circle, and is not in it
        chain.append(after)
    return chain, False


def replacement_cycle(gathered: Gathered) -> Iterator[Finding]:
    """Each circle once, at the first of its rows."""
    told: set[str] = set()
    for seal in gathered.tables.seals.values():
        chain, leads_back = _followed(gathered, seal)
        if leads_back and seal.part_no not in told:
            told.update(chain)
            path, line = gathered.at("seals.csv", seal.part_no)
            yield Finding(
                path=path,
                line=line,
                what=f"'{seal.part_no}' is replaced by itself"
                if len(chain) == 1
                else "the replacements lead in a circle: "
                + ", ".join(f"'{part}'" for part in (*chain, seal.part_no)),
                mend="empty replaced_by in the newest of them"
                if len(chain) > 1
                else "name the part that took its place, or empty replaced_by",
            )


def dead_end(gathered: Gathered) -> Iterator[Finding]:
    """A discontinued part whose numbers lead to none that is sold."""
    tables = gathered.tables
    for seal in tables.seals.values():
        if seal.status != "discontinued" or tables.living(seal.part_no) is not None:
            continue
        chain, leads_back = _followed(gathered, seal)
        last = tables.seals[chain[-1]]
        if leads_back or last.replaced_by is not None:
            continue  # told as a circle
        path, line = gathered.at("seals.csv", seal.part_no)
        yield Finding(
            path=path,
            line=line,
            what=f"'{seal.part_no}' is discontinued and nothing is named in its place"
            if len(chain) == 1
            else f"'{seal.part_no}' is discontinued, and so is '{last.part_no}' at the end of "
            "its replacements",
            mend="fill in replaced_by"
            + ("" if len(chain) == 1 else f" in the row of '{last.part_no}'")
            + ", or leave it if nothing follows",
        )


RULES = (
    Rule(
        "replacement-cycle",
        "error",
        "A customer with the old number would be sent round for ever; no maker replaces so.",
        replacement_cycle,
    ),
    Rule(
        "dead-end",
        "warning",
        "A customer with that number in hand is told that nothing follows it: it should be true.",
        dead_end,
    ),
)
