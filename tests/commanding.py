"""Runs a command as a person would, and what came of it."""

from __future__ import annotations

import io
import json
import sys
from collections.abc import Sequence
from typing import Any, NamedTuple

import pytest

from assistant.cli import main


class Ran(NamedTuple):
    """The exit code and what was printed."""

    code: int
    out: str
    err: str

    @property
    def object(self) -> dict[str, Any]:
        """What was printed, as the object that it is."""
        return dict(json.loads(self.out))

    @property
    def words(self) -> str:
        """What was printed, without its line breaks."""
        return " ".join(self.out.split())


def ran(
    patch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
    words: Sequence[str],
    stdin: bytes = b"",
) -> Ran:
    """What a command line comes to."""
    patch.setattr(sys, "argv", ["counterhand", *words])
    patch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(stdin)))
    code = 0
    try:
        main()
    except SystemExit as end:
        code = int(end.code or 0)
    return Ran(code, *capsys.readouterr())
