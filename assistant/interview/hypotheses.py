"""What is still possible: listed builds, a valve put in later, and a toilet no table lists.

Without a fact that rules them out, the two open hypotheses stay, weighed by `prior` in
questions.csv. A toilet that is not listed is taken to look as listed ones do, and what would be
sold for it is not known. A valve put in later is one of those that sit in such tanks, and the
toilet tells nothing of it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from assistant.fitment.decide import Counter
from assistant.fitment.identify import By, Identity, identify
from assistant.fitment.narrow import ABOUT_VALVE, TESTS, dating, told_volume
from assistant.fitment.old_parts import with_numbers_settled
from assistant.interview.information import Floats, Ints, totals
from assistant.interview.listed import Listed, Marks
from assistant.interview.sold import Sold
from assistant.reading.facts import Fact, Facts

UNLISTED_PRIOR = 0.08  # where questions.csv does not say
REPLACED_PRIOR = 0.1


@dataclass(frozen=True, eq=False)
class Hypotheses:
    """The hypotheses left, each with its weight and what would be sold.

    `rows` are those of `listed`, `valve` weighs each valve of the tables as one put in later,
    and `unlisted` the toilet that is not in the table.
    """

    listed: Listed
    rows: Ints
    weight: Floats
    sold: Ints
    valve: Floats
    valve_sold: Ints
    unlisted: float
    names_a_model: bool = False
    volume_told: bool = False

    @classmethod
    def of(cls, counter: Counter, facts: Facts, listed: Listed | None = None) -> Hypotheses:
        """What the facts about one toilet leave. `listed` is made anew where it is not given."""
        listed = listed or Listed(counter)
        facts = with_numbers_settled(counter.tables, facts)
        identity = identify(counter.tables, facts)
        named = _by_names(counter, facts, identity)
        everything = np.ones(len(listed.rows), dtype=np.bool_)
        if identity.disagree:
            return cls._left(listed, ~everything, ~everything, np.zeros(len(listed.valves)), 0.0)
        about = [f for f in dating(facts) if f.name in TESTS]
        toilets = _named_rows(listed, named) & _all(
            everything, *(listed.allowed(f) for f in about if f.name not in ABOUT_VALVE)
        )
        here = _all(everything, *(listed.allowed(f) for f in about if f.name in ABOUT_VALVE))
        here &= _in_position(listed, facts)
        valves = _all(np.ones(len(listed.valves), dtype=np.bool_))
        for fact in about:
            valves &= listed.valves_allowed(fact)
        old = _old_parts(facts, identity)
        for fact in old:
            taking = [listed.taking(part) for part in fact.choices if part in counter.tables.seals]
            here &= _any(everything, [rows for rows, _ in taking])
            valves &= _any(valves | True, [fitting for _, fitting in taking])
        if identity.by is By.OLD_PART and not (toilets & here).any():
            toilets = everything  # the name alone would not do, and it is not of such a toilet
        unlisted_for_sure = any(f.sure for f in identity.unlisted) and not old
        if unlisted_for_sure:
            toilets = ~everything
        ruled_out = bool(old) or (identity.is_certain and not _doubted(facts))
        prior = 0.0 if ruled_out else _prior(counter, "brand", UNLISTED_PRIOR)
        found = cls._left(
            listed,
            toilets,
            toilets & here,
            np.where(valves, _put_in_later(counter, listed, toilets), 0.0),
            prior,
        )
        found = replace(found, names_a_model=bool(named.names))
        return found._original(facts)._flushing(facts)

    @classmethod
    def _left(
        cls, listed: Listed, toilets: Marks, left: Marks, valve: Floats, prior: float
    ) -> Hypotheses:
        rows = np.flatnonzero(left)
        weight = listed.weight[rows]
        like = float(weight.sum()) or float(listed.weight[toilets].sum()) or 1.0
        return cls(listed, rows, weight, listed.sold[rows], valve, listed.valve_sold, prior * like)

    def _original(self, facts: Facts) -> Hypotheses:
        """Without the valve put in later where it is the first one, or with that alone."""
        told = [f for f in facts.named("valve_original", "valve_replaced") if f.sure]
        says = {(f.name == "valve_original") != f.negated for f in told}
        found = self
        if True in says:
            found = found.with_first_valve
        if False in says or facts.named("valve_put_in"):
            none = np.zeros(0, dtype=np.int64)
            found = replace(
                found, rows=none, weight=none.astype(np.float64), sold=none, unlisted=0.0
            )
        return found

    def _flushing(self, facts: Facts) -> Hypotheses:
        """With the volume as told, where the table does not know the toilet's own."""
        if (told := told_volume(facts)) is None:
            return self
        sold = self.listed.sold_with(told)[self.rows]
        return replace(
            self, sold=sold, valve_sold=self.listed.valve_sold_with(told), volume_told=True
        )

    @property
    def with_first_valve(self) -> Hypotheses:
        """Without the valve put in later."""
        return replace(self, valve=np.zeros_like(self.valve))

    # What is left

    @property
    def left(self) -> frozenset[str]:
        """The hypotheses by name."""
        names = set()
        for row in self.rows.tolist():
            build = self.listed.tanks[row].build
            position = self.listed.positions[row]
            names.add(f"{build.build if build else ''}{f'/{position}' if position else ''}")
        for valve in np.flatnonzero(self.valve).tolist():
            names.add(f"put in later: {self.listed.valves[valve].places[0].valve.valve}")
        return frozenset(names | ({"not listed"} if self.unlisted else set()))

    @property
    def by_sold(self) -> Floats:
        """The weight of each thing that would be sold, by its number."""
        kinds = len(self.listed.seller.solds)
        found = totals(self.sold, self.weight, kinds)
        found += totals(self.valve_sold, self.valve, kinds)
        found[0] += self.unlisted
        return found

    @property
    def solds(self) -> tuple[tuple[Sold, float], ...]:
        """What may be sold, each with its share, the likeliest first."""
        weights = self.by_sold
        order = sorted(np.flatnonzero(weights).tolist(), key=lambda at: (-weights[at], at))
        total = float(weights.sum())
        return tuple((self.listed.seller.solds[at], float(weights[at]) / total) for at in order)


def _prior(counter: Counter, question: str, usual: float) -> float:
    row = counter.tables.questions.get(question)
    return usual if row is None or row.prior is None else row.prior


def _put_in_later(counter: Counter, listed: Listed, toilets: Marks) -> Floats:
    """The weight of each valve as one put in later, in tanks as those that are left."""
    size = len(listed.valves_by_kind)
    kinds = totals(listed.tank_kinds + 1, np.where(toilets, listed.weight, 0.0), size + 1)
    by_kind = kinds[1:]  # without those that have no valve
    share = min(_prior(counter, "valve_replaced", REPLACED_PRIOR), 0.99)
    found: Floats = share / (1 - share) * (by_kind @ listed.valves_by_kind)
    return found


def _by_names(counter: Counter, facts: Facts, identity: Identity) -> Identity:
    """What the names leave, where an old part's number identified more than they do."""
    if identity.by is not By.OLD_PART:
        return identity
    return identify(counter.tables, Facts(tuple(f for f in facts if f.name != "part_no")))


def _named_rows(listed: Listed, named: Identity) -> Marks:
    marks = np.ones(len(listed.rows), dtype=np.bool_)
    if named.by is By.BRAND_ONLY:
        column = listed.columns["brand"]
        codes = [at for at, brand in enumerate(column.values) if brand in named.brands]
        return np.isin(column.of_row, codes)
    if named.by is By.NOTHING:
        return marks
    marks[:] = False
    for scenario in named.scenarios:
        if scenario.build is not None:
            marks[listed.row_of_build[scenario.build.build]] = True
    return marks


def _in_position(listed: Listed, facts: Facts) -> Marks:
    """Only the valve asked for, where the customer says which of two."""
    told = [{*f.choices} for f in facts.named("position") if f.sure and not f.negated]
    if not told:
        return np.ones(len(listed.rows), dtype=np.bool_)
    wanted = set.intersection(*told)
    return np.array(
        [position in wanted or (position is None and "main" in wanted)
         for position in listed.positions],
        dtype=np.bool_,
    )  # fmt: skip


def _old_parts(facts: Facts, identity: Identity) -> list[Fact]:
    """Numbers on the seal in there now; one asked for is taken for it where nothing else is."""
    roles = ("old", "wanted") if identity.by is By.OLD_PART else ("old",)
    parts = [f for f in facts.named("part_no") if not f.negated]
    old = [f for f in parts if f.of == "old"]
    return old or [f for f in parts if f.of in roles]


def _doubted(facts: Facts) -> bool:
    """'A Brand Model, I think': it may yet be one that is not listed."""
    return any(not (f.sure or f.similar or f.negated) for f in facts.named("brand", "model"))


def _all(everything: Marks, *marks: Marks) -> Marks:
    found = everything.copy()
    for some in marks:
        found &= some
    return found


def _any(everything: Marks, marks: Sequence[Marks]) -> Marks:
    """Any of several readings of a number; nothing is said where no seal bears it."""
    if not marks:
        return everything
    found = ~everything
    for some in marks:
        found = found | some
    return found
