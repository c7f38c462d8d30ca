"""The lengths of a message, each with what it measures, its tolerance and its nominal sizes."""

from __future__ import annotations

import re
from dataclasses import replace

from assistant.reading.facts import Fact, Interval
from assistant.reading.mentions import Mention, mentions
from assistant.reading.nearby import Surroundings, cues, sentence_ends
from assistant.reading.numerals import grain
from assistant.reading.subjects import CARDS, OTHER, subject
from assistant.reading.text import Text
from assistant.reading.tolerances import MM_PER_IN, closed_by, length, nominal
from assistant.reading.wording import Said, how_said

# What a length of each kind can be, in inches; common practice, no source. Anything else is the
# size of something else, however near the word stands.
PLAUSIBLE = {
    "opening": Interval(1.25, 5),
    "disc": Interval(1.5, 6),
    "rim": Interval(1.5, 6),
    "tube": Interval(0.5, 3),
    "hinge_width": Interval(1, 6),
    "length": Interval(1.25, 5.5),
}
_SAME_AGAIN = re.compile(r"(?: ?[(=/,~] ?| or (?:about )?| - )(?:about |approx\.? |i\.e\. ?|or )?")


def read_lengths(text: Text) -> list[Fact]:
    """The lengths that may bear on the seal, in mm, in their order in the text.

    What is not about a seal (a chain, a bolt, a rough-in) yields nothing.
    """
    said, found = text.said, mentions(text)
    widths = [_interval(said, mention) for mention in found]
    again = [False] + [
        _says_again(said, *pair) for pair in zip(found, widths, found[1:], widths[1:], strict=False)
    ]
    places = [
        mention.start for mention, is_again in zip(found, again, strict=False) if not is_again
    ]
    around = Surroundings(said, cues(said, CARDS), sentence_ends(text.raw, said), places)
    facts: list[Fact] = []
    name = OTHER
    for at, mention in enumerate(found):
        if not again[at]:
            until = found[at + 1].end if again[at + 1 : at + 2] == [True] else mention.end
            closed = until < len(said) and until > mention.end and said[until] == ")"
            name = subject(around, replace(mention, end=until + closed))
        if name != OTHER and _is_plausible(name, mention):
            facts.append(_fact(text, mention, name, widths[at]))
    return facts


def _interval(said: str, mention: Mention) -> Interval:
    finest = min((grain(mention.low), grain(mention.high)), key=["fine", "quarter", "whole"].index)
    how = how_said(said, mention.start, mention.end)
    if how is Said.PLAINLY and "ish" in said[mention.start : mention.end]:
        how = Said.ABOUT
    return length(mention.low, mention.high, mention.unit, finest, how, mention.bare)


def _says_again(said: str, first: Mention, width: Interval, then: Mention, again: Interval) -> bool:
    """Whether the second only converts the first: '3 in (76 mm)'."""
    gap = said[first.end : then.start]
    return first.unit != then.unit and bool(_SAME_AGAIN.fullmatch(gap)) and width.meets(again)


def _is_plausible(name: str, mention: Mention) -> bool:
    factor = {"mm": 1 / MM_PER_IN, "cm": 10 / MM_PER_IN, "in": 1.0}[mention.unit]
    return mention.low * factor in PLAUSIBLE[name] and mention.high * factor in PLAUSIBLE[name]


def _fact(text: Text, mention: Mention, name: str, width: Interval) -> Fact:
    return Fact(
        name=name,
        value=width,
        words=text.raw[mention.start : mention.end],
        start=mention.start,
        end=mention.end,
        unit="mm",
        nominal_in=_nominal(text.said, mention, name, width),
    )


def _nominal(said: str, mention: Mention, name: str, width: Interval) -> tuple[float, ...]:
    if name == "disc":
        return closed_by(width)
    if name not in ("opening", "length"):
        return ()
    if not mention.either:
        return nominal(width)
    sizes: set[float] = set()
    for number in mention.either:  # '2 or 3' is not 2 1/2
        sizes |= {*nominal(_interval(said, Mention(
            mention.start, mention.end, number, number, mention.unit, (), mention.bare
        )))}  # fmt: skip
    return tuple(sorted(sizes))
