"""A table is swapped in at once: whatever goes wrong, the old file or the new one is whole."""

from __future__ import annotations

import os
import signal
import stat
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from assistant.importing.faults import WriteError
from assistant.importing.writing import swap_in
from tests.indexed import full_disk
from tests.killing import ended
from tests.sheets import dies_swapping

OLD, NEW = b"part_no,price\nZZ-1,4.95\n" * 3000, b"part_no,price\nZZ-1,5.35\n" * 3000


@pytest.fixture
def table(tmp_path: Path) -> Path:
    path = tmp_path / "tables" / "seals.csv"
    path.parent.mkdir()
    path.write_bytes(OLD)
    return path


def beside(table: Path) -> list[str]:
    return sorted(path.name for path in table.parent.iterdir())


def test_the_new_table_takes_the_place_of_the_old_and_leaves_nothing_beside_it(
    table: Path,
) -> None:
    swap_in(table, OLD, NEW)
    assert table.read_bytes() == NEW
    assert beside(table) == ["seals.csv"]


@pytest.mark.parametrize("mode", [0o600, 0o644, 0o664])
def test_the_files_mode_stays(table: Path, mode: int) -> None:
    table.chmod(mode)
    swap_in(table, OLD, NEW)
    assert stat.S_IMODE(table.stat().st_mode) == mode


def test_a_link_stays_a_link(table: Path, tmp_path: Path) -> None:
    link = tmp_path / "seals.csv"
    link.symlink_to(table)
    swap_in(link, OLD, NEW)
    assert link.is_symlink()
    assert table.read_bytes() == NEW


def _no(*_: Any, **__: Any) -> None:
    raise OSError(28, "No space left on device")


@pytest.mark.parametrize("step", ["os.replace", "os.fsync", "os.fchmod", "pathlib.Path.open"])
def test_a_step_that_fails_leaves_the_old_table_and_is_told(
    table: Path, step: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    with monkeypatch.context() as patch:
        patch.setattr(step, _no)
        with pytest.raises(WriteError) as caught:
            swap_in(table, OLD, NEW)
    assert str(caught.value) == (
        f"{table}: cannot be written (No space left on device) and is as it was; "
        "free it or its disk, and import again."
    )
    assert table.read_bytes() == OLD
    assert beside(table) == ["seals.csv"]


@pytest.mark.parametrize("room", [0, 1, 5000])
def test_a_disk_that_is_full_leaves_the_old_table_and_is_told(table: Path, room: int) -> None:
    with full_disk(room), pytest.raises(WriteError, match="cannot be written"):
        swap_in(table, OLD, NEW)
    assert table.read_bytes() == OLD
    assert beside(table) == ["seals.csv"]


def test_a_table_that_may_only_be_read_is_left_as_it_is(
    table: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(os, "access", lambda *_: False)
    with pytest.raises(WriteError, match="it may only be read"):
        swap_in(table, OLD, NEW)
    assert table.read_bytes() == OLD


def test_what_somebody_else_wrote_meanwhile_is_not_overwritten(table: Path) -> None:
    table.write_bytes(b"part_no\n")
    with pytest.raises(WriteError, match="has changed while the sheet was read; import it again"):
        swap_in(table, OLD, NEW)
    assert table.read_bytes() == b"part_no\n"
    assert beside(table) == ["seals.csv"]


def test_a_table_that_is_gone_is_told(table: Path) -> None:
    table.unlink()
    with pytest.raises(WriteError, match="cannot be written"):
        swap_in(table, OLD, NEW)
    assert beside(table) == []


def test_killed_at_any_moment_the_old_table_or_the_new_one_is_whole(table: Path) -> None:
    found = []
    for at in range(1, 40):
        table.write_bytes(OLD)
        code = ended(dies_swapping, table, OLD, NEW, at)
        found.append(table.read_bytes())
        if code == 0:
            break
        assert code == -signal.SIGKILL
    assert code == 0, "it was killed at every moment there is"
    assert set(found) == {OLD, NEW}
    assert found == sorted(found, key=[OLD, NEW].index)  # once swapped, it stays swapped
    assert len(found) > 4


def test_what_a_killed_import_left_is_cleared_away_by_the_next(table: Path) -> None:
    left = table.with_name(".seals.csv.0123abcd.new")
    left.write_bytes(NEW[:7])
    other = table.with_name(".styles.csv.0123abcd.new")
    other.write_bytes(NEW[:7])
    swap_in(table, OLD, NEW)
    assert beside(table) == [other.name, "seals.csv"]


def test_the_new_table_is_on_the_disk_before_it_takes_the_old_ones_name(
    table: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    steps: list[str] = []

    def noting(name: str, real: Callable[..., Any]) -> Callable[..., Any]:
        def step(*given: Any) -> Any:
            steps.append(name)
            return real(*given)

        return step

    for name in ("fsync", "replace"):
        monkeypatch.setattr(os, name, noting(name, getattr(os, name)))
    swap_in(table, OLD, NEW)
    assert steps == ["fsync", "replace", "fsync"]
