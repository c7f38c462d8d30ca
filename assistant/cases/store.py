"""Cases on disk, in one SQLite file that several processes may use at once.

A message is kept when `say` returns: it is written in one transaction that is on the disk by
then, so that a process killed at any moment loses no more than the message it was writing.
"""

from __future__ import annotations

import json
import sqlite3
import time
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path
from types import TracebackType
from typing import Any, cast

from platformdirs import user_state_path

from assistant.cases.case import Case, Message, Who
from assistant.cases.ids import as_written, new_id
from assistant.cases.offered import from_object, to_object
from assistant.cases.schema import prepare
from assistant.errors import CaseError

FILE = "cases.sqlite3"
PATIENCE = 30  # seconds for which a writer waits while others write


def state_folder(folder: Path | None = None) -> Path:
    """The folder given, else the one in which this user's programs keep their state."""
    return folder if folder is not None else user_state_path("counterhand")


class Store:
    """The cases of one folder. Use it as a context, so that it is closed."""

    def __init__(self, connection: sqlite3.Connection, path: Path) -> None:
        self._connection, self.path = connection, path

    @classmethod
    def open(cls, folder: Path) -> Store:
        """The cases kept in a folder, which is made where it is missing.

        Raises:
            CaseError: the folder or its file cannot be used; the sentence says how to mend it.
        """
        path = folder / FILE
        try:
            folder.mkdir(parents=True, exist_ok=True)
        except OSError as error:
            raise CaseError(
                str(folder),
                f"the folder cannot be made ({error.strerror})",
                "name another with --state",
            ) from error
        with _clear(path):
            connection = sqlite3.connect(path, timeout=PATIENCE, isolation_level=None)
        try:
            with _clear(path):
                _write_ahead(connection)
                connection.execute("PRAGMA synchronous = FULL")
                connection.execute("PRAGMA foreign_keys = ON")
                prepare(connection, str(path))
        except BaseException:
            connection.close()
            raise
        return cls(connection, path)

    def __enter__(self) -> Store:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self.close()

    def close(self) -> None:
        """Lets go of the file."""
        self._connection.close()

    def new(self, opened: datetime | None = None) -> str:
        """The id of a new case."""
        at = (opened or datetime.now(UTC)).isoformat()
        with self._writing():
            while True:
                name = new_id()
                row = self._connection.execute(
                    "INSERT INTO cases VALUES (?, ?) ON CONFLICT DO NOTHING", (name, at)
                )
                if row.rowcount:
                    return name

    def say(self, name: str, message: Message, answer: Mapping[str, Any] | None = None) -> Message:
        """Keeps a message, with the whole answer where it is the counter's; returns it numbered."""
        asked = None if message.asked is None else json.dumps(to_object(message.asked))
        with self._writing():
            name = self._known(name)
            (number,) = self._connection.execute(
                "SELECT 1 + COALESCE(MAX(number), 0) FROM messages WHERE case_id = ?", (name,)
            ).fetchone()
            self._connection.execute(
                "INSERT INTO messages VALUES (?, ?, ?, ?, ?, ?)",
                (name, number, message.who, _sound(message.text), message.at.isoformat(), asked),
            )
            if answer is not None:
                told = json.dumps(answer, ensure_ascii=True)
                self._connection.execute("INSERT INTO answers VALUES (?, ?, ?)",
                                         (name, number, told))  # fmt: skip
        return replace(message, number=number, text=_sound(message.text))

    def case(self, name: str) -> Case:
        """A case with all its messages.

        Raises:
            CaseError: there is no case of this name.
        """
        with _clear(self.path):
            name = self._known(name)
            (opened,) = self._connection.execute(
                "SELECT opened FROM cases WHERE id = ?", (name,)
            ).fetchone()
            rows = self._connection.execute(
                "SELECT number, who, text, at, asked FROM messages WHERE case_id = ?"
                " ORDER BY number",
                (name,),
            ).fetchall()
        messages = tuple(_message(row) for row in rows)
        return Case(name, datetime.fromisoformat(opened), messages)

    def answers(self, name: str) -> tuple[dict[str, Any], ...]:
        """The answers given in a case, as they were printed."""
        with _clear(self.path):
            rows = self._connection.execute(
                "SELECT json FROM answers WHERE case_id = ? ORDER BY number", (self._known(name),)
            ).fetchall()
        return tuple(json.loads(told) for (told,) in rows)

    def recent(self, most: int) -> tuple[Case, ...]:
        """The cases last written to, the latest first."""
        with _clear(self.path):
            rows = self._connection.execute(
                "SELECT id FROM cases ORDER BY COALESCE((SELECT MAX(rowid) FROM messages"
                " WHERE case_id = id), 0) DESC, opened DESC, id LIMIT ?",
                (most,),
            ).fetchall()
        return tuple(self.case(name) for (name,) in rows)

    def _known(self, name: str) -> str:
        found = self._connection.execute(
            "SELECT id FROM cases WHERE id = ?", (as_written(name),)
        ).fetchone()
        if found is None:
            raise CaseError(
                f"case {name}",
                f"there is none of this name in {self.path}",
                "look at its letters again, or begin one with --case new",
            )
        return cast(str, found[0])

    @contextmanager
    def _writing(self) -> Iterator[None]:
        """One transaction: all of it is on the disk afterwards, or nothing."""
        with _clear(self.path):
            self._connection.execute("BEGIN IMMEDIATE")
            try:
                yield
                self._connection.execute("COMMIT")
            finally:
                if self._connection.in_transaction:
                    self._connection.execute("ROLLBACK")


def _write_ahead(connection: sqlite3.Connection) -> None:
    """Sets the journal. SQLite does not wait where two change it in a new file: one tries again."""
    end = time.monotonic() + PATIENCE
    while True:
        try:
            connection.execute("PRAGMA journal_mode = WAL")
        except sqlite3.OperationalError as error:
            if "locked" not in str(error) or time.monotonic() > end:
                raise
            time.sleep(0.01)
        else:
            return


def _message(row: tuple[int, Who, str, str, str | None]) -> Message:
    number, who, text, at, asked = row
    offered = None if asked is None else from_object(json.loads(asked))
    return Message(number, who, text, datetime.fromisoformat(at), offered)


def _sound(text: str) -> str:
    """Text that can be written: half a sign, which a broken terminal may send, cannot."""
    return text.encode("utf-8", "replace").decode("utf-8")


@contextmanager
def _clear(path: Path) -> Iterator[None]:
    """What SQLite finds wrong, in one sentence that names the file and the mend."""
    try:
        yield
    except sqlite3.OperationalError as error:
        raise _cannot_be_used(path, error) from error
    except sqlite3.DatabaseError as error:
        raise CaseError(
            str(path),
            f"is damaged ({error})",
            f"move it away together with {path.name}-wal and {path.name}-shm, or put a copy back; "
            "where it is missing, a new one is begun",
        ) from error


def _cannot_be_used(path: Path, error: sqlite3.OperationalError) -> CaseError:
    said = str(error)
    if "locked" in said or "busy" in said:
        mend = "wait until the other program is done, and try again"
    elif "full" in said:
        mend = "make room on the disk"
    else:
        mend = "look who may read and write it and its folder, or name another with --state"
    return CaseError(str(path), f"cannot be used ({said})", mend)
