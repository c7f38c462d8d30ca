"""A shop's settings: what shop.toml may say, and what it does say."""

from __future__ import annotations

import tomllib
from collections.abc import Collection, Mapping
from dataclasses import dataclass, field
from difflib import get_close_matches
from pathlib import Path
from typing import Any

from assistant.errors import KnowledgeError
from assistant.fitment.picks import PREFERENCES
from assistant.search.model import DEFAULT, Named

CUSTOMERS_MAY_SEE = ("price", "availability", "link")
TEXTS = ("name", "town", "note", "currency", "units", "greeting", "sign_off")
# The tables by their keys; the shop names those of a free table as it likes.
FREE: tuple[str, ...] = ()
TABLES: Mapping[str, tuple[str, ...]] = {
    "contact": FREE,
    "choosing": ("first",),
    "customers": ("may_see",),
    "policies": FREE,
    "search": ("model",),
}
# What answers look for in the free tables; a name nearly the same is a slip.
LOOKED_FOR: Mapping[str, tuple[str, ...]] = {
    "contact": ("email", "phone", "hours"),
    "policies": ("returns", "posting", "to_order", "who_answers", "not_for", "hours"),
}


@dataclass(frozen=True, kw_only=True)
class Settings:
    """What shop.toml says."""

    name: str
    contact: Mapping[str, str] = field(default_factory=dict)
    currency: str = "$"
    units: str = "inch"
    first: tuple[str, ...] = ("in stock", "compatible", "price")
    customers_see: frozenset[str] = frozenset(CUSTOMERS_MAY_SEE)
    greeting: str = ""
    sign_off: str = ""
    policies: Mapping[str, str] = field(default_factory=dict)
    model: str = DEFAULT


def read_settings(path: Path) -> Settings:
    """The settings in shop.toml, with a default for each that is left out but the name.

    Raises:
        KnowledgeError: a setting is none that is known, or cannot be what it says.
    """
    raw = _raw(path)
    where = str(path)
    _all_known(raw, where)
    if "name" not in raw:
        raise KnowledgeError(f"{where}, field name", "is missing", "write name = '...'")
    texts = {key: _text(raw, key, where) for key in TEXTS if key in raw}
    if not texts["name"].strip():
        raise KnowledgeError(f"{where}, field name", "is empty", "write name = '...'")
    tables = {name: _table(raw, name, where) for name in TABLES}
    first = _words(tables, "choosing", "first", Settings.first, where)
    _some_of(first, PREFERENCES, f"{where}, field choosing.first", "no preference")
    sees = _words(tables, "customers", "may_see", CUSTOMERS_MAY_SEE, where)
    _some_of(
        sees,
        CUSTOMERS_MAY_SEE,
        f"{where}, field customers.may_see",
        "nothing that customers may see",
    )
    contact = _texts(tables, "contact", where)
    policies = _texts(tables, "policies", where)
    if hours := contact.get("hours"):
        policies.setdefault("hours", f"We are open {hours}.")
    return Settings(
        name=texts["name"],
        contact=contact,
        currency=texts.get("currency", Settings.currency),
        units=texts.get("units", Settings.units),
        first=first,
        customers_see=frozenset(sees),
        policies=policies,
        greeting=texts.get("greeting", ""),
        sign_off=texts.get("sign_off", ""),
        model=_model(tables["search"], path),
    )


def meant(word: str, known: Collection[str]) -> list[str]:
    """The known names that a mistyped one is near to, the nearest first."""
    return get_close_matches(word.lower(), known)


def _raw(path: Path) -> Mapping[str, Any]:
    where = str(path)
    try:
        return tomllib.loads(path.read_text(encoding="utf-8"))
    except FileNotFoundError:
        raise KnowledgeError(where, "the file is missing", "add it with name = '...'") from None
    except OSError as error:
        raise KnowledgeError(
            where, f"cannot be read ({error.strerror})", "put a file of settings there"
        ) from error
    except (tomllib.TOMLDecodeError, UnicodeDecodeError) as error:
        raise KnowledgeError(where, f"is not sound TOML ({error})", "correct that line") from error


def _all_known(raw: Mapping[str, Any], where: str) -> None:
    """A mistyped setting would do nothing, and nobody would be told."""
    for key, value in raw.items():
        if key not in TEXTS and key not in TABLES:
            raise _unknown(key, "", where)
        keys = TABLES.get(key, FREE)
        if keys != FREE and isinstance(value, dict):
            for inner in value.keys() - {*keys}:
                raise _unknown(inner, key, where)
        if key in LOOKED_FOR and isinstance(value, dict):
            for inner in value.keys() - {*LOOKED_FOR[key]}:
                if near := get_close_matches(inner.lower(), LOOKED_FOR[key], cutoff=0.75):
                    raise KnowledgeError(
                        f"{where}, field {key}.{inner}",
                        "is nothing that answers look for",
                        f"perhaps {near[0]} is meant",
                    )


def _unknown(key: str, table: str, where: str) -> KnowledgeError:
    field = f"{table}.{key}" if table else key
    return KnowledgeError(f"{where}, field {field}", "is no setting", _instead(key, table))


def _instead(key: str, table: str) -> str:
    """What may have been meant: a name nearly the same, or the right name at the wrong place."""
    known = TABLES[table] if table else (*TEXTS, *TABLES)
    if near := meant(key, known):
        return f"perhaps {_shown(near[0], table)} is meant"
    if key in TEXTS:
        return f"write {key} above the first [table]"
    for other, keys in TABLES.items():
        if key in keys:
            return f"write {key} below [{other}]"
    names = ", ".join(_shown(name, table) for name in known)
    return f"[{table}] holds only {names}" if table else f"use some of: {names}"


def _shown(name: str, table: str) -> str:
    return f"[{name}]" if not table and name in TABLES else name


def _text(raw: Mapping[str, Any], key: str, where: str, table: str = "") -> str:
    value = raw[key]
    if not isinstance(value, str):
        field = f"{table}.{key}" if table else key
        raise KnowledgeError(f"{where}, field {field}", "is no text", f"write {key} = '...'")
    return value


def _texts(tables: Mapping[str, Mapping[str, Any]], table: str, where: str) -> dict[str, str]:
    """A table that is free but for this: it holds texts."""
    return {key: _text(tables[table], key, where, table) for key in tables[table]}


def _model(search: Mapping[str, Any], path: Path) -> str:
    """The name of the model; a folder is named from the shop's own."""
    place = f"{path}, field search.model"
    if "model" not in search:
        return Named(DEFAULT, place)
    name = _text(search, "model", str(path), "search")
    if not name.strip():
        raise KnowledgeError(place, "is empty", "write model = '...' or leave it out")
    beside = path.parent.parent / name
    return Named(str(beside) if beside.is_dir() else name, place)


def _words(
    tables: Mapping[str, Mapping[str, Any]],
    table: str,
    key: str,
    default: tuple[str, ...],
    where: str,
) -> tuple[str, ...]:
    found = tables[table].get(key, default)
    if not isinstance(found, (list, tuple)) or not all(isinstance(item, str) for item in found):
        raise KnowledgeError(
            f"{where}, field {table}.{key}",
            "is no list of words",
            f'write {key} = ["...", "..."]',
        )
    return tuple(found)


def _some_of(words: Collection[str], known: Collection[str], where: str, none: str) -> None:
    for word in words:
        if word not in known:
            raise KnowledgeError(where, f"'{word}' is {none}", "use some of: " + ", ".join(known))


def _table(raw: Mapping[str, Any], key: str, where: str) -> Mapping[str, Any]:
    value = raw.get(key, {})
    if not isinstance(value, dict):
        raise KnowledgeError(f"{where}, field {key}", "is no table", f"write [{key}] above it")
    return value
