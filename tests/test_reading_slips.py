"""Slips of the pen in ordinary words are mended for reading; names and English words are not."""

from __future__ import annotations

from datetime import date

import pytest
from demonstration import shop
from hypothesis import given
from hypothesis import strategies as st

from assistant.reading.facts import Fact, Facts
from assistant.reading.letters import letter_from_text
from assistant.reading.names.slip import mended
from assistant.reading.read import read
from assistant.reading.rewritten import Piece, Rewritten
from assistant.reading.text import Text

TODAY = date(2026, 11, 25)


def told(letter: str) -> Facts:
    return read(letter_from_text(letter), shop().names, TODAY)


@pytest.mark.parametrize(
    ("written", "meant"),
    [
        ("watter", "water"), ("flsuh", "flush"), ("cannister", "canister"), ("tolet", "toilet"),
        ("hinje", "hinge"), ("wich", "which"), ("smal", "small"), ("oppening", "opening"),
        # English words, though they stand near a word of the trade
        ("later", None), ("lash", None), ("matter", None), ("minuets", None),
        # near nothing, or too short to say
        ("calderquist", None), ("teh", None),
    ],
)  # fmt: skip
def test_a_slip_is_read_as_the_ordinary_word_that_was_meant(
    written: str, meant: str | None
) -> None:
    assert mended(written) == meant


def test_a_fact_cites_the_words_as_they_were_written() -> None:
    letter = "wen you flsuh the watter comes up in teh bowl neerly to the brim"
    (symptom,) = told(letter).named("symptom")[:1]
    assert letter[symptom.start : symptom.end] == symptom.words
    assert "watter" in symptom.words


def test_a_name_of_the_table_is_never_taken_for_a_slip() -> None:
    for full, builds in shop().tables.models.items():
        facts = told(f"Which seal fits a {full}?")
        assert {c for f in facts.named("model") for c in f.choices} >= {full}, builds


@pytest.mark.parametrize(
    "letter",
    [
        "flapper for calderquist mode 3 pls",
        "i have a bellweather grand, which flapper",
        "I have a Bellweather Grand from 1998. Which flapper?",
        "sumthing calld a pollinder, need a flaper",
        "quellwick pallowdene 1990 flapper",
    ],
)
def test_a_name_that_is_no_word_is_told_to_be_in_no_table(letter: str) -> None:
    assert told(letter).named("unlisted")


@pytest.mark.parametrize(
    "letter",
    [
        "my quellwick tiolet leaks",
        "i have a runny toilet and need advise",
        "seal for my old toilet please",
        "I have an Uncle Bob special, ha ha, which flapper?",
    ],
)
def test_an_ordinary_word_or_a_slip_of_one_names_no_toilet(letter: str) -> None:
    assert not told(letter).named("unlisted")


@given(
    text=st.text(alphabet="abc ", min_size=6, max_size=40),
    start=st.integers(0, 5),
    width=st.integers(0, 5),
    words=st.text(alphabet="xyz", max_size=8),
)
def test_a_place_outside_what_was_rewritten_leads_back_to_itself(
    text: str, start: int, width: int, words: str
) -> None:
    piece = Piece(start, min(start + width, len(text)), words)
    there = Rewritten(Text(text), [piece])
    assert there.text.raw == text[: piece.start] + words + text[piece.end :]
    for place in range(piece.end, len(text)):
        new = there.there(place)
        fact = Fact(name="colour", value=("red",), words="", start=new, end=new + 1)
        back = there.back(fact)
        assert (back.start, back.end, back.words) == (place, place + 1, text[place])


def test_words_that_begin_inside_a_piece_cite_it_whole() -> None:
    there = Rewritten(Text("it dribls by"), [Piece(3, 9, "dribbles")])
    assert there.text.raw == "it dribbles by"
    inside = Fact(name="colour", value=("red",), words="", start=6, end=9)  # 'bbl'
    back = there.back(inside)
    assert (back.start, back.end, back.words) == (3, 9, "dribls")


def test_a_letter_without_slips_is_read_as_it_stands() -> None:
    message = Text("it runs")
    assert Rewritten(message, []).text is message
