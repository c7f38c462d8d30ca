"""The model, loaded once for all tests, and the search of the demonstration shop's notes."""

from __future__ import annotations

import atexit
import os
import shutil
import tempfile
from functools import cache
from pathlib import Path

from demonstration import shop
from filelock import FileLock

from assistant.search.model import Model
from assistant.search.opening import open_search
from assistant.search.searching import Search


@cache
def model() -> Model:
    """The packaged model; its weights are read when a test first needs a vector."""
    return Model()


@cache
def demo_index() -> Path:
    """A folder, gone when the tests end, for the index of the demonstration shop's notes.

    It begins as a copy of the one that lies beside the notes, where one was built, so that only
    what has changed since is embedded. Processes that share the tests share it.
    """
    run = os.environ.get("PYTEST_XDIST_TESTRUNUID")
    if run is None:
        folder = Path(tempfile.mkdtemp(prefix="counterhand-index-"))
        atexit.register(shutil.rmtree, folder, ignore_errors=True)
    else:  # whoever is through first must not take it from the others
        folder = Path(tempfile.gettempdir()) / f"counterhand-index-{run}"
    with FileLock(f"{folder}.lock"):
        if (shop().index / "current").exists() and not (folder / "current").exists():
            shutil.copytree(shop().index, folder, dirs_exist_ok=True)
    return folder


@cache
def demo_search() -> Search:
    """The search of the demonstration shop, its index built once from the notes as they stand."""
    with FileLock(f"{demo_index()}.built.lock"):
        return open_search(shop().content, demo_index(), model())
