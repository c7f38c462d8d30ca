"""What can be said of a seal, as adjective, afterthought or clause."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any

from assistant.answers.check.line import Line
from assistant.answers.check.lookup import cited
from assistant.answers.check.results import UNKNOWN, Audience, Finding, result_of
from assistant.records.rows import Seal
from assistant.records.tables import Tables


@dataclass(frozen=True)
class Attribute:
    """Something a seal is or has.

    `adj` stands before 'flapper' or after 'is', `post` follows ('with a float'), `clause` is
    a whole clause whose subject is the piece `{s:part}` or `{s:ears}`. `read` gives the value
    said (`None`: the words say nothing of this attribute), `test` compares it with a seal's
    row: yes, no, or `None` where the row is silent. A `staff_only` one no customer sees.
    """

    name: str
    read: Callable[[Line, str], Any]
    test: Callable[[Tables, Seal, Any], bool | None]
    adj: tuple[str, ...] = ()
    post: tuple[str, ...] = ()
    clause: tuple[str, ...] = ()
    staff_only: bool = False


Said = tuple[Attribute, Any, str]  # the attribute, the value said of it, and in what words


def judged(tables: Tables, audience: Audience, part_no: str, said: Sequence[Said]) -> list[Finding]:
    """Each thing said of a part, compared with the part's row."""
    seal = tables.seals[part_no]
    found = []
    for attribute, value, words in said:
        claim = f"{part_no}: {words}"
        if attribute.staff_only and audience == "customers":
            found.append(Finding(claim, "audience", UNKNOWN, cited(seal)))
            continue
        result = result_of(attribute.test(tables, seal, value))
        found.append(Finding(claim, attribute.name, result, cited(seal)))
    return found
