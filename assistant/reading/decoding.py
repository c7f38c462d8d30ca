"""Bytes into words, whatever they were written in."""

from __future__ import annotations

import html
import re

from charset_normalizer import from_bytes
from inscriptis import get_text  # type: ignore[import-untyped]
from lxml.etree import LxmlError  # type: ignore[import-untyped,unused-ignore]

_MARKS = "½¼¾⅓⅔⅛°’‘“”–—…•×±²³éèêáàâäöüßñçóíúæøåÄÖÜÉ£€¢®™©\u00a0«»"
_TAG = re.compile(r"<[^<>]{0,5000}>")
_HTML = re.compile(r"\s*(?:<!doctype html|<html\b|<head\b|<body\b)", re.IGNORECASE)
_GUESSED_FROM = 100_000  # bytes; more of them do not make the guess better, only slower


def decoded(source: bytes, charset: str | None) -> str:
    """The words of `source`: as declared, else UTF-8, else the likeliest; never an error."""
    text = readable(source, charset)
    return text if text is not None else source.decode("utf-8", "replace").replace("\x00", " ")


def readable(source: bytes, charset: str | None) -> str | None:
    """The words of `source`, or `None` where it holds no text at all."""
    for name in (charset, "utf-8-sig"):
        text = _strictly(source, name)
        if text is not None and "\x00" not in text:
            return text
    if (text := _western(source)) is not None:
        return text
    guess = from_bytes(source[:_GUESSED_FROM]).best()
    if guess is None:
        return None
    text = source.decode(guess.encoding, "replace").lstrip("\ufeff")
    return None if "\x00" in text else text


def _strictly(source: bytes, name: str | None) -> str | None:
    if name is None:
        return None
    try:
        return source.decode(name)
    except (LookupError, UnicodeError):
        return None  # the declared charset lies or does not exist: the next is tried


def _western(source: bytes) -> str | None:
    """Windows-1252, where each of the few odd bytes is then a sign that letters do hold.

    A short letter has too few of them for a guess by frequency: one ½ could be anything.
    """
    text = _strictly(source, "cp1252")
    if text is None or "\x00" in text:
        return None
    odd = [c for c in text if c > "\x7f"]
    few = len(odd) <= max(3, len(text) // 10)
    return text if few and all(c in _MARKS for c in odd) else None


def is_html(text: str) -> bool:
    """Whether a text begins as an HTML page does."""
    return _HTML.match(text) is not None


def text_of_html(page: str) -> str:
    """What an HTML page shows, line by line."""
    if not _TAG.sub("", page).strip():
        return ""
    try:
        return str(get_text(page))
    except (LxmlError, ValueError, RecursionError):
        # A page too broken to lay out still holds its words.
        return html.unescape(_TAG.sub(" ", page))
