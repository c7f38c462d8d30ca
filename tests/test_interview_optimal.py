"""The fewest questions there can be, tried out on tables small enough, and how near we come."""

from __future__ import annotations

import itertools
import math
from collections.abc import Callable
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.interview.hypotheses import Hypotheses
from assistant.interview.optimal import (
    MOST,
    Left,
    Table,
    by_information,
    entropy_bound,
    expected_questions,
    optimal_questions,
    table_of,
)
from assistant.reading.facts import Facts
from tests.interviewing import LOOKS, trade

TABLES = 150


@st.composite
def small_tables(draw: st.DrawFn) -> Table:
    """Up to seven hypotheses, three things sold and four questions."""
    size = draw(st.integers(1, 7))

    def column(most: int) -> tuple[int, ...]:
        return tuple(draw(st.lists(st.integers(0, most), min_size=size, max_size=size)))

    weights = tuple(float(w + 1) for w in column(9))
    asked = range(draw(st.integers(1, 4)))
    return Table(weights, column(2), {f"q{n}": column(2) for n in asked})


def test_of_four_alike_seals_two_questions_of_two_answers_settle() -> None:
    halves = {"a": (0, 0, 1, 1), "b": (0, 1, 0, 1)}
    assert optimal_questions(Table((1, 1, 1, 1), ("w", "x", "y", "z"), halves)) == 2


def test_the_common_seal_is_asked_about_first() -> None:
    """One question settles 6 of 8, two the rest: 6/8 · 1 + 2/8 · 2."""
    one_by_one = {"a": (1, 0, 0), "b": (0, 1, 0), "c": (0, 0, 1)}
    table = Table((6, 1, 1), ("x", "y", "z"), one_by_one)
    assert optimal_questions(table) == float(Fraction(6 + 2 * 2, 8))


def test_toilets_that_take_one_seal_need_no_question() -> None:
    assert optimal_questions(Table((1, 1), ("x", "x"), {"a": (0, 1)})) == 0


def test_what_no_question_tells_apart_is_not_asked_about() -> None:
    """Both take the same looks: one question is all that helps, and then a person."""
    table = Table((1, 1, 2), ("x", "y", "z"), {"a": (0, 0, 1)})
    assert optimal_questions(table) == 1


def test_two_questions_may_tell_what_neither_tells_alone() -> None:
    table = Table((1, 1, 1, 1), ("x", "y", "y", "x"), {"a": (0, 0, 1, 1), "b": (0, 1, 0, 1)})
    assert optimal_questions(table) == 2


def test_a_policy_that_gives_up_or_asks_in_vain_is_charged_the_questions_in_order() -> None:
    table = Table((1, 1), ("x", "y"), {"vain": (0, 0), "a": (0, 1)})
    assert expected_questions(lambda left: None, table) == 1
    assert expected_questions(lambda left: "vain", table) == 1


def test_too_many_hypotheses_are_refused() -> None:
    size = MOST + 1
    with pytest.raises(ValueError, match=f"{size} hypotheses"):
        optimal_questions(Table((1.0,) * size, tuple(range(size)), {"a": tuple(range(size))}))


@given(small_tables())
@settings(deadline=None)
def test_no_fixed_order_of_questions_is_better_than_the_best_strategy(table: Table) -> None:
    best = optimal_questions(table)
    for order in itertools.permutations(table.answers):

        def in_order(left: Left, order: tuple[str, ...] = order) -> str | None:
            return next((q for q in order if len(table.parts(left, q)) > 1), None)

        assert expected_questions(in_order, table) >= best - 1e-9


@given(small_tables())
@settings(deadline=None)
def test_nobody_needs_fewer_questions_than_there_are_bits(table: Table) -> None:
    assert optimal_questions(table) >= entropy_bound(table) - 1e-9


@given(small_tables(), st.randoms())
@settings(deadline=None)
def test_the_order_of_hypotheses_changes_nothing(table: Table, chance: object) -> None:
    order = list(range(len(table.weights)))
    chance.shuffle(order)  # type: ignore[attr-defined]
    again = Table(
        tuple(table.weights[at] for at in order),
        tuple(table.sold[at] for at in order),
        {name: tuple(column[at] for at in order) for name, column in table.answers.items()},
    )
    assert math.isclose(optimal_questions(again), optimal_questions(table), abs_tol=1e-9)


def test_the_interview_asks_hardly_more_than_the_best_strategy(
    record_property: Callable[[str, object], None],
) -> None:
    """Averaged over many small tables of the trade, at most 1.15 times as many questions."""
    ours, fewest = 0.0, 0.0
    for seed in range(TABLES):
        of = trade(seed, builds=10)
        left = Hypotheses.of(of, Facts())
        table = table_of(left, LOOKS)
        assert set(table.answers) == {*LOOKS}
        fewest += optimal_questions(table)
        ours += expected_questions(by_information(left, LOOKS), table)
    record_property("ours over optimal", ours / fewest)
    assert fewest / TABLES > 1  # there is something to ask in them
    assert 1 <= ours / fewest <= 1.15
