"""What the tables do not hold: no seal, no such toilet; and what they list."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.answers.check.context import Context, Unreadable
from assistant.answers.check.frames import FITS, Frame, Reading
from assistant.answers.check.judge import exists
from assistant.answers.check.line import line_of
from assistant.answers.check.lookup import Place, cited, verdict
from assistant.answers.check.measured import lengths_quoted, near
from assistant.answers.check.results import CONTRADICTED, SUPPORTED, UNKNOWN, Finding
from assistant.answers.check.scope import Scope, Silent
from assistant.records.tables import Tables


def no_seal(reading: Reading) -> Sequence[Finding]:
    """No seal has evidence for any of the toilets; of 'sold' ones, none that is still made."""
    sold = reading.has("sell", "stock", "have", "living", "sold")
    return [
        _none_fits(reading.context, scope, sold=sold, claim=reading.words)
        for scope in reading.scopes("t", "p")
    ]


def _none_fits(context: Context, scope: Scope, *, sold: bool, claim: str) -> Finding:
    tables = context.given.tables
    try:
        places = scope.places(tables)
    except Silent as silent:
        return Finding(claim, silent.rule, CONTRADICTED if silent.false else UNKNOWN)
    for place in places:
        for part in sorted(_tried(tables, place)):
            if sold and tables.seals[part].status == "discontinued":
                continue
            found = verdict(tables, part, place)
            if found.says.startswith("fits"):
                return Finding(claim, "no-seal", CONTRADICTED, found.row)
    row = cited(places[0].build) if places[0].build else None
    return Finding(claim, "no-seal", SUPPORTED, row)


def _tried(tables: Tables, place: Place) -> set[str]:
    """Parts with evidence in a place, and every part that replaced one of them."""
    found: set[str] = set()
    if place.valve is not None:
        found.update(tables.parts_tried_on_valve.get(place.valve.valve, ()))
    if place.build is not None:
        found.update(tables.parts_tried_on_build.get(place.build.build, ()))
    waiting = list(found)
    while waiting:
        newer = tables.seals[waiting.pop()].replaced_by
        if newer is not None and newer not in found:
            found.add(newer)
            waiting.append(newer)
    return found


def no_toilet(reading: Reading) -> Sequence[Finding]:
    """The name quoted, here or before, is none that the tables know."""
    context = reading.context
    here = tuple(item.values["Q"] for item in reading.items("Q"))
    context.quotes += here
    named = here or context.quotes[-1:]
    if not named and context.given.message is not None:
        named = (context.given.message,)
    if not named:
        return [Finding(reading.words, "no-toilet", UNKNOWN)]
    known = [name for name in named if _models(context, name)]
    result = CONTRADICTED if known else SUPPORTED
    return [Finding(reading.words, "no-toilet", result)]


def _models(context: Context, text: str) -> bool:
    line = line_of(text[:800], context.given.lexicon, context.given.currency)
    return line is not None and any("M" in item.values for item in line.items)


def listed(reading: Reading) -> Sequence[Finding]:
    """The table holds toilets of these names."""
    scopes = reading.scopes("t")
    if any(scope.builds is None for scope in scopes):
        raise Unreadable("which toilet is meant")
    return [exists(reading.context, scope, reading.words) for scope in scopes]


def no_seal_measured(reading: Reading) -> Sequence[Finding]:
    """With the measurements quoted no seal of the tables would agree."""
    context = reading.context
    quotes = tuple(item.values["Q"] for item in reading.items("Q"))
    context.quotes += quotes
    lengths = lengths_quoted(context)
    if not lengths:
        return [Finding(reading.words, "no-seal-measured", UNKNOWN)]
    for seal in context.given.tables.seals.values():
        if seal.status != "discontinued" and all(near(seal, length) for length in lengths):
            row = cited(seal)
            return [Finding(reading.words, "no-seal-measured", CONTRADICTED, row)]
    return [Finding(reading.words, "no-seal-measured", SUPPORTED)]


_KNOW = (
    "((we|our {tables}|the {tables}) (know|knows|list|lists|have|has|sell|sells|stock)"
    " no (living)? (seal|seals|part))"
)

FRAMES = (
    Frame("no-seal", _KNOW + " (for|of|on) {t:target} {p:pos}?", no_seal, FITS),
    Frame(
        "no-seal",
        "there is no seal (for|of) {t:target} {p:pos}? in (our|the) {tables}",
        no_seal,
        FITS,
    ),
    Frame(
        "no-seal-measured",
        "we know no seal with (these|those) (measures|measurements) (: {Q} ((,|and|, and) {Q})*)?",
        no_seal_measured,
    ),
    Frame(
        "no-toilet",
        "(the|our) {tables} (lists|list|knows|know|holds|hold|has|have) no (toilet|model)"
        " (of that name|by that name|(called|named) {Q} ((,|and|or) {Q})*)",
        no_toilet,
    ),
    Frame("listed", "(the|our) {tables} (lists|list|holds|hold) {t:scopes}", listed),
    Frame("listed", "(it|this|yours) (may|might|could) be {t:scopes}", listed),
    Frame("listed", "{t:scopes} ({is}|stands) (in|one of those in) (the|our) {tables}", listed),
    Frame("listed", "{t:scopes}", listed, whole=True),
)
