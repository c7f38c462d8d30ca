"""What the tests of the readers share: facts in one line, and letters made of trade words."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from hypothesis import strategies as st

from assistant.reading.facts import Fact
from assistant.reading.text import Text

Reader = Callable[[Text], list[Fact]]

_WORDS = (
    "no not the a ring ears ear up down goes over overflow tube flapper red float on "
    "chain ball wire without it has doesn't have , . ? hooks pegs two never replaced "
    "valve I think want one piece leaks into bowl floor tank bolts handle hold won't "
    "close how do I replace which why need"
)
_OF_WORDS = st.lists(st.sampled_from(_WORDS.split()), max_size=30).map(" ".join)
LETTERS = st.one_of(st.text(max_size=200), _OF_WORDS)


def in_line(facts: Iterable[Fact]) -> str:
    """The facts without their places, each once, by name."""
    return "; ".join(sorted({_told(fact) for fact in facts}))


def _told(fact: Fact) -> str:
    denied, doubted = "not " if fact.negated else "", "" if fact.sure else "perhaps "
    return f"{denied}{doubted}{fact.name}={'|'.join(fact.choices)}"


def stands_at_its_place(letter: str, fact: Fact) -> bool:
    """Whether the words that a fact cites are what the letter says there."""
    return letter[fact.start : fact.end] == fact.words == fact.words.strip() != ""


def grows_with_length(reader: Reader, unit: str) -> bool:
    """Whether ten times the letter gives ten times the same facts, to the end of 200,000 signs."""
    few = reader(Text(unit * (20_000 // len(unit))))
    many = reader(Text(unit * (200_000 // len(unit))))
    same = {fact.choices for fact in few} == {fact.choices for fact in many}
    return same and len(many) >= 9 * len(few) > 0
