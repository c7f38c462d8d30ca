"""True answers pass untouched; every false word put into them is caught.

Whether a changed answer is false is decided by `checking_truth`, from tables written out by
hand; changes that happen to stay true are not counted.
"""

from __future__ import annotations

import random
import re
from collections import Counter
from collections.abc import Iterator
from itertools import pairwise
from typing import Literal

import pytest
from checking_answers import ANSWERS, LETTER, NOTE, SLOT, Answer, Said
from checking_tables import SEALS, TABLES
from checking_truth import holds

from assistant.answers.check import Checked, Statement, check
from assistant.measuring.campaign.corruption import EMPTY_PROMISES, RESERVED, Corrupted, plain
from assistant.measuring.campaign.kinds.meaning import transposed

STATEMENTS = (Statement(NOTE, "safety.md:4"),)

OTHER_WORDS = {
    "model": ("Zendrake Tolver", "Zendrake Tolvern", "Hulmorth Tolver", "Hulmorth Quisten",
              "Hulmorth Braskel", "Zendrake Ovellan", "Zendrake Dimmock Vale", "Zendrake Pallowick",
              "Zendrake Tolvor"),
    "years": ("made from 1971 to 1985", "made from 1986 to 1993", "made from 1986 to 1994",
              "made since 1994", "made since 1995", "made up to 1993", "made up to 1990",
              "made in 1965", "made in 1992", "made from 1991 to 2004", "made from 1987 to 1993"),
    "year": ("1990", "1994", "1986", "2004"),
    "money": ("$6.40", "$4.90", "$8.95", "$6.04", "$2.10", "$64.00", "$6.45"),
    "stock": ("in stock", "to order", "no longer made"),
    "size": ("2 in", "3 in", "2 1/2 in", "2 mm", "3 mm"),
    "span": ("95 mm", "108 mm", "94 mm", "59 mm", "95 in", "28 mm", "27 mm"),
    "point": ("up", "down"),
    "count": ("two", "three", "2", "3"),
    "position": ("main", "rinse"),
    "number": ("20-417", "20-198", "NB44", "20-471"),
    "genuine": ("genuine", "compatible"),
    "maker": ("Zendrake", "Norbeck Rubber", "Hulmorth"),
    "colour": ("red", "black", "blue", "green"),
    "material": ("silicone", "rubber"),
    "float": ("a", "no"),
    "style": ("ring flapper", "flapper on pegs", "tank ball", "canister seal"),
    "volume": ("3.5 to 5 gallons", "1.6 to 5 gallons", "3.5 to 6 gallons", "1.6 gallons"),
    "gallons": ("1.6 gallons", "3.5 gallons", "1.1 gallons", "6.1 gallons"),
    "kind": ("pressure-assisted", "dual-flush", "gravity"),
    "pieces": ("one-piece", "two-piece"),
    "mark": ("4102", "4103", "4120"),
    "quote": ("Zendrak tolver", "3 inch", "95 mm", "2 inches"),
}  # fmt: skip

# A change of words, and what it makes of the claims of its sentence.
TURNED = (
    ("'not' dropped", " does not fit", " fits", ("not", "fits")),
    ("'not' dropped", "will not seal", "will seal", ("not", "fits")),
    ("'not' dropped", "Do not take", "Take", ("not", "fits")),
    ("'not' dropped", "was not", "was", ("not-made", "made")),
    ("'not' added", " fits ", " does not fit ", ("fits", "not")),
    ("'not' added", " takes ", " does not take ", ("fits", "not")),
    ("'not' added", " is the right seal", " is not the right seal", ("fits", "not")),
    ("'could' to 'fits'", "could fit", "fits", ("could", "fits")),
    ("measurements unsaid", ", going by the measurements alone", "", ("could", "never")),
    ("'some' to 'all'", "Some ", "All ", ("some", "all")),
    ("change dropped", ", with this change: cut the ring off at the mark", "", ("changed", "fits")),
    ("change altered", "cut the ring off", "cut the ear off", ("changed", "never")),
    (
        "silence to 'fits'",
        "The tables do not say whether SL-2080 fits",
        "SL-2080 fits",
        ("unsaid", "fits"),
    ),
)
PROMISES = (
    *EMPTY_PROMISES, "SL-9999 fits it too.", "It also fits the Zendrake Tolvania.",
    "Is SL-2046 not the right seal for it?",
)  # fmt: skip


def examine(text: str, audience: Literal["staff", "customers"] = "staff") -> Checked:
    """What the checker makes of an answer."""
    return check(text, TABLES, audience=audience, statements=STATEMENTS, message=LETTER)


def slots(template: str) -> dict[str, str]:
    """The words in a sentence's slots: part, part2, ..."""
    found: dict[str, str] = {"": ""}
    for kind, value in SLOT.findall(template):
        name = kind
        while name in found:
            name = f"{kind}{int(name.removeprefix(kind) or 1) + 1}"
        found[name] = value
    return found


def is_true(claims: str, words: dict[str, str]) -> bool:
    """Whether all the claims of a sentence hold."""
    return all(
        "never" not in claim.split() and holds(claim, words)
        for claim in claims.split(";")
        if claim.strip()
    )


def other_words(kind: str, value: str) -> Iterator[tuple[str, str]]:
    """What else could stand in a slot, and what kind of corruption that is."""
    if kind == "part":
        yield from (("another part", part) for part in SEALS if part != value)
        if transposed(value) != value:
            yield "digits transposed", transposed(value)
        yield "unknown part", "SL-9041"
        return
    for word in OTHER_WORDS[kind]:
        if word != value:
            yield (
                (f"{kind} unit" if kind in ("size", "span") and word[-2:] != value[-2:] else kind),
                word,
            )


def put(answer: Answer, at: int, sentence: str) -> str:
    """The answer with another sentence in a place."""
    return "".join(
        s.joins + (sentence if n == at else s.text) for n, s in enumerate(answer.said)
    ).strip()


def corrupted(answer: Answer) -> Iterator[Corrupted]:
    """Every way of making one sentence of an answer false."""
    for at, said in enumerate(answer.said):
        yield from _by_slots(answer, at, said)
        yield from _turned(answer, at, said)
    yield from _of_the_whole(answer)
    for promise in PROMISES:
        yield Corrupted("a promise added", f"{answer.text} {promise}", promise)


def _by_slots(answer: Answer, at: int, said: Said) -> Iterator[Corrupted]:
    found = list(SLOT.finditer(said.template))
    for match in found:
        kind, value = match.groups()
        for name, word in other_words(kind, value):
            template = (
                f"{said.template[: match.start()]}[{kind}:{word}]{said.template[match.end() :]}"
            )
            if said.claims and not is_true(said.claims, slots(template)):
                sentence = SLOT.sub(r"\2", template)
                yield Corrupted(name, put(answer, at, sentence), sentence)
    for one, other in pairwise(found):
        if one.group(1) == other.group(1):
            template = (
                said.template[: one.start()] + other.group()
                + said.template[one.end() : other.start()] + one.group()
                + said.template[other.end() :]
            )  # fmt: skip
            if said.claims and not is_true(said.claims, slots(template)):
                sentence = SLOT.sub(r"\2", template)
                yield Corrupted(
                    f"two {one.group(1)}s exchanged", put(answer, at, sentence), sentence
                )


def _without_years(said: Said) -> Iterator[str]:
    """The sentence with one span of years left out, where that makes it false."""
    names = list(slots(said.template))[1:]
    for name, match in zip(names, SLOT.finditer(said.template), strict=True):
        if match.group(1) != "years" or not match.start() or "made" in said.claims:
            continue
        if not is_true(said.claims, {**slots(said.template), name: ""}):
            cut = said.template[: match.start()].rstrip() + said.template[match.end() :]
            yield SLOT.sub(r"\2", cut)


def _of_the_whole(answer: Answer) -> Iterator[Corrupted]:
    """What no single slot shows: reservations, notes, lists, and who reads the answer."""
    for at, said in enumerate(answer.said):
        for sentence in _without_years(said):
            yield Corrupted("condition dropped", put(answer, at, sentence), sentence)
        if said.text == NOTE:
            for word, wrong in (("off", "on"), ("before", "after"), ("the tank", "the bowl")):
                altered = NOTE.replace(word, wrong, 1)
                yield Corrupted("a note altered", put(answer, at, altered), altered)
    bare = re.sub(RESERVED, "", answer.text)
    if bare != answer.text:
        for said in answer.said:
            if said.claims.split(" ")[0] in ("fits", "changed", "some", "fits-mark", "fits-pieces"):
                yield Corrupted("reservation dropped", bare, re.sub(RESERVED, "", said.text))
    for secret in ("SL-2041 costs us $2.10.", "There are 12 of SL-2041 on hand."):
        told = f"{answer.text} {secret}"
        yield Corrupted("staff's own, for customers", told, secret, "customers")
    bullets = [n for n, said in enumerate(answer.said) if "- " in said.joins]
    for one, other in pairwise(bullets):  # numbers of sentences
        yield from _exchanged(answer, one, other)


def _exchanged(answer: Answer, one: int, other: int) -> Iterator[Corrupted]:
    """The parts of two bullets in each other's place."""
    first, second = (re.findall(r"\[part:([^]]*)\]", answer.said[n].template) for n in (one, other))
    templates = {
        one: answer.said[one].template.replace(first[0], second[0]),
        other: answer.said[other].template.replace(second[0], first[0]),
    }
    texts = {n: SLOT.sub(r"\2", template) for n, template in templates.items()}
    whole = "".join(s.joins + texts.get(n, s.text) for n, s in enumerate(answer.said)).strip()
    for n, template in templates.items():
        if not is_true(answer.said[n].claims, slots(template)):
            yield Corrupted("bullets exchanged", whole, texts[n])


def _turned(answer: Answer, at: int, said: Said) -> Iterator[Corrupted]:
    for name, old, new, (claim, becomes) in TURNED:
        if old not in said.text or claim not in said.claims.split():
            continue
        claims = " ".join(becomes if w == claim else w for w in said.claims.split(" "))
        if not is_true(claims, slots(said.template)):
            sentence = said.text.replace(old, new, 1)
            yield Corrupted(name, put(answer, at, sentence), sentence)


@pytest.mark.parametrize("answer", ANSWERS, ids=lambda a: plain(a.text)[:60])
def test_a_true_answer_passes_untouched(answer: Answer) -> None:
    for said in answer.said:
        assert not said.claims or is_true(said.claims, slots(said.template)), said.text
    checked = examine(answer.text)
    assert checked.taken_out == ()
    assert checked.text == answer.text
    assert {c.result for c in checked.checks} == {"supported"}


def test_every_false_word_is_caught() -> None:
    false = [c for answer in ANSWERS for c in corrupted(answer)]
    random.Random(2041).shuffle(false)
    missed = [c for c in false if plain(c.sentence) in plain(examine(c.text, c.audience).text)]
    counts = Counter(c.kind for c in false)
    print("\n".join(f"{n:5} {kind}" for kind, n in sorted(counts.items())))
    assert not missed, f"{len(missed)} of {len(false)} let through, such as {missed[:3]}"
    assert len(counts) >= 40, counts
    assert len(false) >= 1400, counts
