"""The text of a CSV table as columns, with the line on which each row begins."""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from itertools import islice
from operator import itemgetter

from assistant.linting.wording import counted

Tell = Callable[[int, str, str], None]  # the line, what is wrong, the mend
AT_ONCE = 2000  # rows turned into columns together: few enough to stay at hand, whatever the file
_BREAK = re.compile(r"\r\n|\r|\n")


@dataclass
class Sheet:
    """A table as it stands, cells not yet stripped.

    `odd` are the rows with fewer or more cells than the header, which are left out of the
    columns; blank rows are none. `ended` is whether the file could be read to its end.
    """

    header: list[str] = field(default_factory=list)
    columns: list[list[str]] = field(default_factory=list)
    lines: Sequence[int] = ()
    odd: list[list[str]] = field(default_factory=list)
    ended: bool = True

    def column(self, name: str) -> list[str]:
        """The cells of a column, stripped; empty ones where there is no such column."""
        if name not in self.header:
            return [""] * len(self.lines)
        return list(map(str.strip, self.columns[self.header.index(name)]))


def sheet(text: str, tell: Tell) -> Sheet:
    """Reads the text; a fault is told, and what can be read after it is read."""
    found = Sheet()
    lines: list[int] = []
    for rows, at in _parts(text, found, tell):
        if not found.columns:
            found.header = [name.strip() for name in rows[0]]
            found.columns = [[] for _ in found.header]
            rows, at = rows[1:], at[1:]
        if _are_plain(rows, len(found.header)):
            lines.extend(at)
        else:
            rows = [*_of_width(rows, at, lines, found, tell)]
        for column, cells in zip(found.columns, zip(*rows, strict=True), strict=bool(rows)):
            column.extend(cells)
    found.lines = lines
    return found


def _parts(text: str, found: Sheet, tell: Tell) -> Iterator[tuple[list[list[str]], Sequence[int]]]:
    """Some rows at a time, with their lines."""
    reader = csv.reader(io.StringIO(text, newline=""), strict=True)
    begins = 1
    while found.ended:
        rows: list[list[str]] = []
        try:
            rows.extend(islice(reader, AT_ONCE))
        except csv.Error as error:
            found.ended = False
            fault = f"the table is not sound CSV from here on ({error})"
        lines: Sequence[int] = range(begins, begins + len(rows))
        if reader.line_num != begins + len(rows) - 1:  # some row runs over several lines
            lines = _lines(rows, begins)
        if rows:
            begins = lines[-1] + _height(rows[-1])
            yield rows, lines
        if not found.ended:
            tell(begins, fault, "check its quotes and commas")
        if len(rows) < AT_ONCE:
            return


def _lines(rows: list[list[str]], begins: int) -> list[int]:
    lines = []
    for row in rows:
        lines.append(begins)
        begins += _height(row)
    return lines


def _height(row: list[str]) -> int:
    """How many lines a row takes: a quoted cell may hold line breaks."""
    return 1 + sum(len(_BREAK.findall(cell)) for cell in row)


def _are_plain(rows: list[list[str]], width: int) -> bool:
    """Whether each has a cell for each column, and none can be blank: most of them, so."""
    return {*map(len, rows)} == {width} and all(map(str.strip, map(itemgetter(0), rows)))


def _of_width(
    rows: list[list[str]], at: Sequence[int], lines: list[int], found: Sheet, tell: Tell
) -> Iterator[list[str]]:
    """The rows with a cell for each column; what is odd about the others is told."""
    width = len(found.header)
    for row, line in zip(rows, at, strict=True):
        if not any(map(str.strip, row)):
            continue
        if len(row) == width:
            lines.append(line)
            yield row
            continue
        found.odd.append(row)
        tell(
            line,
            f"the row has {counted(len(row), 'cell')} where the header has {width}",
            "put quotes round a text with a comma, or fill in the missing cells",
        )
