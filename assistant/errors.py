"""Everything the assistant raises on purpose, as one tree.

An error a person can meet carries where the fault is and how to mend it, so that the
command line can say both in one sentence.
"""

from __future__ import annotations


class AssistantError(Exception):
    """Root of all errors raised on purpose."""


class UserError(AssistantError):
    """A fault in what we were given; the command ends with exit code 2.

    `where` names the file (and row and field), `problem` says what is wrong there and
    `mend` what to do about it.
    """

    def __init__(self, where: str, problem: str, mend: str) -> None:
        self.where, self.problem, self.mend = where, problem, mend
        super().__init__(" ".join(f"{where}: {problem}; {mend}.".splitlines()))  # one line


class KnowledgeError(UserError):
    """The shop's notes, tables or settings cannot be used as they stand."""


def place_in(file: str, row: int | None, field: str | None) -> str:
    """'seals.csv, row 7, field price', as far as it is known."""
    told = [file]
    if row is not None:
        told.append(f"row {row}")
    if field is not None:
        told.append(f"field {field}")
    return ", ".join(told)


class TableError(KnowledgeError):
    """A table's cell, row or header is wrong. `row` counts as a spreadsheet does: header = 1.

    `key` is the row's id where the whole tables show the fault; `line` the line of the file on
    which the row begins, where it is known.
    """

    line: int | None = None

    def __init__(
        self,
        file: str,
        row: int | None,
        field: str | None,
        problem: str,
        mend: str,
        key: str | None = None,
    ) -> None:
        self.file, self.row, self.field, self.key = file, row, field, key
        super().__init__(place_in(file, row, field), problem, mend)


class LetterError(UserError):
    """A message file cannot be read."""


class SearchError(UserError):
    """The index built from the notes cannot be used or written."""


class CaseError(UserError):
    """A case, or the file in which cases are kept, cannot be found, read or written."""
