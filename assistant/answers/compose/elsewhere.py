"""Answers that choose no seal: another part first, a plumber, a person, or the notes."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from assistant.answers.compose.case import Case
from assistant.answers.draft import Draft
from assistant.fitment.decision import Outcome
from assistant.reading.facts import Fact
from assistant.records.rows import Cause

# Which sections of the note on safety a hazard calls for, most pressing first.
FOR_HAZARD = {
    "cracked tank": ("cracked-porcelain", "plumber", "until-then"),
    "cracked bowl": ("cracked-porcelain", "plumber", "until-then"),
    "injury": ("cracked-porcelain", "hurt"),
    "electrical": ("electricity", "plumber"),
    "poisoning": ("swallowed",),
    "mixed cleaners": ("cleaners",),
    "stuck stop": ("stuck-stop", "local-code"),
    "sewer smell": ("sewer-gas", "plumber"),
    "gas smell": ("gas",),
    "supply leak": ("supply", "plumber", "until-then"),
}


def not_the_seal(case: Case, causes: Sequence[Cause]) -> Draft:
    """The symptoms point at something else first: what to look at, and what ends it."""
    draft = Draft(Outcome.NOT_THE_SEAL)
    for cause in causes:
        draft.causes.append(cause.cause)
        draft.say(cause.check, cause.remedy, main=True)
    draft.say(draft.quote(case.notes, "what-helps-us", "after-that"))
    return draft


def hand_over(case: Case, hazards: Sequence[Fact]) -> Draft:
    """A hazard: who to turn to, and what to do until then."""
    draft = Draft(Outcome.HAND_OVER)
    sections = dict.fromkeys(
        section
        for fact in hazards
        for choice in fact.choices
        for section in FOR_HAZARD.get(choice, ("plumber", "until-then"))
    )
    said = [draft.quote(case.notes, "safety", section) for section in sections]
    draft.say(*said, main=True)
    draft.cautions += [s for s in said if s]
    if "plumber" in sections:
        draft.say(draft.quote(case.notes, "safety", "local-code"))
    return draft


def to_a_person(case: Case, section: str) -> Draft:
    """Outside the job: says what this desk is for, and that a person answers."""
    draft = Draft(Outcome.HAND_OVER)
    draft.say(
        draft.quote(case.notes, "what-helps-us", section),
        draft.quote(case.notes, "what-helps-us", "person"),
    )
    return draft


def civil(case: Case, section: str) -> Draft:
    """A greeting or thanks, and nothing else: answered in kind."""
    draft = Draft(Outcome.HAND_OVER)
    draft.say(draft.quote(case.notes, "what-helps-us", section))
    if section == "hello":
        draft.say(draft.quote(case.notes, "what-helps-us", "send"))
    return draft


def outside(case: Case) -> Draft:
    """Not a customer's letter: says what the counter answers, and promises nothing."""
    draft = Draft(Outcome.HAND_OVER)
    draft.say(draft.quote(case.notes, "what-helps-us", "off-topic"))
    return draft


# Which of the shop's policies speaks to what is asked.
POLICY_FOR = {
    "returns": "returns",
    "order status": "posting",
    "shipping": "posting",
    "discount": "who_answers",
    "shop hours": "hours",
    "fitting service": "not_for",
}


def policy(case: Case, asks: Iterable[str]) -> Draft:
    """What the shop's policies say to a question about an order, and that a person answers."""
    draft = Draft(Outcome.HAND_OVER)
    found = dict.fromkeys(POLICY_FOR[a] for a in sorted(asks) if a in POLICY_FOR)
    draft.say(*[case.policies.get(key) for key in found])
    if {*asks} & {"order status", "discount", "returns", "fitting service"}:
        draft.say(draft.quote(case.notes, "what-helps-us", "person"))
    return draft
