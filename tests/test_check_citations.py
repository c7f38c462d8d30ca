"""Where a note says so: a citation stands if title and lines hold what was said before it."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from checking_notes import DRY, LINKS, PITS, PRICE, SLACK, TABLETS, cites, seen
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.answers.check import Statement, Statements
from assistant.answers.compose.explain import citation
from assistant.records.notes import parse_note


@pytest.mark.parametrize(
    "text",
    [
        f"{DRY} {cites('The seat', 12)}",
        f"{DRY}\n\n{cites('The seat', 12)}",
        f"{DRY} {PITS}\n\n{cites('The seat', 12, 13)}",
        f"{DRY} {PITS} {TABLETS}\n\n{cites('The seat', 12, 20)}",
        f"{DRY}\n\n{TABLETS}\n\n{cites('The seat', 11, 20)}",
        f"{TABLETS}\n\n{cites('The seat', 20)}",
        f"{TABLETS}\n\n{cites('Chains', 31)}",
        f"{DRY}\n\n{cites('The seat', 12)}\n\n{SLACK} {LINKS}\n\n{cites('Chains', 9, 10)}",
        f"{DRY}\n\n{cites('The seat', 12)}\n\n{TABLETS}\n\n{cites('The seat', 20)}",
        f"{DRY}\n\n{cites('The seat', 12)}\n\n{SLACK}",
        f"- {DRY} {cites('The seat', 12)}\n- {SLACK} {cites('Chains', 9)}",
    ],
)
def test_a_right_citation_stands(text: str) -> None:
    checked = seen(text, "customers")
    assert checked.text == text
    assert {c.result for c in checked.checks} == {"supported"}


@pytest.mark.parametrize(
    ("said", "cited"),
    [
        (DRY, cites("Chains", 12)),
        (DRY, cites("The seats", 12)),
        (DRY, cites("Buying", 12)),
        (DRY, cites("The seat", 13)),
        (DRY, cites("The seat", 2)),
        (DRY, cites("The seat", 13, 40)),
        (DRY, cites("The seat", 13, 11)),  # backwards
        (f"{DRY} {PITS}", cites("The seat", 12)),
        (f"{DRY} {PITS}", cites("The seat", 13)),
        (f"{DRY} {TABLETS}", cites("The seat", 12, 13)),
        (TABLETS, cites("The seat", 31)),
        (TABLETS, cites("Chains", 20)),
        (PRICE, cites("The seat", 12)),
        ("Where does it leak?", cites("The seat", 12)),
        ("", cites("The seat", 12)),
        (f"{DRY} {cites('The seat', 12)}", cites("The seat", 12)),
        (f"{DRY} {cites('The seat', 12)} {SLACK}", cites("The seat", 12)),
        (DRY, "That is from our note “The seat”, lines 12 to 13 and 20."),
        (DRY, "That is from our notes “The seat” and “Chains”, line 12."),
        (DRY, "That is from our note, line 12."),
        (DRY, "That is from our note “The seat”, line 12 of SL-2044."),
        (DRY, "That is not from our note “The seat”, line 12."),
    ],
)
def test_a_wrong_citation_falls_and_what_was_said_stays(said: str, cited: str) -> None:
    checked = seen(f"{said} {cited}".strip())
    assert (checked.text, checked.taken_out) == (said, (cited,))


def test_a_citation_before_what_it_cites_falls() -> None:
    assert seen(f"{cites('The seat', 12)} {DRY}").text == DRY


def test_a_citation_falls_with_all_that_it_cited() -> None:
    wrong = DRY.replace("dry", "wet")
    checked = seen(f"{wrong}\n\n{cites('The seat', 12)}\n\n{SLACK}\n\n{cites('Chains', 9)}")
    assert checked.text == f"{SLACK}\n\n{cites('Chains', 9)}"


@pytest.mark.parametrize("between", [SLACK, PRICE, "Where does it leak?", "We never guess."])
def test_a_citation_does_not_cover_what_another_place_says(between: str) -> None:
    text = f"{DRY} {between}"
    assert seen(f"{text}\n\n{cites('The seat', 12)}").text == text


def test_a_sentence_that_stands_twice_in_a_note_is_cited_to_either() -> None:
    twice = [Statement(TABLETS, f"seats.md:{n}", title="The seat") for n in (12, 20)]
    for line in (12, 20):
        assert seen(f"{TABLETS} {cites('The seat', line)}", statements=Statements(twice)).sound


@pytest.mark.parametrize("linked", [DRY, cites("The seat", 12)])
def test_a_note_lends_its_words_to_no_foreign_address(linked: str) -> None:
    text = f"{DRY}\n\n{cites('The seat', 12)}"
    assert "://" not in seen(text.replace(linked, f"[{linked}](https://shop.example)")).text


# Whatever a note is called and however it is cited

quiet = settings(deadline=None, max_examples=200)
LINES = st.integers(0, 60)
TITLES = st.text(alphabet="aAzZéÉß09 ,.:;?!'’()-–…/½&", min_size=1, max_size=40).filter(str.strip)


@given(st.sampled_from(["The seat", "Chains", "Buying"]), LINES, LINES)
@quiet
def test_a_citation_stands_if_title_and_lines_hold_what_was_said(
    title: str, first: int, last: int
) -> None:
    cited = f"That is from our note “{title}”, lines {first} to {last}."
    holds = title == "The seat" and first <= 12 and last >= 13
    assert seen(f"{DRY} {PITS} {cited}").sound is holds


@given(TITLES, LINES, st.integers(0, 9))
@quiet
def test_any_title_can_be_cited(title: str, first: int, more: int) -> None:
    title = " ".join(title.split())
    held = Statements([Statement(DRY, f"a.md:{first + more}", title=title)])
    text = f"{DRY}\n\n{cites(title, first, first + more)}"
    assert seen(text, "customers", held).text == text


@given(
    st.text(max_size=60), st.text(max_size=30), st.text(alphabet="0123456789 to-,.", max_size=20)
)
@quiet
def test_no_citation_raises_and_a_second_look_takes_nothing_more_out(
    title: str, middle: str, lines: str
) -> None:
    text = f"{DRY} That is from our note “{title}”{middle}, lines {lines}. {SLACK}"
    first = seen(text, "customers")
    assert seen(first.text, "customers").taken_out == ()


@pytest.mark.parametrize(
    ("title", "body"),
    [
        ("Which size? Which ring. How old!", DRY),
        ('A 2" seal', f'{DRY} Leave a 2" gap.'),
        ("Seals", "Wipe\nthe seat\ndry. It\nis clean then."),
        ("Seals", "1. Shut the stop.\n2. Lift the lid.\n\n- Wipe the seat."),
        ("Seals", "Keep it dry. (It rots.) See [the test](dye.md). “Is it dry?” Ask that."),
    ],
)
def test_a_section_as_it_is_quoted_and_cited_stands(title: str, body: str) -> None:
    head = f"---\ntitle: {json.dumps(title)}\naudience: customers\n---\n"
    note = parse_note(f"{head}\n{body}\n", Path("n.md"))
    (section,) = note.sections.values()
    held = [Statement(s.text, f"n.md:{s.line}", title=note.title) for s in section.sentences]
    said = " ".join(s.text for s in section.sentences)
    text = f"{said}\n\n{citation(note.title, section.lines)}"
    checked = seen(text, "customers", Statements(held))
    assert checked.taken_out == ()
