"""Passages in order by their meaning, and by all rankings together.

The nearest vectors are held against numpy's sort of all of them, the fusion against the formula of
its paper in exact fractions. The order by words has `test_search_words.py`.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise
from pathlib import Path

import faiss
import numpy as np
import pytest
from demonstration import shop
from hypothesis import given
from hypothesis import strategies as st
from numpy.typing import NDArray

from assistant.search import vectors
from assistant.search.fusion import fused
from assistant.search.index import Index, Made, assemble, texts_of
from assistant.search.vectors import Vectors
from assistant.search.words import stems

# By meaning


def unit(seed: int, count: int, dimensions: int = 16) -> Vectors:
    drawn = np.random.default_rng(seed).normal(size=(count, dimensions))
    return (drawn / np.linalg.norm(drawn, axis=1, keepdims=True)).astype(np.float32)


def in_numpys_order(all_vectors: Vectors, query: Vectors, allowed: NDArray[np.bool_]) -> list[int]:
    order = np.argsort(-(all_vectors @ query), kind="stable")
    return [int(place) for place in order if allowed[place]]


@st.composite
def masks(draw: st.DrawFn) -> NDArray[np.bool_]:
    return np.array(draw(st.lists(st.booleans(), min_size=1, max_size=70)), dtype=bool)


@given(masks(), st.integers(0, 999), st.integers(0, 80))
def test_the_nearest_are_numpys_nearest_of_those_allowed(
    allowed: NDArray[np.bool_], seed: int, count: int
) -> None:
    held, query = unit(seed, len(allowed)), unit(seed + 1000, 1)[0]
    places, products = vectors.nearest(vectors.index_of(held), query, count, allowed)
    assert places.tolist() == in_numpys_order(held, query, allowed)[:count]
    assert products == pytest.approx(held[places] @ query, abs=1e-6)


@pytest.mark.parametrize("seed", range(5))
def test_without_a_mask_the_nearest_of_all_are_found(seed: int) -> None:
    held, query = unit(seed, 500, 384), unit(seed + 1000, 1, 384)[0]
    places, _ = vectors.nearest(vectors.index_of(held), query, 50)
    assert places.tolist() == in_numpys_order(held, query, np.ones(500, dtype=bool))[:50]


def test_no_more_are_found_than_there_are() -> None:
    places, products = vectors.nearest(vectors.index_of(unit(1, 3)), unit(2, 1)[0], 10)
    assert (sorted(places.tolist()), len(products)) == ([0, 1, 2], 3)


def test_where_nothing_is_allowed_or_nothing_there_nothing_is_found() -> None:
    query = unit(2, 1)[0]
    for held, allowed in ((unit(1, 3), np.zeros(3, dtype=bool)), (unit(1, 0), None)):
        places, products = vectors.nearest(vectors.index_of(held), query, 5, allowed)
        assert (places.tolist(), products.tolist()) == ([], [])


# By meaning, among many: an inverted file, which looks into the nearest cells only


@pytest.fixture
def few_are_many(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(vectors, "EXACT_UP_TO", 100)


def clustered(seed: int, count: int, clusters: int = 100) -> Vectors:
    """Vectors about some centres, as those of texts lie about their subjects."""
    centres = unit(7, clusters, 32)
    rng = np.random.default_rng(seed)
    drawn = centres[rng.integers(clusters, size=count)] + 0.1 * rng.normal(size=(count, 32))
    return (drawn / np.linalg.norm(drawn, axis=1, keepdims=True)).astype(np.float32)


@pytest.mark.usefixtures("few_are_many")
def test_up_to_the_limit_the_index_is_exact_and_above_it_an_inverted_file() -> None:
    assert isinstance(vectors.index_of(unit(1, 100)), faiss.IndexFlatIP)
    assert isinstance(vectors.index_of(unit(1, 101)), faiss.IndexIVF)


@pytest.mark.usefixtures("few_are_many")
def test_the_inverted_file_finds_nearly_all_that_an_exact_search_finds() -> None:
    held = clustered(1, 3000)
    index = vectors.index_of(held)
    everything = np.ones(len(held), dtype=bool)
    recalled = [
        len({*vectors.nearest(index, query, 10)[0].tolist()} & {*best[:10]})
        for query in clustered(2, 100)
        if (best := in_numpys_order(held, query, everything))
    ]
    assert sum(recalled) / 1000 >= 0.95


@pytest.mark.usefixtures("few_are_many")
def test_the_inverted_file_looks_into_a_part_of_its_cells() -> None:
    index = vectors.index_of(clustered(1, 3000))
    assert isinstance(index, faiss.IndexIVF)
    assert 0 < index.nprobe < index.nlist / 2


@pytest.mark.usefixtures("few_are_many")
def test_the_inverted_file_finds_only_what_is_allowed_best_first() -> None:
    held = clustered(1, 3000)
    index, allowed = vectors.index_of(held), np.arange(3000) % 3 == 0
    recalled = 0
    for query in clustered(2, 20):
        places, products = vectors.nearest(index, query, 10, allowed)
        assert allowed[places].all()
        assert all(above >= below for above, below in pairwise(products))
        recalled += len({*places.tolist()} & {*in_numpys_order(held, query, allowed)[:10]})
    assert recalled / 200 >= 0.95


@pytest.mark.usefixtures("few_are_many")
@pytest.mark.parametrize(
    ("count", "off_by"), [(100, 0), (300, 2**-11)], ids=["exact", "inverted file"]
)
def test_vectors_come_back_from_an_index_and_from_its_file(
    count: int, off_by: float, tmp_path: Path
) -> None:
    """An inverted file may keep numbers of half the width, with a fraction of 11 bits."""
    held = unit(1, count)
    index = vectors.index_of(held)
    vectors.save(index, tmp_path / "passages.faiss")
    kept = vectors.load(tmp_path / "passages.faiss")
    assert np.abs(vectors.all_of(index) - held).max() <= off_by
    assert vectors.all_of(kept).tolist() == vectors.all_of(index).tolist()
    (found, _), (again, _) = (vectors.nearest(one, held[7], 5) for one in (index, kept))
    assert found.tolist() == again.tolist()
    assert found[0] == 7


# Rankings together


def by_the_paper(*rankings: Sequence[int]) -> dict[int, Fraction]:
    """Cormack, Clarke and Buettcher 2009: the sum over rankings of 1 / (k + rank), with k = 60."""
    scores: dict[int, Fraction] = {}
    for ranking in rankings:
        for place in ranking:
            rank = 1 + ranking.index(place)
            scores[place] = scores.get(place, Fraction(0)) + Fraction(1, 60 + rank)
    return scores


@pytest.mark.parametrize(
    ("rankings", "scores"),
    [
        ([[7, 3], [3, 9]],
         {3: Fraction(1, 62) + Fraction(1, 61), 7: Fraction(1, 61), 9: Fraction(1, 62)}),
        ([[4, 2], [2, 4]],
         {2: Fraction(1, 62) + Fraction(1, 61), 4: Fraction(1, 61) + Fraction(1, 62)}),
        ([[5], []], {5: Fraction(1, 61)}),
        ([[9], [1], [5]], {1: Fraction(1, 61), 5: Fraction(1, 61), 9: Fraction(1, 61)}),
        ([[], []], {}),
    ],
)  # fmt: skip
def test_a_place_adds_up_a_share_from_each_ranking(
    rankings: list[list[int]], scores: dict[int, Fraction]
) -> None:
    assert by_the_paper(*rankings) == scores
    found = fused(*rankings)
    assert [place for place, _ in found] == [*scores]
    assert dict(found) == pytest.approx({place: float(one) for place, one in scores.items()})


rankings_of_twelve = st.lists(st.integers(0, 11), unique=True)


@given(rankings_of_twelve, rankings_of_twelve)
def test_the_order_is_that_of_exact_fractions_and_ties_go_to_the_lower_place(
    one: list[int], other: list[int]
) -> None:
    scores = by_the_paper(one, other)
    found = fused(one, other)
    assert [place for place, _ in found] == sorted(scores, key=lambda p: (-scores[p], p))
    assert [score for _, score in found] == pytest.approx([float(scores[p]) for p, _ in found])


# The index, over the shop's own passages, with vectors drawn at random in place of a model's

QUERY = unit(99, 1)[0]
SLACK = "slack of the chain"


def drawn_index() -> tuple[Index, Vectors]:
    """The index, and the vectors of its passages."""
    passages = shop().content.passages
    held = unit(3, len(texts_of(passages, ())))
    return assemble(Made("none", "", {}, "0"), passages, (), held), held[: len(passages)]


def likest_wordings(index: Index) -> list[float]:
    """The cosine of each passage's likest wording; the wordings follow the passages."""
    cosines = iter((unit(3, len(texts_of(index.passages, ()))) @ QUERY)[len(index.passages) :])
    return [max(float(next(cosines)) for _ in one.wordings) for one in index.passages]


def test_by_words_are_those_that_share_a_word_in_the_order_of_bm25() -> None:
    index, _ = drawn_index()
    found = index.by_words(SLACK, 1000)
    scores = index.lexical.scores(SLACK)
    assert {*found} == {
        at
        for at, passage in enumerate(index.passages)
        if {"slack", "chain"} & {*stems(passage.words)}
    }
    assert found == sorted(found, key=lambda place: (-scores[place], place))
    assert index.by_words(SLACK, 3) == found[:3]


def test_by_words_leaves_out_what_is_not_allowed_and_keeps_the_order() -> None:
    index, _ = drawn_index()
    everything = index.by_words(SLACK, 1000)
    allowed = np.ones(len(index.passages), dtype=bool)
    allowed[everything[::2]] = False
    assert index.by_words(SLACK, 1000, allowed) == everything[1::2]


def test_by_wording_a_passage_stands_where_its_likest_wording_does() -> None:
    index, _ = drawn_index()
    likest = likest_wordings(index)
    best = sorted(range(len(likest)), key=lambda place: -likest[place])
    assert index.by_wording(QUERY, 20) == best[:20]
    allowed = np.arange(len(likest)) % 2 == 0
    assert index.by_wording(QUERY, 20, allowed) == [at for at in best if allowed[at]][:20]


def test_what_is_found_stands_in_the_order_of_all_rankings_together() -> None:
    index, _ = drawn_index()
    by_meaning, by_words = index.by_meaning(QUERY, 50)[0], index.by_words(SLACK, 50)
    by_wording = index.by_wording(QUERY, 50)
    hits = index.find(SLACK, QUERY, 200)
    assert [(hit.place, hit.fused) for hit in hits] == fused(by_meaning, by_words, by_wording)
    for alone, others in (
        (by_meaning, by_words + by_wording),
        (by_words, by_meaning + by_wording),
        (by_wording, by_meaning + by_words),
    ):
        assert {*alone} - {*others}, "some are found in one ranking alone"
    assert index.find(SLACK, QUERY, 7) == hits[:7]


def test_what_is_found_has_its_cosine_and_that_of_its_likest_wording() -> None:
    index, held = drawn_index()
    likest = likest_wordings(index)
    for hit in index.find(SLACK, QUERY, 200):
        assert hit.passage == index.passages[hit.place]
        assert hit.likeness == pytest.approx(float(held[hit.place] @ QUERY), abs=1e-6)
        assert hit.wording == pytest.approx(likest[hit.place], abs=1e-6)


@pytest.mark.usefixtures("few_are_many")
def test_among_many_what_is_found_has_its_cosine_too() -> None:
    index, held = drawn_index()
    hits = index.find(SLACK, QUERY, 100)
    assert hits
    assert [hit.likeness for hit in hits] == pytest.approx(
        [float(held[hit.place] @ QUERY) for hit in hits], abs=1e-3
    )


def test_customers_find_no_note_for_staff_and_staff_find_all() -> None:
    index, _ = drawn_index()
    count = len(index.passages)
    for_staff = {at for at, passage in enumerate(index.passages) if passage.audience == "staff"}
    assert for_staff
    for found in (
        lambda allowed: index.by_meaning(QUERY, count, allowed)[0],
        lambda allowed: index.by_wording(QUERY, count, allowed),
        lambda allowed: index.by_words("seal tank flapper ring chain water note", count, allowed),
    ):
        assert for_staff & {*found(index.allowed("staff"))}
        assert not for_staff & {*found(index.allowed("customers"))}
