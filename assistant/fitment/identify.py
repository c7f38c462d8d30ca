"""Which listed toilets a letter may speak of, and whether a fact identifies one.

The table never lists every toilet. That the customer's is not in it is ruled out only by an
identifying fact: a model number, an old part's number, or maker and model named as the table
names them. A description never does.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import Enum

from assistant.fitment.judge import Verdict, judge
from assistant.fitment.places import Place, Scenario, of_build, of_valve
from assistant.fitment.proof import forerunners
from assistant.reading.facts import Fact, Facts
from assistant.records.rows import Build
from assistant.records.tables import Tables


class By(Enum):
    """What the toilet is identified by."""

    NUMBER = "model number"
    NAME = "maker and model"
    OLD_PART = "old part"
    MODEL_ONLY = "model without maker"
    BRAND_ONLY = "maker without model"
    SEVERAL = "several names"
    NOTHING = "nothing"


@dataclass(frozen=True)
class Identity:
    """The scenarios that the names and numbers leave, before any other fact."""

    by: By
    scenarios: tuple[Scenario, ...] = ()
    names: tuple[str, ...] = ()  # full names of the models still meant
    brands: tuple[str, ...] = ()
    similar: tuple[Fact, ...] = ()  # names matched by likeness, to be said back
    unlisted: tuple[Fact, ...] = ()
    disagree: tuple[Fact, ...] = ()  # names and numbers that cannot all be right

    @property
    def is_certain(self) -> bool:
        """Whether the toilet that the table does not list is out of the question."""
        known = self.by in (By.NUMBER, By.NAME, By.OLD_PART)
        return known and not self.unlisted and not self.disagree


def identify(tables: Tables, facts: Facts) -> Identity:
    """What the names and numbers among the facts about one toilet leave possible."""
    names = [f for f in facts.named("brand", "model", "model_no") if not f.negated]
    brands = _meant([f for f in names if f.name == "brand"])
    models = _meant([f for f in names if f.name == "model"])
    numbers = [f for f in names if f.name == "model_no"]
    unlisted = tuple(f for f in facts.named("unlisted") if f.of in ("brand", "model", "number"))
    similar = tuple(f for f in names if f.similar)
    builds = {b.build: b for name in models for b in tables.models.get(name, ())}
    if brands and builds:
        kept = {key: b for key, b in builds.items() if b.brand in brands}
        if not kept:
            clash = tuple(f for f in names if f.name in ("brand", "model"))
            return Identity(By.SEVERAL, brands=brands, names=models, disagree=clash)
        if _of_another_maker(names, builds, kept):
            # The name as written is another maker's: which of the two was meant is to be asked.
            scenarios = tuple(of_build(tables, b) for b in builds.values())
            return Identity(By.SEVERAL, scenarios, models, (), similar, unlisted)
        builds = kept
    parts = [f for f in facts.named("part_no") if not f.negated]
    old = [f for f in parts if f.of == "old"]
    if numbers:
        found = _by_number(tables, facts, numbers, builds, brands, similar, unlisted)
        return _with_old_part(tables, found, old)
    nameless = not builds and not brands and not unlisted
    nameless = nameless and not facts.has("asks", "does it fit")
    # A part asked for by its number, with no toilet named, is taken for the one in there now.
    same = old or [f for f in parts if f.of == "wanted" and nameless]
    if same and not builds:
        return _by_old_part(tables, same, brands, unlisted)
    full = tuple(dict.fromkeys(b.full_name for b in builds.values()))
    if not builds:
        by = By.BRAND_ONLY if brands else By.NOTHING
        return Identity(by, brands=brands, similar=similar, unlisted=unlisted)
    one_model = len({b.model for b in builds.values()}) == 1
    models_said = [f for f in names if f.name == "model"]
    if not brands and one_model and not any(_says_maker(tables, f) for f in models_said):
        by = By.MODEL_ONLY
    elif len(full) > 1:
        by = By.SEVERAL
    else:
        by = By.NAME
    scenarios = tuple(of_build(tables, b) for b in builds.values())
    found = Identity(by, scenarios, full, brands, similar, unlisted)
    checked = _with_old_part(tables, found, old)
    if old and by is not By.NAME and not checked.disagree:
        return _by_old_part(tables, old, brands, unlisted)  # the name alone would not do
    return checked


def _with_old_part(tables: Tables, identity: Identity, old: list[Fact]) -> Identity:
    """Only the scenarios that take the old part; where none does, the two disagree."""
    if not old or identity.disagree:
        return identity
    kept = tuple(s for s in identity.scenarios if _takes(tables, s, old))
    parts = [fact.choices[0] for fact in old if len(fact.choices) == 1]
    if len(parts) == 1 == len(old):
        kept = tuple(_where(tables, s, parts[0]) for s in kept)  # of two valves, the one it is for
    if kept:
        return replace(identity, scenarios=kept)
    return replace(identity, disagree=tuple(old))


def _of_another_maker(names: list[Fact], builds: dict[str, Build], kept: dict[str, Build]) -> bool:
    """Whether a name alike to one of the maker's is also that of another maker's model."""
    dropped = {b.model for b in builds.values()} - {b.model for b in kept.values()}
    return bool(dropped) and all(f.similar for f in names if f.name == "model")


def _meant(facts: list[Fact]) -> tuple[str, ...]:
    """The names meant: an exact reading beats likenesses of the same kind."""
    exact = [f for f in facts if not f.similar] or facts
    return tuple(dict.fromkeys(name for f in exact for name in f.choices))


def _says_maker(tables: Tables, fact: Fact) -> bool:
    """Whether the model's name as written holds its maker's, as a nickname may."""
    words = fact.words.lower()
    return all(tables.models[n][0].brand.lower() in words for n in fact.choices)


def _by_number(
    tables: Tables,
    facts: Facts,
    numbers: list[Fact],
    named: dict[str, Build],
    brands: tuple[str, ...],
    similar: tuple[Fact, ...],
    unlisted: tuple[Fact, ...],
) -> Identity:
    found: dict[str, Build] = {}
    for fact in numbers:
        for number in fact.choices:
            found |= {b.build: b for b in tables.numbered.get(number, ())}
    builds = {k: b for k, b in found.items() if not named or k in named}
    builds = {k: b for k, b in builds.items() if not brands or b.brand in brands}
    meant = [{b.build for n in f.choices for b in tables.numbered.get(n, ())} for f in numbers]
    if not builds or not all(m & {*builds} for m in meant):
        clash = (*numbers, *(f for f in facts.named("brand", "model") if not f.negated))
        return Identity(By.NUMBER, brands=brands, similar=similar, disagree=clash)
    full = tuple(dict.fromkeys(b.full_name for b in builds.values()))
    scenarios = tuple(of_build(tables, b) for b in builds.values())
    return Identity(By.NUMBER, scenarios, full, brands, similar, unlisted)


def _by_old_part(
    tables: Tables, old: list[Fact], brands: tuple[str, ...], unlisted: tuple[Fact, ...]
) -> Identity:
    """Every valve and build in which the old part is known to fit.

    A valve may sit in a listed build, whose flush volume counts, or in an unlisted one.
    """
    scenarios: dict[Scenario, None] = {}
    plainly = False
    for part_no in dict.fromkeys(c for fact in old for c in fact.choices):
        known = [part_no, *forerunners(tables, part_no)]
        for row in (row for part in known for row in tables.evidence_of_part.get(part, ())):
            if row.valve:
                valve = tables.valves[row.valve]
                builds = [tables.builds[s.build] for s in tables.builds_with.get(row.valve, ())]
                found = [of_valve(tables, valve), *(of_build(tables, b) for b in builds)]
            else:
                found = [of_build(tables, tables.builds[row.build])] if row.build else []
            for scenario in found:
                if (placed := _where(tables, scenario, part_no)).places:
                    scenarios[placed] = None
                    plainly = plainly or _plainly(tables, part_no, placed)
    if not plainly:  # it sits there by a change, or by evidence that contradicts itself
        return Identity(By.OLD_PART, brands=brands, unlisted=unlisted)
    positions = {s.positions for s in scenarios}
    if len(positions) > 1 and all(len(p) == 1 for p in positions):
        scenarios = {replace(s, any_position=True): None for s in scenarios}
    return Identity(By.OLD_PART, tuple(scenarios), brands=brands, unlisted=unlisted)


def _takes(tables: Tables, scenario: Scenario, old: list[Fact]) -> bool:
    """Whether each of the old parts is known to fit somewhere in the tank."""
    return all(
        any(_fits(tables, part, place) for part in fact.choices for place in scenario.places)
        for fact in old
    )


def _where(tables: Tables, scenario: Scenario, part_no: str) -> Scenario:
    """Only the places of a tank in which the part fits."""
    return replace(scenario, places=tuple(p for p in scenario.places if _fits(tables, part_no, p)))


def _plainly(tables: Tables, part_no: str, scenario: Scenario) -> bool:
    return any(judge(tables, part_no, p).verdict is Verdict.FITS for p in scenario.places)


def _fits(tables: Tables, part_no: str, place: Place) -> bool:
    """Whether the part may sit there now: evidence that contradicts itself does not say no."""
    found = judge(tables, part_no, place)
    return found.is_fit or found.basis == "conflict"
