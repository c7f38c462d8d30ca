"""The tables that hold cases: nothing in them is ever changed or taken away."""

from __future__ import annotations

import sqlite3

from assistant.errors import CaseError

OURS = 0x636E7472  # marks a file as one of cases, whatever it is called
VERSION = 1  # raise it when a table changes, and say below how an older file is brought up

TABLES = (
    "CREATE TABLE cases (id TEXT PRIMARY KEY, opened TEXT NOT NULL) WITHOUT ROWID",
    "CREATE TABLE messages ("
    " case_id TEXT NOT NULL REFERENCES cases (id),"
    " number INTEGER NOT NULL CHECK (number > 0),"
    " who TEXT NOT NULL CHECK (who IN ('customer', 'staff', 'counter')),"
    " text TEXT NOT NULL, at TEXT NOT NULL, asked TEXT,"
    " PRIMARY KEY (case_id, number))",
    "CREATE TABLE answers ("
    " case_id TEXT NOT NULL, number INTEGER NOT NULL, json TEXT NOT NULL,"
    " PRIMARY KEY (case_id, number),"
    " FOREIGN KEY (case_id, number) REFERENCES messages (case_id, number)) WITHOUT ROWID",
)
KEPT = ("cases", "messages", "answers")


def prepare(connection: sqlite3.Connection, where: str) -> None:
    """Makes the tables in a new file; looks whether those of an older one can be used.

    Raises:
        CaseError: the file is of something else, or of another version of this program.
    """
    if _version(connection) == VERSION and _mark(connection) == OURS:
        return
    connection.execute("BEGIN IMMEDIATE")  # of several processes one makes them
    try:
        version, mark = _version(connection), _mark(connection)
        if version == VERSION and mark == OURS:
            return
        if version or mark or connection.execute("SELECT 1 FROM sqlite_master").fetchone():
            raise _unknown(where, version, ours=mark == OURS)
        for table in TABLES:
            connection.execute(table)
        for table in KEPT:
            for event in ("UPDATE", "DELETE"):
                connection.execute(
                    f"CREATE TRIGGER {table}_no_{event.lower()} BEFORE {event} ON {table}"
                    f" BEGIN SELECT RAISE(ABORT, 'what was said is kept'); END"
                )
        connection.execute(f"PRAGMA application_id = {OURS}")
        connection.execute(f"PRAGMA user_version = {VERSION}")
        connection.execute("COMMIT")
    finally:
        if connection.in_transaction:
            connection.execute("ROLLBACK")


def _version(connection: sqlite3.Connection) -> int:
    return int(connection.execute("PRAGMA user_version").fetchone()[0])


def _mark(connection: sqlite3.Connection) -> int:
    return int(connection.execute("PRAGMA application_id").fetchone()[0])


def _unknown(where: str, version: int, *, ours: bool) -> CaseError:
    if ours:
        return CaseError(
            where,
            f"its cases are kept in form {version}, and this program knows form {VERSION} only",
            "use the version of counterhand that wrote it, or name another folder with --state",
        )
    return CaseError(where, "is a file of something else", "name another folder with --state")
