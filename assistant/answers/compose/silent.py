"""The tables have no answer: says so, names what would help, offers a person."""

from __future__ import annotations

from assistant.answers.compose.case import Case, wrote
from assistant.answers.compose.part import ORIGINAL
from assistant.answers.draft import Draft
from assistant.answers.scope import scope
from assistant.answers.words import bold, listed, years
from assistant.fitment.decision import Decision, Outcome, Why
from assistant.fitment.features import FEATURES, values
from assistant.fitment.judge import judge, tried

# What may yet find the seal: where the year disagrees, the number tells the build; else a picture.
ASKS = {
    Why.UNLISTED: "photograph", Why.NOT_MADE_THEN: "model_no", Why.NO_SEAL_KNOWN: "photograph",
    Why.OLD_PART_UNKNOWN: "photograph", Why.MEASURES_UNKNOWN: "photograph",
}  # fmt: skip


def no_match(case: Case, decision: Decision) -> Draft:
    """The silence of the tables, put plainly."""
    draft = Draft(Outcome.NO_MATCH)
    case.say_back(draft, decision)
    draft.say(_why(case, draft, decision), main=True)
    case.sounds_like(draft, decision.told)
    if decision.why is Why.NO_FLAPPER:
        draft.say(draft.quote(case.notes, "what-helps-us", "no-seal-there"))
    else:
        draft.say(draft.quote(case.notes, "what-helps-us", "silent-tables"))
    if asks := ASKS.get(decision.why):
        draft.say(*case.question(draft, asks))
    draft.say(draft.quote(case.notes, "what-helps-us", "person"))
    return draft


def nothing_left(case: Case) -> Draft:
    """For when the check took the main statement out and nothing else can stand for it."""
    draft = Draft(Outcome.NO_MATCH)
    for section in ("silent-tables", "send", "person"):
        draft.say(draft.quote(case.notes, "what-helps-us", section))
    return draft


def _evidence_conflicts(case: Case, decision: Decision) -> bool:
    """Whether what is written down about some seal for it contradicts itself."""
    places = [place for s in decision.scenarios for place in s.places]
    return any(
        judge(case.tables, part_no, place).basis == "conflict"
        for place in places
        for part_no in tried(case.tables, place)
    )


def _no_longer_made(case: Case, decision: Decision) -> list[str]:
    """Seals that would fit every toilet still possible, of which none is sold any more."""
    if decision.why is not Why.NO_SEAL_KNOWN:
        return []
    fitting = [
        {n for n in tried(case.tables, place) if judge(case.tables, n, place).is_fit}
        for scenario in decision.scenarios
        for place in scenario.places
    ]
    return sorted(set.intersection(*fitting)) if fitting else []


def _why(case: Case, draft: Draft, decision: Decision) -> str | None:
    names = listed([f"the {name}" for name in decision.identity.names], "or")
    if decision.why is Why.UNLISTED and any(f.of == "number" for f in decision.facts):
        return f"You wrote {wrote(decision.facts)}."
    if decision.why is Why.UNLISTED and decision.facts:
        return f"Our table lists no toilet called {wrote(decision.facts)}."
    if decision.why is Why.NOT_MADE_THEN and names:
        told = wrote(decision.facts)
        made = next(f for f in FEATURES if f.name == "made")
        spans = values(made, decision.scenarios)
        if not spans:
            return f"You wrote {told}, and that does not agree with {names} in our table."
        said = listed([years(span) for span in spans if isinstance(span, tuple)])
        builds = {s.build.build for s in decision.scenarios if s.build}
        all_builds = all(
            b.build in builds for n in decision.identity.names for b in case.tables.models[n]
        )
        if not all_builds:  # a number told which build it is
            about = scope(case.tables, decision.scenarios)
            return f"You wrote {told}, and that does not agree with {about} in our table."
        return f"You wrote {told}, but in our table {names} was {said}."
    if decision.why is Why.NO_SEAL_KNOWN and _evidence_conflicts(case, decision):
        about = scope(case.tables, decision.scenarios) or names
        doubt = draft.quote(case.notes, "what-helps-us", "evidence-that-disagrees")
        return f"We know no seal for {about}. {doubt or ''}".strip()
    if gone := _no_longer_made(case, decision):
        about = scope(case.tables, decision.scenarios) or names
        seals = listed([bold(part_no) for part_no in gone])
        verb, are = ("fits", "is") if len(gone) == 1 else ("fit", "are")
        if not about:
            return None
        original = "" if decision.valve_is_original else f", if {ORIGINAL}"
        return f"{seals} {verb} {about}{original}. {seals} {are} no longer made."
    if decision.why in (Why.NO_SEAL_KNOWN, Why.NO_FLAPPER):
        about = scope(case.tables, decision.scenarios) or names
        return f"We know no seal for {about}." if about else None
    if decision.why is Why.MEASURES_UNKNOWN and decision.facts:
        return f"We know no seal with these measures: {wrote(decision.facts)}."
    return None
