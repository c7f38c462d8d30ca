"""Markdown cut at its headings, by the parser's own tokens: sections, sentences, lines."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from markdown_it.token import Token

_SENTENCE = re.compile(r"(?<=[.!?])\s+(?=[A-Z0-9'\"])")


@dataclass(frozen=True)
class Line:
    """One sentence of a note and the lines where it begins and ends, counted from 1.

    `mark` is that of the list item which it begins ('2.' or '-'); `points` says that it holds a
    link.
    """

    text: str
    line: int
    last: int = 0
    mark: str = ""
    points: bool = False

    def __post_init__(self) -> None:
        if not self.last:
            object.__setattr__(self, "last", self.line)


@dataclass(frozen=True)
class Section:
    """What stands under one heading: `path` is the headings above it, its own last.

    `lines` are the first and the last line of its text, counted from 1; `asked` are other
    wordings of the question that it answers.
    """

    slug: str
    path: tuple[str, ...]
    sentences: tuple[Line, ...]
    lines: tuple[int, int]
    asked: tuple[str, ...] = ()

    @property
    def heading(self) -> str:
        """The section's own heading."""
        return self.path[-1]


@dataclass(frozen=True)
class Heading:
    """A heading: its level from 1 to 6, its words, its line counted from 1."""

    level: int
    text: str
    line: int


def slug(heading: str) -> str:
    """A heading as an address: lower case, words joined by dashes."""
    return "-".join(re.findall(r"[^\W_]+", heading.lower())) or "section"


def headings(tokens: Sequence[Token]) -> list[Heading]:
    """Every heading of a parsed text, in order."""
    return [
        Heading(int(token.tag[1:]), " ".join(_plain(inline).split()), token.map[0] + 1)
        for token, inline in pairwise(tokens)
        if token.type == "heading_open" and token.map
    ]


def sections(tokens: Sequence[Token], title: str) -> tuple[Section, ...]:
    """The text under each heading that has any. What stands before the first is the title's.

    Two headings alike get the addresses 'chains' and 'chains-2'.
    """
    found: list[Section] = []
    above: list[tuple[int, str]] = [(0, title)]
    under = iter(headings(tokens))
    held: list[Line] = []
    last = 0
    addresses: set[str] = set()

    def close() -> None:
        if held:
            path = _path(above)
            address = _address(slug(path[-1]), addresses)
            found.append(Section(address, path, tuple(held), (held[0].line, last)))
        held.clear()

    previous = mark = ""
    for token in tokens:
        if token.type == "heading_open" and token.map:
            close()
            heading = next(under)
            while above[-1][0] >= heading.level:
                above.pop()
            above.append((heading.level, heading.text))
        elif token.type == "list_item_open":
            mark = f"{token.info}." if token.info else "-"
        elif token.type == "inline" and token.map and previous != "heading_open":
            if _is_picture(token):  # what stands for it is no sentence of the note
                continue
            lines = list(_in_file(token, token.map[0] + 1))
            held += [replace(line, mark=mark) for line in lines[:1]] + lines[1:]
            mark = ""
            last = max(token.map[1], held[0].line if held else 0)
        previous = token.type
    close()
    return tuple(found)


def _is_picture(inline: Token) -> bool:
    """Whether a stretch is a picture, or pictures, and nothing else."""
    children = [c for c in inline.children or () if c.type not in ("softbreak", "hardbreak")]
    return bool(children) and all(child.type == "image" for child in children)


def _path(above: Sequence[tuple[int, str]]) -> tuple[str, ...]:
    """The headings above a text, with the title said once and empty ones left out."""
    words = [text for _, text in above if text]
    return tuple(words[1:] if len(words) > 1 and words[1] == words[0] else words)


def _address(wanted: str, taken: set[str]) -> str:
    address, number = wanted, 1
    while address in taken:
        number += 1
        address = f"{wanted}-{number}"
    taken.add(address)
    return address


def _plain(inline: Token) -> str:
    """The words of a stretch without its marks; line breaks are kept."""
    said = []
    for child in inline.children or ():
        if child.type in ("softbreak", "hardbreak"):
            said.append("\n")
        elif child.type in ("text", "code_inline", "image"):
            said.append(child.content)
        elif child.type == "html_inline":
            said.append(" ")
    return "".join(said)


def _in_file(inline: Token, line: int) -> Iterator[Line]:
    """The sentences of a stretch with their lines in the file.

    A line may break within a link or a code span, of which the plain words show nothing; so each
    sentence is looked up in the source by its first word.
    """
    source, at = inline.content, 0
    linked = _linked(inline)
    for sentence in in_lines(_plain(inline), line):
        points = any(words in sentence.text for words in linked)
        found = source.find(sentence.text.split(" ", 1)[0], at)
        if found < 0:  # an escape or an entity: the plain words must do
            yield replace(sentence, points=points)
            continue
        first = line + source.count("\n", 0, found)
        yield Line(sentence.text, first, first + sentence.last - sentence.line, points=points)
        at = found + 1


def _linked(inline: Token) -> list[str]:
    """The words of the links in a stretch."""
    found: list[str] = []
    inside = False
    for child in inline.children or ():
        if child.type in ("link_open", "link_close"):
            inside = child.type == "link_open"
        elif inside and child.type == "text" and child.content.strip():
            found.append(child.content)
    return found


def in_sentences(text: str) -> list[str]:
    """The sentences of a text."""
    return [line.text for line in in_lines(text, 1)]


def in_lines(content: str, line: int) -> Iterator[Line]:
    """The sentences of a text that begins on a line, each with its own."""
    at = 0
    for stop in [*_SENTENCE.finditer(content), None]:
        end = stop.start() if stop else len(content)
        piece = content[at:end]
        if text := " ".join(piece.split()):
            line += piece[: len(piece) - len(piece.lstrip())].count("\n")
            last = line + piece.strip().count("\n")
            yield Line(text, line, last)
            line = last + piece[len(piece.rstrip()) :].count("\n")
        else:
            line += piece.count("\n")
        line += stop.group().count("\n") if stop else 0
        at = stop.end() if stop else end
