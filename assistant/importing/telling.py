"""What the command says at the end: the preview or what was written, and what lint then finds."""

from __future__ import annotations

import json
from datetime import date

import click
from rich.console import Console

from assistant.importing.as_json import as_json
from assistant.importing.prepare import Prepared
from assistant.importing.show import show, told_faults

_WIDEST = 110
_OLDEST = 1095  # days, as lint takes it where nothing else is said


def tell_faults(made: Prepared, as_object: bool) -> None:
    """A sentence for each fault on standard error."""
    if as_object:
        _print(as_json(made, written=False))
    for sentence in told_faults(made.faults):
        click.echo(f"counterhand: {sentence}", err=True)


def tell(made: Prepared, as_object: bool, *, written: bool) -> None:
    """What would change, or has changed."""
    if as_object:
        findings = findings_in(made) if written else None
        _print(as_json(made, written=written, findings=findings))
        return
    show(made, Console(width=min(Console().width, _WIDEST)))
    if not made.changes_anything:
        click.echo("There is nothing to change.")
    elif not written:
        click.echo("Nothing is written yet: look at it, and add --write.")
    else:
        click.echo(f"Written: {made.asked.table}.")
        found = findings_in(made)  # said after, so that a fault in it hides nothing
        things = "1 thing" if found == 1 else f"{found or 'no'} things"
        more = "; 'counterhand lint' shows what" if found else ""
        click.echo(f"Lint finds {things} to mend in it{more}.")


def findings_in(made: Prepared) -> int:
    """How many findings lint has in the table.

    Only the rules that ever find something in a table are asked: others read the notes by
    meaning, and the first time that takes minutes.
    """
    from assistant.linting.gather import gather
    from assistant.linting.rules.notes import styles
    from assistant.linting.rules.tables import TABLE_RULES

    gathered = gather(made.asked.shop, date.today(), _OLDEST)
    rules = (*TABLE_RULES, styles.UNWRITTEN, styles.UNFITTED)
    found = [finding for rule in rules for finding in rule.find(gathered)]
    return sum(finding.path.endswith(f"/{made.asked.kind.file}") for finding in found)


def _print(thing: object) -> None:
    click.echo(json.dumps(thing, ensure_ascii=False, indent=2))
