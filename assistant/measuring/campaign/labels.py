"""Which builds a message leaves possible: told by its label, and held against the CSV files."""

from __future__ import annotations

import re
from collections.abc import Iterable

from assistant.measuring.campaign.truth import Truth
from assistant.measuring.messages import Expected

# Words of a reason by which the toilet, though it is named, decides nothing.
_UNDECIDED = re.compile(r"measurements alone|geometry|decides nothing|valve was|later valve")
_TAKEN = ("fits", "fits with change")


def possible(truth: Truth, expected: Expected) -> tuple[tuple[str, ...], str]:
    """The builds that a label names as those possible, and the old seal that it names instead.

    No builds where the label names them for another reason: what it says must fit is then not
    what the files say fits them.
    """
    builds = tuple(dict.fromkeys(_ids(truth).findall(expected.reason)))
    old = truth.part_no.findall(expected.reason)
    if old and len({truth.name_of(build) for build in builds}) > 1:
        return (), old[0]  # the old seal's number is all that is known of the toilet
    undecided = _UNDECIDED.search(expected.reason) or not _agrees(truth, expected, builds)
    return ((), "") if undecided else (builds, "")


def _agrees(truth: Truth, expected: Expected, builds: tuple[str, ...]) -> bool:
    """Whether the seals of a label are those that the files give to its builds."""
    if not builds or not expected.outcomes:
        return False
    if expected.branches:
        return all(
            any(_takes(truth, branch.parts, (build,)) for branch in expected.branches)
            for build in builds
        )
    if expected.parts:
        return _takes(truth, expected.parts, builds)
    living = [p for p, row in truth.seals.items() if row["status"] != "discontinued"]
    silent = not any(_takes(truth, (p,), (build,)) for p in living for build in builds)
    return silent and "ask" not in expected.outcomes[:1]


def _takes(truth: Truth, parts: Iterable[str], builds: tuple[str, ...]) -> bool:
    """Whether each of the builds takes each of the seals somewhere, if need be changed."""
    return all(
        any(truth.verdicts.get((build, at, part)) in _TAKEN for at in truth.valves[build])
        for part in parts
        for build in builds
    )


def _ids(truth: Truth) -> re.Pattern[str]:
    longest = sorted(truth.builds, key=len, reverse=True)
    return re.compile(rf"(?<![\w-])(?:{'|'.join(map(re.escape, longest)) or '(?!)'})(?![\w-])")
