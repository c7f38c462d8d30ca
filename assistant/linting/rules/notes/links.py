"""Links in notes lead somewhere: to a note, to a section of it, to a picture."""

from __future__ import annotations

import os.path
import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import partial
from urllib.parse import unquote

from markdown_it.token import Token

from assistant.linting.finding import Finding, Rule
from assistant.linting.gathered import NOTES, PICTURES, Gathered
from assistant.linting.rules.notes.source import Source, sources
from assistant.records.notes import Note
from assistant.records.sections import headings, slug

_ELSEWHERE = re.compile(r"[a-z][a-z0-9+.-]*:|//", re.IGNORECASE)  # the web, or a mail


@dataclass(frozen=True)
class Link:
    """An address as written, its line, and whether a picture is to be shown there."""

    address: str
    line: int
    shows: bool


def links(source: Source) -> Iterator[Link]:
    """Every link and picture of a note."""
    for token in source.tokens:
        if token.type == "inline" and token.map:
            yield from _in_stretch(token, token.map[0] + 1)


def _in_stretch(inline: Token, line: int) -> Iterator[Link]:
    """The links of a stretch of text, each with the line on which its address stands.

    An address that stands elsewhere (a named link) counts from where it is used.
    """
    breaks = at = 0
    for child in inline.children or ():
        breaks += child.type in ("softbreak", "hardbreak")
        if child.type not in ("link_open", "image"):
            continue
        shows = child.type == "image"
        address = str(child.attrs["src" if shows else "href"])
        either = "|".join(re.escape(way) for way in {address, unquote(address)})
        written = re.compile(rf"\]\(\s*<?(?:{either})").search(inline.content, at)
        if written:
            breaks, at = inline.content.count("\n", 0, written.end()), written.end()
        yield Link(address, line + breaks, shows)


def find(gathered: Gathered) -> Iterator[Finding]:
    """Links that lead nowhere."""
    for name, source in sources(gathered).items():
        finding = partial(Finding, path=gathered.note_at(name))
        for link in links(source):
            if wrong := _wrong(link, gathered.notes[name], gathered):
                what, mend = wrong
                yield finding(line=link.line, what=what, mend=mend)


def _wrong(link: Link, note: Note, gathered: Gathered) -> tuple[str, str] | None:
    """What is wrong with a link, and what to do about it."""
    if _ELSEWHERE.match(link.address):
        return None
    shown = " ".join(unquote(link.address).split())
    path, _, section = unquote(link.address).partition("#")
    if not path and not section:
        return "a link has no address", "write one between the brackets, or only its words"
    target = os.path.normpath(os.path.join(NOTES, path)) if path else gathered.note_at(note.name)
    there = os.path.isfile(gathered.folder / target)
    if link.shows or target.startswith(f"{PICTURES}/"):
        return None if there and target.startswith(f"{PICTURES}/") else _no_picture(shown, gathered)
    name = os.path.basename(target).removesuffix(".md")
    if target != gathered.note_at(name):
        inside = target.startswith("knowledge/")
        return None if there and inside else _no_note(shown, name, gathered)
    if not there:
        return _no_note(shown, name, gathered)
    led = gathered.notes.get(name)
    if led is None:  # it is there and cannot be read, which is told elsewhere
        return None
    if note.audience == "customers" and led.audience == "staff":
        return (
            f"'{shown}' leads customers to a note for staff",
            "leave the link out, or say here what customers may know",
        )
    if section and section not in _addresses(led, sources(gathered)[name]):
        known = ", ".join(led.sections)
        return f"'{shown}' leads to no section of that note", f"name one of: {known}"
    return None


def _no_picture(shown: str, gathered: Gathered) -> tuple[str, str]:
    name = os.path.basename(shown)
    if name and os.path.isfile(gathered.folder / PICTURES / name):
        return f"'{shown}' leads to no picture", f"write '../pictures/{name}'"
    return f"'{shown}' leads to no picture of {PICTURES}", "put it there, or correct its name"


def _no_note(shown: str, name: str, gathered: Gathered) -> tuple[str, str]:
    if name in gathered.notes:
        return f"'{shown}' leads to no note", f"write '{name}.md'"
    return (
        f"'{shown}' leads to no note",
        "correct its name, write that note, or keep only the words",
    )


def _addresses(note: Note, source: Source) -> set[str]:
    """Every section, and the headings that have no text of their own."""
    return {*note.sections, *(slug(heading.text) for heading in headings(source.tokens))}


RULE = Rule(
    "broken-link",
    "error",
    "A reader who follows a link must come to what it promises, and who may read a note to one "
    "that they may read. Addresses of the web are not looked up.",
    find,
)
