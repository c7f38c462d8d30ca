"""Measures of a ranking against what a reader works out, scikit-learn, and every permutation."""

from __future__ import annotations

import math
from itertools import product

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from sklearn.metrics import ndcg_score

from assistant.measuring.retrieval.measures import chance, interval, scores
from assistant.measuring.retrieval.trec import qrels_lines, run_lines

GRADES = {"q1": {"a": 3, "b": 1, "c": 2}, "q2": {"d": 2}}
RUN = {"q1": ["b", "x", "a", "c"], "q2": ["y"]}


def test_the_measures_of_a_small_run_are_those_worked_out_by_hand() -> None:
    found = scores(RUN, GRADES, serves=2).by_measure
    gained = 1 / math.log2(2) + 3 / math.log2(4) + 2 / math.log2(5)
    best = 3 / math.log2(2) + 2 / math.log2(3) + 1 / math.log2(4)
    assert found["nDCG@10"] == pytest.approx({"q1": gained / best, "q2": 0})
    assert found["MRR"] == pytest.approx({"q1": 1 / 3, "q2": 0})
    assert found["recall@20"] == pytest.approx({"q1": 1, "q2": 0})


def test_a_question_that_nothing_serves_is_not_measured() -> None:
    assert scores(RUN, {"q1": {"a": 1}}, serves=2).by_measure["MRR"] == {}


@given(st.permutations(range(8)), st.lists(st.integers(0, 3), min_size=8, max_size=8))
def test_ndcg_is_that_of_scikit_learn(order: list[int], grades: list[int]) -> None:
    if not any(grade >= 2 for grade in grades):
        grades[0] = 2
    of = {"q": {f"d{n}": grade for n, grade in enumerate(grades) if grade}}
    run = {"q": [f"d{n}" for n in order]}
    ranked = np.zeros(8)
    ranked[order] = np.arange(8, 0, -1)
    theirs = ndcg_score([grades], [ranked], k=10)
    assert scores(run, of, serves=2).by_measure["nDCG@10"]["q"] == pytest.approx(theirs)


def test_the_randomisation_test_counts_every_change_of_signs() -> None:
    one = dict(zip("abcdefg", (0.9, 0.8, 0.7, 0.6, 0.9, 0.5, 0.4), strict=True))
    other = dict(zip("abcdefg", (0.5, 0.7, 0.2, 0.65, 0.1, 0.3, 0.35), strict=True))
    differences = [one[q] - other[q] for q in one]
    seen = abs(sum(differences))
    all_signs = [
        abs(sum(d * sign for d, sign in zip(differences, signs, strict=True)))
        for signs in product((1, -1), repeat=7)
    ]
    exact = sum(total >= seen - 1e-12 for total in all_signs) / len(all_signs)
    assert chance(one, other) == pytest.approx(exact)
    assert chance(one, one) == 1


def test_the_interval_holds_the_mean_and_shrinks_with_more_queries() -> None:
    few, many = [0.0, 1.0] * 5, [0.0, 1.0] * 200
    for values in (few, many):
        low, high = interval(values)
        assert low < 0.5 < high
    assert interval(many)[1] - interval(many)[0] < interval(few)[1] - interval(few)[0]
    assert interval([0.3, 0.3]) == (0.3, 0.3)


def test_runs_and_judgements_stand_in_the_trec_forms() -> None:
    assert run_lines({"q": ["a", "b"]}, "dense") == (
        "q Q0 a 1 1.000000 dense\nq Q0 b 2 0.500000 dense\n"
    )
    assert qrels_lines({"q": {"a": 3, "b": 1}}) == "q 0 a 3\nq 0 b 1\n"
