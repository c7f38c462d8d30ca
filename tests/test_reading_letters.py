"""Letters as they come: mails that break the standard, and what in them is not said to the shop."""

from __future__ import annotations

import re
from base64 import b64encode
from datetime import date
from email.message import EmailMessage
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.errors import LetterError
from assistant.reading.letters import letter_from_text, load_letter, read_letter


def said(letter: str) -> str:
    """What is left to read, with its blanks drawn together."""
    return " ".join(letter_from_text(letter).text.visible.split())


def mail(body: bytes, *headers: str) -> bytes:
    top = ["From: Sue <sue@home.example>", "Date: Mon, 3 Jun 2024 10:00:00 +0200", *headers]
    return "\r\n".join(top).encode() + b"\r\n\r\n" + body


@pytest.mark.parametrize(
    ("letter", "left"),
    [
        (
            "Hi, I need a flapper for my Foo Bar 1994 thanks",
            "I need a flapper for my Foo Bar 1994",
        ),
        ("Hi Dan,\n\nNeed a flapper.\n\nThanks, Bob Miller", "Need a flapper."),
        ("Dear Sir or Madam\nWhich seal?\nYours faithfully\nA. Velmora", "Which seal?"),
        ("hello there my toilet runs", "my toilet runs"),
        ("hi dan, toilet runs. thanks bob", "toilet runs."),
        ("Good morning Dan!\nthe seal leaks\nBest,\nVelmora\n", "the seal leaks"),
        ("Hello Dan - flapper leaks", "flapper leaks"),
        ("Hey guys need a flapper, thank you for your time, Sue", "need a flapper,"),
        ("To whom it may concern: the seal leaks", "the seal leaks"),
        ("Hi Foo Bar 1994 flapper please", "Foo Bar 1994 flapper please"),
        ("Hi", "Hi"),
        ("Thanks", "Thanks"),
        ("", ""),
    ],
)
def test_greeting_and_thanks_are_not_said(letter: str, left: str) -> None:
    assert said(letter) == left


@pytest.mark.parametrize(
    ("letter", "left"),
    [
        (
            "Need a flapper.\nThanks,\nBob Miller\n12 Oak St\nSpringvale, OH 44101\n(555) 201-3344",
            "Need a flapper.",
        ),
        ("Need a flapper.\n\nRegards\nSue Velmora\nsue@home.example", "Need a flapper."),
        ("my toilet runs\n-- \nBob\nBob's 3 Inch Flappers", "my toilet runs"),
        ("it leaks\n--\nears point up", "it leaks -- ears point up"),
        ("I need one. Thanks in advance.\nSent from my phone", "I need one."),
        ("Need a flapper for my toilet.\n\nBob Miller", "Need a flapper for my toilet."),
        ("Thanks\nThe model is Foo Bar 1994", "Thanks The model is Foo Bar 1994"),
        ("Foo Bar 1994\nflapper", "Foo Bar 1994 flapper"),
        ("Which flapper?\nThanks!\nBob\n\nPS ears point up", "Which flapper? PS ears point up"),
        (
            "Thanks for the help with my Velmora flapper",
            "Thanks for the help with my Velmora flapper",
        ),
        ("The flapper is\nOstrel", "The flapper is Ostrel"),
    ],
)
def test_a_signature_is_not_said_and_nothing_else_is_lost(letter: str, left: str) -> None:
    assert said(letter) == left


@pytest.mark.parametrize(
    ("letter", "left"),
    [
        ("It is 3 inch.\n\n> Which size?\n> Dan", "It is 3 inch."),
        ("> Which size?\n3 inch\n> Which year?\n1994", "3 inch 1994"),
        (
            "It is a Velmora.\n\nOn Mon, 3 Jun 2024 at 10:00, Shop <a@b.example> wrote:\n> Model?",
            "It is a Velmora.",
        ),
        (
            "It is a Velmora.\n\nOn Mon, 3 Jun 2024 at 10:00, Shop\n<a@b.example> wrote:\n\nModel?",
            "It is a Velmora.",
        ),
        ("The red one.\n\n-----Original Message-----\nFrom: Shop\nBlue?", "The red one."),
        ("The red one.\n\nFrom: Shop\nSent: Monday\nTo: me\n\nBlue?", "The red one."),
        (
            "Fyi\n\n---------- Forwarded message ---------\nFrom: Bob <b@x.example>\nDate: Mon\n"
            "Subject: flapper\nTo: <c@x.example>\n\nI need a flapper",
            "Fyi Subject: flapper I need a flapper",
        ),
        ("> only this", "> only this"),
        ("need flapper\nThanks\nBob\n\n> old words", "need flapper"),
    ],
)
def test_what_is_quoted_is_not_said_again(letter: str, left: str) -> None:
    assert said(letter) == left


def test_the_subject_is_said_first() -> None:
    letter = read_letter(mail(b"ears up", "Subject: Re: 3 inch flapper"), is_mail=True)
    assert letter.text.raw == "Re: 3 inch flapper\n\nears up"
    assert letter.text.visible == "    3 inch flapper\n\nears up"
    assert (letter.subject, letter.sent) == ("Re: 3 inch flapper", date(2024, 6, 3))


@pytest.mark.parametrize(
    ("charset", "body"),
    [
        ("utf-8", "2½ inch".encode()),
        ("windows-1252", "2½ inch".encode("cp1252")),
        ("utf-8", "2½ inch".encode("cp1252")),
        ("us-ascii", "2½ inch".encode()),
        ("no-such-charset", "2½ inch".encode()),
    ],
)
def test_a_charset_that_lies_does_no_harm(charset: str, body: bytes) -> None:
    header = f"Content-Type: text/plain; charset={charset}"
    assert read_letter(mail(body, header), is_mail=True).text.raw == "2½ inch"


def test_a_mail_without_any_charset_is_read() -> None:
    assert read_letter(mail("2½ inch’s".encode("cp1252")), is_mail=True).text.raw == "2½ inch’s"


def test_quoted_printable_and_base64_are_undone() -> None:
    headers = ("Content-Type: text/plain; charset=utf-8", "Content-Transfer-Encoding: ")
    printable = mail(b"2=C2=BD inch, the =\r\nred one", headers[0], headers[1] + "quoted-printable")
    assert read_letter(printable, is_mail=True).text.raw == "2½ inch, the red one"
    coded = mail(b64encode("2½ inch".encode()), headers[0], headers[1] + "base64")
    assert read_letter(coded, is_mail=True).text.raw == "2½ inch"


def test_flowed_lines_are_joined() -> None:
    body = b"the ears \r\npoint up\r\n  two\r\n"
    letter = read_letter(mail(body, "Content-Type: text/plain; format=flowed"), is_mail=True)
    assert letter.text.raw == "the ears point up\n two"


def test_html_alone_is_shown_as_words() -> None:
    page = b"<html><style>p {color: red}</style><p>The <b>ears</b> point&nbsp;up</p><p>3 inch</p>"
    letter = read_letter(mail(page, "Content-Type: text/html"), is_mail=True)
    assert letter.text.raw.split() == ["The", "ears", "point", "up", "3", "inch"]


def nested() -> EmailMessage:
    message = EmailMessage()
    message["From"], message["Subject"] = "sue@home.example", "leak"
    message.set_content("plain words")
    message.add_alternative("<p>other words</p>", subtype="html")
    message.add_attachment(b"\xff\xd8", maintype="image", subtype="jpeg", filename="tank.jpg")
    message.add_attachment(b"", maintype="application", subtype="pdf")
    return message


def test_of_alternatives_the_plain_one_is_read_and_files_are_named() -> None:
    letter = read_letter(nested().as_bytes(), is_mail=True)
    assert letter.text.raw == "leak\n\nplain words"
    assert letter.attachments == ("tank.jpg", "application/pdf")
    assert letter.sent is None


def test_an_empty_plain_part_gives_way_to_html() -> None:
    message = EmailMessage()
    message["From"] = "sue@home.example"
    message.set_content(" \n")
    message.add_alternative("<p>it leaks</p>", subtype="html")
    assert read_letter(message.as_bytes(), is_mail=True).text.raw.strip() == "it leaks"


def test_an_encoded_subject_and_an_impossible_date_are_read_as_far_as_they_go() -> None:
    source = b"From: a@b.example\nDate: 35 Foo\nSubject: =?utf-8?q?2=C2=BD_inch?=\n\nit leaks"
    letter = read_letter(source, is_mail=True)
    assert (letter.subject, letter.sent) == ("2½ inch", None)


def test_a_mail_without_a_body_says_its_subject() -> None:
    letter = read_letter(mail(b"", "Subject: red flapper"), is_mail=True)
    assert letter.text.visible.split() == ["red", "flapper"]


@pytest.mark.parametrize("source", [b"", b" \r\n\n"])
@pytest.mark.parametrize("is_mail", [True, False])
def test_an_empty_letter_is_no_fault(source: bytes, is_mail: bool) -> None:
    assert read_letter(source, is_mail=is_mail).text.raw == ""


@pytest.mark.parametrize("source", [bytes(range(256)) * 20, b"just words, no headers"])
def test_bytes_that_are_no_mail_are_refused(source: bytes) -> None:
    with pytest.raises(LetterError) as refused:
        read_letter(source, is_mail=True, where="a.eml")
    assert refused.value.where == "a.eml"
    assert str(refused.value) == (
        "a.eml: is no mail that can be read; save the mail again as .eml."
    )


def test_bytes_that_are_no_text_are_refused() -> None:
    with pytest.raises(LetterError, match="holds no text; save the letter as plain text"):
        read_letter(b"\x89PNG\r\n\x00\x00\x00\rIHDR\x00\xff\x00\x81" * 50, is_mail=False)


def test_a_missing_file_and_a_folder_are_named(tmp_path: Path) -> None:
    with pytest.raises(LetterError, match=r"gone\.txt: there is no such file; check its name\."):
        load_letter(tmp_path / "gone.txt")
    with pytest.raises(LetterError, match="is a folder; name one letter in it"):
        load_letter(tmp_path)


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "cp1252", "utf-16"])
def test_a_text_file_is_read_in_its_encoding(tmp_path: Path, encoding: str) -> None:
    file = tmp_path / "letter.txt"
    file.write_bytes('The opening is 2½" – the ears point up, it’s red.'.encode(encoding))
    assert load_letter(file).text.raw == 'The opening is 2½" – the ears point up, it’s red.'


def test_a_mail_is_known_by_suffix_or_headers_and_a_page_by_its_tags(tmp_path: Path) -> None:
    for name, source in (
        ("a.eml", b"Subject: leak\n\nit runs"),
        ("b.txt", b"Subject: leak\nFrom: a@b.example\n\nit runs"),
        ("c.html", b"<html><body><p>leak</p>it runs</body></html>"),
    ):
        (tmp_path / name).write_bytes(source)
        assert load_letter(tmp_path / name).text.raw.split() == ["leak", "it", "runs"]


def test_parts_within_parts_without_end_are_refused_or_read() -> None:
    deep = b"From: a@b.example\n"
    for at in range(3000):
        deep += b'Content-Type: multipart/mixed; boundary="b%d"\n\n--b%d\n' % (at, at)
    with pytest.raises(LetterError, match="parts within parts"):
        read_letter(deep + b"\n\nit runs", is_mail=True)


def test_a_huge_letter_is_read() -> None:
    body = ("my toilet runs and runs > < \n" * 8000).encode()
    letter = read_letter(mail(body, "Subject: long"), is_mail=True)
    assert len(letter.text.visible) == len(letter.text.raw) > 200_000


LINES = st.lists(
    st.sampled_from(
        [
            "Hi Dan,",
            "> old",
            "On Monday Bob wrote:",
            "Thanks",
            "Bob",
            "-- ",
            "it leaks",
            "",
            "From: x",
            "To: y",
            "-----Original Message-----",
            "PS ears up",
            "Sent from my phone",
            "12 Oak St",
        ]
    ),
    max_size=12,
).map("\n".join)


@given(st.one_of(st.text(), LINES))
def test_masking_keeps_every_place_and_never_all_that_is_said(letter: str) -> None:
    text = letter_from_text(letter).text
    assert len(text.visible) == len(text.raw) == len(text.said)
    for masked, raw in zip(text.visible, text.raw, strict=True):
        assert masked in (raw, " ")
    if re.search(r"[^\W_]{2}", text.raw):
        assert re.search(r"\w", text.visible)


@given(st.binary(max_size=300))
def test_any_bytes_are_read_or_refused_in_one_sentence(source: bytes) -> None:
    for is_mail in (True, False):
        try:
            letter = read_letter(source, is_mail=is_mail)
        except LetterError as refused:
            sentence = str(refused)
        else:
            sentence = "the message: is read."
            assert len(letter.text.said) == len(letter.text.raw)
        assert re.fullmatch(r"the message: [^.]+\.(?:eml\.)?", sentence)


@given(st.binary(max_size=200), st.sampled_from(["base64", "quoted-printable", "8bit", "x-odd"]))
def test_any_body_in_any_wrapping_is_read(body: bytes, wrapping: str) -> None:
    source = mail(body, f"Content-Transfer-Encoding: {wrapping}", "Content-Type: text/html")
    assert isinstance(read_letter(source, is_mail=True).text.raw, str)
