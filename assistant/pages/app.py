"""All that is served on one port."""

from __future__ import annotations

import re
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from importlib.metadata import version
from pathlib import Path

from fastapi import FastAPI, Request, Response
from fastapi.exception_handlers import http_exception_handler, request_validation_exception_handler
from fastapi.exceptions import RequestValidationError
from fastapi.responses import PlainTextResponse
from fastapi.staticfiles import StaticFiles
from starlette.exceptions import HTTPException

from assistant.pages.api import api
from assistant.pages.customers import HERE, customers
from assistant.pages.guard import Headers, Share, Sizes
from assistant.pages.live import Live
from assistant.pages.visits import Visits

PICTURE = re.compile(r"[a-z0-9-]{1,60}\.svg")


def app_for(live: Live, state: Path, share: Share | None = None) -> FastAPI:
    """The pages of a shop. `state` is the folder in which its cases are kept.

    Raises:
        CaseError: the state folder cannot be used.
    """
    visits = Visits.kept_in(state)
    share = share or Share()

    @asynccontextmanager
    async def lifespan(_: FastAPI) -> AsyncIterator[None]:
        live.watch()
        yield
        live.close()

    app = FastAPI(
        title="counterhand",
        version=version("counterhand"),
        description="Answers of a spares counter, checked against its tables.",
        docs_url=None,  # their script would come from elsewhere
        redoc_url=None,
        lifespan=lifespan,
    )
    app.include_router(customers(live, visits, state, share))
    app.include_router(api(live, share))
    app.mount("/static", StaticFiles(directory=HERE / "static"), name="static")

    @app.get("/pictures/{name}", include_in_schema=False)
    def picture(name: str) -> Response:
        """A drawing of the shop."""
        path = live.now.shop.folder / "knowledge" / "pictures" / name
        if not PICTURE.fullmatch(name) or not path.is_file():
            raise HTTPException(404)
        policy = "default-src 'none'; style-src 'unsafe-inline'"  # a drawing brings its own
        return Response(
            path.read_bytes(),
            media_type="image/svg+xml",
            headers={"content-security-policy": policy, "cache-control": "max-age=3600"},
        )

    @app.exception_handler(HTTPException)
    async def told(request: Request, error: HTTPException) -> Response:
        """One plain line; programs get theirs as JSON."""
        if request.url.path.startswith("/api/"):
            return await http_exception_handler(request, error)
        lines = {
            404: "There is no such page. The counter is at /.",
            405: "That cannot be done here.",
        }
        return PlainTextResponse(
            f"{lines.get(error.status_code, error.detail)}\n", error.status_code
        )

    @app.exception_handler(RequestValidationError)
    async def unreadable(request: Request, error: RequestValidationError) -> Response:
        """The same for what a form or an address may not hold."""
        if request.url.path.startswith("/api/"):
            return await request_validation_exception_handler(request, error)
        return PlainTextResponse("There is no such page. The counter is at /.\n", 404)

    app.add_middleware(Sizes)
    app.add_middleware(Headers)
    return app
