"""Whose conversation it is: a signed cookie with the name of a case, and nothing else."""

from __future__ import annotations

import os
import secrets
from pathlib import Path

from itsdangerous import BadSignature, URLSafeTimedSerializer

from assistant.errors import CaseError

COOKIE = "conversation"
LASTS = 30 * 24 * 3600  # seconds; a month, as a seal may take three weeks to come
KEY = "pages.key"


class Visits:
    """Signs the names of cases, and reads only what it signed itself."""

    def __init__(self, key: bytes) -> None:
        self._signer = URLSafeTimedSerializer(key, salt="counterhand conversation")

    @classmethod
    def kept_in(cls, state: Path) -> Visits:
        """With the key of a state folder, which is made where there is none.

        Raises:
            CaseError: the key can be neither read nor written.
        """
        path = state / KEY
        try:
            state.mkdir(parents=True, exist_ok=True)
            _make(path)
            return cls(path.read_bytes())
        except OSError as error:
            raise CaseError(
                str(path),
                f"the key of the pages cannot be kept ({error.strerror})",
                "name another folder with --state",
            ) from error

    def signed(self, case: str) -> str:
        """A cookie's value for a case."""
        return self._signer.dumps(case)

    def case(self, cookie: str | None) -> str | None:
        """The case that a cookie names; `None` where it is none of ours, or too old."""
        if not cookie:
            return None
        try:
            name = self._signer.loads(cookie, max_age=LASTS)
        except BadSignature:
            return None
        return name if isinstance(name, str) else None


def _make(path: Path) -> None:
    """A key that only this user can read, whole or not at all."""
    if path.exists():
        return
    mine = path.with_name(f"{path.name}.{os.getpid()}")
    with open(os.open(mine, os.O_CREAT | os.O_WRONLY | os.O_EXCL, 0o600), "wb") as file:
        file.write(secrets.token_bytes(32))
    try:
        os.link(mine, path)  # whoever comes first stays
    except FileExistsError:
        pass
    finally:
        mine.unlink()
