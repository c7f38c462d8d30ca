"""What a public page needs around it: headers, sizes, and a share for everybody.

Sources: OWASP Application Security Verification Standard 4.0.3, chapters 13 and 14 (from memory),
and Content Security Policy Level 3, W3C.
"""

from __future__ import annotations

import json
import threading
import time
from collections import OrderedDict, deque
from collections.abc import Callable

from starlette.types import ASGIApp, Message, Receive, Scope, Send

LONGEST = 64 * 1024  # bytes of a request; a letter of some twenty pages
MANY, WITHIN = 30, 60.0  # messages of one visitor, in so many seconds
VISITORS = 10_000  # whose messages are counted at once

POLICY = "; ".join(
    (
        "default-src 'none'",
        "style-src 'self'",
        "script-src 'self'",
        "img-src 'self'",
        "connect-src 'self'",
        "form-action 'self'",
        "base-uri 'none'",
        "frame-ancestors 'none'",
    )
)
HEADERS = {
    "content-security-policy": POLICY,
    "x-content-type-options": "nosniff",
    "referrer-policy": "no-referrer",
    "cross-origin-opener-policy": "same-origin",
    "cross-origin-resource-policy": "same-origin",
    "permissions-policy": "camera=(), geolocation=(), microphone=()",
    "x-frame-options": "DENY",
}


class Share:
    """Counts what each visitor sends, and says when it is more than a share."""

    def __init__(
        self,
        many: int = MANY,
        within: float = WITHIN,
        clock: Callable[[], float] = time.monotonic,
    ) -> None:
        self._many, self._within, self._clock = many, within, clock
        self._seen: OrderedDict[str, deque[float]] = OrderedDict()
        self._lock = threading.Lock()

    def wait(self, who: str) -> float:
        """Seconds until this visitor may send again; 0 where it counts as sent now."""
        now = self._clock()
        with self._lock:
            sent = self._seen.setdefault(who, deque())
            self._seen.move_to_end(who)
            while len(self._seen) > VISITORS:
                self._seen.popitem(last=False)
            while sent and now - sent[0] >= self._within:
                sent.popleft()
            if len(sent) >= self._many:
                return self._within - (now - sent[0])
            sent.append(now)
            return 0.0


class Headers:
    """Middleware: the headers of every answer."""

    def __init__(self, app: ASGIApp) -> None:
        self.app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Adds them where the answer begins."""

        async def sent(message: Message) -> None:
            if message["type"] == "http.response.start":
                own = {name for name, _ in message["headers"]}
                message["headers"] = [
                    *message["headers"],
                    *(
                        (name.encode(), value.encode())
                        for name, value in HEADERS.items()
                        if name.encode() not in own
                    ),
                ]
            await send(message)

        await self.app(scope, receive, sent if scope["type"] == "http" else send)


class Sizes:
    """Middleware: a request that is too long is refused before it is read."""

    def __init__(self, app: ASGIApp, longest: int = LONGEST) -> None:
        self.app, self.longest = app, longest

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Reads the body in pieces and stops where it grows too long."""
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        body, more = b"", True
        while more:
            message = await receive()
            if message["type"] == "http.disconnect":
                return
            body += message.get("body", b"")
            more = message.get("more_body", False)
            if len(body) > self.longest:
                await _refused(send, self.longest, scope["path"].startswith("/api/"))
                return
        given = False

        async def again() -> Message:
            nonlocal given
            if given:
                return await receive()
            given = True
            return {"type": "http.request", "body": body, "more_body": False}

        await self.app(scope, again, send)


async def _refused(send: Send, longest: int, by_program: bool) -> None:
    told = f"That is too long for one message: at most {longest // 1024} kB can be read."
    body = json.dumps({"detail": told}) if by_program else f"{told}\n"
    kind = b"application/json" if by_program else b"text/plain; charset=utf-8"
    await send({"type": "http.response.start", "status": 413, "headers": [(b"content-type", kind)]})
    await send({"type": "http.response.body", "body": body.encode()})
