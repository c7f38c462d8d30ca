"""The verdict on a seal in a place: rules first, then the evidence."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from assistant.fitment.findings import Finding, Says
from assistant.fitment.places import Place
from assistant.fitment.proof import inherited, proof, successors
from assistant.fitment.rules import RULES
from assistant.fitment.rules.mount import OWN_VALVE_ONLY
from assistant.records.rows import Evidence, Seal
from assistant.records.tables import Tables


class Verdict(Enum):
    """Fits, fits once changed, could fit (geometry only), unknown, or does not fit."""

    FITS = "fits"
    WITH_CHANGE = "fits with change"
    COULD_FIT = "could fit"
    UNKNOWN = "unknown"
    DOES_NOT_FIT = "does not fit"


@dataclass(frozen=True)
class Judgement:
    """A verdict with what it rests on.

    `basis` is evidence, replacement, geometry, conflict, a rule's name, or nothing known.
    """

    part_no: str
    place: Place
    verdict: Verdict
    basis: str
    findings: tuple[Finding, ...] = ()
    evidence: tuple[Evidence, ...] = ()

    @property
    def change(self) -> str | None:
        """What must be changed for it to fit."""
        if self.verdict is not Verdict.WITH_CHANGE:
            return None
        return next((row.change for row in self.evidence if row.change), None)

    @property
    def objection(self) -> Finding | None:
        """The rule that rules it out."""
        return next((f for f in self.findings if f.says is Says.OBJECTS), None)

    @property
    def is_fit(self) -> bool:
        """Whether it may be sold for this place, as it is or changed."""
        return self.verdict in (Verdict.FITS, Verdict.WITH_CHANGE)


def judge(tables: Tables, part_no: str, place: Place) -> Judgement:
    """The verdict on one seal in one place.

    Geometry or volume that disagrees always overrules; evidence that contradicts itself
    proves nothing; geometry that agrees, without evidence, only says 'could fit'.
    """
    seal = tables.seals[part_no]
    findings = tuple(rule(seal, place) for rule in RULES)
    for finding in findings:
        if finding.says is Says.OBJECTS:
            return Judgement(part_no, place, Verdict.DOES_NOT_FIT, finding.rule, findings)
    known = proof(tables, part_no, place)
    if known.conflicts:
        rows = known.fits + known.with_change + known.against
        return Judgement(part_no, place, Verdict.UNKNOWN, "conflict", findings, rows)
    if known.against:
        return Judgement(part_no, place, Verdict.DOES_NOT_FIT, "evidence", findings, known.against)
    if known.fits:
        return Judgement(part_no, place, Verdict.FITS, "evidence", findings, known.fits)
    if stated := tuple(row for row in known.with_change if row.change):
        return Judgement(part_no, place, Verdict.WITH_CHANGE, "evidence", findings, stated)
    if known.is_empty and (rows := inherited(tables, part_no, place)):
        return Judgement(part_no, place, Verdict.FITS, "replacement", findings, rows)
    if known.is_empty and _measures_agree(seal, place, findings):
        return Judgement(part_no, place, Verdict.COULD_FIT, "geometry", findings)
    return Judgement(part_no, place, Verdict.UNKNOWN, "nothing known", findings)


def _measures_agree(seal: Seal, place: Place, findings: tuple[Finding, ...]) -> bool:
    """Opening and mount both known and agreeing, on a mount that geometry can speak for."""
    says = {finding.rule: finding.says for finding in findings}
    mounted = any(says.get(rule) is Says.AGREES for rule in ("ear-span", "ring-size", "mount"))
    shared = {*seal.mount} & {*place.valve.mount}
    return says.get("opening") is Says.AGREES and mounted and not shared <= OWN_VALVE_ONLY


def tried(tables: Tables, place: Place) -> tuple[str, ...]:
    """Part numbers with evidence in this place, or that replaced one with evidence."""
    found = dict.fromkeys(tables.parts_tried_on_valve.get(place.valve.valve, ()))
    if place.build is not None:
        found |= dict.fromkeys(tables.parts_tried_on_build.get(place.build.build, ()))
    for part_no in tuple(found):
        found |= dict.fromkeys(successors(tables, part_no))
    return tuple(found)


def fitting(tables: Tables, place: Place) -> dict[str, Judgement]:
    """The seals still sold that fit a place, as they are or changed, by part number."""
    found = {}
    for part_no in tried(tables, place):
        if tables.seals[part_no].status == "discontinued":
            continue
        judgement = judge(tables, part_no, place)
        if judgement.is_fit:
            found[part_no] = judgement
    return found
