"""What an answer's sentence speaks of: which builds, which valve; and numbers put into it."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from assistant.measuring.campaign.told import Told
from assistant.measuring.campaign.truth import EARLIEST, LATEST, Truth

YEARS = re.compile(
    r"made from (?P<a>\d{4}) to (?P<b>\d{4})|made since (?P<c>\d{4})|made up to (?P<d>\d{4})"
    r"|made in (?P<e>\d{4})"
)
_FITS = re.compile(r"\bfits? (?:the|it too)\b|^The seal for the |that is the set for ")
_NOT_PLAIN = ("does not fit", "wherever", "with this change", "could fit", "do not settle")
_AT = r" at the (\w+) valve"
_PIECES = {"in one piece": "1", "in two pieces": "2"}
_STAMPED = re.compile(r"(?:with|if) (.+?) (?:is )?stamped in the tank")


def says_fits(told: Told, sentence: str) -> bool:
    """Whether a sentence says of its parts that the toilet takes them unchanged."""
    plainly = not any(words in sentence for words in _NOT_PLAIN)
    return bool(told.builds) and plainly and bool(_FITS.search(sentence))


def positions_of(told: Told, sentence: str, part_no: str) -> tuple[str, ...]:
    """Where a sentence puts a part: said beside it, at the end, or anywhere in the toilet."""
    beside = re.search(rf"{re.escape(part_no)}\*\*{_AT}", sentence) or re.search(_AT, sentence)
    return (beside.group(1),) if beside else told.positions


def span_said(sentence: str) -> tuple[int, int]:
    """The years that a sentence names; as wide as can be where it names none."""
    found = YEARS.search(sentence)
    if not found:
        return EARLIEST, LATEST
    first = found["a"] or found["c"] or found["e"] or EARLIEST
    last = found["b"] or found["d"] or found["e"] or LATEST
    return int(first), int(last)


def meant(told: Told, sentence: str) -> tuple[str, ...]:
    """The builds still possible of which a sentence speaks."""
    first, last = span_said(sentence)
    spans = {build: told.truth.span(build) for build in told.builds}
    ids = [build for build, (a, b) in spans.items() if a <= last and first <= b]
    return narrowed(told.truth, ids, sentence)


def narrowed(truth: Truth, builds: Iterable[str], sentence: str) -> tuple[str, ...]:
    """Those of the builds that agree with the pieces and the stamped number of a sentence."""
    found = tuple(builds)
    for words, pieces in _PIECES.items():
        if words in sentence:
            found = tuple(b for b in found if truth.builds[b]["pieces"] in ("", pieces))
    if stamped := _STAMPED.search(sentence):
        carry = truth.with_number(stamped.group(1))
        found = tuple(b for b in found if b in carry)
    return found


def takes(told: Told, part_no: str, builds: Sequence[str], positions: Sequence[str]) -> bool:
    """Whether all of these builds take a seal at one of these valves.

    Where the answer speaks of a change, a seal that fits with one counts: the next sentence may
    say it.
    """
    enough = ("fits", "fits with change") if "with this change" in told.text else ("fits",)
    verdicts = told.truth.verdicts
    return bool(builds) and any(
        all(verdicts.get((build, at, part_no)) in enough for build in builds) for at in positions
    )


def put(sentence: str, old: str, new: str) -> str:
    """The sentence with another number, name or word in the place of one."""
    return re.sub(rf"(?<![\w-]){re.escape(old)}(?![\w-])", lambda _: new, sentence)


def transposed(part_no: str) -> str:
    """The number with its last two digits exchanged."""
    return part_no[:-2] + part_no[-1] + part_no[-2]


def unheard_of(truth: Truth, part_no: str) -> str:
    """A number of the same form that no seal of the shop has."""
    for step in range(1, 10):
        other = re.sub(r"\d", lambda m: str((int(m.group()) + step) % 10), part_no)  # noqa: B023
        if other not in truth.seals:
            return other
    return f"{part_no}7"
