"""Reads a shop's folder for lint: all that can be read, and a finding for what cannot."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from datetime import date
from pathlib import Path
from typing import TypeVar

from assistant.errors import KnowledgeError, TableError
from assistant.linting.finding import Finding
from assistant.linting.gathered import NOTES, TABLES, Gathered
from assistant.linting.lazy import Lines, Rows
from assistant.linting.settle import settle
from assistant.linting.written import Written, nothing, written
from assistant.records.load import decode
from assistant.records.notes import Note, read_note
from assistant.records.rows import TABLES as KINDS
from assistant.records.rows import Evidence, Row
from assistant.records.tables import Tables
from assistant.settings import Settings, read_settings
from assistant.shop import look_for_knowledge

SETTINGS = "knowledge/shop.toml"
T = TypeVar("T")
Tell = Callable[[Finding], None]


def gather(folder: Path, today: date, oldest: int) -> Gathered:
    """Everything of a shop that lint looks at.

    Raises:
        KnowledgeError: the folder is missing, or is none of a shop's.
    """
    look_for_knowledge(folder)
    faults: list[Finding] = []
    settings = _settings(folder, faults.append)
    notes = _notes(folder, faults.append)
    read = _tables(folder, faults.append)
    sound = settle(read)
    rows: dict[str, Mapping[str, Row]] = {}
    for file, table in read.items():
        lazy = Rows(table.kind, table.keys, table.columns, table.values, sound[file])
        rows[file] = lazy if table.kind is Evidence else lazy.made()
    return Gathered(
        folder=folder,
        settings=settings,
        tables=Tables.of(rows),
        columns={file: table.columns for file, table in read.items()},
        lines={file: Lines(table.keys, table.columns.lines) for file, table in read.items()},
        notes=notes,
        today=today,
        oldest=oldest,
        faults=tuple(faults),
        sound=sound,
        ids={file: table.ids for file, table in read.items() if table.ids is not None},
    )


def _settings(folder: Path, tell: Tell) -> Settings | None:
    try:
        return read_settings(folder / SETTINGS)
    except KnowledgeError as error:
        tell(_fault(SETTINGS, error, _line_of_setting(folder / SETTINGS, error)))
        return None


def _line_of_setting(path: Path, error: KnowledgeError) -> int:
    """The line that the error speaks of: where TOML breaks, or where the setting is written."""
    if at := re.search(r"\(at line (\d+)", error.problem):
        return int(at[1])
    field = re.search(r"field (?:[\w-]+\.)?([\w-]+)$", error.where)
    return _line_beginning(path, rf"\s*\[?{re.escape(field[1])}\b") if field else 1


def _line_beginning(path: Path, pattern: str) -> int:
    """The first line of a file that begins so; the first line of all where none does."""
    try:
        lines = path.read_text(encoding="utf-8-sig", errors="replace").splitlines()
    except OSError:
        return 1
    return next((at for at, line in enumerate(lines, 1) if re.match(pattern, line)), 1)


def _notes(folder: Path, tell: Tell) -> dict[str, Note]:
    notes = {}
    if not (folder / NOTES).is_dir():
        mend = "make it, even if it stays empty"
        tell(Finding(path=NOTES, line=1, what="the folder is missing", mend=mend))
    for path in sorted((folder / NOTES).glob("*.md")):
        if not (path.is_file() or path.is_symlink()):
            continue
        try:
            notes[path.stem] = read_note(path)
        except KnowledgeError as error:
            name = path.name.encode("utf-8", "replace").decode()
            tell(_fault(f"{NOTES}/{name}", error, _line_of_note(path, error)))
    return notes


def _line_of_note(path: Path, error: KnowledgeError) -> int:
    if at := re.search(r", line (\d+)$", error.where):
        return int(at[1])
    field = re.search(r", field (.+)$", error.where)
    return _line_beginning(path, rf"\s*{re.escape(field[1])}\s*:") if field else 1


def _tables(folder: Path, tell: Tell) -> dict[str, Written]:
    read = {}
    is_there = (folder / TABLES).is_dir()
    if not is_there:
        mend = "make it, and put the tables there"
        tell(Finding(path=TABLES, line=1, what="the folder is missing", mend=mend))
    for kind in KINDS:
        path = f"{TABLES}/{kind.file}"
        read[kind.file] = nothing(kind)
        try:
            text = decode(folder / path)
        except TableError as error:
            if is_there:
                tell(_fault(path, error, _line_of_byte(error)))
            continue
        read[kind.file] = written(
            text,
            kind,
            lambda line, what, mend, path=path: tell(  # type: ignore[misc]
                Finding(path=path, line=line, what=what, mend=mend)
            ),
        )
    return read


def _line_of_byte(error: TableError) -> int:
    cause = error.__cause__
    if isinstance(cause, UnicodeDecodeError):
        return cause.object.count(b"\n", 0, cause.start) + 1
    return 1


def _fault(path: str, error: KnowledgeError, line: int) -> Finding:
    what = error.problem
    if field := re.search(r", field (.+)$", error.where):
        what = f"'{field[1]}' {what}"
    return Finding(path=path, line=line, what=" ".join(what.split()), mend=error.mend)
