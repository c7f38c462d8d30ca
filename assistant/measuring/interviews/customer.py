"""A simulated customer: knows a toilet, and has a memory that fails as often as it is told to.

What he answers to a question hangs on the seed, on him and on the question alone, so that every
policy that asks him hears the same.
"""

from __future__ import annotations

import random
from collections.abc import Sequence
from dataclasses import dataclass

from assistant.fitment.asking import ease
from assistant.measuring.interviews.telling import Known, fact, made, opening, told
from assistant.measuring.interviews.toilets import Toilet
from assistant.measuring.interviews.truths import TruthOf
from assistant.reading.facts import Fact
from assistant.records.tables import Tables

MOST_YEARS_OFF = 4  # how far a wrong year strays
TRIES = 8  # other toilets asked for a false answer before the true one is given


@dataclass(frozen=True)
class Memory:
    """How often it fails. 'Don't know' comes as often as a question's ease says, in each.

    `omits`: the answer is left out though it is known; `wrong_year`: off by a few years;
    `disc_measured`: the old seal's disc measured for the opening, a size up; `lies`: whatever
    another toilet's owner would say.
    """

    name: str
    omits: float = 0.0
    wrong_year: float = 0.0
    disc_measured: float = 0.0
    lies: float = 0.0


ONLY_OMITS = Memory("only omits", omits=0.05)
SLIPS = Memory("slips", omits=0.05, wrong_year=0.2, disc_measured=0.2)
LIES = Memory("lies", omits=0.05, lies=0.15)


@dataclass(frozen=True)
class Answer:
    """Facts, or none for 'don't know'; `false` where they are not so."""

    facts: tuple[Fact, ...] = ()
    false: bool = False


class Customer:
    """One customer of one shop; `others` are the toilets that false answers are taken from."""

    def __init__(
        self,
        tables: Tables,
        truth: TruthOf,
        toilet: Toilet,
        memory: Memory,
        seed: int,
        others: Sequence[Toilet] = (),
    ) -> None:
        self.tables, self.truth, self.toilet, self.memory = tables, truth, toilet, memory
        self._seed, self._others = seed, others
        self._known = self._knows(toilet)

    def answer(self, question: str) -> Answer:
        """What he says to a question."""
        chance = random.Random(f"{self._seed}/{self.toilet.name}/{question}")
        ignorant = chance.random() >= ease(self.tables.questions, question)
        omitted, slips, lies = chance.random(), chance.random(), chance.random()
        if ignorant or omitted < self.memory.omits:
            return Answer()
        true = told(self._known, question)
        if lies < self.memory.lies and (false := self._false(question, true, chance)):
            return Answer(false, false=True)
        if question == "made" and true and slips < self.memory.wrong_year:
            off = chance.randint(1, MOST_YEARS_OFF) * chance.choice((-1, 1))
            return Answer((made(int(true[0].interval.low) + off),), false=True)
        wider = self._size_up(true[0].nominal_in[0]) if question == "opening" and true else None
        if wider is not None and slips < self.memory.disc_measured:
            return Answer((opening(wider),), false=True)
        return Answer(true)

    def _size_up(self, inches: float) -> float | None:
        sizes = {v.opening_in for v in self.tables.valves.values() if v.opening_in is not None}
        return min((size for size in sizes if size > inches), default=None)

    def _false(
        self, question: str, true: tuple[Fact, ...], chance: random.Random
    ) -> tuple[Fact, ...]:
        """What another toilet's owner would say, where that differs."""
        if question == "valve_replaced" and true:
            other = {"valve_original": "valve_replaced", "valve_replaced": "valve_original"}
            return (fact(other[true[0].name], ("yes",)),)
        for _ in range(TRIES if self._others else 0):
            said = told(self._knows(chance.choice(self._others)), question)
            if said and {f.value for f in said} != {f.value for f in true}:
                return said
        return ()

    def _knows(self, toilet: Toilet) -> Known:
        """The seal that is in there now and how it holds: the same for every customer with it."""
        chance = random.Random(f"{self._seed}/{toilet.name}/seal")
        seals = self.truth.may_sit(toilet) if toilet.valve else ()
        seal = chance.choice(seals) if seals else None
        ways = toilet.valve.mount if toilet.valve else ()
        used = [way for way in ways if seal and way in self.tables.seals[seal].mount] or list(ways)
        return Known(self.tables, toilet, chance.choice(used) if used else None, seal)
