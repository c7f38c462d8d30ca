"""A CSV file as a sheet: which encoding it is in and what parts its cells."""

from __future__ import annotations

import codecs
import csv
import io

from assistant.importing.faults import SheetError
from assistant.importing.sheet import Sheet, sheet_of

# Where two read a file equally well, the rarer mark wins: a comma also stands within texts and
# numbers, a tab hardly ever.
DELIMITERS = {"\t": "tabs", ";": "semicolons", ",": "commas"}
_LOOKED_AT = 200  # rows

# The longer mark first: the UTF-32 one begins as the UTF-16 one does.
_MARKS = (
    (codecs.BOM_UTF8, "utf-8-sig", "UTF-8"),
    (codecs.BOM_UTF32_LE, "utf-32", "UTF-32"),
    (codecs.BOM_UTF32_BE, "utf-32", "UTF-32"),
    (codecs.BOM_UTF16_LE, "utf-16", "UTF-16"),
    (codecs.BOM_UTF16_BE, "utf-16", "UTF-16"),
)


def read_csv(raw: bytes, name: str) -> Sheet:
    """Reads the bytes of a CSV file."""
    text, encoding = _decoded(raw, name)
    delimiter = sniffed(text)
    told = (encoding, f"cells parted by {DELIMITERS[delimiter]}")
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=delimiter, strict=True)
    lines: list[list[str]] = []
    try:
        lines.extend(reader)
    except csv.Error as error:
        raise SheetError(
            name,
            len(lines) + 1,
            None,
            f"is not sound CSV ({error})",
            "check its quotes, or save it from the spreadsheet again",
        ) from error
    return sheet_of(name, lines, told)


def _decoded(raw: bytes, name: str) -> tuple[str, str]:
    """The text and how its encoding is told."""
    for mark, codec, told in _MARKS:
        if raw.startswith(mark):
            try:
                return raw.decode(codec), told
            except UnicodeDecodeError as error:
                raise SheetError(
                    name,
                    None,
                    None,
                    f"begins as {told} and then is not ({error.reason})",
                    "save it as 'CSV UTF-8'",
                ) from error
    try:
        text, told = raw.decode("utf-8"), "UTF-8"
    except UnicodeDecodeError as first:
        try:
            text = raw.decode("cp1252")
        except UnicodeDecodeError:
            row = raw[: first.start].count(b"\n") + 1
            raise SheetError(
                name,
                row,
                None,
                f"byte 0x{raw[first.start]:02x} is neither UTF-8 nor Windows-1252",
                "save it as 'CSV UTF-8'",
            ) from first
        told = "not UTF-8, so read as Windows-1252: look at its accents and signs"
    if "\0" in text:
        raise SheetError(
            name, None, None, "holds zero bytes and is no plain text", "save it as 'CSV UTF-8'"
        )
    return text, told


def sniffed(text: str) -> str:
    """The mark that parts the cells: it makes most rows as wide as the first, and that wide."""
    return max(DELIMITERS, key=lambda mark: _fits(text, mark))


def _fits(text: str, delimiter: str) -> tuple[float, int]:
    """The share of rows no wider than the headings, and how many headings there are."""
    widths: list[int] = []
    try:
        for line in csv.reader(io.StringIO(text, newline=""), delimiter=delimiter):
            if any(cell.strip() for cell in line):
                widths.append(len(line))
            if len(widths) == _LOOKED_AT:
                break
    except csv.Error:
        return (0, 0)
    if not widths or widths[0] == 1:
        return (0, 1)
    return (
        sum(1 < width <= widths[0] for width in widths[1:]) / max(1, len(widths) - 1),
        widths[0],
    )
