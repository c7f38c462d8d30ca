"""The years of a message, each with what it dates: made, bought, house, valve_put_in, or year."""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import date

from assistant.reading.dated import AGED, CARDS, NOTHING, STAMP, dates, stamped_before
from assistant.reading.facts import Fact, Interval
from assistant.reading.nearby import Surroundings, cues, sentence_ends
from assistant.reading.purchases import is_of_buying
from assistant.reading.spans import YearForm
from assistant.reading.stamps import DateForm, date_forms
from assistant.reading.text import Text
from assistant.reading.year_forms import year_forms

_READ_OFF = re.compile(
    r"\b(?:says?|reads?|shows?|see|found|saw)[ :]{1,2}(?:the year |like )?['\"]?$"
)


def read_years(text: Text, today: date) -> list[Fact]:
    """The years in which something happened, of the event itself, in their order in the text.

    Ages and two-digit years are counted from `today`. Years outside 1900..next year are none.
    """
    stamps = date_forms(text, today)
    written = Text(text.raw, (*text.masked, *((form.start, form.end) for form in stamps)))
    years = year_forms(written, today)
    ends = sentence_ends(text.raw, text.said)
    places = sorted([form.start for form in stamps] + [form.start for form in years])
    around = Surroundings(text.said, cues(text.said, CARDS), ends, places)
    aged = Surroundings(text.said, cues(text.said, AGED), ends, places)
    found = [*_of_dates(text, stamps, around, aged, today), *_of_years(text, years, around, aged)]
    return sorted(found, key=lambda fact: fact.start)


def _of_years(
    text: Text, forms: list[YearForm], around: Surroundings, aged: Surroundings
) -> Iterator[Fact]:
    for form in forms:
        name = dates(around, aged, form)
        if name in ("year", "made") and _is_read_off(text.said, form.start):
            name = STAMP if stamped_before(around, form.start) else name
        if name == STAMP and form.of == "stated" and form.low == form.high:
            yield _fact(text, "made", form, "stamp")
        elif name == STAMP:
            yield _fact(text, "made", form, form.of)
        elif name != NOTHING:
            yield _fact(text, name, form, form.of)


def _is_read_off(said: str, start: int) -> bool:
    return _READ_OFF.search(said, max(0, start - 24), start) is not None


def _of_dates(
    text: Text, forms: list[DateForm], around: Surroundings, aged: Surroundings, today: date
) -> Iterator[Fact]:
    """A full date is a stamp unless it is the letter's own, or a word beside it says otherwise."""
    for form in forms:
        as_year = YearForm(form.start, form.end, form.low, form.high, "year", "stated")
        name = dates(around, aged, as_year)
        told = name == "bought" and is_of_buying(text.said, form.start, form.end)
        if name == STAMP or (not told and stamped_before(around, form.start)):
            yield _fact(text, "made", as_year, "stamp")
        elif not form.plain:
            continue
        elif name in ("bought", "house", "valve_put_in"):
            yield _fact(text, name, as_year, "stated")
        elif name != NOTHING and form.high < today.year - 1:
            yield _fact(text, "made", as_year, "stamp")


def _fact(text: Text, name: str, form: YearForm, of: str) -> Fact:
    return Fact(
        name=name,
        value=Interval(form.low, form.high),
        words=text.raw[form.start : form.end],
        start=form.start,
        end=form.end,
        unit="year",
        of=of,
    )
