"""A case that goes on: a message comes in, is kept, and the whole case is answered."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date, datetime
from functools import cached_property
from typing import Any

from assistant.answers.answer import Reply
from assistant.answers.compose.case import Audience
from assistant.cases.answering import answer, message_of, now
from assistant.cases.case import Case, Change, Message, Standing, Who
from assistant.cases.known import known
from assistant.cases.standing import standing
from assistant.cases.store import Store
from assistant.cases.telling import case_as_json, last_changes
from assistant.search.searching import Search
from assistant.shop import Shop


@dataclass(frozen=True)
class Said:
    """The reply to a message, and the case after it."""

    shop: Shop
    reply: Reply
    case: Case
    today: date | None = None

    @cached_property
    def standing(self) -> Standing:
        """What the case stands at."""
        return standing(self.shop, self.case, self.today)

    @property
    def changes(self) -> tuple[Change, ...]:
        """What the message changed of what was told before."""
        return last_changes(self.case, self.standing)

    def as_json(self) -> dict[str, Any]:
        """The object that `--json` prints."""
        read = known(self.case.messages, self.shop.names, self.today)
        return case_as_json(self.reply, self.case, self.standing, read)


class Talk:
    """A case with the shop that answers it; kept in a store where one is given."""

    def __init__(
        self,
        shop: Shop,
        audience: Audience,
        today: date | None = None,
        search: Search | None = None,
        store: Store | None = None,
        case: Case | None = None,
    ) -> None:
        self._shop, self._audience, self._today, self._search = shop, audience, today, search
        self._store, self.case = store, case

    def say(self, text: str, at: datetime | None = None, most_questions: int = 1) -> Said:
        """The reply to one message more, and what the case is then."""
        who: Who = "customer" if self._audience == "customers" else "staff"
        case = self._with(Message(0, who, text, at or now()))
        reply = answer(
            self._shop,
            case,
            audience=self._audience,
            today=self._today,
            search=self._search,
            most_questions=most_questions,
        )
        said = Said(self._shop, reply, case.plus(self._numbered(message_of(reply, case), case)),
                    self._today)  # fmt: skip
        self.case = said.case
        if self._store is not None:
            kept = self._store.say(said.case.id, said.case.messages[-1], said.as_json())
            self.case = case.plus(kept)
        return said

    def _with(self, message: Message) -> Case:
        """The case with a message more; the store's own, as others may have written to it."""
        if self._store is None:
            case = self.case or Case("", message.at)
            return case.plus(self._numbered(message, case))
        name = self.case.id if self.case else self._store.new(message.at)
        self._store.say(name, message)
        return self._store.case(name)

    def _numbered(self, message: Message, case: Case) -> Message:
        return replace(message, number=len(case.messages) + 1)
