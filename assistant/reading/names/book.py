"""Every name and number of the tables, indexed once for the readers of names."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterable, Mapping
from functools import cached_property

from assistant.reading.names.keys import folded, name_keys, name_words, number_key
from assistant.reading.names.letter import letters
from assistant.reading.names.likeness import Likeness
from assistant.records.tables import Tables

_PREFIX = re.compile(r"[a-z]{2,}(?=\d)")
MOST_WORDS = 6  # of a message, that are tried as one name

Values = tuple[str, ...]


class Index:
    """Listed names by key; a key may stand for several rows."""

    def __init__(self, names: Iterable[tuple[str, str]]) -> None:
        found: dict[str, dict[str, None]] = defaultdict(dict)
        words: dict[str, frozenset[str]] = {}
        for name, value in names:
            own = name_words(name)
            for key in name_keys(name):
                found[key][value] = None
                words[key] = words[key] | own if key in words else own
        self.values: dict[str, Values] = {key: tuple(rows) for key, rows in found.items()}
        self.words = words
        self.vocabulary = frozenset(word for own in words.values() for word in own)
        self.longest = max((len(key) for key in found), default=0)

    @cached_property
    def likeness(self) -> Likeness:
        """The keys by likeness."""
        return Likeness(self.values)


LEAST_DIGITS = 4  # of a number told without its prefix; fewer may be anything


class NameBook:
    """The names of a shop's tables, made once; a message only ever looks up keys."""

    def __init__(self, tables: Tables) -> None:
        self.brands = Index(
            (name, row.brand)
            for row in tables.brands.values()
            for name in (row.brand, *row.aliases)
        )
        self.models = Index(
            (name, row.full_name)
            for row in tables.builds.values()
            for name in (row.model, *row.aliases)
        )
        self.maker_of: Mapping[str, str] = {
            full: rows[0].brand for full, rows in tables.models.items()
        }
        self.by_maker = _by_maker(self.models, self.maker_of)
        self.numbers = Numbers((number, number) for number in tables.numbered)
        self.parts = Numbers(
            (number, seal.part_no)
            for seal in tables.seals.values()
            for number in (seal.part_no, *seal.maker_no, *_without_prefix(seal.part_no))
        )
        self.shop_numbers = frozenset(number_key(part_no) for part_no in tables.seals)
        self.ours = self.shop_numbers | {
            bare for part_no in tables.seals for bare in _without_prefix(part_no)
        }
        self.shop_prefixes = frozenset(
            match[0] for number in self.shop_numbers if (match := _PREFIX.match(number))
        )
        self.builds_numbered: Mapping[
            str, frozenset[tuple[str, str]]
        ] = {  # model's and build's name
            number: frozenset((build.full_name, build.build) for build in builds)
            for number, builds in tables.numbered.items()
        }
        self.models_numbered = {
            number: frozenset(build.full_name for build in builds)
            for number, builds in tables.numbered.items()
        }
        self.seal_makers = frozenset(  # first words of makers of seals, who make no toilets
            letters(seal.maker.split()[0]).lower()
            for seal in tables.seals.values()
            if seal.maker and seal.maker not in tables.brands
        )
        self.on_bowls = frozenset(  # a toilet in one piece has one number for bowl and tank
            number
            for number, builds in tables.numbered.items()
            if any(b.pieces == 1 and b.model_no == number for b in builds)
        )


def _without_prefix(part_no: str) -> tuple[str, ...]:
    """'Your 7374' for 'PBK-7374'; not where the digits alone would be read as a year."""
    digits = _PREFIX.sub("", number_key(part_no))
    bare = (
        digits.isdecimal() and len(digits) >= LEAST_DIGITS and digits[:2] not in ("18", "19", "20")
    )
    return (digits,) if bare else ()


class Numbers:
    """Identifying numbers by key, letter for letter or with O for 0 and I for 1."""

    def __init__(self, numbers: Iterable[tuple[str, str]]) -> None:
        exact: dict[str, dict[str, None]] = defaultdict(dict)
        alike: dict[str, dict[str, None]] = defaultdict(dict)
        for number, value in numbers:
            key = number_key(number)
            if key:
                exact[key][value] = None
                alike[folded(key)][key] = None
        self._exact = {key: tuple(values) for key, values in exact.items()}
        self._alike = {form: tuple(keys) for form, keys in alike.items()}
        self.longest = max((len(key) for key in exact), default=0)

    def find(self, written: str) -> tuple[str, ...]:
        """The listed keys that a written key may be; none where a real character differs."""
        if written in self._exact:
            return (written,)
        return self._alike.get(folded(written), ()) if any(map(str.isdigit, written)) else ()

    def values(self, keys: Iterable[str]) -> Values:
        """The rows behind the keys."""
        return tuple(dict.fromkeys(v for key in keys for v in self._exact[key]))


def _by_maker(models: Index, maker_of: Mapping[str, str]) -> dict[str, dict[str, Values]]:
    """For each maker, the keys of its models and the full names behind them."""
    found: dict[str, dict[str, Values]] = defaultdict(dict)
    for key, names in models.values.items():
        for name in names:
            maker = maker_of[name]
            found[maker][key] = (*found[maker].get(key, ()), name)
    return found
