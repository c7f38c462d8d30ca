"""One seal, or one set, that every toilet still possible takes."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.answers.compose.case import Case, number_of, wrote
from assistant.answers.draft import Draft, Part, Ruled
from assistant.answers.objections import because, rule_name, source_of
from assistant.answers.scope import scope
from assistant.answers.words import bold, listed, vary
from assistant.fitment.decision import Decision, Why
from assistant.fitment.identify import By
from assistant.fitment.judge import Judgement
from assistant.fitment.narrow import ABOUT_VALVE
from assistant.fitment.picks import Group, Pick

ORIGINAL = "the flush valve is the original one"
MOST_OTHERS = 5


def part(case: Case, decision: Decision) -> Draft:
    """The seal, why, what else fits, what does not, and what to look at before ordering."""
    draft = Draft(decision.outcome)
    group = decision.branches[0].group
    refused: list[Judgement] = []
    case.say_back(draft, decision)
    if decision.identity.by is By.OLD_PART:
        about = "it"
        _by_old_number(case, draft, decision, group)
    else:
        about = scope(case.tables, decision.scenarios) or "it"
        refused = _asked_about(decision) if about != "it" else []
        _ruled_out(case, draft, decision, refused, about)
        _by_name(case, draft, decision, group, about)
    if decision.identity.by is not By.OLD_PART or decision.told.has_of("part_no", "old"):
        _others(case, draft, group, _old_number(decision))
    _ruled_out(case, draft, decision, [j for j in decision.ruled_out if j not in refused])
    if decision.unknown:
        draft.say(
            f"Our tables do not settle whether {listed([bold(p) for p in decision.unknown], 'or')} "
            f"fits {about}."
        )
    _shelf(case, draft, group)
    if decision.question:
        draft.say(*case.question(draft, decision.question))
    _before_ordering(case, draft, decision, group)
    cautions(case, draft)
    return draft


def _by_name(case: Case, draft: Draft, decision: Decision, group: Group, about: str) -> None:
    condition = None if decision.valve_is_original else ORIGINAL
    identity = f"it is {about}" if decision.why is Why.DOUBTED else None
    picked = [picks[0] for picks in group.picks.values() if picks]
    seed = about + picked[0].part_no
    one, alone = bold(picked[0].part_no), picked[0].judgements[0].place.alone
    tail = "" if condition is None else vary((", as long as ", ", if "), seed) + condition
    if decision.why is Why.DOUBTED and len(picked) == 1:
        at = "" if alone else f" at the {picked[0].position} valve"
        sentence = f"If it is {about}, {one} fits{at}{tail}."
    elif len(picked) == 1 and alone:
        sentence = vary(
            (f"{one} fits {about}{tail}.", f"The seal for {about} is {one}{tail}."), seed + "main"
        )
    elif len(picked) == 1:
        sentence = f"{one} fits {about} at the {picked[0].position} valve{tail}."
    else:
        placed = [f"{bold(p.part_no)} at the {p.position} valve" for p in picked]
        sentence = f"{listed(placed)}: that is the set for {about}{tail}."
    proof = source_of(picked[0].judgements[0]) if len(picked) == 1 else None
    draft.say(f"{sentence[:-1]}; {proof}." if proof else sentence, main=True)
    _change(draft, picked)
    if len(group.picks) == 1:
        _describe(case, draft, decision, picked[0])
    for position in group.gaps:
        draft.say(f"We know no seal for the {position} valve of {about}.")
    for pick in picked:
        pack = case.seal(pick.part_no).pack
        if pick.quantity is not None and pick.quantity > 1:
            draft.say(
                f"The valve takes {number_of(pick.quantity)} of {bold(pick.part_no)}.",
                f"{bold(pick.part_no)} comes in packs of {pack}." if pack and pack > 1 else None,
            )
    _record(case, draft, picked, " and ".join(filter(None, (identity, condition))) or None)


def _by_old_number(case: Case, draft: Draft, decision: Decision, group: Group) -> None:
    pick = next(iter(group.picks.values()))[0]
    olds = decision.told.named("part_no")
    old = _old_number(decision) or pick.part_no
    said = wrote(olds[:1])
    condition = f"{old} is the seal in there now"
    if old != pick.part_no and case.tables.living(old) == pick.part_no:
        draft.say(
            f"{bold(pick.part_no)} takes the place of {bold(old)}, which is no longer made.",
            main=True,
        )
    elif old != pick.part_no:
        draft.say(
            f"{bold(pick.part_no)} closes every valve in our table that {bold(old)} fits.",
            main=True,
        )
    elif said and old.lower() not in said.lower():
        draft.say(
            f"The number {said} belongs to {bold(old)}, and you can have the same again.", main=True
        )
    elif decision.told.has_of("part_no", "old"):
        draft.say(f"You can have {bold(old)} again.", main=True)
    else:
        draft.say(case.on_the_shelf(case.seal(old)), main=True)
    _change(draft, [pick])
    _describe(case, draft, decision, pick)
    if decision.told.has_of("part_no", "old"):
        draft.say(draft.quote(case.notes, "before-you-order", "old-number"))
    _record(case, draft, [pick], condition)


def _old_number(decision: Decision) -> str | None:
    """The part by whose number the toilet is known, where it is known by that alone."""
    if decision.identity.by is not By.OLD_PART:
        return None
    return next((f.choices[0] for f in decision.told.named("part_no")), None)


def _change(draft: Draft, picked: Sequence[Pick]) -> None:
    for pick in picked:
        if pick.change:
            draft.say(f"{bold(pick.part_no)} fits with this change: {pick.change}.", main=True)


def _describe(case: Case, draft: Draft, decision: Decision, pick: Pick) -> None:
    echoed = ABOUT_VALVE - {"disc"}  # a disc is wider than the opening it agrees with
    seen = [f for f in decision.told.named(*echoed) if f.sure and not f.negated]
    agrees = f"That agrees with what you wrote: {wrote(seen)}." if seen else None
    by_number = decision.identity.by is By.OLD_PART  # two parts may have been named
    subject = bold(pick.part_no) if by_number else "It"
    draft.say(case.what_it_is(case.seal(pick.part_no), subject), agrees)


def _others(case: Case, draft: Draft, group: Group, old: str | None) -> None:
    for position, picks in group.picks.items():
        plain = [p for p in picks[1:] if p.change is None][:MOST_OTHERS]
        if not plain:
            continue
        at = "" if plain[0].judgements[0].place.alone else f" at the {position} valve"
        verb = "fits" if len(plain) == 1 else "fit"
        others = listed([bold(p.part_no) for p in plain])
        if old is not None:
            closes = "closes" if len(plain) == 1 else "close"
            draft.say(f"{others} {closes} every valve in our table that {bold(old)} fits.")
        else:
            draft.say(f"{others} {verb} it too{at}.")
        draft.also_fits += [p.part_no for p in plain]


def _ruled_out(
    case: Case,
    draft: Draft,
    decision: Decision,
    judgements: Sequence[Judgement],
    about: str | None = None,
) -> None:
    """What does not fit and why; `about` names the toilet where it was not named before."""
    sentences: list[str] = []
    picked = [picks[0] for b in decision.branches for picks in b.group.picks.values() if picks]
    styles = {case.seal(pick.part_no).style for pick in picked}
    for judgement in judgements:
        reason = because(judgement, case.seal(judgement.part_no))
        mark = ":" if judgement.objection else ";"
        draft.ruled_out.append(Ruled(judgement.part_no, reason, rule_name(judgement)))
        alike = case.seal(judgement.part_no).style in styles and judgement.objection
        says = "looks much the same but does not fit" if alike else "does not fit"
        says = f"does not fit {about}" if about else says
        sentences.append(f"{bold(judgement.part_no)} {says}{mark} {reason}.")
    draft.say(*sentences)


def _shelf(case: Case, draft: Draft, group: Group) -> None:
    seals = [case.seal(picks[0].part_no) for picks in group.picks.values() if picks]
    for seal in seals:
        said = case.on_the_shelf(seal)
        draft.say(said if said not in draft.main else None)
    draft.say(*[case.back_room(seal) for seal in seals])


def _asked_about(decision: Decision) -> list[Judgement]:
    """The seals that the letter asks about and that do not fit: a 'no' comes first."""
    named = {c for f in decision.told.named("part_no") for c in f.choices}
    return [judgement for judgement in decision.ruled_out if judgement.part_no in named]


def _before_ordering(case: Case, draft: Draft, decision: Decision, group: Group) -> None:
    seen = None
    unsaid = decision.question != "valve_replaced"
    if unsaid and not decision.valve_is_original and decision.identity.by is not By.OLD_PART:
        seen = draft.quote(case.notes, "is-the-valve-the-original", "how-to-see-it")
    picked = [picks[0] for picks in group.picks.values() if picks]
    ways = case.seal(picked[0].part_no).mount
    check = draft.quote(case.notes, "before-you-order", ways[0]) if ways else None
    draft.say(seen, check)


def cautions(case: Case, draft: Draft) -> None:
    """The usual cautions for changing a seal."""
    said = [
        draft.quote(case.notes, "safety", section)
        for section in ("shut-the-supply", "porcelain", "cleaning-tablets")
    ]
    draft.cautions += [s for s in said if s]
    draft.say(*said)


def _record(case: Case, draft: Draft, picked: Sequence[Pick], condition: str | None) -> None:
    for pick in picked:
        seal = case.seal(pick.part_no)
        rows = [f"fitment:{row.evidence}" for j in pick.judgements for row in j.evidence]
        told = [f"if {condition}"] if condition else []
        if pick.change:
            told.append(pick.change)
        draft.parts.append(
            Part(
                pick.part_no,
                pick.position,
                pick.quantity,
                "; ".join(told) or None,
                pick.basis,
                seal.status,
                tuple(dict.fromkeys(rows)),
            )
        )
