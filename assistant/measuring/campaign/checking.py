"""The checker as every reply goes through it; in a second process too where there is much to do."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from functools import partial
from multiprocessing import get_context
from pathlib import Path
from typing import TypeAlias

from assistant.answers.check import check
from assistant.answers.compose.case import Audience
from assistant.answers.reply import statements
from assistant.shop import Shop, open_shop

MUCH = 1000  # texts from which on further processes pay for opening the shop once more
AT_A_TIME = 25
PROCESSES = min(4, os.cpu_count() or 1)


@dataclass(frozen=True)
class Unchecked:
    """A text with all that the checker is told beside it."""

    text: str
    audience: Audience
    message: str
    original: bool


# What is left of a text to be shown.
Checker: TypeAlias = Callable[[Unchecked], str]
# What is left of each of many, in their order.
CheckAll: TypeAlias = Callable[[Sequence[Unchecked]], Iterator[str]]


def shown(shop: Shop, given: Unchecked) -> str:
    """What the shop's replies would show of a text."""
    return check(
        given.text,
        shop.tables,
        audience=given.audience,
        statements=statements(shop),
        message=given.message,
        valve_is_original=given.original,
        currency=shop.settings.currency,
    ).text


def all_shown(shop: Shop) -> CheckAll:
    """The checker over many texts, in several processes where that is worth it."""

    def over(many: Sequence[Unchecked]) -> Iterator[str]:
        if len(many) < MUCH or PROCESSES == 1:
            yield from map(partial(shown, shop), many)
            return
        with ProcessPoolExecutor(
            PROCESSES, get_context("spawn"), initializer=_open, initargs=(shop.folder,)
        ) as pool:
            yield from pool.map(_shown, many, chunksize=AT_A_TIME)

    return over


_opened: list[Shop] = []  # in a further process: the shop


def _open(folder: Path) -> None:
    _opened.append(open_shop(folder))


def _shown(given: Unchecked) -> str:
    return shown(_opened[0], given)
