"""A damaged index is never searched: one sentence names the file, and 'build' mends it.

Nor is one of another model or another format.
"""

from __future__ import annotations

import hashlib
import json
import secrets
import shutil
from collections import Counter
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any
from unittest import mock

import pytest

from assistant.errors import SearchError
from assistant.search import opening, store
from assistant.search.build import build
from assistant.search.index import FORMAT
from assistant.search.limits import limits_for
from assistant.search.model import DEFAULT
from assistant.search.opening import open_search
from tests import indexed
from tests.encoders import NoModel, WordHashes
from tests.indexed import content, contents, inside, put_manifest, texts

FILES = (
    "asked.faiss",
    "described.json",
    "described.npy",
    "manifest.json",
    "passages.faiss",
    "passages.jsonl",
    "sentences.npy",
    "words/data.csc.index.npy",
    "words/indices.csc.index.npy",
    "words/indptr.csc.index.npy",
    "words/params.index.json",
    "words/vocab.index.json",
)
CHANGED = "this file has changed since it was written"
MISSING = "this file is missing"
NO_FOLDER_NAMED = "this file names no folder of it"
NO_LIST = "this file does not list its parts"
KEYS = ("version", "model", "weights", "content", "files", "format")


@pytest.fixture(scope="module")
def sound(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Path]:
    """An index that nothing has happened to."""
    folder = tmp_path_factory.mktemp("sound")
    with mock.patch("os.fsync"):
        build(content(), folder, WordHashes())
        yield folder


@pytest.fixture
def folder(sound: Path, tmp_path: Path) -> Path:
    """A copy of it, to be damaged."""
    return Path(shutil.copytree(sound, tmp_path / "index"))


def refusal(folder: Path) -> str:
    """The sentence with which a damaged index is refused, by reading and by opening alike."""
    with pytest.raises(SearchError) as refused:
        store.read(folder)
    with pytest.raises(SearchError) as unopened:
        open_search(content(), folder, NoModel())
    assert str(unopened.value) == str(refused.value)
    return str(refused.value)


def damaged(path: Path, how: str, folder: Path) -> str:
    """The sentence that names a file at fault, and how to build the index of the shop again."""
    return f"{path}: the index is damaged: {how}; run 'counterhand build --shop {folder.parent}'."


def is_mended(folder: Path) -> bool:
    """Whether a build makes the index whole, from nothing, and leaves no piece of the old."""
    encoder = WordHashes()
    new = build(content(), folder, encoder).index
    assert contents(store.read(folder)) == contents(new)
    assert sorted(encoder.given) == sorted(texts(content()))
    return len(indexed.built_folders(folder)) == 1


def removed(path: Path) -> None:
    path.unlink()


def emptied(path: Path) -> None:
    path.write_bytes(b"")


def truncated(path: Path) -> None:
    raw = path.read_bytes()
    path.write_bytes(raw[: len(raw) // 2])


def flipped(path: Path, at: int | None = None, bits: int = 0x01) -> None:
    raw = bytearray(path.read_bytes())
    raw[len(raw) // 2 if at is None else at] ^= bits
    path.write_bytes(raw)


HARMS = (removed, emptied, truncated, flipped)


def test_every_file_of_an_index_is_harmed_below(sound: Path) -> None:
    built = inside(sound, "")
    found = (path for path in built.rglob("*") if path.is_file())
    assert sorted(str(path.relative_to(built)) for path in found) == list(FILES)


@pytest.mark.parametrize("harm", HARMS)
@pytest.mark.parametrize("name", FILES)
def test_a_file_that_was_harmed_is_named_and_a_build_mends_it(
    name: str, harm: Callable[[Path], None], folder: Path
) -> None:
    path = inside(folder, name)
    harm(path)
    assert refusal(folder) == damaged(path, MISSING if harm is removed else CHANGED, folder)
    assert is_mended(folder)


@pytest.mark.parametrize("at", range(0, 1500, 60))
def test_a_flipped_bit_anywhere_in_the_manifest_is_seen(at: int, folder: Path) -> None:
    manifest = inside(folder, "manifest.json")
    flipped(manifest, at)
    assert refusal(folder) == damaged(manifest, CHANGED, folder)
    assert is_mended(folder)


def test_files_and_manifest_of_another_build_are_not_taken_for_this_one(
    folder: Path, tmp_path: Path
) -> None:
    """As where a copy of the shop's folder was laid over another: sound, but not what was built."""
    build(content({}), tmp_path / "other", WordHashes())
    laid_over = inside(folder, "")
    shutil.rmtree(laid_over)
    shutil.copytree(inside(tmp_path / "other", ""), laid_over)
    assert refusal(folder).startswith(f"{laid_over}/manifest.json: the index is damaged: ")
    assert is_mended(folder)


@pytest.mark.parametrize("name", ["", "words"])
def test_a_folder_gone_is_told_and_mended(name: str, folder: Path) -> None:
    path = inside(folder, name)
    shutil.rmtree(path)
    told = refusal(folder)
    gone = Path(told.partition(": ")[0])
    assert path in gone.parents
    assert told == damaged(gone, MISSING, folder)
    assert is_mended(folder)


# -- `current`, which names the folder that holds and the digest of its manifest

NO_FOLDER, NO_DIGEST = "built-000000000000", "0" * 64


def test_where_current_is_gone_there_is_no_index(folder: Path) -> None:
    (folder / "current").unlink()
    assert store.read(folder) is None
    assert is_mended(folder)


@pytest.mark.parametrize(
    "said",
    [
        b"",
        b"\n",
        b".\n",
        b"..\n",
        b"/\n",
        b"\x00\n",
        b"\xff\xfe",
        f"{NO_FOLDER}\n".encode(),
        f"{NO_DIGEST}\n".encode(),
        f"../{NO_FOLDER} {NO_DIGEST}\n".encode(),
        f"{NO_FOLDER}/.. {NO_DIGEST}\n".encode(),
        f"{NO_FOLDER} {NO_DIGEST} {NO_DIGEST}\n".encode(),
        f"{NO_FOLDER} {NO_DIGEST}\n".encode() * 2,
    ],
)
def test_where_current_names_no_folder_of_the_index_that_file_is_named_and_mended(
    said: bytes, folder: Path
) -> None:
    (folder / "current").write_bytes(said)
    assert refusal(folder) == damaged(folder / "current", NO_FOLDER_NAMED, folder)
    assert is_mended(folder)


def test_where_current_names_a_folder_that_is_gone_it_is_told_and_mended(folder: Path) -> None:
    (folder / "current").write_text(f"{NO_FOLDER} {NO_DIGEST}\n")
    assert refusal(folder) == damaged(folder / NO_FOLDER / "manifest.json", MISSING, folder)
    assert is_mended(folder)


def test_where_current_names_the_folder_alone_the_index_is_refused_and_mended(
    folder: Path,
) -> None:
    (folder / "current").write_text(f"{inside(folder, '').name}\n")
    assert refusal(folder) == damaged(folder / "current", NO_FOLDER_NAMED, folder)
    assert is_mended(folder)


@pytest.mark.parametrize("harm", [truncated, flipped])
def test_a_harmed_current_is_refused_and_mended(harm: Callable[[Path], None], folder: Path) -> None:
    harm(folder / "current")
    assert refusal(folder).endswith(f"; run 'counterhand build --shop {folder.parent}'.")
    assert is_mended(folder)


@pytest.mark.parametrize("bits", [0x01, 0x20, 0x80])
def test_a_flipped_bit_anywhere_in_current_is_seen(bits: int, folder: Path) -> None:
    raw = (folder / "current").read_bytes()
    for at in range(len(raw)):
        flipped(folder / "current", at, bits)
        assert ": the index is damaged: this file " in refusal(folder), at
        (folder / "current").write_bytes(raw)
    assert store.read(folder) is not None


@pytest.mark.parametrize("length", range(0, 83, 6))
def test_a_current_cut_off_anywhere_is_seen(length: int, folder: Path) -> None:
    path = folder / "current"
    path.write_bytes(path.read_bytes()[:length])
    assert refusal(folder).startswith(f"{path}: the index is damaged: ")
    assert is_mended(folder)


def test_a_build_that_swaps_the_index_while_it_is_read_gives_the_new_one(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    changed = content({})
    load = store._load

    def swapped_meanwhile(*old: Any) -> Any:
        monkeypatch.setattr(store, "_load", load)
        build(changed, folder, WordHashes())
        return load(*old)

    monkeypatch.setattr(store, "_load", swapped_meanwhile)
    index = store.read(folder)
    assert index is not None
    assert index.passages == ()
    assert contents(index) == contents(store.read(folder))


def test_an_index_that_is_swapped_at_every_read_is_not_read_for_ever(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    load = store._load

    def swapped_again(index: Path, old: Any) -> Any:
        new = f"built-{secrets.token_hex(6)}"
        shutil.move(index / old.folder, index / new)
        (index / "current").write_text(f"{new} {old.manifest}\n")
        return load(index, old)

    monkeypatch.setattr(store, "_load", swapped_again)
    with pytest.raises(SearchError) as refused:
        store.read(folder)
    assert str(refused.value) == (
        f"{folder}/current: the index changed each time it was being read; "
        "wait until no build is running, and ask again."
    )


# -- a manifest that `current` vouches for, and that no build of this version would write


def without(key: str) -> Callable[[dict[str, Any]], Any]:
    return lambda manifest: {k: v for k, v in manifest.items() if k != key}


def having(**keys: Any) -> Callable[[dict[str, Any]], Any]:
    return lambda manifest: manifest | keys


WRONG: list[tuple[str, Callable[[dict[str, Any]], Any]]] = [
    *((f"without {key}", without(key)) for key in KEYS),
    ("a list", lambda manifest: list(manifest)),
    ("a number", lambda _: 1),
    ("nothing", lambda _: None),
    ("files in a list", lambda manifest: manifest | {"files": list(manifest["files"])}),
    ("files in a word", having(files="all")),
    ("content in a list", having(content=["notes/chains.md"])),
    ("content in a word", having(content="all")),
]


@pytest.mark.parametrize("wrong", [pytest.param(change, id=name) for name, change in WRONG])
def test_a_manifest_that_says_too_little_is_named_and_mended(
    wrong: Callable[[dict[str, Any]], Any], folder: Path
) -> None:
    told = json.loads(inside(folder, "manifest.json").read_bytes())
    manifest = put_manifest(folder, json.dumps(wrong(told)).encode())
    assert refusal(folder) == damaged(manifest, NO_LIST, folder)
    assert is_mended(folder)


@pytest.mark.parametrize("raw", [b"", b"{", b"not JSON", b"\xff\xfe{\x00}\x00"])
def test_a_manifest_that_is_no_json_is_named_and_mended(raw: bytes, folder: Path) -> None:
    manifest = put_manifest(folder, raw)
    assert refusal(folder) == damaged(manifest, NO_LIST, folder)
    assert is_mended(folder)


# -- files that are sound one by one, or may not be read


def test_files_that_do_not_belong_together_are_told_and_mended(folder: Path) -> None:
    """As a build of a version gone wrong would leave them."""
    rows = inside(folder, "passages.jsonl")
    rows.write_bytes(b"{}\n")
    told = json.loads(inside(folder, "manifest.json").read_bytes())
    told["files"]["passages.jsonl"] = hashlib.sha256(rows.read_bytes()).hexdigest()
    put_manifest(folder, json.dumps(told).encode())
    how = "the files in this folder do not belong together"
    assert refusal(folder) == damaged(rows.parent, how, folder)
    assert is_mended(folder)


@pytest.mark.parametrize("name", ["manifest.json", "passages.jsonl"])
def test_a_folder_where_a_file_belongs_is_told_and_mended(name: str, folder: Path) -> None:
    path = inside(folder, name)
    path.unlink()
    path.mkdir()
    assert refusal(folder) == (
        f"{path}: the index cannot be read (Is a directory); "
        f"run 'counterhand build --shop {folder.parent}'."
    )
    assert is_mended(folder)


def test_where_current_cannot_be_read_it_is_told_why(folder: Path) -> None:
    (folder / "current").unlink()
    (folder / "current").mkdir()
    assert refusal(folder).startswith(
        f"{folder}/current: the index cannot be read (Is a directory); run "
    )


# -- another model, another format


@pytest.mark.parametrize(
    ("other", "told"),
    [
        (
            WordHashes(name="quill-small"),
            f"the index was built with the model '{DEFAULT}', and 'quill-small' is set",
        ),
        (
            WordHashes(weights="0a0b" * 16),
            f"the index was built with other weights of the model '{DEFAULT}' than it has now",
        ),
    ],
    ids=["another model", "other weights"],
)
def test_an_index_of_another_model_is_refused_by_search_and_built_anew_by_build(
    other: WordHashes, told: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(opening, "limits_for", lambda *_: limits_for(DEFAULT))
    build(content(), tmp_path, WordHashes())
    before = indexed.state(tmp_path)
    with pytest.raises(SearchError) as refused:
        open_search(content(), tmp_path, other)
    assert str(refused.value) == (
        f"{tmp_path}: {told}; run 'counterhand build --shop {tmp_path.parent}'."
    )
    assert (other.given, indexed.state(tmp_path)) == ([], before)

    build(content(), tmp_path, other)
    assert Counter(other.given) == Counter(texts(content()))
    said: list[str] = []
    assert open_search(content(), tmp_path, other, said.append).index.made.model == other.name
    assert said == []


@pytest.mark.parametrize("other", [FORMAT - 1, FORMAT + 1, str(FORMAT), None])
def test_an_index_of_another_format_is_refused_and_built_anew(
    other: object, tmp_path: Path
) -> None:
    build(content(), tmp_path, WordHashes())
    told = json.loads(indexed.inside(tmp_path, "manifest.json").read_bytes())
    manifest = indexed.put_manifest(tmp_path, json.dumps({**told, "format": other}).encode())
    with pytest.raises(SearchError) as refused:
        store.read(tmp_path)
    assert str(refused.value) == (
        f"{manifest}: another version built the index (in format {other}; this one reads "
        f"{FORMAT}); run 'counterhand build --shop {tmp_path.parent}'."
    )
    assert is_mended(tmp_path)
