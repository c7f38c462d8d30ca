"""A table swapped in at once: whoever reads, or is killed, meets the old file or the new one."""

from __future__ import annotations

import os
import secrets
import stat
from contextlib import suppress
from pathlib import Path

from assistant.importing.faults import WriteError


def swap_in(path: Path, before: bytes, after: bytes) -> None:
    """Writes a table in place of what was read from it.

    Raises:
        WriteError: it has changed since, or cannot be written; it is as it was.
    """
    path = path.resolve()  # a link stays one
    fresh = path.with_name(f".{path.name}.{secrets.token_hex(4)}.new")
    try:
        _sweep(path)
        if not os.access(path, os.W_OK):
            raise PermissionError(0, "it may only be read")
        _fill(fresh, after, path.stat())
        if path.read_bytes() != before:
            raise WriteError(str(path), "has changed while the sheet was read", "import it again")
        os.replace(fresh, path)
    except OSError as error:
        raise WriteError(
            str(path),
            f"cannot be written ({error.strerror or error}) and is as it was",
            "free it or its disk, and import again",
        ) from error
    finally:
        with suppress(OSError):
            fresh.unlink()
    with suppress(OSError):  # the table is whole either way; this makes the swap outlive a blackout
        _flush(path.parent)


def _fill(fresh: Path, text: bytes, like: os.stat_result) -> None:
    """A new file with the table's owner and mode, on the disk before anything names it."""
    with fresh.open("xb") as out:
        with suppress(PermissionError):
            os.fchown(out.fileno(), like.st_uid, like.st_gid)
        os.fchmod(out.fileno(), stat.S_IMODE(like.st_mode))
        out.write(text)
        out.flush()
        os.fsync(out.fileno())


def _flush(folder: Path) -> None:
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def _sweep(path: Path) -> None:
    """Removes what an import that was killed has left."""
    for left in path.parent.glob(f".{path.name}.*.new"):
        with suppress(OSError):
            left.unlink()
