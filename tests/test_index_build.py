"""Building the index: it finds what it should, and only what is new costs the model work."""

from __future__ import annotations

import tempfile
from collections import Counter
from collections.abc import Iterator
from pathlib import Path
from unittest import mock

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.records.notes import parse_note
from assistant.search import store
from assistant.search.build import build, renewed
from assistant.search.content import Content
from assistant.search.limits import limits_for
from assistant.search.model import DEFAULT
from assistant.search.searching import Search
from tests import indexed
from tests.encoders import NoModel, WordHashes
from tests.indexed import (
    BACK,
    DYE,
    LEVER,
    LIKENESSES,
    LOOP,
    NOTES,
    PLUM,
    SLACK,
    STYLES,
    content,
    contents,
    rankings,
    texts,
)

SLACKER = SLACK.replace("half an inch", "a finger's breadth")


@pytest.fixture(autouse=True, scope="module")
def no_waiting_for_the_disk() -> Iterator[None]:
    """A build waits until the disk holds it; here only the files matter."""
    with mock.patch("os.fsync"):
        yield


def built(of: Content, folder: Path) -> tuple[WordHashes, list[str]]:
    """Builds, with a model that has done nothing yet; returns it and the notes found there."""
    encoder = WordHashes()
    build(of, folder, encoder)
    index = store.read(folder)
    assert index is not None
    return encoder, [passage.note for passage in index.passages]


def as_from_nothing(folder: Path, of: Content) -> bool:
    """Whether the index kept in a folder is the one that a build from nothing makes."""
    kept = store.read(folder)
    assert kept is not None
    new = renewed(of, WordHashes(), None).index
    return contents(kept) == contents(new) and rankings(kept) == rankings(new)


# -- it finds what it should


@pytest.mark.parametrize(
    ("question", "note", "section", "line"),
    [
        ("How much slack does a chain need?", "chains", "how-much-slack", 10),
        ("what happens when the long chain gets caught", "chains", "too-long", 15),
        ("how many drops of colouring do I put in the tank", "dye-test", "the-dye-test", 7),
        ("was the seal wet, is it sold again", "returns", "worn-seals", 9),
    ],
)
def test_a_question_finds_the_section_that_speaks_of_it(
    question: str, note: str, section: str, line: int, tmp_path: Path
) -> None:
    index = build(content(), tmp_path, WordHashes()).index
    best = Search(index, WordHashes(), limits_for(DEFAULT)).ranked(question, "staff")[0]
    assert (best.passage.note, best.passage.section) == (note, section)
    assert best.passage.lines[0] == best.lines[0] == line


def test_another_wording_of_its_question_finds_a_section(tmp_path: Path) -> None:
    index = build(content(), tmp_path, WordHashes()).index
    (meaning,) = WordHashes().encode([LOOP])
    best = index.passages[index.by_wording(meaning, 1)[0]]
    assert (best.note, best.section) == ("chains", "too-long")
    told = {hit.passage.section: hit.wording for hit in index.find(LOOP, meaning, 10)}
    assert told.pop("too-long") == pytest.approx(1)
    assert max(told.values()) < 0.9
    assert "too-long" in {index.passages[at].section for at in index.by_words("loop", 5)}


def test_customers_are_shown_no_note_for_staff(tmp_path: Path) -> None:
    search = Search(
        build(content(), tmp_path, WordHashes()).index, WordHashes(), limits_for(DEFAULT)
    )
    for question in indexed.QUESTIONS:
        assert "returns" in {found.passage.note for found in search.ranked(question, "staff")}
        seen = {found.passage.note for found in search.ranked(question, "customers")}
        assert seen == {"chains", "dye-test"}


def test_a_wording_in_a_note_for_staff_brings_customers_nowhere(tmp_path: Path) -> None:
    index = build(content(), tmp_path, WordHashes()).index
    (meaning,) = WordHashes().encode([BACK])
    found = {
        audience: [
            index.passages[at].note for at in index.by_wording(meaning, 10, index.allowed(audience))
        ]
        for audience in ("staff", "customers")
    }
    assert found["staff"][0] == "returns"
    assert set(found["customers"]) == {"chains", "dye-test"}


def test_a_word_is_found_in_its_other_forms(tmp_path: Path) -> None:
    index = build(content(), tmp_path, WordHashes()).index
    assert [index.passages[at].note for at in index.by_words("leaking", 5)] == ["dye-test"]
    assert index.by_words("porcelain", 5) == []


def test_what_supports_a_style_comes_from_notes_that_name_it(tmp_path: Path) -> None:
    index = build(content(), tmp_path, WordHashes()).index
    search = Search(index, NoModel(), limits_for(DEFAULT))
    found = search.supporting("tank-ball", "the seal leaks", "customers")
    assert [passage.note for passage, _ in found] == ["dye-test"]


@pytest.mark.parametrize(("words", "style"), [(PLUM, "tank-ball"), (LEVER, "")])
def test_customers_own_words_for_a_seal_are_likest_to_themselves(
    words: str, style: str, tmp_path: Path
) -> None:
    index = build(content(), tmp_path, WordHashes()).index
    search = Search(index, WordHashes(), limits_for(DEFAULT))
    (meaning,) = WordHashes().encode([words])
    assert search.likest(meaning)[0][0] == style


def test_phrases_that_answers_quote_are_no_passages(tmp_path: Path) -> None:
    phrases = NOTES["returns"].replace("audience", "tags: [phrases]\naudience")
    assert "returns" not in built(content({**NOTES, "returns": phrases}), tmp_path)[1]


# -- nothing changed


def test_where_nothing_changed_nothing_is_embedded_and_nothing_written(tmp_path: Path) -> None:
    built(content(), tmp_path)
    before = indexed.state(tmp_path)
    again = build(content(), tmp_path, NoModel())
    assert (again.changed, again.embedded, again.taken_over) == (False, 0, 0)
    assert indexed.state(tmp_path) == before
    assert contents(again.index) == contents(store.read(tmp_path))


def test_where_nothing_changed_what_a_killed_build_left_is_cleared_away(tmp_path: Path) -> None:
    built(content(), tmp_path)
    before = indexed.state(tmp_path)
    (tmp_path / "built-0123456789ab" / "words").mkdir(parents=True)
    (tmp_path / "built-0123456789ab" / "words" / "vocab.index.json").write_text("{")
    assert not build(content(), tmp_path, NoModel()).changed
    assert indexed.state(tmp_path) == before


def test_where_nothing_changed_a_name_that_was_never_swapped_in_is_cleared_away(
    tmp_path: Path,
) -> None:
    """A build killed between writing the new name and swapping it in leaves a file."""
    built(content(), tmp_path)
    before = indexed.state(tmp_path)
    (tmp_path / "current.new").write_text("built-0123456789ab")
    build(content(), tmp_path, NoModel())
    assert indexed.state(tmp_path) == before


def test_reading_back_gives_what_was_built(tmp_path: Path) -> None:
    new = build(content(), tmp_path, WordHashes()).index
    kept = store.read(tmp_path)
    assert kept is not None
    assert contents(kept) == contents(new)
    assert rankings(kept) == rankings(new)


def test_a_build_from_nothing_gives_every_text_to_the_model_and_tells_its_progress(
    tmp_path: Path,
) -> None:
    encoder = WordHashes()
    told: list[tuple[int, int]] = []
    done = build(content(), tmp_path, encoder, lambda so_far, of: told.append((so_far, of)))
    assert Counter(encoder.given) == Counter(texts(content()))
    assert (done.embedded, done.taken_over) == (len(texts(content())), 0)
    assert told == [(done.embedded, done.embedded)]


def test_a_text_that_stands_twice_is_embedded_once_and_nothing_is_taken_over_from_nothing(
    tmp_path: Path,
) -> None:
    twice = content({**NOTES, "returns": NOTES["returns"] + f"\n{DYE}\n"})
    encoder = WordHashes()
    done = build(twice, tmp_path, encoder)
    assert encoder.given.count(DYE) == 1
    assert (done.embedded, done.taken_over) == (len(texts(twice)), 0)


def test_many_texts_are_given_in_stretches_and_each_keeps_its_own_vector(tmp_path: Path) -> None:
    many = {
        f"n{at}": indexed.FOR_STAFF.format(f"Note {at}", f"Word{at} {'and so on ' * (at % 7)}.")
        for at in range(150)
    }
    told: list[tuple[int, int]] = []
    build(content(many), tmp_path, WordHashes(), lambda at, of: told.append((at, of)))
    total = len(texts(content(many)))
    assert told == [(256, total), (total, total)]

    index, encode = store.read(tmp_path), WordHashes().encode
    assert index is not None
    assert np.array_equal(index.described, encode([d.text for d in index.descriptions]))
    for place, passage in enumerate(index.passages):
        assert np.array_equal(index.vector_of(place), encode([passage.text])[0])
        own = [sentence.text for sentence in passage.sentences]
        assert np.array_equal(index.sentences_of(place), encode(own))


# -- something changed


def edited(old: str, new: str, note: str = "chains") -> Content:
    """The shop with one thing in a note written in another way."""
    assert old in NOTES[note]
    return content({**NOTES, note: NOTES[note].replace(old, new)})


CHANGES: list[tuple[str, Content, set[str]]] = [
    (
        "one sentence: the sentence, and the section around it",
        edited(SLACK, SLACKER),
        {SLACKER, f"Chains. How much slack. {SLACKER} So the rubber can settle."},
    ),
    (
        "a heading: the heading, and the section below",
        edited("## How much slack", "## Slack"),
        {"Slack", f"Chains. Slack. {SLACK} So the rubber can settle."},
    ),
    ("a wording more", edited(LOOP, f"{LOOP}, is a saggy chain bad"), {"is a saggy chain bad"}),
    ("a wording gone", edited(LOOP, ""), set()),
    ("a wording of another section", edited("asked: {too-long", "asked: {how-much-slack"), set()),
    ("a note gone", content({k: v for k, v in NOTES.items() if k != "dye-test"}), set()),
    (
        "a note more",
        content({**NOTES, "lids": indexed.FOR_STAFF.format("Lids", "A lid breaks.")}),
        {"Lids", "A lid breaks.", "Lids. A lid breaks."},
    ),
    (
        "a note by another name",
        content({("links" if name == "chains" else name): text for name, text in NOTES.items()}),
        set(),
    ),
    ("a note further down in its file", edited("## How", "\n\n\n## How"), set()),
    ("a note that customers may see no longer", edited("customers", "staff"), set()),
    ("a note of another style", edited("pegged-flapper", "tank-ball"), set()),
    (
        "a sentence that stands in another note already",
        content({**NOTES, "returns": NOTES["returns"] + f"\n{DYE}\n"}),
        {f"Sending back. Worn seals. A seal that was wet is not sold again. {DYE}"},
    ),
    (
        "how a style looks",
        content(styles={**STYLES, "tank-ball": f"{STYLES['tank-ball']} It is pear-shaped."}),
        {"It is pear-shaped."},
    ),
    (
        "a style more",
        content(styles={**STYLES, "canister-seal": "A flat ring."}),
        {"canister seal", "A flat ring."},
    ),
    ("a style gone", content(styles={"tank-ball": STYLES["tank-ball"]}), set()),
    (
        "customers' words more",
        content(likenesses={**LIKENESSES, "3": ("pegged-flapper", "the red lid thing")}),
        {"the red lid thing"},
    ),
    ("customers' words gone", content(likenesses={"1": LIKENESSES["1"]}), set()),
    (
        "customers' words that describe another style",
        content(likenesses={**LIKENESSES, "1": ("pegged-flapper", PLUM)}),
        set(),
    ),
    (
        "customers' words that describe no seal after all",
        content(likenesses={**LIKENESSES, "1": (None, PLUM)}),
        set(),
    ),
]


@pytest.mark.parametrize(
    ("changed", "fresh"), [pytest.param(*case[1:], id=case[0]) for case in CHANGES]
)
def test_only_what_changed_is_embedded(changed: Content, fresh: set[str], tmp_path: Path) -> None:
    built(content(), tmp_path)
    before = indexed.built_folders(tmp_path)
    encoder, _ = built(changed, tmp_path)
    assert sorted(encoder.given) == sorted(fresh)
    assert as_from_nothing(tmp_path, changed)
    assert len(indexed.built_folders(tmp_path)) == 1
    assert indexed.built_folders(tmp_path) != before


def test_a_build_counts_what_it_embedded_and_what_it_took_over(tmp_path: Path) -> None:
    built(content(), tmp_path)
    changed = edited(SLACK, SLACKER)
    done = build(changed, tmp_path, WordHashes())
    assert (done.embedded, done.taken_over) == (2, len(texts(changed)) - 2)
    assert done.changed


_bodies = st.lists(
    st.sampled_from((SLACK, DYE, "## Lids", "## Lids\n\nA lid breaks.", "It leaks.", "", "###")),
    max_size=4,
).map("\n\n".join)
_heads = st.sampled_from(
    (
        "title: Chains\naudience: staff",
        "title: Chains\naudience: customers\nstyles: [tank-ball]",
        "title: Lids\naudience: customers\ntags: [phrases]",
    )
)


def _note(head: str, body: str, wordings: list[str]) -> str:
    """A note, with wordings of the question that its first section answers, if it has one."""
    plain = f"---\n{head}\n---\n\n{body}\n"
    section = next(iter(parse_note(plain, Path("a.md")).sections), None)
    return plain if section is None else indexed.asking(plain, section, *wordings)


_notes = st.builds(_note, _heads, _bodies, st.lists(st.sampled_from((LOOP, "Lids")), max_size=2))
_shops = st.builds(
    content,
    st.dictionaries(st.sampled_from(("a", "a-b", "b", "é")), _notes),
    st.dictionaries(
        st.sampled_from(tuple(STYLES)), st.sampled_from(("It leaks.", "A ball. It leaks.", ""))
    ),
    st.dictionaries(
        st.sampled_from(("1", "2")),
        st.tuples(st.sampled_from((None, *STYLES)), st.sampled_from(("It leaks.", PLUM))),
    ),
)


@settings(max_examples=60, deadline=None)
@given(st.lists(_shops, min_size=2, max_size=4))
def test_whatever_is_edited_the_index_is_that_of_a_build_from_nothing(
    shops: list[Content],
) -> None:
    with tempfile.TemporaryDirectory() as folder:
        known: set[str] = set()
        for shop in shops:
            now = texts(shop)
            encoder, _ = built(shop, Path(folder))
            assert Counter(encoder.given) == Counter(text for text in now if text not in known)
            assert as_from_nothing(Path(folder), shop)
            known = set(now)


ODD = ["bell\x07", "line\nbreak", "next\x85line", "line\u2028parted", "Größe ½″ \U0001f6bd"]


@pytest.mark.parametrize("name", ODD)
def test_an_odd_name_of_a_note_comes_back_from_the_disk(name: str, tmp_path: Path) -> None:
    odd = content({**NOTES, name: NOTES["returns"]})
    assert name in built(odd, tmp_path)[1]
    assert not build(odd, tmp_path, NoModel()).changed


@pytest.mark.parametrize("odd", ODD)
def test_odd_words_come_back_from_the_disk_and_json_of_ours_is_ascii(
    odd: str, tmp_path: Path
) -> None:
    quoted = '"' + "".join(f"\\U{ord(sign):08x}" for sign in odd) + '"'
    note = indexed.FOR_STAFF.format(quoted, "## Lids\n\nA lid breaks.")
    shop = content(
        {**NOTES, "lids": indexed.asking(note, "lids", quoted)},
        {**STYLES, "tank-ball": odd},
        {"1": (None, odd)},
    )
    built(shop, tmp_path)
    assert as_from_nothing(tmp_path, shop)
    for path in (*tmp_path.glob("built-*/*.json*"), tmp_path / "current"):
        assert path.read_bytes().isascii(), path.name
