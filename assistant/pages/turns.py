"""A case as the customers' page shows it: who said what, and what may be answered with a press."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from markupsafe import Markup

from assistant.cases.case import Case
from assistant.cases.choosing import sentence
from assistant.pages.shown import shown
from assistant.records.tables import Tables

DONT_KNOW = "I don't know"
MOST_NAMES = 16  # buttons that a hand can still go through
SCREWED_OR_PUSHED = ("push", "thread")  # into the neck under a tipping bucket, and nowhere else


@dataclass(frozen=True)
class Picture:
    """A drawing of the shop with what is to be said of it."""

    file: str
    words: str


@dataclass(frozen=True)
class Ask:
    """A question as it can be answered by pressing: its choices in the customer's own words."""

    asks: str
    picture: Picture | None
    choices: tuple[str, ...]


@dataclass(frozen=True)
class Turn:
    """One message. `body` is HTML of an answer; a customer's words stay as they were typed."""

    number: int
    mine: bool
    words: str
    body: Markup
    pictures: tuple[Picture, ...] = ()
    ask: Ask | None = None


def turns(case: Case, answers: Sequence[Mapping[str, Any]], tables: Tables) -> tuple[Turn, ...]:
    """All messages of a case, in order; `answers` are those kept with it."""
    told = iter(answers)
    found = []
    for message in case.messages:
        if message.who != "counter":
            found.append(Turn(message.number, True, message.text, Markup("")))
            continue
        kept = next(told, None) or {"answers": []}
        found.append(
            Turn(
                message.number,
                False,
                message.text,
                shown(message.text),
                tuple(_pictures(kept, tables)),
                _ask(kept, tables),
            )
        )
    return tuple(found)


def _pictures(kept: Mapping[str, Any], tables: Tables) -> Iterator[Picture]:
    """A drawing of each style that is named, once."""
    styles = dict.fromkeys(
        seal.style
        for answer in kept["answers"]
        for part in answer["parts"]
        if (seal := tables.seals.get(part["part_no"]))
    )
    for name in styles:
        style = tables.styles[name]
        if style.drawing:
            yield Picture(style.drawing, style.plain_name)


def _ask(kept: Mapping[str, Any], tables: Tables) -> Ask | None:
    """The last question that was put; with several, they are answered in words."""
    put = [a["question"] for a in kept["answers"] if a["question"]]
    if len(put) != 1 or any(a.get("also_asked") for a in kept["answers"]):
        return None
    (question,) = put
    asks, drawing = question["asks"], question["drawing"]
    offered = question["choices"] or _names(asks, kept, tables)
    choices = tuple(dict.fromkeys(said for c in offered if (said := sentence(asks, str(c)))))
    row = tables.questions.get(asks)
    picture = Picture(drawing, row.text if row else "") if drawing else None
    return Ask(asks, picture, choices)


def _names(asks: str, kept: Mapping[str, Any], tables: Tables) -> tuple[str, ...]:
    """The makers, or the models, of the toilets that are still possible, if they are few enough."""
    possible = [name for one in kept["standing"]["possible"] for name in one["builds"]]
    builds = [tables.builds[name] for name in possible if name in tables.builds]
    told = {"brand": [b.brand for b in builds], "model": [b.model for b in builds]}.get(asks, [])
    found = sorted({*told})
    return tuple(found) if len(found) <= MOST_NAMES else ()


def first_pictures(tables: Tables) -> tuple[tuple[Picture, str], ...]:
    """How a seal may be held, as drawings to pick from, each with what picking it says."""
    found: dict[str, tuple[Picture, str]] = {}
    for style in tables.styles.values():
        held = [s.mount for s in tables.seals.values() if s.style == style.style]
        for way in dict.fromkeys(mount[0] for mount in held if len(mount) == 1):
            bucket = way in SCREWED_OR_PUSHED
            said = sentence("tank_kind", "tipping") if bucket else sentence("mount", way)
            if style.drawing and said and said not in found:
                words = "gasket of a tipping bucket" if bucket else style.plain_name
                found[said] = (Picture(style.drawing, words), said)
    return tuple(found.values())
