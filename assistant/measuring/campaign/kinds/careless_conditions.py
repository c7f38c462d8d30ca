"""Conditions lost, and claims that reach further than the tables do."""

from __future__ import annotations

import re

from assistant.measuring.campaign.kinds.careless_said import (
    affirms,
    bold,
    fits_everywhere,
    never_in,
    parts_in,
    some,
)
from assistant.measuring.campaign.told import Falsehoods, Kind, Told

ORIGINAL = re.compile(r"(?:, (?:if|as long as)|(?<=holds) if) the flush valve is the original one")
BRANCH = re.compile(r"^(- )?if (.+?), it takes ")


def valve_whatever(told: Told, sentence: str) -> Falsehoods:
    """The condition turned into its opposite: also in a valve that was put in later."""
    if told.builds and ORIGINAL.search(sentence):
        for instead in (
            ", whatever flush valve is in it now",
            ", even if the flush valve has been replaced",
            ", and no matter who put the valve in",
        ):
            yield "the valve's condition turned", ORIGINAL.sub(instead, sentence)


def valve_assumed(told: Told, sentence: str) -> Falsehoods:
    """The condition taken as met, though nobody has seen the tank."""
    if told.builds and "original" not in told.letter.lower() and ORIGINAL.search(sentence):
        for instead in (
            ", since your flush valve is the original one",
            ", and from what you write the valve is certainly the first one",
        ):
            yield "the valve's condition assumed", ORIGINAL.sub(instead, sentence)


def branch_without_condition(told: Told, sentence: str) -> Falsehoods:
    """A seal for some of the builds given for all of them."""
    found, parts = BRANCH.match(sentence), parts_in(sentence)
    if not found or not parts or not affirms(told, sentence):
        return
    if any(never_in(told.truth, parts[0], (build,)) for build in told.builds):
        point, rest = found[1] or "", sentence[found.end() :]
        yield "a branch without its condition", f"{point}it takes {rest}"
        yield "a branch without its condition", f"{point}whichever it is, it takes {rest}"
        probably = f"{point}most likely {found[2]}, so it takes {rest}"
        yield "a branch chosen by guess", probably
        yield "a branch without its condition", f"{point}if {found[2]} or not, it takes {rest}"


def others_of_that_age(told: Told, sentence: str) -> Falsehoods:
    """What fits one toilet 'should fit the maker's others of those years'."""
    parts = parts_in(sentence)
    if not affirms(told, sentence) or len(parts) != 1:
        return
    brands = {told.truth.builds[build]["brand"] for build in told.builds}
    spans = [told.truth.span(build) for build in told.builds]
    if len(brands) != 1:
        return
    brand = brands.pop()
    first, last = min(a for a, _ in spans), max(b for _, b in spans)
    same_age = [
        build
        for build, row in told.truth.builds.items()
        if row["brand"] == brand
        and build not in told.builds
        and told.truth.span(build)[0] >= first
        and told.truth.span(build)[1] <= last
    ]
    if any(never_in(told.truth, parts[0], (build,)) for build in same_age):
        part = bold(parts[0])
        for claim in some(
            sentence,
            (
                f"{part} fits every other {brand} of those years.",
                f"It fits the other {brand} toilets of that age as well.",
                f"Any {brand} made in those years takes {part}.",
                f"{brand} used the same seal in all its toilets then.",
            ),
        ):
            yield "all of that age", f"{sentence} {claim}"


def every_valve_of_that_size(told: Told, sentence: str) -> Falsehoods:
    """'Fits every 2 in valve', of a seal that some such valve is known to refuse."""
    parts = parts_in(sentence)
    row = told.truth.seals.get(parts[0]) if len(parts) == 1 else None
    if row is None or not row["opening_in"] or "not fit" in sentence:
        return
    if not _refused(told, parts[0], row["opening_in"]):
        return
    part, size = bold(parts[0]), row["opening_in"]
    for claim in some(
        sentence,
        (
            f"{part} fits every valve with a {size} in opening.",
            f"It is universal: any {size} in opening takes it.",
            f"Every toilet with a {size} in opening takes {part}.",
            f"With a {size} in opening nobody can go wrong with {part}.",
        ),
    ):
        yield "all of that size", f"{sentence} {claim}"


def _refused(told: Told, part_no: str, size: str) -> bool:
    return any(
        valve["opening_in"] == size
        and told.truth.verdicts.get((build, at, part_no)) == "does not fit"
        for build, valves in told.truth.valves.items()
        for at, valve in valves.items()
    )


def every_build_of_the_name(told: Told, sentence: str) -> Falsehoods:
    """'All Tamsels', of a seal that one of them is known to refuse."""
    parts = parts_in(sentence)
    names = {told.truth.name_of(build) for build in told.builds}
    if not affirms(told, sentence) or len(parts) != 1 or len(names) != 1:
        return
    name = names.pop()
    if any(never_in(told.truth, parts[0], (build,)) for build in told.truth.models[name]):
        part = bold(parts[0])
        yield "all of that name", f"{sentence} {part} fits every {name} ever made."
        yield "all of that name", f"{sentence} It goes on any {name}, old or new."


def names_settled(told: Told, sentence: str) -> Falsehoods:
    """Two namesakes, of which one is picked without a reason."""
    names = [name for name in told.truth.models if f"the {name}" in sentence]
    if sentence.startswith(("Our table lists", "It may be")) and len(names) > 1:
        for name in names:
            yield "a namesake picked", f"It is the {name}."
        builds = [build for name in names for build in told.truth.models[name]]
        if not any(_may_fit_all(told, part, builds) for part in told.truth.seals):
            yield "namesakes called alike", f"{sentence} They take the same seal."


def _may_fit_all(told: Told, part_no: str, builds: list[str]) -> bool:
    """Whether none of the builds is known to refuse the part."""
    return not any(never_in(told.truth, part_no, (build,)) for build in builds)


def unlisted_listed(told: Told, sentence: str) -> Falsehoods:
    """A toilet that the table does not list, said to be in it; a seal known where none is."""
    if sentence.startswith("Our table lists no toilet called"):
        yield "an unlisted toilet listed", sentence.replace("lists no toilet", "lists the toilet")
        yield "an unlisted toilet listed", f"{sentence} It is sold under another name as well."
    if sentence.startswith("We know no seal for") and told.builds:
        known = any(
            told.truth.verdicts.get((b, at, p)) not in ("does not fit", "unknown")
            for b in told.builds
            for at in told.truth.valves[b]
            for p in told.truth.seals
        )
        if not known:
            yield "a seal known after all", sentence.replace("know no seal", "know two seals")
    if "hold nothing that would let us name a seal" in sentence:
        yield "a guess promised to be right", "We guess, and we are seldom wrong."


def unsettled_settled(told: Told, sentence: str) -> Falsehoods:
    """What the tables do not settle, given as settled."""
    parts = parts_in(sentence)
    if "do not settle whether" not in sentence or len(parts) != 1 or not told.builds:
        return
    if not fits_everywhere(told, parts[0]):
        settled = sentence.replace("do not settle whether", "leave no doubt that")
        yield "an open question settled", settled
        yield "an open question settled", sentence.split("whether ")[1]


def rinse_by_main(told: Told, sentence: str) -> Falsehoods:
    """No seal is known for one valve, so that of the other must do."""
    found = re.match(r"We know no seal for the (main|rinse) valve", sentence)
    if found and told.main and not told.takes(told.main, found[1]):
        others = [at for at in told.positions if at != found[1]]
        refuses = all(
            told.truth.verdicts.get((build, found[1], told.main)) == "does not fit"
            for build in told.builds
        )
        if others and refuses and fits_everywhere(told, told.main):
            does = f"{bold(told.main)} does for the {found[1]} valve as well."
            yield "the other valve's seal will do", does


def misquoted(told: Told, sentence: str) -> Falsehoods:
    """The customer's words changed on the way."""
    if "wrote" not in sentence:
        return
    for quoted in re.findall(r'"([^"]+)"', sentence)[:2]:
        number = re.search(r"\d+", quoted)
        if number:
            other = quoted.replace(number[0], str(int(number[0]) + 1), 1)
            if other.lower() not in told.letter.lower():
                yield "the letter misquoted", sentence.replace(quoted, other)
        for one, two in (("up", "down"), ("round", "square"), ("has been", "has not been")):
            other = re.sub(rf"\b{one}\b", two, quoted)
            if other.lower() not in told.letter.lower():
                yield "the letter misquoted", sentence.replace(quoted, other)


KINDS: tuple[Kind, ...] = (
    valve_whatever,
    valve_assumed,
    branch_without_condition,
    others_of_that_age,
    every_valve_of_that_size,
    every_build_of_the_name,
    names_settled,
    unlisted_listed,
    unsettled_settled,
    rinse_by_main,
    misquoted,
)
