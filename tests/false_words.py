"""Composed answers made false in what a seal is, what it costs, and what else is said of it."""

from __future__ import annotations

import random
import re
from collections.abc import Iterator
from decimal import Decimal
from functools import cache

from composed import Told
from corrupting import EMPTY_PROMISES, RESERVED, Corrupted, transposed
from demonstration import FOLDER, PART_NO, places_of, rows, seals, valves_of
from false_fits import KINDS as ABOUT_FITTING
from false_fits import False_

_IS = re.compile(r"^It is an? (?P<style>.+?) for a (?P<size>[\d/ ]+) in opening")
_SIZES = ("2", "2 1/2", "3", "3 1/4", "4")
_STATES = {"in stock": ("to order", "out of stock"), "to order": ("in stock",),
           "out of stock": ("in stock",)}  # fmt: skip
_SOURCES = {
    "we tried it at the bench": "tried at the bench", "it was tried at the bench":
    "tried at the bench", "the maker's sheet says so": "maker's sheet", "a customer reported so":
    "customer's report",
}  # fmt: skip
_WORDS = (
    ("off", "on"), ("before", "after"), ("below", "above"), ("out of", "into"), ("new", "old"),
    ("flat", "upright"), ("nothing", "everything"), ("bright", "dull"), ("wide", "narrow"),
)  # fmt: skip


def what_it_is(told: Told, sentence: str) -> False_:
    """Another style, size, way of the ears or width than the seal's own row has."""
    found = _IS.match(sentence)
    if not found or not told.main:
        return
    row = seals()[told.main]
    for size in _SIZES:
        if _inches(size) != float(row["opening_in"]):
            yield "another opening", sentence.replace(f"a {found['size']} in", f"a {size} in")
    yield "inches for millimetres", sentence.replace(f"{found['size']} in ", f"{found['size']} mm ")
    mine = next(s for s in rows("styles") if s["style"] == row["style"])
    for style in rows("styles"):
        if not {*style["aliases"].split("; ")} & {*mine["aliases"].split("; ")}:
            yield "another style", sentence.replace(found["style"], style["plain_name"])
    for one, other in (("up", "down"), ("down", "up")):
        if f"point {one}" in sentence and row["ears"] == one:
            yield "ears turned over", sentence.replace(f"point {one}", f"point {other}")
    for length in re.findall(r"([\d.]+) mm", sentence):
        for other in _lengths(length, row["ear_span_mm"] or row["ring_mm"]):
            yield "another length of the seal", sentence.replace(f"{length} mm", f"{other} mm")


def why_not(told: Told, sentence: str) -> False_:
    """A reason against a seal whose lengths are not the rows'."""
    found = re.search(r"([\d.]+) mm apart, and the (?:\w+ )?valve's pegs ([\d.]+) mm", sentence)
    parts = PART_NO.findall(sentence)
    if not found or not told.builds or len(told.positions) > 1:
        return
    ears, pegs = found.groups()
    for other in _lengths(ears, seals()[parts[0]]["ear_span_mm"]):
        yield (
            "another length in a reason",
            sentence.replace(f"{ears} mm apart", f"{other} mm apart"),
        )
    widths = {v["peg_span_mm"] for b in told.builds for v in valves_of(b).values()}
    if len(widths) == 1:
        for other in _lengths(pegs, min(widths)):
            yield (
                "another width of the pegs",
                sentence.replace(f"pegs {pegs} mm", f"pegs {other} mm"),
            )
    if ears != pegs:
        swapped = sentence.replace(f"{ears} mm apart", "@").replace(f"pegs {pegs}", f"pegs {ears}")
        yield "seal and valve exchanged", swapped.replace("@", f"{pegs} mm apart")


def where_from(told: Told, sentence: str) -> False_:
    """A source that no row of evidence on the toilet's valves bears out."""
    parts = PART_NO.findall(sentence)
    said = next((words for words in _SOURCES if words in sentence), "")
    if not said or not told.builds or not parts:
        return
    valves = {v["valve"] for b in told.builds for v in valves_of(b).values()}
    about = [r for r in rows("fitment") if r["part_no"] == parts[0]
             and (r["valve"] in valves or r["build"] in told.builds)]  # fmt: skip
    for words, kind in _SOURCES.items():
        if not any(r["kind"] == kind for r in about):
            yield "another source", sentence.replace(said, words)


def shelf(told: Told, sentence: str) -> False_:
    """Another price, or another state of the shelf."""
    found = re.match(r"\*\*(PBK-\d{4})\*\* costs \$(?P<price>[\d.]+) and is (?P<state>[^.]+)\.",
                     sentence)  # fmt: skip
    if not found:
        return
    row = seals()[found.group(1)]
    for state in _STATES[found["state"]]:
        yield "another state of the shelf", sentence.replace(found["state"], state)
    price = Decimal(row["price"])
    for kind, other in (
        ("another price", price + 1), ("another price", price - Decimal("0.10")),
        ("the cost for the price", Decimal(row["cost"])), ("a point misplaced", price * 10),
    ):  # fmt: skip
        yield kind, sentence.replace(f"${found['price']}", f"${other:.2f}")
    dearer = [p for p in seals() if seals()[p]["price"] not in ("", row["price"])]
    yield (
        "another seal's price",
        sentence.replace(found.group(1), random.Random(sentence).choice(dearer)),
    )


def back_room(told: Told, sentence: str) -> False_:
    """Another count or cost than the row has."""
    found = re.match(r"For the counter: (PBK-\d{4}): (\d+) on hand, it costs us \$(\d+\.\d\d)",
                     sentence)  # fmt: skip
    if found:
        on_hand, cost = found.group(2), found.group(3)
        more = str(int(on_hand) + 3)
        yield "another count on hand", sentence.replace(f"{on_hand} on", f"{more} on")
        yield "another cost", sentence.replace(f"${cost}", f"${Decimal(cost) + 1:.2f}")


def old_number(told: Told, sentence: str) -> False_:
    """A seal that replaces, or fits wherever, one of which it does not."""
    parts = PART_NO.findall(sentence)
    if len(parts) < 2:
        return
    new, old = parts[0], parts[-1]
    others = [p for p in seals() if p not in (new, old)]
    if "takes the place of" in sentence:
        for other in random.Random(sentence).sample(others, 3):
            if not _replaces(new, other):
                yield "replaces another", sentence.replace(old, other)
        yield "replaced by transposed digits", sentence.replace(new, transposed(new))
    if "wherever" in sentence or "closes every valve" in sentence:
        narrow = [p for p in others if places_of(p) - places_of(new)]
        for other in random.Random(sentence).sample(narrow, 3):
            yield "wherever another does", sentence.replace(old, other)


def how_many(told: Told, sentence: str) -> False_:
    """Another count of seals for the valve, or in the bag."""
    if found := re.match(r"The valve takes (\w+) of ", sentence):
        needed = {r["seals_needed"] for r in rows("build_valves") if r["build"] in told.builds}
        for words, count in (("one", "1"), ("two", "2"), ("three", "3")):
            if needed and count not in needed:
                yield "another count", sentence.replace(found.group(1), words)
    if found := re.search(r"comes in packs of (\d+)", sentence):
        for pack in {"2", "3", "6"} - {seals()[PART_NO.findall(sentence)[0]]["pack"]}:
            yield "another pack", sentence.replace(f"packs of {found.group(1)}", f"packs of {pack}")


def made_then(told: Told, sentence: str) -> False_:
    """That a model was made when it was not."""
    if found := re.search(r"was made (?:from|up to|since) (\d{4})", sentence):
        year = found.group(1)
        yield "made when it was not", sentence.replace(year, str(int(year) - 7), 1)


def note_altered(told: Told, sentence: str) -> False_:
    """A general sentence with one word turned, which no note or table has."""
    if PART_NO.search(sentence) or not _is_general(sentence):
        return
    for word, other in _WORDS:
        altered = re.sub(rf"\b{word}\b", other, sentence, count=1)
        if altered != sentence and not _is_general(altered):
            yield "a note altered", altered


def quote_altered(told: Told, sentence: str) -> False_:
    """Words in quotation marks that the letter does not have."""
    for quoted in re.findall(r'"([^"]+)"', sentence):
        for other in ("77 mm", "Q 999", "never touched"):
            if other not in told.letter:
                yield "words never written", sentence.replace(f'"{quoted}"', f'"{other}"')


ABOUT_SEALS = (
    what_it_is, why_not, where_from, shelf, back_room, old_number, how_many, made_then,
    note_altered, quote_altered,
)  # fmt: skip


def sentences(text: str) -> list[str]:
    """The sentences of an answer; a mark such as 'No. 7' ends none."""
    return [s for s in re.split(r"(?<=[.?!])(?<!No\.) +|\n+", text) if s.strip()]


def corrupted(told: Told) -> Iterator[Corrupted]:
    """Every false answer that one composed answer gives rise to."""
    claims = _without_notes(told.text)
    for sentence in sentences(told.text):
        for make in (*ABOUT_FITTING, *ABOUT_SEALS):
            for kind, false in make(told, sentence):
                if false != sentence:
                    whole = claims if sentence in claims else told.text
                    text = whole.replace(sentence, false, 1)
                    yield Corrupted(kind, text, false.removeprefix("- "), told.audience)
    yield from _of_the_whole(told)


def _of_the_whole(told: Told) -> Iterator[Corrupted]:
    claims = _without_notes(told.text)
    for promise in EMPTY_PROMISES:
        yield Corrupted("a promise added", f"{claims}\n\n{promise}", promise, told.audience)
    if not told.main:
        return
    for sentence in sentences(told.text):
        bare = RESERVED.sub("", sentence)
        if bare != sentence and "original" not in bare:
            text = RESERVED.sub("", told.text)
            yield Corrupted("reservation dropped", text, bare, told.audience)
    row = seals()[told.main]
    if told.audience == "customers" and row["on_hand"]:
        for secret in (
            f"For the counter: {told.main}: {row['on_hand']} on hand, it costs us ${row['cost']}.",
            f"**{told.main}** costs us ${row['cost']}.", f"We have {row['on_hand']} on hand.",
        ):  # fmt: skip
            text = f"{claims}\n\n{secret}"
            yield Corrupted("staff's own, for customers", text, secret, "customers")


@cache
def _general() -> frozenset[str]:
    """Every sentence of the notes and of the tables of questions and causes."""
    notes = [p.read_text(encoding="utf-8") for p in (FOLDER / "knowledge" / "notes").glob("*.md")]
    cells = [cell for table in ("questions", "causes") for r in rows(table) for cell in r.values()]
    cells.append((FOLDER / "knowledge" / "shop.toml").read_text(encoding="utf-8"))
    return frozenset(" ".join(s.split()) for text in (*notes, *cells) for s in sentences(text))


@cache
def _without_notes(text: str) -> str:
    """The answer without the paragraphs that only quote notes: they are checked on their own."""
    paragraphs = text.split("\n\n")
    kept = [p for p in paragraphs if not all(_is_general(s) for s in sentences(p))]
    return "\n\n".join(kept)


def _is_general(sentence: str) -> bool:
    return " ".join(sentence.split()) in _general()


def _inches(size: str) -> float:
    whole, _, part = size.partition(" ")
    top, _, bottom = part.partition("/")
    return float(whole) + (int(top) / int(bottom) if part else 0)


def _lengths(said: str, true: str) -> list[str]:
    """Other lengths near one that is said: a little more, digits exchanged."""
    near = {f"{float(said) + 1:g}", f"{float(said) - 6:g}", f"{said[1:2]}{said[:1]}{said[2:]}"}
    return sorted(n for n in near if n.strip(".") and float(n) != float(true or 0))


def _replaces(new: str, old: str) -> bool:
    seen: set[str] = set()
    while old and old not in seen:
        seen.add(old)
        old = seals()[old]["replaced_by"]
        if old == new:
            return True
    return False
