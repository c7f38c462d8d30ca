"""The customers' page: a conversation that works without script, and better with it."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from typing import Annotated, Any

from anyio import CapacityLimiter, to_thread
from fastapi import APIRouter, Form, Request, Response
from fastapi.responses import HTMLResponse, PlainTextResponse, RedirectResponse
from fastapi.templating import Jinja2Templates

from assistant.cases.case import Case
from assistant.cases.store import Store
from assistant.cases.talk import Talk
from assistant.errors import CaseError
from assistant.pages.guard import Share
from assistant.pages.live import Live
from assistant.pages.turns import DONT_KNOW, Turn, first_pictures, turns
from assistant.pages.visits import COOKIE, LASTS, Visits
from assistant.shop import Shop

HERE = Path(__file__).parent
LONGEST = 8000  # characters of one message
MOST = 60  # messages of one conversation
AT_ONCE = 2  # answers that are worked out at the same time: one a core
TOO_MANY = (
    "That is more messages than one visitor may send in a minute. "
    "Please wait {} seconds; what you wrote before is kept."
)
TOO_LONG = f"Please keep a message under {LONGEST:,} characters."
FULL = "This conversation has grown too long to answer well. Start over, or write to the shop."


@dataclass(frozen=True)
class Kept:
    """A case and the answers that were given in it."""

    case: Case
    answers: tuple[dict[str, Any], ...]

    def turns(self, shop: Shop) -> tuple[Turn, ...]:
        """All its messages, as the page shows them."""
        return turns(self.case, self.answers, shop.tables)


def customers(live: Live, visits: Visits, state: Path, share: Share) -> APIRouter:
    """The routes of the page."""
    router = APIRouter(include_in_schema=False)
    templates = Jinja2Templates(HERE / "templates")
    limit = CapacityLimiter(AT_ONCE)

    def page(request: Request, kept: Kept | None, said: str = "", status: int = 200) -> Response:
        shop = live.now.shop
        return templates.TemplateResponse(
            request,
            "customers.html",
            {
                "settings": shop.settings,
                "turns": kept.turns(shop) if kept else (),
                "firsts": first_pictures(shop.tables),
                "case": kept.case if kept else None,
                "said": said,
                "dont_know": DONT_KNOW,
                "longest": LONGEST,
            },
            status_code=status,
        )

    @router.get("/", response_class=HTMLResponse)
    def conversation(request: Request) -> Response:
        """The conversation so far, or the way to begin one."""
        return page(request, _kept(request, visits, state))

    @router.post("/say")
    async def say(request: Request, words: Annotated[str, Form()] = "") -> Response:
        """Takes a message, and answers it."""
        if not from_here(request):
            return PlainTextResponse("Please write on the shop's own page.\n", 403)
        kept = await to_thread.run_sync(_kept, request, visits, state)
        wait = share.wait(_who(request))
        refused = (
            (TOO_MANY.format(int(wait) + 1), 429) if wait
            else (TOO_LONG, 413) if len(words) > LONGEST
            else (FULL, 409) if kept and len(kept.case.messages) >= MOST
            else None
        )  # fmt: skip
        if refused:
            return await to_thread.run_sync(page, request, kept, *refused)
        if not words.strip():
            return RedirectResponse("/#write", 303)
        async with limit:
            told = await to_thread.run_sync(_answered, live, state, kept, words)
        answer = RedirectResponse(f"/#turn-{told.messages[-1].number}", 303)
        remember(answer, request, visits.signed(told.id))
        return answer

    @router.post("/start-over")
    def start_over(request: Request) -> Response:
        """Forgets which conversation this browser was in; the shop keeps it."""
        if not from_here(request):
            return PlainTextResponse("Please use the shop's own page.\n", 403)
        answer = RedirectResponse("/", 303)
        answer.delete_cookie(COOKIE)
        return answer

    @router.get("/sheet/{number}", response_class=HTMLResponse)
    def sheet(request: Request, number: int) -> Response:
        """One answer by itself, to be printed or saved."""
        kept, shop = _kept(request, visits, state), live.now.shop
        every = kept.turns(shop) if kept else ()
        found = [turn for turn in every if turn.number == number and not turn.mine]
        if kept is None or not found:
            return PlainTextResponse("There is no such answer in this conversation.\n", 404)
        return templates.TemplateResponse(
            request,
            "sheet.html",
            {
                "settings": shop.settings,
                "turn": found[0],
                "case": kept.case,
                "day": datetime.now(UTC).date(),
            },
        )

    return router


def from_here(request: Request) -> bool:
    """Whether a form was sent from a page of ours: what browsers say of it, where they do.

    Source: Fetch Metadata Request Headers, W3C.
    """
    site = request.headers.get("sec-fetch-site")
    if site is not None:
        return site in ("same-origin", "none")
    origin = request.headers.get("origin")
    return origin is None or origin.split("://")[-1] == request.headers.get("host")


def remember(answer: Response, request: Request, value: str) -> None:
    """Sets the cookie; over an encrypted line it is sent over no other."""
    answer.set_cookie(
        COOKIE,
        value,
        max_age=LASTS,
        httponly=True,
        samesite="lax",
        secure=request.url.scheme == "https",
    )


def _kept(request: Request, visits: Visits, state: Path) -> Kept | None:
    """The conversation that a browser's cookie names, where there is one."""
    name = visits.case(request.cookies.get(COOKIE))
    if name is None:
        return None
    with Store.open(state) as store:
        try:
            return Kept(store.case(name), store.answers(name))
        except CaseError:  # its file was put away
            return None


def _answered(live: Live, state: Path, kept: Kept | None, words: str) -> Case:
    known, case = live.now, kept.case if kept else None
    with Store.open(state) as store:
        return Talk(known.shop, "customers", None, known.search, store, case).say(words).case


def _who(request: Request) -> str:
    return request.client.host if request.client else ""
