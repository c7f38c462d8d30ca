"""Puts words that belong together into one item: years, scopes, descriptions of seals."""

from __future__ import annotations

import re
from functools import cache
from typing import Any

from assistant.answers.check import cards
from assistant.answers.check.likeness import likeness
from assistant.answers.check.line import Line
from assistant.answers.check.patterns import PIECES, compiled, expression
from assistant.answers.check.scope import Limit, Scope
from assistant.answers.check.years import read_years

_NOT_A_TOILET = r"(?! (?:number|mark|lid|bolts|ball|itself)(?![^ ]))"


def chunk(line: Line) -> None:
    """Rewrites the line, from small pieces to large ones."""
    read_years(line)
    for pattern, said in _compiled("attributes", "post"):
        line.rewrite(pattern, lambda m, said=said: _likeness(line, m, said))  # type: ignore[misc]
    for pattern, said in _compiled("traits", "post"):
        line.rewrite(pattern, lambda m, said=said: _limits(line, m, said))  # type: ignore[misc]
    line.rewrite(_description(), lambda m: _described(line, m.group()))
    line.rewrite(_scope(), lambda m: _scoped(line, m.group()))


@cache
def _compiled(kind: str, form: str) -> list[tuple[re.Pattern[str], list[Any]]]:
    found = cards.attributes() if kind == "attributes" else cards.traits()
    wordings = cards.by_wording(found, form)
    # a wording that holds another comes first
    ordered = sorted(wordings, key=len, reverse=True)
    return [(compiled(pattern), wordings[pattern]) for pattern in ordered]


def _likeness(line: Line, match: re.Match[str], said: list[Any]) -> dict[str, Any] | None:
    found = cards.said(said, line, match.group())
    return {"J": found} if found else None


def _limits(line: Line, match: re.Match[str], said: list[Any]) -> dict[str, Any] | None:
    found = cards.limits(said, line, match.group())
    return {"O": tuple(found)} if found else None


@cache
def _description() -> re.Pattern[str]:
    """'a red 2 in flapper with a float', 'the pegged seal'; more than a bare 'the seal'."""
    cards.attributes()
    return compiled(
        "(a|an|the|our|another)? ({adj} ,?)* (({adj} (seal|seals|part|one)?)"
        "|(seal|seals|part|pack) {J}) ({J}|, {J}|and {J})*"
        "|(a|an|the) (seal|part) ({J}|and {J})+"
    )


def _described(line: Line, stretch: str) -> dict[str, Any] | None:
    if " seal" not in stretch and " part" not in stretch and not line.within(stretch, "T"):
        named = line.within(stretch, "S")
        if not named:
            return None
    return {"F": likeness(line, stretch)}


@cache
def _scope() -> re.Pattern[str]:
    """'the one-piece Brand Model made from 1986 to 1993', 'your toilet', 'the one made ...'."""
    pre = "|".join(cards.by_wording(cards.traits(), "pre"))
    PIECES["which_ones"] = "({R}|of {Y}|{O}|, {O} ,?|{open} (made|built)? ({R}|{O}) {close})"
    PIECES["before_model"] = f"(old|older|own|{{Y}}|{pre})"
    # 'all' and 'every' would speak of toilets that the tables do not list
    PIECES["how_many"] = "(some|some of)"
    named = expression(
        "{how_many}? (the|your|an|a|this|that|our)? {before_model}* {M}"
        " (toilet|toilets|tank|tanks|model|models|cistern)? {which_ones}*"
        " ((in|of|from) (our|the) {tables})?"
    )
    meant = expression("(the|your|this|that) (toilet|tank|model|cistern)")
    ones = expression(
        "(((the|that) (one|ones)|those|ones|one|all) {which_ones}"
        "|(the|your) {before_model}* ({kind}|one-piece|two-piece) (one|ones|toilet|model))"
        " {which_ones}*"
    )
    after = expression("{which_ones}*")
    return re.compile(f"{named}|{ones}|{meant}{_NOT_A_TOILET}{after}")


def _scoped(line: Line, stretch: str) -> dict[str, Any] | None:
    builds: tuple[str, ...] | None = None
    limits: list[Limit] = []
    for item in line.within(stretch):
        if "M" in item.values and builds is None:
            builds = item.values["M"]
        if "O" in item.values:
            limits += item.values["O"]
        elif "R" in item.values or "Y" in item.values:
            span = item.values.get("R") or (item.values["Y"], item.values["Y"])
            limits.append(Limit(_trait("years"), (span,)))
    for pattern, said in _compiled("traits", "pre"):
        if match := pattern.search(_before_model(stretch)):
            limits += cards.limits(said, line, match.group())
    if len({limit.trait.name for limit in limits}) < len(limits):
        return None  # two spans of years, or two volumes: which of them is meant?
    some = "some" in stretch.split()
    return {"X": Scope(builds, tuple(limits), some=some, label=line.plain(stretch))}


def _before_model(stretch: str) -> str:
    found = re.search(r" <[A-Z]*M[A-Z]*\d+>", stretch)
    return stretch[: found.start()] if found else stretch


def _trait(name: str) -> Any:
    return next(trait for trait in cards.traits() if trait.name == name)
