"""A conversation in the terminal: what was said before counts, later words correct it."""

from __future__ import annotations

import re
from datetime import date
from pathlib import Path

from platformdirs import user_state_path
from prompt_toolkit import PromptSession
from prompt_toolkit.history import FileHistory
from rich.console import Console
from rich.markdown import Markdown

from assistant.answers.answer import Reply
from assistant.answers.compose.case import Audience
from assistant.answers.reply import reply
from assistant.answers.subject import is_civil
from assistant.reading.letters import letter_from_text
from assistant.search.searching import Search
from assistant.shop import Shop

# A short answer leans on its question: '2273' alone is any number.
LEAD_INS = {
    "model_no": "The number stamped in the tank is {}",
    "brand": "The maker is {}",
    "model": "The model is {}",
    "made": "The toilet was made in {}",
    "pieces": "It is a {} piece toilet",
    "opening": "The opening is {}",
    "hinge_width": "The width between the ears is {}",
    "flush": "It flushes {}",
    "overflow": "The overflow tube is {}",
    "ears": "The ears point {}",
    "mount": "The seal is held by {}",
    "tank_kind": "The tank is {}",
    "old_part": "The number moulded on the old seal is {}",
    "position": "It is the {} valve",
}
YES_OR_NO = {
    "valve_replaced": {
        "yes": "The flush valve has been replaced",
        "no": "The flush valve is the original one",
    },
}
ANSWERS = {
    "yes": re.compile(
        r"(?:yes|yeah|yep|yup|aye|sure|correct|(?:it|they|he|she|we|i) (?:was|were|has|have|did)\b"
        r"(?! ?n[o']t))",
        re.IGNORECASE,
    ),
    "no": re.compile(
        r"(?:no\b|nope|nah|never|not (?:that|as far|to my)|(?:it|they|he|she|we|i) (?:was|has"
        r"|did|have)"
        r"(?:n't| not)|(?:it's |it is |all |still )?original)",
        re.IGNORECASE,
    ),
}
_FIRST = re.compile(r"(.+?)([.!?]?)((?:(?<=[.!?])\s.*)?)$", re.DOTALL)
SHORT = 4  # words; more than this says for itself what it answers


class Conversation:
    """Everything said so far, read anew as one letter with each line."""

    def __init__(
        self,
        shop: Shop,
        audience: Audience,
        today: date | None = None,
        search: Search | None = None,
    ) -> None:
        self._shop, self._audience, self._today, self._search = shop, audience, today, search
        self._said: list[str] = []
        self._asked: str | None = None

    def say(self, line: str) -> Reply:
        """The answers after one more line; thanks and greetings leave the matter as it stood."""
        if is_civil(line):
            return self._answer(line)
        self._said.append(in_full(line, self._asked))
        made = self._answer("\n\n".join(self._said))
        questions = [a.question.asks for a in made.answers if a.question]
        self._asked = questions[0] if len(questions) == 1 else None
        return made

    def _answer(self, message: str) -> Reply:
        return reply(
            self._shop,
            letter_from_text(message),
            audience=self._audience,
            today=self._today,
            search=self._search,
        )


def in_full(line: str, asked: str | None) -> str:
    """A line with what it answers said round its first sentence, where that is short."""
    found = _FIRST.match(line.strip())
    if found is None:
        return line
    first, stop, rest = found.groups()
    for word, said in YES_OR_NO.get(asked or "", {}).items():
        if ANSWERS[word].match(first):
            return f"{said}{stop or '.'}{rest}"
    lead_in = LEAD_INS.get(asked or "")
    if lead_in is None or len(first.split()) > SHORT:
        return line
    return f"{lead_in.format(first)}{stop or '.'}{rest}"


def converse(
    shop: Shop, audience: Audience, today: date | None = None, search: Search | None = None
) -> None:
    """Reads lines until an empty one or the end, and answers each with all that was said."""
    console = Console(width=min(Console().width, 92))
    console.print(f"{shop.settings.name}. Tell us about the toilet; an empty line ends it.")
    session: PromptSession[str] = PromptSession(history=FileHistory(str(_history_file())))
    conversation = Conversation(shop, audience, today, search)
    shown: list[str] = []  # what was answered already is not said again
    while True:
        try:
            line = session.prompt("> ").strip()
        except (EOFError, KeyboardInterrupt):
            return
        if not line:
            return
        texts = [answer.text for answer in conversation.say(line).answers]
        for text in [t for t in texts if t not in shown] or texts:
            console.print(Markdown(text))
            console.print()
        shown = texts


def _history_file() -> Path:
    return user_state_path("counterhand", ensure_exists=True) / "chat-history"
