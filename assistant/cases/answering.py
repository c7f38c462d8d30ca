"""The answer to a whole case: all its messages are read as one letter, and answered anew."""

from __future__ import annotations

import time
from datetime import UTC, date, datetime

from assistant.answers.answer import Reply
from assistant.answers.compose.case import Audience
from assistant.answers.reply import Past, answered, reply
from assistant.answers.subject import is_civil
from assistant.cases.case import Case, Message
from assistant.cases.known import known
from assistant.cases.letter import open_before
from assistant.cases.offered import offered_by
from assistant.cases.so_far import asked_so_far, not_known_so_far
from assistant.reading.letters import letter_from_text
from assistant.search.looks import styles_alike
from assistant.search.searching import Search
from assistant.shop import Shop


def answer(
    shop: Shop,
    case: Case,
    *,
    audience: Audience,
    today: date | None = None,
    search: Search | None = None,
    most_questions: int = 1,
) -> Reply:
    """The answers to the case as it stands; thanks and greetings are answered in kind."""
    last = case.messages[-1]
    if is_civil(last.text):
        letter = letter_from_text(last.text)
        return reply(shop, letter, audience=audience, today=today, search=search)
    began = time.perf_counter()
    read = known(case.messages, shop.names, today)
    facts, text = read.facts, read.letter.text
    if search is not None:
        facts = facts.plus(styles_alike(search, text, facts))
    alone = len(facts.toilets) == 1  # of several toilets each is asked for itself
    return answered(
        shop,
        text,
        facts,
        audience=audience,
        search=search,
        began=began,
        past=Past(
            unknown=not_known_so_far(read, case.messages) if alone else frozenset(),
            asked=asked_so_far(case.messages) if alone else (),
            most=most_questions,
            talking=most_questions == 1,
            said=tuple(m.text for m in case.messages if m.who == "counter"),
        ),
    )


def message_of(reply: Reply, case: Case, at: datetime | None = None) -> Message:
    """The reply as the counter's message; after mere thanks the last question stays open."""
    last = case.messages[-1]
    kept = open_before(case.messages, len(case.messages)) if is_civil(last.text) else None
    return Message(0, "counter", reply.text, at or now(), kept or offered_by(reply))


def now() -> datetime:
    """This moment, by the clock that is the same everywhere."""
    return datetime.now(UTC)
