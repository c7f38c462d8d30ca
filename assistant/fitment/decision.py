"""What was decided about one toilet, as data; its wording is elsewhere."""

from __future__ import annotations

from collections.abc import Hashable
from dataclasses import dataclass, replace
from enum import StrEnum

from assistant.fitment.features import Condition
from assistant.fitment.identify import Identity
from assistant.fitment.judge import Judgement
from assistant.fitment.measures import Measured
from assistant.fitment.picks import Group
from assistant.fitment.places import Scenario
from assistant.reading.facts import Fact, Facts


class Outcome(StrEnum):
    """What kind of answer it is."""

    PART = "part"
    DEPENDS = "depends"
    ASK = "ask"
    NOT_THE_SEAL = "not the seal"
    NO_MATCH = "no match"
    NOTE = "note"
    HAND_OVER = "hand over"


class Why(StrEnum):
    """Why it came out so."""

    SETTLED = "every possible toilet takes it"
    BRANCHES = "builds of one name differ"
    DOUBTED = "the name itself is doubted"
    MEASURES = "the measures agree"
    NOTHING_TOLD = "nothing tells which toilet"
    BRAND_ONLY = "only the maker is told"
    MODEL_ONLY = "the maker is not told"
    SEVERAL_NAMES = "more than one name may be meant"
    CONTRADICTION = "two facts cannot both hold"
    DISAGREES = "facts disagree with the table"
    WHAT_WAS_MEASURED = "it is not told what was measured"
    VALVE_REPLACED = "the valve is no longer the original one"
    TRIED_IN_VAIN = "the seal that the table names did not fit"
    ONE_OF_TWO = "one of two seals is wanted, and not told which"
    TROUBLE = "something may be wrong that no seal mends"
    TOO_MANY = "too many seals are possible"
    FEW_LEFT = "nothing left to ask tells them apart"
    UNLISTED = "the table does not list it"
    NOT_MADE_THEN = "the model was not made then"
    NO_SEAL_KNOWN = "no seal is known for it"
    NO_FLAPPER = "it has no flapper"
    OLD_PART_UNKNOWN = "nothing is known of where the old part fits"
    MEASURES_UNKNOWN = "no seal has these measures"


@dataclass(frozen=True)
class Branch:
    """A group of scenarios with the condition that selects it (none where it is the only one)."""

    group: Group
    condition: Condition | None = None


@dataclass(frozen=True, kw_only=True)
class Decision:
    """The outcome for one toilet and everything it rests on."""

    outcome: Outcome
    why: Why
    identity: Identity
    scenarios: tuple[Scenario, ...] = ()
    branches: tuple[Branch, ...] = ()
    measured: tuple[Measured, ...] = ()
    ruled_out: tuple[Judgement, ...] = ()
    unknown: tuple[str, ...] = ()  # parts asked about of which the tables do not say
    question: str | None = None
    choices: tuple[Hashable, ...] = ()  # the values among which the question decides
    also_ask: tuple[str, ...] = ()  # in a letter: what else may be asked with it
    facts: tuple[Fact, ...] = ()  # those that the reason speaks of
    told: Facts = Facts()  # everything known about this toilet
    valve_is_original: bool = False

    def asking(
        self,
        why: Why,
        question: str,
        facts: tuple[Fact, ...],
        choices: tuple[Hashable, ...] = (),
    ) -> Decision:
        """A question in place of the seals that were decided on."""
        return replace(
            self,
            outcome=Outcome.ASK,
            why=why,
            branches=(),
            measured=(),
            ruled_out=(),
            unknown=(),
            question=question,
            choices=choices,
            facts=facts,
        )
