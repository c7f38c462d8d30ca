"""A shop's knowledge as lint reads it: as far as it goes, with a finding for each fault."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date
from functools import cached_property
from pathlib import Path

from assistant.linting.columns import Columns, Marks
from assistant.linting.finding import Finding
from assistant.linting.trials import Trials
from assistant.records.notes import Note
from assistant.records.tables import Tables
from assistant.settings import Settings

NOTES, TABLES, PICTURES = "knowledge/notes", "knowledge/tables", "knowledge/pictures"

__all__ = ["NOTES", "PICTURES", "TABLES", "Columns", "Gathered"]


@dataclass(frozen=True, kw_only=True)
class Gathered:
    """What the rules look at.

    `tables` holds the rows that can be read and whose references hold; `lines` says by file and
    id on which line a row begins. `notes` are those that can be read. `faults` are what was found
    while reading. `today` is the day from which ages count, and `oldest` the age in days from
    which a date is old.

    `columns` hold every row that has a cell for each column, and `sound` marks those of them that
    are in `tables`. `ids` are the ids as written, sound or not, of the tables that were read to
    their end.
    """

    folder: Path
    settings: Settings | None
    tables: Tables
    columns: Mapping[str, Columns]
    lines: Mapping[str, Mapping[str, int]]
    notes: Mapping[str, Note]
    today: date
    oldest: int
    faults: Sequence[Finding] = field(default_factory=tuple)
    sound: Mapping[str, Marks] = field(default_factory=dict)
    ids: Mapping[str, Collection[str]] = field(default_factory=dict)

    def at(self, file: str, key: str) -> tuple[str, int]:
        """The path and the line of a table's row."""
        return f"{TABLES}/{file}", self.lines[file].get(key, 1)

    def note_at(self, name: str) -> str:
        """The path of a note."""
        return f"{NOTES}/{name}.md"

    def are_whole(self, *files: str) -> bool:
        """Whether no row of these tables was left out: only then can be told what is not there."""
        return all(
            file in self.ids and (file not in self.sound or bool(self.sound[file].all()))
            for file in files
        )

    @cached_property
    def trials(self) -> Trials:
        """The sound rows of fitment.csv, column by column."""
        return Trials.of(self.columns["fitment.csv"], self.sound.get("fitment.csv"), self.tables)
