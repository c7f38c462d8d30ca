"""Float, adjusting, colour, material, pack."""

from __future__ import annotations

from assistant.answers.check.attributes import Attribute
from assistant.answers.check.line import Line


def _yes(line: Line, stretch: str) -> bool:
    return not {"no", "not", "without"} & set(stretch.split())


def _named(kind: str, line: Line, stretch: str) -> tuple[str, ...] | None:
    return tuple(v for item in line.within(stretch, kind) for v in item.values[kind]) or None


def _pack(line: Line, stretch: str) -> int | None:
    found = line.within(stretch, "I")
    if found:
        return int(found[0].values["I"])
    return 1 if {"singly", "one", "single"} & set(stretch.split()) else None


def _same(value: bool | None, said: bool) -> bool | None:
    return None if value is None else value == said


ATTRIBUTES = (
    Attribute(
        name="float",
        read=_yes,
        test=lambda tables, seal, said: _same(seal.float, said),
        post=("with a float", "without a float", "with no float"),
        clause=(
            "{s:part}? (has|have) (a|no) (float|floats)",
            "{s:part}? (comes|come) with a float",
        ),
    ),
    Attribute(
        name="adjustable",
        read=_yes,
        test=lambda tables, seal, said: _same(seal.adjustable, said),
        adj=("not? adjustable",),
        clause=("{s:part}? can not? be adjusted", "{s:part}? {is} not adjustable"),
    ),
    Attribute(
        name="colour",
        read=lambda line, stretch: _named("C", line, stretch),
        test=lambda tables, seal, said: None if seal.colour is None else seal.colour in said,
        adj=("{C}",),
        post=("in {C}",),
        clause=("{s:part}? comes in {C}",),
    ),
    Attribute(
        name="material",
        read=lambda line, stretch: _named("A", line, stretch),
        test=lambda tables, seal, said: None if seal.material is None else seal.material in said,
        adj=("{A}",),
        post=("(made)? (of|from|in) {A}",),
    ),
    Attribute(
        name="pack",
        read=_pack,
        test=lambda tables, seal, said: None if seal.pack is None else seal.pack == said,
        post=("in (packs|a pack) of (one|{I})", "(singly|one to a pack)"),
        clause=(
            "{s:part}? (comes|come|is sold|are sold|is packed) (in (packs|a pack) of (one|{I})"
            "|singly|one to a pack|{I} to a pack)",
            "a pack (holds|has) (one|{I})",
            "there are {I} in a pack",
        ),
    ),
)
