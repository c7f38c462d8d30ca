"""From the names found in a letter to facts: whose they are, whether doubted or denied."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import chain

from assistant.reading.facts import Fact
from assistant.reading.names import places
from assistant.reading.names.book import NameBook
from assistant.reading.names.doubt import denied, doubted
from assistant.reading.names.letter import Letter
from assistant.reading.names.makers import own, read_in_two
from assistant.reading.names.models import of_maker_named, only_maker
from assistant.reading.names.not_numbers import Taken
from assistant.reading.names.spans import Hit, nearby
from assistant.reading.names.variants import goes_on, starts_earlier

_OR = re.compile(r"[\s,]*(?:toilet\s+)?or\s+(?:it's\s+|it is\s+|maybe\s+)?(?:an?\s+|the\s+)?")


def name_facts(
    letter: Letter,
    book: NameBook,
    makers: Sequence[Hit],
    models: Sequence[Hit],
    taken: Sequence[Taken],
) -> Iterator[Fact]:
    """A fact for each maker and model."""
    kept_makers = [m for m in makers if not _is_model_here(letter, book, m, makers, models)]
    kept_models = [m for m in models if not _is_maker_here(letter, book, m, makers, models)]
    weighed = [m for m in kept_makers if not _of_something_else(letter, m, models)]
    only = only_maker([m for m in weighed if not denied(places.before(letter, m))])
    names = sorted((*kept_makers, *kept_models), key=lambda h: (h.first, h.last))
    for maker in kept_makers:
        after = [m for m in nearby(kept_models, maker) if places.follows(letter, maker, m)]
        fact = _fact(letter, "brand", _narrowed(book, maker, after), maker, (maker, *after[:1]))
        if _alternative(letter, maker, kept_makers) or maker not in weighed:
            fact = replace(fact, sure=False)
        yield fact
    for model in kept_models:
        before = [m for m in nearby(kept_makers, model) if places.follows(letter, m, model)]
        values = of_maker_named(letter, book, model, kept_makers, only)
        theirs = _nearly(letter, book, model, before)
        in_two = (read_in_two(letter, book, m, model) for m in nearby(kept_makers, model))
        values = tuple(dict.fromkeys(chain(values, *in_two, theirs)))
        fact = _fact(letter, "model", replace(model, values=values), model, (*before[-1:], model))
        if theirs:
            fact = replace(fact, sure=False, similar=True)
        if _alternative(letter, model, kept_models):
            fact = replace(fact, sure=False)
        yield _beyond(letter, fact, model, names, taken)


def _fact(letter: Letter, name: str, read: Hit, hit: Hit, phrase: Sequence[Hit]) -> Fact:
    start, end = places.place(letter, hit)
    lead = places.before(letter, phrase[0])
    rest = places.after(letter, phrase[-1])
    return Fact(
        name=name,
        value=read.values,
        words=letter.text.raw[start:end],
        start=start,
        end=end,
        negated=denied(lead),
        sure=not hit.slips and not doubted(lead, rest),
        similar=bool(hit.slips),
    )


def _beyond(
    letter: Letter, fact: Fact, hit: Hit, names: Sequence[Hit], taken: Sequence[Taken]
) -> Fact:
    """The fact, as a likeness where the name goes on beyond what is listed."""
    last = goes_on(letter, hit, names, taken)
    if last is not None:
        end = letter.words[last].end
        words = letter.text.raw[fact.start : end]
        return replace(fact, words=words, end=end, sure=False, similar=True)
    if starts_earlier(letter, hit, names):
        return replace(fact, sure=False)
    return fact


def _narrowed(book: NameBook, maker: Hit, models: Sequence[Hit]) -> Hit:
    """A maker's nickname that several have, narrowed by the model right after it."""
    makes = {book.maker_of[name] for model in models[:1] for name in model.values}
    left = tuple(value for value in maker.values if value in makes)
    return replace(maker, values=left) if left else maker


def _nearly(letter: Letter, book: NameBook, model: Hit, makers: Sequence[Hit]) -> tuple[str, ...]:
    """Another maker's model, next to a maker with one that is nearly so called: the latter's."""
    if model.slips or not makers or own(book, makers[-1], model):
        return ()
    near = book.models.likeness.near(model.key)
    return tuple(
        name
        for key in near
        for name in book.models.values[key]
        if book.maker_of[name] in makers[-1].values
    )


def _twin(hit: Hit, hits: Sequence[Hit]) -> Hit | None:
    same = (o for o in nearby(hits, hit) if (o.first, o.last) == (hit.first, hit.last))
    return next(same, None)


def _is_model_here(
    letter: Letter, book: NameBook, maker: Hit, makers: Sequence[Hit], models: Sequence[Hit]
) -> bool:
    """Whether words that name a maker, and are or begin a model's name, can only be the model's."""
    holder = next((m for m in nearby(models, maker) if maker.within(m)), None)
    if holder is None or own(book, maker, holder) or places.said_as_maker(letter, maker):
        return False
    alone = holder.within(maker)
    return (alone and places.said_as_model(letter, maker)) or any(
        own(book, other, holder) and places.follows(letter, other, holder)
        for other in nearby(makers, holder)
        if not other.overlaps(holder)
    )


def _is_maker_here(
    letter: Letter, book: NameBook, model: Hit, makers: Sequence[Hit], models: Sequence[Hit]
) -> bool:
    """Whether words that are a maker's and a model's name stand where only a maker's can."""
    twin = _twin(model, makers)
    if twin is None or places.said_as_model(letter, model):
        return False
    return places.said_as_maker(letter, model) or any(
        own(book, twin, other) and places.follows(letter, twin, other)
        for other in nearby(models, twin)
        if not other.overlaps(twin)
    )


def _of_something_else(letter: Letter, maker: Hit, models: Sequence[Hit]) -> bool:
    """Whether it is the make of the seat, the handle or the seal that is named."""
    if places.of_other_ware(letter, maker):
        return True
    more = any(maker.last < m.first <= maker.last + 1 for m in nearby(models, maker))
    return places.of_a_seal(letter, maker) and not more


def _alternative(letter: Letter, hit: Hit, hits: Sequence[Hit]) -> bool:
    """'The Alder or the Birk': neither is sure."""
    for other in nearby(hits, hit):
        first, second = sorted((hit, other), key=lambda h: h.first)
        low, high = places.place(letter, first)[1], places.place(letter, second)[0]
        if first.last < second.first and _OR.fullmatch(letter.said, low, high):
            return True
    return False
