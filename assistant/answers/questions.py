"""What a letter asks about one toilet, in its order: a seal, another part, how or why.

Each step below looks for one kind of asking. A hazard comes before everything else.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from enum import Enum

from assistant.answers.compose.case import Case
from assistant.answers.compose.elsewhere import (
    civil,
    hand_over,
    not_the_seal,
    outside,
    policy,
    to_a_person,
)
from assistant.answers.compose.explain import notes_silent
from assistant.answers.draft import Draft
from assistant.answers.subject import (
    ABOUT_A_SEAL,
    another_room,
    is_civil,
    is_of_a_toilet,
    off_the_subject,
    orders_a_seal,
    stated,
)
from assistant.reading.facts import Facts
from assistant.reading.questions import OF_HOW, Question, questions, statement
from assistant.reading.text import Text
from assistant.records.rows import Cause


class Decide(Enum):
    """Stands for 'choose the seal by the tables'."""

    SEAL = "seal"


@dataclass(frozen=True)
class Explain:
    """A question for the shop's notes."""

    question: Question


@dataclass(frozen=True)
class IfSilent:
    """Said only where nothing before it was answered."""

    instead: Draft | Decide


# What singles a toilet out; where it stands, the letter is about that toilet.
_NAMES = ("brand", "model", "model_no", "part_no", "unlisted", "made", "hinge_width")
_MEASURES = ("opening", "disc", "hinge_width", "rim", "tube")
_FOR_A_SEAL = frozenset({"which part", "does it fit", "price", "stock"})
_TO_A_PERSON = frozenset(
    {"order status", "returns", "shipping", "shop hours", "discount", "fitting service"}
)
_OF_AN_ORDER = frozenset({"order status", "returns", "fitting service"})
_TRADE = re.compile(
    r"\b(?:toilet|lavatory|closet|bung|tank|cistern|flapper|seal|flush\w*|bowl|loo|commode"
    r"|leak\w*|water|valve|run\w*"
    r"|stopper|plug|ball|part|washer|gasket|fits?)\b",
    re.IGNORECASE,
)
_MEASURE = re.compile(r"\d|\b(?:and a half|inch\w*|half|quarter)\b")
_WORD = re.compile(r"[^\W\d_]{2}")
SHORT = 7  # words
_THANKS = re.compile(
    r"\b(?:thanks?|thx|ta|cheers|bye|perfect|great|lovely|brilliant|super|wonderful)\b",
    re.IGNORECASE,
)
_FOR_HELP = re.compile(r"\b(?:help|advi[cs]e|suggestions?)\b", re.IGNORECASE)  # any question


_ASKS = re.compile(r"(?:how|when|what|where|do|can|could|are|is|will) ", re.IGNORECASE)
Asked = Draft | Decide | Explain | IfSilent


def asked_of(case: Case, facts: Facts, text: Text, *, alone: bool) -> Sequence[Asked]:
    """The answers wanted, in order. `alone` says that the letter is about one toilet only."""
    if hazards := stated(facts, "hazard"):
        owed = _asked_outright(facts, text.raw)
        more = [policy(case, owed)] if owed else []
        seal = [Decide.SEAL] if alone and another_room(facts, text) else []
        return [hand_over(case, hazards), *more, *seal]
    if is_civil(text.raw):
        return [civil(case, "welcome" if _THANKS.search(text.raw) else "hello")]
    asks = {c for f in stated(facts, "asks") for c in f.choices}
    wanted = _wanted(facts)
    about_a_seal = any(f.name in ABOUT_A_SEAL for f in facts)
    if "thanks" in asks and not asks - {"thanks"} and not wanted:
        return [civil(case, "thanks")]
    if "spam" in asks and not about_a_seal:
        return [outside(case)]
    explain = [
        Explain(question)
        for question in questions(text, facts)
        if question.plain or (alone and not is_of_a_toilet(question, facts, text))
    ]
    how = any(one.question.plain for one in explain)
    if explain and off_the_subject(facts, text):
        open_to_all = [Explain(replace(one.question, plain=False)) for one in explain]
        return [*_in_order(open_to_all), IfSilent(to_a_person(case, "off-topic"))]
    wants_a_seal = "seal" in wanted or bool(asks & {"which part", "does it fit"})
    wants_a_seal = wants_a_seal or orders_a_seal(facts, text)
    if asks & _TO_A_PERSON and not (wants_a_seal or (about_a_seal and not asks & _OF_AN_ORDER)):
        return _in_order(explain, (policy(case, asks), _place(facts, asks & _TO_A_PERSON)))
    if "other toilet" in wanted:
        return [to_a_person(case, "only-seals")]
    if wanted and "seal" not in wanted and not facts.named("part_no"):
        return [to_a_person(case, "only-seals")]
    beside = _beside(case, facts, text.raw, wanted)
    if causes := _elsewhere(case, facts):
        signs = min(f.start for f in stated(facts, "symptom"))
        return _in_order(explain if how else [], (not_the_seal(case, causes), signs), beside)
    ails = bool(stated(facts, "symptom"))
    paired = facts.named("part_no") and facts.named("model", "model_no")  # do the two agree?
    either = len({c for f in stated(facts, "model") for c in f.choices}) > 1  # which of two?
    measured = bool(facts.named(*_MEASURES)) and not facts.named("model", "model_no")
    if (
        how
        and not asks - OF_HOW
        and not (paired or either)
        and not measured
        and not (ails and facts.named("model", "model_no"))
    ):
        return _in_order(explain)
    chosen = _seal_or_person(case, facts, text, alone=alone, wanted=wanted)
    if chosen is None:
        return _in_order(explain, beside)
    if isinstance(chosen, Draft):  # a person answers what no note does
        return [*_in_order(explain, beside), IfSilent(notes_silent(case) if explain else chosen)]
    if wants_a_seal or facts.named(*_NAMES) or (asks & _FOR_A_SEAL and about_a_seal):
        places = stated(facts, "wanted") or facts.named(*_NAMES)
        at = min((f.start for f in places), default=0)
        return _in_order(explain, (chosen, at), beside)
    if how:  # what is told beside it is its story
        return _in_order(explain, beside)
    told = ails or about_a_seal or asks & _FOR_A_SEAL or _FOR_HELP.search(text.raw)
    if explain:
        return [*_in_order(explain, beside), IfSilent(chosen if told else notes_silent(case))]
    story = statement(text) if alone and not measured and (ails or not about_a_seal) else None
    if story is not None:
        return [*_in_order([Explain(story)], beside), IfSilent(chosen)]
    return _in_order([], (chosen, 0), beside)


def _place(facts: Facts, asks: set[str] | frozenset[str]) -> int:
    return min(f.start for f in stated(facts, "asks") if {*f.choices} & asks)


def _wanted(facts: Facts) -> set[str]:
    """The parts asked for; the two buttons of a tank are not."""
    described = facts.named("tank_kind")
    return {
        c
        for f in stated(facts, "wanted")
        for c in f.choices
        if not any(d.start <= f.start < d.end for d in described)
    }


def _seal_or_person(
    case: Case, facts: Facts, text: Text, *, alone: bool, wanted: set[str]
) -> Draft | Decide | None:
    """The seal, where the letter may be about one; else a person."""
    told = (
        any(f.name in ABOUT_A_SEAL for f in facts)
        or "seal" in wanted
        or bool(stated(facts, "symptom"))
    )
    told = told or bool(facts.named("photo")) or _MEASURE.search(text.said) is not None
    if told or _TRADE.search(text.raw) or not _WORD.search(text.raw):
        return Decide.SEAL
    if alone and len(text.raw.split()) > SHORT:
        return to_a_person(case, "off-topic")
    return Decide.SEAL if alone else None  # an answer to a question that is not in the letter


Placed = tuple[Draft | Decide, int]
LAST = 1 << 40


def _beside(case: Case, facts: Facts, message: str, wanted: set[str]) -> Placed | None:
    """What is asked beside the seal, and where: another part, or something of an order."""
    if "seal" in wanted and wanted - {"seal"}:
        return to_a_person(case, "only-seals"), LAST
    if beside := _asked_outright(facts, message):
        return policy(case, beside), _place(facts, beside)
    return None


def _in_order(explain: Sequence[Explain], *others: Placed | None) -> list[Asked]:
    """The answers by the places where they are asked for, the seal first among equals."""
    placed: list[tuple[int, Asked]] = [(other[1], other[0]) for other in others if other]
    placed += [(one.question.start, one) for one in explain]
    return [made for _, made in sorted(placed, key=lambda item: item[0])]


def _asked_outright(facts: Facts, message: str) -> set[str]:
    """What is asked of an order beside the seal: money back, or a question with its mark."""
    return {
        c
        for f in stated(facts, "asks")
        for c in f.choices
        if c == "returns"
        or (c in _TO_A_PERSON and "?" in message[f.end :].split(".")[0])
        or (c in _TO_A_PERSON and _ASKS.match(f.words))
    }


def _elsewhere(case: Case, facts: Facts) -> list[Cause]:
    """Causes outside the seal that the signs point at before any seal is chosen.

    A sign that decides does so always; another only where nothing speaks for the seal.
    """
    signs = {c for f in stated(facts, "symptom") if f.sure for c in f.choices}
    causes = case.tables.causes.values()
    seal = {s for c in causes if c.points_at == "seal" for s in c.signs_for}
    for_seal = bool(signs & seal) or bool(facts.named("part_no"))
    return [
        cause
        for cause in causes
        if cause.points_at == "other part"
        and signs & {*cause.signs_for} - seal
        and (cause.decides or not for_seal)
    ]
