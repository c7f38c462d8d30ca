"""A letter that sounds as if the flush valve were not the first one, though no card reads it so."""

from __future__ import annotations

from assistant.fitment.decision import Decision, Outcome, Why
from assistant.fitment.identify import By
from assistant.reading.facts import Facts

VALVE = "valve_replaced"


def with_valve_doubted(facts: Facts, decision: Decision) -> Decision:
    """The question whether it is, in place of a seal that hangs on it.

    `facts` are those about this toilet. A seal known by the old one's number, or by measures, is
    the valve's own, whatever the toilet.
    """
    heard = tuple(f for f in facts.named("sounds_like") if f.of == "valve")
    named = decision.outcome in (Outcome.PART, Outcome.DEPENDS)
    by_toilet = decision.why is not Why.MEASURES and decision.identity.by is not By.OLD_PART
    if not (heard and named and by_toilet) or decision.valve_is_original:
        return decision
    return decision.asking(Why.VALVE_REPLACED, VALVE, heard[:1])
