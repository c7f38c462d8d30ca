"""Reasons, proofs and replacements that got hold of the wrong part."""

from __future__ import annotations

import re

from assistant.measuring.campaign.kinds.careless_said import (
    affirms,
    bold,
    denied,
    evidence,
    fits_everywhere,
    is_misfit,
    others_that_fit,
    parts_in,
    some,
)
from assistant.measuring.campaign.told import Falsehoods, Kind, Told

PROOFS = {
    "maker's sheet": "the maker's sheet says so",
    "tried at the bench": "we tried it at the bench",
    "customer's report": "a customer reported that",
}
# How a reason begins, and the column whose value it tells.
REASONS = (
    (r"its ears stand (\S+) mm", "ear_span_mm"),
    (r"its ears point (up|down)", "ears"),
    (r"its ring is made for a tube of (\S+) mm", "ring_mm"),
)


def _length(cell: str) -> str:
    return f"{float(cell):g}" if re.fullmatch(r"\d+(\.\d+)?", cell) else cell


def reason_of_another(told: Told, sentence: str) -> Falsehoods:
    """Two sentences merged: the right 'no' with the reason of the part beside it."""
    wrong, row = denied(sentence), told.truth.seals.get(denied(sentence))
    if row is None or ": " not in sentence:
        return
    reasons = set(re.findall(r"does not fit: ([^.]*(?:\.\d[^.]*)*)\.", told.text))
    for reason in sorted(reasons):
        for pattern, column in REASONS:
            said = re.match(pattern, reason)
            if said and row[column] and _length(row[column]) != said[1]:
                turned = re.sub(r": .*", f": {reason}.", sentence)
                yield "the reason of another part", turned
                if is_misfit(told, wrong):
                    yes = turned.replace("looks much the same but ", "")
                    yield "the reason of another part", yes.replace("does not fit", "fits")


def no_forgotten(told: Told, sentence: str) -> Falsehoods:
    """'Not' left out; 'but' made 'and'."""
    wrong = denied(sentence)
    if wrong and is_misfit(told, wrong):
        yield "a 'not' forgotten", sentence.replace("does not fit", "fits", 1)
        yield "a 'not' forgotten", sentence.replace("does not fit", "does fit", 1)
        if "looks much the same but" in sentence:
            short = re.sub(r"but does not fit.*", "and fits.", sentence)
            yield "a 'not' forgotten", short


def fit_denied(told: Told, sentence: str) -> Falsehoods:
    """A seal that fits, struck out."""
    parts = parts_in(sentence)
    if affirms(told, sentence) and all(fits_everywhere(told, part) for part in parts):
        if re.search(r"\bfits? (?:it|the)\b", sentence):
            no = "does not fit" if len(parts) == 1 else "do not fit"
            yield "a fit denied", re.sub(r"\bfits?\b", no, sentence, count=1)
        yield "a fit denied", f"{sentence} Do not take {bold(parts[-1])}, for it does not fit."


def none_other(told: Told, sentence: str) -> Falsehoods:
    """'Only', where others fit as well."""
    parts = parts_in(sentence)
    if not affirms(told, sentence) or len(parts) != 1 or not fits_everywhere(told, parts[0]):
        return
    if others_that_fit(told, parts[0]):
        part = bold(parts[0])
        yield "'only' put in", f"{sentence} It is the only seal that fits."
        yield "'only' put in", f"{sentence} No other seal than {part} fits this toilet."
        only = "Only" if sentence.startswith(part) else "only"
        yield "'only' put in", sentence.replace(part, f"{only} {part}", 1)


def proof_of_another_kind(told: Told, sentence: str) -> Falsehoods:
    """'We tried it' where only a sheet says so, and the like."""
    parts = parts_in(sentence)
    if len(parts) != 1 or not told.builds:
        return
    known = evidence(told, parts[0])
    for proof in PROOFS.values():
        if proof in sentence:
            for other in sorted({*PROOFS} - known):
                yield "evidence of another kind", sentence.replace(proof, PROOFS[other])
            return
    if affirms(told, sentence):
        for other in sorted({*PROOFS} - known):
            yield "evidence made up", f"{sentence[:-1]}; {PROOFS[other]}."


def chain_reversed(told: Told, sentence: str) -> Falsehoods:
    """The old number given as the new one."""
    parts = parts_in(sentence)
    if "takes the place of" not in sentence or len(parts) != 2:
        return
    new, old = parts
    if new in followers(told, old) and old not in followers(told, new):
        turned = sentence.replace(new, "\0").replace(old, new).replace("\0", old)
        yield "a replacement reversed", turned
        yield "a replacement reversed", f"{bold(old)} takes the place of {bold(new)}."
        yield "a replacement reversed", f"{bold(new)} was replaced by {bold(old)}."


def chain_astray(told: Told, sentence: str) -> Falsehoods:
    """Another part as the one that follows."""
    parts = parts_in(sentence)
    if "takes the place of" not in sentence or len(parts) != 2:
        return
    seals, (new, old) = told.truth.seals, parts
    if old not in seals or new not in seals:
        return
    alike = [
        p
        for p in seals
        if p not in {new, old, *followers(told, old)} and seals[p]["maker"] == seals[new]["maker"]
    ]
    for other in some(sentence, alike):
        yield "another part in its place", sentence.replace(new, other)


def followers(told: Told, part_no: str) -> list[str]:
    """The parts that took the place of this one, one after the other."""
    found: list[str] = []
    while (part_no := told.truth.seals[part_no]["replaced_by"]) and part_no not in found:
        found.append(part_no)
    return found


def no_longer_made(told: Told, sentence: str) -> Falsehoods:
    """A part out of production offered, or a living one called dead."""
    for part_no in parts_in(sentence)[:2]:
        row = told.truth.seals.get(part_no)
        if row is None:
            continue
        part = bold(part_no)
        if row["status"] == "discontinued":
            yield "a part out of production offered", f"{sentence} We still have {part} in stock."
            if "no longer made" in sentence:
                made = sentence.replace("is no longer made", "is still made")
                yield "a part out of production offered", made
        elif affirms(told, sentence) or "again" in sentence:
            yield "a living part called dead", f"{sentence} {part} is no longer made."


def covers_what_it_does_not(told: Told, sentence: str) -> Falsehoods:
    """A part said to close every valve of an old one, of which one is known to refuse it."""
    parts = parts_in(sentence)
    if len(parts) < 2 or parts[-1] not in told.truth.places:
        return
    if not re.search(r"every valve in our table|takes the place of", sentence):
        return
    seals, places = told.truth.seals, told.truth.places[parts[-1]]
    refused = [
        p
        for p in seals
        if p not in parts
        and seals[p]["style"] == seals[parts[-1]]["style"]
        and any(told.truth.verdicts.get((*place, p)) == "does not fit" for place in places)
    ]
    for other in some(sentence, refused):
        old = bold(parts[-1])
        yield "every valve, and it is not", f"{bold(other)} closes every valve that {old} fits."
        if "every valve in our table" in sentence:
            yield "every valve, and it is not", sentence.replace(parts[0], other)


def same_as(told: Told, sentence: str) -> Falsehoods:
    """Two seals called the same that differ in what matters."""
    wrong, seals = denied(sentence), told.truth.seals
    right = next((p.part_no for p in told.answer.parts if p.part_no in seals), "")
    if not wrong or not right or wrong not in seals or wrong == right:
        return
    differ = [
        c
        for c in ("style", "opening_in", "mount", "ear_span_mm", "ears", "ring_mm")
        if seals[wrong][c] and seals[right][c] and seals[wrong][c] != seals[right][c]
    ]
    if differ:
        one, two = bold(wrong), bold(right)
        yield "called the same", f"{one} is the same seal as {two} under another number."
        yield "called the same", f"{one} and {two} are one and the same."
        yield "called the same", f"There is no difference between {one} and {two} but the price."


def change_forgotten(told: Told, sentence: str) -> Falsehoods:
    """What has to be cut, bent or left out, forgotten or turned round."""
    parts = parts_in(sentence)
    if "with this change: " not in sentence or len(parts) != 1:
        return
    verdicts = {
        told.truth.verdicts.get((build, at, parts[0]))
        for build in told.builds
        for at in told.truth.valves[build]
    }
    if "fits" not in verdicts and "fits with change" in verdicts:
        bare = re.sub(r",? ?with this change: .*", "", sentence)
        yield "a change forgotten", f"{bare} as it comes out of the bag."
        yield "a change forgotten", f"{bare}, and nothing has to be altered."
    head, own = sentence.split("with this change: ")
    others = {change for change in told.truth.changes.values() if not _alike(change, own)}
    for other in some(sentence, sorted(others)):
        yield "another change", f"{head}with this change: {other}."


def _alike(change: str, other: str) -> bool:
    """Whether two changes may come to the same, such as two ways to use the old chain."""
    return bool({"old", "links", "beads", "seam", "ears"} & {*_words(change)} & {*_words(other)})


def _words(text: str) -> list[str]:
    return re.findall(r"[a-z]+", text)


KINDS: tuple[Kind, ...] = (
    reason_of_another,
    no_forgotten,
    fit_denied,
    none_other,
    proof_of_another_kind,
    chain_reversed,
    chain_astray,
    no_longer_made,
    covers_what_it_does_not,
    same_as,
    change_forgotten,
)
