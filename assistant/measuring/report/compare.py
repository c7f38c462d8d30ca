"""Two reports side by side: what got better and what got worse."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

LESS_IS_BETTER = ("wrong parts shown",)
MOVED = 0.0005  # a smaller change is none


def compared(new: Mapping[str, Any], old: Mapping[str, Any]) -> list[str]:
    """One line for each figure that moved, the worse first, and for each case that did."""
    found = sorted(_moved(new, old), key=lambda item: (item[0], item[1]))
    lines = [f"{'worse ' if worse == 0 else 'better'}  {text}" for worse, text in found]
    return [*lines, *_cases(new, old)] or ["Nothing moved."]


def _moved(new: Mapping[str, Any], old: Mapping[str, Any]) -> Iterator[tuple[int, str]]:
    for split, held in new["splits"].items():
        before = old["splits"][split]
        for name, share in held["messages"]["totals"].items():
            was = before["messages"]["totals"].get(name)
            if isinstance(share, list) and was and share[1] and was[1]:
                yield from _line(split, name, share[0] / share[1], was[0] / was[1])
        for system, measures in held["retrieval"]["scores"].items():
            for name, score in measures.items():
                was = before["retrieval"]["scores"][system][name]["mean"]
                yield from _line(split, f"{system} {name}", score["mean"], was)


def _line(split: str, name: str, now: float, was: float) -> Iterator[tuple[int, str]]:
    if abs(now - was) > MOVED:
        better = (now > was) != (name in LESS_IS_BETTER)
        yield int(better), f"{split}: {name} {was:.3f} → {now:.3f}"


def _cases(new: Mapping[str, Any], old: Mapping[str, Any]) -> Iterator[str]:
    before = {case["id"]: case["answers"] for case in old["cases"]}
    for case in new["cases"]:
        was = before.get(case["id"])
        if was is not None and was != case["answers"]:
            yield f"moved   {case['id']}: {_told(was)} → {_told(case['answers'])}"


def _told(answers: list[Mapping[str, Any]]) -> str:
    return "; ".join(
        f"{answer['outcome']} {', '.join(answer['named'])}".strip() for answer in answers
    )
