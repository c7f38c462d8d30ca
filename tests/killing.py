"""Builds in processes of their own, one of them killed when it turns to the disk."""

from __future__ import annotations

import multiprocessing
import os
import signal
import sys
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from multiprocessing.context import ForkServerProcess
from pathlib import Path
from threading import RLock
from typing import Any

from tqdm import tqdm

from assistant.search.build import build
from tests.encoders import WordHashes
from tests.indexed import content

# What a build does to files and folders goes by these names in the interpreter's own audit.
EVENTS = {"open", "os.mkdir", "os.rename", "os.remove", "os.rmdir", "os.scandir", "os.truncate"}
EVENTS |= {"shutil.rmtree", "os.listdir", "os.link", "os.symlink", "os.chmod", "os.utime"}

# A server that has loaded the modules once, before it has any thread, forks each child at once.
_server = multiprocessing.get_context("forkserver")
_server.set_forkserver_preload(["tests.killing"])


@contextmanager
def child(work: Callable[..., None], *given: Any) -> Iterator[ForkServerProcess]:
    """A process that does some work; it has ended when the block is left."""
    process = _server.Process(target=_run, args=(work, *given))
    process.start()
    try:
        yield process
        process.join(timeout=60)
    finally:
        process.kill()
        process.join()


def _run(work: Callable[..., None], *given: Any) -> None:
    # The library of the lexical index makes a progress bar even where none is shown, and the bar
    # a lock among processes, which would outlive a process that is killed.
    tqdm.set_lock(RLock())
    work(*given)


def ended(work: Callable[..., None], *given: Any) -> int | None:
    """The exit code of a process that does some work; minus the signal that killed it."""
    with child(work, *given) as process:
        pass
    return process.exitcode


def builds(folder: Path, notes: Mapping[str, str]) -> None:
    """A build from notes."""
    build(content(notes), folder, WordHashes())


def builds_in_turn(folder: Path, notes: Mapping[str, str], others: Mapping[str, str]) -> None:
    """Twenty builds from two sets of notes in turn, so that each swaps the index."""
    for _ in range(10):
        builds(folder, others)
        builds(folder, notes)


def builds_at_once(folder: Path, notes: Mapping[str, str], start: Any) -> None:
    """A build that begins when all who wait for the start are there."""
    start.wait(timeout=60)
    builds(folder, notes)


def counts(folder: Path, notes: Mapping[str, str], told: Path) -> None:
    """A build that tells in a file how often it turned to the index folder."""
    seen = _watch(folder, lambda _: None)
    builds(folder, notes)
    told.write_text(f"{seen()}")


def dies(folder: Path, notes: Mapping[str, str], at: int) -> None:
    """A build killed as it turns to the index folder for the `at`-th time."""
    _watch(folder, lambda number: _die() if number == at else None)
    builds(folder, notes)


def dies_writing(folder: Path, notes: Mapping[str, str], room: int) -> None:
    """A build killed in the middle of a file, at the byte for which there is no room."""
    import resource

    signal.signal(signal.SIGXFSZ, signal.SIG_DFL)
    resource.setrlimit(resource.RLIMIT_CORE, (0, 0))
    resource.setrlimit(resource.RLIMIT_FSIZE, (room, room))
    builds(folder, notes)


def barrier(parties: int) -> Any:
    """A start for which several processes wait."""
    return _server.Barrier(parties)


def _die() -> None:
    os.kill(os.getpid(), signal.SIGKILL)


def _watch(folder: Path, then: Callable[[int], None]) -> Callable[[], int]:
    """Calls `then` with 1, 2, 3... before each event on disk below a folder.

    A tree is removed through handles of its folders, and the events then name no folder.
    """
    seen = 0

    def hook(event: str, arguments: tuple[Any, ...]) -> None:
        nonlocal seen
        if event not in EVENTS:
            return
        path = arguments[0] if arguments else None
        inside = isinstance(path, str | os.PathLike) and os.fspath(path).startswith(str(folder))
        by_handle = event in ("os.remove", "os.rmdir") and isinstance(arguments[-1], int)
        if inside or (by_handle and arguments[-1] >= 0):
            seen += 1
            then(seen)

    sys.addaudithook(hook)
    return lambda: seen
