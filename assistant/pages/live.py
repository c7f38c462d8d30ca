"""A shop that is being served: its knowledge as it stands on disk, the last that was sound.

A changed file is picked up within seconds. What is being answered goes on with the knowledge it
began with; a change that cannot be read changes nothing, and is told.
"""

from __future__ import annotations

import threading
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from assistant.errors import UserError
from assistant.search.build import Progress
from assistant.search.limits import limits_for
from assistant.search.model import Encoder
from assistant.search.opening import open_search
from assistant.search.searching import Search
from assistant.shop import Shop, open_shop

EVERY = 2.0  # seconds between two looks at the files

Say = Callable[[str], None]
_Stamp = frozenset[tuple[str, int, int]]


@dataclass(frozen=True, eq=False)
class Knowledge:
    """A shop and the search of its notes, which belong together."""

    shop: Shop
    search: Search


class Live:
    """The knowledge of a shop's folder, renewed while it is served."""

    def __init__(
        self,
        folder: Path,
        encoder: Encoder,
        say: Say = lambda _: None,
        progress: Progress | None = None,
    ) -> None:
        """Loads it.

        Raises:
            UserError: it cannot be read; the sentence says what is wrong.
        """
        self._folder, self._encoder, self._say = folder, encoder, say
        self._stamp = _stamp(folder)
        self._held = self._opened(progress)
        self._stop = threading.Event()
        self.problem: str | None = None  # why the files as they stand now are not served

    @property
    def now(self) -> Knowledge:
        """The knowledge to answer with; take it once for each answer."""
        return self._held

    def look_again(self) -> bool:
        """Renews what changed. Whether it is another than before."""
        stamp = _stamp(self._folder)
        if stamp == self._stamp:
            return False
        self._stamp = stamp
        try:
            held = self._opened()
        except UserError as error:
            self.problem = str(error)
            self._say(f"{error} The knowledge from before is served on.")
            return False
        self._held, self.problem = held, None
        self._say("The changed notes and tables are served now.")
        return True

    def watch(self) -> None:
        """Looks again every few seconds, in a thread of its own, until `close`."""
        threading.Thread(target=self._watching, name="knowledge", daemon=True).start()

    def close(self) -> None:
        """Ends the watch."""
        self._stop.set()

    def _watching(self) -> None:
        while not self._stop.wait(EVERY):
            self.look_again()

    def _opened(self, progress: Progress | None = None) -> Knowledge:
        shop = open_shop(self._folder)
        limits = limits_for(shop.settings.model, shop.folder)
        search = open_search(
            shop.content, shop.index, self._encoder, self._say, progress, limits=limits
        )
        shop.names, shop.counter  # noqa: B018 - made ready now, and not for the first visitor
        return Knowledge(shop, search)


def _stamp(folder: Path) -> _Stamp:
    """Which files there are, how long, and when each was written last."""
    found = set()
    for path in (folder / "knowledge").rglob("*"):
        try:
            told = path.stat()
        except OSError:  # gone between the two
            continue
        if path.is_file():
            found.add((str(path), told.st_mtime_ns, told.st_size))
    return frozenset(found)
