"""Which models a letter names, and whose they are."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from assistant.reading.names import places
from assistant.reading.names.book import NameBook
from assistant.reading.names.letter import Letter
from assistant.reading.names.likeness import slips, slips_allowed
from assistant.reading.names.makers import own
from assistant.reading.names.spans import Hit, alike, nearby

_EAR_SHOT = 6  # words after a maker's name in which a misspelled model of it is looked for
_DAYS = frozenset(
    """monday tuesday wednesday thursday friday saturday sunday april may june july august september
    october summer winter spring autumn christmas easter""".split()  # noqa: SIM905
)  # answers to 'since when?'
_MOST_COMPARED = 5000  # models of one maker that are compared one by one


def shown_models(
    letter: Letter, book: NameBook, models: Sequence[Hit], makers: Sequence[Hit]
) -> list[Hit]:
    """Of the models letter for letter, those that are meant as names."""
    return [
        hit
        for hit in models
        if not hit.plain or _shown(letter, book, hit, makers)
        if not any(_swallowed(hit, maker) for maker in nearby(makers, hit))
        if not places.someone_else(letter, hit)
    ]


def similar_models(
    letter: Letter, book: NameBook, makers: Sequence[Hit], models: Sequence[Hit]
) -> list[Hit]:
    """Models by likeness; near a maker first those of the maker, and with one slip more."""
    near = book.models.likeness.near
    heard = {
        word: maker
        for maker in makers
        for word in range(maker.first - 2, maker.last + 1 + _EAR_SHOT)
    }

    def close(word: int, written: str) -> Mapping[str, int]:
        found = near(written)
        maker = heard.get(word)
        if maker is None:
            return found
        ours: dict[str, int] = {}
        for name in maker.values:
            ours.update(_of_maker(book, name, written, found))
        return ours or found

    return [
        hit
        for hit in alike(letter, book.models, close)
        if not any(hit.overlaps(m) and not _longer(hit, m) for m in nearby(models, hit))
        if not places.someone_else(letter, hit)
        if not any(hit.within(m) and m.slips <= hit.slips for m in nearby(makers, hit))
    ]


def _of_maker(book: NameBook, maker: str, written: str, found: Mapping[str, int]) -> dict[str, int]:
    keys = book.by_maker.get(maker, {})
    if len(keys) > _MOST_COMPARED:
        return {key: distance for key, distance in found.items() if key in keys}
    ours: dict[str, int] = {}
    for key in keys:
        if abs(len(key) - len(written)) > 3:
            continue
        allowed = slips_allowed(key)
        if allowed and len(key) >= 6:
            allowed += 1
        if allowed and (distance := slips(written, key, allowed)) is not None:
            ours[key] = distance
    return ours


def _longer(hit: Hit, inner: Hit) -> bool:
    """Whether a likeness goes on where a listed name ends ('Alder Dal' for 'Alder Dale')."""
    return (
        inner.within(hit)
        and hit.last - hit.first > inner.last - inner.first
        and all(key.startswith(inner.key) or key.endswith(inner.key) for key in hit.other_keys)
        and not any(key == inner.key for key in hit.other_keys)
    )


def of_maker_named(
    letter: Letter, book: NameBook, hit: Hit, makers: Sequence[Hit], only: tuple[str, ...]
) -> tuple[str, ...]:
    """The readings of a model that the maker next to it, or the only maker named, leaves.

    A maker who makes none of them leaves them all: the letter then disagrees with the tables.
    """
    if len({book.maker_of[name] for name in hit.values}) < 2:
        return hit.values
    named = _next_to(letter, hit, makers) or only
    left = tuple(name for name in hit.values if book.maker_of[name] in named)
    return left or hit.values


def _next_to(letter: Letter, hit: Hit, makers: Sequence[Hit]) -> tuple[str, ...]:
    close = nearby(makers, hit, 40)
    for maker in close:
        if places.follows(letter, maker, hit) or places.belongs_by(letter, hit, maker):
            return maker.values
    for maker in close:
        if places.precedes(letter, hit, maker):
            return maker.values
    earlier = [m for m in close if m.last < hit.first and places.same_sentence(letter, hit, m)]
    return earlier[-1].values if earlier else ()


def only_maker(makers: Sequence[Hit]) -> tuple[str, ...]:
    """The one maker that the letter names, if it is one."""
    values = {maker.values for maker in makers}
    return next(iter(values)) if len(values) == 1 else ()


def _swallowed(hit: Hit, maker: Hit) -> bool:
    """Whether a model's name is only a piece of a maker's longer name."""
    return hit.within(maker) and hit.last - hit.first < maker.last - maker.first


def _shown(letter: Letter, book: NameBook, hit: Hit, makers: Sequence[Hit]) -> bool:
    """Whether ordinary words, or a few characters, are meant as a model here."""
    theirs = [m for m in nearby(makers, hit, 40) if own(book, m, hit) and not m.overlaps(hit)]
    if places.said_as_model(letter, hit):
        return True
    if places.whole(letter, hit):
        return hit.key not in _DAYS
    if places.spoken_of(letter, hit) and hit.key not in _DAYS:
        return True
    if places.right_before_fixture(letter, hit) and any(own(book, m, hit) for m in makers):
        return True
    if any(places.follows(letter, m, hit) or places.belongs_by(letter, hit, m) for m in theirs):
        return True
    if hit.key.isdecimal():
        return False
    capital = places.capitals(letter, hit)
    if capital and (places.at_fixture(letter, hit) or hit.last > hit.first):
        return True
    if not letter.mixed and hit.last > hit.first and places.right_before_fixture(letter, hit):
        return True
    for maker in theirs:
        if capital and places.same_sentence(letter, hit, maker):
            return not places.said_as_time(letter, hit)
        if not letter.mixed and 0 < hit.first - maker.last <= 4:
            return len(hit.key) >= 4 and places.same_sentence(letter, hit, maker)
    return False
