"""What of a letter its writer says to the shop: all but greeting, sign-off and quotation."""

from __future__ import annotations

import re
from collections.abc import Iterable

from assistant.reading.quoted import Span, header_spans, is_reply, quoted_spans
from assistant.reading.signoff import footer_spans, greeting_spans, signoff_spans

_REPLY_MARK = re.compile(r"(?:\s*(?:re|fwd?|aw|wg)\s*:)+\s*", re.IGNORECASE)
_WORD = re.compile(r"[^\W_]{2,}|\d")
_SAYS_LITTLE = re.compile(
    r"\b(?:fyi|see (?:below|attached)|please (?:see|advise|help)|thanks?|hi|hello|below)\b",
    re.IGNORECASE,
)


def masked_spans(raw: str, body_at: int) -> tuple[tuple[int, int], ...]:
    """The places to mask, in order; `body_at` is where the body begins, after the subject.

    The only content is never masked: where little else is left, the quotation is kept but for
    the lines that name its sender, then the sign-off, then all.
    """
    subject = [m.span() for m in (_REPLY_MARK.match(raw, 0, body_at),) if m and m.end()]
    quoted = list(quoted_spans(raw, body_at))
    silent = not _says_something(raw, body_at, _with_courtesy(raw, body_at, quoted))
    if quoted and silent and not is_reply(raw, body_at):
        quoted = list(header_spans(raw, body_at))
    spans = _with_courtesy(raw, body_at, quoted)
    if not _says_anything(raw, body_at, spans) and not _says_anything(
        raw, 0, [(body_at, len(raw))]
    ):
        spans = quoted if _says_anything(raw, body_at, quoted) else []
    return _merged(raw, [*subject, *spans])


def _with_courtesy(raw: str, body_at: int, quoted: list[Span]) -> list[Span]:
    """The quotation, and the greeting and sign-off of what stands around it."""
    footers = list(footer_spans(raw, body_at))
    hidden = _blanked(raw, [*quoted, *footers])
    end = len(hidden.rstrip())
    greeting = list(greeting_spans(hidden, body_at))
    at = max([body_at, *(span[1] for span in greeting)])
    return [*quoted, *footers, *greeting, *signoff_spans(hidden, at, max(end, at))]


def _blanked(raw: str, spans: Iterable[Span]) -> str:
    pieces, at = [], 0
    for start, end in _merged(raw, spans):
        pieces += [raw[at:start], re.sub(r"[^\n]", " ", raw[start:end])]
        at = end
    return "".join([*pieces, raw[at:]])


def _says_anything(raw: str, body_at: int, spans: Iterable[Span]) -> bool:
    return _WORD.search(_blanked(raw, spans), body_at) is not None


def _says_something(raw: str, body_at: int, spans: Iterable[Span]) -> bool:
    left = _SAYS_LITTLE.sub(" ", _blanked(raw, spans)[body_at:])
    return _WORD.search(left) is not None


def _merged(raw: str, spans: Iterable[Span]) -> tuple[Span, ...]:
    """In order, without overlap; those with nothing between them are one."""
    merged: list[Span] = []
    for start, end in sorted(spans):
        if start >= end:
            continue
        if merged and not raw[merged[-1][1] : start].strip():
            merged[-1] = merged[-1][0], max(end, merged[-1][1])
        else:
            merged.append((start, end))
    return tuple(merged)
