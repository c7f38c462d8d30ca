"""The good answers to the labelled messages: what is to be made false, each with its truth."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

from assistant.answers.answer import Answer, Reply
from assistant.answers.compose.case import Audience
from assistant.answers.reply import reply
from assistant.fitment.narrow import is_original
from assistant.measuring.campaign.labels import possible
from assistant.measuring.campaign.told import Told
from assistant.measuring.campaign.truth import Truth
from assistant.measuring.evaluation import SPLITS, TODAY, Progress
from assistant.measuring.judged import Judged, judged, named_by
from assistant.measuring.messages import Message, messages
from assistant.reading.letters import letter_from_text
from assistant.search.searching import Search
from assistant.shop import Shop

AUDIENCES: tuple[Audience, ...] = ("customers", "staff")


@dataclass(frozen=True)
class Gathered:
    """The good answers, to how many messages, and how many were left out for what reason."""

    messages: int
    good: tuple[Told, ...]
    left_out: Counter[str]


def gathered(shop: Shop, truth: Truth, search: Search | None, progress: Progress) -> Gathered:
    """Answers every labelled message as `counterhand eval` does, for both audiences.

    Raises:
        KnowledgeError: a labelled message cannot be read.
    """
    path = shop.folder / "eval" / "messages.jsonl"
    rows = [(split, message) for split in SPLITS for message in messages(path, split)]
    good: list[Told] = []
    left_out: Counter[str] = Counter()
    for before, audience in enumerate(AUDIENCES):
        for done, (split, message) in enumerate(rows, start=1 + before * len(rows)):
            letter = letter_from_text(message.text)
            made = reply(shop, letter, audience=audience, today=TODAY, search=search)
            for held, answer in paired(message, made, truth):
                expected = held.expected if held else None
                builds, old = possible(truth, expected) if expected else ((), "")
                original = is_original(made.facts.of_toilet(answer.toilet))
                told = Told(
                    *(truth, letter.text.raw, audience, builds, answer, old, original),
                    source=f"{split} {message.id}",
                )
                if why := _fault(held, told):
                    left_out[why] += 1
                else:
                    good.append(told)
            progress(done, len(AUDIENCES) * len(rows))
    return Gathered(len(rows), tuple(good), left_out)


def paired(message: Message, made: Reply, truth: Truth) -> Iterator[tuple[Judged | None, Answer]]:
    """Each answer and how it was judged; one from the notes beside others is not judged."""
    left = list(made.answers)
    for held in judged(message, made, truth).answers:
        mine = (held.outcome, held.named)
        answer = next((a for a in left if (str(a.outcome), named_by(a)) == mine), None)
        if answer is not None:
            left.remove(answer)
            yield held, answer
    for answer in left:
        yield None, answer


def _fault(held: Judged | None, told: Told) -> str:
    """Why an answer cannot be used, if it cannot."""
    if held and held.wrong:
        return "a wrong part named"
    if held and not held.right_outcome:
        return "another outcome than the label's"
    mine = {told.truth.name_of(build) for build in told.builds}
    if mine and not mine.issuperset(told.truth.models_in(told.text)):
        return "a model named beside the label's"
    return ""
