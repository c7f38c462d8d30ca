"""A wording of a question leads to one section."""

from __future__ import annotations

import re
from collections.abc import Iterator

from assistant.linting.finding import Finding, Rule
from assistant.linting.gathered import Gathered
from assistant.linting.rules.notes.source import sources


def find(gathered: Gathered) -> Iterator[Finding]:
    """Wordings of `asked` that stand in an earlier place already."""
    first: dict[str, str] = {}
    for name, source in sources(gathered).items():
        path = gathered.note_at(name)
        for wording in source.asked():
            place = f"{path}:{wording.line}"
            other = first.setdefault(_plain(wording.text), place)
            if other != place:
                yield Finding(
                    path=path,
                    line=wording.line,
                    what=f"'{wording.text}' stands at {other} too",
                    mend="keep it where the better answer is",
                )


def _plain(wording: str) -> str:
    """The words alone, as two people would type them."""
    return " ".join(re.findall(r"[^\W_]+", wording.lower().replace("’", "'")))


RULE = Rule(
    "asked-twice",
    "warning",
    "A wording that is given to two sections says of neither that it is the one that answers.",
    find,
)
