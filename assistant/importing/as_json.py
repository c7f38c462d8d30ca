"""What an import would change, or has changed, as one object."""

from __future__ import annotations

from typing import Any

from assistant.importing.prepare import Prepared


def as_json(made: Prepared, *, written: bool, findings: int | None = None) -> dict[str, Any]:
    """The object that `--json` prints; with faults there are no changes in it."""
    plan = None if made.faults else made.plan
    return {
        "sheet": {"file": made.sheet.name, "read_as": list(made.sheet.told)},
        "table": str(made.asked.table),
        "matched": [
            {"heading": m.heading, "column": m.column, "because": m.because}
            for m in made.matching.matches
        ],
        "left_out": [
            {"heading": left.heading, "because": left.because} for left in made.matching.left_out
        ],
        "cleaned": [dict(vars(cleaned)) for cleaned in made.read.cleaned],
        "rows_without_our_columns": list(made.read.silent),
        "faults": [
            {"row": f.row, "heading": f.field, "problem": f.problem, "mend": f.mend}
            for f in made.faults
        ],
        "new": [
            {"row": n.row, "id": n.key, "cells": dict(n.cells), "look_again": n.again}
            for n in (plan.new if plan else ())
        ],
        "changed": [
            {"row": c.row, "id": c.key, "column": c.column, "old": c.old, "new": c.new}
            | {"look_again": c.again}
            for c in (plan.changes if plan else ())
        ],
        "unchanged": list(plan.unchanged) if plan else [],
        "not_in_sheet": list(plan.not_in_sheet) if plan else [],
        "new_left_out": list(made.read.kept_out),
        "written": written,
        "findings": findings,
    }
