"""Questions of how and why, answered in the words of the shop's notes, or not at all.

What an answer cites is looked up in the Markdown files themselves. Which note answers which
question was told by reading the notes; what they say of the trade is theirs.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import date
from functools import cache

import pytest
from demonstration import FOLDER, PART_NO, shop
from searching import demo_search

from assistant.answers.answer import Answer, Reply, as_json
from assistant.answers.compose.case import Audience
from assistant.answers.draft import Source
from assistant.answers.reply import reply
from assistant.reading.letters import letter_from_text

TODAY = date(2026, 11, 25)
NOTES = FOLDER / "knowledge" / "notes"

ANSWERED_BY = {
    "How do I get the old flapper off the pegs?": "fitting-a-flapper-on-pegs",
    "How do I measure the opening?": "measuring-the-opening",
    "What is the hinge width?": "measuring-the-hinge",
    "Why does rubber swell?": "slimy-swollen-or-stiff-rubber",
    "why does my tank sweat in summer": "a-tank-that-sweats",
    "How do I set the chain?": "chains",
    "How does a tipping bucket work?": "tipping-bucket",
    "How do I get the canister out?": "fitting-a-ring-under-a-canister",
    "How do I take the old ball off its wire?": "fitting-a-tank-ball",
    "What does the dye test show?": "the-dye-test",
    "We have hard water here. How often should the rubber be changed?": (
        "slimy-swollen-or-stiff-rubber"
    ),
    "Can I leave the blue tablets in the tank?": "safety",
    "How do I get the scale off the seat?": "scale-and-dirt-on-the-seat",
    "Why does it flush twice?": "when-it-flushes-twice-or-too-long",
    "how do i take the tower out": "fitting-a-ring-under-a-tower",
    "What is a phantom flush?": "why-a-tank-refills-by-itself",
    "why must the chain have some slack?": "chains",
}
INSTALLING = (
    "How do I get the old flapper off the pegs?",
    "How do I set the chain?",
    "How do I get the canister out?",
    "How do I take the old ball off its wire?",
    "how do i take the tower out",
)
OFF_THE_SUBJECT = (
    "Why is the sky blue?",
    "Who won the battle of Hastings and why?",
    "How do I knit a heel on a sock?",
    "Why does my laptop get so hot?",
)
UNTOLD = (
    "How do I make pancakes without eggs?",
    "How do I paint a cistern?",
    "How do I get candle wax out of a tablecloth?",
    "Should I fix my mortgage for two years or five?",
)
OUTSIDE = (
    "The counter answers letters about seals for toilet tanks. A person at the shop will look at "
    "your letter and answer you."
)
SILENT = "Our notes do not say. A person at the shop will look at your letter and answer you."

MEASURE, SWELL, CHAIN = "How do I measure the opening?", "Why does rubber swell?", INSTALLING[1]
PART = "Which seal fits a Quellwick Tamsel made in 1988?"
DEPENDS = "Which seal fits a Quellwick Tamsel?"
NO_MATCH = "Which seal fits a Quellwick Tamsel made in 1900?"

CITED = re.compile(r"That is from our note “(.+)”, lines? (\d+)(?: to (\d+))?\.")
LINK = re.compile(r"\[([^\]]*)\]\([^)]*\)")
MARK = re.compile(r"^(?:\d+\.|[-*]) ")  # of a list


@cache
def answered(letter: str, audience: Audience = "customers", *, searched: bool = True) -> Reply:
    """The reply to a letter, with or without the search of the notes."""
    search = demo_search() if searched else None
    made = letter_from_text(letter)
    return reply(shop(), made, audience=audience, today=TODAY, search=search)


def answers(letter: str, audience: Audience = "customers") -> tuple[Answer, ...]:
    """The answers to a letter, the notes searched."""
    return answered(letter, audience).answers


def found(answer: Answer) -> list[Source]:
    """The sources that were searched for; what is quoted by name has no score."""
    return [source for source in answer.sources if source.score is not None]


def notes_of(answer: Answer) -> set[str]:
    """The notes that were found."""
    return {source.note.removesuffix(".md") for source in found(answer)}


def lines(note: str) -> list[str]:
    """The lines of a note's file."""
    return (NOTES / note).read_text(encoding="utf-8").splitlines()


def said_in(note: str, first: int, last: int) -> str:
    """What a reader sees of these lines of a note, counted from 1, on one line."""
    shown = [MARK.sub("", line) for line in lines(note)[first - 1 : last]]
    return " ".join(LINK.sub(r"\1", " ".join(shown)).split())


def bare(answer: Answer) -> str:
    """An answer's text without its cautions, which a reply says once."""
    text = answer.text
    for caution in answer.cautions:
        text = text.replace(caution, "")
    return text.strip()


def quotations(answer: Answer) -> Iterator[tuple[str, str, int, int]]:
    """What is quoted, the title it is said to be from, and the lines."""
    paragraphs = answer.text.split("\n\n")
    for at, paragraph in enumerate(paragraphs):
        if cited := CITED.fullmatch(paragraph):
            first = int(cited[2])
            items = [MARK.sub("", line) for line in paragraphs[at - 1].splitlines()]
            yield " ".join(items), cited[1], first, int(cited[3] or first)


# A question alone


@pytest.mark.parametrize(("letter", "note"), ANSWERED_BY.items())
@pytest.mark.parametrize("audience", ["staff", "customers"])
def test_a_question_is_answered_from_the_note_that_tells(
    letter: str, note: str, audience: Audience
) -> None:
    (answer,) = answers(letter, audience)
    assert (answer.outcome, answer.parts, answer.question) == ("note", (), None)
    assert not PART_NO.search(answer.text)
    assert found(answer)[0].note == f"{note}.md"


@pytest.mark.parametrize("letter", ANSWERED_BY)
def test_the_sentences_stand_word_for_word_in_the_lines_that_are_cited(letter: str) -> None:
    (answer,) = answers(letter)
    quoted = list(quotations(answer))
    assert len(quoted) == len(found(answer)) > 0
    for (words, title, first, last), source in zip(quoted, found(answer), strict=True):
        assert f"title: {title}" in lines(source.note)
        assert source.lines == (first, last)
        assert words == said_in(source.note, first, last)


@pytest.mark.parametrize("letter", ANSWERED_BY)
def test_the_lines_stand_below_the_heading_that_the_source_names(letter: str) -> None:
    for source in found(answers(letter)[0]):
        above = [line for line in lines(source.note)[: source.lines[0]] if line.startswith("#")]
        assert above[-1].lstrip("# ") == source.section
        within = lines(source.note)[source.lines[0] - 1 : source.lines[1]]
        assert not any(line.startswith("#") or not line.strip() for line in within)


@pytest.mark.parametrize("letter", ANSWERED_BY)
def test_the_score_lies_between_nothing_and_certainty_and_the_first_is_the_likeliest(
    letter: str,
) -> None:
    scores = [source.score or 0.0 for source in found(answers(letter)[0])]
    assert all(0 < score <= 1 for score in scores)
    assert scores == sorted(scores, reverse=True)
    assert 1 <= len(scores) <= 2


@pytest.mark.parametrize("letter", [*ANSWERED_BY, *UNTOLD])
def test_every_sentence_passes_the_check_by_a_line_of_a_note(letter: str) -> None:
    (answer,) = answers(letter, "staff")
    for claim in as_json(answered(letter, "staff"))["answers"][0]["checks"]:
        assert claim["result"] == "supported"
        note, line = claim["row"].split(":")
        assert lines(note)[int(line) - 1].strip()
        if claim["rule"] == "note":
            assert claim["claim"] in said_in(note, int(line), int(line) + 2)
    assert len(answer.checks) >= 2


# What the notes do not say


@pytest.mark.parametrize("letter", OFF_THE_SUBJECT)
@pytest.mark.parametrize("audience", ["staff", "customers"])
def test_what_is_not_of_the_trade_is_handed_over(letter: str, audience: Audience) -> None:
    (answer,) = answers(letter, audience)
    assert (answer.outcome, answer.text, answer.parts) == ("hand over", OUTSIDE, ())
    assert found(answer) == []


@pytest.mark.parametrize("letter", UNTOLD)
@pytest.mark.parametrize("audience", ["staff", "customers"])
def test_where_the_notes_do_not_say_that_is_said_and_a_person_answers(
    letter: str, audience: Audience
) -> None:
    (answer,) = answers(letter, audience)
    assert (answer.outcome, answer.text, answer.parts) == ("note", SILENT, ())
    assert {source.note for source in answer.sources} == {"what-helps-us.md"}
    assert found(answer) == []
    assert answer.cautions == ()


def test_a_part_is_named_beside_a_question_that_the_notes_do_not_answer() -> None:
    part, silent = answers(f"{PART} {OFF_THE_SUBJECT[0]}")
    assert (part, silent.text) == (answers(PART)[0], SILENT)


# Several questions


@pytest.mark.parametrize("asks", [PART, DEPENDS, NO_MATCH])
@pytest.mark.parametrize("how", [MEASURE, SWELL, CHAIN])
def test_a_part_and_how_are_each_answered_in_the_order_asked(asks: str, how: str) -> None:
    alone = answers(asks)[0], answers(how)[0]
    for both, order in ((f"{asks} {how}", alone), (f"{how} {asks}", alone[::-1])):
        assert [bare(answer) for answer in answers(both)] == [bare(answer) for answer in order]


@pytest.mark.parametrize("how", [MEASURE, CHAIN])
def test_a_caution_is_said_once_in_a_letter(how: str) -> None:
    text = answered(f"{PART} {how}").text
    for caution in answers(PART)[0].cautions:
        assert text.count(caution) == 1


def test_so_are_both_in_one_sentence() -> None:
    (part,), (note,) = answers(PART), answers(CHAIN)
    first, then = answers(f"{PART[:-1]} and how do I set the chain?")
    assert (first, notes_of(then)) == (part, notes_of(note))
    first, then = answers("How do I set the chain, and which seal fits a Quellwick Tamsel of 1988?")
    assert (notes_of(first), then.parts) == (notes_of(note), part.parts)


def test_two_questions_of_how_have_two_answers_in_order() -> None:
    (measure,), (swell,) = answers(MEASURE), answers(SWELL)
    assert answers(f"{MEASURE} {SWELL}") == (measure, swell)
    assert answers(f"{SWELL} {MEASURE}") == (swell, measure)


def test_a_question_asked_twice_is_answered_once() -> None:
    assert answers(f"{MEASURE} {MEASURE}") == answers(MEASURE)
    assert answers(f"{MEASURE} I ask again: {MEASURE.lower()}") == answers(MEASURE)
    assert answers(f"{MEASURE} {PART} {MEASURE}") == (*answers(MEASURE), *answers(PART))


def test_of_two_toilets_a_question_about_both_is_answered_once() -> None:
    letter = (
        "My Quellwick Tamsel is from 1988 and the Pembrill Orsavel upstairs from 1970. "
        "Which seals do I need, and how do I measure the opening?"
    )
    outcomes = [str(answer.outcome) for answer in answers(letter)]
    assert outcomes == ["part", "part", "note"]


# Who may read what

FOR_STAFF = {name: note for name, note in shop().notes.items() if note.audience == "staff"}
ASKED_BY_STAFF = [
    (name, wording)
    for name, note in FOR_STAFF.items()
    for section in note.sections.values()
    for wording in section.asked
]


@pytest.mark.parametrize(("note", "letter"), ASKED_BY_STAFF)
def test_a_note_for_staff_is_never_quoted_to_customers(note: str, letter: str) -> None:
    sentences = [s.text for part in FOR_STAFF[note].sections.values() for s in part.sentences]
    for answer in answers(letter):
        assert f"{note}.md" not in {source.note for source in answer.sources}
        assert not any(sentence in answer.text for sentence in sentences)
        assert FOR_STAFF[note].title not in answer.text
        assert [c for c in answer.checks if c.result != "supported"] == []  # nothing had to fall


def test_staff_read_it() -> None:
    (answer,) = answers("how many things may i ask a customer in one reply", "staff")
    assert found(answer)[0].note == "how-we-answer-a-letter.md"
    assert len(ASKED_BY_STAFF) >= 20


# Hazards and cautions

HAZARDS = (
    "There is a smell of gas in the bathroom.",
    "The tank is cracked.",
    "Water is running down onto a socket.",
    "I mixed bleach and limescale remover and it stings.",
)


@pytest.mark.parametrize("hazard", HAZARDS)
@pytest.mark.parametrize("asks", [MEASURE, CHAIN, f"{PART} {MEASURE}"])
def test_a_hazard_is_answered_before_and_instead_of_everything(hazard: str, asks: str) -> None:
    for letter in (f"{hazard} {asks}", f"{asks} {hazard}"):
        (answer,) = answers(letter)
        assert (answer.outcome, answer.parts, found(answer)) == ("hand over", (), [])
        assert answer == answers(hazard)[0]


SHUT_THE_SUPPLY = (
    "Shut the water off at the stop below the tank and flush once before you lift the old seal out."
)
PORCELAIN = (
    "Lay the lid flat where nobody can knock it, and tighten nothing hard: "
    "porcelain cracks without warning."
)


@pytest.mark.parametrize("letter", INSTALLING)
def test_work_in_the_tank_comes_with_its_cautions(letter: str) -> None:
    (answer,) = answers(letter)
    assert answer.cautions == (SHUT_THE_SUPPLY, PORCELAIN)
    assert all(answer.text.count(caution) == 1 for caution in answer.cautions)
    by_name = [source.section for source in answer.sources if source.score is None]
    assert by_name == ["Shut the supply", "Porcelain"]


@pytest.mark.parametrize("letter", ANSWERED_BY)
def test_cautions_go_by_the_tags_of_the_notes_quoted(letter: str) -> None:
    (answer,) = answers(letter)
    tags = {tag for note in notes_of(answer) - {"safety"} for tag in shop().notes[note].tags}
    assert bool(answer.cautions) is ("installing" in tags)


# A part and the passages that it rests on


@pytest.mark.parametrize("letter", [PART, DEPENDS])
def test_a_part_comes_with_passages_on_its_style_and_their_scores(letter: str) -> None:
    (answer,) = answers(letter)
    styles = {shop().tables.seals[part.part_no].style for part in answer.parts}
    passages = found(answer)
    assert 1 <= len(passages) <= 3 * len(styles)
    assert len({(source.note, source.section) for source in passages}) == len(passages)
    for source in passages:
        assert styles & {*shop().notes[source.note.removesuffix(".md")].styles}
        assert 0 < (source.score or 0) <= 1
        assert said_in(source.note, *source.lines)
    spoken_of = {s for n in notes_of(answer) for s in shop().notes[n].styles}
    assert styles <= spoken_of


def test_the_passages_only_support_the_answer_and_are_not_quoted_in_it() -> None:
    (with_search,) = answers(PART)
    (without,) = answered(PART, searched=False).answers
    assert with_search.text == without.text
    assert set(without.sources) < set(with_search.sources)
    assert not CITED.search(with_search.text)


# Without the search


@pytest.mark.parametrize("letter", [*ANSWERED_BY, *UNTOLD])
def test_without_the_search_a_question_goes_to_a_person(letter: str) -> None:
    for answer in answered(letter, searched=False).answers:
        assert (answer.outcome, answer.text, found(answer)) == ("note", SILENT, [])


def test_without_it_a_part_is_named_all_the_same() -> None:
    part, note = answered(f"{PART} {MEASURE}", searched=False).answers
    assert (part.parts, part.text) == (answers(PART)[0].parts, answers(PART)[0].text)
    assert note.text == SILENT
    assert found(part) == []


# As JSON


@pytest.mark.parametrize("letter", [MEASURE, CHAIN, PART, f"{DEPENDS} {SWELL}", UNTOLD[0]])
def test_the_object_that_is_printed_has_a_score_for_what_was_searched(letter: str) -> None:
    for told, answer in zip(as_json(answered(letter))["answers"], answers(letter), strict=True):
        assert len(told["sources"]) == len(answer.sources) > 0
        for row, source in zip(told["sources"], answer.sources, strict=True):
            assert set(row) == {"note", "section", "lines", "score"}
            assert row["lines"] == [*source.lines]
            quoted_by_name = row["note"] in {
                "what-helps-us.md",
                "before-you-order.md",
                "is-the-valve-the-original.md",
                "safety.md",
            }
            assert (row["score"] is None) is quoted_by_name
            assert quoted_by_name or isinstance(row["score"], float)
