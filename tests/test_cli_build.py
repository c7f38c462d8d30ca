"""`counterhand build`, and what `ask` does about the index: what is said, and where."""

from __future__ import annotations

import io
import json
import re
import shutil
import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import NamedTuple
from unittest import mock

import pytest

from assistant.search import store
from assistant.shop import open_shop
from tests import indexed
from tests.broken import copy_of_demo, run
from tests.encoders import NoModel, WordHashes

QUESTION = "Which flapper fits a Quellwick Tamsel from 1988?"
SECOND_QUESTION = "How do I measure the opening?"


class Ran(NamedTuple):
    """How a command ended, and what it printed."""

    code: int
    out: str
    err: str


Run = Callable[..., Ran]


@pytest.fixture(scope="module")
def built_shop(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Path]:
    """The demonstration shop with an index, built without its model."""
    folder = tmp_path_factory.mktemp("built")
    copy_of_demo(folder)
    with (
        mock.patch("os.fsync"),
        mock.patch("assistant.search.model.Model", WordHashes),
        mock.patch.object(sys, "stdout", io.StringIO()),
        pytest.MonkeyPatch.context() as patch,
    ):
        assert run(patch, "build", "--shop", str(folder)) == 0
        yield folder


@pytest.fixture
def shop(built_shop: Path, tmp_path: Path) -> Path:
    """A copy of it."""
    return Path(shutil.copytree(built_shop, tmp_path / "shop"))


@pytest.fixture
def counterhand(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], shop: Path
) -> Run:
    """Runs a command on the shop, with words for a model."""
    monkeypatch.setattr("assistant.search.model.Model", WordHashes)

    def counterhand(*words: str) -> Ran:
        code = run(monkeypatch, *words, "--shop", str(shop))
        return Ran(code, *capsys.readouterr())

    return counterhand


def passages(shop: Path) -> int:
    index = store.read(shop / "index")
    assert index is not None
    return len(index.passages)


def notes(shop: Path) -> int:
    return len(list((shop / "knowledge" / "notes").glob("*.md")))


def texts(shop: Path) -> int:
    """How many texts a build from nothing embeds."""
    return len(indexed.texts(open_shop(shop).content))


def from_nothing(counterhand: Run, shop: Path) -> Ran:
    shutil.rmtree(shop / "index")
    return counterhand("build")


def mended(counterhand: Run, shop: Path) -> Ran:
    some_file(shop).write_bytes(b"")
    return counterhand("build")


def for_another_model(counterhand: Run, shop: Path) -> Ran:
    with mock.patch("assistant.search.model.Model", lambda name: WordHashes(name, "0a" * 32)):
        return counterhand("build")


ALL_ANEW = (from_nothing, mended, for_another_model)


def some_file(shop: Path) -> Path:
    (found,) = (shop / "index").glob("built-*/passages.jsonl")
    return found


# -- build


def test_a_first_build_tells_what_it_made(counterhand: Run, shop: Path) -> None:
    code, out, err = from_nothing(counterhand, shop)
    assert (code, err) == (0, "")
    told = re.fullmatch(
        rf"The index in {re.escape(str(shop))}/index is built: (\d+) passages of (\d+) notes; "
        r"(\d+) texts embedded, \d+ taken over\.\n",
        out,
    )
    assert told
    assert [int(number) for number in told.groups()] == [passages(shop), notes(shop), texts(shop)]
    assert texts(shop) > passages(shop)


@pytest.mark.parametrize("way", ALL_ANEW)
def test_a_build_with_nothing_to_take_over_embeds_every_text(
    way: Callable[[Run, Path], Ran], counterhand: Run, shop: Path
) -> None:
    code, out, err = way(counterhand, shop)
    assert (code, err) == (0, "")
    assert f"; {texts(shop)} texts embedded, " in out


@pytest.mark.parametrize("way", ALL_ANEW)
def test_a_build_with_nothing_to_take_over_says_so(
    way: Callable[[Run, Path], Ran], counterhand: Run, shop: Path
) -> None:
    for name in ("chains.md", "sending-a-seal-back.md"):
        note = shop / "knowledge" / "notes" / name
        note.write_text(note.read_text().rstrip() + "\nA chain may also rattle.\n")
    assert way(counterhand, shop).out.endswith(", 0 taken over.\n")


def test_a_second_build_says_that_it_is_up_to_date_and_needs_no_model(
    counterhand: Run, shop: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("assistant.search.model.Model", NoModel)
    before = indexed.state(shop)
    told = f"{passages(shop)} passages of {notes(shop)} notes"
    assert counterhand("build") == (0, f"The index in {shop}/index is up to date: {told}.\n", "")
    assert indexed.state(shop) == before


def test_a_build_after_one_new_sentence_embeds_the_sentence_and_its_section(
    counterhand: Run, shop: Path
) -> None:
    note = shop / "knowledge" / "notes" / "chains.md"
    note.write_text(note.read_text().rstrip() + "\nA chain may also rattle.\n")
    code, out, err = counterhand("build")
    assert (code, err) == (0, "")
    assert "; 2 texts embedded, " in out


def test_a_build_mends_a_damaged_index(counterhand: Run, shop: Path) -> None:
    assert mended(counterhand, shop).code == 0
    assert counterhand("build").out.startswith(f"The index in {shop}/index is up to date: ")


def test_a_file_where_the_index_belongs_is_told_in_one_sentence(
    counterhand: Run, shop: Path
) -> None:
    shutil.rmtree(shop / "index")
    (shop / "index").write_text("mine")
    assert counterhand("build") == (
        2,
        "",
        f"counterhand: {shop}/index: cannot be written (File exists); "
        "make it writable, and build.\n",
    )
    assert (shop / "index").read_text() == "mine"


def test_a_full_disk_is_told_in_one_sentence_and_leaves_the_old_index(
    counterhand: Run, shop: Path
) -> None:
    before = indexed.contents(store.read(shop / "index"))
    (shop / "knowledge" / "notes" / "chains.md").unlink()
    with indexed.full_disk():
        ran = counterhand("build")
    assert ran == (
        2,
        "",
        f"counterhand: {shop}/index: cannot be written (File too large); "
        "free it or its disk, and build.\n",
    )
    assert indexed.contents(store.read(shop / "index")) == before


def test_the_help_of_build_carries_an_example(counterhand: Run) -> None:
    assert "counterhand build --shop my-shop" in counterhand("build", "--help").out


# -- ask


def test_asking_without_an_index_builds_one_and_says_so_beside_the_answer(
    counterhand: Run, shop: Path
) -> None:
    answer = counterhand("ask", QUESTION)
    assert (answer.code, answer.err) == (0, "")
    shutil.rmtree(shop / "index")
    assert counterhand("ask", QUESTION) == (
        0,
        answer.out,
        f"counterhand: There is no index yet: building one from {notes(shop)} notes.\n",
    )
    assert counterhand("ask", QUESTION) == answer
    assert counterhand("build").out.startswith(f"The index in {shop}/index is up to date: ")


def test_what_is_said_of_the_index_never_stands_in_the_json(counterhand: Run, shop: Path) -> None:
    shutil.rmtree(shop / "index")
    ran = counterhand("ask", QUESTION, "--json")
    assert ran.err != ""
    assert json.loads(ran.out)["answers"]


def test_asking_after_a_note_changed_renews_the_index_and_says_so(
    counterhand: Run, shop: Path
) -> None:
    (shop / "knowledge" / "notes" / "chains.md").unlink()
    ran = counterhand("ask", QUESTION)
    assert (ran.code, ran.err) == (
        0,
        "counterhand: The notes have changed since the index was built: renewing it.\n",
    )
    assert counterhand("ask", QUESTION).err == ""


@pytest.mark.parametrize("command", [("ask", QUESTION), ("ask", SECOND_QUESTION), ("chat",)])
def test_a_damaged_index_is_refused_in_one_sentence(
    command: tuple[str, ...], counterhand: Run, shop: Path
) -> None:
    path = some_file(shop)
    path.write_bytes(path.read_bytes()[:-1])
    assert counterhand(*command) == (
        2,
        "",
        f"counterhand: {path}: the index is damaged: this file has changed since it was written; "
        f"run 'counterhand build --shop {shop}'.\n",
    )


def test_an_index_of_other_weights_is_refused_in_one_sentence(
    counterhand: Run, shop: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("assistant.search.model.Model", lambda name: WordHashes(name, "0a" * 32))
    code, out, err = counterhand("ask", QUESTION)
    assert (code, out) == (2, "")
    assert err.startswith(f"counterhand: {shop}/index: the index was built with other weights ")
    assert err.endswith(f"; run 'counterhand build --shop {shop}'.\n")


def test_on_a_full_disk_a_question_is_answered_all_the_same(counterhand: Run, shop: Path) -> None:
    answer = counterhand("ask", QUESTION)
    shutil.rmtree(shop / "index")
    with indexed.full_disk():
        code, out, err = counterhand("ask", QUESTION)
    assert (code, out) == (0, answer.out)
    assert err.endswith("The index is used without being kept.\n")


def test_a_model_without_fitted_limits_is_told_in_one_sentence(
    counterhand: Run, shop: Path
) -> None:
    settings = shop / "knowledge" / "shop.toml"
    settings.write_text(settings.read_text() + "\n[search]\nmodel = 'quill-small'\n")
    assert counterhand("ask", QUESTION) == (
        2,
        "",
        f"counterhand: {settings}, field search.model: no limits are fitted for the model "
        "'quill-small'; fit them to labelled rows in eval/ with "
        "'python -m assistant.measuring.fit SHOP'.\n",
    )


@pytest.mark.parametrize("raw", ["[search]\nmodel = ''\n", "[search]\nmodel = 3\n", "search = 1\n"])
def test_a_model_that_is_no_name_is_told_in_one_sentence(
    raw: str, counterhand: Run, shop: Path
) -> None:
    settings = shop / "knowledge" / "shop.toml"
    settings.write_text(f"name = 'Seals'\n{raw}")
    code, out, err = counterhand("build")
    assert (code, out) == (2, "")
    assert err.startswith(f"counterhand: {settings}, ")
    assert len(err.splitlines()) == 1


def test_a_shop_that_has_written_no_note_is_built_and_asked(counterhand: Run, shop: Path) -> None:
    for note in (shop / "knowledge" / "notes").iterdir():
        note.unlink()
    built = counterhand("build")
    assert (built.code, built.err) == (0, "")
    assert "is built: 0 passages of 0 notes; " in built.out
    code, _, err = counterhand("ask", SECOND_QUESTION)
    assert (code, err) == (0, "")
