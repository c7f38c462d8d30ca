"""What lint found, for people and for programs."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from typing import Any

from assistant.linting.finding import Level
from assistant.linting.lint import Found
from assistant.linting.wording import counted


def counts(found: Sequence[Found]) -> dict[Level, int]:
    """How many findings there are of each level."""
    levels = Counter(rule.level for rule, _ in found)
    return {"error": levels["error"], "warning": levels["warning"]}


def lines(found: Sequence[Found]) -> Iterator[str]:
    """A line for each finding, and one that counts them."""
    for rule, finding in found:
        where = f"{finding.path}:{finding.line}"
        yield f"{where}: {rule.level}: {finding.what}; {finding.mend}. [{rule.name}]"
    number = counts(found)
    errors, warnings = counted(number["error"], "error"), counted(number["warning"], "warning")
    yield f"{errors}, {warnings}." if found else "Nothing to mend."


def as_json(found: Sequence[Found]) -> dict[str, Any]:
    """The findings as one object."""
    number = counts(found)
    return {
        "findings": [
            {
                "path": finding.path,
                "line": finding.line,
                "level": rule.level,
                "rule": rule.name,
                "what": finding.what,
                "mend": finding.mend,
            }
            for rule, finding in found
        ],
        "errors": number["error"],
        "warnings": number["warning"],
    }
