"""From the facts about one toilet to an outcome.

Each step below either decides or passes on, in order; the last always decides.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from assistant.fitment.asking import settling
from assistant.fitment.decision import Branch, Decision, Outcome, Why
from assistant.fitment.features import Condition, values
from assistant.fitment.identify import By, Identity, identify
from assistant.fitment.judge import judge
from assistant.fitment.lookalikes import look_alikes, ruled_out
from assistant.fitment.measures import Rack
from assistant.fitment.narrow import (
    ABOUT_VALVE,
    TESTS,
    dating,
    is_original,
    narrowed,
    told_volume,
)
from assistant.fitment.old_parts import is_replaced, with_numbers_settled
from assistant.fitment.picks import Group, groups_of
from assistant.fitment.places import Scenario
from assistant.reading.contradictions import contradictions
from assistant.reading.facts import Fact, Facts
from assistant.records.tables import Tables

MOST_BRANCHES = 4  # more conditions than this nobody reads: ask instead
MOST_MEASURED = 8  # of one kind, each with its measures
MOST_RULED_OUT = 2


@dataclass(frozen=True)
class Counter:
    """The tables with what deciding needs beside them; made once, used for every message."""

    tables: Tables
    rack: Rack
    first: tuple[str, ...]  # the shop's order of preference


def decide(counter: Counter, facts: Facts) -> Decision:
    """The outcome for one toilet. `facts` are those about this toilet only."""
    facts = with_numbers_settled(counter.tables, facts)
    identity = identify(counter.tables, facts)
    decision = (
        _contradiction(facts, identity)
        or _replaced(counter, facts, identity)
        or _not_listed(identity)
        or _not_identified(counter, facts, identity)
        or _identified(counter, facts, identity)
    )
    decision = _dated_twice(counter, facts, decision)
    decision = _troubled(facts, _doubted(facts, _one_of_two(facts, decision)))
    return replace(decision, told=facts, valve_is_original=is_original(facts))


def _doubted(facts: Facts, decision: Decision) -> Decision:
    """'A Brand Model, I think': the seal holds if that is what it is, and the number settles it."""
    named = decision.outcome in (Outcome.PART, Outcome.DEPENDS)
    by_name = named and decision.identity.by is By.NAME
    unsure = [f for f in facts.named("brand", "model") if not (f.sure or f.similar or f.negated)]
    if not by_name or not unsure or _borne_out(decision.identity, facts):
        return decision
    settled = decision.outcome is Outcome.PART and not decision.identity.similar
    if len(decision.identity.brands) > 1 or not settled:
        return Decision(
            outcome=Outcome.ASK,
            why=Why.SEVERAL_NAMES,
            identity=decision.identity,
            question="model_no",
        )
    condition = Condition("model", decision.identity.names)
    return replace(
        decision,
        outcome=Outcome.DEPENDS,
        why=Why.DOUBTED,
        branches=tuple(replace(b, condition=condition) for b in decision.branches),
        question="model_no",
    )


def _borne_out(identity: Identity, facts: Facts) -> bool:
    """'A Model, which is a Brand I believe': the table knows it of that maker alone."""
    named = facts.named("model")
    sure = [f for f in named if f.sure and not f.similar and not f.negated]
    return bool(sure) and len(sure) == len(named) and len(identity.names) == 1


def _dated_twice(counter: Counter, facts: Facts, decision: Decision) -> Decision:
    """'From 1975', and later '1999' of who knows what: asked about where it would be another seal.

    A letter that takes back a date says so in more ways than anybody can list.
    """
    made = facts.named("made")
    loose = [f for f in facts.named("year") if not f.negated]
    named = decision.outcome in (Outcome.PART, Outcome.DEPENDS) and decision.branches
    if not named or not made or any(f.interval.meets(m.interval) for f in loose for m in made):
        return decision
    for year in loose:
        others = Facts(tuple(f for f in facts if f.name not in ("made", "year")))
        then = _identified(counter, others.plus([replace(year, name="made")]), decision.identity)
        if then.branches and _sold(then) != _sold(decision):
            return decision.asking(Why.CONTRADICTION, "made", (made[0], year))
    return decision


def _sold(decision: Decision) -> set[str]:
    picks = [pick for b in decision.branches for ps in b.group.picks.values() for pick in ps]
    return {pick.part_no for pick in picks}


def _troubled(facts: Facts, decision: Decision) -> Decision:
    """Words of a crack or of water outside, which were not understood: somebody looks first."""
    told = facts.named("trouble")
    if not told or decision.outcome not in (Outcome.PART, Outcome.DEPENDS):
        return decision
    return decision.asking(Why.TROUBLE, "photograph", told[:1])


def _one_of_two(facts: Facts, decision: Decision) -> Decision:
    """'Only one of the two leaks': which of them comes first, where they take different seals."""
    told = facts.named("position")
    named = decision.outcome in (Outcome.PART, Outcome.DEPENDS) and decision.branches
    if not told or not named or any(len(f.choices) == 1 for f in told):
        return decision
    picks = [b.group.picks for b in decision.branches]
    if all(len({tuple(p.part_no for p in ps) for ps in by.values()}) < 2 for by in picks):
        return decision
    return decision.asking(Why.ONE_OF_TWO, "position", told[:1], told[0].choices)


def _contradiction(facts: Facts, identity: Identity) -> Decision | None:
    for one, other in contradictions(facts):
        return Decision(
            outcome=Outcome.ASK,
            why=Why.CONTRADICTION,
            identity=identity,
            question=one.name,
            facts=(one, other),
        )
    if identity.disagree:
        return Decision(
            outcome=Outcome.ASK,
            why=Why.DISAGREES,
            identity=identity,
            question="photograph" if _gave_a_number(identity.disagree) else "model_no",
            facts=identity.disagree,
        )
    return None


def _gave_a_number(facts: Sequence[Fact]) -> bool:
    return any(f.name == "model_no" for f in facts)


def _replaced(counter: Counter, facts: Facts, identity: Identity) -> Decision | None:
    """A valve put in later is known by its measures or its old part, never by the toilet."""
    if not is_replaced(facts) or identity.by is By.OLD_PART:
        return None
    return _by_measures(counter, facts, identity) or Decision(
        outcome=Outcome.ASK,
        why=Why.VALVE_REPLACED,
        identity=identity,
        question=_unmeasured(facts),
        facts=facts.named("valve_replaced", "valve_put_in") or facts.named("valve_original"),
    )


def _not_listed(identity: Identity) -> Decision | None:
    named = [f for f in identity.unlisted if f.sure]
    if not named or identity.by is By.OLD_PART:
        return None
    return Decision(
        outcome=Outcome.NO_MATCH, why=Why.UNLISTED, identity=identity, facts=tuple(named)
    )


def _not_identified(counter: Counter, facts: Facts, identity: Identity) -> Decision | None:
    if identity.is_certain:
        return None
    if decision := _by_measures(counter, facts, identity):
        return decision
    why, question = {
        By.BRAND_ONLY: (Why.BRAND_ONLY, "model_no"),
        By.MODEL_ONLY: (Why.MODEL_ONLY, "brand"),
        By.SEVERAL: (Why.SEVERAL_NAMES, "model"),
    }.get(identity.by, (Why.NOTHING_TOLD, "model_no"))
    unclear = facts.named("length")
    if identity.by is By.NOTHING and unclear:
        why, question = Why.WHAT_WAS_MEASURED, "measured"
    if identity.by is By.SEVERAL and (decision := _whichever(counter, facts, identity)):
        return decision
    return Decision(
        outcome=Outcome.ASK,
        why=why,
        identity=identity,
        scenarios=identity.scenarios,
        question=question,
        choices=_named(identity, question),
        facts=unclear,
    )


def _named(identity: Identity, question: str) -> tuple[str, ...]:
    """The names that a question for a name decides between, where some were found."""
    if question == "brand":
        return tuple(dict.fromkeys(s.build.brand for s in identity.scenarios if s.build))
    return identity.names if question == "model" else ()


def _whichever(counter: Counter, facts: Facts, identity: Identity) -> Decision | None:
    """Several listed names exactly as written: the answer may hang on which one it is."""
    unsure = any(not f.sure for f in facts.named("brand", "model") if not f.negated)
    if unsure or not identity.brands or len(identity.names) > MOST_BRANCHES:
        return None
    left, _ = narrowed(identity.scenarios, facts)
    if not left:
        return None
    groups = groups_of(counter.tables, left, counter.first)
    decision = _branches(counter, identity, left, groups)
    return decision if decision and decision.question == "model" else None


def _by_measures(counter: Counter, facts: Facts, identity: Identity) -> Decision | None:
    found = counter.rack.measured(facts)
    if found is None:
        return None
    if not found:
        return Decision(
            outcome=Outcome.NO_MATCH,
            why=Why.MEASURES_UNKNOWN,
            identity=identity,
            facts=facts.named(*ABOUT_VALVE),
        )
    if len(found) > MOST_MEASURED:
        return None
    return Decision(
        outcome=Outcome.DEPENDS,
        why=Why.MEASURES,
        identity=identity,
        measured=found,
        question="model_no" if identity.by in (By.NOTHING, By.BRAND_ONLY) else None,
        facts=found[0].facts,
    )


def _unmeasured(facts: Facts) -> str:
    """The first thing about the valve that is not told yet; only pegs have ears to measure."""
    on_pegs = not facts.named("mount") or facts.has("mount", "pegs")
    for name in ("opening", "mount", "ears", "hinge_width"):
        if not facts.named(name) and (on_pegs or name == "opening"):
            return name
    return "photograph"


def _identified(counter: Counter, facts: Facts, identity: Identity) -> Decision:
    if identity.by is By.OLD_PART and not identity.scenarios:
        return Decision(
            outcome=Outcome.NO_MATCH,
            why=Why.OLD_PART_UNKNOWN,
            identity=identity,
            facts=facts.named("part_no"),
        )
    left, killers = narrowed(identity.scenarios, dating(facts))
    if not left:
        return _nothing_left(facts, identity, killers)
    left = tuple(s.flushing(told_volume(facts)) for s in _in_position(left, facts))
    groups = groups_of(counter.tables, left, counter.first)
    if all(s.build and s.build.kind == "pressure" and not s.places for s in left):
        return Decision(
            outcome=Outcome.NO_MATCH, why=Why.NO_FLAPPER, identity=identity, scenarios=left
        )
    if all(group.is_silent for group in groups):
        return Decision(
            outcome=Outcome.NO_MATCH, why=Why.NO_SEAL_KNOWN, identity=identity, scenarios=left
        )
    failed = _tried(facts)
    if any(pick.part_no in failed for g in groups for ps in g.picks.values() for pick in ps):
        return Decision(
            outcome=Outcome.ASK,
            why=Why.TRIED_IN_VAIN,
            identity=identity,
            scenarios=left,
            question="valve_replaced",
            facts=tuple(f for f in facts.named("part_no") if f.of == "tried"),
        )
    asked = _asked(counter.tables, facts, identity)
    if len(groups) == 1:
        return _settled(counter, identity, left, groups[0], asked, failed)
    unclear = facts.named("length")
    named = identity.by is not By.OLD_PART  # branches are told of a model, not of any toilet
    groups = [_prefer(group, asked) for group in groups]
    if named and (decision := _branches(counter, identity, left, groups)):
        return _with_asked(counter, decision, asked)
    return Decision(
        outcome=Outcome.ASK,
        why=Why.TOO_MANY,
        identity=identity,
        scenarios=left,
        question="photograph" if named else "model_no",  # where the interview knows no better
        facts=unclear,
    )


def _nothing_left(facts: Facts, identity: Identity, killers: tuple[Fact, ...]) -> Decision:
    """No build of that name agrees: an unlisted one, a slip of memory, or another valve."""
    dated = [f for f in killers if f.name in ("made", "bought")]
    if dated and identity.by is not By.NUMBER:
        return Decision(
            outcome=Outcome.NO_MATCH,
            why=Why.NOT_MADE_THEN,
            identity=identity,
            scenarios=identity.scenarios,
            facts=tuple(dated),
        )
    against = killers or tuple(f for f in facts if f.name in TESTS)
    about_valve = [f for f in against if f.name in ABOUT_VALVE]
    told = "photograph" if identity.by is By.NUMBER else "model_no"
    return Decision(
        outcome=Outcome.ASK,
        why=Why.DISAGREES,
        identity=identity,
        scenarios=identity.scenarios,
        question="valve_replaced" if about_valve else told,
        facts=against,
    )


def _in_position(scenarios: Sequence[Scenario], facts: Facts) -> tuple[Scenario, ...]:
    """Only the valve asked for, where the customer says which of two."""
    told = [{*f.choices} for f in facts.named("position") if not f.negated]
    wanted = set.intersection(*told) if told else set()
    if len(wanted) != 1:
        return tuple(scenarios)
    kept = tuple(
        Scenario(tuple(p for p in s.places if p.position in wanted), s.build) for s in scenarios
    )
    return kept if all(s.places for s in kept) else tuple(scenarios)


def _settled(
    counter: Counter,
    identity: Identity,
    scenarios: tuple[Scenario, ...],
    group: Group,
    asked: tuple[str, ...],
    failed: set[str],
) -> Decision:
    group = _prefer(group, asked)
    firsts = [picks[0] for picks in group.picks.values() if picks]
    fits = {pick.part_no for picks in group.picks.values() for pick in picks}
    out = list(ruled_out(counter.tables, (*asked, *sorted(failed)), scenarios))
    named = identity.by is not By.OLD_PART  # of several valves no one measure can be told
    for pick in firsts if named else ():
        alike = look_alikes(counter.tables, pick, scenarios, MOST_RULED_OUT)
        known = {j.part_no for j in out} | fits  # wrong in this valve, right in the other
        out += [j for j in alike if j.part_no not in known]
    decision = Decision(
        outcome=Outcome.PART,
        why=Why.SETTLED,
        identity=identity,
        scenarios=scenarios,
        branches=(Branch(group),),
        ruled_out=tuple(out[: max(MOST_RULED_OUT, len(asked))]),
    )
    return _with_asked(counter, decision, asked)


def _branches(
    counter: Counter, identity: Identity, scenarios: tuple[Scenario, ...], groups: list[Group]
) -> Decision | None:
    """A few seals, each with the condition that selects it, where one question settles it."""
    feature = settling(groups)
    if feature is None or len(groups) > MOST_BRANCHES:
        return None
    branches = tuple(
        Branch(group, Condition(feature.name, values(feature, group.scenarios) or ()))
        for group in groups
    )
    return Decision(
        outcome=Outcome.DEPENDS,
        why=Why.BRANCHES,
        identity=identity,
        scenarios=scenarios,
        branches=branches,
        question=feature.name,
        choices=tuple(value for b in branches if b.condition for value in b.condition.values),
    )


def _prefer(group: Group, asked: tuple[str, ...]) -> Group:
    """A seal that the customer asked about comes first where it fits."""
    picks = {
        position: tuple(sorted(found, key=lambda pick: pick.part_no not in asked))
        for position, found in group.picks.items()
    }
    return replace(group, picks=picks)


def _with_asked(counter: Counter, decision: Decision, asked: tuple[str, ...]) -> Decision:
    """Says of each part asked about whether it is out, or not in the tables."""
    out = {j.part_no for j in decision.ruled_out}
    more = [j for j in ruled_out(counter.tables, asked, decision.scenarios) if j.part_no not in out]
    places = [place for s in decision.scenarios for place in s.places]
    unknown = tuple(
        part
        for part in asked
        if not any(judge(counter.tables, part, place).is_fit for place in places)
        and part not in out
        and part not in {j.part_no for j in more}
    )
    return replace(decision, ruled_out=(*more, *decision.ruled_out), unknown=unknown)


def _asked(tables: Tables, facts: Facts, identity: Identity) -> tuple[str, ...]:
    """Parts asked about by number; where a number is all there is, what took its place."""
    roles = ("asked", "wanted", "old") if identity.by is By.OLD_PART else ("asked", "wanted")
    parts = [c for f in facts.named("part_no") if f.of in roles for c in f.choices]
    if identity.by is By.OLD_PART:
        parts = [living for part in parts if (living := tables.living(part))]
    return tuple(dict.fromkeys(parts))


def _tried(facts: Facts) -> set[str]:
    return {c for f in facts.named("part_no") if f.of == "tried" for c in f.choices}


def counter_for(tables: Tables, first: Sequence[str]) -> Counter:
    """A counter over tables, with the shop's order of preference."""
    return Counter(tables, Rack(tables), tuple(first))
