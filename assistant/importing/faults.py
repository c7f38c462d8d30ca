"""What is wrong with a sheet, where, and how to mend it."""

from __future__ import annotations

from collections.abc import Callable

from assistant.errors import UserError, place_in


class SheetError(UserError):
    """A sheet, its heading or a cell cannot be used. `row` counts as a spreadsheet does.

    `field` is the sheet's own heading, which is what a person looks for.
    """

    def __init__(
        self, file: str, row: int | None, field: str | None, problem: str, mend: str
    ) -> None:
        self.file, self.row, self.field = file, row, field
        super().__init__(place_in(file, row, field), problem, mend)


class WriteError(UserError):
    """The table could not be written; it is as it was."""


Report = Callable[[SheetError], None]
