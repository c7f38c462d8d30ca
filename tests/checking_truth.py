"""Whether a claim about the invented shop is true, by tables written out by hand.

Nothing here asks the checker: fits come from `TRUTH`, spans of years from `SPANS`, and the
rest from the rows as they stand.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator

from checking_answers import LETTER
from checking_tables import BUILDS, SEALS, SEALS_NEEDED, SITS, STYLES, TRUTH, VALVES

from assistant.records.cells import OPEN_FROM, OPEN_TO
from assistant.records.rows import FlushValve

# Every span that is exactly a build's or that of adjoining builds.
SPANS = {
    "Zendrake Tolver": {(1971, 1985), (1986, 1993), (1994, OPEN_TO), (1971, 1993), (1986, OPEN_TO),
                        (1971, OPEN_TO)},
    "Zendrake Tolvern": {(1980, 1999)},
    "Hulmorth Tolver": {(OPEN_FROM, 1990), (1991, 2004), (OPEN_FROM, 2004)},
    "Hulmorth Quisten": {(1998, OPEN_TO)},
    "Hulmorth Braskel": {(1990, 2006)},
    "Zendrake Ovellan": {(1975, 1988)},
    "Zendrake Dimmock Vale": {(1990, 2000)},
    "Zendrake Pallowick": {(1965, 1980)},
}  # fmt: skip
WHOLE = {
    "Zendrake Tolver": (1971, OPEN_TO), "Hulmorth Tolver": (OPEN_FROM, 2004),
    **{model: next(iter(spans)) for model, spans in SPANS.items() if len(spans) == 1},
}  # fmt: skip
VALVE_CHANGES = {"Zendrake Tolver": {1986, 1994}, "Hulmorth Tolver": {1991}}
NO_SEAL = {"Hulmorth Braskel", "Zendrake Dimmock Vale"}
COUNT = {"one": 1, "two": 2, "three": 3, "1": 1, "2": 2, "3": 3, "a": 1}
# Living parts for a 2 in opening whose ears stand about 96 mm apart.
MEASURED = {"SL-2041", "SL-2044", "SL-2050", "SL-2065", "SL-2070", "SL-2080"}
CHAIN = {("SL-2041", "SL-1980"), ("SL-2041", "SL-1970"), ("SL-1980", "SL-1970")}


def span(words: str) -> tuple[int, int]:
    """The years that words mean."""
    years = [int(y) for y in re.findall(r"\d{4}", words)]
    if len(years) == 2:
        return years[0], years[1]
    if "up to" in words:
        return OPEN_FROM, years[0]
    return (years[0], OPEN_TO) if "since" in words else (years[0], years[0])


def builds(model: str, words: str = "") -> list[str] | None:
    """Builds of a model that were made in the years; `None` where the years are not its own."""
    named = [b for b in BUILDS.values() if f"{b.brand} {b.model}" == model.replace("_", " ")]
    if not words:
        return [b.build for b in named]
    first, last = span(words)
    held = [
        b.build
        for b in named
        if b.made_to is not None and b.made_to >= first
        if b.made_from is not None and b.made_from <= last
    ]
    if first != last and (first, last) not in SPANS.get(model.replace("_", " "), ()):
        return None
    return held or None


def letter(part: str, build: str, position: str) -> str:
    """The letter of `TRUTH` for a part in a build, with the objection of the volume."""
    seal, gallons = SEALS[part], BUILDS[build].flush_full_gpf
    if position == "main" and gallons is not None:
        low, high = seal.flush_gpf_min, seal.flush_gpf_max
        if (low is not None and gallons < low) or (high is not None and gallons > high):
            return "N"
    return TRUTH[part][SITS[build][position]]


def letters(part: str, model: str, years: str = "", position: str = "") -> list[str]:
    """One letter for each place; '?' alone where the words name no place."""
    if part not in SEALS:
        return ["?"]
    found = []
    for build in builds(model, years) or ():
        places = [position] if position else list(SITS[build])
        found += [letter(part, build, p) if p in SITS[build] else "N" for p in places]
        found += [] if places else ["?"]
    return found or ["?"]


def _all(letter_wanted: str) -> Callable[..., bool]:
    return lambda *where: set(letters(*where)) == {letter_wanted}


def _sold(part: str) -> bool:
    return SEALS[part].status != "discontinued"


def _mm(length: float | None) -> str | None:
    return None if length is None else f"{length:g} mm"


def _size(words: str, inches: float | None) -> bool:
    number = {"2 in": 2.0, "3 in": 3.0, "2 1/2 in": 2.5}.get(words)
    return number is not None and number == inches


def _valve(model: str, years: str) -> Iterator[FlushValve]:
    for build in builds(model, years) or ():
        yield from (VALVES[v] for v in SITS[build].values())


def _each(test: Callable[..., bool]) -> Callable[..., bool]:
    """A claim about the valves of all builds meant."""

    def holds(model: str, years: str, said: str) -> bool:
        found = list(_valve(model, years))
        return bool(found) and all(test(v, said) for v in found)

    return holds


def _fits_of(kept: Callable[[str, str], bool]) -> Callable[[str, str, str], bool]:
    def holds(part: str, model: str, said: str) -> bool:
        chosen = [b for b in builds(model) or () if kept(b, said)]
        return bool(chosen) and all(letter(part, b, "main") == "F" for b in chosen if part in SEALS)

    return holds


CLAIMS: dict[str, Callable[..., bool]] = {
    "fits": _all("F"),
    "not": _all("N"),
    "changed": _all("C"),
    "could": _all("M"),
    "unsaid": lambda *where: bool({"?", "M"} & set(letters(*where))),
    "some": lambda part, model: "F" in (found := letters(part, model)) and set(found) != {"F"},
    "all": _all("F"),
    "fits-pieces": _fits_of(lambda b, said: BUILDS[b].pieces == (1 if said == "one-piece" else 2)),
    "fits-mark": _fits_of(lambda b, said: BUILDS[b].tank_mark == said),
    "changed-next": lambda *where: set(letters(*where)) in ({"F"}, {"C"}),
    "measured": lambda part: part in MEASURED,
    "price": lambda part, said: SEALS[part].price is not None and f"${SEALS[part].price}" == said,
    "stock": lambda part, said: said == {
        "stocked": "in stock" if SEALS[part].on_hand != 0 else "", "to order": "to order",
        "discontinued": "no longer made",
    }[SEALS[part].status],
    "size": lambda part, said: _size(said, SEALS[part].opening_in),
    "ears": lambda part, said: SEALS[part].ears == said,
    "ear-span": lambda part, said: _mm(SEALS[part].ear_span_mm) == said,
    "ring": lambda part, said: _mm(SEALS[part].ring_mm) == said,
    "colour": lambda part, said: SEALS[part].colour == said,
    "material": lambda part, said: SEALS[part].material == said,
    "pack": lambda part, said: SEALS[part].pack == COUNT[said],
    "float": lambda part, said: SEALS[part].float is (said == "a"),
    "genuine": lambda part, said: SEALS[part].genuine is (said == "genuine"),
    "maker": lambda part, said: SEALS[part].maker == said,
    "style": lambda part, said: said in (STYLES[SEALS[part].style].plain_name,
                                         *STYLES[SEALS[part].style].aliases),
    "volume": lambda part, said: said == "3.5 to 5 gallons" and SEALS[part].flush_gpf_max == 5.0,
    "number": lambda part, said: said in SEALS[part].maker_no,
    "replaces": lambda new, old: (new, old) in CHAIN,
    "wherever": lambda new, old: new == old or (
        "F" in TRUTH[old].values()
        and all(TRUTH[new][v] == "F" for v, says in TRUTH[old].items() if says == "F")
        and all(letter(new, b, "main") == "F" for b in BUILDS for p in SITS[b]
                if p == "main" and letter(old, b, "main") == "F")
    ),
    "valve-size": _each(lambda v, said: _size(said, v.opening_in)),
    "pegs": _each(lambda v, said: v.pegs == said),
    "peg-span": _each(lambda v, said: _mm(v.peg_span_mm) == said),
    "made": lambda model, years: WHOLE.get(model) == span(years)
    or (span(years)[0] == span(years)[1] and builds(model, years) is not None),
    "not-made": lambda model, years: model in SPANS and span(years)[0] == span(years)[1]
    and not builds(model, years),
    "valve-changed": lambda model, year: int(year) in VALVE_CHANGES.get(model, ()),
    "flushes": lambda model, said: {f"{BUILDS[b].flush_full_gpf} gallons"
                                    for b in builds(model) or ()} == {said},
    "needs": lambda model, count: model in SPANS and all(
        sum(SEALS_NEEDED.get((b, p), 1) for p in SITS[b]) == COUNT[count] and SITS[b]
        for b in builds(model) or ()
    ),
    "no-seal": lambda model: model in NO_SEAL,
    "kind": lambda model, said: model in SPANS and all(
        BUILDS[b].kind in (said, said.split("-")[0]) for b in builds(model) or ()
    ),
    "model": lambda model: model in SPANS,
    "quote": lambda said: said in LETTER,
}  # fmt: skip


def holds(claim: str, slots: dict[str, str]) -> bool:
    """Whether a claim such as 'fits part model years' is true with these words in its slots."""
    kind, *names = claim.split()
    values = [slots[n] if not n.startswith("=") else n[1:].replace("_", " ") for n in names]
    values = [_spelled(value) for value in values]
    parts = [v for v in values if v.startswith("SL-")]
    if any(part not in SEALS for part in parts):
        return False
    return CLAIMS[kind](*values)


def _spelled(value: str) -> str:
    return f"made from {value[:4]} to {value[5:]}" if re.fullmatch(r"\d{4}-\d{4}", value) else value
