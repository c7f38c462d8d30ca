"""A shop: one folder with knowledge/, index/ and eval/."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

from assistant.errors import KnowledgeError
from assistant.fitment.decide import Counter, counter_for
from assistant.reading.names import NameBook
from assistant.records.notes import Note, load_notes
from assistant.records.tables import Tables, load_tables
from assistant.search.content import Content
from assistant.settings import Settings, meant, read_settings

DEMO = Path(__file__).resolve().parent.parent  # the demonstration shop lies beside the code


@dataclass(frozen=True, eq=False)
class Shop:
    """A shop's knowledge, loaded once and never changed."""

    folder: Path
    settings: Settings
    tables: Tables
    notes: Mapping[str, Note]

    @cached_property
    def names(self) -> NameBook:
        """The names and numbers that letters may hold."""
        return NameBook(self.tables)

    @cached_property
    def counter(self) -> Counter:
        """The tables ready for deciding."""
        return counter_for(self.tables, self.settings.first)

    @cached_property
    def content(self) -> Content:
        """What the index is built from."""
        return Content(self.notes, self.tables.styles, self.tables.likenesses)

    @property
    def index(self) -> Path:
        """The folder in which the index is kept."""
        return self.folder / "index"


def find_shop(folder: Path | None) -> Path:
    """The folder given; else the nearest one upwards with a shop.toml; else the demonstration."""
    if folder is not None:
        return folder
    here = Path.cwd()
    for place in (here, *here.parents):
        if (place / "knowledge" / "shop.toml").is_file():
            return place
    return DEMO


def open_shop(folder: Path) -> Shop:
    """Loads and cross-checks all of a shop's knowledge.

    Raises:
        KnowledgeError: anything of it is missing or wrong; the sentence says what and where.
    """
    knowledge = folder / "knowledge"
    look_for_knowledge(folder)
    if not (knowledge / "notes").is_dir():
        raise KnowledgeError(
            str(knowledge / "notes"), "the folder is missing", "make it, even if it stays empty"
        )
    settings = read_settings(knowledge / "shop.toml")
    tables = load_tables(knowledge / "tables")
    notes = load_notes(knowledge / "notes")
    _styles_are_known(notes, tables, knowledge)
    return Shop(folder, settings, tables, notes)


def look_for_knowledge(folder: Path) -> None:
    """Looks whether a shop's folder holds its knowledge.

    Raises:
        KnowledgeError: it does not; the sentence says where it should lie.
    """
    knowledge = folder / "knowledge"
    if not folder.exists():
        raise KnowledgeError(str(folder), "the folder is missing", "name another with --shop")
    if not folder.is_dir():
        raise KnowledgeError(str(folder), "is no folder", "name a shop's folder with --shop")
    if not knowledge.is_dir():
        mend = f"put shop.toml, notes/ and tables/ in {knowledge}, or name another folder"
        if (folder / "shop.toml").is_file():  # knowledge/ itself was named
            mend = f"name the folder that holds {folder}"
        raise KnowledgeError(str(knowledge), "the folder is missing", f"{mend} with --shop")


def _styles_are_known(notes: Mapping[str, Note], tables: Tables, knowledge: Path) -> None:
    """A note of a mistyped style would never be found for the seals that it is about."""
    for note in notes.values():
        for style in note.styles:
            if style not in tables.styles:
                near = " or ".join(f"'{name}'" for name in meant(style, tables.styles))
                raise KnowledgeError(
                    f"{knowledge / 'notes' / note.name}.md, field styles",
                    f"'{style}' is no style of {knowledge / 'tables' / 'styles.csv'}",
                    f"perhaps {near} is meant" if near else "add it there or name one that is",
                )
