"""The same answers over HTTP, for programs: what a customer may know, and no more."""

from __future__ import annotations

from typing import Annotated, Any

from anyio import CapacityLimiter, to_thread
from fastapi import APIRouter, HTTPException, Request
from pydantic import BaseModel, ConfigDict, Field, StringConstraints

from assistant.answers.answer import as_json
from assistant.answers.reply import reply
from assistant.pages.customers import AT_ONCE, LONGEST
from assistant.pages.guard import Share
from assistant.pages.live import Live
from assistant.reading.letters import letter_from_text

Words = Annotated[str, StringConstraints(min_length=1, max_length=LONGEST)]


class Question(BaseModel):
    """A message to the counter."""

    model_config = ConfigDict(extra="forbid")

    message: Words = Field(description="What the customer writes, as plain text.")
    questions: int = Field(1, ge=1, le=3, description="How many things may be asked back at once.")


class Answered(BaseModel):
    """The answers in the order asked, and the facts that were read, as `ask --json` prints them."""

    answers: list[dict[str, Any]]
    facts: list[dict[str, Any]]
    audience: str
    took_ms: float


class Refused(BaseModel):
    """Why there is no answer."""

    detail: str


def api(live: Live, share: Share) -> APIRouter:
    """The route."""
    router = APIRouter(prefix="/api")
    limit = CapacityLimiter(AT_ONCE)

    refusals: dict[int | str, dict[str, Any]] = {n: {"model": Refused} for n in (400, 413, 429)}

    @router.post("/ask", responses=refusals)
    async def ask(question: Question, request: Request) -> Answered:
        """Answers one message by itself; nothing of it is kept."""
        wait = share.wait(request.client.host if request.client else "")
        if wait:
            told = (
                f"more messages than one visitor may send in a minute; wait {int(wait) + 1} seconds"
            )
            raise HTTPException(429, told, {"retry-after": str(int(wait) + 1)})
        async with limit:
            return await to_thread.run_sync(_answered, live, question)

    return router


def _answered(live: Live, question: Question) -> Answered:
    known = live.now
    made = reply(
        known.shop,
        letter_from_text(question.message),
        audience="customers",
        search=known.search,
        most_questions=question.questions,
    )
    return Answered(**as_json(made))
