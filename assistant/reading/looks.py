"""What the customer's tank and old seal look like, in the words of the tables."""

from __future__ import annotations

import re

from assistant.reading.facts import Fact
from assistant.reading.lexicon import Card, read_cards
from assistant.reading.looks_form import FORM
from assistant.reading.looks_mount import MOUNT
from assistant.reading.looks_style import STYLE
from assistant.reading.looks_tank import TANK
from assistant.reading.stance import Stance, stance
from assistant.reading.text import Text
from assistant.reading.wishes import observed

CARDS: tuple[Card, ...] = (*MOUNT, *FORM, *TANK)
# 'Will it fit a two-piece Brand Model?' asks for a seal and tells of the toilet.
_OF_THE_TOILET = tuple(c for c in TANK if c.name in ("pieces", "tank_kind"))
_WHICH_OF_TWO = tuple(c for c in CARDS if c.name == "position")  # told by a wish as well
_OF_THE_SEAL = tuple(c for c in CARDS if c not in (*_OF_THE_TOILET, *_WHICH_OF_TWO))
# 'Both flappers please, wide ears on the big one': neither is picked out.
_BOTH = re.compile(
    r"\b(?:need|want|order|send|buy|replace|like|get|take)\s+(?:\w+\s+){0,2}both\b"
    r"|\bboth(?: of (?:them|the))?(?: (?:flappers|flaps|seals|rubbers|valves))? "
    r"(?:pls|plz|please|are (?:worn|gone|shot|leaking|perished|done|hard)|leak|need|want"
    r"|have gone)\b"
)
_IS_IT = re.compile(r"\b(?:is|are|was|does|if|whether|which|what|how) [^.;!?]{0,25}$")


def read_looks(text: Text) -> list[Fact]:
    """Every look that is told, in order of place. What is asked or wished for is none.

    The loose word that people have for the part (`style_word`) is kept wherever it stands.
    """
    facts = [
        *read_cards(text, _OF_THE_SEAL, accepts=observed),
        *read_cards(text, _OF_THE_TOILET, accepts=_told),
        *([] if next(iter(text.find(_BOTH)), None) else read_cards(text, _WHICH_OF_TWO)),
        *read_cards(text, STYLE, how=_named),
    ]
    return sorted(facts, key=lambda f: (f.start, f.end, f.name))


def _told(text: Text, start: int, end: int) -> bool | None:
    seen = observed(text, start, end)
    if seen is not False:
        return seen
    return not _IS_IT.search(text.said, max(0, start - 40), start)


def _named(text: Text, start: int, end: int) -> Stance:
    """'Which flapper?' does not doubt the word."""
    return Stance(negated=stance(text, start, end).negated)
