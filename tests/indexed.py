"""A small shop's notes and styles as an index sees them, and two indexes laid side by side.

What is embedded is told here and in the table of changes in `test_index_build`; all other tests
hold whatever it is.
"""

from __future__ import annotations

import hashlib
import resource
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from assistant.records.notes import parse_note
from assistant.records.rows import Likeness, Style
from assistant.search.content import Content
from assistant.search.index import Index, texts_of, vectors_of
from assistant.search.model import Encoder
from tests.encoders import WordHashes
from tests.trade import row

FOR_STAFF = "---\ntitle: {}\naudience: staff\n---\n\n{}\n"
FOR_CUSTOMERS = "---\ntitle: {}\naudience: customers\nstyles: [{}]\n---\n\n{}\n"

SLACK = "A chain needs about half an inch of slack while the flapper lies shut."
DYE = "Put a few drops of food colouring into the tank and wait fifteen minutes."


def asking(note: str, section: str, *wordings: str) -> str:
    """A note whose front matter has other wordings of the question that a section answers."""
    line = f"asked: {{{section}: [{', '.join(wordings)}]}}"
    return note.replace("\naudience:", f"\n{line}\naudience:", 1)


LOOP = "the links hang in a loop"
BACK = "can it go back once it is fitted"
# Trade facts in these notes: common practice, no source.
NOTES: Mapping[str, str] = {
    "chains": asking(
        FOR_CUSTOMERS.format(
            "Chains",
            "pegged-flapper",
            f"## How much slack\n\n{SLACK}\nSo the rubber can settle.\n\n"
            "## Too long\n\nA long chain gets caught under the flapper.",
        ),
        "too-long",
        LOOP,
    ),
    "dye-test": FOR_CUSTOMERS.format(
        "The dye test", "tank-ball", f"{DYE}\nColour in the bowl means that the seal leaks."
    ),
    "returns": asking(
        FOR_STAFF.format("Sending back", "## Worn seals\n\nA seal that was wet is not sold again."),
        "worn-seals",
        BACK,
    ),
}
STYLES: Mapping[str, str] = {
    "pegged-flapper": "A rubber flap with two ears. The ears sit on pegs.",
    "tank-ball": "A hollow ball on a wire.",
}
PLUM, LEVER = "like a plum on a wire", "the lever at the front"
# By number: the style that customers describe, and their words; without a style it is no seal.
LIKENESSES: Mapping[str, tuple[str | None, str]] = {"1": ("tank-ball", PLUM), "2": (None, LEVER)}
QUESTIONS = (
    "How much slack does a chain need?",
    "food colouring in the tank",
    "is a wet seal sold again",
    "porcelain",
)


def content(
    notes: Mapping[str, str] = NOTES,
    styles: Mapping[str, str] = STYLES,
    likenesses: Mapping[str, tuple[str | None, str]] = LIKENESSES,
) -> Content:
    """What an index is built from: the notes' Markdown by name, the styles' looks by style."""
    return Content(
        {name: parse_note(text, Path(f"{name}.md")) for name, text in sorted(notes.items())},
        {
            style: row(Style, style=style, plain_name=style.replace("-", " "), looks=looks)
            for style, looks in styles.items()
        },
        {
            number: row(Likeness, likeness=number, style=style, words=words)
            for number, (style, words) in likenesses.items()
        },
    )


def texts(of: Content) -> list[str]:
    """Every text that a build from nothing embeds, once."""
    return [*dict.fromkeys(texts_of(of.passages, of.descriptions))]


def contents(index: Index | None) -> tuple[Any, ...] | None:
    """All that an index holds, to be compared with another's."""
    if index is None:
        return None
    return (index.made, index.passages, index.descriptions, vectors_of(index).tolist())


def rankings(index: Index, encoder: Encoder | None = None) -> list[list[tuple[float, ...]]]:
    """Places and scores that some questions find, for staff and for customers."""
    meanings = (encoder or WordHashes()).encode(QUESTIONS)
    return [
        [
            (hit.place, hit.fused, hit.likeness, hit.wording)
            for hit in index.find(question, meaning, 10, index.allowed(audience))
        ]
        for question, meaning in zip(QUESTIONS, meanings, strict=True)
        for audience in ("staff", "customers")
    ]


def built_folders(folder: Path) -> list[str]:
    """The names of the built indexes in an index folder, the one that holds and any left over."""
    return sorted(path.name for path in folder.glob("built-*"))


def inside(folder: Path, name: str) -> Path:
    """A file of the index, where `current` says that it lies."""
    return folder / (folder / "current").read_text().split()[0] / name


def put_manifest(folder: Path, raw: bytes) -> Path:
    """A manifest as a build would have written it: `current` holds its digest."""
    manifest = inside(folder, "manifest.json")
    manifest.write_bytes(raw)
    told = hashlib.sha256(raw).hexdigest()
    (folder / "current").write_text(f"{manifest.parent.name} {told}\n")
    return manifest


def state(folder: Path) -> dict[str, tuple[int, int, int]]:
    """Every file of an index folder, and what would betray that it was written again.

    The lock is left out: it is taken, never written.
    """
    return {
        str(path.relative_to(folder)): (told.st_ino, told.st_mtime_ns, told.st_size)
        for path in sorted(folder.rglob("*"))
        if path.name != ".lock" and (told := path.stat())
    }


@contextmanager
def full_disk(room: int = 0) -> Iterator[None]:
    """A disk on which no file can grow past `room` bytes."""
    soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (room, hard))
    try:
        yield
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))
