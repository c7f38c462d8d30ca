"""Names spelled out letter by letter: 'O R S A V A L', 'P-a-l-l-o-w'.

Who spells a name means every letter of it: the spelled one stands above the same name written out.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from assistant.reading.facts import Fact
from assistant.reading.rewritten import Piece, Rewritten
from assistant.reading.text import Text

# 'TW stroke 6A': a number read out over a telephone.
_READ_OUT = re.compile(
    r"(?<=(?<!\w)[A-Za-z])[A-Za-z]{0,2}( (?:stroke|slash|dash|hyphen|point|dot) )(?=[A-Za-z]?\d)"
)
_SIGNS = {"stroke": "/", "slash": "/", "dash": "-", "hyphen": "-", "point": ".", "dot": "."}
_SPELLED = re.compile(r"(?<![\w'-])[A-Za-z](?:([ .-]{1,2})[A-Za-z]){3,14}(?![\w'-])")


class Spelled(Rewritten):
    """`text` with spelled names as words, and `back` to lead a fact read there into the message."""

    def __init__(self, message: Text) -> None:
        self.places = [m.span() for m in _SPELLED.finditer(message.visible)]
        names = [Piece(s, e, _joined(message.visible[s:e])) for s, e in self.places]
        signs = [
            Piece(m.start(1), m.end(1), _SIGNS[m[1].strip().lower()])
            for m in _READ_OUT.finditer(message.visible)
        ]
        apart = [s for s in signs if all(s.end <= n.start or n.end <= s.start for n in names)]
        super().__init__(message, sorted([*names, *apart], key=lambda piece: piece.start))


def _joined(letters: str) -> str:
    return re.sub(r"[^A-Za-z]", "", letters).capitalize()


def only_as_spelled(names: Iterable[Fact], places: list[tuple[int, int]]) -> list[Fact]:
    """The names, without other models where one was spelled."""
    found = list(names)
    spelled = [f for f in found if any(s <= f.start and f.end <= e for s, e in places)]
    models = [f for f in spelled if f.name in ("model", "unlisted")]
    if not models:
        return found
    return [f for f in found if f.name != "model" or f in models]
