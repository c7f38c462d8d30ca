"""The answers over HTTP hold to their own description, whatever is sent."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest
import schemathesis
from fastapi.testclient import TestClient
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from schemathesis import GenerationMode
from serving import Still

from assistant.pages.app import app_for
from assistant.pages.guard import Share


@pytest.fixture(scope="module")
def ask(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Any]:
    """`POST /api/ask` as the application describes it."""
    app = app_for(Still(), tmp_path_factory.mktemp("state"), Share(many=10**6))
    with TestClient(app):
        yield schemathesis.openapi.from_asgi("/openapi.json", app)["/api/ask"]["POST"]


@pytest.mark.parametrize("mode", list(GenerationMode), ids=lambda mode: str(mode.value))
@settings(max_examples=40, deadline=None, suppress_health_check=list(HealthCheck))
@given(data=st.data())
def test_every_answer_is_as_described(ask: Any, mode: GenerationMode, data: st.DataObject) -> None:
    case = data.draw(ask.as_strategy(generation_mode=mode))
    answer = case.call()
    if answer.status_code == 413:  # refused before it was read
        assert set(answer.json()) == {"detail"}
    else:
        case.validate_response(answer)
