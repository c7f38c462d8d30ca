"""What a message says, fact by fact.

The names of facts and what their values are:

| name | value | `of` |
| --- | --- | --- |
| opening, disc, rim, tube, hinge_width, length | Interval in mm; `nominal_in` where it meets one | |
| flush, flush_reduced | Interval in US gallons | |
| made, bought, house, valve_put_in, year | Interval in years | how it was said: stamp, stated, about |
| brand, model, model_no, part_no | every row or name it may mean | part_no: old, asked, tried, wanted |
| unlisted | the name as written, which no table has | brand, model, number |
| ears, mount, overflow, float, shape, filling, lift, colour, material, pieces, seals_in_tank, tank_kind, position | the words of the tables | |
| valve_original, valve_replaced | ("yes",) | |
| style_like | the styles that unusual wording describes by its meaning; never sure | meaning |
| trouble | crack, leak elsewhere: words of which no card made anything; never sure | |
| symptom, hazard, wanted, asks, photo | names of the reader's own lists | |

`length` is a measurement of which nobody said what was measured; `year` one of which nobody
said what it dates.
"""  # noqa: E501

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from typing import TypeAlias


@dataclass(frozen=True)
class Interval:
    """A closed interval; both ends belong to it."""

    low: float
    high: float

    def __post_init__(self) -> None:
        if not self.low <= self.high:
            raise ValueError(f"{self.low} is above {self.high}")

    def meets(self, other: Interval) -> bool:
        """Whether some value lies in both."""
        return self.low <= other.high and other.low <= self.high

    def __contains__(self, value: float) -> bool:
        return self.low <= value <= self.high


Value: TypeAlias = Interval | tuple[str, ...]


@dataclass(frozen=True, kw_only=True)
class Fact:
    """One thing a message says.

    `start` and `end` are character offsets of `words` in the message. A tuple value holds
    every reading that is possible: more than one means that the words are ambiguous.
    `sure` is false where the writer doubted or where we matched only by likeness.
    """

    name: str
    value: Value
    words: str
    start: int
    end: int
    unit: str | None = None
    nominal_in: tuple[float, ...] = ()
    of: str | None = None
    negated: bool = False
    sure: bool = True
    similar: bool = False  # a name matched by likeness, not letter for letter
    toilet: int = 0  # which toilet of the letter it speaks of, counted from 0

    @property
    def interval(self) -> Interval:
        """The value of a quantity or a year."""
        if not isinstance(self.value, Interval):
            raise TypeError(f"{self.name} holds words, not an interval")
        return self.value

    @property
    def choices(self) -> tuple[str, ...]:
        """The readings of a name or a look."""
        if isinstance(self.value, Interval):
            raise TypeError(f"{self.name} holds an interval, not words")
        return self.value

    def about(self, toilet: int) -> Fact:
        """The same fact, of another toilet of the letter."""
        return replace(self, toilet=toilet)


@dataclass(frozen=True)
class Facts:
    """The facts read from a message, in the order in which they stand there."""

    facts: tuple[Fact, ...] = ()

    def __iter__(self) -> Iterator[Fact]:
        return iter(self.facts)

    def __len__(self) -> int:
        return len(self.facts)

    def named(self, *names: str) -> tuple[Fact, ...]:
        """The facts with one of these names."""
        return tuple(fact for fact in self.facts if fact.name in names)

    def has(self, name: str, *values: str) -> bool:
        """Whether a fact of the name is stated, and not denied (with one of the values)."""
        return any(
            not fact.negated
            and (not values or (not isinstance(fact.value, Interval) and {*values} & {*fact.value}))
            for fact in self.named(name)
        )

    def has_of(self, name: str, of: str) -> bool:
        """Whether a fact of the name is stated in a certain way, such as an old part number."""
        return any(f.of == of and not f.negated for f in self.named(name))

    def of_toilet(self, toilet: int) -> Facts:
        """The facts about one toilet of the letter."""
        return Facts(tuple(fact for fact in self.facts if fact.toilet == toilet))

    @property
    def toilets(self) -> tuple[int, ...]:
        """The toilets that the letter speaks of, at least one."""
        return tuple(sorted({fact.toilet for fact in self.facts})) or (0,)

    def plus(self, more: Iterable[Fact]) -> Facts:
        """These and more, by place in the message."""
        return Facts(tuple(sorted((*self.facts, *more), key=lambda f: (f.start, f.end, f.name))))
