"""The search of a shop for a command: what has to be built first is said, with a bar."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from typing import TYPE_CHECKING

import click
from rich.console import Console

from assistant.shop import Shop

if TYPE_CHECKING:
    from assistant.search.build import Progress
    from assistant.search.searching import Search


def search_of(shop: Shop) -> Search:
    """The search of a shop; what has to be built first is said on standard error."""
    from assistant.search.limits import limits_for
    from assistant.search.model import Model
    from assistant.search.opening import open_search

    with bar() as progress:
        return open_search(
            shop.content,
            shop.index,
            Model(shop.settings.model),
            lambda sentence: click.echo(f"counterhand: {sentence}", err=True),
            progress,
            limits_for(shop.settings.model, shop.folder),
        )


@contextmanager
def bar(what: str = "Embedding", *, aloud: bool = False) -> Iterator[Progress]:
    """A bar on standard error, from the first report on; nothing where there is no report.

    Where standard error is no terminal nothing is shown, or `aloud` a line at each tenth.
    """
    from rich.progress import Progress as Bar

    console = Console(stderr=True)
    shown = Bar(console=console, transient=True, disable=not console.is_terminal)
    task = shown.add_task(what, total=None)
    in_lines = aloud and not console.is_terminal
    said = 0

    def told(done: int, total: int) -> None:
        nonlocal said
        shown.start()
        shown.update(task, completed=done, total=total)
        if in_lines and done * 10 // total > said:
            said = done * 10 // total
            click.echo(f"{what}: {done} of {total}", err=True)

    try:
        yield told
    finally:
        if shown.live.is_started:
            shown.stop()
