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

from assistant.search.limits import FITTED
from assistant.search.model import DEFAULT
from assistant.settings import read_settings
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
        ": the folder is missing; put shop.toml, notes/ and tables/ in {knowledge}, "
        "or name another folder with --shop.",
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
        "a sight that no customer is given",
        _settings("name = 'Seals'\n[customers]\nmay_see = ['cost']\n"),
        "/shop.toml, field customers.may_see: 'cost' is nothing that customers may see; "
        "use some of: price, availability, link.",
    ),
    (
        "a setting that is nearly one",
        _settings("nam = 'Seals'\n"),
        "/shop.toml, field nam: is no setting; perhaps name is meant.",
    ),
    (
        "a setting in a table that is nearly one",
        _settings("name = 'Seals'\n[search]\nmodl = 'all-MiniLM-L6-v2'\n"),
        "/shop.toml, field search.modl: is no setting; perhaps model is meant.",
    ),
    (
        "a table that is nearly one",
        _settings("name = 'Seals'\n[chosing]\nfirst = ['price']\n"),
        "/shop.toml, field chosing: is no setting; perhaps [choosing] is meant.",
    ),
    (
        "a policy under a name that is nearly one",
        _settings("name = 'Seals'\n[policies]\nretruns = 'Within 30 days.'\n"),
        "/shop.toml, field policies.retruns: is nothing that answers look for; perhaps returns is "
        "meant.",
    ),
    (
        "policies that would never be told",
        _settings("name = 'Seals'\n[Polices]\nreturns = 'Within 30 days.'\n"),
        "/shop.toml, field Polices: is no setting; perhaps [policies] is meant.",
    ),
    (
        "a setting that is nothing like one",
        _settings("name = 'Seals'\nzz = 1\n"),
        "/shop.toml, field zz: is no setting; use some of: name, town, note, currency, units, "
        "greeting, sign_off, [contact], [choosing], [customers], [policies], [search].",
    ),
    (
        "a setting in a table that is nothing like one",
        _settings("name = 'Seals'\n[search]\nzz = 1\n"),
        "/shop.toml, field search.zz: is no setting; [search] holds only model.",
    ),
    (
        "a setting that fell below a table",
        _settings("name = 'Seals'\n[choosing]\nfirst = ['price']\ncurrency = '£'\n"),
        "/shop.toml, field choosing.currency: is no setting; "
        "write currency above the first [table].",
    ),
    (
        "a setting outside its table",
        _settings("name = 'Seals'\nmay_see = ['price']\n"),
        "/shop.toml, field may_see: is no setting; write may_see below [customers].",
    ),
    (
        "a name that is a number",
        _settings("name = 5\n"),
        "/shop.toml, field name: is no text; write name = '...'.",
    ),
    (
        "a name of blanks",
        _settings("name = ' '\n"),
        "/shop.toml, field name: is empty; write name = '...'.",
    ),
    (
        "a currency that is a number",
        _settings("name = 'Seals'\ncurrency = 5\n"),
        "/shop.toml, field currency: is no text; write currency = '...'.",
    ),
    (
        "a model that is a number",
        _settings("name = 'Seals'\n[search]\nmodel = 5\n"),
        "/shop.toml, field search.model: is no text; write model = '...'.",
    ),
    (
        "a model of no name",
        _settings("name = 'Seals'\n[search]\nmodel = ''\n"),
        "/shop.toml, field search.model: is empty; write model = '...' or leave it out.",
    ),
    (
        "a telephone number that is a sum",
        _settings("name = 'Seals'\n[contact]\nphone = 5550147\n"),
        "/shop.toml, field contact.phone: is no text; write phone = '...'.",
    ),
    (
        "a model for which nothing was fitted",
        _settings("name = 'Seals'\n[search]\nmodel = 'quill-small'\n"),
        "/shop.toml, field search.model: no limits are fitted for the model 'quill-small'; "
        "fit them to labelled rows in eval/ with 'python -m assistant.measuring.fit SHOP'.",
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
        "/notes/hinges.md, field updated: '2026-02-30' is no day; write a day such as 2026-11-25.",
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
    told = sentence.replace("{knowledge}", str(knowledge))
    assert capsys.readouterr() == ("", f"counterhand: {knowledge}{told}\n")


# -- the folder that is named


def _asked(folder: Path, monkeypatch: pytest.MonkeyPatch) -> int:
    return run(monkeypatch, "ask", "Which seal fits?", "--shop", str(folder))


def test_a_shop_whose_folder_is_not_there_is_told_so(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    assert _asked(tmp_path / "shop", monkeypatch) == 2
    told = f"counterhand: {tmp_path}/shop: the folder is missing; name another with --shop.\n"
    assert capsys.readouterr() == ("", told)


def test_a_file_named_as_a_shop_is_told_so(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "shop").write_text("a letter")
    assert _asked(tmp_path / "shop", monkeypatch) == 2
    told = f"counterhand: {tmp_path}/shop: is no folder; name a shop's folder with --shop.\n"
    assert capsys.readouterr() == ("", told)


def test_knowledge_named_in_place_of_the_shop_that_holds_it_is_told_so(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    knowledge = copy_of_demo(tmp_path)
    assert _asked(knowledge, monkeypatch) == 2
    assert capsys.readouterr() == (
        "",
        f"counterhand: {knowledge}/knowledge: the folder is missing; "
        f"name the folder that holds {knowledge} with --shop.\n",
    )


# -- settings that are sound


@pytest.mark.parametrize("table", ["contact", "policies"])
def test_a_shop_names_its_contacts_and_policies_as_it_likes(table: str, tmp_path: Path) -> None:
    path = tmp_path / "shop.toml"
    path.write_text(f"name = 'Seals'\n[{table}]\nmodl = 'by pigeon'\n")
    assert getattr(read_settings(path), table) == {"modl": "by pigeon"}


def test_the_settings_of_the_demonstration_are_read() -> None:
    settings = read_settings(DEMO / "shop.toml")
    assert (settings.name, settings.currency) == ("Pottlebrack Tank Spares", "$")
    assert settings.policies["hours"] == f"We are open {settings.contact['hours']}."


# -- a model that cannot be loaded


@pytest.mark.parametrize("command", [("build",), ("ask", "How do I measure the opening?")])
def test_a_model_that_cannot_be_loaded_is_told_with_the_file_that_names_it(
    command: tuple[str, ...],
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    knowledge = copy_of_demo(tmp_path)
    settings = knowledge / "shop.toml"
    settings.write_text(settings.read_text() + "\n[search]\nmodel = 'models/own'\n")
    own = tmp_path / "models" / "own"  # its weights were moved away
    own.mkdir(parents=True)
    (tmp_path / "eval").mkdir()
    fitted = FITTED.read_text(encoding="utf-8").replace(f'["{DEFAULT}"]', f'["{own}"]')
    (tmp_path / "eval" / "limits.toml").write_text(fitted, encoding="utf-8")
    assert run(monkeypatch, *command, "--shop", str(tmp_path)) == 2
    out, err = capsys.readouterr()
    assert out == ""
    assert err.endswith(
        f"counterhand: {settings}, field search.model: the model '{own}' cannot be loaded; "
        f"name a sentence-transformers model or its folder, or leave '{DEFAULT}'.\n"
    )


# -- messages


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
        f"counterhand: {tmp_path}/knowledge: the folder is missing; put shop.toml, notes/ and "
        f"tables/ in {tmp_path}/knowledge, or name another folder with --shop.\n"
    )
