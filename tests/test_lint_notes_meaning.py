"""Rules that look at notes through the index: copies, notes that no question finds, stale labels.

Where meaning does not matter the vectors are made of words (`encoders`).
"""

from __future__ import annotations

import json
import shutil
from collections.abc import Mapping
from pathlib import Path

import numpy as np
import pytest

from assistant.errors import KnowledgeError
from assistant.linting.finding import Finding
from assistant.linting.rules.notes import alike, unfound
from tests import indexed
from tests.checking_tables import TABLES
from tests.encoders import NoModel, WordHashes
from tests.linted_notes import BODY, found, gathered, note, places
from tests.searching import demo_search, model

OTHER = "## Which way ears point\n\nMost ears point up, and some hang down.\n"
COPY = "# Hooks\n\n## Set the hook\n\nA chain needs about half an inch of slack.\n"
NOTES = {"chains": note(), "ears": note(OTHER, title="Ears")}
TWICE = {**NOTES, "hooks": note(COPY, title="Hooks")}


@pytest.fixture(autouse=True)
def _words_for_a_model(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("assistant.search.model.Model", WordHashes)


def question(text: str, label: str = "chains#how-much-slack", asker: str = "customer") -> str:
    """A line of labelled questions."""
    labels = {"answered_by": {label: 3}, "split": "tune"}
    return json.dumps({"id": "q1", "asker": asker, "text": text, **labels}) + "\n"


def asking(folder: Path, lines: str) -> None:
    """Writes the labelled questions of a shop."""
    (folder / "eval").mkdir(exist_ok=True)
    (folder / "eval" / "questions.jsonl").write_text(lines, encoding="utf-8")


# -- passages that say the same


def test_a_copy_under_another_title_is_told_with_the_place_it_repeats(tmp_path: Path) -> None:
    (finding,) = found("says-the-same", gathered(tmp_path, TWICE))
    assert places([finding]) == ["hooks:12"]
    assert finding.what == (
        "'Set the hook' says nearly what knowledge/notes/chains.md:10 says under "
        "'How much slack' (cosine 1.00)"
    )


def test_passages_that_say_different_things_are_no_copies(tmp_path: Path) -> None:
    assert found("says-the-same", gathered(tmp_path, NOTES)) == []


def test_a_copy_within_one_note_is_told_too(tmp_path: Path) -> None:
    body = f"{BODY}\n{COPY.split(chr(10), 2)[2]}"
    assert places(found("says-the-same", gathered(tmp_path, {"chains": note(body)}))) == [
        "chains:14"
    ]


def test_notes_that_are_quoted_by_name_are_not_compared(tmp_path: Path) -> None:
    notes = {**NOTES, "hooks": note(COPY, title="Hooks", tags="phrases")}
    assert found("says-the-same", gathered(tmp_path, notes)) == []


def test_every_pair_is_compared_however_many_are_compared_at_once(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    notes = {f"n{at}": note(COPY if at % 2 else OTHER) for at in range(5)}
    shop = gathered(tmp_path, notes)
    whole = found("says-the-same", shop)
    assert len(whole) == 4  # three of one and two of the other
    monkeypatch.setattr(alike, "_BLOCK", 2)
    assert found("says-the-same", shop) == whole


def test_the_demonstration_says_nothing_twice() -> None:
    assert list(alike.pairs(demo_search().index)) == []


def test_most_copies_with_every_seventh_word_left_out_are_alike() -> None:
    index = demo_search().index
    cosines = []
    for place in range(0, len(index.passages), 25):
        own = index.sentences_of(place).mean(axis=0)
        said = [sentence.text.split() for sentence in index.passages[place].sentences]
        left = [" ".join(w for n, w in enumerate(one, 1) if n % 7) for one in said]
        copied = model().encode(left).mean(axis=0)
        cosines.append(own @ copied / np.linalg.norm(own) / np.linalg.norm(copied))
    assert len(cosines) >= 20
    assert sum(cosine >= alike.ALIKE for cosine in cosines) >= 0.9 * len(cosines)


# -- notes that no question finds

CROWD = "".join(f"## Slack {at}\n\nChain slack and chain slack.\n\n" for at in range(12))
CROWDED: Mapping[str, str] = {"chains": note(CROWD), "ears": note(OTHER, title="Ears")}


def test_a_note_that_no_question_finds_is_told(tmp_path: Path) -> None:
    asking(tmp_path, question("chain slack"))
    (finding,) = found("never-found", gathered(tmp_path, CROWDED))
    assert (places([finding]), finding.what) == (
        ["ears:1"],
        "no question of eval/questions.jsonl finds it among the first 10",
    )


def test_one_question_that_finds_it_is_enough_whatever_its_label(tmp_path: Path) -> None:
    asking(tmp_path, question("chain slack") + question("which way do the ears point"))
    assert found("never-found", gathered(tmp_path, CROWDED)) == []


@pytest.mark.parametrize(("asker", "is_told"), [("customer", True), ("new hire", False)])
def test_a_note_for_staff_is_found_by_staff_alone(
    asker: str, is_told: bool, tmp_path: Path
) -> None:
    notes = {"chains": note(), "ears": note(OTHER, title="Ears", audience="staff")}
    asking(tmp_path, question("which way do the ears point", asker=asker))
    told = found("never-found", gathered(tmp_path, notes))
    assert places(told) == ["ears:1"] * is_told


def test_notes_that_are_never_searched_need_not_be_found(tmp_path: Path) -> None:
    notes = {**CROWDED, "ears": note(OTHER, title="Ears", tags="phrases")}
    asking(tmp_path, question("chain slack"))
    assert found("never-found", gathered(tmp_path, notes)) == []


@pytest.mark.parametrize("lines", [None, ""])
def test_without_labelled_questions_nothing_is_told(lines: str | None, tmp_path: Path) -> None:
    if lines is not None:
        asking(tmp_path, lines)
    assert found("never-found", gathered(tmp_path, CROWDED)) == []


@pytest.mark.parametrize(
    "line",
    [
        "{", "[]", "{}", '"text"', '{"split": "tune"}', "\n", "[" * 100_000,
        question("slack").replace('{"chains#how-much-slack": 3}', '["chains#how-much-slack"]'),
        question("slack").replace("3", '"3"'), question("slack").replace('"slack"', "null"),
    ],
)  # fmt: skip
def test_a_line_that_is_no_labelled_question_is_told(line: str, tmp_path: Path) -> None:
    asking(tmp_path, question("chain slack") + line)
    (finding,) = found("never-found", gathered(tmp_path, NOTES))
    assert places([finding]) == ["eval/questions.jsonl:2"]


def test_labelled_questions_that_are_not_utf_8_are_told(tmp_path: Path) -> None:
    asking(tmp_path, question("chain slack"))
    path = tmp_path / "eval" / "questions.jsonl"
    path.write_bytes(path.read_bytes() + b"\xff")
    assert places(found("never-found", gathered(tmp_path, NOTES))) == ["eval/questions.jsonl:2"]
    assert found("stale-label", gathered(tmp_path, NOTES)) == []


def test_questions_are_asked_only_until_every_note_is_found(tmp_path: Path) -> None:
    lines = question("chain slack") + question("ears", "ears#which-way-ears-point")
    asking(tmp_path, lines + question("something else", "chains#gone") * 500)
    encoder = WordHashes()
    shop = gathered(tmp_path, NOTES)
    found("says-the-same", shop)  # the index is there
    assert list(unfound.find(shop, encoder)) == []
    assert 1 <= len(encoder.given) <= 2


# -- the index


def test_an_index_that_is_up_to_date_is_used_without_the_model(tmp_path: Path) -> None:
    found("says-the-same", gathered(tmp_path, TWICE))
    before = indexed.state(tmp_path / "index")
    assert len(list(alike.find(gathered(tmp_path, {}), NoModel()))) == 1
    assert indexed.state(tmp_path / "index") == before


def test_only_what_is_new_in_the_notes_is_embedded(tmp_path: Path) -> None:
    found("says-the-same", gathered(tmp_path, NOTES))
    encoder = WordHashes()
    assert len(list(alike.find(gathered(tmp_path, TWICE), encoder))) == 1
    assert len(encoder.given) == 2  # a passage and its heading: the sentence is known


def test_while_a_file_cannot_be_read_the_index_on_disk_is_left_as_it_is(tmp_path: Path) -> None:
    found("says-the-same", gathered(tmp_path, NOTES))
    before = indexed.state(tmp_path / "index")
    fault = Finding(path="knowledge/notes/rings.md", line=1, what="is not UTF-8", mend="save it")
    shop = gathered(tmp_path, TWICE, faults=(fault,))
    assert len(found("says-the-same", shop)) == 1
    assert indexed.state(tmp_path / "index") == before


def test_a_damaged_index_is_built_again(tmp_path: Path) -> None:
    found("says-the-same", gathered(tmp_path, TWICE))
    (built,) = (tmp_path / "index").glob("built-*")
    (built / "passages.jsonl").write_bytes(b"")
    assert len(found("says-the-same", gathered(tmp_path, TWICE))) == 1


def test_on_a_full_disk_notes_are_compared_all_the_same(tmp_path: Path) -> None:
    shop = gathered(tmp_path, TWICE)
    with indexed.full_disk():
        assert len(found("says-the-same", shop)) == 1


def test_a_model_that_cannot_be_loaded_is_told_once_and_hides_no_other_finding(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    class Broken(WordHashes):
        def encode(self, texts: object) -> object:  # type: ignore[override]
            raise KnowledgeError("shop.toml", "the model 'quill' cannot be loaded", "name another")

    monkeypatch.setattr("assistant.search.model.Model", Broken)
    asking(tmp_path, question("chain slack"))
    shop = gathered(tmp_path, TWICE)
    (finding,) = found("no-model", shop)
    assert places([finding]) == ["knowledge/shop.toml:1"]
    assert (finding.what, finding.mend) == (
        "the model 'quill' cannot be loaded, so no two notes were compared",
        "name another",
    )
    assert found("says-the-same", shop) == found("never-found", shop) == []


def test_a_model_that_loads_is_no_finding(tmp_path: Path) -> None:
    assert found("no-model", gathered(tmp_path, NOTES)) == []


def test_without_settings_no_model_is_guessed(tmp_path: Path) -> None:
    shop = gathered(tmp_path, TWICE, settings=None)
    assert found("no-model", shop) == found("says-the-same", shop) == []


@pytest.mark.parametrize("notes", [{}, {"hooks": note(COPY, tags="phrases")}, {"a": note("")}])
def test_where_no_note_is_searched_the_model_is_not_needed(
    notes: Mapping[str, str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("assistant.search.model.Model", NoModel)
    asking(tmp_path, question("chain slack"))
    shop = gathered(tmp_path, notes, known=TABLES)
    for rule in ("no-model", "says-the-same", "never-found"):
        assert found(rule, shop) == []
    assert not (tmp_path / "index").exists()


# -- labels


def test_a_label_of_a_section_that_is_gone_is_told(tmp_path: Path) -> None:
    asking(tmp_path, question("slack") + question("slack", "chains#too-long") + "{\n")
    (finding,) = found("stale-label", gathered(tmp_path, NOTES))
    assert places([finding]) == ["eval/questions.jsonl:2"]
    assert finding.what == "'chains#too-long' is no section of the notes"


def test_a_label_of_a_note_that_cannot_be_read_is_left_alone(tmp_path: Path) -> None:
    asking(tmp_path, question("slack", "rings#two"))
    fault = Finding(path="knowledge/notes/rings.md", line=1, what="is not UTF-8", mend="save it")
    assert found("stale-label", gathered(tmp_path, NOTES, faults=(fault,))) == []


def test_without_labelled_questions_there_is_no_stale_label(tmp_path: Path) -> None:
    shutil.rmtree(tmp_path / "eval", ignore_errors=True)
    assert found("stale-label", gathered(tmp_path, NOTES)) == []
