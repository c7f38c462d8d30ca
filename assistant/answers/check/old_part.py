"""A valve known by the part that sits on it: where the old part fits, a new one must too."""

from __future__ import annotations

from assistant.answers.check.lookup import Place, chain_reaches, cited, verdict
from assistant.answers.check.results import CONTRADICTED, SUPPORTED, UNKNOWN, Finding
from assistant.records.tables import Tables


def in_place_of(tables: Tables, new: str, old: str) -> Finding:
    """Whether `new` may be sold to someone who has `old` in the tank.

    A number that took the old one's place will do, unless a place where the old one fits
    speaks against it; any other part must fit everywhere that the old one does.
    """
    seal = tables.seals[new]
    claim = f"{new} fits where {old} did"
    if seal.status == "discontinued":
        return Finding(claim, "discontinued", CONTRADICTED, cited(seal))
    found = everywhere(tables, new, old)
    if found.result == UNKNOWN and chain_reaches(tables, old, new):
        return Finding(claim, "replaced-by", SUPPORTED, cited(tables.seals[old]))
    return found


def everywhere(tables: Tables, new: str, old: str) -> Finding:
    """Whether `new` fits on every valve, and in every build, where evidence says `old` does."""
    claim = f"{new} fits wherever {old} does"
    if new == old:
        return Finding(claim, "same-part", SUPPORTED, cited(tables.seals[new]))
    row = None
    for place in [*fitted(tables, old), *fitted(tables, old, "fits with change")]:
        found = verdict(tables, new, place)
        if found.says == "unknown" or found.says == "could fit":
            return Finding(claim, found.rule, UNKNOWN, found.row)
        if found.says != "fits":
            return Finding(claim, found.rule, CONTRADICTED, found.row)
        row = row or found.row
    plainly = row is not None and bool(fitted(tables, old))
    return Finding(claim, "wherever", SUPPORTED if plainly else UNKNOWN, row)


def fitted(tables: Tables, old: str, says: str = "fits") -> list[Place]:
    """Every valve, and every build and position, where evidence says that a part fits.

    `says` is the verdict looked for: 'fits', or 'fits with change'.
    """
    places: list[Place] = []
    for row in tables.evidence_of_part.get(old, ()):
        if row.verdict != says:
            continue
        if row.valve is not None:
            valve = tables.valves[row.valve]
            places.append(Place(None, None, valve))
            places += [
                Place(tables.builds[b.build], b.position, valve)
                for b in tables.builds_with.get(row.valve, ())
            ]
        elif row.build is not None:
            places += [
                Place(tables.builds[row.build], b.position, tables.valves[b.valve])
                for b in tables.valves_in.get(row.build, ())
                if row.position in (None, b.position)
            ]
    return [place for place in places if verdict(tables, old, place).says == says]
