"""The pages of the demonstration shop, served within the test or by a process of its own."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from demonstration import FOLDER, shop
from fastapi.testclient import TestClient
from searching import demo_search, model

from assistant.pages.app import app_for
from assistant.pages.guard import Share
from assistant.pages.live import Knowledge, Live

HERE = {"sec-fetch-site": "same-origin"}


class Still(Live):
    """Knowledge that is not looked at again, taken over from other tests."""

    def __init__(self) -> None:
        super().__init__(FOLDER, model())

    def _opened(self, *_: object) -> Knowledge:
        return Knowledge(shop(), demo_search())

    def look_again(self) -> bool:
        """Nothing changes."""
        return False


@contextmanager
def visitor(state: Path, share: Share | None = None) -> Iterator[TestClient]:
    """A browser without script, which keeps its cookies and follows where it is led."""
    app = app_for(Still(), state, share)
    with TestClient(app, base_url="http://counter.example", headers=HERE) as client:
        yield client
