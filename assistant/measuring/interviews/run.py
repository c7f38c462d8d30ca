"""All interviews of one seed: every listed build, toilets not listed, and valves replaced."""

from __future__ import annotations

import random
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from assistant.fitment.decide import Counter
from assistant.interview.next_question import Interviewer
from assistant.measuring.campaign.truth import Truth
from assistant.measuring.evaluation import Progress
from assistant.measuring.interviews.customer import LIES, ONLY_OMITS, SLIPS, Customer, Memory
from assistant.measuring.interviews.interview import Interview, interviewed
from assistant.measuring.interviews.policies import BEST, policies
from assistant.measuring.interviews.toilets import (
    LISTED,
    NOT_LISTED,
    REPLACED,
    Toilet,
    listed,
    not_listed,
    replaced,
)
from assistant.measuring.interviews.truths import TruthOf

# What letters commonly tell of themselves: a name, or what somebody remembers and measured.
NAMED, MEASURED = ("brand", "model"), ("brand", "model", "made", "opening")


@dataclass(frozen=True)
class Group:
    """Customers of one kind, what their letters tell, and whether every policy interviews them."""

    toilets: str
    memory: Memory
    letter: tuple[str, ...] = ()
    every_policy: bool = False


PLAN = (
    Group(LISTED, ONLY_OMITS, every_policy=True),
    Group(LISTED, ONLY_OMITS, NAMED, every_policy=True),
    Group(LISTED, SLIPS, MEASURED),
    Group(LISTED, LIES),
    Group(LISTED, LIES, NAMED),
    Group(NOT_LISTED, ONLY_OMITS),
    Group(REPLACED, ONLY_OMITS),
)
TRIED = 3  # times as many replaced valves are drawn as are kept


@dataclass(frozen=True)
class Series:
    """Interviews of one group of customers by one policy, in the same order for every policy."""

    group: Group
    policy: str
    interviews: tuple[Interview, ...]


def toilets_of(
    counter: Counter, truth: Truth, count: int, seed: int
) -> Mapping[str, Sequence[Toilet]]:
    """The toilets of each group, at most so many of each; of listed builds each once.

    Nobody puts in a valve for which no seal is known, so that such ones are left out.
    """
    every = listed(counter.tables, seed)
    many = min(count, len(every))
    chosen = every if many == len(every) else random.Random(seed).sample(every, many)
    tried = replaced(counter.tables, TRIED * many, seed)
    known = TruthOf(truth, tried)
    return {
        LISTED: chosen,
        NOT_LISTED: not_listed(counter.tables, many, seed),
        REPLACED: [toilet for toilet in tried if known.fitting(toilet)][:many],
    }


def interviews(
    counter: Counter,
    truth: Truth,
    interviewer: Interviewer,
    *,
    count: int,
    seed: int,
    progress: Progress = lambda done, of: None,
) -> list[Series]:
    """Every series of the plan."""
    toilets = toilets_of(counter, truth, count, seed)
    known = TruthOf(truth, [t for group in toilets.values() for t in group])
    every = policies(counter, interviewer, seed)
    planned = [
        (group, name) for group in PLAN for name in (every if group.every_policy else (BEST,))
    ]
    of = sum(len(toilets[group.toilets]) for group, _ in planned)
    done, found = 0, []
    for group, name in planned:
        held = []
        for toilet in toilets[group.toilets]:
            others = toilets[LISTED]
            customer = Customer(counter.tables, known, toilet, group.memory, seed, others)
            held.append(interviewed(counter, interviewer, every[name], customer, group.letter))
            done += 1
            progress(done, of)
        found.append(Series(group, name, tuple(held)))
    return found
