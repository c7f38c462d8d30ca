"""Rows that are made when they are asked for: a million of them take longer than all the rules."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from functools import cached_property
from typing import Any, Generic, TypeVar

import numpy as np

from assistant.linting.columns import Columns, Marks
from assistant.records.rows import Row

R = TypeVar("R", bound=Row)
Values = Mapping[str, Mapping[str, Any] | None]  # by column: cells read; None where text is text


class Rows(Mapping[str, R], Generic[R]):
    """The sound rows of a table by id, each made anew when it is asked for."""

    def __init__(
        self, kind: type[R], keys: Sequence[str], columns: Columns, values: Values, sound: Marks
    ) -> None:
        self._kind, self._keys, self._columns = kind, keys, columns
        self._values, self._sound = values, sound

    @cached_property
    def _row(self) -> dict[str, int]:
        if self._sound.all():
            return dict(zip(self._keys, range(len(self._keys)), strict=True))
        return {self._keys[row]: row for row in map(int, np.flatnonzero(self._sound))}

    def __getitem__(self, key: str) -> R:
        row = self._row[key]
        cells = {}
        for name, values in self._values.items():
            raw = self._columns.cells[name][row]
            cells[name] = (raw or None) if values is None else values[raw]
        return self._kind(**cells)

    def made(self) -> dict[str, R]:
        """All of them at once."""
        columns = [
            [raw or None for raw in self._columns.cells[name]]
            if values is None
            else [*map(values.get, self._columns.cells[name])]
            for name, values in self._values.items()
        ]
        names, kind = tuple(self._values), self._kind
        rows = zip(self._keys, self._sound.tolist(), zip(*columns, strict=True), strict=True)
        return {
            key: kind(**dict(zip(names, cells, strict=True)))
            for key, is_sound, cells in rows
            if is_sound
        }

    def __iter__(self) -> Iterator[str]:
        return iter(self._row)

    def __len__(self) -> int:
        return int(self._sound.sum())

    def __contains__(self, key: object) -> bool:
        return key in self._row


class Lines(Mapping[str, int]):
    """The line on which each row begins, by its id; the first where an id stands twice."""

    def __init__(self, keys: Sequence[str], lines: Sequence[int]) -> None:
        self._keys, self._lines = keys, lines

    @cached_property
    def _line(self) -> dict[str, int]:
        return dict(zip(reversed(self._keys), reversed(self._lines), strict=True))

    def __getitem__(self, key: str) -> int:
        return self._line[key]

    def __iter__(self) -> Iterator[str]:
        return iter(dict.fromkeys(self._keys))

    def __len__(self) -> int:
        return len(self._line)
