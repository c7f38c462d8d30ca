"""Commands for the shop's knowledge: build its index, lint it, import into it, begin a note."""

from __future__ import annotations

import json
import sys
from datetime import date
from pathlib import Path

import click

from assistant.answers.compose.case import Audience
from assistant.commands.options import BAD_INPUT, FOUND, shop_option
from assistant.commands.searching import bar
from assistant.shop import find_shop, open_shop


@click.command()
@shop_option
def build(shop: Path | None) -> None:
    """Build the index of the shop's notes; only what is new is embedded.

    \b
    Example:
      counterhand build --shop my-shop
    """
    from assistant.search.build import build as build_index
    from assistant.search.limits import limits_for
    from assistant.search.model import Model

    opened = open_shop(find_shop(shop))
    limits_for(opened.settings.model, opened.folder)  # before minutes are spent on embedding
    with bar() as progress:
        built = build_index(opened.content, opened.index, Model(opened.settings.model), progress)
    passages, notes = len(built.index.passages), len(opened.notes)
    told = f"{passages} passages of {notes} notes"
    if not built.changed:
        click.echo(f"The index in {opened.index} is up to date: {told}.")
    else:
        click.echo(
            f"The index in {opened.index} is built: {told}; "
            f"{built.embedded} texts embedded, {built.taken_over} taken over."
        )


@click.command("lint")
@click.option("--json", "as_object", is_flag=True, help="Print one JSON object.")
@click.option(
    "--older-than",
    "oldest",
    metavar="DAYS",
    type=click.IntRange(min=0),
    default=1095,
    show_default=True,
    help="Dates longer ago than this are old.",
)
@shop_option
def lint_shop(as_object: bool, oldest: int, shop: Path | None) -> None:
    """Look for what is to be mended in the shop's tables, notes, drawings and settings.

    A finding is a line: path:line: error or warning: what is wrong; how to mend it. [rule]

    The exit code is 1 where there is an error, 0 where there are warnings or nothing.

    \b
    Example:
      counterhand lint
      counterhand lint --shop my-shop --older-than 730
    """
    from assistant.linting.lint import lint
    from assistant.linting.patience import told_where_slow
    from assistant.linting.report import as_json, counts, lines

    with told_where_slow(lambda step: click.echo(f"counterhand: still {step}", err=True)) as tell:
        found = lint(find_shop(shop), date.today(), oldest, tell)
    if as_object:
        click.echo(json.dumps(as_json(found), ensure_ascii=False, indent=2))
    else:
        click.echo("\n".join(lines(found)))
    if counts(found)["error"]:
        sys.exit(FOUND)


@click.group()
def new() -> None:
    """Begin a new note.

    \b
    Example:
      counterhand new note "Water hammer" --shop my-shop
    """


@new.command("note")
@click.argument("title")
@click.option(
    "--audience",
    type=click.Choice(["customers", "staff"]),
    default="customers",
    show_default=True,
    help="Who may read the note.",
)
@shop_option
def begin_note(title: str, audience: Audience, shop: Path | None) -> None:
    """Begin the note called TITLE from a template, and print where it lies.

    \b
    Example:
      counterhand new note "What we pay for tower washers" --audience staff
    """
    from assistant.new_note import new_note

    click.echo(new_note(find_shop(shop), title, audience, date.today()))


def _table_named(_: click.Context, __: click.Parameter, raw: str | None) -> str:
    from assistant.importing.prepare import BY_NAME

    if raw is None or raw not in BY_NAME:
        problem = "no table is named" if raw is None else f"'{raw}' is no table"
        raise click.BadParameter(f"{problem}; choose among {', '.join(BY_NAME)}")
    return raw


def _headings_named(_: click.Context, __: click.Parameter, raw: tuple[str, ...]) -> dict[str, str]:
    named = {}
    for one in raw:
        heading, sign, column = (part.strip() for part in one.rpartition("="))
        if not sign or not heading:
            raise click.BadParameter(f"'{one}' is not like \"Their heading=our_column\"")
        if heading in named:
            raise click.BadParameter(f"'{heading}' is named twice")
        named[heading] = column
    return named


@click.command("import")
@click.argument("file", type=click.Path(path_type=Path))
@click.option(
    "--into", "table", metavar="TABLE", callback=_table_named, help="The table, such as seals."
)
@click.option("--sheet", "tab", metavar="NAME", help="A workbook's sheet (default: the first).")
@click.option(
    "--map",
    "named",
    multiple=True,
    metavar="'HEADING=COLUMN'",
    callback=_headings_named,
    help="Read their HEADING as our COLUMN; without a COLUMN, leave it out.",
)
@click.option("--known-only", is_flag=True, help="Leave out rows that the table does not have.")
@click.option("--write", "writes", is_flag=True, help="Write the table; else it is only shown.")
@click.option("--json", "as_object", is_flag=True, help="Print one JSON object.")
@shop_option
def import_sheet(
    file: Path,
    table: str,
    tab: str | None,
    named: dict[str, str],
    known_only: bool,
    writes: bool,
    as_object: bool,
    shop: Path | None,
) -> None:
    """Merge a supplier's sheet, FILE (.csv or .xlsx), into a table of the shop.

    Shows what would change, and writes it with --write. An empty cell of the sheet changes
    nothing, and rows that the sheet does not name stay as they are.

    \b
    Example:
      counterhand import prices.xlsx --into seals --map "Our ref=part_no" --map "Description="
      counterhand import prices.xlsx --into seals --known-only --write
    """
    from assistant.importing.prepare import BY_NAME, Asked, prepare
    from assistant.importing.telling import tell, tell_faults

    opened = open_shop(find_shop(shop))
    asked = Asked(
        file=file,
        kind=BY_NAME[table],
        shop=opened.folder,
        currency=opened.settings.currency,
        tab=tab,
        named=named,
        known_only=known_only,
    )
    made = prepare(asked)
    if made.faults:
        tell_faults(made, as_object)
        sys.exit(BAD_INPUT)
    written = writes and made.changes_anything
    if written:
        made.write()
    tell(made, as_object, written=written)
