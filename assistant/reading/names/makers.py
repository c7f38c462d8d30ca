"""Which makers a letter names."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.reading.names import places
from assistant.reading.names.book import NameBook
from assistant.reading.names.letter import Letter
from assistant.reading.names.spans import Hit, alike, exact, nearby


def listed_makers(letter: Letter, book: NameBook, models: Sequence[Hit]) -> list[Hit]:
    """Makers letter for letter. `models` are the models that the letter may name."""
    return [
        hit
        for hit in exact(letter, book.brands)
        if (not hit.plain or _shown(letter, book, hit, models))
        and _stands(letter, book, hit, models)
        if not places.someone_else(letter, hit)
    ]


def similar_makers(letter: Letter, book: NameBook, taken: Sequence[Hit]) -> list[Hit]:
    """Makers by likeness, where no name stands letter for letter."""
    near = book.brands.likeness.near
    found = alike(letter, book.brands, lambda _, written: near(written))
    return [
        hit
        for hit in found
        if not any(hit.overlaps(o) and not _holds(hit, o) for o in nearby(taken, hit))
        if not places.someone_else(letter, hit)
    ]


def _holds(hit: Hit, other: Hit) -> bool:
    """Whether a name goes on beyond another's that stands within it."""
    longer = other.within(hit) and hit.last - hit.first > other.last - other.first
    return longer and set(hit.values).isdisjoint(other.values)


def own(book: NameBook, maker: Hit, model: Hit) -> bool:
    """Whether some reading of the maker makes some reading of the model."""
    return any(book.maker_of[name] in maker.values for name in model.values)


def _shown(letter: Letter, book: NameBook, hit: Hit, models: Sequence[Hit]) -> bool:
    """Whether an ordinary word is meant as a maker's name here."""
    words = letter.words[hit.first : hit.last + 1]
    if places.said_as_maker(letter, hit) or places.whole(letter, hit):
        return True
    if any(places.follows(letter, hit, m) and own(book, hit, m) for m in nearby(models, hit)):
        return True
    if len(hit.key) < 4:  # initials
        raw = letter.text.raw[words[0].start : words[-1].end]
        return (letter.mixed and raw.isupper()) or places.right_before_fixture(letter, hit)
    if places.capitals(letter, hit):
        return places.at_fixture(letter, hit) or places.stands_alone(letter, hit)
    return not letter.mixed and places.right_before_fixture(letter, hit)


def _stands(letter: Letter, book: NameBook, hit: Hit, models: Sequence[Hit]) -> bool:
    """A maker's name inside a longer model's name counts only if that model is the maker's own,
    or the rest is a model of the maker's."""
    for model in nearby(models, hit):
        if hit.within(model) and (hit.first, hit.last) != (model.first, model.last):
            return own(book, hit, model) or bool(read_in_two(letter, book, hit, model))
    return True


def read_in_two(letter: Letter, book: NameBook, maker: Hit, model: Hit) -> tuple[str, ...]:
    """The reading of 'Alder Dale' as the maker Alder's model Dale, where that is listed too."""
    if not (maker.within(model) and maker.first == model.first and maker.last < model.last):
        return ()
    rest = "".join(w.key for w in letter.words[maker.last + 1 : model.last + 1])
    return tuple(n for value in maker.values for n in book.by_maker.get(value, {}).get(rest, ()))
