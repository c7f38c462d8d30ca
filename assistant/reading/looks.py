"""What the customer's tank and old seal look like, in the words of the tables."""

from __future__ import annotations

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


def read_looks(text: Text) -> list[Fact]:
    """Every look that is told, in order of place. What is asked or wished for is none.

    The loose word that people have for the part (`style_word`) is kept wherever it stands.
    """
    facts = [*read_cards(text, CARDS, accepts=observed), *read_cards(text, STYLE, how=_named)]
    return sorted(facts, key=lambda f: (f.start, f.end, f.name))


def _named(text: Text, start: int, end: int) -> Stance:
    """'Which flapper?' does not doubt the word."""
    return Stance(negated=stance(text, start, end).negated)
