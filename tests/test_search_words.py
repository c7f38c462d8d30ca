"""Texts in order by their words: BM25, held against rank_bm25, and the stems that it compares."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Sequence
from fractions import Fraction
from pathlib import Path

import numpy as np
import pytest
from demonstration import shop
from hypothesis import given
from hypothesis import strategies as st
from numpy.typing import NDArray
from rank_bm25 import BM25Okapi

from assistant.search.lexical import Lexical, shared
from assistant.search.words import stems

K1, B = 1.2, 0.75


class RankBM25(BM25Okapi):
    """rank_bm25 with the inverse document frequency that never falls below zero.

    Okapi's own is log((N - n + 0.5) / (n + 0.5)), and rank_bm25 lifts what is negative to a quarter
    of the mean; the index adds 1 before the logarithm. Okapi also multiplies all by k1 + 1.
    """

    def _calc_idf(self, nd: dict[str, int]) -> None:
        for word, n in nd.items():
            self.idf[word] = math.log(1 + (self.corpus_size - n + 0.5) / (n + 0.5))


WORDS = ("chain", "slack", "flapper", "seat", "ball", "wire", "pegs", "ring", "tower", "dye")
corpora = st.lists(
    st.lists(st.sampled_from(WORDS), min_size=1, max_size=12).map(" ".join), min_size=1, max_size=8
)
queries = st.lists(st.sampled_from(WORDS), min_size=1, max_size=5).map(" ".join)
QUESTIONS = (
    "How much slack does a chain need?",
    "the flapper has gone slimy and swollen",
    "which ring goes under the tower, and how do I measure it",
    "food colouring in the tank, and the bowl is coloured after fifteen minutes",
    "why does it flush twice",
    "can I send a seal back that was wet",
)


def okapi(kind: type[BM25Okapi], texts: Sequence[str], query: str) -> NDArray[np.float64]:
    bm25 = kind([stems(text) for text in texts], k1=K1, b=B)
    scores: NDArray[np.float64] = bm25.get_scores(stems(query))
    return scores


def same_order(ours: NDArray[np.float32], theirs: NDArray[np.float64]) -> bool:
    """Whether what the others put clearly ahead is ahead here too."""
    ranked = np.argsort(-ours, kind="stable")
    falling = theirs[ranked]
    return bool(np.all(falling[1:] <= falling[:-1] + 1e-5 * (1 + falling.max())))


def test_bm25_by_hand() -> None:
    """Two texts of two words and of one, a mean of 3/2; 'chain' stands once in the first."""
    idf = math.log(1 + Fraction(3, 2) / Fraction(3, 2))
    length = 1 - Fraction(3, 4) + Fraction(3, 4) * 2 / Fraction(3, 2)
    score = idf * 1 / (1 + Fraction(6, 5) * length)
    scores = Lexical.of(["flapper chain", "flapper"]).scores("chain")
    assert scores == pytest.approx([score, 0])


@given(corpora, queries)
def test_bm25_gives_the_scores_of_rank_bm25_but_for_a_factor(texts: list[str], query: str) -> None:
    theirs = okapi(RankBM25, texts, query)
    assert Lexical.of(texts).scores(query) * (K1 + 1) == pytest.approx(theirs, rel=1e-4, abs=1e-5)


@given(corpora)
def test_a_word_in_fewer_than_half_of_the_texts_orders_them_as_okapi_does(
    texts: list[str],
) -> None:
    """There both inverse document frequencies are above zero, so that they do not change order."""
    lexical = Lexical.of(texts)
    found_in = Counter(word for text in texts for word in {*text.split()})
    for word in (word for word, n in found_in.items() if 2 * n < len(texts)):
        assert same_order(lexical.scores(word), okapi(BM25Okapi, texts, word))


@pytest.mark.parametrize("question", QUESTIONS)
def test_a_question_orders_the_shops_notes_as_rank_bm25_does(question: str) -> None:
    texts = [passage.words for passage in shop().content.passages]
    ours, theirs = Lexical.of(texts).scores(question), okapi(RankBM25, texts, question)
    assert same_order(ours, theirs)
    assert len({*ours.tolist()}) > 20


def test_every_rare_word_orders_the_shops_notes_as_okapi_does() -> None:
    texts = [passage.words for passage in shop().content.passages]
    cut = [stems(text) for text in texts]
    found_in = Counter(stem for held in cut for stem in {*held})
    lexical, theirs = Lexical.of(texts), BM25Okapi(cut, k1=K1, b=B)
    rare = [stem for stem, n in found_in.items() if 2 * n < len(texts) and stems(stem) == [stem]]
    assert len(rare) > 500
    for stem in rare:
        assert same_order(lexical.scores(stem), theirs.get_scores([stem])), stem


@pytest.mark.parametrize("query", ["porcelain", "", "how is it that you do", "?!"])
def test_a_query_that_shares_no_word_scores_nothing(query: str) -> None:
    assert Lexical.of(["flapper chain", "ball and wire"]).scores(query).tolist() == [0, 0]


@pytest.mark.parametrize("texts", [[], [""], ["the and of"], ["flapper", ""]])
def test_texts_without_a_word_are_no_fault(texts: list[str]) -> None:
    assert Lexical.of(texts).scores("chain").tolist() == [0] * max(1, len(texts))


def test_the_words_are_kept_in_a_folder(tmp_path: Path) -> None:
    made = Lexical.of(["flapper chain", "ball wire", "chain chain ring"])
    made.save(tmp_path / "words")
    kept = Lexical.load(tmp_path / "words")
    assert kept.scores("a ring for the chain").tolist() == made.scores("ring chain").tolist()
    assert kept.weights("ring chain seat") == made.weights("ring chain seat")


# The weight of words


def test_a_rarer_word_tells_more_and_an_unknown_one_most() -> None:
    lexical = Lexical.of(["flapper chain", "flapper", "flapper ball"])
    assert lexical.weights("a flapper, a chain and a spanner, a chain") == pytest.approx(
        {
            "flapper": math.log(1 + Fraction(1, 2) / Fraction(7, 2)),
            "chain": math.log(1 + Fraction(5, 2) / Fraction(3, 2)),
            "spanner": math.log(1 + Fraction(7, 2) / Fraction(1, 2)),
        }
    )


@pytest.mark.parametrize(
    ("text", "weight"),
    [
        ("The chains are slack.", 4),
        ("Chain, chain, chain.", 1),
        ("The slack of a wire.", 3),
        ("A ball.", 0),
        ("", 0),
    ],
)
def test_the_words_of_a_query_in_a_text_are_weighed(text: str, weight: float) -> None:
    assert shared({"chain": 1.0, "slack": 3.0}, text) == weight


def test_of_a_query_without_words_nothing_is_shared() -> None:
    assert shared({}, "chain") == 0


# Stems

# From the sample vocabulary on the Snowball project's page of its English stemmer:
# https://snowballstem.org/algorithms/english/stemmer.html
SNOWBALL = {
    "consign": ("consign", "consigned", "consigning", "consignment"),
    "consist": ("consist", "consisted", "consistency", "consistent", "consistently", "consists"),
    "knack": ("knack",),
    "knackeri": ("knackeries",),
    "knave": ("knaves",),
    "knavish": ("knavish",),
}


@pytest.mark.parametrize("stem", SNOWBALL)
def test_words_have_the_stems_that_snowball_publishes(stem: str) -> None:
    assert {*stems(" ".join(SNOWBALL[stem]))} == {stem}


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("flushes", "flush"),
        ("FLUSHED", "flushing"),
        ("the flapper's ears", "flapper ear"),
        ("the flapper’s ears", "flapper's ears"),
        ("leaks", "leaking"),
        ("toilet-seals", "toilet seal"),
        ("What is it? The ring!", "ring"),
    ],
)
def test_wordings_that_say_the_same_have_the_same_stems(one: str, other: str) -> None:
    assert stems(one) == stems(other) != []


@pytest.mark.parametrize(("one", "other"), [("peg", "pen"), ("2.5", "2"), ("tank", "thank you")])
def test_words_that_say_something_else_have_other_stems(one: str, other: str) -> None:
    assert stems(one) != stems(other)


def test_little_words_have_no_stems() -> None:
    assert stems("What is it that you don’t do with this, please?") == []
