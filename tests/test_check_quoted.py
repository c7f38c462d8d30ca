"""Every sentence of the demonstration's notes stands as quoted; every false word in them is caught.

Whether a line of a file holds a sentence is seen here in the file itself.
"""

from __future__ import annotations

import random
import re
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from itertools import pairwise
from typing import Any, Literal

import pytest
from demonstration import FOLDER, shop

from assistant.answers.check import Checked, check
from assistant.answers.compose.case import Case
from assistant.answers.compose.explain import citation, explain
from assistant.answers.reply import statements
from assistant.measuring.campaign.corruption import EMPTY_PROMISES, Corrupted, plain
from assistant.records.notes import Note
from assistant.records.sections import Section
from assistant.search.excerpt import MOST, leans
from assistant.search.passages import Passage, passages_of
from assistant.search.searching import Found

Audience = Literal["staff", "customers"]
AUDIENCES: tuple[Audience, ...] = ("staff", "customers")
SEED = 1214
ANSWERS = 60
NOTES = tuple(shop().notes.values())

# Words of the trade and their opposites, as a careless hand would exchange them.
OPPOSITES = {
    one: other
    for pair in (
        ("up", "down"), ("before", "after"), ("above", "below"), ("inside", "outside"),
        ("always", "never"), ("usually", "seldom"), ("often", "rarely"), ("wider", "narrower"),
        ("larger", "smaller"), ("longer", "shorter"), ("more", "less"), ("open", "shut"),
        ("old", "new"), ("wet", "dry"), ("round", "square"), ("soft", "hard"), ("short", "long"),
        ("full", "empty"), ("cold", "warm"), ("first", "last"), ("both", "neither"),
        ("too", "not"), ("pegs", "clips"), ("ring", "ball"), ("seal", "valve"), ("tank", "bowl"),
        ("water", "oil"), ("with", "without"), ("on", "off"), ("high", "low"), ("few", "many"),
    )
    for one, other in (pair, pair[::-1])
}  # fmt: skip
NUMBERS = {"one": "two", "two": "three", "three": "four", "half": "third", "once": "twice"}
CLAIMS = (
    "PBK-6230 fits it.", "PBK-6230 fits every toilet.", "PBK-6230 costs $3.10.",
    "The Quellwick Tamsel takes PBK-6344.", "A Tamsel takes any of these.",
)  # fmt: skip


def read(text: str, audience: Audience = "staff") -> Checked:
    """What the checker makes of an answer, against all the notes."""
    return check(
        text, shop().tables, audience=audience, statements=statements(shop()), message="It leaks."
    )


def readers(note: Note) -> tuple[Audience, ...]:
    """Who may read a note."""
    return AUDIENCES if note.audience == "customers" else ("staff",)


@cache
def open_to_all() -> frozenset[str]:
    """The sentences of the shop's policies, which customers may read wherever they stand."""
    told = " ".join(shop().settings.policies.values())
    return frozenset(re.split(r"(?<=\.) ", told))


def said(section: Section) -> str:
    """A section's sentences as a paragraph."""
    return " ".join(sentence.text for sentence in section.sentences)


@cache
def lines_of(note: str) -> tuple[str, ...]:
    """The lines of a note's file in plain words."""
    text = (FOLDER / "knowledge" / "notes" / f"{note}.md").read_text(encoding="utf-8")
    without_links = re.sub(r"\[([^]]*)\]\([^)]*\)", r"\1", text)
    return tuple(re.sub(r"^\d+\. ", "", line) for line in without_links.split("\n"))


def holds(note: str, first: int, last: int, sentence: str) -> bool:
    """Whether the sentence stands in these lines of the file."""
    return sentence in " ".join(lines_of(note)[first - 1 : last])


def sections() -> list[Any]:
    """Every section of every note."""
    return [
        pytest.param(note, section, id=f"{note.name}/{name}")
        for note in NOTES
        for name, section in note.sections.items()
    ]


@pytest.mark.parametrize(("note", "section"), sections())
def test_every_sentence_of_a_note_stands_for_those_who_may_read_it(
    note: Note, section: Section
) -> None:
    for audience in readers(note):
        checked = read(said(section), audience)
        assert (checked.text, checked.taken_out) == (said(section), ())
        assert {c.result for c in checked.checks} == {"supported"}


@pytest.mark.parametrize("note", NOTES, ids=lambda note: note.name)
def test_a_whole_note_stands(note: Note) -> None:
    text = "\n\n".join(said(section) for section in note.sections.values())
    for audience in readers(note):
        checked = read(text, audience)
        assert (checked.text, checked.taken_out) == (text, ())


@pytest.mark.parametrize("note", [n for n in NOTES if n.audience == "staff"], ids=lambda n: n.name)
def test_no_sentence_of_a_staff_note_is_shown_to_customers(note: Note) -> None:
    for section in note.sections.values():
        for sentence in section.sentences:
            shown = read(sentence.text, "customers").text
            assert shown == (sentence.text if sentence.text in open_to_all() else "")


@pytest.mark.parametrize(("note", "section"), sections())
def test_any_sentences_in_a_row_stand_with_their_lines(note: Note, section: Section) -> None:
    for at, first in enumerate(section.sentences):
        if at and leans(first.text):  # no answer begins there
            continue
        for end in range(at + 1, len(section.sentences) + 1):
            row = section.sentences[at:end]
            lines = (first.line, row[-1].last)
            text = " ".join(s.text for s in row) + "\n\n" + citation(note.title, lines)
            assert read(text, readers(note)[-1]).text == text
            assert all(holds(note.name, *lines, s.text) for s in row), lines


@dataclass(frozen=True)
class Quoted:
    """A passage as an answer to a question quotes and cites it."""

    passage: Passage
    text: str
    sentences: tuple[str, ...]
    cited: str


@cache
def answers() -> tuple[Quoted, ...]:
    """An answer from every passage that is searched."""
    case = Case(tables=shop().tables, notes=shop().notes, audience="staff")
    found = []
    for passage in passages_of(shop().notes):
        one = Found(passage, passage.sentences[:MOST], 0.9)
        sentences = tuple(s.text for s in one.sentences)
        text = explain(case, [one]).text
        found.append(Quoted(passage, text, sentences, citation(passage.title, one.lines)))
    return tuple(found)


def test_every_answer_made_of_a_passage_passes_untouched() -> None:
    assert len(answers()) >= 150
    for answer in answers():
        for audience in AUDIENCES[: 1 + (answer.passage.audience == "customers")]:
            checked = read(answer.text, audience)
            assert (checked.text, checked.taken_out) == (answer.text, ())
            rules = Counter(c.rule for c in checked.checks)
            assert rules["citation"] == 1


def test_two_passages_are_cited_each_to_its_own_lines() -> None:
    case = Case(tables=shop().tables, notes=shop().notes, audience="staff")
    drawn = random.Random(SEED)
    for _ in range(80):
        two = drawn.sample(passages_of(shop().notes), 2)
        text = explain(case, [Found(p, p.sentences[:3], 0.9) for p in two]).text
        checked = read(text)
        assert (checked.text, checked.taken_out) == (text, ())
        assert Counter(c.rule for c in checked.checks)["citation"] == 2


def other_sentences(sentence: str, drawn: random.Random) -> Iterator[tuple[str, str]]:
    """The sentence with a word of it made wrong, and the kind of that."""
    words = sentence.split(" ")
    bare = [word.strip(".,:;?!“”()'").lower() for word in words]
    for at, word in enumerate(bare):
        for kind, table in (("opposite", OPPOSITES), ("number", NUMBERS)):
            if word in table:
                put = re.sub(re.escape(word), table[word], words[at], flags=re.IGNORECASE)
                yield kind, " ".join([*words[:at], put, *words[at + 1 :]])
        if word == "not":
            yield "'not' dropped", " ".join([*words[:at], *words[at + 1 :]])
        if word in ("is", "are", "can", "may", "will", "should", "must", "does"):
            yield "'not' added", " ".join([*words[: at + 1], "not", *words[at + 1 :]])
    for match in re.finditer(r"\d+", sentence):
        other = str(int(match.group()) + drawn.randint(1, 9))
        yield "number", sentence[: match.start()] + other + sentence[match.end() :]
    at = drawn.randrange(len(words))
    yield "word left out", " ".join([*words[:at], *words[at + 1 :]])
    at = drawn.randrange(len(words))
    yield "word said of another", " ".join([*words[:at], "PBK-6230", *words[at + 1 :]])
    places = [n for n, (a, b) in enumerate(pairwise(bare)) if a != b]
    at = drawn.choice(places)
    words[at : at + 2] = words[at + 1], words[at]
    yield "two words exchanged", " ".join(words)


def corrupted(answer: Quoted, drawn: random.Random) -> Iterator[Corrupted]:
    """Ways of making an answer false, each with the sentence that must go."""
    for sentence in answer.sentences:
        for kind, wrong in other_sentences(sentence, drawn):
            yield Corrupted(kind, answer.text.replace(sentence, wrong, 1), wrong)
    for title, first, last in _other_places(answer, drawn):
        moved = citation(title, (first, last))
        kind = "lines moved" if title == answer.passage.title else "another title"
        yield Corrupted(kind, answer.text.replace(answer.cited, moved), moved)
    bare = answer.text[answer.text.index(answer.cited) :]
    yield Corrupted("sentences dropped", bare, answer.cited)
    yield Corrupted("cited before", f"{answer.cited}\n\n{' '.join(answer.sentences)}", answer.cited)
    if answer.passage.audience == "staff":
        for sentence in set(answer.sentences) - open_to_all():
            yield Corrupted("staff's own, for customers", answer.text, sentence, "customers")


def _other_places(answer: Quoted, drawn: random.Random) -> Iterator[tuple[str, int, int]]:
    passage = answer.passage
    lines = [sentence.line for sentence in passage.sentences[:MOST]]
    first, last = lines[0], passage.sentences[:MOST][-1].last
    for a, b in (
        (first + 1, last + 1),
        (first - 2, first - 1),
        (last + 1, last + 4),
        (last, first),
    ):
        if not all(a <= line <= b for line in lines):
            yield passage.title, a, b
    titles = [n.title for n in NOTES if n.title != passage.title]
    yield from ((title, first, last) for title in drawn.sample(titles, 4))


def added(answer: Quoted) -> Iterator[Corrupted]:
    """The answer with a sentence that no note says, wherever none that leans comes after."""
    before = [at for at, sentence in enumerate(answer.sentences) if not leans(sentence)]
    for false in (*CLAIMS, *EMPTY_PROMISES):
        for at in before:
            text = answer.text.replace(answer.sentences[at], f"{false} {answer.sentences[at]}", 1)
            yield Corrupted("sentence added", text, false)
        for cited in (f"{false} {answer.cited}", f"{answer.cited} {false}"):
            yield Corrupted("sentence added", answer.text.replace(answer.cited, cited), false)


def drawn_answers() -> list[Quoted]:
    """Some of the answers, the same every time, with those of staff notes among them."""
    searched = list(answers())
    staff = [a for a in searched if a.passage.audience == "staff"]
    return staff[:4] + random.Random(SEED).sample(
        [a for a in searched if a not in staff], ANSWERS - 4
    )


def test_every_false_word_in_a_quotation_is_caught() -> None:
    drawn = random.Random(SEED)
    false = [c for answer in drawn_answers() for c in corrupted(answer, drawn)]
    missed = [c for c in false if plain(c.sentence) in plain(read(c.text, c.audience).text)]
    counts = Counter(c.kind for c in false)
    print("\n".join(f"{n:5} {kind}" for kind, n in sorted(counts.items())))
    assert not missed, f"{len(missed)} of {len(false)} let through, such as {missed[:3]}"
    assert len(counts) >= 11, counts
    assert len(false) >= 1400, counts


def test_a_false_sentence_among_quoted_ones_goes_and_leaves_them_alone() -> None:
    cases = [(answer, c) for answer in drawn_answers() for c in added(answer)]
    assert len(cases) >= 2000
    for answer, false in cases:
        checked = read(false.text)
        assert plain(checked.text) == plain(answer.text), false
        assert checked.taken_out == (false.sentence,)
