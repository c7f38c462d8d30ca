"""A seal's style and its name."""

from __future__ import annotations

from typing import Any

from assistant.answers.check.attributes import Attribute
from assistant.answers.check.line import Line


def _named(kind: str, line: Line, stretch: str) -> tuple[Any, ...] | None:
    return tuple(v for item in line.within(stretch, kind) for v in item.values[kind]) or None


ATTRIBUTES = (
    Attribute(
        name="style",
        read=lambda line, stretch: _named("T", line, stretch),
        test=lambda tables, seal, said: seal.style in said,
        adj=("{T}",),
    ),
    Attribute(
        name="name",
        read=lambda line, stretch: _named("S", line, stretch),
        test=lambda tables, seal, said: seal.part_no in said,
        adj=("{S}",),
        clause=("{s:part}? {is} (called|known as) the? {S}", "its name is the? {S}"),
    ),
)
