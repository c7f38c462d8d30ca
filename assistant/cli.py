"""The command line: commands, and nothing but commands."""

from __future__ import annotations

import json
import sys
from datetime import date
from pathlib import Path

import click
from rich.console import Console
from rich.markdown import Markdown

from assistant.answers.answer import Reply, as_json
from assistant.answers.compose.case import Audience
from assistant.answers.reply import IN_A_MAIL, most_in, reply
from assistant.commands.cases import NEW, Store, changed_line, sent_at, state_folder, talk_of
from assistant.commands.knowledge import build, import_sheet, lint_shop, new
from assistant.commands.measures import bench, evaluate
from assistant.commands.options import (
    BAD_INPUT,
    OUR_FAULT,
    audience_option,
    date_option,
    shop_option,
    state_option,
)
from assistant.commands.searching import search_of
from assistant.commands.serving import serve
from assistant.errors import UserError
from assistant.reading.letters import Letter, letter_from_text, load_letter, read_letter
from assistant.reading.mail import looks_like_mail
from assistant.shop import find_shop, open_shop


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
@click.option("--case", "case", metavar="ID", help="The case that it belongs to, or 'new'.")
@click.option(
    "--questions",
    type=click.IntRange(1, IN_A_MAIL),
    help="How many things may be asked at once (default: 3 in answer to a mail, else 1).",
)
@audience_option
@date_option
@state_option
@shop_option
def ask(
    message: str,
    as_object: bool,
    case: str | None,
    questions: int | None,
    audience: Audience,
    today: date | None,
    state: Path | None,
    shop: Path | None,
) -> None:
    """Answer one MESSAGE: a text, a file's path, or - for standard input.

    With --case it is kept, and the whole case is answered, to which it is the next message.

    \b
    Example:
      counterhand ask "Which flapper fits a Quellwick Tamsel from 1988?"
      counterhand ask letter.eml --audience customers
      counterhand ask "It is a Quellwick Tamsel." --case new
    """
    opened = open_shop(find_shop(shop))
    letter = _letter(message)
    if case is not None:
        with Store.open(state_folder(state)) as store:
            talk = talk_of(opened, audience, today, store, case)
            most = questions or most_in(letter)
            said = talk.say(letter.text.visible.strip(), sent_at(letter), most)
        if as_object:
            click.echo(json.dumps(said.as_json(), ensure_ascii=False, indent=2))
        else:
            _show(said.reply, changed_line(said.changes))
            click.echo(f"This is case {said.case.id}.")
        return
    made = reply(
        opened,
        letter,
        audience=audience,
        today=today,
        search=search_of(opened),
        most_questions=questions,
    )
    if as_object:
        click.echo(json.dumps(as_json(made), ensure_ascii=False, indent=2))
    else:
        _show(made)


@cli.command()
@click.option("--case", "case", metavar="ID", help="The case to go on with (default: a new one).")
@audience_option
@date_option
@state_option
@shop_option
def chat(
    case: str | None,
    audience: Audience,
    today: date | None,
    state: Path | None,
    shop: Path | None,
) -> None:
    """Talk in the terminal; an empty line or Ctrl-D ends it. What is said is kept as a case.

    \b
    Example:
      counterhand chat --audience customers
      counterhand chat --case 7kq2mx9d
    """
    from assistant.chat import converse

    opened = open_shop(find_shop(shop))
    with Store.open(state_folder(state)) as store:
        going_on = store.case(case) if case not in (None, NEW) else None
        converse(opened, audience, today, search_of(opened), store, going_on)


for command in (bench, build, evaluate, import_sheet, lint_shop, new, serve):
    cli.add_command(command)


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


def _show(made: Reply, changed: str | None = None) -> None:
    console = Console(width=min(Console().width, 92))
    if changed:
        console.print(changed, markup=False, highlight=False)
        console.print()
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
