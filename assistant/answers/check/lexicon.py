"""Every name that the tables know, in one tree of words; the longest name wins.

Built once for a set of tables and kept as long as they live.
"""

from __future__ import annotations

import re
import weakref
from collections.abc import Sequence
from typing import Any

from assistant.answers.check.general_words import plainly
from assistant.answers.check.words import Word, words
from assistant.records.tables import Tables

# Words of the trade that no alias may claim for itself when they stand alone.
_GENERIC = frozenset(
    {"seal", "seals", "part", "parts", "valve", "valves", "toilet", "toilets", "tank", "tanks"}
    | {"opening", "openings", "ear", "ears", "peg", "pegs", "ring", "rings", "float", "floats"}
    | {"gasket", "canister", "tower", "clip", "strap", "wire"}
    | {"tube", "one", "ones", "model", "models", "set", "pack", "packs", "no", "not", "new", "old"}
)


_TAIL = re.compile(r" (?:on|under|of|with|round|over|snapped)\b")


class Lexicon:
    """Names by their words. `find` gives the longest name at a place."""

    def __init__(self, tables: Tables) -> None:
        self._root: dict[str, Any] = {}
        self._add_builds(tables)
        self._add_seals(tables)
        for style in tables.styles.values():
            for name in (style.style, style.plain_name, *style.aliases):
                self._add(name, "T", style.style)
                for more in _plurals(name):
                    self._add(more, "T", style.style)
        for position in dict.fromkeys(v.position for v in tables.build_valves.values()):
            self._add(position, "Z", position)
        for change in dict.fromkeys(e.change for e in tables.evidence.values() if e.change):
            self._add(change.rstrip(" .!"), "H", plainly(change))

        self._doubtful = _doubtful(tables)

    def may_name(self, text: str) -> bool:
        """Whether a text may name a part, a maker or a model that is not written as the tables do.

        A number of the shape of a part number, a maker in small letters, a model in the plural.
        """
        return self._doubtful.search(text) is not None

    def _add_builds(self, tables: Tables) -> None:
        called = {b.brand: (b.brand, *b.aliases) for b in tables.brands.values()}
        for brand, names in called.items():
            for name in names:
                self._add(name, "B", brand, as_written=True)
        for build in tables.builds.values():
            for name in (build.model, *build.aliases):
                self._add(name, "M", build.build, as_written=True)
                for maker in called.get(build.brand, (build.brand,)):
                    self._add(f"{maker} {name}", "M", build.build)
            if build.model_no:
                self._add(build.model_no, "K", build.model_no)
            if build.tank_mark:
                self._add(build.tank_mark, "W", build.tank_mark)

    def _add_seals(self, tables: Tables) -> None:
        for seal in tables.seals.values():
            self._add(seal.part_no, "P", seal.part_no)
            for name in (seal.name, *seal.aliases):
                self._add(name, "S", seal.part_no)
            for number in seal.maker_no:
                self._add(number, "N", number)
            if seal.maker:
                self._add(seal.maker, "B", seal.maker, as_written=True)
            if seal.colour:
                self._add(seal.colour, "C", seal.colour)
            if seal.material:
                self._add(seal.material, "A", seal.material)

    def _add(self, name: str, kind: str, value: str, *, as_written: bool = False) -> None:
        row = words(name)
        if not row or (len(row) == 1 and row[0].low in _GENERIC and not as_written):
            return
        node = self._root
        for word in row:
            node = node.setdefault(word.low, {})
        # A model is often a common word, so that alone it counts only as the table writes it.
        spelled = tuple(word.text for word in row) if as_written else None
        node.setdefault("", {}).setdefault(kind, {}).setdefault(spelled, {})[value] = None

    def find(
        self, row: Sequence[Word], at: int, without: frozenset[str] = frozenset()
    ) -> tuple[dict[str, tuple[str, ...]], int] | None:
        """What the words from `at` on name, by kind, and how many words that takes."""
        node, best = self._root, None
        for end in range(at, len(row)):
            node = node.get(row[end].low, {})
            if not node:
                break
            if "" in node and (kinds := _kinds(node[""], row[at : end + 1], without)):
                best = kinds, end + 1 - at
        return best


def _doubtful(tables: Tables) -> re.Pattern[str]:
    shapes = {_shape(part) for part in tables.seals}
    makers = {b.brand for b in tables.brands.values()} | {
        s.maker for s in tables.seals.values() if s.maker
    }
    models = {f"{build.model}s" for build in tables.builds.values()}
    names = [f"(?i:{re.escape(name)})" for name in sorted(makers)]
    names += [re.escape(name) for name in sorted(models)]
    return re.compile(rf"(?<!\w)(?:{'|'.join([*sorted(shapes), *names]) or '(?!)'})(?!\w)")


def _shape(part_no: str) -> str:
    """Numbers like this one, joined in any way: 'SL-2044' is as 'SL 9041' and 'SL2044'."""
    pieces = re.findall(r"[^\W\d_]+|\d+", part_no)
    letters = [p for p in pieces if not p.isdigit()]
    if not letters:  # bare digits are any number
        return re.escape(part_no)
    return "[ -./]?".join(rf"\d{{{len(p)}}}" if p.isdigit() else f"(?i:{p})" for p in pieces)


def _plurals(name: str) -> tuple[str, ...]:
    """'flapper on pegs' is many as 'flappers on pegs'."""
    head, *rest = _TAIL.split(name, maxsplit=1)
    return (f"{name}s",) if not rest else (f"{name}s", f"{head}s{name[len(head) :]}")


def _kinds(
    meant: dict[str, Any], row: Sequence[Word], without: frozenset[str]
) -> dict[str, tuple[str, ...]]:
    written = tuple(word.text for word in row)
    titled = tuple(text[:1].upper() + text[1:] for text in written)
    found = {}
    for kind, spellings in meant.items():
        values = dict(spellings.get(None, {}))
        for spelled, names in spellings.items():
            if spelled is not None and (spelled == written or _title(spelled) == titled == written):
                values |= names
        if values and kind not in without:
            found[kind] = tuple(values)
    return found


def _title(row: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(text[:1].upper() + text[1:] for text in row)


_kept: dict[int, tuple[weakref.ref[Tables], Lexicon]] = {}


def lexicon_of(tables: Tables) -> Lexicon:
    """The lexicon of these tables, made at first need."""
    key = id(tables)
    kept = _kept.get(key)
    if kept is None or kept[0]() is not tables:
        gone = weakref.ref(tables, lambda _: _kept.pop(key, None))
        kept = gone, Lexicon(tables)
        _kept[key] = kept
    return kept[1]
