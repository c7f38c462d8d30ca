"""Notes that cannot be used: one sentence with file and line, exit code 2, nothing written.

The commonest faults of front matter stand in `test_bad_input.py`; these are the rarer ones, and
files that are hardly notes.
"""

from __future__ import annotations

import os
from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import NamedTuple

import pytest

from assistant.errors import KnowledgeError
from assistant.records.notes import parse_note
from tests.broken import copy_of_demo, run
from tests.encoders import WordHashes

Break = Callable[[Path], object]

HEAD = "---\ntitle: Hinges\naudience: staff\n"
BODY = "---\n\n# Hinges\n\nThey creak.\n"
NOT_YAML = "the front matter is not sound YAML; check its quotes."
MISSING = "the front matter is missing; begin with '---', title and audience."
NOT_UTF8 = "is not UTF-8; save the note as UTF-8."
NO_TITLE = "the title is missing; add 'title: ...'."
NO_DAY = ", field updated: '{}' is no day; write a day such as 2026-11-25."


class Ran(NamedTuple):
    """How a command ended, and what it printed."""

    code: int
    out: str
    err: str


Build = Callable[[], Ran]


@pytest.fixture
def notes(tmp_path: Path) -> Path:
    """The folder of notes of a shop that has none yet."""
    knowledge = copy_of_demo(tmp_path)
    for note in (knowledge / "notes").iterdir():
        note.unlink()
    return knowledge / "notes"


@pytest.fixture
def build(
    notes: Path,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> Build:
    """Runs `counterhand build` on that shop."""
    monkeypatch.setattr("assistant.search.model.Model", WordHashes)
    monkeypatch.setattr(os, "fsync", lambda _: None)

    def build() -> Ran:
        code = run(monkeypatch, "build", "--shop", str(tmp_path))
        return Ran(code, *capsys.readouterr())

    return build


def refused(ran: Ran, note: Path, sentence: str) -> bool:
    """Whether a build ended in just that sentence about a note, and wrote nothing."""
    assert ran == (2, "", f"counterhand: {note}{sentence}\n")
    assert not (note.parent.parent.parent / "index").exists()
    return True


# -- front matter

FRONT: list[tuple[str, str, str]] = [
    ("of an empty file", "", f", line 1: {MISSING}"),
    ("after an empty line", f"\n{HEAD}{BODY}", f", line 1: {MISSING}"),
    ("that is a list", f"---\n- Hinges\n- staff\n{BODY}", ", line 2: the front matter is empty; "
     "give it a title."),
    ("with a colon in its title", "---\ntitle: Hinges: old ones\naudience: staff\n" + BODY,
     f", line 2: {NOT_YAML}"),
    ("with a tab", f"{HEAD}\ttags: [hinges]\n{BODY}", f", line 4: {NOT_YAML}"),
    ("with a list left open", f"{HEAD}tags: [hinges, pins\n{BODY}", f", line 4: {NOT_YAML}"),
    ("that points at nothing", f"{HEAD}tags: *pins\n{BODY}", f", line 4: {NOT_YAML}"),
    ("that asks for an object of the program",
     f"{HEAD}tags: !!python/object/apply:os.getcwd []\n{BODY}", f", line 4: {NOT_YAML}"),
    ("that calls a word a number", f"{HEAD}tags: !!int pins\n{BODY}", f", line 1: {NOT_YAML}"),
    ("that calls a word a truth", f"{HEAD}tags: !!bool pins\n{BODY}", f", line 1: {NOT_YAML}"),
    ("that calls a word a day", f"{HEAD}updated: !!timestamp soon\n{BODY}",
     f", line 1: {NOT_YAML}"),
    ("updated on a word", f"{HEAD}updated: yesterday\n{BODY}", NO_DAY.format("yesterday")),
    ("updated in a year", f"{HEAD}updated: 2026\n{BODY}", NO_DAY.format("2026")),
    ("updated in a month", f"{HEAD}updated: 2026-11\n{BODY}", NO_DAY.format("2026-11")),
    ("updated in another order", f"{HEAD}updated: 25.11.2026\n{BODY}",
     NO_DAY.format("25.11.2026")),
    ("updated on a day of no month", f"{HEAD}updated: 2026-02-30\n{BODY}",
     NO_DAY.format("2026-02-30")),
    ("updated on several days", f"{HEAD}updated: [2026-11-24]\n{BODY}",
     NO_DAY.format("['2026-11-24']")),
    ("nested without end", f"{HEAD}tags: {'[' * 3000}\n{BODY}", f", line 1: {NOT_YAML}"),
    ("with an empty title", f"---\ntitle:\naudience: staff\n{BODY}", f", line 2: {NO_TITLE}"),
    ("with a title of blanks", f"---\ntitle: '  '\naudience: staff\n{BODY}",
     f", line 2: {NO_TITLE}"),
    ("with tags that are a word", f"{HEAD}tags: hinges\n{BODY}", ", field tags: 'hinges' is no "
     "list; write 'tags: [...]'."),
]  # fmt: skip


@pytest.mark.parametrize(
    ("text", "sentence"), [pytest.param(*case[1:], id=case[0]) for case in FRONT]
)
def test_front_matter(text: str, sentence: str, notes: Path, build: Build) -> None:
    (notes / "hinges.md").write_text(text)
    assert refused(build(), notes / "hinges.md", sentence)


@pytest.mark.parametrize(
    ("line", "day"),
    [
        ("", None),
        ("updated:\n", None),
        ("updated: 2026-11-25\n", date(2026, 11, 25)),
        ("updated: '2026-11-25'\n", date(2026, 11, 25)),
        ("updated: !!timestamp 2026-11-25\n", date(2026, 11, 25)),
    ],
)
def test_a_note_may_say_when_it_was_updated_or_leave_it(line: str, day: date | None) -> None:
    assert parse_note(f"{HEAD}{line}{BODY}", Path("hinges.md")).updated == day


# -- styles


@pytest.mark.parametrize(
    ("style", "mend"),
    [
        ("tank-bal", "perhaps 'tank-ball' is meant."),
        ("Tank-Ball", "perhaps 'tank-ball' is meant."),
        ("tower-seel", "perhaps 'tower-seal' or 'canister-seal' is meant."),
        ("pgged-flapper", "perhaps 'pegged-flapper' or '"),
        ("hinge", "add it there or name one that is."),
    ],
)
def test_a_style_that_the_shop_does_not_know(
    style: str, mend: str, notes: Path, build: Build
) -> None:
    """Such a note would never be found for the seals that it is about."""
    (notes / "hinges.md").write_text(f"{HEAD}styles: [tower-seal, {style}]\n{BODY}")
    code, out, err = build()
    styles = notes.parent / "tables" / "styles.csv"
    told = f"{notes}/hinges.md, field styles: '{style}' is no style of {styles}; {mend}"
    assert (code, out, len(err.splitlines())) == (2, "", 1)
    assert err.startswith(f"counterhand: {told}")


def test_front_matter_that_never_ends_is_told_as_such(notes: Path, build: Build) -> None:
    """It does begin with '---': to be told so again would help nobody."""
    (notes / "hinges.md").write_text(f"{HEAD}\nThey creak.\n")
    code, out, err = build()
    assert (code, out) == (2, "")
    assert err.startswith(f"counterhand: {notes}/hinges.md, line ")
    assert MISSING not in err


@pytest.mark.parametrize(
    ("audience", "told"),
    [
        ("Staff", "Staff"),
        ("everyone", "everyone"),
        ("customers, staff", "customers, staff"),
        ("[customers, staff]", "['customers', 'staff']"),
        ("yes", "True"),
    ],
)
def test_an_unknown_audience(audience: str, told: str, notes: Path, build: Build) -> None:
    """A note for staff must never reach customers by a slip of spelling."""
    (notes / "hinges.md").write_text(f"---\ntitle: Hinges\naudience: {audience}\n{BODY}")
    sentence = (
        f", line 2: the audience is '{told}'; write 'audience: customers' or 'audience: staff'."
    )
    assert refused(build(), notes / "hinges.md", sentence)


@pytest.mark.parametrize("key", ["audience", "styles"])
def test_a_value_of_two_lines_is_told_in_one(key: str, notes: Path, build: Build) -> None:
    head = f'---\ntitle: Hinges\naudience: staff\n{key}: "one\\ntwo"\n'
    (notes / "hinges.md").write_text(head + BODY)
    code, out, err = build()
    assert (code, out, len(err.splitlines())) == (2, "", 1)


# -- encodings


@pytest.mark.parametrize(
    ("encoding", "line"), [("cp1252", 8), ("cp437", 8), ("utf-16", 1), ("utf-32", 1)]
)
def test_a_note_in_another_encoding(encoding: str, line: int, notes: Path, build: Build) -> None:
    text = f"{HEAD}{BODY}".replace("They creak.", "A ½ in gap.")
    (notes / "hinges.md").write_bytes(text.encode(encoding))
    assert refused(build(), notes / "hinges.md", f", line {line}: {NOT_UTF8}")


@pytest.mark.parametrize("encoding", ["utf-16-le", "utf-16-be"])
def test_a_note_in_utf_16_without_its_mark_is_refused_too(
    encoding: str, notes: Path, build: Build
) -> None:
    (notes / "hinges.md").write_bytes(f"{HEAD}{BODY}".encode(encoding))
    code, out, err = build()
    assert (code, out, len(err.splitlines())) == (2, "", 1)
    assert err.startswith(f"counterhand: {notes}/hinges.md, line 1: ")


def test_a_picture_named_as_a_note(notes: Path, build: Build) -> None:
    (notes / "hinges.md").write_bytes(b"\x89PNG\r\n\x1a\n" + bytes(range(256)))
    assert refused(build(), notes / "hinges.md", f", line 1: {NOT_UTF8}")


@pytest.mark.parametrize(
    "text",
    [f"\ufeff{HEAD}{BODY}", f"{HEAD}{BODY}".replace("\n", "\r\n")],
    ids=["with a byte order mark", "with Windows line ends"],
)
def test_what_windows_editors_add_is_no_fault(text: str, notes: Path, build: Build) -> None:
    (notes / "hinges.md").write_bytes(text.encode())
    code, out, _ = build()
    assert code == 0
    assert ": 1 passages of 1 notes; " in out


@pytest.mark.parametrize("key", ["title", "tags"])
def test_half_a_character_in_front_matter_is_told(key: str, notes: Path, build: Build) -> None:
    """As an escape of YAML can write it; no file can hold it, so no index can keep it."""
    value = '"\\uD800"' if key == "title" else '["\\uD800"]'
    head = f"---\ntitle: Hinges\naudience: staff\n{key}: {value}\n"
    (notes / "hinges.md").write_text(head + BODY)
    code, out, err = build()
    assert (code, out, len(err.splitlines())) == (2, "", 1)
    assert err.startswith(f"counterhand: {notes}/hinges.md, line ")


def test_a_note_whose_name_is_in_another_encoding_is_told(notes: Path, build: Build) -> None:
    path = os.fsencode(notes) + b"/gr\xf6\xdfe.md"
    with open(path, "w") as note:
        note.write(HEAD + BODY)
    code, out, err = build()
    assert (code, out, len(err.splitlines())) == (2, "", 1)
    assert err.startswith(f"counterhand: {notes}/gr")


# -- files that are hardly notes


def test_a_note_of_fifty_megabytes(notes: Path, build: Build) -> None:
    with (notes / "hinges.md").open("w") as note:
        note.write(HEAD + BODY)
        note.truncate(50_000_000)
    sentence = ", line 1: the note is 50 MB long; split it, one subject a note."
    assert refused(build(), notes / "hinges.md", sentence)


@pytest.mark.parametrize("length", [1, 2, 3])
def test_links_that_lead_round_in_a_circle(length: int, notes: Path, build: Build) -> None:
    names = [f"hinges-{at}.md" for at in range(length)]
    for at, name in enumerate(names):
        (notes / name).symlink_to(names[(at + 1) % length])
    why = "is a link that leads round to itself"
    sentence = f", line 1: cannot be read ({why}); put the note itself there."
    assert refused(build(), notes / names[0], sentence)


def test_a_link_that_leads_nowhere(notes: Path, build: Build) -> None:
    (notes / "hinges.md").symlink_to("gone.txt")
    sentence = ", line 1: cannot be read (No such file or directory); put the note itself there."
    assert refused(build(), notes / "hinges.md", sentence)


def test_a_link_to_a_folder(notes: Path, build: Build) -> None:
    (notes / "hinges.md").symlink_to(notes.parent / "tables")
    sentence = ", line 1: cannot be read (Is a directory); put the note itself there."
    assert refused(build(), notes / "hinges.md", sentence)


@pytest.mark.skipif(os.geteuid() == 0, reason="root may read anything")
def test_a_note_that_may_not_be_read(notes: Path, build: Build) -> None:
    (notes / "hinges.md").write_text(HEAD + BODY)
    (notes / "hinges.md").chmod(0)
    sentence = ", line 1: cannot be read (Permission denied); put the note itself there."
    assert refused(build(), notes / "hinges.md", sentence)


def test_a_link_to_a_note_is_that_note(notes: Path, build: Build) -> None:
    (notes.parent / "elsewhere.txt").write_text(HEAD + BODY)
    (notes / "hinges.md").symlink_to(notes.parent / "elsewhere.txt")
    assert ": 1 passages of 1 notes; " in build().out


def test_a_folder_named_as_a_note_is_passed_over(notes: Path, build: Build) -> None:
    (notes / "drafts.md").mkdir()
    (notes / "drafts.md" / "unfinished.md").write_text("no front matter yet")
    (notes / "hinges.md").write_text(HEAD + BODY)
    code, out, err = build()
    assert (code, err) == (0, "")
    assert ": 1 passages of 1 notes; " in out


def test_one_bad_note_among_good_ones_leaves_the_index_as_it_was(notes: Path, build: Build) -> None:
    (notes / "hinges.md").write_text(HEAD + BODY)
    assert build().code == 0
    index = notes.parent.parent / "index"
    before = {path: path.stat().st_mtime_ns for path in index.rglob("*")}
    (notes / "pins.md").write_text("no front matter")
    assert build() == (2, "", f"counterhand: {notes}/pins.md, line 1: {MISSING}\n")
    assert {path: path.stat().st_mtime_ns for path in index.rglob("*")} == before


def test_a_mistyped_field_is_named_with_what_it_may_mean(tmp_path: Path) -> None:
    text = "---\ntitle: The seat\naudiance: staff\n---\nWipe it.\n"
    meant = "field audiance: is no field of a note; perhaps 'audience' is meant"
    with pytest.raises(KnowledgeError, match=meant):
        parse_note(text, tmp_path / "seat.md")
