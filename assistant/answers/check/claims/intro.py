"""The line before a list: what the parts in its bullets are said to do."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from assistant.answers.check.context import Relation, Unreadable
from assistant.answers.check.frames import AHEAD, CLAIM, Frame, Reading
from assistant.answers.check.patterns import PIECES
from assistant.answers.check.results import Finding

PIECES["these"] = "(one of)? (these|the following|those) (seals|parts)?"
PIECES["which_one"] = "which (seal|one|part|of them)?"


def _introduces(relation: Relation) -> Callable[[Reading], Sequence[Finding]]:
    def read(reading: Reading) -> Sequence[Finding]:
        if not reading.context.introduces:
            raise Unreadable("which seals are meant")
        scopes = reading.scopes("t")
        reading.context.listing = relation if scopes else None
        return []

    return read


def _depends(reading: Reading) -> Sequence[Finding]:
    """'Which seal fits ... depends on ...' claims no fit by itself."""
    reading.scopes("t")
    reading.context.listing = "fits"
    return []


FRAMES = (
    Frame(
        "intro",
        "{which_one} ({fit}|{fit_in}|you need for|it is for|is for) {t:target}? depends on {hangs}",
        _depends,
        CLAIM,
    ),
    Frame("intro", "{which_one} {fit} depends on {hangs} (for|on|in|with) {t:target}", _depends),
    Frame("intro", "{which_one} {t:toilet} (takes|needs) depends on {hangs}", _depends, CLAIM),
    Frame("intro", "(for {t:target} ,?)? the seal depends on {hangs}", _depends, CLAIM),
    Frame("intro", "(it|the seal) depends on {hangs}", _depends, CLAIM),
    Frame("intro", "{these} (fit|fits) {t:target}?", _introduces("fits"), AHEAD),
    Frame("intro", "{t:toilet} takes {these}", _introduces("fits"), AHEAD),
    Frame("intro", "{these} (do|does) not fit {t:target}?", _introduces("does not fit"), AHEAD),
    Frame("intro", "{these} could fit {t:target}?", _introduces("could fit"), AHEAD),
)
