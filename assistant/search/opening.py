"""Opens the index of a shop for searching; builds or renews it where that is needed."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from assistant.errors import SearchError
from assistant.search import store
from assistant.search.build import NotKept, Progress, build, is_current
from assistant.search.content import Content
from assistant.search.index import Index
from assistant.search.limits import Limits, limits_for
from assistant.search.model import Encoder
from assistant.search.searching import Search

Say = Callable[[str], None]


def open_search(
    content: Content,
    folder: Path,
    encoder: Encoder,
    say: Say = lambda _: None,
    progress: Progress | None = None,
    limits: Limits | None = None,
) -> Search:
    """The search of a shop, with an index of just its notes as they stand.

    `say` is told in a sentence when there is something to build. Without `limits` those fitted
    for the model count.

    Raises:
        SearchError: the index is damaged, or was built with another model.
        KnowledgeError: the model cannot be loaded, or no limits are fitted for it.
    """
    limits = limits or limits_for(encoder.name, folder.parent)
    index = store.read(folder)
    if index is not None:
        _same_model(index, encoder, folder)
    if index is None or not is_current(index, content, encoder):
        index = _made(content, folder, encoder, index, say, progress)
    return Search(index, encoder, limits)


def _same_model(index: Index, encoder: Encoder, folder: Path) -> None:
    made = index.made
    if made.model != encoder.name:
        raise SearchError(
            str(folder),
            f"the index was built with the model '{made.model}', and '{encoder.name}' is set",
            store.build_again(folder),
        )
    if made.weights != encoder.weights:
        raise SearchError(
            str(folder),
            f"the index was built with other weights of the model '{made.model}' than it has now",
            store.build_again(folder),
        )


def _made(
    content: Content,
    folder: Path,
    encoder: Encoder,
    old: Index | None,
    say: Say,
    progress: Progress | None,
) -> Index:
    say(_beginning(len(content.notes), old))
    try:
        return build(content, folder, encoder, progress).index
    except NotKept as error:  # an answer is worth more than a kept index
        say(f"{error} The index is used without being kept.")
        return error.built.index


def _beginning(notes: int, old: Index | None) -> str:
    """What is about to be built, and what it will not do."""
    none = "There are no notes yet, so questions of how and why cannot be answered"
    if old is not None:
        told = "The notes have changed since the index was built: renewing it."
        return told if notes else f"{told} {none}."
    if not notes:
        return f"{none}: building an index without them."
    return f"There is no index yet: building one from {notes} note{'s' * (notes != 1)}."
