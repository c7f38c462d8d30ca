"""A customer's letter: a mail, a text file or typed words, as a `Text` and what came with it."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from pathlib import Path

from assistant.errors import LetterError
from assistant.reading.decoding import is_html, readable, text_of_html
from assistant.reading.mail import looks_like_mail, read_mail
from assistant.reading.said import masked_spans
from assistant.reading.text import Text


@dataclass(frozen=True)
class Letter:
    """What was said, and when; `attachments` are file names (or kinds of those without)."""

    text: Text
    sent: date | None = None
    subject: str | None = None
    attachments: tuple[str, ...] = ()
    is_mail: bool = False


def read_letter(source: bytes, *, is_mail: bool, where: str = "the message") -> Letter:
    """The letter in some bytes; `LetterError` naming `where` if it is not readable."""
    if not source.strip():
        return letter_from_text("")
    if is_mail:
        mail = read_mail(source, where)
        return Letter(
            _text(mail.body, mail.subject), mail.sent, mail.subject, mail.attachments, True
        )
    text = readable(source, None)
    if text is None:
        raise LetterError(where, "holds no text", "save the letter as plain text or as .eml")
    return letter_from_text(text_of_html(text) if is_html(text) else text)


def letter_from_text(words: str) -> Letter:
    """The letter that somebody typed or pasted."""
    return Letter(_text(words.replace("\r\n", "\n").replace("\r", "\n"), None))


def load_letter(path: Path) -> Letter:
    """The letter in a file: a mail by its suffix or its headers, else plain text or HTML."""
    try:
        source = path.read_bytes()
    except FileNotFoundError as fault:
        raise LetterError(str(path), "there is no such file", "check its name") from fault
    except IsADirectoryError as fault:
        raise LetterError(str(path), "is a folder", "name one letter in it") from fault
    except OSError as fault:
        problem = f"cannot be read ({fault.strerror or 'unknown fault'})"
        raise LetterError(str(path), problem, "check who may read it") from fault
    is_mail = path.suffix.lower() == ".eml" or looks_like_mail(source)
    return read_letter(source, is_mail=is_mail, where=str(path))


def _text(body: str, subject: str | None) -> Text:
    """The subject is part of what is said: it stands first, then a blank line."""
    raw = f"{subject}\n\n{body}" if subject else body
    body_at = len(subject) + 2 if subject else 0
    return Text(raw, masked_spans(raw, body_at))
