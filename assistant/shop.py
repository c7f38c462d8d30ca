"""A shop: one folder with knowledge/, index/ and eval/, and its settings."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property
from pathlib import Path
from typing import Any

from assistant.errors import KnowledgeError
from assistant.fitment.decide import Counter, counter_for
from assistant.fitment.picks import PREFERENCES
from assistant.reading.names import NameBook
from assistant.records.notes import Note, load_notes
from assistant.records.tables import Tables, load_tables
from assistant.search.content import Content
from assistant.search.model import DEFAULT

DEMO = Path(__file__).resolve().parent.parent  # the demonstration shop lies beside the code
CUSTOMERS_MAY_SEE = ("price", "availability", "link")


@dataclass(frozen=True, kw_only=True)
class Settings:
    """What shop.toml says."""

    name: str
    contact: Mapping[str, str] = field(default_factory=dict)
    currency: str = "$"
    units: str = "inch"
    first: tuple[str, ...] = ("in stock", "compatible", "price")
    customers_see: frozenset[str] = frozenset({"price", "availability", "link"})
    greeting: str = ""
    sign_off: str = ""
    policies: Mapping[str, str] = field(default_factory=dict)
    model: str = DEFAULT


@dataclass(frozen=True, eq=False)
class Shop:
    """A shop's knowledge, loaded once and never changed."""

    folder: Path
    settings: Settings
    tables: Tables
    notes: Mapping[str, Note]

    @cached_property
    def names(self) -> NameBook:
        """The names and numbers that letters may hold."""
        return NameBook(self.tables)

    @cached_property
    def counter(self) -> Counter:
        """The tables ready for deciding."""
        return counter_for(self.tables, self.settings.first)

    @cached_property
    def content(self) -> Content:
        """What the index is built from."""
        return Content(self.notes, self.tables.styles, self.tables.likenesses)

    @property
    def index(self) -> Path:
        """The folder in which the index is kept."""
        return self.folder / "index"


def find_shop(folder: Path | None) -> Path:
    """The folder given; else the nearest one upwards with a shop.toml; else the demonstration."""
    if folder is not None:
        return folder
    here = Path.cwd()
    for place in (here, *here.parents):
        if (place / "knowledge" / "shop.toml").is_file():
            return place
    return DEMO


def open_shop(folder: Path) -> Shop:
    """Loads and cross-checks all of a shop's knowledge.

    Raises:
        KnowledgeError: anything of it is missing or wrong; the sentence says what and where.
    """
    knowledge = folder / "knowledge"
    if not knowledge.is_dir():
        raise KnowledgeError(
            str(knowledge), "the folder is missing", "name a shop's folder with --shop"
        )
    if not (knowledge / "notes").is_dir():
        raise KnowledgeError(
            str(knowledge / "notes"), "the folder is missing", "make it, even if it stays empty"
        )
    settings = read_settings(knowledge / "shop.toml")
    return Shop(
        folder, settings, load_tables(knowledge / "tables"), load_notes(knowledge / "notes")
    )


def read_settings(path: Path) -> Settings:
    """The settings in shop.toml, with a default for each that is left out but the name."""
    where = str(path)
    try:
        raw = tomllib.loads(path.read_text(encoding="utf-8"))
    except FileNotFoundError:
        raise KnowledgeError(where, "the file is missing", "add it with name = '...'") from None
    except OSError as error:
        raise KnowledgeError(
            where, f"cannot be read ({error.strerror})", "put a file of settings there"
        ) from error
    except (tomllib.TOMLDecodeError, UnicodeDecodeError) as error:
        raise KnowledgeError(where, f"is not sound TOML ({error})", "correct that line") from error
    name = _text(raw, "name", where)
    defaults = Settings(name=name)
    first = _words(
        _table(raw, "choosing", where), "first", defaults.first, f"{where}, field choosing"
    )
    for word in first:
        if word not in PREFERENCES:
            raise KnowledgeError(
                f"{where}, field choosing.first",
                f"'{word}' is no preference",
                "use some of: " + ", ".join(PREFERENCES),
            )
    sees = _words(
        _table(raw, "customers", where),
        "may_see",
        tuple(defaults.customers_see),
        f"{where}, field customers",
    )
    for word in sees:
        if word not in CUSTOMERS_MAY_SEE:
            raise KnowledgeError(
                f"{where}, field customers.may_see",
                f"'{word}' is nothing that customers may see",
                "use some of: " + ", ".join(CUSTOMERS_MAY_SEE),
            )
    return Settings(
        name=name,
        contact={key: str(value) for key, value in _table(raw, "contact", where).items()},
        currency=str(raw.get("currency", defaults.currency)),
        units=str(raw.get("units", defaults.units)),
        first=first,
        customers_see=frozenset(sees),
        policies=_policies(raw, where),
        greeting=str(raw.get("greeting", "")),
        sign_off=str(raw.get("sign_off", "")),
        model=_model(_table(raw, "search", where), path),
    )


def _text(raw: Mapping[str, Any], key: str, where: str) -> str:
    value = raw.get(key)
    if not isinstance(value, str) or not value.strip():
        raise KnowledgeError(f"{where}, field {key}", "is missing", f"write {key} = '...'")
    return value


def _model(raw: Mapping[str, Any], path: Path) -> str:
    """The name of the model; a folder is named from the shop's own."""
    if "model" not in raw:
        return DEFAULT
    name = _text(raw, "model", f"{path}, table search")
    beside = path.parent.parent / name
    return str(beside) if beside.is_dir() else name


def _policies(raw: Mapping[str, Any], where: str) -> dict[str, str]:
    """The shop's policies in sentences, with its hours among them."""
    found = {key: str(value) for key, value in _table(raw, "policies", where).items()}
    if hours := _table(raw, "contact", where).get("hours"):
        found.setdefault("hours", f"We are open {hours}.")
    return found


def _words(
    raw: Mapping[str, Any], key: str, default: tuple[str, ...], where: str
) -> tuple[str, ...]:
    found = raw.get(key, default)
    if not isinstance(found, (list, tuple)) or not all(isinstance(item, str) for item in found):
        raise KnowledgeError(
            f"{where}.{key}", "is no list of words", f'write {key} = ["...", "..."]'
        )
    return tuple(found)


def _table(raw: Mapping[str, Any], key: str, where: str) -> Mapping[str, Any]:
    value = raw.get(key, {})
    if not isinstance(value, dict):
        raise KnowledgeError(f"{where}, field {key}", "is no table", f"write [{key}] above it")
    return value
