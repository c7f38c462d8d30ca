"""What a stranger said of the part: 'a man on the phone told me to take the two inch one'.

It is somebody's guess about a toilet that he has not seen, and narrows nothing. What the writer's
own household measured or read for him is as good as his own word.
"""

from __future__ import annotations

import re
from dataclasses import replace

from assistant.reading.facts import Fact, Facts
from assistant.reading.text import Text

_STRANGER = (
    r"\b(?:somebody|someone|some(?: \w+)? (?:guy|man|bloke|fellow|lad|kid|expert)"
    r"|(?:a|the|your|this|one) (?:\w+ )?(?:guy|man|bloke|fellow|lad|lady|girl|boy|clerk|salesman"
    r"|person"
    r"|builder|tiler|joiner|carpenter|electrician|roofer|decorator|agent|surveyor|seller"
    r"|shop|store|counter|website|video|forum|ad|catalogue|catalog|plumber|handyman|friend"
    r"|neighbour"
    r"|neighbor)(?: (?:at|in|on|from) (?:the|a|my|your) (?:\w+ ?){1,2})?|they)"
)
_SAYS = (
    r"(?: \w+){0,4}? (?:told (?:me|us|him|her)|said|says|claims?|claimed|swears?|reckons?"
    r"|thinks?|insists?)\b"
)
_HEARD = re.compile(rf"{_STRANGER}{_SAYS}")
_GUESSED = frozenset({"opening", "hinge_width", "disc", "flush", "overflow", "pieces"})


def unsure_of_hearsay(text: Text, facts: Facts) -> Facts:
    """The facts, with what a stranger says of valve and seal doubted."""
    heard = [match.end() for match in text.find(_HEARD)]
    return Facts(tuple(_doubted(text, fact, heard) for fact in facts)) if heard else facts


def _doubted(text: Text, fact: Fact, heard: list[int]) -> Fact:
    if fact.name not in _GUESSED:
        return fact
    start, _ = text.sentence_at(fact.start)
    told = any(start <= at <= fact.start for at in heard)
    return replace(fact, sure=False) if told else fact
