"""A conversation in the terminal: what was said before counts, later words correct it."""

from __future__ import annotations

from datetime import date
from pathlib import Path

from prompt_toolkit import PromptSession
from prompt_toolkit.history import FileHistory
from rich.console import Console
from rich.markdown import Markdown

from assistant.answers.answer import Reply
from assistant.answers.compose.case import Audience
from assistant.cases.case import Case
from assistant.cases.store import Store
from assistant.cases.talk import Talk
from assistant.cases.telling import changed_line
from assistant.search.searching import Search
from assistant.shop import Shop

__all__ = ["Conversation", "converse"]


class Conversation:
    """Everything said so far, read anew as one letter with each line; kept nowhere."""

    def __init__(
        self,
        shop: Shop,
        audience: Audience,
        today: date | None = None,
        search: Search | None = None,
    ) -> None:
        self._talk = Talk(shop, audience, today, search)

    def say(self, line: str) -> Reply:
        """The answers after one more line; thanks and greetings leave the matter as it stood."""
        return self._talk.say(line).reply


def converse(
    shop: Shop,
    audience: Audience,
    today: date | None,
    search: Search | None,
    store: Store,
    case: Case | None = None,
) -> None:
    """Reads lines until an empty one or the end, and answers each with all that was said.

    The conversation is kept as a case, whose name is told at the end.
    """
    console = Console(width=min(Console().width, 92))
    console.print(f"{shop.settings.name}. Tell us about the toilet; an empty line ends it.")
    history = FileHistory(str(_history_file(store.path.parent)))
    session: PromptSession[str] = PromptSession(history=history)
    talk = Talk(shop, audience, today, search, store, case)
    shown: list[str] = []  # what was answered already is not said again
    while line := _line(session):
        said = talk.say(line)
        if changed := changed_line(said.changes):
            console.print(changed, markup=False, highlight=False)
            console.print()
        texts = [answer.text for answer in said.reply.answers]
        for text in [t for t in texts if t not in shown] or texts:
            console.print(Markdown(text))
            console.print()
        shown = texts
    if talk.case is not None:
        console.print(f"This is case {talk.case.id}.", highlight=False)


def _line(session: PromptSession[str]) -> str:
    try:
        return session.prompt("> ").strip()
    except (EOFError, KeyboardInterrupt):
        return ""


def _history_file(folder: Path) -> Path:
    return folder / "chat-history"
