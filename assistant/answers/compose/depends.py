"""A few seals, each with the condition that selects it, and the question that settles it."""

from __future__ import annotations

from assistant.answers.compose.case import Case, wrote
from assistant.answers.compose.part import ORIGINAL, cautions
from assistant.answers.draft import Draft, Part, Ruled
from assistant.answers.objections import rule_name
from assistant.answers.scope import scope, scope_of_year
from assistant.answers.words import bold, how_it_holds, inches, listed, selecting, vary
from assistant.fitment.decision import Branch, Decision, Outcome

HANGS_ON = {
    "made": "when it was made", "model": "which of them it is", "pieces": "whether it is one piece",
    "model_no": "the number in the tank", "flush": "how much it flushes",
    "opening": "the opening", "ears": "the pegs", "overflow": "the overflow tube",
    "hinge_width": "the hinge width",
    "mount": "how the seal holds", "tank_kind": "the kind of tank", "build": "which of them it is",
}  # fmt: skip


def by_branches(case: Case, decision: Decision) -> Draft:
    """One name, several valves: each seal under its condition."""
    draft = Draft(Outcome.DEPENDS)
    case.say_back(draft, decision)
    about = _about(case, decision)
    conditions = (b.condition.feature for b in decision.branches if b.condition)
    hangs = HANGS_ON[next(conditions, "made")]
    original = None if decision.valve_is_original else ORIGINAL
    intro = vary(
        (
            f"Which seal fits {about} depends on {hangs}:",
            f"For {about}, the seal depends on {hangs}:",
        ),
        about,
    )
    draft.list(intro, [_branch(case, draft, b, original) for b in decision.branches], main=True)
    if original:
        draft.say(f"All of this holds if {original}.", main=True)
    for judgement in decision.ruled_out:
        draft.ruled_out.append(
            Ruled(judgement.part_no, f"it fits no {about[4:]}", rule_name(judgement))
        )
        draft.say(f"{bold(judgement.part_no)} does not fit {about}.")
    if decision.unknown:
        asked_about = listed([bold(p) for p in decision.unknown], "or")
        draft.say(f"Our tables do not settle whether {asked_about} fits {about}.")
    case.sounds_like(draft, decision.told)
    if not case.ask(draft, decision):
        draft.say(draft.quote(case.notes, "what-helps-us", "person"))
    if original:
        draft.say(draft.quote(case.notes, "is-the-valve-the-original", "how-to-see-it"))
    cautions(case, draft)
    return draft


def _about(case: Case, decision: Decision) -> str:
    """The builds in question, by the customer's own year where that singles them out."""
    for fact in decision.told.named("made"):
        low, high = fact.interval.low, fact.interval.high
        if low == high and fact.sure:
            said = scope_of_year(case.tables, decision.scenarios, int(low))
            if said:
                return said
    return scope(case.tables, decision.scenarios, last="or") or "it"


def _branch(case: Case, draft: Draft, branch: Branch, original: str | None) -> str:
    condition = _selecting(case, branch)
    if branch.group.is_silent:
        return f"if {condition}, we know no seal for it."
    picked = [(position, picks[0]) for position, picks in branch.group.picks.items() if picks]
    said = []
    for position, pick in picked:
        seal = case.seal(pick.part_no)
        several = not pick.judgements[0].place.alone  # the tank has another valve beside it
        at = f" at the {position} valve" if several else ""
        size = (
            f", for a {inches(seal.opening_in)} opening" if seal.opening_in and not several else ""
        )
        change = f", with this change: {pick.change}" if pick.change else ""
        said.append(f"{bold(pick.part_no)}{at}{size}{change}")
        told = [f"if {condition}", *([f"if {original}"] if original else [])]
        if pick.change:
            told.append(pick.change)
        rows = tuple(f"fitment:{row.evidence}" for j in pick.judgements for row in j.evidence)
        draft.parts.append(
            Part(
                pick.part_no, position, pick.quantity, "; ".join(told), pick.basis, seal.status,
                tuple(dict.fromkeys(rows)),
            )
        )  # fmt: skip
    return f"if {condition}, it takes {listed(said)}."


def _selecting(case: Case, branch: Branch) -> str:
    """What selects a branch; the builds by their names where nothing else tells them apart."""
    if branch.condition is None:
        return ""
    if branch.condition.feature != "build":
        return selecting(branch.condition)
    return f"it is {scope(case.tables, branch.group.scenarios, last='or') or 'another'}"


def by_measures(case: Case, decision: Decision) -> Draft:
    """Seals whose measures agree and of which no evidence speaks."""
    draft = Draft(Outcome.DEPENDS)
    case.say_back(draft, decision)
    draft.say(f"You wrote {wrote(decision.facts)}." if decision.facts else None)
    for found in decision.measured:
        seal = case.seal(found.part_no)
        sentence = f"{bold(seal.part_no)} could fit, going by the measurements alone."
        holds = how_it_holds(seal)
        size = f"It closes a {inches(seal.opening_in)} opening" if seal.opening_in else None
        draft.say(
            sentence, f"{size}, and {holds}." if size and holds else f"{size}." if size else None
        )
        draft.main.append(sentence)
        draft.parts.append(
            Part(
                seal.part_no, "main", None,
                "if the valve measures so; by geometry alone, nothing tried", "geometry",
                seal.status, ("geometry",),
            )
        )  # fmt: skip
    ways = case.seal(decision.measured[0].part_no).mount
    draft.say(
        draft.quote(case.notes, "before-you-order", ways[0]) if ways else None,
        draft.quote(case.notes, "before-you-order", "photograph"),
    )
    if decision.question:
        draft.say(*case.question(draft, decision.question))
    return draft
