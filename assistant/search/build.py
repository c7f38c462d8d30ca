"""Builds the index, embedding only what is new, and keeps it."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from importlib.metadata import version
from pathlib import Path

import numpy as np
from filelock import FileLock

from assistant.errors import SearchError
from assistant.search import store
from assistant.search.content import Content
from assistant.search.index import Index, Made, assemble, texts_of, vectors_of
from assistant.search.model import Encoder
from assistant.search.vectors import Vectors

STRETCH = 256  # texts between two reports of progress; a multiple of the model's batch

Progress = Callable[[int, int], None]  # texts embedded so far, and in all


@dataclass(frozen=True)
class Built:
    """An index, how many texts were embedded anew and how many taken over, and whether written."""

    index: Index
    embedded: int
    taken_over: int
    changed: bool = True


class NotKept(SearchError):  # noqa: N818 - the index is there, only not kept
    """The folder cannot be written; `built` is the index all the same."""

    def __init__(self, error: SearchError, built: Built) -> None:
        self.built = built
        super().__init__(error.where, error.problem, error.mend)


def build(
    content: Content, folder: Path, encoder: Encoder, progress: Progress | None = None
) -> Built:
    """The index of the content in a folder, built where it is missing, damaged or out of date.

    The model is loaded only if a text is new. Builds of one folder wait for each other.

    Raises:
        NotKept: the folder cannot be written.
        KnowledgeError: the model cannot be loaded.
    """
    with _alone(folder) as refused:
        old = _readable(folder)
        if old is not None and is_current(old, content, encoder):
            store.sweep(folder)
            return Built(old, 0, 0, changed=False)
        built = renewed(content, encoder, old, progress)
        if refused is not None:
            raise NotKept(refused, built)
        try:
            store.write(folder, built.index)
        except SearchError as error:
            raise NotKept(error, built) from error
        return built


def is_current(index: Index, content: Content, encoder: Encoder) -> bool:
    """Whether an index is of this content and this model."""
    return _same_model(index, encoder) and index.made.content == content.digests


def renewed(
    content: Content, encoder: Encoder, old: Index | None, progress: Progress | None = None
) -> Built:
    """The index of the content, with the vectors of an older one where texts are the same."""
    passages, descriptions = content.passages, content.descriptions
    texts = texts_of(passages, descriptions)
    known = _known(old) if old is not None and _same_model(old, encoder) else {}
    different = dict.fromkeys(texts)
    fresh = [text for text in different if text not in known]
    done = 0
    for stretch in _stretches(fresh):
        known.update(zip(stretch, encoder.encode(stretch), strict=True))
        done += len(stretch)
        if progress is not None:
            progress(done, len(fresh))
    made = Made(encoder.name, encoder.weights, content.digests, version("counterhand"))
    rows = [known[text] for text in texts]
    stacked = np.array(rows, dtype=np.float32) if rows else np.zeros((0, 1), dtype=np.float32)
    index = assemble(made, passages, descriptions, stacked)
    return Built(index, len(fresh), len(different) - len(fresh))


def _stretches(texts: Sequence[str]) -> Iterator[list[str]]:
    """Texts in stretches of like length, the longest first, so that little is padded."""
    ordered = sorted(texts, key=lambda text: -len(text))
    for first in range(0, len(ordered), STRETCH):
        yield ordered[first : first + STRETCH]


def _known(index: Index) -> dict[str, Vectors]:
    """Every vector of an index by its text."""
    texts = texts_of(index.passages, index.descriptions)
    return dict(zip(texts, vectors_of(index), strict=True))


def _same_model(index: Index, encoder: Encoder) -> bool:
    return (index.made.model, index.made.weights) == (encoder.name, encoder.weights)


def _readable(folder: Path) -> Index | None:
    """The index there, if it can be read; a damaged one is built again."""
    try:
        return store.read(folder)
    except SearchError:
        return None


@contextmanager
def _alone(folder: Path) -> Iterator[SearchError | None]:
    """Waits until no other build is at the folder; gives the error where it cannot be written."""
    lock = FileLock(folder / ".lock")
    try:
        folder.mkdir(parents=True, exist_ok=True)
        lock.acquire()
    except OSError as error:
        how = f"cannot be written ({error.strerror or error})"
        yield SearchError(str(folder), how, "make it writable, and build")
        return
    try:
        yield None
    finally:
        lock.release()
