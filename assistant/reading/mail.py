"""A mail as its plain words: headers, the readable part, the names of what is attached.

Real mail breaks its own standard: charsets that lie or are missing, parts within parts, HTML
only. Whatever is still readable is read; only bytes that are no mail at all are an error.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from email import message_from_bytes, policy
from email.errors import HeaderParseError
from email.header import Header, decode_header, make_header
from email.message import Message
from email.utils import parsedate_to_datetime

from assistant.errors import LetterError
from assistant.reading.decoding import decoded, text_of_html

_KNOWN_HEADER = re.compile(
    rb"(?:from|to|cc|date|subject|message-id|mime-version|content-type|received|return-path"
    rb"|delivered-to|reply-to|x-[\w-]+|dkim-signature|content-transfer-encoding)[ \t]*:",
    re.IGNORECASE,
)
_MOST_PARTS = 500


@dataclass(frozen=True)
class Mail:
    """A mail's subject, day of sending, readable text, and the names of its attachments."""

    subject: str | None
    sent: date | None
    body: str
    attachments: tuple[str, ...]


def looks_like_mail(source: bytes) -> bool:
    """Whether the bytes begin with a mail's headers: two or more that are known."""
    lines = source[:4000].lstrip(b"\xef\xbb\xbf").splitlines()
    if lines and lines[0].startswith(b"From "):
        lines = lines[1:]
    known = 0
    for line in lines:
        if _KNOWN_HEADER.match(line):
            known += 1
        elif not line[:1].isspace() or not line.strip():
            break
    return known >= 2


def read_mail(source: bytes, where: str) -> Mail:
    """The mail in `source`; `LetterError` naming `where` if it is none."""
    top = re.split(rb"\r?\n\r?\n", source.lstrip(), maxsplit=1)[0][:100_000]
    if b"\x00" in top or not _KNOWN_HEADER.search(top):
        raise LetterError(where, "is no mail that can be read", "save the mail again as .eml")
    try:
        message = message_from_bytes(source.lstrip(b"\xef\xbb\xbf\r\n"), policy=policy.compat32)
        leaves = list(_leaves(message))
    except RecursionError as fault:
        problem = "holds parts within parts without end"
        raise LetterError(where, problem, "copy its words into a plain text file") from fault
    return Mail(_header(message, "subject"), _sent(message), _body(leaves), _names(leaves))


def _leaves(message: Message) -> Iterator[tuple[Message, bool]]:
    """Parts that hold no parts, in order, and whether each is an alternative to another."""
    waiting: list[tuple[Message, bool]] = [(message, False)]
    for _ in range(_MOST_PARTS):
        if not waiting:
            return
        part, alternative = waiting.pop()
        inner = part.get_payload()
        if isinstance(inner, list):
            among = alternative or part.get_content_type() == "multipart/alternative"
            waiting.extend((p, among) for p in reversed(inner) if isinstance(p, Message))
        else:
            yield part, alternative


def _is_attached(part: Message) -> bool:
    disposition = part.get_content_disposition()
    if part.get_content_maintype() == "text" and part.get_content_subtype() in ("plain", "html"):
        return disposition == "attachment" or (disposition == "inline" and bool(_filename(part)))
    return True


def _body(leaves: list[tuple[Message, bool]]) -> str:
    readable = [leaf for leaf in leaves if not _is_attached(leaf[0])]
    plain = [(_plain_text(p), among) for p, among in readable if p.get_content_subtype() != "html"]
    has_plain_choice = any(text.strip() for text, among in plain if among)
    pieces = []
    for part, among in readable:
        if part.get_content_subtype() != "html":
            pieces.append(_plain_text(part))
        elif not (among and has_plain_choice):
            pieces.append(text_of_html(_raw_text(part)))
    return "\n\n".join(piece.strip("\r\n") for piece in pieces if piece.strip())


def _raw_text(part: Message) -> str:
    payload = part.get_payload(decode=True)
    if not isinstance(payload, bytes):
        return ""
    try:
        charset = part.get_content_charset()
    except (LookupError, UnicodeError):
        charset = None  # the charset's own name is garbled
    return decoded(payload, charset).replace("\r\n", "\n").replace("\r", "\n")


def _plain_text(part: Message) -> str:
    text = _raw_text(part)
    if str(part.get_param("format", "")).lower() != "flowed":
        return text
    return _unflowed(text, delete_space=str(part.get_param("delsp", "")).lower() == "yes")


def _unflowed(text: str, *, delete_space: bool) -> str:
    """Soft line breaks undone (RFC 3676, section 4)."""
    lines: list[str] = []
    goes_on = False
    for line in text.split("\n"):
        quoted = line.startswith(">")
        line = line if quoted else line.removeprefix(" ")
        if goes_on and not quoted:
            lines[-1] += line
        else:
            lines.append(line)
        goes_on = line.endswith(" ") and line != "-- " and not quoted
        if goes_on and delete_space:
            lines[-1] = lines[-1][:-1]
    return "\n".join(lines)


def _header(message: Message, name: str) -> str | None:
    value = message.get(name)
    if value is None:
        return None
    try:
        text = str(make_header(decode_header(value)))
    except (HeaderParseError, LookupError, UnicodeError, ValueError):
        text = str(value)  # wrongly encoded: as it stands
    if isinstance(value, Header) or re.search("[\udc80-\udcff]", text):
        text = decoded(str(value).encode("utf-8", "surrogateescape"), None)
    text = " ".join(text.split())
    return text or None


def _sent(message: Message) -> date | None:
    value = message.get("date")
    if value is None:
        return None
    try:
        return parsedate_to_datetime(str(value)).date()
    except (TypeError, ValueError, OverflowError, IndexError):
        return None  # a date that cannot be read is a date not told


def _filename(part: Message) -> str | None:
    try:
        return part.get_filename()
    except (LookupError, UnicodeError, ValueError, TypeError):
        return None


def _names(leaves: list[tuple[Message, bool]]) -> tuple[str, ...]:
    attached = [part for part, _ in leaves if _is_attached(part)]
    return tuple(_filename(part) or part.get_content_type() for part in attached)
