"""A build killed at any moment leaves the old index or the new one, and each is whole."""

from __future__ import annotations

import shutil
import signal
from collections.abc import Mapping
from pathlib import Path
from typing import Any, NamedTuple

import pytest

from assistant.errors import SearchError
from assistant.search import store
from assistant.search.build import build, renewed
from tests import killing
from tests.encoders import NoModel, WordHashes
from tests.indexed import FOR_STAFF, NOTES, SLACK, built_folders, content, contents, inside

OLD: Mapping[str, str] = NOTES
NEW: Mapping[str, str] = {
    **{name: text for name, text in NOTES.items() if name != "returns"},
    "chains": NOTES["chains"].replace(SLACK, "A chain hangs a little slack."),
    "lids": "---\ntitle: Lids\naudience: customers\n---\n\nLay the lid flat.\n",
}
MANY: Mapping[str, str] = {
    "numbers": FOR_STAFF.format("Numbers", " ".join(f"Number {at}." for at in range(200)))
}
POINTS = 50


def expected(notes: Mapping[str, str]) -> tuple[Any, ...] | None:
    """What an index of the notes holds."""
    return contents(renewed(content(notes), WordHashes(), None).index)


class Kept(NamedTuple):
    """An index of the old notes, and how often a build of the new ones turns to the disk."""

    folder: Path
    events: int


@pytest.fixture(scope="module")
def kept(tmp_path_factory: pytest.TempPathFactory) -> Kept:
    folder, told = tmp_path_factory.mktemp("kept"), tmp_path_factory.mktemp("told") / "events"
    build(content(OLD), folder, WordHashes())
    watched = Path(shutil.copytree(folder, told.parent / "index"))
    assert killing.ended(killing.counts, watched, NEW, told) == 0
    return Kept(folder, int(told.read_text()))


@pytest.fixture
def folder(kept: Kept, tmp_path: Path) -> Path:
    """A copy of the old index."""
    return Path(shutil.copytree(kept.folder, tmp_path / "index"))


def assert_whole(folder: Path) -> None:
    """The old index or the new one, every passage and vector of it."""
    assert contents(store.read(folder)) in (expected(OLD), expected(NEW))


def assert_next_build_succeeds(folder: Path, notes: Mapping[str, str] = NEW) -> None:
    """The next build makes the new index and clears away what the killed one left."""
    build(content(notes), folder, WordHashes())
    assert contents(store.read(folder)) == expected(notes)
    assert built_folders(folder) == [inside(folder, "").name]
    assert {path.name for path in folder.iterdir()} <= {*built_folders(folder), "current", ".lock"}


@pytest.mark.parametrize("point", range(POINTS))
def test_a_build_killed_as_it_turns_to_the_disk_leaves_one_index_whole(
    point: int, kept: Kept, folder: Path
) -> None:
    at = 1 + point * (kept.events - 1) // (POINTS - 1)
    assert killing.ended(killing.dies, folder, NEW, at) == -signal.SIGKILL
    assert_whole(folder)
    assert_next_build_succeeds(folder)


def test_the_kills_above_fall_on_fifty_moments_from_the_first_to_the_last(
    kept: Kept, folder: Path
) -> None:
    assert kept.events >= POINTS
    assert killing.ended(killing.dies, folder, NEW, kept.events + 1) == 0


@pytest.mark.parametrize(
    ("room", "notes", "cut"),
    [
        (0, NEW, "passages.jsonl"),
        (1, NEW, "passages.jsonl"),
        (500, NEW, "passages.jsonl"),
        (1_300, NEW, "manifest.json"),
        (12_000, MANY, "sentences.npy"),
    ],
)
def test_a_build_stopped_in_the_middle_of_a_file_leaves_the_old_index_whole(
    room: int, notes: Mapping[str, str], cut: str, folder: Path
) -> None:
    assert killing.ended(killing.dies_writing, folder, notes, room) == -signal.SIGXFSZ
    (left,) = {*built_folders(folder)} - {inside(folder, "").name}
    last = max((folder / left).rglob("*.*"), key=lambda path: path.stat().st_ctime_ns)
    assert (last.name, last.stat().st_size) == (cut, room)
    assert contents(store.read(folder)) == expected(OLD)
    assert_next_build_succeeds(folder, notes)


@pytest.mark.parametrize("at", [1, 5, 20, 40])
def test_a_first_build_that_is_killed_leaves_no_index_and_the_next_succeeds(
    at: int, tmp_path: Path
) -> None:
    assert killing.ended(killing.dies, tmp_path / "index", NEW, at) == -signal.SIGKILL
    assert store.read(tmp_path / "index") is None
    assert_next_build_succeeds(tmp_path / "index")


@pytest.mark.parametrize("percent", [10, 30, 50, 70, 90, 100])
def test_where_a_killed_build_is_followed_by_the_old_notes_nothing_of_it_is_left(
    percent: int, kept: Kept, folder: Path
) -> None:
    at = kept.events * percent // 100
    assert killing.ended(killing.dies, folder, NEW, at) == -signal.SIGKILL
    nothing_new = contents(store.read(folder)) == expected(OLD)
    build(content(OLD), folder, NoModel() if nothing_new else WordHashes())
    assert contents(store.read(folder)) == expected(OLD)
    assert built_folders(folder) == [inside(folder, "").name]


@pytest.mark.parametrize("others", [NEW, OLD], ids=["of the same notes", "of other notes"])
def test_two_builds_at_once_both_end_well(others: Mapping[str, str], tmp_path: Path) -> None:
    start = killing.barrier(2)
    with (
        killing.child(killing.builds_at_once, tmp_path, NEW, start) as one,
        killing.child(killing.builds_at_once, tmp_path, others, start) as other,
    ):
        pass
    assert (one.exitcode, other.exitcode) == (0, 0)
    assert contents(store.read(tmp_path)) in (expected(NEW), expected(others))
    assert_next_build_succeeds(tmp_path)


def test_an_index_read_while_it_is_swapped_is_always_whole(folder: Path) -> None:
    known = (expected(OLD), expected(NEW))
    reads, refusals = 0, set()
    with killing.child(killing.builds_in_turn, folder, OLD, NEW) as builder:
        while builder.is_alive():
            try:
                read = contents(store.read(folder))
            except SearchError as error:
                refusals.add(error.problem)
            else:
                assert read in known
                reads += 1
    assert builder.exitcode == 0
    assert reads
    assert refusals <= {"the index changed each time it was being read"}  # at every try
