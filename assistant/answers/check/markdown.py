"""Markdown into blocks and sentences, and back again without the ones taken out."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field

from markdown_it import MarkdownIt
from markdown_it.token import Token

from assistant.answers.check.lexicon import Lexicon
from assistant.answers.check.words import alike, words

_STOP = re.compile(r"[.!?]+[\"')\]]*(\s+)(?=[A-Z0-9\"'(\[$€£])")
_RULE = re.compile(r" {0,3}([-*_])( *\1){2,} *")
_PLAIN = {"text", "strong_open", "strong_close", "em_open", "em_close", "softbreak"}
_LINKED = {"link_open", "link_close", "code_inline", "hardbreak"}


@dataclass
class Sentence:
    """Its words as read, its source, and whether it is to be taken out."""

    text: str
    source: str
    taken: bool = False


@dataclass
class Block:
    """A paragraph, heading or item: its lines, its sentences.

    `kind` is 'text', 'quote', or 'other' for what no answer may hold. An `atomic` block
    stands or falls as a whole. `links` are addresses it points to.
    """

    kind: str
    lines: tuple[int, int]
    content: str
    sentences: list[Sentence]
    atomic: bool = False
    links: tuple[str, ...] = ()
    in_list: int | None = None


@dataclass
class Document:
    """The lines of a text and what stands in them, in order: blocks, and list events."""

    lines: list[str]
    events: list[Block | str] = field(default_factory=list)

    @property
    def blocks(self) -> list[Block]:
        """The blocks alone."""
        return [event for event in self.events if isinstance(event, Block)]


def parse(text: str, lexicon: Lexicon) -> Document:
    """Blocks and sentences of a text."""
    text = text.replace("\r\n", "\n").replace("\r", "\n")  # as the parser takes them
    document = Document(text.split("\n"))
    lists: list[int] = []
    quoted = opened = 0
    for token in MarkdownIt("commonmark").parse(text):
        if token.type in ("bullet_list_open", "ordered_list_open"):
            opened += 1
            lists.append(opened)
            document.events.append("list")
        elif token.type in ("bullet_list_close", "ordered_list_close"):
            lists.pop()
            document.events.append("end of list")
        elif token.type == "list_item_open":
            document.events.append("item")
        elif token.type == "blockquote_open":
            quoted += 1
        elif token.type == "blockquote_close":
            quoted -= 1
        elif token.type == "inline" and token.map:
            block = _block(token, lexicon, quoted > 0)
            block.in_list = lists[-1] if lists else None
            document.events.append(block)
        elif token.type in ("fence", "code_block", "html_block") and token.map:
            start, end = token.map
            raw = "\n".join(document.lines[start:end])
            document.events.append(
                Block("other", (start, end), raw, [Sentence(raw, raw)], atomic=True)
            )
    _keep_loose_lines(document)
    return document


def _block(token: Token, lexicon: Lexicon, quoted: bool) -> Block:
    assert token.map is not None
    children = token.children or []
    kinds = {child.type for child in children}
    visible = "".join("\n" if c.type.endswith("break") else c.content for c in children)
    kind = "quote" if quoted else "text" if kinds <= _PLAIN | _LINKED else "other"
    links = tuple(str(c.attrs.get("href", "")) for c in children if c.type == "link_open")
    places = _aligned(token.content, visible) if kinds <= _PLAIN else None
    spans = sentence_spans(visible, lexicon)
    sentences = [Sentence(" ".join(visible[a:b].split()), "") for a, b in spans]
    lines = (token.map[0], token.map[1])
    if kind != "text" or places is None or not _sliced(sentences, spans, token.content, places):
        return Block(kind, lines, token.content, sentences, atomic=True, links=links)
    return Block(kind, lines, token.content, sentences)


def _sliced(
    sentences: Sequence[Sentence], spans: Sequence[tuple[int, int]], content: str, places: list[int]
) -> bool:
    """Gives each sentence its source; not where bold begins in one and ends in another."""
    starts = [0, *[places[a] for a, _ in spans[1:]], len(content)]
    for number, sentence in enumerate(sentences):
        start, end = starts[number], starts[number + 1]
        while number and content[start - 1] in "*_":  # marks before a first word belong to it
            start -= 1
        while number + 1 < len(sentences) and content[end - 1] in "*_":
            end -= 1
        sentence.source = content[start:end]
        if any(sentence.source.count(mark) % 2 for mark in "*_"):
            return False
    return True


def _aligned(content: str, visible: str) -> list[int] | None:
    """Where each visible letter stands in the source; `None` if more than marks differ."""
    places: list[int] = []
    at = 0
    for letter in visible:
        while at < len(content) and content[at] != letter and content[at] in "*_ ":
            at += 1
        if at >= len(content) or content[at] != letter:
            return None
        places.append(at)
        at += 1
    return places if set(content[at:]) <= set("*_ ") else None


def sentence_spans(text: str, lexicon: Lexicon | None) -> list[tuple[int, int]]:
    """Where the sentences of a text begin and end; never inside a name or a quotation."""
    flat = alike(text)
    closed = _closed(flat, lexicon)
    starts = [0]
    for stop in _STOP.finditer(flat):
        if not any(a < stop.start() + 1 < b for a, b in closed):
            starts.append(stop.end())
    spans = []
    for start, end in zip(starts, [*starts[1:], len(text)], strict=True):
        if text[start:end].strip():
            spans.append((start, end))
    return spans


def _closed(text: str, lexicon: Lexicon | None) -> list[tuple[int, int]]:
    found = [m.span() for m in re.finditer(r'(?<![\w"])"[^"]*"', text)]
    if lexicon is None or not _STOP.search(text):
        return found
    row, at = words(text), 0
    while at < len(row):
        name = lexicon.find(row, at)
        if name and name[1] > 1:
            found.append((row[at].start, row[at + name[1] - 1].end))
        at += name[1] if name else 1
    return found


def _keep_loose_lines(document: Document) -> None:
    """A line that belongs to no block is blank or a rule, or nothing that may be shown."""
    held = {n for block in document.blocks for n in range(*block.lines)}
    for number, line in enumerate(document.lines):
        if number not in held and line.strip() and not _RULE.fullmatch(line):
            document.events.append(
                Block("other", (number, number + 1), line, [Sentence(line, line)], atomic=True)
            )


def render(document: Document) -> str:
    """The text without the sentences taken out."""
    lines: list[str | None] = list(document.lines)
    for block in document.blocks:
        taken = [s.taken for s in block.sentences]
        if not any(taken):
            continue
        start, end = block.lines
        first = document.lines[start]
        lines[start:end] = [None] * (end - start)
        if block.atomic or all(taken):
            continue
        head = block.content.split("\n", 1)[0]
        indent = first[: first.find(head)] if head in first else ""
        kept = "".join(s.source for s in block.sentences if not s.taken).strip()
        lines[start] = indent + kept.replace("\n", "\n" + " " * len(indent))
    text = "\n".join(line for line in lines if line is not None)
    return re.sub(r"\n{3,}", "\n\n", text).strip("\n")
