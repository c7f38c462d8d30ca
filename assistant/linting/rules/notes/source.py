"""A note's file as written: its parsed text, and the lines of what its front matter says."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import yaml
from markdown_it import MarkdownIt
from markdown_it.token import Token
from mdit_py_plugins.front_matter import front_matter_plugin

from assistant.linting.gathered import NOTES, Gathered
from assistant.linting.rules.notes.once import once

_FIRST = 2  # the line of the file on which the front matter begins, after its '---'


@dataclass(frozen=True)
class Wording:
    """A wording of the question that a section answers, and its line."""

    section: str
    text: str
    line: int


@dataclass(frozen=True)
class Source:
    """The tokens below the front matter, and the front matter as YAML's own nodes."""

    tokens: Sequence[Token]
    head: yaml.MappingNode

    def line_of(self, field: str) -> int:
        """The line of a field of the front matter; that of its beginning where it is left out."""
        return next((key.start_mark.line + _FIRST for key, _ in self._fields(field)), 1)

    def asked(self) -> Iterator[Wording]:
        """Every wording of `asked`."""
        for _, sections in self._fields("asked"):
            if isinstance(sections, yaml.MappingNode):
                for section, wordings in sections.value:
                    yield from _wordings(str(section.value), wordings)

    def _fields(self, name: str) -> Iterator[tuple[yaml.Node, yaml.Node]]:
        return ((key, value) for key, value in self.head.value if key.value == name)


def _wordings(section: str, listed: yaml.Node) -> Iterator[Wording]:
    """The wordings listed for a section, which may have none."""
    if isinstance(listed, yaml.SequenceNode):
        for one in listed.value:
            text = " ".join(str(one.value).split())
            yield Wording(section, text, one.start_mark.line + _FIRST)


def all_read(gathered: Gathered) -> bool:
    """Whether every note could be read: only then can be told what no note says."""
    return not any(fault.path.startswith(NOTES) for fault in gathered.faults)


@once
def sources(gathered: Gathered) -> dict[str, Source]:
    """The file of every note that can be read, by the note's name."""
    parser = MarkdownIt("commonmark").use(front_matter_plugin)
    found = {}
    for name in gathered.notes:
        text = (gathered.folder / gathered.note_at(name)).read_text(encoding="utf-8-sig")
        head, *tokens = parser.parse(text)
        fields = yaml.compose(head.content, yaml.SafeLoader)
        assert isinstance(fields, yaml.MappingNode)  # else the note could not have been read
        found[name] = Source(tokens, fields)
    return found
