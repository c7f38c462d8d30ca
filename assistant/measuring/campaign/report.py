"""A campaign's figures in lines for people and as the page that is kept, eval/check.md."""

from __future__ import annotations

import os
import secrets
from collections.abc import Iterator, Mapping
from pathlib import Path
from textwrap import wrap
from typing import Any

from assistant.measuring.totals import Share

IN_FULL = 10  # missed ones
WIDTH = 110


def lines(told: Mapping[str, Any]) -> list[str]:
    """Totals first, then a table by kind, then the first that were missed."""
    held = [*_totals(told), "", _row("kind", *_HEADINGS)]
    held += [_row(name, *_cells(of)) for name, of in told["kinds"].items()]
    for missed in told["missed"][:IN_FULL]:
        held += ["", f"Missed: {missed['kind']} (message {missed['message']})"]
        held += [f"  {line}" for line in _in_full(missed)]
    return held


def markdown(told: Mapping[str, Any], version: str) -> str:
    """The page of a campaign."""
    held = ["# False answers, and what the check made of them", ""]
    held += [f"`counterhand eval --check`, version {version}, seed {told['seed']}.", ""]
    held += [
        "Each good answer to a labelled message was made false, one sentence at a time, and given",
        "to the check as a reply is. Each is false by the CSV files alone, or promises what no",
        "table and no note could bear out.",
        "",
    ]
    held += [f"- {line.strip()}" for line in _totals(told)]
    kinds = told["kinds"].items()
    if through := [(name, of) for name, of in kinds if of["missed"]]:
        held += ["", f"| kind | {' | '.join(_HEADINGS)} |", "| --- |" + " ---: |" * len(_HEADINGS)]
        held += [f"| {name} | {' | '.join(_cells(of))} |" for name, of in through]
    caught = [f"{name} {of['checked']}" for name, of in kinds if of["checked"] and not of["missed"]]
    held += ["", f"{len(caught)} kinds were caught every time, each so many times:", ""]
    held += wrap("; ".join(caught), WIDTH, break_long_words=False, break_on_hyphens=False)
    for missed in told["missed"][:IN_FULL]:
        held += ["", f"## Missed: {missed['kind']} (message {missed['message']})", ""]
        held += [f"    {line}".rstrip() for line in _in_full(missed)]
    return "\n".join(held) + "\n"


def write(path: Path, text: str) -> None:
    """Writes a page in one piece: whoever reads it meanwhile sees the old one or the new one."""
    fresh = path.with_name(f".{path.name}.{secrets.token_hex(4)}.new")
    try:
        fresh.write_text(text, encoding="utf-8")
        os.replace(fresh, path)
    finally:
        fresh.unlink(missing_ok=True)


_HEADINGS = ("possible", "checked", "caught", "missed", "true sentences lost beside")


def _totals(told: Mapping[str, Any]) -> Iterator[str]:
    false, lost = told["false answers"], told["true sentences lost"]
    yield f"false answers: {false['checked']} checked of {false['could be made']} possible"
    if false["checked"] < false["asked for"]:
        yield f"no more could be made: {false['asked for']} were asked for"
    yield f"missed: {Share(false['missed'], false['checked'])}"
    yield f"true sentences lost of good answers: {Share(*lost['of good answers'])}"
    yield f"true sentences lost beside a false one: {Share(*lost['beside a false one'])}"
    answers, messages = told["good answers"], told["messages"]
    left_out = ", ".join(f"{n} for {why}" for why, n in told["left out"].items()) or "none"
    yield f"from {answers} good answers to {messages} messages, each for customers and for staff"
    yield f"answers left out: {left_out}"


def _cells(of: Mapping[str, Any]) -> tuple[str, ...]:
    counts = (str(of[name]) for name in ("could be made", "checked", "caught", "missed"))
    return (*counts, "{} of {}".format(*of["lost beside"]))


def _row(name: str, possible: str, checked: str, caught: str, missed: str, lost: str) -> str:
    return f"{name:44}{possible:>9}{checked:>9}{caught:>8}{missed:>8}   {lost}"


def _in_full(missed: Mapping[str, Any]) -> Iterator[str]:
    yield f"let through: {missed['sentence']}"
    if missed["instead of"]:
        yield f"instead of: {missed['instead of']}"
    yield f"for {missed['audience']}; builds: {', '.join(missed['builds']) or 'none known'}"
    if missed["letter"]:
        yield "letter: " + " ".join(missed["letter"].split())
    yield "shown:"
    yield from (f"  {line}".rstrip() for line in missed["shown"].splitlines())
