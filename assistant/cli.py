"""The command line: commands, and nothing but commands."""

from __future__ import annotations

import json
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

import click
from rich.console import Console
from rich.markdown import Markdown

from assistant.answers.answer import Reply, as_json
from assistant.answers.compose.case import Audience
from assistant.answers.reply import reply
from assistant.errors import UserError
from assistant.reading.letters import Letter, letter_from_text, load_letter, read_letter
from assistant.reading.mail import looks_like_mail
from assistant.shop import Shop, find_shop, open_shop

if TYPE_CHECKING:
    from assistant.search.build import Progress
    from assistant.search.searching import Search

BAD_INPUT, OUR_FAULT = 2, 70

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


@click.group(context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(package_name="counterhand", message="counterhand %(version)s")
def cli() -> None:
    """A counter assistant for a shop of toilet spares.

    It reads a customer's letter, names the seal that fits and why, and shows nothing that
    the shop's own tables do not support.
    """


@cli.command()
@click.argument("message")
@click.option("--json", "as_object", is_flag=True, help="Print one JSON object.")
@audience_option
@date_option
@shop_option
def ask(
    message: str, as_object: bool, audience: Audience, today: date | None, shop: Path | None
) -> None:
    """Answer one MESSAGE: a text, a file's path, or - for standard input.

    \b
    Example:
      counterhand ask "Which flapper fits a Quellwick Tamsel from 1988?"
      counterhand ask letter.eml --audience customers
    """
    opened = open_shop(find_shop(shop))
    letter = _letter(message)
    made = reply(opened, letter, audience=audience, today=today, search=_search(opened))
    if as_object:
        click.echo(json.dumps(as_json(made), ensure_ascii=False, indent=2))
    else:
        _show(made)


@cli.command()
@audience_option
@date_option
@shop_option
def chat(audience: Audience, today: date | None, shop: Path | None) -> None:
    """Talk in the terminal; an empty line or Ctrl-D ends it.

    \b
    Example:
      counterhand chat --audience customers
    """
    from assistant.chat import converse

    opened = open_shop(find_shop(shop))
    converse(opened, audience, today, _search(opened))


@cli.command()
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
    with _progress() as progress:
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


@cli.command()
@click.argument("names", nargs=-1)
def bench(names: tuple[str, ...]) -> None:
    """Measure speed and memory, as ratios against a baseline in the same run.

    NAMES choose among starting, answering, building, deciding, nearest (default: all; some
    minutes, and up to 8 GiB of memory).

    \b
    Example:
      counterhand bench answering building
    """
    from assistant.measuring.bench import BENCHES, lines, machine
    from assistant.measuring.bench import bench as run

    for name in names:
        if name not in BENCHES:
            raise click.BadParameter(f"'{name}' is no benchmark; choose among {', '.join(BENCHES)}")
    click.echo(machine())
    for benched in run(names or BENCHES):
        click.echo(f"\n{benched.name}")
        click.echo("\n".join(lines(benched)))


def _search(shop: Shop) -> Search:
    """The search of a shop; what has to be built first is said on standard error."""
    from assistant.search.limits import limits_for
    from assistant.search.model import Model
    from assistant.search.opening import open_search

    with _progress() as progress:
        return open_search(
            shop.content,
            shop.index,
            Model(shop.settings.model),
            lambda sentence: click.echo(f"counterhand: {sentence}", err=True),
            progress,
            limits_for(shop.settings.model, shop.folder),
        )


@contextmanager
def _progress() -> Iterator[Progress]:
    """A bar on standard error, from the first report on; nothing where there is no report."""
    from rich.progress import Progress as Bar

    console = Console(stderr=True)
    bar = Bar(console=console, transient=True, disable=not console.is_terminal)
    task = bar.add_task("Embedding", total=None)

    def told(done: int, total: int) -> None:
        bar.start()
        bar.update(task, completed=done, total=total)

    try:
        yield told
    finally:
        if bar.live.is_started:
            bar.stop()


def _letter(message: str) -> Letter:
    if message == "-":
        source = sys.stdin.buffer.read()
        return read_letter(source, is_mail=looks_like_mail(source))
    path = Path(message)
    try:
        is_file = path.is_file() or (path.is_dir() and "/" in message)
    except OSError:  # a long message is no file's name
        is_file = False
    looks_like_a_path = " " not in message and path.suffix in (".eml", ".txt", ".html", ".msg")
    if is_file or looks_like_a_path:
        return load_letter(path)
    return letter_from_text(message)


def _show(made: Reply) -> None:
    console = Console(width=min(Console().width, 92))
    for number, answer in enumerate(made.answers):
        if number:
            console.rule()
        console.print(Markdown(answer.text))
    if made.audience == "staff":
        _show_trail(console, made)


def _show_trail(console: Console, made: Reply) -> None:
    """For staff: what was read, and what the check took out."""
    read = [f'{fact.name} "{" ".join(fact.words.split())}"' for fact in made.facts]
    if read:
        console.print(f"\n[dim]read: {'; '.join(read)}[/dim]", highlight=False, markup=True)
    out = [
        check for answer in made.answers for check in answer.checks if check.result != "supported"
    ]
    for check in out:
        console.print(f"[dim]taken out ({check.result}): {check.claim}[/dim]", highlight=False)


def main() -> None:
    """Runs a command; a user's error is one sentence and exit code 2."""
    try:
        cli(standalone_mode=False)
    except UserError as error:
        click.echo(f"counterhand: {error}", err=True)
        sys.exit(BAD_INPUT)
    except click.exceptions.NoArgsIsHelpError as error:
        error.show()
        sys.exit(BAD_INPUT)
    except click.ClickException as error:
        message = error.format_message().rstrip(".")
        click.echo(f"counterhand: {message}; --help shows how.", err=True)
        sys.exit(BAD_INPUT)
    except click.exceptions.Abort:
        sys.exit(130)
    except Exception as error:
        import traceback

        traceback.print_exc()
        click.echo(f"counterhand: a fault of ours ({type(error).__name__}): {error}", err=True)
        sys.exit(OUR_FAULT)
