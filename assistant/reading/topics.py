"""Which question a clause speaks of: 'how old it is' is of the year, 'the pegs' of the ears."""

from __future__ import annotations

import re

_TOPICS: tuple[tuple[str, re.Pattern[str]], ...] = tuple(
    (name, re.compile(pattern))
    for name, pattern in (
        ("old_part", r"\b(?:numbers?|digits|mark\w*|writing|moulded)\b.*\b(?:old )?(?:seal|flapper"
                     r"|part|rubber|ring|washer)\b|\bpart (?:no|number)\b"),
        ("model_no", r"\b(?:model (?:no|number)|numbers?|digits)\b"),
        ("model", r"\bmodel(?!'?s? (?:no|number))\b"),
        ("brand", r"\b(?:maker|make|brand|manufacturer|logo|(?<!model )names?(?! of the model))\b"),
        ("made", r"\b(?:years?|dates?|how old|age|when|stamps?|built|made)\b"),
        ("pieces", r"\b(?:one|two|1|2)[ -]?pieces?\b|\bcome apart\b"),
        ("flush", r"\b(?:gallons?|gpf|lit(?:re|er)s?|volume|how much (?:water )?it flush\w*)\b"),
        ("hinge_width", r"\b(?:hinge|how far apart|(?:pegs|ears)\b.*\b(?:apart|width|distance))\b"),
        ("opening", r"\b(?:opening|hole|diameter|how (?:wide|big))\b"),
        ("ears", r"\b(?:pegs|ears)\b"),
        ("mount", r"\b(?:holds it|it is held|held|attached|hooks? on)\b"),
        ("overflow", r"\b(?:overflow|tube|pipe)\b"),
        ("valve_replaced", r"\b(?:replaced|original|changed before|valve)\b"),
        ("photograph", r"\b(?:photo\w*|picture|camera|smartphone)\b"),
    )
)  # fmt: skip
# What is said more closely leaves no room for the wider reading.
_STANDS_FOR = {"old_part": {"model_no"}, "hinge_width": {"ears"}}
_MAY_MEAN = {"model_no": {"old_part"}, "brand": {"model"}, "made": {"model_no"}}


def topics(clause: str, asked: tuple[str, ...] = ()) -> frozenset[str]:
    """The questions that a clause in lower case speaks of; what was asked comes before others."""
    found = {name for name, pattern in _TOPICS if pattern.search(clause)}
    if re.search(r"\bmodel (?:no|number)\b", clause):
        found.discard("model")
    for name, others in _STANDS_FOR.items():
        if name in found:
            found -= others
    meant = set()
    for name in found:
        instead = _MAY_MEAN.get(name, set()) & {*asked}
        meant |= instead if name not in asked and instead else {name}
    return frozenset(meant)
