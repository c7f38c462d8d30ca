"""Replies by choice: '2', 'the second one you named', 'up', 'a ring'.

A choice is said out in a sentence that the reading knows, as if the customer had written it.
"""

from __future__ import annotations

import re

from assistant.cases.case import Offered, Put
from assistant.reading.text import plain

# A short answer leans on its question: '2273' alone is any number.
LEAD_INS = {
    "model_no": "The number stamped in the tank is {}",
    "brand": "The maker is {}",
    "model": "The model is {}",
    "made": "The toilet was made in {}",
    "pieces": "It is a {} piece toilet",
    "opening": "The opening is {}",
    "hinge_width": "The width between the ears is {}",
    "flush": "It flushes {}",
    "overflow": "The overflow tube is {}",
    "ears": "The ears point {}",
    "mount": "The seal is held by {}",
    "tank_kind": "The tank is {}",
    "old_part": "The number moulded on the old seal is {}",
    "position": "It is the {} valve",
}
# Choices that do not fit their lead-in.
_SAID = {
    ("mount", "pegs"): "The seal hooks on two pegs",
    ("mount", "ring"): "The seal is held by a ring round the tube",
    ("mount", "wire"): "It is a ball on a wire",
    ("mount", "clip"): "The seal is held by a clip on a bar",
    ("mount", "strap"): "The seal is held by a strap",
    ("mount", "canister"): "The seal is held by a canister",
    ("mount", "tower"): "The seal is held by a tower",
    ("tank_kind", "gravity"): "It is a gravity tank",
    ("tank_kind", "dual-flush"): "It is a dual-flush tank",
    ("tank_kind", "pressure"): "It is a pressure-assisted tank",
    ("tank_kind", "tipping"): "The tank has a tipping bucket",
    ("tank_kind", "concealed"): "It is a concealed tank",
    ("ears", "none"): "The seal has no ears",
    ("opening", "2"): "The opening is 2 inches",
    ("opening", "2.5"): "The opening is 2.5 inches",
    ("opening", "3"): "The opening is 3 inches",
    ("opening", "3.25"): "The opening is 3.25 inches",
    ("opening", "4"): "The opening is 4 inches",
    ("pieces", "one piece"): "It is a one piece toilet",
    ("pieces", "two pieces"): "It is a two piece toilet",
    ("valve_replaced", "yes"): "The flush valve has been replaced",
    ("valve_replaced", "no"): "The flush valve is the original one",
}
_ORDINALS = ("first", "second", "third", "fourth", "fifth", "sixth", "seventh")
_TH = r"(?:\s*(?:st|nd|rd|th))"
_WHICH = re.compile(
    r"(?:(?:it is|it's|its|that is|that's|i think|probably|must be|definitely|it would be|mine is"
    r"|yes,?|ok,?|so|well,?|i'?ll (?:have|take)|i (?:want|take)|let'?s go (?:with|for)|go for)\s+)*"
    r"(?:(?P<number>\d)\)?|\(?(?P<letter>[a-g])\)"
    r"|(?:the )?(?P<nth>" + "|".join(_ORDINALS) + r"|last|latter|former|(?P<digit>\d)" + _TH + r")"
    r"(?P<of> (?:one|option|choice|seal|flapper|part|ring|of (?:these|those|them|the two)"
    r"|you (?:named|gave|listed|said|mentioned)|on (?:the|your) list))*"
    r"|(?:option|choice|answer|no\.?|number) (?:(?P<option>\d)|(?P<lettered>[a-g])))"
    r"(?: then| please| i (?:think|guess)| i'd say)*"
)
_PARTS = re.compile(r"\b(?:named|seal|flapper|part|ring|have|take)\b")


def chosen(clause: str, offered: Offered) -> str | None:
    """The sentence that a clause stands for where it picks one of what was offered."""
    said = plain(clause).strip(" .!?,;\"'")
    if not said:
        return None
    told = [(put, choice) for put in offered.questions if (choice := _by_words(said, put))]
    if len(told) == 1:
        return sentence(told[0][0].asks, told[0][1])
    found = _WHICH.fullmatch(said)
    if found is None:
        return None
    bare = found["number"] is not None
    return _picked(found, offered, bare, said)


def sentence(asks: str, choice: str) -> str | None:
    """A choice said out."""
    if asks == "made" and choice.startswith("made"):
        return f"It was {choice}"
    if made := _SAID.get((asks, choice)):
        return made
    lead_in = LEAD_INS.get(asks)
    return lead_in.format(choice) if lead_in else None


def _by_words(said: str, put: Put) -> str | None:
    """The choice whose own words the clause is: 'a ring', 'rings', 'ring'."""
    bare = re.sub(r"^(?:(?:it is|it's|its|they are|they're|they|both|point|by|with|on|an?|the|two"
                  r"|little|small|just)\s+)*", "", said)  # fmt: skip
    known = [choice for asks, choice in _SAID if asks == put.asks]
    known += [choice for choice in put.choices if choice.isalpha()]  # '2' may be anything
    return next((c for c in known if bare in (c, f"{c}s", c.rstrip("s"))), None)


def _picked(found: re.Match[str], offered: Offered, bare: bool, said: str) -> str | None:
    only = offered.only
    choices = only.choices if only else ()
    parts = offered.parts
    if bare and (not choices or any(c[:1].isdigit() for c in choices)):
        return None  # '2' is two inches, or a number like any other
    of_parts = len(parts) != len(choices) and _PARTS.search(said) is not None
    if only and choices and not (of_parts and parts):
        choice = _at(found, choices)
        return sentence(only.asks, choice) if choice else None
    part = _at(found, parts)
    return f"I want {part}" if part else None


def _at(found: re.Match[str], among: tuple[str, ...]) -> str | None:
    nth = found["nth"]
    if nth in ("last", "latter"):
        return among[-1] if among else None
    digit = found["number"] or found["digit"] or found["option"]
    letter = found["letter"] or found["lettered"]
    if digit:
        place = int(digit) - 1
    elif letter:
        place = ord(letter) - ord("a")
    else:
        place = 0 if nth == "former" else _ORDINALS.index(nth)
    return among[place] if 0 <= place < len(among) else None
