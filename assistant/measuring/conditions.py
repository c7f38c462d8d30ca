"""Whether a condition selects the right toilets: read in plain words, held against the CSV files.

Shares nothing with the code that words conditions. A condition that cannot be read is not right.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Sequence

from assistant.measuring.campaign.truth import Row, Truth
from assistant.measuring.messages import Expected

_MEASURED = "measures so"  # nothing but the geometry of a valve is known
_TAKEN = ("fits", "fits with change")
_MADE = re.compile(
    r"made (?:from (?P<a>\d{4}) to (?P<b>\d{4})|since (?P<since>\d{4})|up to (?P<until>\d{4})"
    r"|in (?P<year>\d{4}))"
)
_STAMPED = re.compile(r"(?P<numbers>.+) (?:is|are) stamped in the tank")
_PIECES = re.compile(r"made in (?P<pieces>one|two) pieces?")
_GALLONS = re.compile(r"flushes (?P<gallons>[\d.]+ gallons?.*)")
_OPENING = re.compile(r"opening is (?P<sizes>\d.* in\b.*)")
_SIZE = re.compile(r"(\d)(?: (\d)/(\d))? in\b")
_PEGS = re.compile(r"pegs point (?P<way>up|down)")
_KIND = re.compile(r"it is an? (?P<kind>[\w-]+) tank")
_CALLED = re.compile(r"it is the (?P<name>[A-Z].+)")
_TUBE = re.compile(r"overflow tube is (?P<tube>round|square|none)")

Selects = Callable[[Truth, str], bool]


def selected(truth: Truth, condition: str, builds: Iterable[str]) -> list[str] | None:
    """The builds among some that a condition selects; `None` where it cannot be read."""
    told = condition.split(";")[0]
    alternatives = [_reader(piece) for piece in told.split(" or it ")]
    if not alternatives or None in alternatives:
        return None
    return [b for b in builds if any(holds(truth, b) for holds in alternatives if holds)]


def builds_of(truth: Truth, expected: Expected) -> list[str]:
    """The builds that a label names as those that decide."""
    words = {*re.findall(r"[\w-]+", expected.reason)}
    return [build for build in truth.builds if build in words]


def unchanged(truth: Truth, expected: Expected) -> frozenset[str]:
    """The seals of a label that fit as they are; all of them where it names no builds.

    One that must first be trimmed may be named, and need not be while another fits.
    """
    builds = builds_of(truth, expected)
    plain = frozenset(
        part
        for part in expected.parts
        if all(any(truth.fits(part, b, at) for at in truth.valves[b]) for b in builds)
    )
    return plain or expected.parts


def conditions_right(
    truth: Truth, expected: Expected, parts: Sequence[tuple[str, str, str]]
) -> bool:
    """Whether each seal fits every toilet that its condition selects, and none is left out.

    `parts` are number, position and condition. Where the label names no builds, a seal must
    stand in one of its branches.
    """
    builds = builds_of(truth, expected)
    if not builds or any(_MEASURED in condition for _, _, condition in parts):
        return all(part in expected.may_name for part, _, _ in parts)
    served: set[str] = set()
    for part, position, condition in parts:
        meant = selected(truth, condition, builds)
        if not meant or not all(_takes(truth, part, b, position) for b in meant):
            return False
        served |= {*meant}
    return all(b in served or not _has_seal(truth, b) for b in builds)


def _takes(truth: Truth, part: str, build: str, position: str) -> bool:
    at = position if position in truth.valves[build] else "main"
    return truth.verdicts.get((build, at, part)) in _TAKEN


def _has_seal(truth: Truth, build: str) -> bool:
    living = [p for p, row in truth.seals.items() if row["status"] != "discontinued"]
    return any(_takes(truth, p, build, at) for p in living for at in truth.valves[build])


def _reader(told: str) -> Selects | None:
    if found := _MADE.search(told):
        first, last = _years(found)
        return lambda t, b: t.span(b)[0] <= last and first <= t.span(b)[1]
    if found := _STAMPED.search(told):
        numbers = {_bare(n) for n in re.split(r", | or ", found["numbers"].removeprefix("if "))}
        return lambda t, b: bool(
            numbers & {_bare(t.builds[b][c]) for c in ("model_no", "tank_mark")}
        )
    if found := _PIECES.search(told):
        pieces = {"one": "1", "two": "2"}[found["pieces"]]
        return lambda t, b: t.builds[b]["pieces"] == pieces
    if found := _GALLONS.search(told):
        gallons = {float(g) for g in re.findall(r"[\d.]+(?= gallon)", found["gallons"])}
        return lambda t, b: float(t.builds[b]["flush_full_gpf"] or -1) in gallons
    if found := _OPENING.search(told):
        sizes = {
            int(whole) + (int(top) / int(bottom) if top else 0)
            for whole, top, bottom in _SIZE.findall(found["sizes"])
        }
        return _of_a_valve(lambda valve: float(valve["opening_in"] or -1) in sizes)
    if found := _PEGS.search(told):
        way = found["way"]
        return _of_a_valve(lambda valve: valve["pegs"] == way)
    if found := _TUBE.search(told):
        tube = found["tube"]
        return _of_a_valve(lambda valve: valve["overflow"] == tube)
    if found := _KIND.search(told):
        kind = found["kind"]
        return lambda t, b: t.builds[b]["kind"] == kind
    if found := _CALLED.search(told):
        names = {n.removeprefix("the ") for n in re.split(r", | or ", found["name"])}
        return lambda t, b: t.name_of(b) in names
    return None


def _of_a_valve(holds: Callable[[Row], bool]) -> Selects:
    return lambda truth, build: any(holds(valve) for valve in truth.valves[build].values())


def _years(found: re.Match[str]) -> tuple[int, int]:
    if found["a"]:
        return int(found["a"]), int(found["b"])
    if found["since"]:
        return int(found["since"]), 9999
    return (0, int(found["until"])) if found["until"] else (int(found["year"]), int(found["year"]))


def _numbers(build: Row) -> set[str]:
    return {_bare(build["model_no"]), _bare(build["tank_mark"])} - {""}


def _bare(number: str) -> str:
    return re.sub(r"[^0-9A-Z]", "", number.upper())
