"""Letters as they really come: endless, empty, garbled, in any encoding, quoted, all pictures.

Each has one outcome that is right for it; nothing is named for noise, and nothing breaks.
"""

from __future__ import annotations

import random
import time
from datetime import date
from functools import cache

import pytest
from demonstration import PART_NO, models, shop

from assistant.answers.answer import Reply
from assistant.answers.reply import reply
from assistant.reading.letters import Letter, letter_from_text, read_letter

TODAY = date(2026, 11, 25)
ASKED = (
    "Our toilet is a Quellwick Tamsel and the stamp in the tank says JUN 14 1988. "
    "The flapper leaks. Which one do I need?"
)
PART = ("part", "PBK-6230")  # quellwick-tamsel-c; seals.csv, fitment.csv E0142
OTHERS = set(models()) - {"Quellwick Tamsel"}
PROSE = (
    "The garden was lovely this spring and my sister came to visit us with her two dogs, who "
    "like the river. "
)
SENT = b"From: a@example.com\r\nTo: b@example.com\r\nSubject: a seal\r\n"


def answered(letter: Letter) -> Reply:
    return reply(shop(), letter, audience="customers", today=TODAY)


def outcome(letter: Letter) -> tuple[str, str | None]:
    """The outcome of the one answer, and the part named first."""
    (answer,) = answered(letter).answers
    return str(answer.outcome), answer.parts[0].part_no if answer.parts else None


def names_nothing(letter: Letter) -> bool:
    """Whether no answer names or mentions a part."""
    answers = answered(letter).answers
    assert all(a.text.strip() for a in answers)
    return not any(a.parts or a.also_fits or PART_NO.search(a.text) for a in answers)


def mail(body: bytes, kind: str) -> Letter:
    head = SENT + f"Content-Type: {kind}\r\nContent-Transfer-Encoding: 8bit\r\n\r\n".encode()
    return read_letter(head + body, is_mail=True)


def long_letter(signs: int) -> str:
    half = (PROSE * (signs // len(PROSE)))[: (signs - len(ASKED)) // 2]
    return f"{half}\n\n{ASKED}\n\n{half}"


@cache
def _took(signs: int) -> tuple[float, tuple[str, str | None]]:
    began = time.process_time()
    found = outcome(letter_from_text(long_letter(signs)))
    return time.process_time() - began, found


def test_a_question_is_found_in_two_hundred_thousand_signs_of_prose() -> None:
    assert len(long_letter(200_000)) > 199_000
    assert _took(200_000)[1] == PART


def test_the_time_grows_with_the_length_and_no_faster() -> None:
    outcome(letter_from_text(ASKED))  # so that loading the tables is not counted
    short, long = _took(50_000)[0], _took(200_000)[0]
    assert long / short < 8, f"{short:.2f} s for 50,000 signs, {long:.2f} s for 200,000"


def _letters(chosen: random.Random) -> str:
    return "".join(chosen.choices("abcdefghijklmnopqrstuvwxyz      .,?", k=8000))


def _signs(chosen: random.Random) -> str:
    return "".join(chr(chosen.randrange(33, 0x2FFF)) for _ in range(4000))


def _numbers(chosen: random.Random) -> str:
    return " ".join(str(chosen.randrange(100)) for _ in range(2000))


@pytest.mark.parametrize("seed", range(4))
@pytest.mark.parametrize("noise", [_letters, _signs, _numbers])
def test_nothing_is_named_for_noise(noise: object, seed: int) -> None:
    assert callable(noise)
    assert names_nothing(letter_from_text(noise(random.Random(seed))))


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("", "hand over"),  # a greeting, and what would help
        ("  \n\t\n ", "hand over"),
        ("🚽💧😡🔧" * 50, "hand over"),
        ("?!?!", "hand over"),
        ("\x00\x01\x02", "hand over"),
        ("qwrtz plmk xxvv", "ask"),
        ("the toilet toilet toilet " * 400, "ask"),
        ("PBK " * 500, "ask | hand over"),
    ],
)
def test_a_letter_without_a_word_to_go_by_gets_a_question_or_a_person(
    words: str, expected: str
) -> None:
    letter = letter_from_text(words)
    assert outcome(letter) in [(accepted, None) for accepted in expected.split(" | ")]
    assert names_nothing(letter)


def test_emoji_between_the_words_change_nothing() -> None:
    letter = letter_from_text("🚽 Quellwick 💧 Tamsel 1988 😡 which flapper 🔧?")
    assert outcome(letter) == PART


@pytest.mark.parametrize("charset", ["iso-8859-1", "utf-16", "koi8-r", "utf-8", "cp1252"])
@pytest.mark.parametrize("declared", ["as it is", "us-ascii", "x-none", "utf-8"])
def test_a_mail_is_answered_in_any_charset_rightly_declared_or_not(
    charset: str, declared: str
) -> None:
    greeting = "Здравствуйте! " if charset == "koi8-r" else "Grüße aus Übersee! "
    kind = f"text/plain; charset={charset if declared == 'as it is' else declared}"
    assert outcome(mail((greeting + ASKED).encode(charset), kind)) == PART


def test_a_mail_of_html_alone_is_answered() -> None:
    page = (
        "<html><head><style>p {color: red}</style><title>PBK-6308</title></head><body>"
        f"<p>{ASKED.replace('. ', '.</p><p>')}</p><script>made(1975)</script></body></html>"
    )
    letter = mail(page.encode(), "text/html; charset=utf-8")
    assert outcome(letter) == PART
    assert not answered(letter).facts.has("part_no")  # the page's title is not said


@pytest.mark.parametrize("body", [b"", b"   \r\n\r\n", b"<html><body></body></html>"])
def test_an_empty_mail_gets_a_question(body: bytes) -> None:
    kind = "text/html" if body.startswith(b"<") else "text/plain"
    letter = mail(body, kind)
    (answer,) = answered(letter).answers
    assert answer.outcome == "ask"
    assert names_nothing(letter)


def test_only_the_new_words_of_a_quoted_thread_are_answered() -> None:
    thread = (
        f"{ASKED}\r\n\r\nOn Mon, 23 Nov 2026 the counter wrote:\r\n"
        "> Is it the Vorlamar Sunday of 2015? That takes PBK-7740.\r\n"
        ">> It is a Pembrill Gossamy from 2012.\r\n"
    )
    letter = mail(thread.encode(), "text/plain; charset=utf-8")
    assert outcome(letter) == PART
    assert "PBK-7740" not in answered(letter).text


@pytest.mark.parametrize("seed", range(40))
def test_a_question_cut_up_or_garbled_never_gets_a_part_of_another_toilet(seed: int) -> None:
    chosen = random.Random(seed)
    signs = list(ASKED)
    for _ in range(12):
        signs[chosen.randrange(len(signs))] = chosen.choice("abcdefgh 0123456789?.\n")
    for answer in answered(letter_from_text("".join(signs))).answers:
        if answer.parts:
            assert "Quellwick Tamsel" in answer.text
            assert not any(name in answer.text for name in OTHERS)
            assert all(part.condition for part in answer.parts)
