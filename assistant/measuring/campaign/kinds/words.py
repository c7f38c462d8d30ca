"""What a seal is made false: its style, size, ears, lengths; what it replaces; how many."""

from __future__ import annotations

import random
import re

from assistant.measuring.campaign.kinds.meaning import put, transposed
from assistant.measuring.campaign.told import Falsehoods, Told
from assistant.measuring.campaign.truth import Truth

_IS = re.compile(
    r"^(?:It|\*\*(?P<part>[^*]+)\*\*) is (?:the (?P<name>.+?), )?an? (?P<style>[^,]+?)"
    r" for a (?P<size>[\d/ ]+) in opening"
)
_SIZES = ("2", "2 1/2", "3", "3 1/4", "4")
_SOURCES = {
    "we tried it at the bench": "tried at the bench", "it was tried at the bench":
    "tried at the bench", "the maker's sheet says so": "maker's sheet", "a customer reported so":
    "customer's report",
}  # fmt: skip
_COUNTS = (("one", "1"), ("two", "2"), ("three", "3"))
_FEW = 3


def what_it_is(told: Told, sentence: str) -> Falsehoods:
    """Another style, size, way of the ears or width than the seal's own row has."""
    found = _IS.match(sentence)
    row = told.truth.seals.get((found and found["part"]) or told.main) if found else None
    if not found or row is None or found["name"] not in (None, row["name"]):
        return
    if not row["opening_in"] or _inches(found["size"]) != float(row["opening_in"]):
        return
    for size in _SIZES:
        if _inches(size) != float(row["opening_in"]):
            yield "another opening", sentence.replace(f"a {found['size']} in", f"a {size} in")
    yield "inches for millimetres", sentence.replace(f"{found['size']} in ", f"{found['size']} mm ")
    yield from _another_style(told.truth, sentence, found["style"], row["style"])
    for one, other in (("up", "down"), ("down", "up")):
        if f"point {one}" in sentence and row["ears"] == one:
            yield "ears turned over", sentence.replace(f"point {one}", f"point {other}")
    for length in re.findall(r"([\d.]+) mm", sentence):
        for near in _lengths(length, row["ear_span_mm"], row["ring_mm"]):
            yield "another length of the seal", sentence.replace(f"{length} mm", f"{near} mm")


def _another_style(truth: Truth, sentence: str, said: str, style: str) -> Falsehoods:
    styles = {row["style"]: row for row in truth.rows("styles")}
    if style not in styles:
        return
    mine = {*styles[style]["aliases"].split("; "), styles[style]["plain_name"]}
    others = [row["plain_name"] for row in styles.values()
              if not mine & {*row["aliases"].split("; "), row["plain_name"]}]  # fmt: skip
    for other in random.Random(sentence).sample(others, min(_FEW, len(others))):
        yield "another style", sentence.replace(f" {said} for a", f" {other} for a")


def why_not(told: Told, sentence: str) -> Falsehoods:
    """A reason against a seal whose lengths are not the rows'."""
    found = re.search(r"([\d.]+) mm apart, and the (?:\w+ )?valve's pegs ([\d.]+) mm", sentence)
    parts = told.truth.part_no.findall(sentence)
    if not found or not told.builds or not parts or len(told.positions) > 1:
        return
    ears, pegs = found.groups()
    for near in _lengths(ears, told.truth.seals[parts[0]]["ear_span_mm"]):
        changed = sentence.replace(f"{ears} mm apart", f"{near} mm apart")
        yield "another length in a reason", changed
    widths = {v["peg_span_mm"] for b in told.builds for v in told.truth.valves[b].values()}
    if len(widths) == 1:
        for near in _lengths(pegs, *widths):
            changed = sentence.replace(f"pegs {pegs} mm", f"pegs {near} mm")
            yield "another width of the pegs", changed
    if ears != pegs:
        swapped = sentence.replace(f"{ears} mm apart", "@").replace(f"pegs {pegs}", f"pegs {ears}")
        yield "seal and valve exchanged", swapped.replace("@", f"{pegs} mm apart")


def where_from(told: Told, sentence: str) -> Falsehoods:
    """A source that no row of evidence on the toilet's valves bears out."""
    parts = told.truth.part_no.findall(sentence)
    said = next((words for words in _SOURCES if words in sentence), "")
    if not said or not told.builds or not parts:
        return
    valves = {v["valve"] for b in told.builds for v in told.truth.valves[b].values()}
    about = [row for row in told.truth.rows("fitment") if row["part_no"] == parts[0]
             and (row["valve"] in valves or row["build"] in told.builds)]  # fmt: skip
    for words, kind in _SOURCES.items():
        if not any(row["kind"] == kind for row in about):
            yield "another source", sentence.replace(said, words)


def old_number(told: Told, sentence: str) -> Falsehoods:
    """A seal that replaces, or fits wherever, one of which it does not."""
    truth, parts = told.truth, told.truth.part_no.findall(sentence)
    if len(parts) < 2:  # the new one and the old one
        return
    new, old = parts[0], parts[-1]
    others = [p for p in truth.seals if p not in parts]
    if "takes the place of" in sentence:
        for other in random.Random(sentence).sample(others, min(_FEW, len(others))):
            if not _replaces(truth, new, other):
                yield "replaces another", put(sentence, old, other)
        if not _replaces(truth, transposed(new), old):
            yield "replaced by transposed digits", put(sentence, new, transposed(new))
    if "wherever" in sentence or "every valve" in sentence:
        narrow = [p for p in others if truth.places[p] - truth.places[new]]
        for other in random.Random(sentence).sample(narrow, min(_FEW, len(narrow))):
            yield "wherever another does", put(sentence, old, other)


def how_many(told: Told, sentence: str) -> Falsehoods:
    """Another count of seals for the valve, or in the bag."""
    if found := re.match(r"The valve takes (\w+) of ", sentence):
        needed = {
            row["seals_needed"]
            for row in told.truth.rows("build_valves")
            if row["build"] in told.builds
        }
        for words, count in _COUNTS:
            if needed - {""} and count not in needed:
                yield "another count", sentence.replace(found.group(1), words)
    parts = told.truth.part_no.findall(sentence)
    if parts and (found := re.search(r"comes in packs of (\d+)", sentence)):
        for pack in sorted({"2", "3", "6"} - {told.truth.seals[parts[0]]["pack"]}):
            yield "another pack", sentence.replace(f"packs of {found.group(1)}", f"packs of {pack}")


def made_then(told: Told, sentence: str) -> Falsehoods:
    """That a model was made when none of its builds was."""
    found = re.search(r"was made (?:from|since) (\d{4})", sentence)
    models = told.truth.models_in(sentence)
    if found and models:
        earlier = int(found.group(1)) - 7
        if not any(told.truth.made_within(model, earlier, earlier) for model in models):
            yield "made when it was not", sentence.replace(found.group(1), str(earlier), 1)


def _inches(size: str) -> float:
    whole, _, part = size.partition(" ")
    top, _, bottom = part.partition("/")
    return float(whole) + (int(top) / int(bottom) if part else 0)


def _lengths(said: str, *true: str) -> list[str]:
    """Other lengths near one that is said: a little more, digits exchanged."""
    near = {f"{float(said) + 1:g}", f"{float(said) - 6:g}", f"{said[1:2]}{said[:1]}{said[2:]}"}
    known = {float(length) for length in true if length}
    return sorted(n for n in near if n.strip(".") and float(n) > 0 and float(n) not in known)


def _replaces(truth: Truth, new: str, old: str) -> bool:
    seen: set[str] = set()
    while old in truth.seals and old not in seen:
        seen.add(old)
        old = truth.seals[old]["replaced_by"]
        if old == new:
            return True
    return False


KINDS = (what_it_is, why_not, where_from, old_number, how_many, made_then)
