"""The whole answer to a letter, against encoding the letter alone."""

from __future__ import annotations

import itertools
import json
import statistics
from datetime import date

from assistant.answers.reply import reply
from assistant.measuring.timing import Measured, Ratio, by_turns, ms
from assistant.reading.letters import letter_from_text
from assistant.search.model import Model
from assistant.search.opening import open_search
from assistant.shop import DEMO, open_shop

ROUNDS = 5
TODAY = date(2026, 11, 25)


def run() -> Measured:
    """Letters that ask for a part, and questions to the notes, each against its own encoding."""
    shop, model = open_shop(DEMO), Model()
    search = open_search(shop.content, shop.index, model)
    letters = _letters(shop.folder)

    def against(texts: list[str]) -> tuple[float, float]:
        whole, alone = [], []
        for text in texts:
            letter = letter_from_text(text)
            answer, encoding = by_turns(
                lambda letter=letter: reply(  # type: ignore[misc]
                    shop, letter, audience="customers", today=TODAY, search=search
                ),
                lambda text=text: model.encode([text]),  # type: ignore[misc]
                rounds=ROUNDS,
            )
            whole.append(answer)
            alone.append(encoding)
        return statistics.median(whole), statistics.median(alone)

    against(letters["part"][:3] + letters["how"][:3])  # look-ups are made once
    found = {kind: against(texts) for kind, texts in letters.items()}
    everything = against(list(itertools.chain(*letters.values())))
    ratios = [Ratio("a whole answer ÷ encoding the message", everything[0] / everything[1], 2.0)]
    ratios += [
        Ratio(f"  of those that ask {NAMES[kind]}", whole / alone, 2.0)
        for kind, (whole, alone) in found.items()
    ]
    figures = [("an answer", ms(everything[0])), ("encoding", ms(everything[1]))]
    return Measured(tuple(ratios), tuple(figures))


NAMES = {"part": "for a part", "how": "how or why"}


def _letters(folder: object) -> dict[str, list[str]]:
    """Letters for a part made from the demonstration's builds, and labelled questions to notes."""
    tables = open_shop(DEMO).tables
    parts = [
        f"Hello, our toilet keeps running and the old flapper has gone slimy. It is a "
        f"{build.full_name}, bought about {build.made_from + 1}. Which seal do I need, please?"
        for build in list(tables.builds.values())[::3]
        if build.made_from and build.made_from > 1900
    ]
    lines = (DEMO / "eval" / "questions.jsonl").read_text(encoding="utf-8").splitlines()
    questions = [row["text"] for row in map(json.loads, lines) if row["split"] == "tune"]
    return {"part": parts, "how": questions}
