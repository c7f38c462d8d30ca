"""What each ranking finds for a query: words, meaning, wordings, and all of them fused."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping

from assistant.search.fusion import fused
from assistant.search.index import DEPTH, Index
from assistant.search.passages import Passage
from assistant.search.vectors import Vectors

Ranked = list[str]  # documents, best first
Run = Mapping[str, Ranked]  # by query
SYSTEMS = ("lexical", "dense", "wording", "fused")


def rankings(
    index: Index,
    query: str,
    meaning: Vectors,
    audience: str,
    document: Callable[[Passage], str],
) -> dict[str, Ranked]:
    """The documents that each ranking finds, best first; `document` names that of a passage.

    Each goes as deep as what it gives to the fusion.
    """
    allowed = index.allowed(audience)
    dense, _ = index.by_meaning(meaning, DEPTH, allowed)
    lexical = index.by_words(query, DEPTH, allowed)
    wording = index.by_wording(meaning, DEPTH, allowed)
    together = [place for place, _ in fused(dense, lexical, wording)]
    places = {"lexical": lexical, "dense": dense, "wording": wording, "fused": together}
    return {
        system: _once(document(index.passages[place]) for place in places[system])
        for system in SYSTEMS
    }


def _once(documents: Iterable[str]) -> Ranked:
    """A document counts where its first passage stands."""
    return list(dict.fromkeys(documents))
