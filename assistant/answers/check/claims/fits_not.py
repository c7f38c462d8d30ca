"""A seal does not fit, only could fit, or the tables do not say."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.answers.check.context import Relation
from assistant.answers.check.frames import AHEAD, FITS, Frame, Reading
from assistant.answers.check.judge import fit
from assistant.answers.check.measured import agrees_with_letter
from assistant.answers.check.patterns import PIECES
from assistant.answers.check.results import Finding

PIECES.update(
    {
        "fit_not": "((does|do|will|can|would|did) not (fit|suit|seal|close|do|work|match|belong)"
        "( (in|on|for|with|into))?|{is} not (right|meant|made|suitable|suited)? for"
        "|{is} not the? (right)? (one|seal|part|match) (for)?|{is} (wrong|no match|no seal) for?"
        "|{is} the wrong (one|seal|part) (for)?)",
        "neither": "{P} nor {P}",
        "could": "(could|may|might) (fit|suit|close|do|be right)( (in|on|for))?",
        "tables_silent": "(the|our) {tables} (do|does) not (say|settle) (whether|if)"
        "|(we|i) (do not know|cannot say|can not say) (whether|if)|it is not known (whether|if)",
    }
)


def _fit(reading: Reading, relation: Relation) -> Sequence[Finding]:
    parts = reading.subject("s")
    reading.context.parts = parts
    return [*fit(reading.context, parts, reading.scopes("t", "p"), relation)]


def fits_not(reading: Reading) -> Sequence[Finding]:
    """The parts fit none of the toilets named."""
    return _fit(reading, "does not fit")


def unsaid(reading: Reading) -> Sequence[Finding]:
    """No evidence says whether the parts fit."""
    return _fit(reading, "unknown")


def could(reading: Reading) -> Sequence[Finding]:
    """By the measurements alone; without a toilet, those of the letter are meant."""
    context = reading.context
    if context.scope is None and not context.limits and not reading.items("X"):
        parts = reading.subject("s")
        context.parts, context.relation = parts, "could fit"
        return [agrees_with_letter(context, part) for part in parts]
    return _fit(reading, "could fit")


def by_measures(reading: Reading) -> Sequence[Finding]:
    """'Going by the measurements alone' marks the sentence."""
    reading.context.by_measures = True
    return []


FRAMES = (
    Frame(
        "fits-not",
        "{s:part}? {adv}* {fit_not} {adv}* {t:target}? {adv}* {p:pos}? {adv}*",
        fits_not,
        FITS,
    ),
    Frame("fits-not", "do not (take|order|use|buy) {s:part} (for {t:target})?", fits_not, FITS),
    Frame("fits-not", "neither {s:neither} {fit} {t:target}? {p:pos}?", fits_not, FITS),
    Frame("could-fit", "{s:part}? {adv}* {could} {adv}* {t:target}? {p:pos}? {adv}*", could, FITS),
    Frame("measures", "{geo}", by_measures, AHEAD, joins=True),
    Frame(
        "unsaid",
        "({tables_silent}) {s:part} {adv}* ({fit}|{fit_in}) {t:target}? {p:pos}?",
        unsaid,
        FITS,
    ),
    Frame(
        "unsaid",
        "whether {s:part} {fit} {t:target}? {p:pos}? is not (known|in (the|our) {tables})",
        unsaid,
        FITS,
    ),
)
