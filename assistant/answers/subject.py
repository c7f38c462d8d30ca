"""What a letter is about: a seal, a toilet, something of the shop, or nothing of ours."""

from __future__ import annotations

import re

from assistant.reading.clauses import sentence_of
from assistant.reading.facts import Fact, Facts
from assistant.reading.names.ordinary import TRADE
from assistant.reading.questions import OF_HOW, Question
from assistant.reading.text import Text

# Facts that are about a toilet or its seal; a letter without any of them asks for no seal.
ABOUT_A_SEAL = frozenset(
    {"brand", "model", "model_no", "part_no", "unlisted", "opening", "disc", "hinge_width"}
    | {"ears", "mount", "lift", "float", "filling", "shape", "style_word", "style_like"}
    | {"seals_in_tank", "length", "flush", "flush_reduced", "made", "bought", "tank_kind", "tube"}
)
_GREETS = re.compile(
    r"(?:\W|\b(?:hi|hello|hey|dear|sir|madam|there|good|morning|afternoon|evening|day|all|ok|okay"
    r"|great|perfect|lovely|many|very|so|a|lot|much|again|you|all|for|your|the|help|bye|please"
    r"|thanks?|thx|ta|cheers|mate|that|is|s|it|brilliant|super|wonderful|will|do|perfectly)\b)*",
    re.IGNORECASE,
)
_ROOM = re.compile(
    r"\b(?:upstairs|downstairs|hall|en ?suite|guest|front|back|attic|basement|ground floor"
    r"|other one|other thing|second|first|main)\b"
)
_SEAL = re.compile(
    r"\b(?:flapp?ers?|flaps?|seals?|gaskets?|balls?|washers?|rings?|rubbers?|stoppers?|plugs?"
    r"|discs?)\b"
)
_VERB = re.compile(
    r"\b(?:cancel|is|are|was|were|has|have|had|do|does|did|leak\w*|run\w*|keep\w*|fit\w*|go|goes"
    r"|went|hold\w*|can|could|should|would|will|won't|must|how|why|when|where|i|we|it|it's)\b"
)


def stated(facts: Facts, name: str) -> list[Fact]:
    """The facts of a name that are not denied."""
    return [f for f in facts.named(name) if not f.negated]


def is_civil(message: str) -> bool:
    """Whether a message holds nothing but a greeting or thanks."""
    return _GREETS.fullmatch(message) is not None


def off_the_subject(facts: Facts, text: Text) -> bool:
    """Whether nothing in a letter is of the trade, of the shop, or of an order."""
    told = any(f.name in ABOUT_A_SEAL or f.name == "symptom" for f in facts)
    of_the_shop = {c for f in facts.named("asks") for c in f.choices} - OF_HOW
    return not (told or of_the_shop) and not TRADE & {*re.findall(r"[a-z]+", text.said)}


def orders_a_seal(facts: Facts, text: Text) -> bool:
    """'Brand Model, 2008, the ring under the canister.': a sentence without a verb is an order."""
    spans = (sentence_of(text, name.start) for name in facts.named("model", "model_no"))
    return any(
        _SEAL.search(text.said, low, high) and not _VERB.search(text.said, low, high)
        for low, high in spans
    )


def another_room(facts: Facts, text: Text) -> bool:
    """Whether a toilet is named in a room that the hazard is not in."""
    hazards = stated(facts, "hazard")
    for name in facts.named("model", "model_no"):
        low, high = sentence_of(text, name.start)
        dry = not any(low <= hazard.start < high for hazard in hazards)
        if dry and _ROOM.search(text.said, low, high):
            return True
    return False


def is_of_a_toilet(question: Question, facts: Facts, text: Text) -> bool:
    """'Brand Model 1999 flapper?' is for the tables: no note knows the toilet."""
    low, high = sentence_of(text, question.start)
    return any(low <= fact.start < high for fact in facts.named("brand", "model", "model_no"))
