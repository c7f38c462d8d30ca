"""The shop's notes: Markdown files with front matter."""

from __future__ import annotations

import errno
import hashlib
import json
from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date
from difflib import get_close_matches
from pathlib import Path
from typing import Any

import yaml
from markdown_it import MarkdownIt
from mdit_py_plugins.front_matter import front_matter_plugin

from assistant.errors import KnowledgeError
from assistant.records.sections import Section, sections

FIELDS = ("title", "audience", "styles", "tags", "updated", "asked")
AUDIENCES = ("customers", "staff")
# What the YAML reader lets through: a day that no month has, a value that is not of its tag,
# brackets a thousand deep.
_YAML_FALLS_OVER = (ValueError, KeyError, AttributeError, TypeError, RecursionError)
_DAY = "tag:yaml.org,2002:timestamp"
LARGEST = 1_000_000  # bytes; the longest note of a trade runs to a few thousand words


class _Loader(yaml.SafeLoader):
    """Reads YAML, but leaves a day as it is written: one that no month has can then be told."""


_Loader.yaml_implicit_resolvers = {
    first: [(tag, form) for tag, form in forms if tag != _DAY]
    for first, forms in yaml.SafeLoader.yaml_implicit_resolvers.items()
}


@dataclass(frozen=True)
class Note:
    """One note; `sections` by their address, such as 'shut-the-supply'.

    `digest` is the SHA-256 of its text.
    """

    name: str
    title: str
    audience: str
    styles: tuple[str, ...]
    tags: tuple[str, ...]
    updated: date | None
    sections: Mapping[str, Section]
    digest: str = ""


def load_notes(folder: Path) -> dict[str, Note]:
    """Every note of the folder by its file name without `.md`.

    Raises:
        KnowledgeError: a note cannot be read, is not UTF-8 or is too large, or its front
            matter is missing or wrong.
    """
    return {path.stem: read_note(path) for path in sorted(folder.glob("*.md")) if _is_note(path)}


def _is_note(path: Path) -> bool:
    return path.is_file() or path.is_symlink()  # a link that leads nowhere is a note gone missing


def read_note(path: Path) -> Note:
    """One note from its file."""
    where = f"{path}, line 1"
    if _has_half_characters(path.name):
        shown = path.name.encode("utf-8", "replace").decode()
        raise KnowledgeError(
            f"{path.parent / shown}, line 1", "the file's name is not UTF-8", "name it anew"
        )
    try:
        size = path.stat().st_size
        if size > LARGEST:
            raise KnowledgeError(
                where, f"the note is {size / 1e6:.0f} MB long", "split it, one subject a note"
            )
        content = path.read_bytes()
    except OSError as error:
        why = "is a link that leads round to itself" if _loops(path) else error.strerror
        raise KnowledgeError(
            where, f"cannot be read ({why})", "put the note itself there"
        ) from error
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = content.count(b"\n", 0, error.start) + 1
        raise KnowledgeError(
            f"{path}, line {line}", "is not UTF-8", "save the note as UTF-8"
        ) from error
    return parse_note(text, path)


def _has_half_characters(text: str) -> bool:
    """Whether a text holds what no UTF-8 file can: half of a pair of surrogates."""
    return any("\ud800" <= sign <= "\udfff" for sign in text)


def _loops(path: Path) -> bool:
    try:
        path.resolve(strict=True)
    except RuntimeError:  # how Python tells of a loop before 3.13; an OSError after
        return True
    except OSError as error:
        return error.errno == errno.ELOOP
    return False


def parse_note(text: str, path: Path) -> Note:
    """`read_note` on text already in hand."""
    tokens = MarkdownIt("commonmark").use(front_matter_plugin).parse(text)
    if not tokens or tokens[0].type != "front_matter":
        opened = text.startswith("---\n")
        raise KnowledgeError(
            f"{path}, line 1",
            "the front matter is not closed" if opened else "the front matter is missing",
            "end it with '---'" if opened else "begin with '---', title and audience",
        )
    head = _front_matter(tokens[0].content, path)
    title = " ".join(str(head["title"]).split())
    found = sections(tokens[1:], title)
    asked = _asked(head, path)
    if unknown := asked.keys() - {section.slug for section in found}:
        raise KnowledgeError(
            f"{path}, field asked",
            f"the note has no section '{sorted(unknown)[0]}'",
            "write the heading in lower case with dashes",
        )
    return Note(
        path.stem,
        title,
        str(head["audience"]),
        _items(head, "styles", path),
        _items(head, "tags", path),
        _updated(head, path),
        {s.slug: replace(s, asked=asked.pop(s.slug, ())) for s in found},
        hashlib.sha256(text.encode("utf-8", "surrogatepass")).hexdigest(),
    )


def _front_matter(content: str, path: Path) -> dict[str, Any]:
    try:
        head = yaml.load(content, _Loader)
        written = json.dumps(head, ensure_ascii=False, default=str)  # a list in itself falls over
    except (yaml.YAMLError, *_YAML_FALLS_OVER) as error:
        mark = getattr(error, "problem_mark", None)
        line = mark.line + 2 if mark else 1
        raise KnowledgeError(
            f"{path}, line {line}", "the front matter is not sound YAML", "check its quotes"
        ) from error
    if _has_half_characters(written):
        raise KnowledgeError(
            f"{path}, line 2", "the front matter holds half a character", "write it in full"
        )
    if not isinstance(head, dict):
        raise KnowledgeError(f"{path}, line 2", "the front matter is empty", "give it a title")
    if unknown := [str(key) for key in head if key not in FIELDS]:
        near = get_close_matches(unknown[0].lower(), FIELDS)
        raise KnowledgeError(
            f"{path}, field {unknown[0]}",
            "is no field of a note",
            f"perhaps '{near[0]}' is meant" if near else f"use some of: {', '.join(FIELDS)}",
        )
    if not str(head.get("title") or "").strip():
        raise KnowledgeError(f"{path}, line 2", "the title is missing", "add 'title: ...'")
    if head.get("audience") not in AUDIENCES:
        raise KnowledgeError(
            f"{path}, line 2",
            f"the audience is '{head.get('audience')}'",
            "write 'audience: customers' or 'audience: staff'",
        )
    return head


def _updated(head: Mapping[str, Any], path: Path) -> date | None:
    """The day the note was last gone over; a note need not tell."""
    value = head.get("updated")
    if value is None:
        return None
    try:
        return date.fromisoformat(str(value))
    except ValueError:
        raise KnowledgeError(
            f"{path}, field updated", f"'{value}' is no day", "write a day such as 2026-11-25"
        ) from None


def _asked(head: Mapping[str, Any], path: Path) -> dict[str, tuple[str, ...]]:
    """Wordings of questions by the section that answers them."""
    value = head.get("asked") or {}
    if not isinstance(value, dict):
        raise KnowledgeError(
            f"{path}, field asked",
            f"'{value}' is no list for each section",
            "write 'section: [...]'",
        )
    return {str(section): _items(value, section, path) for section in value}


def _items(head: Mapping[str, Any], key: str, path: Path) -> tuple[str, ...]:
    value = head.get(key) or []
    if not isinstance(value, list):
        raise KnowledgeError(
            f"{path}, field {key}", f"'{value}' is no list", f"write '{key}: [...]'"
        )
    return tuple(str(item) for item in value)
