"""`counterhand new note`: a note that loads as it is, and is never written over another."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import NamedTuple

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.errors import KnowledgeError
from assistant.new_note import EXAMPLE, HEADING, new_note, template
from assistant.records.notes import Note, load_notes, parse_note
from assistant.records.sections import slug
from tests import indexed
from tests.broken import run
from tests.checking_tables import TABLES
from tests.encoders import WordHashes
from tests.linted_notes import RULES, found, gathered, places

TODAY = date(2026, 11, 25)


class Ran(NamedTuple):
    """How a command ended, and what it printed."""

    code: int
    out: str
    err: str


New = Callable[..., Ran]


@pytest.fixture
def notes(tmp_path: Path) -> Path:
    """The folder of notes of a shop that has none yet."""
    folder = tmp_path / "knowledge" / "notes"
    folder.mkdir(parents=True)
    return folder


@pytest.fixture
def new(notes: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> New:
    """Runs `counterhand new note` on that shop."""

    def new(*words: str) -> Ran:
        code = run(monkeypatch, "new", "note", *words, "--shop", str(notes.parent.parent))
        return Ran(code, *capsys.readouterr())

    return new


def read(notes: Path) -> Note:
    """The one note of the folder."""
    (note,) = load_notes(notes).values()
    return note


# -- the command


def test_the_path_of_the_new_note_is_printed_and_nothing_else(new: New, notes: Path) -> None:
    assert new("Water hammer") == (0, f"{notes / 'water-hammer.md'}\n", "")


def test_a_new_note_is_for_customers_and_of_today(new: New, notes: Path) -> None:
    before = date.today()
    new("Water hammer")
    note = read(notes)
    assert (note.title, note.audience, note.styles, note.tags) == (
        "Water hammer", "customers", (), (),
    )  # fmt: skip
    assert note.updated in (before, date.today())


def test_a_note_may_be_for_staff(new: New, notes: Path) -> None:
    new("What we pay", "--audience", "staff")
    assert read(notes).audience == "staff"


def test_a_note_that_is_there_is_never_written_over(new: New, notes: Path) -> None:
    path = notes / "water-hammer.md"
    path.write_text("as it was")
    assert new("Water hammer!") == (
        2,
        "",
        f"counterhand: {path}: is there already; write in it, or give the new note another "
        "title.\n",
    )
    assert path.read_text() == "as it was"


def test_a_link_that_leads_nowhere_is_not_followed(new: New, notes: Path) -> None:
    (notes / "water-hammer.md").symlink_to(notes.parent / "elsewhere.md")
    assert new("Water hammer").code == 2
    assert not (notes.parent / "elsewhere.md").exists()


@pytest.mark.parametrize("title", ["", "  ", "?!", "___", "water\x07hammer"])
def test_a_title_that_makes_no_name_is_told_in_one_sentence(
    title: str, new: New, notes: Path
) -> None:
    code, out, err = new(title)
    assert (code, out) == (2, "")
    assert err == (
        f"counterhand: title {' '.join(title.split())!a}: makes no name for a file; "
        "write a few words in letters.\n"
    )
    assert list(notes.iterdir()) == []


def test_a_title_of_half_a_character_is_told(notes: Path) -> None:
    with pytest.raises(KnowledgeError, match="makes no name for a file"):
        new_note(notes.parent.parent, "hammer \udcff", "customers", TODAY)


def test_a_title_that_is_too_long_for_a_file_is_told(new: New, notes: Path) -> None:
    code, out, err = new("hammer " * 60)
    assert (code, out) == (2, "")
    assert "cannot be written" in err
    assert list(notes.iterdir()) == []


def test_on_a_full_disk_no_half_note_is_left(notes: Path) -> None:
    with indexed.full_disk(room=100), pytest.raises(KnowledgeError, match="cannot be written"):
        new_note(notes.parent.parent, "Water hammer", "customers", TODAY)
    assert list(notes.iterdir()) == []


def test_a_folder_that_is_no_shops_is_told(new: New, notes: Path) -> None:
    notes.rmdir()
    code, out, err = new("Water hammer")
    assert (code, out) == (2, "")
    assert err == (
        f"counterhand: {notes}: the folder is missing; make it, or name a shop's folder "
        "with --shop.\n"
    )


def test_an_audience_that_is_none_is_refused(new: New, notes: Path) -> None:
    assert new("Water hammer", "--audience", "everybody").code == 2
    assert list(notes.iterdir()) == []


# -- the note


def test_a_new_note_shows_what_asked_is_and_explains_itself() -> None:
    note = parse_note(template("Water hammer", "customers", TODAY), Path("water-hammer.md"))
    (section,) = note.sections.values()
    assert (section.path, section.asked) == (
        ("Water hammer", HEADING),
        ("how do i word a heading", "what goes into a section"),
    )
    assert tuple(line.text for line in section.sentences) == EXAMPLE  # the comments are not read
    text = template("Water hammer", "customers", TODAY)
    for field in ("title", "audience", "styles", "tags", "updated", "asked"):
        before, _ = text.split(f"\n{field}:", 1)
        assert before.split("\n")[-1].startswith(("# ", "title")), field


@pytest.mark.parametrize("audience", ["customers", "staff"])
def test_lint_finds_no_error_in_a_new_note(
    audience: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("assistant.search.model.Model", WordHashes)
    shop = gathered(tmp_path, {}, known=TABLES)
    new_note(tmp_path, "Water hammer", audience, TODAY)  # type: ignore[arg-type]
    shop = replace(shop, notes=load_notes(tmp_path / "knowledge" / "notes"))
    told = {name: len(found(name, shop)) for name in RULES}
    in_note = {"length": 1, "unfinished-note": 1}
    in_tables = {"style-without-note": len(TABLES.styles), "style-without-fitting": 4}
    assert {name: count for name, count in told.items() if count} == in_note | in_tables


def test_lint_tells_until_the_example_is_replaced(tmp_path: Path) -> None:
    gathered(tmp_path, {})
    path = new_note(tmp_path, "Water hammer", "customers", TODAY)
    assert places(found("unfinished-note", gathered(tmp_path, {}))) == [
        f"water-hammer:{path.read_text().split(chr(10)).index(EXAMPLE[0]) + 1}"
    ]
    left = path.read_text()
    for sentence in EXAMPLE:
        left = left.replace(sentence, "Pipes knock when a tap is shut fast.")
    path.write_text(left)
    assert found("unfinished-note", gathered(tmp_path, {})) == []


TITLES = [
    "Valves: old and new", "'Quoted' \"twice\"", "a: 'b", "# 1", "ends with #", "yes", "null",
    "2026-11-25", "2026-02-30", "100 %", "1. first", "- a list", "{a: b}", "! tag", "@ at 3",
    "*stars* and _lines_", "a <b> & c", "&amp; so on", "[link](x)", "back\\slash", "`code`",
    "Größe", "two\nlines", "<!-- remark --> x",
]  # fmt: skip


@pytest.mark.parametrize("title", TITLES)
def test_a_title_reads_back_as_it_was_given(title: str, notes: Path) -> None:
    path = new_note(notes.parent.parent, title, "customers", TODAY)
    note = read(notes)
    plain = " ".join(title.split())
    assert (note.title, path.stem) == (plain, slug(plain))
    assert next(iter(note.sections.values())).path == (plain, HEADING)  # the title said once


@given(st.text(st.characters(codec="utf-8", exclude_categories=["C"]), min_size=1))
def test_any_title_that_can_be_printed_loads(raw: str) -> None:
    title = " ".join(raw.split()) or "x"
    note = parse_note(template(title, "staff", TODAY), Path("note.md"))
    assert note.title == title
    assert next(iter(note.sections.values())).path == (title, HEADING)
