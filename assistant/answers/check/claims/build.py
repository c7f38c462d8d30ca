"""The toilet itself: pieces, kind of tank, its numbers, what it has no place for."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.answers.check.context import Unreadable
from assistant.answers.check.frames import Frame, Reading
from assistant.answers.check.line import Line
from assistant.answers.check.lookup import Place, cited
from assistant.answers.check.patterns import PIECES
from assistant.answers.check.quantity_needed import takes
from assistant.answers.check.results import UNKNOWN, Finding, result_of, worst
from assistant.answers.check.scope import Silent, Trait
from assistant.records.rows import Row

KINDS = {
    "gravity": "gravity", "gravity-fed": "gravity", "dual-flush": "dual-flush",
    "dual flush": "dual-flush", "pressure": "pressure", "pressure-assisted": "pressure",
    "tipping": "tipping", "tipping-bucket": "tipping", "concealed": "concealed",
}  # fmt: skip
PIECES["kind"] = "(" + "|".join(sorted(KINDS, key=len, reverse=True)) + ")"
PIECES["tank_no"] = "({W}|{K}) (or ({W}|{K}))*"
PIECES["stamped"] = "(stamped|marked|printed|moulded)"


def _row(place: Place) -> Row | None:
    return place.build


def _pieces(line: Line, stretch: str) -> tuple[int, ...] | None:
    words = set(stretch.split())
    if {"one-piece", "one"} & words:
        return (1,)
    if "two-piece" in words:
        return (2,)
    return tuple(int(item.values["I"]) for item in line.within(stretch, "I")) or None


def _has_pieces(place: Place, said: int) -> bool | None:
    if place.build is None or place.build.pieces is None:
        return None
    return place.build.pieces == said


def _kind(line: Line, stretch: str) -> tuple[str, ...] | None:
    return tuple(kind for word, kind in KINDS.items() if f" {word} " in stretch + " ")[:1] or None


def _is_kind(place: Place, said: str) -> bool | None:
    return None if place.build is None or place.build.kind is None else place.build.kind == said


def _numbers(line: Line, stretch: str) -> tuple[str, ...] | None:
    found = [i.values.get("W", ()) + i.values.get("K", ()) for i in line.within(stretch)]
    return tuple(number for numbers in found for number in numbers) or None


def _is_marked(place: Place, said: str) -> bool | None:
    if place.build is None:
        return None
    # such a number names the builds that list it; a build without one is not it
    return said in (place.build.tank_mark, place.build.model_no)


def _model_nos(line: Line, stretch: str) -> tuple[str, ...] | None:
    return tuple(v for item in line.within(stretch, "K") for v in item.values["K"]) or None


def _is_model_no(place: Place, said: str) -> bool | None:
    return None if place.build is None else place.build.model_no == said


TRAITS = (
    Trait(
        name="pieces",
        read=_pieces,
        test=_has_pieces,
        row=_row,
        pre=("one-piece", "two-piece"),
        post=("in one piece", "in {I} pieces"),
        clause=(
            "{t:toilet}? (is|are) made? in (one piece|{I} pieces)",
            "{t:toilet}? (is|are) (a|the)? (one-piece|two-piece) (toilet|model|tank|one)?",
        ),
    ),
    Trait(
        name="kind",
        read=_kind,
        test=_is_kind,
        row=_row,
        pre=("{kind}",),
        post=("with a {kind} tank",),
        clause=("{t:toilet}? is (a|the) {kind} (toilet|tank|model|one)",),
    ),
    Trait(
        name="tank-number",
        read=_numbers,
        test=_is_marked,
        row=_row,
        post=(
            "(marked|stamped) {tank_no}",
            "with (the)? (tank number|number|mark) {tank_no}",
            "with {tank_no} {stamped} (in|inside|into) the tank",
            "with {tank_no} in the tank",
        ),
        clause=(
            "{t:toilet} (is|are) {stamped} (with)? {tank_no}",
            "{tank_no} is {stamped} (in|inside|into) {t:X}",
            "(the|its) (tank number|mark in the tank|tank mark) is {tank_no}",
            "the number in (the tank|{X}) is {tank_no}",
        ),
    ),
    Trait(
        name="model-number",
        read=_model_nos,
        test=_is_model_no,
        row=_row,
        post=("(with)? (the)? model (number|no) {K}",),
        clause=("(the|its) model number is {K}", "{t:toilet}? has the model number {K}"),
    ),
)


def _takes(reading: Reading) -> Sequence[Finding]:
    found = reading.items("I")
    number = int(found[0].values["I"]) if found else 1
    return takes(reading.context, number, reading.scopes("t", "p"), reading.words)


def _takes_one_of_each(reading: Reading) -> Sequence[Finding]:
    """Every position of the tank takes a single seal."""
    context = reading.context
    found: list[Finding] = []
    for scope in reading.scopes("t"):
        try:
            places = scope.places(context.given.tables)
        except Silent as silent:
            found.append(Finding(reading.words, silent.rule, UNKNOWN))
            continue
        for position in dict.fromkeys(place.position for place in places):
            found += takes(context, 1, [scope.at(position)], reading.words)
    return found


def _has_no(reading: Reading) -> Sequence[Finding]:
    """No valve of these toilets is closed by a seal of that style."""
    tables = reading.context.given.tables
    styles = {
        style
        for item in reading.items("F", "n")
        for attribute, said, _ in item.values["F"]
        if attribute.name == "style"
        for style in said
    }
    if not styles:
        raise Unreadable("which style of seal")
    found = []
    for scope in reading.scopes("t"):
        try:
            places = scope.places(tables)
        except Silent as silent:
            found.append(Finding(reading.words, silent.rule, UNKNOWN))
            continue
        results = [result_of(_lacks(place, styles)) for place in places]
        row = cited(places[0].build) if places[0].build else None
        found.append(Finding(reading.words, "no-such-seal", worst(results), row))
    return found


def _lacks(place: Place, styles: set[str]) -> bool | None:
    if place.valve is not None:
        return place.valve.style not in styles
    kind = place.build.kind if place.build else None
    return True if kind in ("pressure", "tipping") else None


FRAMES = (
    Frame("seals-needed", "{t:toilet}? (takes|needs|has) (one|{I}) (seal|seals)", _takes),
    Frame("seals-needed", "{p:valve} takes (one|{I}) (seal|seals)", _takes),
    Frame("seals-needed", "{t:toilet}? (takes|needs) one of each", _takes_one_of_each),
    Frame("no-such-seal", "{t:toilet}? has no {n:F}", _has_no, describes=True),
)
