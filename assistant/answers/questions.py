"""What a letter asks about one toilet, in its order: a seal, another part, how or why.

Each step below looks for one kind of asking. A hazard comes before everything else.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from enum import Enum

from assistant.answers.compose.case import Case
from assistant.answers.compose.elsewhere import (
    hand_over,
    not_the_seal,
    notes_silent,
    outside,
    policy,
    to_a_person,
)
from assistant.answers.draft import Draft
from assistant.reading.facts import Fact, Facts
from assistant.records.rows import Cause


class Decide(Enum):
    """Stands for 'choose the seal by the tables'."""

    SEAL = "seal"


# Facts that are about a toilet or its seal; a letter without any of them asks for no seal.
_ABOUT_A_SEAL = frozenset(
    {"brand", "model", "model_no", "part_no", "unlisted", "opening", "disc", "hinge_width"}
    | {"ears", "mount", "lift", "float", "filling", "shape", "style_word", "seals_in_tank"}
    | {"length", "flush", "flush_reduced", "made", "bought", "tank_kind", "tube"}
)
_TRADE = re.compile(
    r"\b(?:toilet|tank|cistern|flapper|seal|flush\w*|bowl|loo|commode|leak\w*|water|valve|run\w*"
    r"|stopper|plug|ball|part|washer|gasket|fits?)\b",
    re.IGNORECASE,
)
_WORD = re.compile(r"[^\W\d_]{2}")  # without a single word there is nothing to hand over
SHORT = 7  # words
_TO_A_PERSON = frozenset({"order status", "returns", "shipping", "shop hours", "discount"})
_OF_AN_ORDER = frozenset({"order status", "returns"})
_HOW_OR_WHY = frozenset({"how to", "why", "what is", "measure how"})


def asked_of(case: Case, facts: Facts, message: str, *, alone: bool) -> Sequence[Draft | Decide]:
    """The answers wanted, in order. `alone` says that the letter is about one toilet only."""
    hazards = _stated(facts, "hazard")
    if hazards:
        return [hand_over(case, hazards)]
    asks = {c for f in _stated(facts, "asks") for c in f.choices}
    described = facts.named("tank_kind")  # the two buttons of a tank are not asked for
    wanted = {
        c
        for f in _stated(facts, "wanted")
        for c in f.choices
        if not any(d.start <= f.start < d.end for d in described)
    }
    about_a_seal = any(f.name in _ABOUT_A_SEAL for f in facts)
    answers: list[Draft | Decide] = []
    if causes := _elsewhere(case, facts):
        return [not_the_seal(case, causes)]
    if "thanks" in asks and not asks - {"thanks"} and not wanted:
        return [to_a_person(case, "thanks")]
    if "spam" in asks and not about_a_seal:
        return [outside(case)]
    wants_a_seal = (
        "seal" in wanted
        or bool(asks & {"which part", "does it fit"})
        or (about_a_seal and not asks & _OF_AN_ORDER)
    )
    if asks & _TO_A_PERSON and not wants_a_seal:
        return [policy(case, asks)]
    if wanted and "seal" not in wanted and not facts.named("part_no"):
        return [to_a_person(case, "only-seals")]
    ails = bool(_stated(facts, "symptom")) and bool(facts.named("model", "model_no"))
    only_how = asks & _HOW_OR_WHY and not asks - _HOW_OR_WHY and not ails
    if only_how:
        return [notes_silent(case)]
    told = about_a_seal or "seal" in wanted or bool(_stated(facts, "symptom"))
    if told or _TRADE.search(message) or not _WORD.search(message):
        answers.append(Decide.SEAL)
    elif alone and len(message.split()) > SHORT:
        return [to_a_person(case, "off-topic")]
    elif alone:  # an answer to a question that is not in the letter
        answers.append(Decide.SEAL)
    if asks & _HOW_OR_WHY:
        at = min(f.start for f in _stated(facts, "asks") if {*f.choices} & _HOW_OR_WHY)
        first = min((f.start for f in _stated(facts, "wanted")), default=0)
        answers.insert(0 if at < first else len(answers), notes_silent(case))
    if "seal" in wanted and wanted - {"seal"}:
        answers.append(to_a_person(case, "only-seals"))
    elif beside := _asked_outright(facts, message):
        at = min(f.start for f in _stated(facts, "asks") if {*f.choices} & beside)
        first = min((f.start for f in _stated(facts, "wanted")), default=0)
        answers.insert(0 if at < first else len(answers), policy(case, beside))
    return answers


def _stated(facts: Facts, name: str) -> list[Fact]:
    return [f for f in facts.named(name) if not f.negated]


def _asked_outright(facts: Facts, message: str) -> set[str]:
    """What is asked of an order beside the seal: money back, or a question with its mark."""
    return {
        c
        for f in _stated(facts, "asks")
        for c in f.choices
        if c == "returns" or (c in _TO_A_PERSON and "?" in message[f.end :].split(".")[0])
    }


def _elsewhere(case: Case, facts: Facts) -> list[Cause]:
    """Causes outside the seal that the signs point at before any seal is chosen.

    A sign that decides does so always; another only where nothing speaks for the seal and
    none is asked for.
    """
    signs = {c for f in _stated(facts, "symptom") if f.sure for c in f.choices}
    causes = case.tables.causes.values()
    seal = {s for c in causes if c.points_at == "seal" for s in c.signs_for}
    for_seal = bool(signs & seal) or facts.has("wanted", "seal") or bool(facts.named("part_no"))
    return [
        cause
        for cause in causes
        if cause.points_at == "other part"
        and signs & {*cause.signs_for} - seal
        and (cause.decides or not for_seal)
    ]
