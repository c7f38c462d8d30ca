"""The few sentences of a section that are quoted as the answer."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import accumulate

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.records.sections import Line
from assistant.search.excerpt import MOST, excerpt, leans

FIT = "A chain needs half an inch of slack."
LEANING = "It settles while the rubber is new."


def quoted(sentences: str, cosines: Sequence[float]) -> list[int]:
    """The places of the sentences quoted; '-' is one that leans on the one before it."""
    lines = [Line(LEANING if s == "-" else FIT, at) for at, s in enumerate(sentences)]
    return [line.line for line in excerpt(lines, np.array(cosines, dtype=np.float32))]


def best_at(place: int, count: int) -> list[float]:
    return [float(at == place) for at in range(count)]


@pytest.mark.parametrize("sentences", ["", "x", "xxx", "xxxxx", "x--x-", "-xx", "-xxxx"])
def test_a_short_section_is_quoted_whole_and_in_order(sentences: str) -> None:
    best = best_at(len(sentences) - 1, len(sentences))
    assert quoted(sentences, best) == [*range(len(sentences))]


@pytest.mark.parametrize("best", range(12))
def test_of_a_long_section_five_in_a_row_are_quoted_the_best_among_them(best: int) -> None:
    found = quoted("x" * 12, best_at(best, 12))
    assert best in found
    assert found == [*range(found[0], found[0] + MOST)]


def test_the_row_of_five_with_the_likest_neighbours_is_quoted() -> None:
    #          0    1    2    3    4    5    6    7    8
    cosines = [0.1, 0.1, 0.1, 0.6, 0.9, 0.5, 0.5, 0.1, 0.1]
    assert quoted("xxxxxxxxx", cosines) == [2, 3, 4, 5, 6]


def test_of_rows_alike_the_first_is_quoted() -> None:
    assert quoted("xxxxxxxxx", best_at(6, 9)) == [2, 3, 4, 5, 6]


def test_a_row_that_would_begin_with_it_gives_way_to_one_that_does_not() -> None:
    cosines = [0.1, 0.1, 0.1, 0.6, 0.9, 0.5, 0.5, 0.1, 0.1]
    assert quoted("xx-xxxxxx", cosines) == [3, 4, 5, 6, 7]


def test_where_every_row_would_begin_so_the_quotation_reaches_back() -> None:
    """To the sentence that the best one leans on, however few follow or however far it is."""
    assert quoted("x----x-x", best_at(6, 8)) == [5, 6, 7]
    assert quoted("x------x", best_at(6, 8)) == [0, 1, 2, 3, 4]


def longest_lean(sentences: str) -> int:
    return max(accumulate(sentences, lambda run, s: (run + 1) * (s == "-"), initial=0))


@st.composite
def told(draw: st.DrawFn) -> tuple[str, list[float]]:
    """Sentences of which the first is fit to begin, and how like the question each is."""
    sentences = "x" + "".join(draw(st.lists(st.sampled_from("x--"), max_size=15)))
    cosine = st.integers(-100, 100).map(lambda cents: cents / 100)
    count = len(sentences)
    return sentences, draw(st.lists(cosine, min_size=count, max_size=count))


@given(told())
def test_a_quotation_is_a_row_of_at_most_five_that_never_begins_with_it(
    one: tuple[str, list[float]],
) -> None:
    sentences, cosines = one
    found = quoted(sentences, cosines)
    assert 1 <= len(found) <= MOST
    assert found == [*range(found[0], found[-1] + 1)]
    assert sentences[found[0]] != "-"


@given(told().filter(lambda one: longest_lean(one[0]) < MOST))
def test_a_quotation_holds_the_best_sentence(one: tuple[str, list[float]]) -> None:
    """Five or more that lean in a row leave no room for both it and a fit beginning."""
    sentences, cosines = one
    assert int(np.argmax(np.array(cosines, dtype=np.float32))) in quoted(sentences, cosines)


@pytest.mark.parametrize(
    "sentence",
    [
        "It settles.",
        "It's worn.",
        "THIS holds.",
        "Then the toilet runs on.",
        "So, hook it on.",
        "They sit on pegs.",
        "But not always.",
        "That is enough.",
        "These wear first.",
        "'It will do' is no answer.",
        "Otherwise it leaks.",
    ],
)
def test_a_sentence_that_points_back_leans(sentence: str) -> None:
    assert leans(sentence)


@pytest.mark.parametrize(
    "sentence",
    [
        "A chain needs slack.",
        "Theirs is another valve.",
        "Itching rubber is unknown.",
        "The chain: it hangs.",
        "Thin chains tangle.",
        "",
    ],
)
def test_a_sentence_that_stands_alone_does_not_lean(sentence: str) -> None:
    assert not leans(sentence)


@pytest.mark.parametrize("sentence", ["It’s worn.", "They're worn.", '"It" is worn.', "It: worn."])
def test_marks_about_a_word_do_not_hide_that_it_leans(sentence: str) -> None:
    assert leans(sentence)
