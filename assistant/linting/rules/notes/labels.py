"""Labelled questions name sections that are there."""

from __future__ import annotations

import json
from collections.abc import Iterator

from assistant.linting.finding import Finding, Rule
from assistant.linting.gathered import Gathered
from assistant.linting.rules.notes.source import all_read
from assistant.linting.rules.notes.unfound import QUESTIONS


def find(gathered: Gathered) -> Iterator[Finding]:
    """Labels with a section that no note has."""
    path = gathered.folder / QUESTIONS
    if not path.is_file() or not all_read(gathered):
        return
    known = {f"{name}#{part}" for name, note in gathered.notes.items() for part in note.sections}
    lines = path.read_text(encoding="utf-8", errors="replace").splitlines()
    for number, line in enumerate(lines, start=1):
        try:
            labels = list(json.loads(line)["answered_by"])
        except (
            ValueError,
            KeyError,
            TypeError,
            RecursionError,
        ):  # the rule for notes never found tells of it
            continue
        for label in labels:
            if label not in known:
                yield Finding(
                    path=QUESTIONS,
                    line=number,
                    what=f"'{' '.join(label.split())}' is no section of the notes",
                    mend="name the section that answers now, or take the label out",
                )


RULE = Rule(
    "stale-label",
    "warning",
    "A heading that is worded anew gets another address, and the questions labelled with the old "
    "one then count against the search.",
    find,
)
