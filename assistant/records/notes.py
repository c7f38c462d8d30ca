"""The shop's notes: Markdown with front matter, read into sections and sentences with lines."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Any

import yaml
from markdown_it import MarkdownIt
from mdit_py_plugins.front_matter import front_matter_plugin

from assistant.errors import KnowledgeError

AUDIENCES = ("customers", "staff")
_SENTENCE = re.compile(r"(?<=[.!?])\s+(?=[A-Z0-9'\"])")


@dataclass(frozen=True)
class Line:
    """One sentence of a note and the line of the file where it begins, counted from 1."""

    text: str
    line: int


@dataclass(frozen=True)
class Section:
    """What stands under one heading."""

    heading: str
    sentences: tuple[Line, ...]


@dataclass(frozen=True)
class Note:
    """One note; `sections` by the slug of their heading, such as 'shut-the-supply'."""

    name: str
    title: str
    audience: str
    styles: tuple[str, ...]
    tags: tuple[str, ...]
    updated: date | None
    sections: Mapping[str, Section]


def slug(heading: str) -> str:
    """A heading as an address: lower case, words joined by dashes."""
    return "-".join(re.findall(r"[a-z0-9]+", heading.lower()))


def load_notes(folder: Path) -> dict[str, Note]:
    """Every note of the folder by its file name without `.md`.

    Raises:
        KnowledgeError: a note is not UTF-8, or its front matter is missing or wrong.
    """
    return {path.stem: read_note(path) for path in sorted(folder.glob("*.md")) if path.is_file()}


def read_note(path: Path) -> Note:
    """One note from its file."""
    try:
        text = path.read_text(encoding="utf-8-sig")
    except UnicodeDecodeError as error:
        line = path.read_bytes().count(b"\n", 0, error.start) + 1
        raise KnowledgeError(
            f"{path}, line {line}", "is not UTF-8", "save the note as UTF-8"
        ) from error
    return parse_note(text, path)


def parse_note(text: str, path: Path) -> Note:
    """`read_note` on text already in hand."""
    tokens = MarkdownIt("commonmark").use(front_matter_plugin).parse(text)
    if not tokens or tokens[0].type != "front_matter":
        raise KnowledgeError(
            f"{path}, line 1", "the front matter is missing", "begin with '---', title and audience"
        )
    head = _front_matter(tokens[0].content, path)
    sections: dict[str, Section] = {}
    heading, in_heading = str(head["title"]), False
    sentences: list[Line] = []
    for token in tokens[1:]:
        if token.type == "heading_open":
            if sentences:
                sections[slug(heading)] = Section(heading, tuple(sentences))
            sentences, in_heading = [], True
        elif token.type == "inline" and in_heading:
            heading, in_heading = token.content, False
        elif token.type == "inline" and token.map:
            sentences += list(_sentences(token.content, token.map[0] + 1))
    if sentences:
        sections[slug(heading)] = Section(heading, tuple(sentences))
    updated = head.get("updated")
    return Note(
        path.stem,
        str(head["title"]),
        str(head["audience"]),
        _items(head, "styles", path),
        _items(head, "tags", path),
        updated if isinstance(updated, date) else None,
        sections,
    )


def _front_matter(content: str, path: Path) -> dict[str, Any]:
    try:
        head = yaml.safe_load(content)
    except (yaml.YAMLError, ValueError) as error:  # a ValueError is a day that no month has
        mark = getattr(error, "problem_mark", None)
        line = mark.line + 2 if mark else 1
        raise KnowledgeError(
            f"{path}, line {line}", "the front matter is not sound YAML", "check its quotes"
        ) from error
    if not isinstance(head, dict):
        raise KnowledgeError(f"{path}, line 2", "the front matter is empty", "give it a title")
    if not head.get("title"):
        raise KnowledgeError(f"{path}, line 2", "the title is missing", "add 'title: ...'")
    if head.get("audience") not in AUDIENCES:
        raise KnowledgeError(
            f"{path}, line 2",
            f"the audience is '{head.get('audience')}'",
            "write 'audience: customers' or 'audience: staff'",
        )
    return head


def _items(head: Mapping[str, Any], key: str, path: Path) -> tuple[str, ...]:
    value = head.get(key) or []
    if not isinstance(value, list):
        raise KnowledgeError(
            f"{path}, field {key}", f"'{value}' is no list", f"write '{key}: [...]'"
        )
    return tuple(str(item) for item in value)


def in_sentences(text: str) -> list[str]:
    """The sentences of a text."""
    return [line.text for line in _sentences(text, 1)]


def _sentences(content: str, line: int) -> Iterator[Line]:
    at = 0
    for stop in [*_SENTENCE.finditer(content), None]:
        end = stop.start() if stop else len(content)
        text = " ".join(content[at:end].split())
        if text:
            yield Line(text, line + content.count("\n", 0, at))
        at = stop.end() if stop else end
