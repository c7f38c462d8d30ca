"""Opening the search of a shop: it builds or renews the index, says so, and searches anyway.

And building where the index cannot be kept: the old one stays, the new one comes with the error.
"""

from __future__ import annotations

import errno
import os
import subprocess
from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import replace
from pathlib import Path
from typing import Any
from unittest import mock

import pytest

from assistant.errors import KnowledgeError, SearchError
from assistant.search import store
from assistant.search.build import Built, NotKept, build, renewed
from assistant.search.limits import limits_for, limits_rows
from assistant.search.model import DEFAULT
from assistant.search.opening import open_search
from tests import indexed
from tests.encoders import NoModel, WordHashes
from tests.indexed import LIKENESSES, LOOP, NOTES, SLACK, STYLES, content, contents, texts


@pytest.fixture(autouse=True, scope="module")
def no_waiting_for_the_disk() -> Iterator[None]:
    """A build waits until the disk holds it; here only the files matter."""
    with mock.patch("os.fsync"):
        yield


def from_nothing() -> tuple[Any, ...] | None:
    """What an index of the shop holds."""
    return contents(renewed(content(), WordHashes(), None).index)


def test_opening_builds_where_there_is_no_index_and_says_so(tmp_path: Path) -> None:
    said: list[str] = []
    search = open_search(content(), tmp_path / "index", WordHashes(), said.append)
    assert said == ["There is no index yet: building one from 3 notes."]
    assert contents(store.read(tmp_path / "index")) == contents(search.index)


def test_a_single_note_is_told_as_one(tmp_path: Path) -> None:
    said: list[str] = []
    one = content({"dye-test": NOTES["dye-test"]})
    open_search(one, tmp_path / "index", WordHashes(), said.append)
    assert said == ["There is no index yet: building one from 1 note."]


def test_opening_renews_where_notes_changed_and_says_so(tmp_path: Path) -> None:
    build(content(), tmp_path, WordHashes())
    changed = NOTES["chains"].replace(SLACK, "A chain hangs a little slack.")
    said: list[str] = []
    encoder = WordHashes()
    search = open_search(content({**NOTES, "chains": changed}), tmp_path, encoder, said.append)
    assert said == ["The notes have changed since the index was built: renewing it."]
    assert len(encoder.given) == 2
    assert "A chain hangs a little slack." in encoder.given
    assert contents(store.read(tmp_path)) == contents(search.index)


def test_opening_an_index_up_to_date_is_silent_and_needs_no_model(tmp_path: Path) -> None:
    build(content(), tmp_path, WordHashes())
    before = indexed.state(tmp_path)
    said: list[str] = []
    open_search(content(), tmp_path, NoModel(), said.append)
    assert (said, indexed.state(tmp_path)) == ([], before)


def test_opening_renews_where_customers_own_words_for_a_seal_changed(tmp_path: Path) -> None:
    build(content(), tmp_path, WordHashes())
    more = content(likenesses={**LIKENESSES, "3": ("tank-ball", "a float on a rod")})
    said: list[str] = []
    encoder = WordHashes()
    search = open_search(more, tmp_path, encoder, said.append)
    assert encoder.given == ["a float on a rod"]
    assert len(said) == 1
    assert contents(store.read(tmp_path)) == contents(search.index)


def test_the_limits_that_a_shop_fitted_for_itself_hold(tmp_path: Path) -> None:
    own = tmp_path / "eval" / "limits.toml"
    own.parent.mkdir()
    row = limits_rows(own, DEFAULT, replace(limits_for(DEFAULT), answers_at=0.99))
    own.write_text(row, encoding="utf-8")
    search = open_search(content(), tmp_path / "index", WordHashes())
    assert search.limits.answers_at == 0.99


def test_a_model_without_limits_is_told_with_the_shop_s_settings(tmp_path: Path) -> None:
    with pytest.raises(KnowledgeError) as refused:
        open_search(content(), tmp_path / "index", WordHashes("quill-small"))
    assert refused.value.where == f"{tmp_path}/knowledge/shop.toml, field search.model"


# -- a folder that cannot be written


def _searches(folder: Path, said: list[str], encoder: WordHashes) -> str:
    """The note that answers, where the index cannot be kept."""
    search = open_search(content(), folder, encoder, said.append)
    return search.ranked("How much slack does a chain need?", "customers")[0].passage.note


@pytest.mark.skipif(os.geteuid() == 0, reason="root may write anywhere")
def test_in_a_folder_that_may_not_be_written_it_still_searches(tmp_path: Path) -> None:
    tmp_path.chmod(0o500)
    said: list[str] = []
    try:
        assert _searches(tmp_path / "index", said, WordHashes()) == "chains"
    finally:
        tmp_path.chmod(0o700)
    assert said[1] == (
        f"{tmp_path}/index: cannot be written (Permission denied); make it writable, and build. "
        "The index is used without being kept."
    )


def test_where_no_build_can_begin_it_still_searches(tmp_path: Path) -> None:
    (tmp_path / ".lock").mkdir()
    said: list[str] = []
    assert _searches(tmp_path, said, WordHashes()) == "chains"
    assert said[1:] == [
        f"{tmp_path}: cannot be written (Is a directory); make it writable, and build. "
        "The index is used without being kept."
    ]
    assert store.read(tmp_path) is None


def test_an_index_up_to_date_is_searched_where_nothing_can_be_written(tmp_path: Path) -> None:
    build(content(), tmp_path, WordHashes())
    (tmp_path / ".lock").unlink(missing_ok=True)
    (tmp_path / ".lock").mkdir()
    said: list[str] = []
    with indexed.full_disk():
        assert _searches(tmp_path, said, WordHashes()) == "chains"
    assert said == []


def test_on_a_full_disk_it_still_searches_and_says_that_it_keeps_nothing(tmp_path: Path) -> None:
    said: list[str] = []
    with indexed.full_disk():
        assert _searches(tmp_path, said, WordHashes()) == "chains"
    assert said == [
        "There is no index yet: building one from 3 notes.",
        f"{tmp_path}: cannot be written (File too large); free it or its disk, and build. "
        "The index is used without being kept.",
    ]
    assert store.read(tmp_path) is None


def test_an_index_that_cannot_be_kept_is_embedded_once_all_the_same(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(folder: Path, _: object) -> None:
        raise SearchError(str(folder), "cannot be written", "make it writable, and build")

    monkeypatch.setattr(store, "write", refuse)
    encoder = WordHashes()
    search = open_search(content(), tmp_path, encoder)
    assert Counter(encoder.given) == Counter(texts(content()))
    assert contents(search.index) == from_nothing()


def test_an_error_that_brings_no_index_along_is_not_passed_over(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(*_: object) -> Built:
        raise SearchError("the index", "is not to be had", "ask the one who keeps it")

    monkeypatch.setattr("assistant.search.opening.build", refuse)
    with pytest.raises(SearchError) as refused:
        open_search(content(), tmp_path, WordHashes())
    assert not isinstance(refused.value, NotKept)


# -- building where it cannot be written

MANY = " ".join(f"Number {at}." for at in range(200))  # little to read, and much to keep
NUMBERS = content({"numbers": indexed.FOR_STAFF.format("Numbers", MANY)})


@pytest.mark.parametrize("room", [0, 100, 400, 800, 12_000])
def test_a_build_on_a_full_disk_leaves_the_old_index_and_nothing_else(
    room: int, tmp_path: Path
) -> None:
    build(content(), tmp_path, WordHashes())
    before = indexed.state(tmp_path)
    with indexed.full_disk(room), pytest.raises(NotKept) as refused:
        build(NUMBERS, tmp_path, WordHashes())
    assert contents(store.read(tmp_path)) == from_nothing()
    assert str(refused.value).startswith(f"{tmp_path}: cannot be written (")
    assert str(refused.value).endswith("); free it or its disk, and build.")
    assert "None" not in str(refused.value)
    assert indexed.state(tmp_path) == before


@pytest.mark.parametrize("name", ["current", "current.new"])
def test_where_the_new_index_cannot_be_swapped_in_the_old_one_stays_and_the_new_is_cleared_away(
    name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(*_: object) -> None:
        raise OSError(errno.ENOSPC, "No space left on device")

    build(content(), tmp_path, WordHashes())
    before = indexed.state(tmp_path)
    monkeypatch.setattr("os.replace", refuse)
    with pytest.raises(NotKept, match="No space left on device"):
        build(NUMBERS, tmp_path, WordHashes())
    assert contents(store.read(tmp_path)) == from_nothing()
    assert len(indexed.built_folders(tmp_path)) == 1
    assert indexed.state(tmp_path).get(name) == before.get(name)


def test_writing_where_a_file_lies_is_refused_in_one_sentence(tmp_path: Path) -> None:
    """As on any disk where not even clearing away is possible, such as one gone read-only."""
    (tmp_path / "index").write_text("mine")
    index = renewed(content(), WordHashes(), None).index
    with pytest.raises(SearchError, match="index: cannot be written"):
        store.write(tmp_path / "index", index)


def blocked(folder: Path) -> Path:
    """A folder in which no build can begin: its lock is not to be had."""
    (folder / ".lock").unlink(missing_ok=True)
    (folder / ".lock").mkdir(parents=True)
    return folder


def test_an_index_that_cannot_be_kept_comes_along_with_the_error(tmp_path: Path) -> None:
    folder = blocked(tmp_path / "index")
    encoder = WordHashes()
    with pytest.raises(NotKept) as refused:
        build(content(), folder, encoder)
    error = refused.value
    assert isinstance(error, SearchError)
    assert str(error) == (
        f"{folder}: cannot be written (Is a directory); make it writable, and build."
    )
    assert (error.where, error.mend) == (str(folder), "make it writable, and build")
    assert contents(error.built.index) == from_nothing()
    assert (error.built.changed, error.built.embedded) == (True, len(texts(content())))
    assert Counter(encoder.given) == Counter(texts(content()))
    assert indexed.state(folder) == {}


def test_where_it_cannot_be_kept_it_takes_over_from_the_old_index_and_leaves_that(
    tmp_path: Path,
) -> None:
    build(content(), tmp_path, WordHashes())
    blocked(tmp_path)
    before = indexed.state(tmp_path)
    encoder = WordHashes()
    with pytest.raises(NotKept) as refused:
        build(
            content({**NOTES, "chains": NOTES["chains"].replace(LOOP, "is a saggy chain bad")}),
            tmp_path,
            encoder,
        )
    assert encoder.given == ["is a saggy chain bad"]
    assert refused.value.built.taken_over == len(texts(content())) - 1
    assert indexed.state(tmp_path) == before
    assert contents(store.read(tmp_path)) == from_nothing()


def test_an_index_up_to_date_need_not_be_written(tmp_path: Path) -> None:
    build(content(), tmp_path, WordHashes())
    assert not build(content(), blocked(tmp_path), NoModel()).changed


# -- a shop that has written nothing down


Told = tuple[Mapping[str, str], Mapping[str, tuple[str | None, str]]]
TOLD: tuple[Told, ...] = ((STYLES, LIKENESSES), ({}, {}))


@pytest.mark.parametrize("told", TOLD, ids=["with styles", "with no style either"])
@pytest.mark.parametrize("audience", ["staff", "customers"])
def test_a_shop_without_notes_has_an_index_that_finds_nothing(
    told: Told, audience: str, tmp_path: Path
) -> None:
    open_search(content({}, *told), tmp_path, WordHashes())
    said: list[str] = []
    search = open_search(content({}, *told), tmp_path, WordHashes(), said.append)
    assert said == []
    assert not search.answer("How much slack does a chain need?", audience)
    assert search.supporting("tank-ball", "leaks", audience) == []
    assert len(search.alike(["a hollow ball on a wire"])) == 1


NOTHING_SAID = "There are no notes yet, so questions of how and why cannot be answered"


def test_a_shop_without_notes_is_told_what_cannot_be_answered(tmp_path: Path) -> None:
    said: list[str] = []
    open_search(content({}), tmp_path, WordHashes(), said.append)
    assert said == [f"{NOTHING_SAID}: building an index without them."]


def test_a_shop_whose_last_note_is_gone_is_told_what_cannot_be_answered(tmp_path: Path) -> None:
    build(content(), tmp_path, WordHashes())
    said: list[str] = []
    open_search(content({}), tmp_path, WordHashes(), said.append)
    assert said == [
        f"The notes have changed since the index was built: renewing it. {NOTHING_SAID}."
    ]


@pytest.mark.parametrize("told", TOLD, ids=["with styles", "with no style either"])
def test_the_first_note_of_a_shop_is_found_and_the_last_one_gone(
    told: Told, tmp_path: Path
) -> None:
    def found(notes: Mapping[str, str]) -> set[str]:
        build(content(notes, *told), tmp_path, WordHashes())
        index = store.read(tmp_path)
        assert index is not None
        return {passage.note for passage in index.passages}

    assert found({}) == set()
    assert found(NOTES) == set(NOTES)
    assert build(content({}, *told), tmp_path, NoModel()).changed
    assert found({}) == set()


# -- the command that mends it, as it is to be typed


@pytest.mark.parametrize(
    ("shop", "typed"),
    [
        ("seals", "seals"),
        ("/home/counter/seals", "/home/counter/seals"),
        (".", "."),
        ("/home/the counter/seals", '"/home/the counter/seals"'),
        ("the shop's", '"the shop\'s"'),
        ('a "good" $hop', r'"a \"good\" \$hop"'),
    ],
)
def test_a_shop_is_named_as_a_shell_reads_it(shop: str, typed: str) -> None:
    told = store.build_again(Path(shop) / "index")
    assert told == f"run 'counterhand build --shop {typed}'"
    read = subprocess.run(["sh", "-c", f"printf %s {typed}"], capture_output=True, check=True)
    assert read.stdout.decode() == shop
