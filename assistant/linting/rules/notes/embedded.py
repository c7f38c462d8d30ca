"""The index of the notes as they stand, and the model that made it, for rules about meaning."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from assistant.errors import KnowledgeError, SearchError
from assistant.linting.gathered import Gathered
from assistant.linting.rules.notes.once import once
from assistant.records.notes import Note

if TYPE_CHECKING:
    from assistant.search.index import Index
    from assistant.search.model import Encoder


@dataclass(frozen=True, eq=False)
class Embedded:
    """An index and its model."""

    index: Index
    encoder: Encoder


def embedded(gathered: Gathered, encoder: Encoder | None = None) -> Embedded | None:
    """The index by a model, or by the shop's own; `None` where there is none."""
    if encoder is not None:
        return Embedded(_index(gathered, encoder), encoder)
    found = by_own_model(gathered)
    return found if isinstance(found, Embedded) else None


@once
def by_own_model(gathered: Gathered) -> Embedded | KnowledgeError | None:
    """The index by the model that the settings name, or why it cannot be had.

    `None` where no note is searched, and where the settings cannot be read, which is told
    elsewhere.
    """
    from assistant.search.model import Model

    if gathered.settings is None or not any(map(is_searched, gathered.notes.values())):
        return None
    model = Model(gathered.settings.model)
    try:
        return Embedded(_index(gathered, model), model)
    except KnowledgeError as error:
        return error


def is_searched(note: Note) -> bool:
    """Whether answers are looked for in a note."""
    from assistant.search.passages import PHRASES

    return PHRASES not in note.tags and bool(note.sections)


def _index(gathered: Gathered, encoder: Encoder) -> Index:
    """The index kept in the shop's folder if it is of these notes; else one made anew.

    It is kept only where all could be read: else the next answer would have to build it again.
    """
    from assistant.search import store
    from assistant.search.build import NotKept, build, renewed
    from assistant.search.content import Content

    tables = gathered.tables
    content = Content(gathered.notes, tables.styles, tables.likenesses)
    folder = gathered.folder / "index"
    if gathered.faults:
        try:
            old = store.read(folder)
        except SearchError:
            old = None
        return renewed(content, encoder, old).index
    try:
        return build(content, folder, encoder).index
    except NotKept as error:
        return error.built.index
