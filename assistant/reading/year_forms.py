"""The forms in which people write a year, a decade or an age; each as an interval of years."""

# ruff: noqa: E501  (a pattern is easier to read on one line)

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from datetime import date

from assistant.reading.ages import age_forms, recent_forms
from assistant.reading.decades import decade_forms
from assistant.reading.numerals import TENS, WORDS
from assistant.reading.spans import FIRST_YEAR, YearForm, century
from assistant.reading.text import Text
from assistant.reading.tolerances import ABOUT_YEAR
from assistant.reading.wording import Said, how_said

_Y4 = r"(?:19|20)\d\d"
_LEFT = r"(?<![\w$€£#/@+'])(?<!\d[.,:-])(?<![\w]-)(?<![$€£#] )(?<!\d )"
_UNITS = (
    r"(?:gallons?|gal|gpf|l|lit(?:er|re)s?|psi|mm|cm|ml|inch(?:es)?|dollars?|bucks|usd|series"
    r"|people|miles"
    r"|sq|feet|ft|times?|cc|lbs?|degrees|percent|min(?:ute)?s?|sec(?:ond)?s?|hours?|days?|weeks?"
    r"|months?|years?|yrs?|decades?|cents|more|other|different|or|to|of|toilets|bathrooms"
    r"|pieces?|am|pm)"
)
_RIGHT = rf"(?!(?!ish)\w|[%°]|[.,:]\d|/\d|-(?!ish|era|model|built|style|vintage)\w|'?s\b| ?{_UNITS.replace('|or|to|of', '')}\b)"
_Y2 = r"(?:[5-9]\d|0\d)"
_NEXT_TO = re.compile(r"[ ,/-]{0,3}(?:or|to|and|maybe)?[ /]{0,2}(?:the )?")
_NOT_A_YEAR = re.compile(
    r"(?:\b(?:model|mod|part|number|num|no|serial|order|zip(?: code)?|box|room|apt|suite|ext"
    r"|series|sku|item"
    r"|code|type|phone|invoice|isbn)\b[.:# ]{0,3}(?:is )?|#\s?)$"
)
_STREET = re.compile(
    r" (?:[NSEW]\.? )?(?:[A-Z][a-z]+ ){1,2}(?:St|Street|Ave|Avenue|Rd|Road|Dr|Drive|Ln|Lane|Blvd"
    r"|Ct|Court|Hwy|Cir)\b"
)


def year_forms(text: Text, today: date) -> list[YearForm]:
    """Every form found, none overlapping; where two overlap the earlier reader in `READERS`."""
    kept: list[YearForm] = []
    taken = bytearray(len(text.said) + 1)
    for reader in READERS:
        for form in reader(text, today):
            if any(taken[form.start : form.end]) or not _is_possible(form, today):
                continue
            if form.kind == "year" and _is_other_number(text, form):
                continue
            taken[form.start : form.end] = b"\1" * (form.end - form.start)
            kept.append(form)
    return _joined(text.said, sorted(kept, key=lambda form: form.start))


def _joined(said: str, forms: list[YearForm]) -> list[YearForm]:
    """'late eighties, early nineties' is one stretch of years."""
    joined: list[YearForm] = []
    for form in forms:
        last = joined[-1] if joined else None
        if (
            last is not None
            and last.kind == form.kind == "year"
            and last.of == form.of == "about"
            and _NEXT_TO.fullmatch(said, last.end, form.start)
        ):
            low, high = min(last.low, form.low), max(last.high, form.high)
            joined[-1] = YearForm(last.start, form.end, low, high, "year", "about")
        else:
            joined.append(form)
    return joined


def _is_possible(form: YearForm, today: date) -> bool:
    return FIRST_YEAR <= form.low <= form.high <= today.year + 1


def _is_other_number(text: Text, form: YearForm) -> bool:
    """A model, an order, a house in a street, or a name that ends in 2000."""
    before = text.said[max(0, form.start - 16) : form.start]
    if _NOT_A_YEAR.search(before) or _STREET.match(text.visible, form.end, form.end + 40):
        return True
    named = re.search(r"[a-z,] ([A-Z][a-z]+) $", text.visible[max(0, form.start - 24) : form.start])
    return named is not None and text.said[form.start : form.end] == "2000"


_PAIR = re.compile(
    rf"{_LEFT}'?(?P<a>{_Y4}|(?<='){_Y2}|(?<=toilet ){_Y2}(?= or '?\d\d\b))(?P<sep> ?- ?| to "
    rf"| or |/| and |through| or maybe )'?(?P<b>{_Y4}|\d\d)"
    r"(?![\w%°\"]|[.,:]\d|[/-]\d|'?s\b| (?:years|inch|gal))"
)


def _pairs(text: Text, today: date) -> Iterator[YearForm]:
    """'between 1990 and 1995', '1990-95', '1994 or 95'."""
    for match in _PAIR.finditer(text.said):
        if match["sep"] == " and " and not re.search(
            r"between $|\b(?:dates?|marks?|stamps?|dated|years)(?: (?:are|say|read|of|from))? $",
            text.said[max(0, match.start() - 18) : match.start()],
        ):
            continue
        first = int(match["a"]) if len(match["a"]) == 4 else century(int(match["a"]), today)
        second = int(match["b"])
        if len(match["b"]) == 2:
            second += first // 100 * 100
            second += 100 if second < first else 0
        if 0 <= second - first <= 60:
            yield YearForm(match.start(), match.end(), first, second, "year", "stated")


_Y4_AFTER = rf"(?P<limited>{_Y4}){_RIGHT}"
_ONE = re.compile(
    rf"(?:(?<!\w)(?P<limit>before|prior to|pre|earlier than|older than|after|post|later than"
    rf"|newer than)[ -]{_Y4_AFTER}"
    rf"|{_LEFT}(?P<y4>{_Y4}){_RIGHT}|(?<![\w'\"])'(?P<y2>\d\d)(?![\w'\"]))"
)
_SPELLED = re.compile(
    rf"\bnineteen[ -](?P<tens>{'|'.join(TENS)})(?:[ -](?P<units>{'|'.join(list(WORDS)[:9])}))?\b"
    rf"|\btwo thousand(?: and)?[ -](?P<after>{'|'.join(reversed(WORDS))})\b"
)


def _singles(text: Text, today: date) -> Iterator[YearForm]:
    """'1994', '’94', 'before 1994', 'around 2008', 'nineteen ninety-four'."""
    for match in _ONE.finditer(text.said):
        digits = match["limited"] or match["y4"]
        year = int(digits) if digits else century(int(match["y2"]), today)
        yield _single(text, match.start(), match.end(), year, match["limit"], today)
    for match in _SPELLED.finditer(text.said):
        year = (
            int(2000 + WORDS[match["after"]]) if match["after"] else int(1900 + TENS[match["tens"]])
        )
        year += int(WORDS[match["units"]]) if match["units"] else 0
        yield _single(text, match.start(), match.end(), year, None, today)


_Y2_LED = re.compile(
    rf"\b(?:from|frm|fm|made in|built in|circa|since|back in|in|year|stamped|stamp (?:is|says"
    rf"|reads)|dated|around|about)(?: (?:about|around|like))? (?P<y2>{_Y2})(?![\w%°\"'/]"
    rf"|[.,:-]\d| ?{_UNITS}\b| \d)"
    rf"|\b(?:an?|my|our|the|this|old) (?P<of>{_Y2})(?= (?!{_UNITS}\b)(?:\w+ ){{0,2}}(?:toilet"
    rf"|commode|model)\b)"
    rf"|\btoilet,? '?(?P<by>[5-9]\d)(?=\s{{0,3}}(?:[,;!?)\n]|\.(?!\d)|$))"
    r"|\b(?:last two|final two|ends? (?:in|with)|ending (?:in|with))(?: (?:figures|digits"
    r"|numbers))?"
    r"(?: (?:are|is|being|of|say))? '?(?P<ends>\d\d)\b(?![\d.,/]\d)"
    r"|\bdate(?: (?:thing|stamp|mark|code))?(?: (?:says|reads|is))?:? (?:1[0-2]"
    r"|0?[1-9])[/.-](?P<slashed>[5-9]\d|0\d|1\d)\b"
    r"|\b(?:1[0-2]|0?[1-9]) (?P<pressed>[5-9]\d)(?= (?:is |was )?(?:pressed|stamped|fired"
    r"|moulded|molded|cast)\b)"
)


def _two_digits(text: Text, today: date) -> Iterator[YearForm]:
    """'from 94', 'a 94 toilet': two digits where only a year makes sense."""
    for match in _Y2_LED.finditer(text.said):
        group = match.lastgroup or "y2"
        year = century(int(match[group]), today)
        yield _single(text, match.start(group), match.end(group), year, None, today)


def _single(
    text: Text, start: int, end: int, year: int, limit: str | None, today: date
) -> YearForm:
    if limit in ("before", "prior to", "pre", "earlier than", "older than"):
        return YearForm(start, end, min(FIRST_YEAR, year), year, "year", "stated")
    if limit:
        return YearForm(start, end, year, max(year, today.year + 1), "year", "stated")
    if how_said(text.said, start, end) is Said.PLAINLY:
        return YearForm(start, end, year, year, "year", "stated")
    latest = max(year, min(year + int(ABOUT_YEAR.above), today.year))
    return YearForm(start, end, year - int(ABOUT_YEAR.below), latest, "year", "about")


READERS: tuple[Callable[[Text, date], Iterator[YearForm]], ...] = (
    _pairs,
    decade_forms,
    age_forms,
    recent_forms,
    _singles,
    _two_digits,
)
