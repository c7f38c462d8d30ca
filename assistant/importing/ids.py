"""Which row of a table a row of the sheet is."""

from __future__ import annotations

import re
from collections.abc import Collection, Sequence
from dataclasses import dataclass

from assistant.importing.sheet import plain


@dataclass(frozen=True)
class Meant:
    """An id as the table has it, or as it would be new; `like` is one that only looks like it."""

    key: str
    known: bool
    like: str | None = None


class Ids:
    """A table's ids, found however many spaces a sheet puts into them."""

    def __init__(self, keys: Collection[str]) -> None:
        self._keys = keys
        self._by_plain = {plain(key): key for key in keys}
        self._by_look = {look(key): key for key in keys}

    def meant(self, spelled: Sequence[str]) -> Meant:
        """The id that the key cells of a sheet's row spell."""
        exact, seen = "/".join(spelled), "/".join(plain(part) for part in spelled)
        if exact in self._keys:
            return Meant(exact, known=True)
        if seen in self._by_plain:
            return Meant(self._by_plain[seen], known=True)
        return Meant(seen, known=False, like=self._by_look.get(look(seen)))


def look(key: str) -> str:
    """An id without case, spaces and strokes: what people take for the same number."""
    return re.sub(r"[\s_\-‐‑‒–—−]", "", plain(key)).casefold()
