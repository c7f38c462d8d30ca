"""A case for a command: opened anew, or gone on with."""

from __future__ import annotations

from datetime import UTC, date, datetime, time

from assistant.answers.compose.case import Audience
from assistant.cases.store import Store, state_folder
from assistant.cases.talk import Talk
from assistant.cases.telling import changed_line
from assistant.commands.searching import search_of
from assistant.reading.letters import Letter
from assistant.shop import Shop

NEW = "new"
__all__ = ["NEW", "Store", "changed_line", "sent_at", "state_folder", "talk_of"]


def talk_of(shop: Shop, audience: Audience, today: date | None, store: Store, case: str) -> Talk:
    """The case named, which must be there before anything is searched; or a new one."""
    kept = None if case == NEW else store.case(case)
    return Talk(shop, audience, today, search_of(shop), store, kept)


def sent_at(letter: Letter) -> datetime | None:
    """When a mail was sent, as far as it says."""
    return None if letter.sent is None else datetime.combine(letter.sent, time(), UTC)
