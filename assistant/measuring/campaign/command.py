"""What `counterhand eval --check` does: gathers, falsifies, checks, and writes eval/check.md."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractContextManager
from importlib.metadata import version
from typing import Any

from assistant.measuring.campaign.answers import gathered
from assistant.measuring.campaign.checking import CheckAll, all_shown
from assistant.measuring.campaign.figures import figures
from assistant.measuring.campaign.kinds import every_kind
from assistant.measuring.campaign.report import lines, markdown, write
from assistant.measuring.campaign.run import campaign
from assistant.measuring.campaign.truth import Truth
from assistant.measuring.evaluation import Progress, folder_of
from assistant.search.searching import Search
from assistant.shop import Shop

Bar = Callable[[str], AbstractContextManager[Progress]]


def checked(
    shop: Shop,
    search: Search | None,
    count: int,
    seed: int,
    bar: Bar,
    checker: Callable[[Shop], CheckAll] = all_shown,
) -> tuple[dict[str, Any], list[str], bool]:
    """Runs a campaign: its figures, lines for people, and whether nothing was missed.

    Raises:
        KnowledgeError: a labelled message cannot be read.
    """
    truth = Truth(shop.folder / "knowledge" / "tables")
    with bar("Answering") as progress:
        good = gathered(shop, truth, search, progress)
    with bar("Checking") as progress:
        ran = campaign(good, every_kind(), checker(shop), count=count, seed=seed, progress=progress)
    told = figures(ran, count)
    path = folder_of(shop) / "check.md"
    write(path, markdown(told, version("counterhand")))
    return told, [*lines(told), "", f"Written: {path}."], not ran.missed
