"""What stands in a letter beside its toilet: another thing's date, another seal's maker.

'There is also 2009, but that is on the shower' dates the shower. 'First the Brand clip, then the
Other flap' names who made the seals; the toilet has a maker of its own there.
"""

from __future__ import annotations

import re

from assistant.reading.facts import Fact, Facts
from assistant.reading.text import Text

_YEARS = frozenset({"made", "bought", "year"})
_OF_A_THING = re.compile(
    r"[^.;!?\n\d]{0,25}?\b(?:(?:but|though|only) )?(?:that|this|it|those|tht)"
    r"(?:'?s| is| was|s are| are)(?: only| just)? (?:on|for|off|from|of) (?:the |our |my )?"
    r"(?:\w+ )?(?:shower|taps?|sink|bath|basin|boiler|tiles?|tiling|floor|heater|radiator|seat"
    r"|lid|door|window|house|kitchen|cabinet)\b"
)
_OUR_LIST = re.compile(
    r" (?:that is |that's )?(?:on|in|from) your (?:list|page|site|shop|shelf|web)"
)
_SEAL_NEXT = re.compile(
    r"(?:'s)?(?: (?!toilet|tank|loo|model)[a-z-]+){0,2}? (?:flaps?|flappers?|seals?|clips?|gaskets?"
    r"|washers?|balls?|rings?|diaphragms?|rubbers?)\b"
)


def without_what_is_beside(text: Text, facts: Facts) -> Facts:
    """The facts without another thing's years, and without the makers of seals."""
    named = {c for f in facts.named("model") if not f.negated for c in f.choices}
    makers = [f for f in facts.named("brand") if not f.negated]

    def of_a_seal(fact: Fact) -> bool:
        if fact.name != "brand" or not _SEAL_NEXT.match(text.said, fact.end):
            return False
        others = [f for f in makers if f.choices != fact.choices and not _is_seals(text, f)]
        his = any(name.startswith(f"{c} ") for name in named for c in fact.choices)
        return bool(others) and not his

    def of_a_thing(fact: Fact) -> bool:
        return fact.name in _YEARS and _OF_A_THING.match(text.said, fact.end) is not None

    others = facts.named("unlisted", "model_no")

    def of_our_list(fact: Fact) -> bool:
        listed = fact.name == "model" and _OUR_LIST.match(text.said, fact.end)
        return bool(listed) and any(f.start < fact.start for f in others)

    return Facts(tuple(f for f in facts if not (of_a_seal(f) or of_a_thing(f) or of_our_list(f))))


def _is_seals(text: Text, fact: Fact) -> bool:
    return _SEAL_NEXT.match(text.said, fact.end) is not None
