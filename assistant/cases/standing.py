"""What a case stands at, computed from its messages alone."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from assistant.cases.case import Case, Change, Message, Standing, Told
from assistant.cases.known import Known, known
from assistant.cases.letter import heard
from assistant.cases.possible import possible
from assistant.cases.so_far import asked_so_far, facts_in, not_known_so_far
from assistant.cases.takes_back import answers
from assistant.fitment.decide import decide
from assistant.fitment.decision import Why
from assistant.reading.contradictions import contradictions
from assistant.reading.corrected import SAME
from assistant.reading.facts import Fact, Facts
from assistant.shop import Shop

_FALLS = frozenset({"hazard", "symptom"})  # nothing takes the place of what is over
_CHANGES = frozenset(
    {"brand", "model", "model_no", "part_no", "unlisted", "made", "bought", "opening", "disc"}
    | {"hinge_width", "ears", "mount", "overflow", "flush", "pieces", "tank_kind"}
    | {"valve_original", "valve_replaced", "position", "year", "length", "tube", "seals_in_tank"}
)


def standing(shop: Shop, case: Case, today: date | None = None) -> Standing:
    """What the case stands at after all its messages."""
    messages = case.messages
    now = known(messages, shop.names, today)
    told = [_told(fact, now, messages) for fact in now.facts]
    changed = changes(shop, messages, today)
    against = (
        facts
        for toilet in now.facts.toilets
        for facts in _against(shop, now.facts.of_toilet(toilet))
    )
    return Standing(
        told=tuple(told),
        changes=changed,
        contradictions=tuple(tuple(_told(f, now, messages) for f in facts) for facts in against),
        asked=asked_so_far(messages),
        answered=_answered(now, messages, changed),
        unknown=not_known_so_far(now, messages),
        possible=tuple(
            possible(shop.counter, now.facts.of_toilet(t), t) for t in now.facts.toilets
        ),
    )


def _against(shop: Shop, facts: Facts) -> list[tuple[Fact, ...]]:
    """The facts about one toilet that cannot all hold, by themselves or by the tables."""
    if pairs := contradictions(facts):
        return [*pairs]
    decision = decide(shop.counter, facts)
    if decision.why not in (Why.DISAGREES, Why.NOT_MADE_THEN):
        return []
    names = facts.named("model_no", "model", "brand")
    said = [f for f in facts if f in decision.facts]
    beside = [f for f in names if f not in said]
    return [tuple(said if {*said} & {*names} else (*said, *beside))]


def changes(shop: Shop, messages: tuple[Message, ...], today: date | None) -> tuple[Change, ...]:
    """What later messages took the place of, message by message."""
    found: list[Change] = []
    before: Known | None = None
    for message, _ in heard(messages):
        at = next(i for i, m in enumerate(messages) if m.number == message.number)
        after = known(messages[: at + 1], shop.names, today)
        if before is not None:
            found += _changed(before, after, message, messages)
        before = after
    return tuple(found)


def _changed(
    before: Known, after: Known, message: Message, messages: Sequence[Message]
) -> list[Change]:
    kept = {(f.name, f.start) for f in after.facts}
    new = [f for f in after.facts if after.letter.origin(f.start, f.end)[0] == message.number]
    found: dict[str, Change] = {}
    for fact in before.facts:
        if (fact.name, fact.start) in kept or fact.negated:
            continue
        old = _told(fact, before, messages)
        later = [f for f in new if _same_question(fact, f) and not f.negated]
        if fact.name in _FALLS:
            fell = Change(fact.name, old.words, old.message, "", message.number)
            found.setdefault(fact.name, fell)
        elif fact.name in _CHANGES and later and later[-1].value != fact.value:
            now = _told(later[-1], after, messages).words
            name = later[-1].name
            found.setdefault(name, Change(name, old.words, old.message, now, message.number))
    return list(found.values())


def _same_question(old: Fact, new: Fact) -> bool:
    if old.name == "unlisted":
        return new.name in ("brand", "model", "model_no", "part_no")
    group = next((g for g in SAME if old.name in g), frozenset({old.name}))
    return new.name in group


def _told(fact: Fact, of: Known, messages: Sequence[Message]) -> Told:
    number, start, end = of.letter.origin(fact.start, fact.end)
    text = next(m.text for m in messages if m.number == number)
    return Told(fact, number, text[start:end], start, end)


def _answered(
    read: Known, messages: Sequence[Message], changed: Sequence[Change]
) -> frozenset[str]:
    """The questions answered with something."""
    answered: set[str] = set()
    for message, offered in heard(messages):
        here = facts_in(read, message)
        asked = {put.asks for put in offered.questions} if offered else set()
        answered |= {q for q in asked if any(answers(q, fact) for fact in here)}
        answered |= asked & {c.name for c in changed if c.old_message == message.number}
    return frozenset(answered)
