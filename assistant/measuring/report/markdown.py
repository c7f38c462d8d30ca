"""The report in Markdown: what a shop owner asks first stands first."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from typing import Any

from assistant.measuring.judged import KINDS_OFF

FIRST = (
    "wrong parts shown",
    "answered when answerable",
    "silent when it must be",
    "outcome right",
    "exact set",
    "conditions right",
    "question right",
)
REACHES: dict[str, Callable[[float], bool]] = {
    "wrong parts shown": lambda share: share == 0.0,
    "answered when answerable": lambda share: share >= 0.9,
    "silent when it must be": lambda share: share == 1,
}
GOALS = {
    "wrong parts shown": "0",
    "answered when answerable": "≥ 90 %",
    "silent when it must be": "100 %",
}


def shown(share: Sequence[int]) -> str:
    """'33 of 41 (80.5 %)'."""
    count, of = share
    return f"{count} of {of} ({100 * count / of:.1f} %)" if of else "–"


def markdown(figures: Mapping[str, Any]) -> str:
    """The whole report."""
    return "\n".join(_lines(figures)) + "\n"


def _verdict(sums: Mapping[str, Any]) -> Iterator[str]:
    """Which goals the split that is only measured reaches, said plainly."""
    missed = [
        name
        for name, reaches in REACHES.items()
        if not reaches(sums[name][0] / sums[name][1] if sums[name][1] else 0.0)
    ]
    yield f"Goals missed on 'measure': {', '.join(missed)}." if missed else "Every goal is reached."
    yield ""


def _lines(figures: Mapping[str, Any]) -> Iterator[str]:
    yield "# Evaluation"
    yield ""
    yield f"Written by `counterhand eval`, version {figures['version']}. 'tune' is what limits are"
    yield "fitted to; 'measure' is only measured, and of it nothing but sums is shown. The"
    yield "goals are for 'measure'."
    yield ""
    splits = figures["splits"]
    yield from _table(
        ("", *splits, "goal"),
        [
            (
                name,
                *(shown(s["messages"]["totals"][name]) for s in splits.values()),
                GOALS.get(name, ""),
            )
            for name in FIRST
        ],
    )
    yield from _verdict(splits["measure"]["messages"]["totals"])
    for split, held in splits.items():
        yield f"## {split}: {held['messages']['totals']['messages']} messages"
        yield ""
        yield from _messages(held["messages"])
        yield f"### Questions to the notes ({held['retrieval']['questions']})"
        yield ""
        yield from _retrieval(held["retrieval"])
    yield from _cases(figures["cases"])


def _messages(held: Mapping[str, Any]) -> Iterator[str]:
    columns = FIRST[:3]
    for name in ("by kind", "by style", "by length"):
        rows = [
            (group, str(sums["messages"]), *(shown(sums[column]) for column in columns))
            for group, sums in held[name].items()
        ]
        yield from _table((name.removeprefix("by "), "messages", *columns), rows)
    facts = [
        (name, shown(read["precision"]), shown(read["recall"]))
        for name, read in held["facts"].items()
    ]
    yield from _table(("fact", "of what was read, stated", "of what was stated, read"), facts)
    taken = held["milliseconds"]
    late = taken["95th percentile"]
    yield f"A reply took {taken['median']} ms (median), {late} ms (95th percentile)."
    yield ""


def _retrieval(held: Mapping[str, Any]) -> Iterator[str]:
    scores = held["scores"]
    names = list(next(iter(scores.values())))
    rows = [
        (system, *(f"{of[n]['mean']:.3f} [{of[n]['interval'][0]:.3f}, {of[n]['interval'][1]:.3f}]"
                   for n in names))
        for system, of in scores.items()
    ]  # fmt: skip
    yield from _table(("ranking", *names), rows)
    for system, against in held["fused against"].items():
        sure = "significant" if against["p"] < 0.05 else "not significant"
        yield (
            f"Fused against {system}: {against['difference']:+.3f} nDCG@10, "
            f"p = {against['p']:.4f}, {sure}."
        )
    yield ""
    yield (
        "Answers from notes: "
        + ", ".join(f"{n} {name}" for name, n in held["answers"].items())
        + "."
    )
    yield ""


def _cases(cases: Sequence[Mapping[str, Any]]) -> Iterator[str]:
    """Of 'tune', the messages that did not come out as labelled."""
    off = [case for case in cases if any(answer["off"] for answer in case["answers"])]
    yield f"## What did not come out as labelled ('tune', {len(off)} of {len(cases)})"
    yield ""
    yield "Answers and their checks are in report.json."
    yield ""
    for case in sorted(off, key=_worst):
        said = " ".join(case["text"].split())
        yield f"- **{case['id']}** ({', '.join(case['kind'])}): {said}"
        for answer in case["answers"]:
            if answer["off"]:
                told = "; ".join(_told(answer, off) for off in answer["off"])
                yield f"  - {told}{_because(answer)}"


def _worst(case: Mapping[str, Any]) -> int:
    return min(KINDS_OFF.index(off) for answer in case["answers"] for off in answer["off"])


def _because(answer: Mapping[str, Any]) -> str:
    return f" ({answer['reason']})" if answer["reason"] else ""


def _told(answer: Mapping[str, Any], off: str) -> str:
    """One thing that is off, with what would have been right."""
    given = answer["given"] or {}
    asked = (given.get("question") or {}).get("asks")
    named, missing = ", ".join(answer["named"]), ", ".join(answer["missing"])
    return {
        "wrong parts": f"wrong: {', '.join(answer['wrong'])}",
        "outcome": f"{answer['outcome'] or 'no answer'} where "
        f"{' or '.join(answer['expected']) or 'no answer'} was right",
        "no part named": "no part was named",
        "set": f"the set is not exact: named {named}; not named {missing or 'none'}",
        "conditions": f"a condition is not right: {', '.join(_conditions(given)) or 'none'}",
        "question": f"asked {asked or 'nothing'} where {' or '.join(answer['wanted'])} was right",
    }[off]


def _conditions(given: Mapping[str, Any]) -> list[str]:
    return [f"{part['part_no']} {part['condition']}" for part in given.get("parts", ())]


def _table(head: Sequence[str], rows: Sequence[Sequence[str]]) -> Iterator[str]:
    yield "| " + " | ".join(head) + " |"
    yield "| " + " | ".join("---" for _ in head) + " |"
    for row in rows:
        yield "| " + " | ".join(row) + " |"
    yield ""
