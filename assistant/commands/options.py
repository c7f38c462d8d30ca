"""Options that several commands share, and how a command ends."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import click

FOUND, BAD_INPUT, OUR_FAULT = 1, 2, 70

shop_option = click.option(
    "--shop",
    type=click.Path(path_type=Path),
    help="The shop's folder, the one that holds knowledge/ (default: the nearest, else the demo).",
)
audience_option = click.option(
    "--audience",
    type=click.Choice(["staff", "customers"]),
    default="staff",
    show_default=True,
    help="Who reads the answer.",
)


def _iso_day(_: click.Context, __: click.Parameter, raw: str | None) -> date | None:
    if raw is None:
        return None
    try:
        return date.fromisoformat(raw)
    except ValueError:
        raise click.BadParameter(f"'{raw}' is no day; write one such as 2026-11-25") from None


date_option = click.option(
    "--date",
    "today",
    metavar="YYYY-MM-DD",
    callback=_iso_day,
    help="The day from which 'twenty years old' counts (default: the mail's own, else today).",
)
state_option = click.option(
    "--state",
    type=click.Path(path_type=Path),
    help="The folder in which cases are kept (default: this user's own for state).",
)
