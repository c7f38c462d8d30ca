"""Which of a sheet's columns is which of ours."""

from __future__ import annotations

import dataclasses
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from assistant.importing.faults import SheetError
from assistant.importing.headings import ORDINARY, PASSED, UNITS
from assistant.importing.sheet import Sheet
from assistant.records.rows import Row

NO_SUCH, NAMED_OUT = "no column of ours", "left out by --map"


@dataclass(frozen=True)
class Match:
    """A column of the sheet, the one of ours that it fills, and how that is known."""

    at: int
    heading: str
    column: str
    because: str


@dataclass(frozen=True)
class LeftOut:
    """A column of the sheet that is not read, and why."""

    heading: str
    because: str


@dataclass(frozen=True)
class Matching:
    """What was matched to what."""

    matches: tuple[Match, ...]
    left_out: tuple[LeftOut, ...]

    def heading_of(self, column: str) -> str | None:
        """The sheet's heading of a column of ours."""
        return next((match.heading for match in self.matches if match.column == column), None)


def columns_of(kind: type[Row]) -> tuple[str, ...]:
    """A table's columns."""
    return tuple(field.name for field in dataclasses.fields(kind))  # type: ignore[arg-type]


def match_columns(sheet: Sheet, kind: type[Row], named: Mapping[str, str]) -> Matching:
    """Matches by what was named first, then by our names, then by ordinary headings.

    `named` has our column, or nothing for 'leave it out', by the sheet's heading.

    Raises:
        SheetError: a name is wrong on either side, two headings mean one column, or a key
            column is matched by none.
    """
    by_hand = _by_hand(sheet, kind, named)
    matches: dict[str, Match] = {}
    left_out: list[LeftOut] = []
    for at in range(len(sheet.headings)):
        heading = sheet.called(at)
        if at in by_hand:
            column, because = by_hand[at], "as --map says"
            if not column:
                left_out.append(LeftOut(heading, NAMED_OUT))
                continue
        else:
            column, because = _meant(sheet.headings[at], kind)
            if not column or column in by_hand.values():
                because = because if not column else f"another column is {column} by --map"
                left_out.append(LeftOut(heading, because))
                continue
        if column in matches:
            other = matches[column].heading
            raise SheetError(
                sheet.name,
                sheet.heading_row,
                heading,
                f"it and '{other}' both mean our {column}",
                "rename one of the two in the sheet"
                if _bare(heading) == _bare(other)
                else f'leave one out with --map "{heading}=" or --map "{other}="',
            )
        matches[column] = Match(at, heading, column, because)
    _keys_are_there(sheet, kind, matches)
    return Matching(tuple(matches.values()), tuple(left_out))


def _by_hand(sheet: Sheet, kind: type[Row], named: Mapping[str, str]) -> dict[int, str]:
    """Our column by the place of the sheet's, as named by hand."""
    columns = columns_of(kind)
    found: dict[int, str] = {}
    for heading, column in named.items():
        at = [i for i, had in enumerate(sheet.headings) if _bare(had) == _bare(heading)]
        if not at:
            raise SheetError(
                sheet.name,
                sheet.heading_row,
                None,
                f"no column is headed '{heading}'",
                f"--map takes one of its headings: {_listed(sheet)}",
            )
        if len(at) > 1:
            raise SheetError(
                sheet.name,
                sheet.heading_row,
                heading,
                "the heading stands twice",
                "rename one of the two in the sheet",
            )
        if column and column not in columns:
            raise SheetError(
                f'--map "{heading}={column}"',
                None,
                None,
                f"{kind.file} has no column '{column}'",
                f"its columns are: {', '.join(columns)}",
            )
        if column and column in found.values():
            raise SheetError(
                f'--map "{heading}={column}"',
                None,
                None,
                f"another heading is {column} already",
                "name one heading for a column",
            )
        said, ours = unit_in(heading), unit_in(column.replace("_", " "))
        if said and ours and said != ours:
            raise SheetError(
                sheet.name,
                sheet.heading_row,
                heading,
                f"is in {said}, and our {column} holds {ours}",
                f"add a column in {ours} to the sheet; nothing is converted here",
            )
        found[at[0]] = column
    return found


def _meant(heading: str, kind: type[Row]) -> tuple[str, str]:
    """Our column and how it is known; or no column, and why not."""
    bare, columns = _bare(heading), columns_of(kind)
    for column in columns:
        if bare == _bare(column):
            return column, "its name"
    for card in ORDINARY:
        if card.column in columns and bare in map(_bare, card.headings):
            return card.column, card.reason
    for passed in PASSED:
        if bare in map(_bare, passed.headings):
            return "", passed.reason
    for column in columns:
        ours, said = unit_in(column.replace("_", " ")), unit_in(heading)
        if ours and _unitless(heading) == _unitless(column):
            if said == ours:
                return column, "its name and unit"
            told = f"is in {said}" if said else "tells no unit"
            return "", f"{told}, and our {column} holds {ours}: nothing is converted or guessed"
    return "", NO_SUCH


def unit_in(heading: str) -> str | None:
    """The unit that a heading tells."""
    words = _words(heading)[1:]  # 'in stock' is no length
    return next((unit for unit, names in UNITS.items() if set(names) & set(words)), None)


def _unitless(heading: str) -> str:
    units = {name for names in UNITS.values() for name in names}
    return " ".join(word for word in _words(heading) if word not in units)


def _words(heading: str) -> Sequence[str]:
    return re.findall(r'[^\W_]+|["″%]', heading.casefold())


def _bare(heading: str) -> str:
    """A heading without case, signs and the dots of 'no.'; '#' is 'no'."""
    return " ".join(_words(heading.replace("#", " no ")))


def _listed(sheet: Sheet) -> str:
    return ", ".join(f"'{heading}'" for heading in sheet.headings if heading)


def _keys_are_there(sheet: Sheet, kind: type[Row], matches: Mapping[str, Match]) -> None:
    missing = [key for key in kind.keys if key not in matches]
    if missing:
        raise SheetError(
            sheet.name,
            sheet.heading_row,
            None,
            f"no heading means our {' or '.join(missing)}, by which {kind.file} tells rows apart "
            f"(the headings are {_listed(sheet)})",
            f'name the one that does with --map "Their heading={missing[0]}"',
        )
