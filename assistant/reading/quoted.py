"""Where a letter repeats an older one: quoted lines, and what stands below a reply or forward."""

from __future__ import annotations

import re
from collections.abc import Iterator

Span = tuple[int, int]

_QUOTED_LINE = re.compile(r"^[ \t]{0,3}>.*$", re.MULTILINE)
_WROTE = re.compile(
    r"^[ \t]*(?:on\b[^\n]{3,150}(?:\n[^\n]{0,100}){0,2}?\bwrote:"
    r"|[^\n]{0,100}<[^\s<>]{3,80}@[^\s<>]{3,80}>[^\n]{0,20}wrote:)[ \t]*$",
    re.IGNORECASE | re.MULTILINE,
)
_BLOCK = re.compile(
    r"^[ \t]*(?:-{2,}[ \t]*(?:original message|forwarded message|forwarded by)[^\n]{0,80}"
    r"|begin forwarded message:"
    r"|\*?from:\*?[^\n]{1,200}\n(?:[ \t]*\n)?[ \t]*\*?(?:sent|date|to|reply-to):[^\n]{0,200})",
    re.IGNORECASE | re.MULTILINE,
)
_HEADER_LINE = re.compile(
    r"^[ \t>]*(?:\*?(?:from|sent|date|to|cc|reply-to)\s?:\*?[^\n]*"
    r"|-{2,}[ \t]*(?:original|forwarded)[^\n]*|begin forwarded message:|on\b[^\n]{3,150}wrote:)$",
    re.IGNORECASE | re.MULTILINE,
)


def quoted_spans(raw: str, body_at: int) -> Iterator[Span]:
    """Places of the body that somebody else wrote, or that the writer wrote before."""
    end_of_said = len(raw)
    block = _BLOCK.search(raw, body_at)
    if block:
        end_of_said = block.start()
    for wrote in _WROTE.finditer(raw, body_at, end_of_said):
        if _is_marked_below(raw, wrote.end()):
            yield wrote.span()
        else:
            end_of_said = wrote.start()
            break
    for line in _QUOTED_LINE.finditer(raw, body_at, end_of_said):
        yield line.span()
    if end_of_said < len(raw):
        yield end_of_said, len(raw)


def header_spans(raw: str, body_at: int) -> Iterator[Span]:
    """Only the lines that name sender and time, where the old letter is all there is to read."""
    return (line.span() for line in _HEADER_LINE.finditer(raw, body_at))


def is_reply(raw: str, body_at: int) -> bool:
    """Whether what is quoted was answered ('On ... wrote:') and not passed on."""
    return _WROTE.search(raw, body_at) is not None


def _is_marked_below(raw: str, place: int) -> bool:
    """Whether the lines after 'wrote:' carry the mark of a quotation themselves."""
    return raw[place : place + 200].lstrip().startswith(">")
