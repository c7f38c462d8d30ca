"""Measures of a ranking by way of ir-measures, with intervals and tests by way of scipy."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import ir_measures
import numpy as np
from ir_measures import RR, R, nDCG
from scipy import stats

from assistant.measuring.retrieval.runs import Run

Grades = Mapping[str, Mapping[str, int]]  # by query and document
RESAMPLES = 9_999
SEED = 20261125


@dataclass(frozen=True)
class Scores:
    """Every measure for every query; a query for which nothing was found scores nothing."""

    by_measure: Mapping[str, Mapping[str, float]]

    def mean(self, measure: str) -> float:
        """The mean over the queries."""
        return float(np.mean(list(self.by_measure[measure].values())))


def measures(serves: int) -> dict[str, ir_measures.Measure]:
    """The measures by name; from the grade `serves` on a document counts as relevant.

    nDCG takes the grade itself as gain (Jaervelin and Kekaelaeinen 2002).
    """
    return {
        "nDCG@10": nDCG @ 10,
        "recall@20": R(rel=serves) @ 20,
        "MRR": RR(rel=serves),
    }


def scores(run: Run, grades: Grades, serves: int) -> Scores:
    """A run against the grades, for every query that has a document that serves."""
    queries = [q for q, of in grades.items() if any(g >= serves for g in of.values())]
    qrels = [ir_measures.Qrel(q, d, grade) for q in queries for d, grade in grades[q].items()]
    found = [
        ir_measures.ScoredDoc(q, document, -float(rank))
        for q in queries
        for rank, document in enumerate(run.get(q, ()))
    ]
    named = measures(serves)
    by_measure = {name: dict.fromkeys(queries, 0.0) for name in named}
    names = {measure: name for name, measure in named.items()}
    for one in ir_measures.iter_calc(list(named.values()), qrels, found):
        by_measure[names[one.measure]][one.query_id] = float(one.value)
    return Scores(by_measure)


def interval(values: Sequence[float]) -> tuple[float, float]:
    """The mean's 95 % interval by the percentile bootstrap (Efron 1979)."""
    if len(set(values)) < 2:
        mean = float(np.mean(values)) if values else 0.0
        return mean, mean
    found = stats.bootstrap(
        (np.asarray(values),),
        np.mean,
        n_resamples=RESAMPLES,
        method="percentile",
        rng=np.random.default_rng(SEED),
    ).confidence_interval
    return float(found.low), float(found.high)


def chance(one: Mapping[str, float], other: Mapping[str, float]) -> float:
    """How likely a difference so large is by chance alone: the paired randomisation test.

    Two-sided, on the means of the same queries (Smucker, Allan and Carterette 2007).
    """
    differences = np.array([one[query] - other[query] for query in one])
    if not differences.any():
        return 1.0
    found = stats.permutation_test(
        (differences,),
        np.mean,
        permutation_type="samples",
        n_resamples=RESAMPLES,
        rng=np.random.default_rng(SEED),
    )
    return float(found.pvalue)
