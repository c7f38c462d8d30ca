"""What fits made false: another part, another model, other years, 'not' dropped or added."""

from __future__ import annotations

import random
import re

from assistant.measuring.campaign.kinds.meaning import (
    YEARS,
    meant,
    narrowed,
    positions_of,
    put,
    says_fits,
    takes,
    transposed,
    unheard_of,
)
from assistant.measuring.campaign.told import Falsehoods, Told
from assistant.measuring.campaign.truth import LATEST

_FEW = 3  # of the many that could stand there
_WORTH_TELLING = range(1900, 2100)  # years of a build that are known


def another_part(told: Told, sentence: str) -> Falsehoods:
    """A part that some build still possible does not take, in the place of one that all take."""
    builds = meant(told, sentence)
    if not says_fits(told, sentence) or not builds:
        return
    truth, chosen = told.truth, random.Random(sentence)
    for part_no in dict.fromkeys(truth.part_no.findall(sentence)):
        places = positions_of(told, sentence, part_no)
        wrong = [p for p in truth.seals if not takes(told, p, builds, places)]
        alike = {ruled.part_no for ruled in told.answer.ruled_out} & set(wrong)
        gone = [p for p in wrong if truth.seals[p]["status"] == "discontinued"]
        kinds = {
            "another part": chosen.sample(wrong, min(_FEW, len(wrong))),
            "the look-alike that is ruled out": sorted(alike)[:_FEW],
            "a part no longer made": chosen.sample(gone, min(1, len(gone))),
            "digits transposed": [transposed(part_no)],
            "an unknown part": [unheard_of(truth, part_no)],
        }
        for kind, others in kinds.items():
            for other in others:
                if not takes(told, other, builds, places):
                    yield kind, put(sentence, part_no, other)


def another_model(told: Told, sentence: str) -> Falsehoods:
    """A model none of whose builds takes the part, changed or unchanged."""
    truth = told.truth
    mine = next((name for name in truth.models_in(sentence) if f"the {name}" in sentence), "")
    if not says_fits(told, sentence) or not mine:
        return
    parts = truth.part_no.findall(sentence)
    takers = {build for (build, _, part_no), verdict in truth.verdicts.items()
              if part_no in parts and verdict in ("fits", "fits with change")}  # fmt: skip
    others = [m for m, ids in truth.models.items() if m != mine and not takers & set(ids)]
    for other in random.Random(sentence).sample(others, min(_FEW, len(others))):
        same = truth.builds[truth.models[other][0]]["brand"] in mine
        kind = "another model of the maker" if same else "another maker's model"
        yield kind, put(sentence, mine, other)


def other_years(told: Told, sentence: str) -> Falsehoods:
    """Years in which a build was made that does not take the part; or none at all."""
    truth = told.truth
    found, parts = YEARS.search(sentence), truth.part_no.findall(sentence)
    bullet = sentence.startswith("- if ") and "with this change" not in sentence
    if not found or not parts or not told.builds or not (bullet or says_fits(told, sentence)):
        return
    name, old = truth.name_of(told.builds[0]), found.group()
    if {truth.name_of(build) for build in told.builds} != {name}:
        return
    places = positions_of(told, sentence, parts[0])
    pieces = {truth.builds[build]["pieces"] for build in told.builds}

    def wrong(first: int, last: int) -> bool:
        ids = narrowed(truth, truth.made_within(name, first, last), sentence)
        if bullet:  # what stands before the list may have said how many pieces
            ids = tuple(b for b in ids if truth.builds[b]["pieces"] in pieces)
        return bool(ids) and not takes(told, parts[0], ids, places)

    for build in truth.models[name]:
        first, last = truth.span(build)
        if first not in _WORTH_TELLING or last not in _WORTH_TELLING:
            continue
        for kind, words, ends in (
            ("another build's years", f"made from {first} to {last}", (first, last)),
            ("years made open", f"made since {first}", (first, LATEST)),
            ("a year of another build", f"made in {last}", (last, last)),
        ):
            if words != old and wrong(*ends):
                yield kind, sentence.replace(old, words)
    if found["a"]:
        a, b = int(found["a"]), int(found["b"])
        for first, last in ((a - 1, b), (a, b + 1)):
            if wrong(first, last):
                yield "years a year too wide", sentence.replace(old, f"made from {first} to {last}")
    if not bullet and wrong(0, LATEST):
        yield "years dropped", re.sub(rf",? {re.escape(old)}", "", sentence, count=1)


def turned(told: Told, sentence: str) -> Falsehoods:
    """'fits' for 'does not fit', and the other way round."""
    truth, builds = told.truth, meant(told, sentence)
    parts = truth.part_no.findall(sentence)
    if not builds or not parts:
        return
    if "does not fit" in sentence:
        places = positions_of(told, sentence, parts[0])
        if not takes(told, parts[0], builds, told.positions):
            yield "'not' dropped", re.sub("(but )?does not fit( either)?", "fits", sentence)
        for other in [told.main, *told.answer.also_fits][:2]:
            if other and all(truth.fits_all(other, builds, at) for at in places):
                yield "a seal that fits, ruled out", put(sentence, parts[0], other)
        return
    fitting = all(
        any(truth.fits_all(part_no, builds, at) for at in positions_of(told, sentence, part_no))
        for part_no in parts
    )
    if says_fits(told, sentence) and fitting:
        if "The seal for the" in sentence:
            yield "'not' added", sentence.replace(" is **", " is not **")
        elif "** fits" in sentence or "** fit " in sentence:
            yield "'not' added", re.sub(r"\*\* fits? ", "** does not fit ", sentence)


def no_seal_known(told: Told, sentence: str) -> Falsehoods:
    """That no seal is known for a model all of whose builds have one."""
    truth, models = told.truth, told.truth.models_in(sentence)
    if not sentence.startswith("We know no seal for the") or not models:
        return
    living = [p for p, row in truth.seals.items() if row["status"] != "discontinued"]
    served = [
        name
        for name, ids in truth.models.items()
        if all(any(truth.fits(p, build) for p in living) for build in ids)
    ]
    for other in random.Random(sentence).sample(served, min(_FEW, len(served))):
        yield "silence about a model that has a seal", f"We know no seal for the {other}."
    nobody = [p for p in living if not takes(told, p, told.builds, told.positions)]
    if told.builds and nobody:
        said = f"**{random.Random(sentence).choice(nobody)}** fits"
        yield "a seal where none is known", sentence.replace("We know no seal for", said)


KINDS = (another_part, another_model, other_years, turned, no_seal_known)
