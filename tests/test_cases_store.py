"""Cases on disk: what was confirmed is there, whatever was killed, and nothing is ever changed."""

from __future__ import annotations

import os
import random
import signal
import sqlite3
import time
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.cases.case import Message, Offered, Put, Who
from assistant.cases.ids import LENGTH, SIGNS, new_id
from assistant.cases.store import FILE, Store
from assistant.errors import CaseError
from tests.killing import barrier, child, ended

NOON = datetime(2026, 11, 25, 12, tzinfo=UTC)
KILLS = 60
BEGINNINGS = 40
MOST_WAIT = 0.06  # seconds; a writer writes some dozens of messages in it


def says(text: str, who: Who = "customer") -> Message:
    """A message of the day."""
    return Message(0, who, text, NOON)


def writes_on(folder: Path, name: str, told: Path) -> None:
    """Writes messages till it is killed, and tells of each in a file once it is kept.

    It ends by itself soon after, lest it fill the disk where nobody is left to kill it.
    """
    end = time.monotonic() + 100 * MOST_WAIT
    confirmed = os.open(told, os.O_WRONLY | os.O_CREAT | os.O_APPEND)
    with Store.open(folder) as store:
        number = len(store.case(name).messages)
        while time.monotonic() < end:
            number += 1
            store.say(name, says(text_of(number)))
            os.write(confirmed, f"{number}\n".encode())


def text_of(number: int) -> str:
    """What the message of a number says: short ones, and some that fill several pages."""
    return f"message {number} " + "x" * (number * 3701 % 20000)


def writes_many(folder: Path, name: str, who: str, start: object) -> None:
    """Writes forty messages at the same time as another."""
    start.wait(timeout=60)  # type: ignore[attr-defined]
    with Store.open(folder) as store:
        for number in range(40):
            store.say(name, says(f"{who} {number}"))


def writes_after_killed(folder: Path, name: str) -> None:
    """Dies between the writing of a message and the end of its transaction."""
    with Store.open(folder) as store, store._writing():
        store._connection.execute(
            "INSERT INTO messages VALUES (?, 99, 'customer', 'half', ?, NULL)",
            (name, NOON.isoformat()),
        )
        os.kill(os.getpid(), signal.SIGKILL)


def is_sound(folder: Path) -> bool:
    """What SQLite itself says of the file."""
    connection = sqlite3.connect(folder / FILE)
    try:
        return connection.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
    finally:
        connection.close()


def test_a_writer_killed_at_any_moment_loses_at_most_what_it_was_writing(tmp_path: Path) -> None:
    chance = random.Random(60)
    state, told = tmp_path / "state", tmp_path / "confirmed"
    told.touch()
    with Store.open(state) as store:
        name = store.new(NOON)
    kept = 0
    for _ in range(KILLS):
        before = told.stat().st_size
        with child(writes_on, state, name, told) as writer:
            while told.stat().st_size == before and writer.is_alive():
                time.sleep(0.001)
            time.sleep(chance.uniform(0, MOST_WAIT))
            writer.kill()
        assert writer.exitcode == -signal.SIGKILL
        confirmed = [int(line) for line in told.read_text().splitlines()]
        with Store.open(state) as store:
            messages = store.case(name).messages
        assert [m.number for m in messages] == list(range(1, len(messages) + 1))
        assert max(confirmed) <= len(messages) <= max(confirmed) + 1
        assert all(m.text == text_of(m.number) for m in messages[kept:])
        assert is_sound(state)
        kept = len(messages)
    assert confirmed == sorted({*confirmed})
    assert kept > KILLS  # each wrote, and some more than once


def test_a_message_whose_writing_was_not_ended_is_not_there(tmp_path: Path) -> None:
    with Store.open(tmp_path) as store:
        name = store.new(NOON)
        store.say(name, says("whole"))
    assert ended(writes_after_killed, tmp_path, name) == -signal.SIGKILL
    with Store.open(tmp_path) as store:
        assert [m.text for m in store.case(name).messages] == ["whole"]
        store.say(name, says("goes on"))
        assert [m.number for m in store.case(name).messages] == [1, 2]


def test_two_may_write_at_once(tmp_path: Path) -> None:
    with Store.open(tmp_path) as store:
        name = store.new(NOON)
    start = barrier(2)
    with (
        child(writes_many, tmp_path, name, "one", start) as one,
        child(writes_many, tmp_path, name, "other", start) as other,
    ):
        pass
    assert (one.exitcode, other.exitcode) == (0, 0)
    with Store.open(tmp_path) as store:
        kept = store.case(name).messages
    assert [m.number for m in kept] == list(range(1, 81))
    for who in ("one", "other"):
        mine = [m.text for m in kept if m.text.startswith(f"{who} ")]
        assert mine == [f"{who} {number}" for number in range(40)]


def test_two_may_begin_at_once(tmp_path: Path) -> None:
    """The tables are made by one of them, and the other finds them; in one of many folders they
    meet at the very moment at which the journal is set, for which SQLite does not wait."""
    start = barrier(2)
    with child(opens, tmp_path, start) as one, child(opens, tmp_path, start) as other:
        pass
    assert (one.exitcode, other.exitcode) == (0, 0)
    for number in range(BEGINNINGS):
        with Store.open(tmp_path / str(number)) as store:
            assert len(store.recent(10)) == 2


def opens(folder: Path, start: object) -> None:
    """Opens folders that are empty, each at the same time as another does."""
    for number in range(BEGINNINGS):
        start.wait(timeout=60)  # type: ignore[attr-defined]
        with Store.open(folder / str(number)) as store:
            store.new()


texts = st.text(st.characters(exclude_categories=("Cs",)), max_size=200)
offers = st.builds(
    Offered,
    st.lists(st.builds(Put, texts, st.lists(texts, max_size=3).map(tuple)), max_size=2).map(tuple),
    st.lists(texts, max_size=3).map(tuple),
)
messages = st.builds(
    Message,
    st.just(0),
    st.sampled_from(("customer", "staff", "counter")),
    texts,
    st.datetimes(timezones=st.just(UTC)),
    st.none() | offers,
)


@settings(max_examples=60, deadline=None)
@given(said=st.lists(st.tuples(st.integers(0, 2), messages), max_size=12))
def test_what_is_said_comes_back_in_order(
    tmp_path_factory: pytest.TempPathFactory, said: list[tuple[int, Message]]
) -> None:
    folder = tmp_path_factory.mktemp("state")
    expected: list[list[Message]] = [[], [], []]
    with Store.open(folder) as store:
        names = [store.new(NOON) for _ in expected]
        for which, message in said:
            kept = store.say(names[which], message)
            assert kept.number == len(expected[which]) + 1
            expected[which].append(kept)
    with Store.open(folder) as store:
        for name, wanted in zip(names, expected, strict=True):
            found = store.case(name)
            assert found.messages == tuple(wanted)
            assert (found.id, found.opened) == (name, NOON)
        assert [m.text for m in (w for each in expected for w in each)] == [
            m.text for each in range(3) for which, m in said if which == each
        ]


def test_an_answer_is_kept_with_its_message(tmp_path: Path) -> None:
    with Store.open(tmp_path) as store:
        name = store.new()
        store.say(name, says("which seal?"))
        store.say(name, says("this one", "counter"), {"answers": [{"parts": ["½ × é"]}]})
    with Store.open(tmp_path) as store:
        assert store.answers(name) == ({"answers": [{"parts": ["½ × é"]}]},)


def test_half_a_sign_is_written_as_a_question_mark(tmp_path: Path) -> None:
    with Store.open(tmp_path) as store:
        name = store.new()
        assert store.say(name, says("a\ud800b")).text == "a?b"
        assert store.case(name).messages[0].text == "a?b"


def test_the_cases_last_written_to_come_first(tmp_path: Path) -> None:
    with Store.open(tmp_path) as store:
        names = [store.new(NOON + timedelta(days=n)) for n in range(3)]
        for at in (1, 2, 0):
            store.say(names[at], says("x"))
        assert [case.id for case in store.recent(2)] == [names[0], names[2]]


def test_names_are_short_and_no_two_signs_look_alike() -> None:
    names = {new_id() for _ in range(1000)}
    assert len(names) == 1000
    assert {len(name) for name in names} == {LENGTH} == {8}
    assert not {*SIGNS} & {*"0o1il5s8b"}


def test_a_name_may_be_typed_in_capitals_and_with_a_gap(tmp_path: Path) -> None:
    with Store.open(tmp_path) as store:
        name = store.new()
        assert store.case(f" {name[:4]}-{name[4:]} ".upper()).id == name


UNDONE = (
    *("UPDATE messages SET text = ''", "DELETE FROM messages"),
    *("UPDATE answers SET json = ''", "DELETE FROM answers", "DELETE FROM cases"),
)


@pytest.mark.parametrize("change", UNDONE)
def test_nothing_is_changed_or_taken_away(tmp_path: Path, change: str) -> None:
    with Store.open(tmp_path) as store:
        name = store.new()
        store.say(name, says("x"), {})
        with pytest.raises(sqlite3.IntegrityError, match="is kept"):
            store._connection.execute(change)


def refused(folder: Path) -> str:
    """The one sentence with which a folder is refused."""
    with pytest.raises(CaseError) as found:
        Store.open(folder).close()
    sentence = str(found.value)
    assert "\n" not in sentence
    return sentence


def test_a_case_that_is_not_there_is_told_with_its_file(tmp_path: Path) -> None:
    with Store.open(tmp_path) as store, pytest.raises(CaseError) as found:
        store.case("nosuch99")
    assert "case nosuch99: there is none" in str(found.value)
    assert FILE in str(found.value)


def test_a_form_of_another_version_is_told(tmp_path: Path) -> None:
    Store.open(tmp_path).close()
    connection = sqlite3.connect(tmp_path / FILE)
    connection.execute("PRAGMA user_version = 2")
    connection.close()
    sentence = refused(tmp_path)
    assert "kept in form 2, and this program knows form 1 only" in sentence
    assert str(tmp_path / FILE) in sentence


def test_a_file_of_something_else_is_left_alone(tmp_path: Path) -> None:
    connection = sqlite3.connect(tmp_path / FILE)
    connection.execute("CREATE TABLE recipes (name)")
    connection.commit()
    connection.close()
    assert "is a file of something else" in refused(tmp_path)


def test_a_file_that_is_no_database_is_told_with_the_mend(tmp_path: Path) -> None:
    (tmp_path / FILE).write_bytes(b"not a database at all" * 500)
    sentence = refused(tmp_path)
    assert str(tmp_path / FILE) in sentence
    assert "is damaged" in sentence
    assert "move it away" in sentence


def test_damage_in_the_midst_is_told_where_it_is_met(tmp_path: Path) -> None:
    with Store.open(tmp_path) as store:
        name = store.new()
        for _ in range(200):
            store.say(name, says("x" * 1000))
    size = (tmp_path / FILE).stat().st_size
    with open(tmp_path / FILE, "r+b") as file:
        file.seek(4096 * 2)
        file.write(b"\xff" * (size - 4096 * 2))
    with pytest.raises(CaseError, match="is damaged"), Store.open(tmp_path) as store:
        store.case(name)


def test_a_folder_that_cannot_be_made_is_told(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")
    assert "the folder cannot be made" in refused(tmp_path / "file" / "state")
    (tmp_path / FILE).mkdir()
    assert "cannot be used" in refused(tmp_path)


def test_a_file_in_use_for_too_long_is_told(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("assistant.cases.store.PATIENCE", 0.05)
    with Store.open(tmp_path) as holder, Store.open(tmp_path) as store:
        name = holder.new()
        with holder._writing(), pytest.raises(CaseError, match="wait until the other"):
            store.say(name, says("x"))
        store.say(name, says("y"))
