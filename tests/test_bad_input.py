"""What settings, notes and messages may get wrong: each ends in exit code 2 and one sentence.

The sentence names the file and place, and how to mend it; standard output stays empty.
"""

from __future__ import annotations

import io
import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.broken import DEMO, copy_of_demo, run

Break = Callable[[Path], object]


def _note(text: str) -> Break:
    return lambda knowledge: (knowledge / "notes" / "hinges.md").write_text(text)


def _settings(text: str) -> Break:
    return lambda knowledge: (knowledge / "shop.toml").write_text(text)


BROKEN: list[tuple[str, Break, str]] = [
    (
        "no knowledge at all",
        shutil.rmtree,
        ": the folder is missing; name a shop's folder with --shop.",
    ),
    (
        "no settings",
        lambda knowledge: (knowledge / "shop.toml").unlink(),
        "/shop.toml: the file is missing; add it with name = '...'.",
    ),
    (
        "settings without a name",
        _settings("town = 'Wennick Cross'\n"),
        "/shop.toml, field name: is missing; write name = '...'.",
    ),
    (
        "settings that are no TOML",
        _settings("name = Seals and more\n"),
        "/shop.toml: is not sound TOML (Invalid value (at line 1, column 8)); correct that line.",
    ),
    (
        "a setting where a group of them belongs",
        _settings("name = 'Seals'\ncontact = 'ring the bell'\n"),
        "/shop.toml, field contact: is no table; write [contact] above it.",
    ),
    (
        "a preference that nobody knows",
        _settings("name = 'Seals'\n[choosing]\nfirst = ['in stock', 'prettiest']\n"),
        "/shop.toml, field choosing.first: 'prettiest' is no preference; "
        "use some of: in stock, genuine, compatible, price.",
    ),
    (
        "a note without front matter",
        _note("# Hinges\n\nThey creak.\n"),
        "/notes/hinges.md, line 1: the front matter is missing; "
        "begin with '---', title and audience.",
    ),
    (
        "a note whose front matter is no YAML",
        _note("---\ntitle: Hinges\naudience: 'staff\n---\n"),
        "/notes/hinges.md, line 3: the front matter is not sound YAML; check its quotes.",
    ),
    (
        "a note whose front matter is a sentence",
        _note("---\nHinges creak\n---\n"),
        "/notes/hinges.md, line 2: the front matter is empty; give it a title.",
    ),
    (
        "a note without a title",
        _note("---\naudience: staff\n---\n"),
        "/notes/hinges.md, line 2: the title is missing; add 'title: ...'.",
    ),
    (
        "a note for nobody we know",
        _note("---\ntitle: Hinges\naudience: plumbers\n---\n"),
        "/notes/hinges.md, line 2: the audience is 'plumbers'; "
        "write 'audience: customers' or 'audience: staff'.",
    ),
    (
        "a note updated on no day there is",
        _note("---\ntitle: Hinges\naudience: staff\nupdated: 2026-02-30\n---\n"),
        "/notes/hinges.md, line 1: the front matter is not sound YAML; check its quotes.",
    ),
    (
        "a note whose styles are no list",
        _note("---\ntitle: Hinges\naudience: staff\nstyles: tank-ball\n---\n"),
        "/notes/hinges.md, field styles: 'tank-ball' is no list; write 'styles: [...]'.",
    ),
    (
        "a note in Latin-1",
        lambda knowledge: (knowledge / "notes" / "hinges.md").write_bytes(
            "---\ntitle: Hinges\naudience: staff\n---\n\n# Größe\n".encode("latin-1")
        ),
        "/notes/hinges.md, line 6: is not UTF-8; save the note as UTF-8.",
    ),
]


@pytest.mark.parametrize(
    ("broken", "sentence"), [pytest.param(*case[1:], id=case[0]) for case in BROKEN]
)
def test_broken_settings_or_notes_end_in_one_sentence(
    broken: Break,
    sentence: str,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    knowledge = copy_of_demo(tmp_path)
    broken(knowledge)
    assert run(monkeypatch, "ask", "Which seal fits?", "--shop", str(tmp_path)) == 2
    assert capsys.readouterr() == ("", f"counterhand: {knowledge}{sentence}\n")


def _written(name: str, raw: bytes) -> Break:
    return lambda folder: (folder / name).write_bytes(raw)


MESSAGES: list[tuple[str, str, Break, str]] = [
    (
        "a file that is not there",
        "letter.txt",
        lambda folder: None,
        "letter.txt: there is no such file; check its name.",
    ),
    (
        "a mail that is not there",
        "letter.eml",
        lambda folder: None,
        "letter.eml: there is no such file; check its name.",
    ),
    (
        "a folder",
        "letters.eml",
        lambda folder: (folder / "letters.eml").mkdir(),
        "letters.eml: is a folder; name one letter in it.",
    ),
    (
        "a mail that is a picture",
        "letter.eml",
        _written("letter.eml", b"\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR" + bytes(40)),
        "letter.eml: is no mail that can be read; save the mail again as .eml.",
    ),
    (
        "a mail without any header",
        "letter.eml",
        _written("letter.eml", b"the flapper leaks\n"),
        "letter.eml: is no mail that can be read; save the mail again as .eml.",
    ),
    (
        "a text that is no text",
        "letter.txt",
        _written("letter.txt", bytes(range(256)) * 8),
        "letter.txt: holds no text; save the letter as plain text or as .eml.",
    ),
]


@pytest.mark.parametrize(
    ("name", "write", "sentence"), [pytest.param(*case[1:], id=case[0]) for case in MESSAGES]
)
def test_a_message_that_cannot_be_read_ends_in_one_sentence(
    name: str,
    write: Break,
    sentence: str,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    write(tmp_path)
    assert run(monkeypatch, "ask", str(tmp_path / name), "--shop", str(DEMO.parent)) == 2
    assert capsys.readouterr() == ("", f"counterhand: {tmp_path / sentence}\n")


def test_standard_input_that_is_no_text_ends_in_one_sentence(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(bytes(range(256)) * 8)))
    assert run(monkeypatch, "ask", "-", "--shop", str(DEMO.parent)) == 2
    told = "counterhand: the message: holds no text; save the letter as plain text or as .eml.\n"
    assert capsys.readouterr() == ("", told)


def test_the_installed_command_ends_in_the_same_way(tmp_path: Path) -> None:
    command = [sys.executable, "-m", "assistant", "ask", "Which?", "--shop", str(tmp_path)]
    done = subprocess.run(command, capture_output=True, text=True, timeout=60, check=False)
    assert (done.returncode, done.stdout) == (2, "")
    assert done.stderr == (
        f"counterhand: {tmp_path}/knowledge: the folder is missing; "
        "name a shop's folder with --shop.\n"
    )
