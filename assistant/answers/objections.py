"""Why a seal does not fit, in words: one small card for each rule."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from assistant.answers.words import gallons, inches, listed, millimetres
from assistant.fitment.judge import Judgement
from assistant.records.rows import Seal

Wording = Callable[[Seal, Any, Any], str]


def _mount(seal: Seal, has: tuple[str, ...], there: tuple[str, ...]) -> str:
    holds = {
        "pegs": "hooks on pegs", "ring": "sits with a ring round the tube",
        "wire": "hangs on a lift wire", "clip": "holds by a clip", "strap": "holds by a strap",
        "canister": "belongs under a canister", "tower": "belongs under a tower",
        "push": "is pushed on", "thread": "screws on",
    }  # fmt: skip
    offers = {
        "pegs": "pegs", "ring": "a round tube for a ring", "wire": "a lift wire", "clip": "a clip",
        "strap": "a strap", "canister": "a canister", "tower": "a tower",
        "push": "a gasket that is pushed on", "thread": "a gasket that screws on",
    }  # fmt: skip
    ways, offered = [holds[w] for w in has], [offers[w] for w in there]
    return f"it {listed(ways, 'or')}, and the valve has {listed(offered)}"


def _volume(seal: Seal, has: tuple[float | None, float | None], there: float) -> str:
    low, high = has
    if low is not None and high is not None:
        made_for = gallons(low) if low == high else f"{low:g} to {gallons(high)}"
    elif low is not None:
        made_for = f"{gallons(low)} or more"
    else:
        made_for = f"{gallons(high or 0)} or less"
    return f"it is made for toilets that flush {made_for}, and this one flushes {gallons(there)}"


WORDINGS: dict[str, Wording] = {
    "opening": lambda s, has, there: (
        f"it closes a {inches(has)} opening, and the valve's opening is {inches(there)}"
    ),
    "ears": lambda s, has, there: (
        f"its ears point {has}, and the valve's pegs point {there}"
        if there != "none"
        else f"its ears point {has}, and the valve has no pegs"
    ),
    "ear-span": lambda s, has, there: (
        f"its ears stand {millimetres(has)} apart, and the valve's pegs {millimetres(there)}"
    ),
    "ring-size": lambda s, has, there: (
        f"its ring is made for a tube of {millimetres(has)}, "
        f"and the valve's tube is {millimetres(there)}"
    ),
    "overflow": lambda s, has, there: (
        "it sits with a ring round the tube, and the valve's tube is square"
        if there == "square"
        else "it sits with a ring round the tube, and the valve has no tube"
    ),
    "mount": _mount,
    "own-valve": lambda s, has, there: "it belongs to another kind of valve",
    "volume": _volume,
}

FROM = {
    "maker's sheet": "the maker's sheet says so",
    "tried at the bench": "we tried it at the bench",
    "customer's report": "a customer reported that",
}  # the strongest first


def source_of(judgement: Judgement) -> str | None:
    """Where the strongest evidence for a seal comes from; `None` where no row says."""
    if judgement.basis != "evidence" or judgement.change:
        return None
    kinds = {row.kind for row in judgement.evidence}
    return next((said for kind, said in FROM.items() if kind in kinds), None)


def because(judgement: Judgement, seal: Seal) -> str:
    """The reason in one clause, without a full stop."""
    objection = judgement.objection
    if objection is not None:
        said = WORDINGS[objection.rule](seal, objection.seal_has, objection.place_has)
        place = judgement.place
        return said if place.alone else said.replace("the valve", f"the {place.position} valve")
    kinds = [row.kind for row in judgement.evidence if row.kind]
    return FROM[kinds[0]] if kinds else "it is written down so in the table"


def rule_name(judgement: Judgement) -> str:
    """The rule or the row of evidence that decides."""
    if judgement.objection is not None:
        return judgement.objection.rule
    return f"fitment:{judgement.evidence[0].evidence}" if judgement.evidence else judgement.basis
