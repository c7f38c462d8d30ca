"""Digits that identify nothing: prices, dates, sizes, telephone and order numbers, addresses."""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Iterator

from assistant.reading.names.letter import Letter

_NUM = r"(?<![\w#$-])\d{1,6}(?:[.,]\d{1,3})?(?:[ -]\d{1,2}/\d{1,2}|/\d{1,2})?"
_SAID = tuple(
    re.compile(pattern)
    for pattern in (
        r"\S{1,80}@\S{1,80}|https?://\S+|\bwww\.\S+",
        r"\(?\b\d{3}\)?[ .-]{1,3}\d{3}[ .-]\d{4}\b|\+\d[\d ().-]{7,20}\d",
        r"\b(?:call|phone|telephone|tel|cell|mobile|fax|text"
        r"|reach)\b[^\d\n]{0,25}\d[\d ().-]{5,15}\d",
        r"\bzip(?: code)?\W{0,3}\d{5}(?:-\d{4})?",
        r"[$£€]\s?\d[\d.,]*",
        rf"{_NUM}\s?(?:dollars?|bucks|usd|cents?|euros?|quid|eur|gbp)\b",
        r"\b\d{1,2}[/.-]\d{1,2}[/.-]\d{2,4}\b|\b\d{1,2}/\d{1,2}/\d\b|\b\d{4}-\d\d-\d\d\b"
        r"|\b\d{1,2}:\d\d\b",
        r"\b(?:jan|feb|mar|apr|may|jun|jul|aug|sept?|oct|nov|dec)[a-z]{0,6}\.? \d{1,2}(?:st|nd|rd"
        r"|th)?"
        r"(?:,? \d{4})?\b",
        r"\b\d{1,2}(?:st|nd|rd|th)?(?: of)? (?:jan|feb|mar|apr|may|jun|jul|aug|sept?|oct|nov|dec)"
        r"[a-z]{0,6}\.?(?:,? \d{4})?\b",
        rf"{_NUM}\s?-?(?:inch(?:es)?|mm|millimet\w+|cm|centimet\w+|ft|feet|foot|gpf|gallons?"
        rf"|gals?|lpf"
        r"|lit(?:er|re)s?|lbs?|psi|oz|ounces?|percent|degrees|years?|yrs?|months?|weeks?|days?"
        r"|hours?"
        r"|hrs?|minutes?|mins?|seconds?|secs?|times)\b",
        rf"{_NUM}%",
        r"\b\d{2,4}'?s?[- ]?ish\b",
        r"(?<![\w#$-])\d{1,3}[ -]?(?:in|m|l|x|pcs?|pieces?|packs?|bolts?|holes?|buttons?|stor(?:y"
        r"|ies)"
        r"|toilets|flappers|units|bed\w*|bath\w*)\b(?! the\b| my\b)",
        r"(?<![\w-])\d{1,2}[ -]\d{1,2}/\d{1,2}\b|(?<![\w/-])\d{1,2}/\d{1,2}(?![\w/])",
        r"\b(?:order|invoice|tracking|ticket|account|acct|customer|confirmation|receipt|serial"
        r"|patent"
        r"|pat|upc|case|po|reference)\b(?:\s?ref\w*)?\.?\s?(?:(?:number|no\b\.?|nos\b\.?|num\b|nr\b|id\b|#|:)"
        r"[\s:#]{0,3}){1,2}(?:(?:is|was)\s)?(?:#\s?)?[a-z]{0,4}[-,. ]?\d[\d,-]{0,20}",
        r"\b(?:my|our|your|the|last|previous|earlier) (?:order|invoice) #?\d[\d-]{2,20}",
        r"\b(?:patent|pat\.?|serial|invoice|ticket|tracking|receipt|account"
        r"|confirmation)\s{1,2}#?\d[\d,-]{2,20}",
        r"\b\d{1,5}(?: [a-z]{2,15}){1,2} (?:street|avenue|ave|road|rd|blvd|boulevard)\b",
        r"\bapt\.? ?#?\d+|\bp\.?o\.? box \d+|\bunit #?\d+",
    )
)
_INCH_MARK = re.compile(r"(?<![\w\"#$-])\d{1,2}(?:[ -]?\d/\d{1,2}|\.\d+)?\s?\"")
_RAW = tuple(
    re.compile(pattern)
    for pattern in (
        r"\b(?:A[LKZR]|C[AOT]|D[CE]|FL|GA|IL|I[AN](?<!IN)|K[SY]|LA|M[ADINOST]|N[CDEHJMVY]|OH|PA"
        r"|RI|S[CD]"
        r"|T[NX]|UT|V[AT]|W[AIVY])[ ,.]{1,2}\d{5}(?:-\d{4})?\b",
        r", ?[A-Z]{2} {1,2}\d{5}(?:-\d{4})?\b",
        r"\b\d{1,5}(?: [NSEW]\.?)?(?: [A-Z][a-z]{1,14}){1,2} "
        r"(?:St|Ln|Lane|Dr|Drive|Ct|Court|Way|Pl|Place|Ter|Terrace|Cir|Circle)\b",
    )
)
_YEAR = re.compile(r"(?<![\w-])(?:1[89]|20)\d\d(?:'?s)?(?![\w-])")
_NOT_A_YEAR = re.compile(
    r"(?:\b(?:model|number|part|item|code)|\bno\.?|\bnr\.?|#)(?:\s(?:number|no\.?|is|was)|[\s:#])*$"
)


def not_numbers(letter: Letter) -> Taken:
    """The places of digits that are no identifying number."""
    return Taken([*_spans(letter), *_years(letter)])


def _spans(letter: Letter) -> Iterator[tuple[int, int]]:
    for pattern in _SAID:
        yield from (m.span() for m in pattern.finditer(letter.said))
    for match in _INCH_MARK.finditer(letter.said):
        lead = letter.said[max(0, match.start() - 40) : match.start()]
        if lead.count('"') % 2 == 0:  # or else it is the closing quote of a quoted number
            yield match.span()
    for pattern in _RAW:
        yield from (m.span() for m in pattern.finditer(letter.text.visible))


def _years(letter: Letter) -> Iterator[tuple[int, int]]:
    """Four digits that read as a year, but for 'model 1994' or '#1994'."""
    for match in _YEAR.finditer(letter.said):
        if not _NOT_A_YEAR.search(letter.said[max(0, match.start() - 25) : match.start()]):
            yield match.span()


class Taken:
    """Places in a text, asked for overlap."""

    def __init__(self, spans: list[tuple[int, int]]) -> None:
        merged: list[list[int]] = []
        for start, end in sorted(spans):
            if merged and start < merged[-1][1]:
                merged[-1][1] = max(merged[-1][1], end)
            else:
                merged.append([start, end])
        self._starts = [start for start, _ in merged]
        self._ends = [end for _, end in merged]

    def meets(self, start: int, end: int) -> bool:
        """Whether any of a stretch is taken."""
        at = bisect_left(self._ends, start + 1)
        return at < len(self._starts) and self._starts[at] < end
