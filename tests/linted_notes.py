"""A small shop's notes on disk, gathered as lint gathers them, and what one rule says of them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date
from pathlib import Path

from assistant.linting.finding import Finding, Rule
from assistant.linting.gathered import Gathered
from assistant.linting.rules.notes import NOTE_RULES
from assistant.records.notes import load_notes
from assistant.records.rows import TABLES as KINDS
from assistant.records.rows import Style
from assistant.records.tables import Tables
from assistant.settings import Settings
from tests.trade import tables

TODAY, OLDEST = date(2026, 11, 25), 400
RULES: Mapping[str, Rule] = {rule.name: rule for rule in NOTE_RULES}
BODY = "## How much slack\n\nA chain needs about half an inch of slack.\n"  # common practice


def note(
    body: str = BODY,
    *,
    title: str = "The chain",
    audience: str = "customers",
    styles: str = "",
    tags: str = "",
    more: str = "updated: 2026-10-12\n",
) -> str:
    """A note's text. Its front matter ends on line 7, so that the body begins on line 8."""
    return (
        f"---\ntitle: {title}\naudience: {audience}\nstyles: [{styles}]\ntags: [{tags}]\n"
        f"{more}---\n{body}"
    )


def gathered(
    folder: Path,
    notes: Mapping[str, str],
    *,
    known: Tables | None = None,
    faults: Sequence[Finding] = (),
    settings: Settings | None = Settings(name="Seals"),  # noqa: B008 - it never changes
) -> Gathered:
    """The notes by name, written into a shop's folder and read again; every table is whole."""
    place = folder / "knowledge" / "notes"
    place.mkdir(parents=True, exist_ok=True)
    for name, text in notes.items():
        (place / f"{name}.md").write_text(text, encoding="utf-8")
    known = known or tables()
    return Gathered(
        folder=folder,
        settings=settings,
        tables=known,
        columns={},
        lines={Style.file: {style: at for at, style in enumerate(known.styles, start=2)}},
        notes=load_notes(place),
        today=TODAY,
        oldest=OLDEST,
        faults=faults,
        ids={kind.file: () for kind in KINDS},
    )


def found(rule: str, shop: Gathered) -> list[Finding]:
    """What a rule finds."""
    return list(RULES[rule].find(shop))


def places(findings: Sequence[Finding]) -> list[str]:
    """Where findings are: 'chains:12' for a note, else path and line."""
    return [
        f"{finding.path.removeprefix('knowledge/notes/').removesuffix('.md')}:{finding.line}"
        for finding in findings
    ]
