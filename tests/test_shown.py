"""What an answer's data lists is what its text may still say after the check."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest
from demonstration import shop

from assistant.answers import reply as way
from assistant.answers.check import Checked
from assistant.answers.check import check as real_check
from assistant.answers.reply import named_in, reply
from assistant.reading.letters import letter_from_text


def test_a_part_number_is_not_found_within_a_longer_one() -> None:
    assert "SL-20" not in named_in("**SL-204** fits, and SL-2041 too.")
    assert {"SL-204", "SL-2041"} <= named_in("**SL-204** fits, and SL-2041 too.")


def test_a_part_whose_sentence_fell_is_not_listed_as_fitting(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """Even where its number stands elsewhere in the text."""
    letter = letter_from_text("Which flapper fits a Quellwick Tamsel from 1988?")
    told = {"audience": "customers", "today": date(2026, 11, 25)}
    listed = reply(shop(), letter, **told).answers[0].also_fits  # type: ignore[arg-type]
    assert listed

    def strict(*given: object, **more: object) -> Checked:
        seen = real_check(*given, **more)  # type: ignore[arg-type]
        return replace(seen, taken_out=(*seen.taken_out, f"{listed[0]} fits it too."))

    monkeypatch.setattr(way, "check", strict)
    assert reply(shop(), letter, **told).answers[0].also_fits == listed[1:]  # type: ignore[arg-type]


def test_a_doubted_name_is_said_back_with_the_question() -> None:
    letter = letter_from_text("flapper for my Pembril Orsavel or whatever it is called")
    answer = reply(shop(), letter, audience="customers").answers[0]
    assert (answer.outcome, answer.parts) == ("ask", ())
    assert "It may be the Pembrill Orsavel." in answer.text
