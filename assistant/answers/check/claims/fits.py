"""A seal fits, in the many ways of saying so."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.answers.check.context import Unreadable
from assistant.answers.check.frames import BARE, FITS, SELECTS, Frame, Reading
from assistant.answers.check.judge import exists, fit
from assistant.answers.check.patterns import PIECES
from assistant.answers.check.quantity_needed import counted
from assistant.answers.check.results import Finding

PIECES.update(
    {
        "placed": "{one_part} {pos} ({joined} {one_part} {pos})*",
        "number_of": "(one|{I}) of {parts}",
        "seal_for": "(the|your|our|a)? (right|correct|proper)? (seal|part|one|replacement|{F})",
        "fit": "((will|does|do)? (fit|fits|suit|suits)|will do)",
        "fit_in": "((will|does|do)? (close|closes|seal|seals|match|matches|serve|serves)"
        "|(will do|works|work|will work|can be used|is used|is made|are made|is meant|{is} right"
        "|belongs|belong|goes|go|sits|sit) (for|in|on|into|with|to)"
        "|({is}|will be) {seal_for} (for|in|of)|{is} for)",
        "take": "(takes|take|needs|need|uses|use|wants|is closed by|is served by|will take)",
        "need": "((you|you will) (need|want|should (take|order|use))|(please )?(take|order|use"
        "|choose)|(we|i) (recommend|suggest|would send|can send))",
        "which_seal": "(the|your|our)? (right|correct|proper)?"
        " (seal|part|one|replacement|answer|{F}) (you (need|want)|that fits)?",
    }
)


def fits(reading: Reading) -> Sequence[Finding]:
    """The parts named first fit the toilets named after."""
    parts = reading.subject("s")
    reading.context.parts = parts
    return [*fit(reading.context, parts, reading.scopes("t", "p"), "fits")]


def offered(reading: Reading) -> Sequence[Finding]:
    """The parts are what the toilets take: to be ordered, so not discontinued."""
    context = reading.context
    parts = reading.parts("s")
    scopes = reading.scopes("t", "p")
    context.parts = parts
    return [
        *fit(context, parts, scopes, "fits", offered=True),
        *counted(context, reading.counted("s"), scopes),
    ]


def bare(reading: Reading) -> Sequence[Finding]:
    """A part without a verb takes the verb of the clause before, or of the list's intro."""
    context = reading.context
    parts = reading.parts("s")
    reading.subject("s")
    found: list[Finding] = []
    context.parts = parts
    counts = [count for count in reading.counted("s") if count[0] is not None]
    licensed = context.selected or context.limits or reading.text("t") or reading.text("p")
    relation = context.relation or context.listing
    if relation is None and (context.selected or reading.text("t")):
        relation = "fits"
    if relation is None or not (licensed or context.listing):
        if counts:
            raise Unreadable("what so many are for")
        context.topic = True
        return found
    if relation == "does not fit" and context.listing != relation:
        raise Unreadable("whether the part fits")
    scopes = reading.scopes("t", "p")
    found += fit(context, parts, scopes, relation, offered=relation == "fits")
    if counts and relation != "fits":
        raise Unreadable("what so many are for")
    return [*found, *counted(context, counts, scopes)]


def select(reading: Reading) -> Sequence[Finding]:
    """'For the ...,' before what is said of it."""
    found = [exists(reading.context, scope, reading.words) for scope in reading.scopes("t")]
    reading.context.selected = True
    return found


def position(reading: Reading) -> Sequence[Finding]:
    """'Main valve:' before the part."""
    reading.context.position = reading.items("Z")[0].values["Z"][0]
    reading.context.selected = True
    return []


def the_set(reading: Reading) -> Sequence[Finding]:
    """Each part fits at the position named after it."""
    context = reading.context
    scopes = reading.scopes("t")
    found: list[Finding] = []
    part = None
    for token in reading.text("s").split():
        item = reading.item(token)
        if item and "P" in item.values:
            part = item.values["P"][0]
        elif item and "Z" in item.values and part is not None:
            there = [scope.at(item.values["Z"][0]) for scope in scopes]
            found += fit(context, [part], there, "fits", offered=True)
    context.parts = reading.parts("s")
    return found


FRAMES = (
    Frame("fits", "{s:part}? {adv}* {fit} {adv}* {t:target}? {adv}* {p:pos}? {adv}*", fits, FITS),
    Frame("fits", "{s:part}? {adv}* {fit_in} {adv}* {t:target} {adv}* {p:pos}? {adv}*", fits, FITS),
    Frame(
        "fits", "{t:toilet}? {adv}* {take} {adv}* {s:counted_parts} {p:pos}? {adv}*", offered, FITS
    ),
    Frame("fits", "{p:valve} {take} {adv}* {s:counted_parts} {adv}*", offered, FITS),
    Frame("fits", "{p:valve} (takes|needs|take|need) {s:number_of}", offered, FITS),
    Frame("fits", "{t:toilet}? (takes|needs|take|need) {s:number_of}", offered, FITS),
    Frame("fits", "{need} {s:counted_parts} (for {t:target})? {p:pos}? {adv}*", offered, FITS),
    Frame(
        "fits",
        "{d:which_seal} ((for|of|in|on) {t:target})? {p:pos}? ({is}|would be|:) {s:counted_parts}",
        offered,
        FITS,
    ),
    Frame("fits", "for {t:target} ,? (it|that|there|this) is {s:counted_parts}", offered, FITS),
    Frame("fits", "{s:counted_parts} (for {t:target})? {p:pos}?", bare, BARE),
    Frame("fits", "{s:placed} : (that|this) is (the|a) (set|pair) for {t:target}", the_set, FITS),
    Frame("scope", "(for|with|in) {t:scopes}", select, SELECTS),
    Frame("scope", "{t:scopes}", select, SELECTS, before=":"),
    Frame("position", "(at|for|in)? the? {Z} valve", position, SELECTS, before=":"),
)
