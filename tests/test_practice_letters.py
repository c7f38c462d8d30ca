"""Letters that reading was learnt from, of several hands; labelled like `eval/messages.jsonl`.

None of them stands in the evaluation set. Each has to stay as right as it has become: an outcome
that the label accepts, a seal where one must be named, and none that the label does not allow.
"""

from __future__ import annotations

import json
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from demonstration import FOLDER, TRUTH, shop

from assistant.answers.reply import reply
from assistant.measuring.judged import judged
from assistant.measuring.messages import Message, message_of
from assistant.reading.letters import letter_from_text

TODAY = date(2026, 11, 25)
LINES = (Path(__file__).with_name("practice.jsonl")).read_text(encoding="utf-8").splitlines()
ROWS: list[dict[str, Any]] = [json.loads(line) for line in LINES]
MESSAGES = [message_of(row) for row in ROWS]


@pytest.mark.parametrize("message", MESSAGES, ids=lambda m: m.id)
def test_a_letter_is_answered_as_the_tables_allow(message: Message) -> None:
    made = reply(shop(), letter_from_text(message.text), audience="customers", today=TODAY)
    for answer in judged(message, made, TRUTH).answers:
        assert not answer.wrong, (message.text, answer.outcome)
        if answer.expected is not None:
            assert answer.right_outcome, (message.text, answer.outcome, answer.expected.outcomes)
            assert answer.named or not answer.expected.answerable, message.text


def test_none_of_them_is_measured_too() -> None:
    evaluated = (FOLDER / "eval" / "messages.jsonl").read_text(encoding="utf-8")
    assert not {m.said for m in MESSAGES} & {
        json.loads(line)["text"] for line in evaluated.splitlines()
    }
