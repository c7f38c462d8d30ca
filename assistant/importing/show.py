"""What an import would change, as tables in a terminal."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence

from rich import box
from rich.console import Console
from rich.table import Table
from rich.text import Text

from assistant.importing.faults import SheetError
from assistant.importing.incoming import Cleaned
from assistant.importing.plan import Plan
from assistant.importing.prepare import Prepared

_NAMED = 6  # ids told of many
_FAULTS = 20  # faults told of many


def show(made: Prepared, console: Console) -> None:
    """How the sheet was read, and what would change in the table."""
    plan, file = made.plan, made.asked.kind.file
    say = _Saying(console)
    say(f"{made.sheet.name} ({'; '.join(made.sheet.told)}) into {made.asked.table}")
    _show_matching(made, say)
    for told in _cleanings(made.read.cleaned):
        say(told)
    if made.read.silent:
        rows = _some([str(row) for row in made.read.silent])
        say(f"Rows in which none of our columns is filled are passed over: {rows}.")
    if plan.changes:
        table = _table("Changes", "row", plan.before.kind.keys[-1], "column", "now", "after")
        for change in plan.changes:
            told = f"{change.new}  ← look again: {change.again}" if change.again else change.new
            _add(table, str(change.row), change.key, change.column, change.old or "–", told)
        say(table)
    if plan.new:
        table = _table("New rows", "row", plan.before.kind.keys[-1], "cells")
        for new in plan.new:
            told = "; ".join(f"{column} {text}" for column, text in new.cells.items())
            told += f"  ← look again: {new.again}" if new.again else ""
            _add(table, str(new.row), new.key, told)
        say(table)
    for sentence in _counts(plan, made.read.kept_out, file):
        say(sentence)


class _Saying:
    """Prints one block after another, never reading marks of style in a sheet's own words."""

    def __init__(self, console: Console) -> None:
        self._console, self._after_table = console, False

    def __call__(self, what: str | Table) -> None:
        is_table = isinstance(what, Table)
        if is_table or self._after_table:
            self._console.print()
        self._console.print(Text(what) if isinstance(what, str) else what)
        self._after_table = is_table


def _show_matching(made: Prepared, say: _Saying) -> None:
    table = _table("", "their heading", "our column", "because")
    for match in made.matching.matches:
        _add(table, match.heading, match.column, match.because)
    for left in made.matching.left_out:
        _add(table, left.heading, "left out", left.because)
    say(table)


def _table(title: str, *headings: str) -> Table:
    table = Table(title=title or None, title_justify="left", box=box.SIMPLE_HEAD, show_edge=False)
    for heading in headings:
        table.add_column(heading, overflow="fold")
    return table


def _add(table: Table, *cells: str) -> None:
    table.add_row(*(Text(cell) for cell in cells))


def _cleanings(cleaned: Iterable[Cleaned]) -> Iterator[str]:
    by_rule: dict[tuple[str, str], list[Cleaned]] = defaultdict(list)
    for one in cleaned:
        by_rule[one.heading, one.rule].append(one)
    for (heading, rule), many in by_rule.items():
        each = [f"{one.was} is {one.now}" for one in many]
        yield f"{heading}, {rule} in {_number(len(many), 'cell')}: {_some(each, 3)}."


def _counts(plan: Plan, kept_out: Sequence[str], file: str) -> Iterator[str]:
    changed, cells = len(plan.changed_rows), len(plan.changes)
    yield (
        f"{_number(len(plan.new), 'new row')}; {_number(cells, 'cell')} changed in "
        f"{_number(changed, 'row')}; {_number(len(plan.unchanged), 'row')} the same already."
    )
    if plan.not_in_sheet:
        yield (
            f"The sheet does not name {_number(len(plan.not_in_sheet), 'row')} of {file}, and "
            f"they stay as they are: {_some(plan.not_in_sheet)}."
        )
    if kept_out:
        yield (
            f"{_number(len(kept_out), 'new row')} left out as --known-only says: {_some(kept_out)}."
        )
    again = sum(map(bool, [c.again for c in plan.changes] + [n.again for n in plan.new]))
    if again:
        yield f"Look again at {again}: they are marked."


def told_faults(faults: Sequence[SheetError]) -> list[str]:
    """A sentence for each fault, and how many more there are."""
    told = [str(fault) for fault in faults[:_FAULTS]]
    if more := len(faults) - len(told):
        told.append(f"and {more} more; --json shows all.")
    return told


def _number(count: int, thing: str) -> str:
    return f"{count} {thing}" if count == 1 else f"{count} {thing}s"


def _some(names: Sequence[str], most: int = _NAMED) -> str:
    told = ", ".join(names[:most])
    return told if len(names) <= most else f"{told} and {len(names) - most} more"
