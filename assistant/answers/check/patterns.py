"""A small language for patterns over lines, so that a frame reads like what it accepts.

    {part} (fits|suits) it too?

A word stands for itself, `( | )` for a choice, `? * +` follow a word, group or piece.
`{X}` with a kind's letter is an item, `{name}` a piece of `PIECES`, and `{label:name}` keeps
what it matched under a label.
"""

from __future__ import annotations

import re
from functools import cache

_TOKEN = re.compile(r"\{(?:(\w+):)?(\w+)\}|[()|?*+]|[^\s(){}|?*+]+")
_SIGNS = {"open": r"\(", "close": r"\)"}

PIECES: dict[str, str] = {}


def compiled(pattern: str) -> re.Pattern[str]:
    """The pattern as a regular expression over lines."""
    return re.compile(expression(pattern))


@cache
def expression(pattern: str, labels: bool = True) -> str:
    """The pattern as the text of a regular expression."""
    parts: list[str] = []
    for token in _TOKEN.finditer(pattern):
        label, name = token.groups()
        word = token.group()
        if name is not None:
            piece = _piece(name)
            parts.append(f"(?P<{label}>{piece})" if label and labels else f"(?:{piece})")
        elif word == "(":
            parts.append("(?:")
        elif word in ")|?*+":
            parts.append(word)
        else:
            parts.append(rf"(?: {re.escape(word)}(?![^ ]))")
    return "".join(parts)


def _piece(name: str) -> str:
    if len(name) == 1 and name.isupper():
        return rf" <[A-Z]*{name}[A-Z]*\d+>"
    if name in _SIGNS:
        return f" {_SIGNS[name]}(?![^ ])"
    return expression(PIECES[name], labels=False)


@cache
def needed(pattern: str) -> tuple[str, ...]:
    """Words (with their blank) and kinds of item that every match of a pattern holds.

    It lets most frames be set aside for a line without trying them anywhere.
    """
    found: list[str] = []
    depth = 0
    tokens = list(_TOKEN.finditer(pattern))
    if any(t.group() == "|" for t in _outside(tokens)):
        return ()
    for token, following in zip(tokens, [*tokens[1:], None], strict=True):
        word = token.group()
        optional = following is not None and following.group() in "?*"
        depth += {"(": 1, ")": -1}.get(word, 0)
        if depth or optional or word in ")|?*+":
            continue
        name = token.group(2)
        if name is None:
            found.append(f" {word}")
        elif len(name) == 1 and name.isupper():
            found.append(name)
    return tuple(found)


def _outside(tokens: list[re.Match[str]]) -> list[re.Match[str]]:
    """Tokens that stand in no group."""
    found, depth = [], 0
    for token in tokens:
        depth += {"(": 1, ")": -1}.get(token.group(), 0)
        if not depth:
            found.append(token)
    return found
