"""What the hypotheses left would answer to a question, and what an answer leaves of them."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from assistant.interview.columns import Column
from assistant.interview.hypotheses import Hypotheses
from assistant.interview.information import Floats, Ints, Joint, information, merged, totals

YES = 1  # the answer to whether the valve was replaced; no is 0
HAIR = 1e-9  # bits: less is rounding, and two gains so near are the same


def gain_of(left: Hypotheses, question: str) -> float:
    """What its answer is expected to tell of what would be sold, in bits, and 0 if nothing."""
    told = joint(left, question)
    gain = 0.0 if told is None else information(told)
    return gain if gain > HAIR else 0.0


def joint(left: Hypotheses, question: str) -> Joint | None:
    """Answers and what would be sold, together; `None` for what no table tells."""
    if question == "valve_replaced":
        return _replaced(left)
    if question == "old_part":
        return _old_part(left)
    column = _column(left, question)
    return None if column is None else _of_column(left, column)


def given(left: Hypotheses, question: str, answer: int) -> Hypotheses:
    """The hypotheses weighed anew, were this the answer (as `joint` numbers it)."""
    if question == "valve_replaced":
        first, later = (0.0, 1.0) if answer == YES else (1.0, 0.0)
        return _weighed(left, np.full(len(left.rows), first), later, first)
    if question == "old_part":
        by_sold = _numbers_told(left)[:, answer]
        return _weighed(left, by_sold[left.sold], by_sold[left.valve_sold], float(by_sold[0]))
    column = _column(left, question)
    shares = _shares(left, column) if column else np.zeros(0)
    if column is None or answer >= len(shares):
        return left
    told = np.append(column.likelihood(answer), shares[answer])  # the last is for not known
    share = float(shares[answer])
    valves = share if column.of_valve is None else told[column.of_valve]
    others = _others(left, column)
    told_by: Floats = told[column.of_row[left.rows]]
    return _weighed(left, told_by, valves, float(told[-1 if others is None else others]))


def _weighed(left: Hypotheses, rows: Floats, valves: Floats | float, unlisted: float) -> Hypotheses:
    kept = np.flatnonzero(rows)
    return replace(
        left, rows=left.rows[kept], weight=left.weight[kept] * rows[kept], sold=left.sold[kept],
        valve=left.valve * valves, unlisted=left.unlisted * unlisted,
    )  # fmt: skip


def _column(left: Hypotheses, question: str) -> Column | None:
    """The question's column; which of two seals is asked of tanks alone that have two."""
    column = left.listed.columns.get(question)
    if column is None or question != "position":
        return column
    two = bool(len(left.rows)) and bool((column.of_row[left.rows] >= 0).all())
    return column if two else None


def _others(left: Hypotheses, column: Column) -> int | None:
    """The answer for a toilet that is not listed, `None` where it may be any.

    The maker of one may be a listed maker, unless a listed model was named: then it is another.
    """
    return None if column.name == "brand" and not left.names_a_model else column.others


def _of_column(left: Hypotheses, column: Column) -> Joint:
    kinds = len(left.listed.seller.solds)
    value, sold, weight = _pairs(left, column, kinds)
    unknown = value < 0
    any_answer = totals(sold[unknown], weight[unknown], kinds)
    value, sold, weight = column.told(value[~unknown], sold[~unknown], weight[~unknown])
    if column.of_valve is None:
        any_answer += totals(left.valve_sold, left.valve, kinds)
    else:
        silent = column.of_valve < 0
        any_answer += totals(left.valve_sold[silent], left.valve[silent], kinds)
        says = ~silent & (left.valve > 0)
        more = column.told(column.of_valve[says], left.valve_sold[says], left.valve[says])
        both = [np.concatenate(two) for two in zip((value, sold, weight), more, strict=True)]
        value, sold, weight = merged(both[0], both[1], both[2], kinds)
    others = _others(left, column)
    if others is None:
        any_answer[0] += left.unlisted
    elif left.unlisted:
        value, sold, weight = _with_one(value, sold, weight, others, left.unlisted)
    return Joint(value, sold, weight, any_answer)


def _pairs(left: Hypotheses, column: Column, kinds: int) -> tuple[Ints, Ints, Floats]:
    """The weight of every pair of a value and a thing sold, among the listed rows."""
    if left.volume_told:  # what is sold is not what it was when the pairs were made
        values = column.of_row[left.rows] + 1
        value, sold, weight = merged(values, left.sold, left.weight, kinds)
        return value - 1, sold, weight
    place, value, sold = column.pairs(left.listed.sold)
    everything = len(left.rows) == len(place)
    weight = totals(place if everything else place[left.rows], left.weight, len(value))
    there = slice(None) if everything else np.flatnonzero(weight)
    return value[there], sold[there], weight[there]


def _with_one(
    value: Ints, sold: Ints, weight: Floats, others: int, unlisted: float
) -> tuple[Ints, Ints, Floats]:
    """With the toilet that is not listed, of which nothing that would be sold is known."""
    at = int(np.searchsorted(value, others))  # pairs stand in order, and 0 is the first thing sold
    if at < len(value) and value[at] == others and sold[at] == 0:
        weight = weight.copy()
        weight[at] += unlisted
        return value, sold, weight
    return np.append(value, others), np.append(sold, 0), np.append(weight, unlisted)


def _shares(left: Hypotheses, column: Column) -> Floats:
    return _of_column(left, column).shares


def _replaced(left: Hypotheses) -> Joint:
    kinds = len(left.listed.seller.solds)
    first = totals(left.sold, left.weight, kinds)
    first[0] += left.unlisted
    weights = np.stack((first, totals(left.valve_sold, left.valve, kinds)))
    answer, sold = np.nonzero(weights)
    return Joint(answer, sold, weights[answer, sold], np.zeros(kinds))


def _numbers_told(left: Hypotheses) -> Floats:
    """For each thing sold, how often the old seal bears each number.

    The seal in there now is one of those that fit, any as often as another. Where none is known
    it bears a number that no table has, which is number 0.
    """
    solds = left.listed.seller.solds
    numbers = {part: at for at, part in enumerate(sorted({p for s in solds for p in s.parts}))}
    told = np.zeros((len(solds), len(numbers) + 1))
    for at, sold in enumerate(solds):
        for part in sold.parts:
            told[at, numbers[part] + 1] = 1 / len(sold.parts)
        told[at, 0] = not sold.parts
    return told


def _old_part(left: Hypotheses) -> Joint:
    weights = _numbers_told(left) * left.by_sold[:, None]
    sold, answer = np.nonzero(weights)
    return Joint(answer, sold, weights[sold, answer], np.zeros(len(weights)))
