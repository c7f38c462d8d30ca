"""Notes are gone over from time to time."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.linting.finding import Finding, Rule
from assistant.linting.gathered import Gathered
from assistant.linting.rules.notes.source import sources


def find(gathered: Gathered) -> Iterator[Finding]:
    """Notes whose day is missing, is yet to come, or is long past."""
    for name, source in sources(gathered).items():
        path, line = gathered.note_at(name), source.line_of("updated")
        updated = gathered.notes[name].updated
        if updated is None:
            mend = f"go over it and write 'updated: {gathered.today}'"
            yield Finding(
                path=path, line=line, what="does not tell when it was gone over", mend=mend
            )
        elif updated > gathered.today:
            yield Finding(
                path=path, line=line, what=f"{updated} is yet to come", mend="correct the day"
            )
        elif (days := (gathered.today - updated).days) > gathered.oldest:
            yield Finding(
                path=path,
                line=line,
                what=f"was last gone over {days} days ago",
                mend="read it again, and put today's day there",
            )


RULE = Rule(
    "stale-note",
    "warning",
    "What a shop sells and does changes, and a note that nobody has read again for long is the "
    "likeliest to be wrong.",
    find,
)
