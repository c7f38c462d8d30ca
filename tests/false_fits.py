"""Composed answers made false in what fits: every false word proven by look-up in the CSV files.

Each function takes an answer and one of its sentences and yields what kind of falsehood it makes
and the false sentence. The truth comes from `demonstration`, never from the code under test.
"""

from __future__ import annotations

import random
import re
from collections.abc import Iterator

from composed import Told
from corrupting import transposed
from demonstration import PART_NO, builds, changes, fits, made_within, models, seals, span, verdicts

False_ = Iterator[tuple[str, str]]
_FITS = re.compile(r"\bfits? (?:the|it too)\b|^The seal for the |that is the set for ")
_NOT_PLAIN = ("does not fit", "wherever", "with this change", "could fit", "do not settle")
_AT = re.compile(r" at the (\w+) valve")
_YEARS = re.compile(
    r"made from (?P<a>\d{4}) to (?P<b>\d{4})|made since (?P<c>\d{4})|made up to (?P<d>\d{4})"
    r"|made in (?P<e>\d{4})"
)
_BULLET = re.compile(r"^- if (?P<condition>.+?), it takes \*\*(?P<part>PBK-\d{4})\*\*")
_FEW = 3  # of the many parts that could stand there


def says_fits(told: Told, sentence: str) -> bool:
    """Whether a sentence says of its parts that the toilet takes them unchanged."""
    plain = not any(words in sentence for words in _NOT_PLAIN)
    return bool(told.builds) and plain and bool(_FITS.search(sentence))


def position_of(told: Told, sentence: str, part_no: str) -> str:
    """Where a sentence puts a part: said beside it, at the end, or the only place there is."""
    beside = re.search(rf"{part_no}\*\*{_AT.pattern}", sentence) or _AT.search(sentence)
    return beside.group(1) if beside else told.positions[0]


def another_part(told: Told, sentence: str) -> False_:
    """A part that some build still possible does not take, in the place of one that all take."""
    if not says_fits(told, sentence):
        return
    chosen = random.Random(sentence)
    for part_no in PART_NO.findall(sentence):
        position = position_of(told, sentence, part_no)
        wrong = [p for p in seals() if not told.takes(p, position)]
        alike = {ruled.part_no for ruled in told.answer.ruled_out} & set(wrong)
        gone = [p for p in wrong if seals()[p]["status"] == "discontinued"]
        kinds = {
            "another part": chosen.sample(wrong, _FEW),
            "the look-alike that is ruled out": sorted(alike),
            "a part no longer made": chosen.sample(gone, 1),
            "digits transposed": [transposed(part_no)],
            "an unknown part": ["PBK-9141"],
        }
        for kind, others in kinds.items():
            for other in others:
                if not told.takes(other, position):
                    yield kind, sentence.replace(part_no, other)


def another_model(told: Told, sentence: str) -> False_:
    """A model none of whose builds takes the part."""
    if not says_fits(told, sentence):
        return
    parts = PART_NO.findall(sentence)
    mine = next((name for name in models() if f"the {name}" in sentence), "")
    takers = {b for p in parts for (b, _, q), v in verdicts().items() if q == p and v != "unknown"
              and v != "does not fit"}  # fmt: skip
    others = [m for m, ids in models().items() if m != mine and not takers & set(ids)]
    for other in random.Random(sentence).sample(others, _FEW) if mine else ():
        same_brand = other.split()[0] == mine.split()[0]
        yield (
            ("another model of the maker" if same_brand else "another maker's model"),
            (sentence.replace(mine, other)),
        )


def other_years(told: Told, sentence: str) -> False_:
    """Years in which a build was made that does not take the part; or none at all."""
    found = _YEARS.search(sentence)
    name = next((n for n in models() if told.builds and told.builds[0] in models()[n]), "")
    bullet = _BULLET.search(sentence)
    if not found or not name or not (bullet or says_fits(told, sentence)):
        return
    parts = PART_NO.findall(sentence)
    if not parts:
        return
    old = found.group()

    def wrong(first: int, last: int) -> bool:
        position = position_of(told, sentence, parts[0])
        ids = made_within(name, first, last)
        return any(not fits(parts[0], build, position) for build in ids)

    for build in models()[name]:
        first, last = span(build)
        if first < 1900 or last > 9000:
            continue
        for kind, words, ends in (
            ("another build's years", f"made from {first} to {last}", (first, last)),
            ("years made open", f"made since {first}", (first, 9999)),
            ("a year of another build", f"made in {last}", (last, last)),
        ):
            if words != old and wrong(*ends):
                yield kind, sentence.replace(old, words)
    if found["a"]:
        for first, last in ((int(found["a"]) - 1, found["b"]), (found["a"], int(found["b"]) + 1)):
            if wrong(int(first), int(last)):
                yield "years a year too wide", sentence.replace(old, f"made from {first} to {last}")
    if not bullet and any(not fits(parts[0], b, told.positions[0]) for b in models()[name]):
        yield "years dropped", sentence.replace(f" {old}", "", 1)


def turned(told: Told, sentence: str) -> False_:
    """'fits' for 'does not fit', and the other way round."""
    if not told.builds:
        return
    parts = PART_NO.findall(sentence)
    if "does not fit" in sentence and not any(told.takes(parts[0], p) for p in told.positions):
        yield "'not' dropped", re.sub("(but )?does not fit( either)?", "fits", sentence)
        for other in [told.main, *told.answer.also_fits][:2]:
            if other and any(told.takes(other, p) for p in told.positions):
                yield "a seal that fits, ruled out", sentence.replace(parts[0], other)
    if says_fits(told, sentence):
        if "The seal for the" in sentence:
            yield "'not' added", sentence.replace(" is **", " is not **")
        elif "** fits" in sentence or "** fit " in sentence:
            yield "'not' added", re.sub(r"\*\* fits? ", "** does not fit ", sentence)


def change_lost(told: Told, sentence: str) -> False_:
    """The change without which the seal does not fit, left out or turned into another."""
    found = re.search(r",? with this change: (?P<change>.+?)(?=[.;]|, and|$)", sentence)
    if not found:
        return
    part_no = PART_NO.findall(sentence)[-1]
    mine = {c for (_, _, part), c in changes().items() if part == part_no}
    if not mine or any(fits(part_no, b) for b in told.builds):
        return
    yield "change dropped", sentence.replace(found.group(), "")
    for other in sorted(set(changes().values()) - mine):
        yield "another seal's change", sentence.replace(found["change"], other)


def bullets(told: Told, sentence: str) -> False_:
    """In a list of conditions: a part that no build takes, another's part, no condition."""
    found = _BULLET.search(sentence)
    if not found or not told.builds:
        return
    part_no = found["part"]
    takers = {b for b in told.builds if fits(part_no, b, position_of(told, sentence, part_no))}
    for other in (part.part_no for part in told.answer.parts):
        other_takers = {b for b in told.builds if fits(other, b)}
        if takers and other_takers and not takers & other_takers:
            yield "another condition's part", sentence.replace(part_no, other)
    nobody = [p for p in seals() if not any(fits(p, b, at) for b in told.builds
                                            for at in told.positions)]  # fmt: skip
    for other in random.Random(sentence).sample(nobody, _FEW):
        yield "a part that fits under no condition", sentence.replace(part_no, other)
    if takers != set(told.builds):
        dropped = sentence.replace(f"if {found['condition']}, it takes", "it takes")
        yield "a list's condition dropped", dropped


def no_seal_known(told: Told, sentence: str) -> False_:
    """That no seal is known for a model all of whose builds have one."""
    found = re.match(r"We know no seal for the (?P<name>[A-Z][^.]+?)(?= made| with| in |\.)",
                     sentence)  # fmt: skip
    if not found or found["name"] not in models():
        return
    served = [
        name for name, ids in models().items() if all(any(fits(p, b) for p in seals()) for b in ids)
    ]
    for other in random.Random(sentence).sample(served, _FEW):
        yield "silence about a model that has a seal", f"We know no seal for the {other}."
    if told.builds and all(b in builds() for b in told.builds):
        said = sentence.replace("We know no seal for", "**PBK-6230** fits")
        if not told.takes("PBK-6230", "main"):
            yield "a seal where none is known", said


KINDS = (
    another_part, another_model, other_years, turned, change_lost, bullets, no_seal_known,
)  # fmt: skip
