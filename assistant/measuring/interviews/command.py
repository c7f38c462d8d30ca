"""What `counterhand eval --interviews` does: interviews, and writes eval/interviews.md."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractContextManager
from importlib.metadata import version
from typing import Any

from assistant.interview.next_question import Interviewer
from assistant.measuring.campaign.report import write
from assistant.measuring.campaign.truth import Truth
from assistant.measuring.evaluation import SPLITS, TODAY, Progress, folder_of
from assistant.measuring.interviews.conversations import Conversation, held, labelled
from assistant.measuring.interviews.figures import figures
from assistant.measuring.interviews.report import lines, markdown
from assistant.measuring.interviews.run import interviews
from assistant.shop import Shop

Bar = Callable[[str], AbstractContextManager[Progress]]


def interviewed_all(
    shop: Shop, count: int, seed: int, bar: Bar
) -> tuple[dict[str, Any], list[str]]:
    """Runs every interview and conversation: the figures, and lines for people.

    Raises:
        KnowledgeError: a labelled conversation cannot be read.
    """
    rows = labelled(shop.folder / "eval" / "dialogues.jsonl")
    truth = Truth(shop.folder / "knowledge" / "tables")
    interviewer = Interviewer(shop.counter)
    with bar("Interviewing") as progress:
        series = interviews(
            shop.counter, truth, interviewer, count=count, seed=seed, progress=progress
        )
    conversations: dict[str, list[Conversation]] = {split: [] for split in SPLITS}
    with bar("Conversing") as progress:
        for done, row in enumerate(rows, start=1):
            conversations[row.split].append(held(shop, truth, row, TODAY))
            progress(done, len(rows))
    told = figures(shop.counter, series, conversations, seed=seed)
    path = folder_of(shop) / "interviews.md"
    write(path, markdown(told, version("counterhand")))
    return told, [*lines(told), "", f"Written: {path}."]
