"""A table column by column: a million rows are looked at as columns, never one by one."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

Numbers = NDArray[np.int64]
Marks = NDArray[np.bool_]


@dataclass(frozen=True)
class Coded:
    """A column as its different cells, and for each row which of them it holds."""

    values: tuple[str, ...]
    codes: Numbers

    def are(self, value: str) -> Marks:
        """Which rows hold this very cell."""
        code = self.values.index(value) if value in self.values else -1
        marks: Marks = self.codes == code
        return marks

    def rows_of(self, values: Iterable[str]) -> list[int]:
        """The rows that hold one of these cells, in order."""
        wanted = {*values}
        codes = [code for code, value in enumerate(self.values) if value in wanted]
        return [int(row) for row in np.flatnonzero(np.isin(self.codes, codes))] if codes else []


@dataclass(frozen=True)
class Columns:
    """A table column by column: the cells as written, stripped, and each row's line in the file."""

    cells: Mapping[str, Sequence[str]]
    lines: Sequence[int]
    _coded: dict[str, Coded] = field(default_factory=dict, init=False, repr=False, compare=False)

    def __len__(self) -> int:
        return len(self.lines)

    def coded(self, name: str) -> Coded:
        """A column by its different cells; made once."""
        if name not in self._coded:
            cells = self.cells[name]
            if not any(cells):  # a column that nobody fills in, as many are
                self._coded[name] = Coded(("",) if cells else (), np.zeros(len(cells), np.int64))
                return self._coded[name]
            code = {value: number for number, value in enumerate(dict.fromkeys(cells))}
            codes = np.fromiter(map(code.__getitem__, cells), np.int64, len(cells))
            self._coded[name] = Coded(tuple(code), codes)
        return self._coded[name]
