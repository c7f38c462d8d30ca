"""The index on disk: written to a new folder, swapped in at once, refused when damaged.

`current` names the folder that holds, and the digest of its manifest, which has those of the
other files. A build killed at any moment leaves it naming the old
folder or the new one, and each is whole when it is named.
"""

from __future__ import annotations

import hashlib
import json
import os
import re
import secrets
import shlex
import shutil
from collections.abc import Iterator, Mapping
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np

from assistant.errors import SearchError
from assistant.search import passages, vectors
from assistant.search.content import Description
from assistant.search.index import FORMAT, Index, Made, as_row
from assistant.search.lexical import Lexical

CURRENT = "current"
TRIES = 5
_FRESH = "current.new"
_PREFIX = "built-"
_NO_LIST = "this file does not list its parts"
_LINE = re.compile(r"(built-[0-9a-f]{12}) ([0-9a-f]{64})\n?")


def write(folder: Path, index: Index) -> None:
    """Keeps an index in place of the one before.

    Raises:
        SearchError: the folder cannot be written; the old index is as it was.
    """
    new = folder / f"{_PREFIX}{secrets.token_hex(6)}"
    try:
        folder.mkdir(parents=True, exist_ok=True)
        manifest = _fill(new, index)
        _swap(folder, f"{new.name} {manifest}")
    except OSError as error:
        shutil.rmtree(new, ignore_errors=True)
        with suppress(OSError):
            (folder / _FRESH).unlink()
        raise SearchError(
            str(folder),
            f"cannot be written ({error.strerror or error})",
            "free it or its disk, and build",
        ) from error
    sweep(folder)


def sweep(folder: Path) -> None:
    """Removes older indexes, and what a killed build left."""
    with suppress(OSError):
        (folder / _FRESH).unlink()
    named = _named(folder)
    for path in folder.glob(f"{_PREFIX}*"):
        if named is None or path.name != named.folder:
            shutil.rmtree(path, ignore_errors=True)


def read(folder: Path) -> Index | None:
    """The index kept in a folder; `None` where there is none.

    Raises:
        SearchError: it is damaged, or of another version.
    """
    for _ in range(TRIES):  # a build may have swapped it while it was being read
        named = _named(folder)
        if named is None:
            return None
        try:
            return _load(folder, named)
        except FileNotFoundError as error:
            if _named(folder) != named:
                continue
            missing = Path(error.filename or folder / named.folder)
            raise _damaged(folder, missing, "this file is missing") from error
        except OSError as error:
            raise _unreadable(folder, folder / named.folder, error) from error
    raise SearchError(
        str(folder / CURRENT),
        "the index changed each time it was being read",
        "wait until no build is running, and ask again",
    )


def build_again(folder: Path) -> str:
    """How to mend the index in a folder: the command that builds that of its shop."""
    shop = str(folder.parent)
    if shlex.quote(shop) != shop:  # double quotes, for the command stands between single ones
        shop = '"' + re.sub(r'([\\"$`])', r"\\\1", shop) + '"'
    return f"run 'counterhand build --shop {shop}'"


def _fill(new: Path, index: Index) -> str:
    """Writes every file of an index to a new folder; gives back the digest of its manifest."""
    new.mkdir()
    rows = (json.dumps(passages.as_row(passage)) for passage in index.passages)
    _write(new / "passages.jsonl", "".join(f"{row}\n" for row in rows))
    vectors.save(index.dense, new / "passages.faiss")
    vectors.save(index.asked, new / "asked.faiss")
    index.lexical.save(new / "words")
    np.save(new / "sentences.npy", index.sentences)
    np.save(new / "described.npy", index.described)
    _write(new / "described.json", json.dumps([[d.style, d.text] for d in index.descriptions]))
    files = {str(path.relative_to(new)): _digest(path) for path in _files(new)}
    _write(new / "manifest.json", json.dumps({**as_row(index.made), "files": files}, indent=1))
    for path in [*_files(new), new / "words", new]:
        _flush(path)
    return _digest(new / "manifest.json")


def _write(path: Path, text: str) -> None:
    path.write_text(text, encoding="ascii")  # as JSON writes it, whatever a note's name holds


def _swap(folder: Path, line: str) -> None:
    fresh = folder / _FRESH
    _write(fresh, f"{line}\n")
    _flush(fresh)
    os.replace(fresh, folder / CURRENT)
    _flush(folder)


def _flush(path: Path) -> None:
    """Has the disk hold a file or a folder before anything names it."""
    handle = os.open(path, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


@dataclass(frozen=True)
class _Named:
    """The folder that holds, and the digest of its manifest."""

    folder: str
    manifest: str


def _named(folder: Path) -> _Named | None:
    path = folder / CURRENT
    try:
        found = _LINE.fullmatch(path.read_text(encoding="ascii"))
    except FileNotFoundError:
        return None
    except UnicodeDecodeError:
        found = None
    except OSError as error:
        raise _unreadable(folder, path, error) from error
    if found is None:
        raise _damaged(folder, path, "this file names no folder of it")
    return _Named(found[1], found[2])


def _load(index: Path, named: _Named) -> Index:
    folder = index / named.folder
    _unchanged(index, folder / "manifest.json", named.manifest)
    manifest = _manifest(index, folder / "manifest.json")
    for name, digest in manifest["files"].items():
        _unchanged(index, folder / name, digest)
    try:
        rows = (folder / "passages.jsonl").read_text(encoding="ascii").splitlines()
        described = json.loads((folder / "described.json").read_text(encoding="ascii"))
        return Index(
            _made(manifest),
            tuple(passages.from_row(json.loads(row)) for row in rows),
            vectors.load(folder / "passages.faiss"),
            vectors.load(folder / "asked.faiss"),
            Lexical.load(folder / "words"),
            np.load(folder / "sentences.npy"),
            tuple(Description(style, text) for style, text in described),
            np.load(folder / "described.npy"),
        )
    except (ValueError, KeyError, TypeError, RuntimeError) as error:
        raise _damaged(index, folder, "the files in this folder do not belong together") from error


def _unchanged(index: Path, path: Path, digest: str) -> None:
    if _digest(path) != digest:
        raise _damaged(index, path, "this file has changed since it was written")


def _manifest(index: Path, path: Path) -> dict[str, Any]:
    try:
        manifest = json.loads(path.read_text(encoding="ascii"))
        kind = manifest["format"]
        _made(manifest)
        files = manifest["files"]
    except (ValueError, KeyError, TypeError, AttributeError) as error:
        raise _damaged(index, path, _NO_LIST) from error
    if kind != FORMAT:
        raise SearchError(
            str(path),
            f"another version built the index (in format {kind}; this one reads {FORMAT})",
            build_again(index),
        )
    if not isinstance(files, dict):
        raise _damaged(index, path, _NO_LIST)
    return dict(manifest)


def _made(manifest: Mapping[str, Any]) -> Made:
    content = {str(name): str(told) for name, told in manifest["content"].items()}
    return Made(str(manifest["model"]), str(manifest["weights"]), content, str(manifest["version"]))


def _files(folder: Path) -> Iterator[Path]:
    return (path for path in sorted(folder.rglob("*")) if path.is_file())


def _digest(path: Path) -> str:
    with path.open("rb") as file:
        return hashlib.file_digest(file, "sha256").hexdigest()


def _damaged(index: Path, path: Path, how: str) -> SearchError:
    return SearchError(str(path), f"the index is damaged: {how}", build_again(index))


def _unreadable(index: Path, path: Path, error: OSError) -> SearchError:
    how = f"the index cannot be read ({error.strerror or error})"
    return SearchError(str(error.filename or path), how, build_again(index))
