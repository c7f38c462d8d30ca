"""The wrong part's number or name, written by somebody who had the right one before him."""

from __future__ import annotations

import re
from collections.abc import Callable
from difflib import SequenceMatcher

from assistant.measuring.campaign.kinds.careless_said import (
    affirms,
    bold,
    denied,
    fits_everywhere,
    is_misfit,
    model_meant,
    never_at,
    never_in,
    part_meant,
    parts_in,
    row_meant,
    some,
    tempting,
)
from assistant.measuring.campaign.told import Falsehoods, Kind, Told

DESCRIBES = re.compile(r"(?:^It|\*\*) is the ")
ALIKE = 0.8  # of two models' names: Orsavel and Orsaval


def _mistyped(part_no: str) -> list[str]:
    head, digits = part_no.split("-")
    swapped = {
        digits[:at] + digits[at + 1] + digits[at] + digits[at + 2 :]
        for at in range(len(digits) - 1)
    }
    near = {digits[:-1] + str((int(digits[-1]) + by) % 10) for by in (1, 9)}
    return [f"{head}-{slip}" for slip in sorted((swapped | near) - {digits})]


def mistyped_number(told: Told, sentence: str) -> Falsehoods:
    """Two digits swapped: no such part, or one that fits nowhere in this toilet."""
    if not affirms(told, sentence):
        return
    for part_no in parts_in(sentence)[:2]:
        slips = [s for s in _mistyped(part_no) if s not in told.truth.seals or is_misfit(told, s)]
        for slip in some(sentence, slips):
            yield "a number mistyped", sentence.replace(part_no, slip)


def number_from_the_next_row(told: Told, sentence: str) -> Falsehoods:
    """The number above or below it in the list."""
    listed = list(told.truth.seals)
    if affirms(told, sentence):
        for part_no in [p for p in parts_in(sentence) if p in told.truth.seals][:2]:
            at = listed.index(part_no)
            for other in (listed[at - 1], listed[(at + 1) % len(listed)]):
                if other != part_no and is_misfit(told, other):
                    yield "the number of the next row", sentence.replace(part_no, other)


def look_alike_for_part(told: Told, sentence: str) -> Falsehoods:
    """A seal that looks the same, in place of the right one."""
    if affirms(told, sentence):
        for part_no in some(sentence, parts_in(sentence), 1):
            for other in tempting(told, sentence):
                yield "a look-alike for the part", sentence.replace(part_no, other)


def part_of_other_years(told: Told, sentence: str) -> Falsehoods:
    """The part for the same name and other years."""
    model = model_meant(told, sentence)
    if model and affirms(told, sentence):
        yield from _fetched(told, sentence, "the part of other years", told.truth.models[model])


def part_of_a_namesake(told: Told, sentence: str) -> Falsehoods:
    """The part for another maker's toilet of that name, or of a name much like it."""
    model = model_meant(told, sentence)
    if model and affirms(told, sentence):
        for name in _namesakes(told, model):
            builds = told.truth.models[name]
            yield from _fetched(told, sentence, "the part of a namesake", builds)


def _fetched(told: Told, sentence: str, kind: str, builds: tuple[str, ...]) -> Falsehoods:
    """The sentence with a part that fits one of these builds and none that is meant."""
    there = {
        part_no
        for part_no, places in told.truth.places.items()
        if any(build in builds for build, _ in places)
    }
    for other in some(sentence, sorted(p for p in there if is_misfit(told, p))):
        yield kind, sentence.replace(parts_in(sentence)[0], other)


def _namesakes(told: Told, model: str) -> list[str]:
    own = {told.truth.builds[b]["model"] for b in told.truth.models[model]}.pop()
    return [
        name
        for name, builds in told.truth.models.items()
        if name != model
        and SequenceMatcher(None, told.truth.builds[builds[0]]["model"], own).ratio() >= ALIKE
    ]


def toilet_mistaken(told: Told, sentence: str) -> Falsehoods:
    """The right part said of another toilet: a namesake, or the maker's next model."""
    model, parts = model_meant(told, sentence), parts_in(sentence)
    if not model or model not in sentence or not affirms(told, sentence):
        return
    names = list(told.truth.models)
    at = names.index(model)
    near = [*_namesakes(told, model), names[at - 1], names[(at + 1) % len(names)]]
    for name in dict.fromkeys(near):
        if all(never_in(told.truth, part, told.truth.models[name]) for part in parts):
            yield "another toilet", sentence.replace(model, name)


def other_valve(told: Told, sentence: str) -> Falsehoods:
    """The part for the other valve of a tank with two seals."""
    if not affirms(told, sentence) or "rinse" not in told.positions:
        return
    turned = re.sub(
        r"\b(main|rinse) valve",
        lambda found: ("rinse" if found[1] == "main" else "main") + " valve",
        sentence,
    )
    if turned == sentence:
        return
    if any(never_at(told, part, at) for part, at in _placed(turned)):
        yield "the other valve", turned
    for part, at in _placed(turned):
        if never_at(told, part, at):
            yield "one seal for both valves", f"{sentence} {bold(part)} serves both valves."
            yield "one seal for both valves", f"{sentence} The {at} valve takes {bold(part)} too."


def _placed(sentence: str) -> list[tuple[str, str]]:
    """Each part with the valve that is named after it."""
    places = list(re.finditer(r"\b(main|rinse) valve", sentence))
    found = []
    for part in re.finditer(r"PBK-\d{4}", sentence):
        at = next((p[1] for p in places if p.start() > part.end()), places[-1][1])
        found.append((part[0], at))
    return found


def described_as_another(column: str, name: str) -> Kind:
    """A kind that gives a seal the name, the maker or the style of another."""

    def kind(told: Told, sentence: str) -> Falsehoods:
        row = row_meant(told, sentence)
        if row is None or not row[column] or not DESCRIBES.search(sentence):
            return
        words = _in_words(told, column)
        own = words(row[column])
        others = {words(r[column]) for r in told.truth.seals.values()} - {own, ""}
        if own and (found := re.search(rf"\b{re.escape(own)}(?!\w)", sentence)):
            for other in some(sentence, sorted(others)):
                if own not in other and other not in sentence:
                    yield name, sentence[: found.start()] + other + sentence[found.end() :]

    return kind


def _in_words(told: Told, column: str) -> Callable[[str], str]:
    styles = {row["style"]: row["plain_name"] for row in told.truth.rows("styles")}
    return (lambda cell: styles.get(cell, "")) if column == "style" else (lambda cell: cell)


def pronoun_astray(told: Told, sentence: str) -> Falsehoods:
    """'It' said of the part that was ruled out just before."""
    wrong = denied(sentence)
    if wrong and is_misfit(told, wrong) and told.main and fits_everywhere(told, told.main):
        yield "a pronoun astray", f"{sentence} It fits where {bold(told.main)} fits."
        yield "a pronoun astray", f"{sentence} Order it before noon and it goes on all the same."


def next_part_described(told: Told, sentence: str) -> Falsehoods:
    """The description of one part under the number of another."""
    row = row_meant(told, sentence)
    if row is None or not re.match(r"It is the ", sentence):
        return
    seals = told.truth.seals
    for other in some(sentence, [p for p in parts_in(told.text) if p != row["part_no"]], 2):
        if other in seals and seals[other]["name"] != row["name"]:
            yield "another part described", bold(other) + sentence[2:]


def maker_of_the_part(told: Told, sentence: str) -> Falsehoods:
    """A compatible part called the maker's own, or the maker's own called compatible."""
    row = row_meant(told, sentence)
    if row is None or not DESCRIBES.search(sentence):
        return
    part = bold(part_meant(told, sentence))
    makers = {told.truth.builds[build]["brand"] for build in told.builds}
    if row["genuine"] == "no":
        yield "called the maker's own", f"{sentence} {part} is the toilet maker's own part."
        yield "called the maker's own", f"{sentence} It is genuine, and no copy."
    elif row["genuine"] == "yes" and makers == {row["maker"]}:
        yield "called a copy", f"{sentence} {part} is a compatible part, not the maker's own."


KINDS: tuple[Kind, ...] = (
    mistyped_number,
    number_from_the_next_row,
    look_alike_for_part,
    part_of_other_years,
    part_of_a_namesake,
    toilet_mistaken,
    other_valve,
    described_as_another("name", "the name of another seal"),
    described_as_another("maker", "another maker"),
    described_as_another("style", "another style"),
    pronoun_astray,
    next_part_described,
    maker_of_the_part,
)
