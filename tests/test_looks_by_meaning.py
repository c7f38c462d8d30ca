"""Looks matched by meaning: said back to the customer, and of no weight in what is decided.

The model says which style of seal unusual words sound like. Words alone never settle a style, so
the decision is the same with and without them.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from functools import cache

import pytest
from demonstration import rows, shop
from searching import demo_search

from assistant.answers.answer import Reply, as_json
from assistant.answers.check import check
from assistant.answers.compose.case import Audience
from assistant.answers.reply import reply, statements
from assistant.fitment.decide import decide
from assistant.fitment.decision import Decision
from assistant.reading.facts import Fact, Facts
from assistant.reading.letters import letter_from_text
from assistant.reading.read import read

TODAY = date(2026, 11, 25)
PLAIN_NAMES = {row["style"]: row["plain_name"] for row in rows("styles")}


@cache
def answered(letter: str, audience: Audience = "customers", *, searched: bool = True) -> Reply:
    """The reply to a letter, with or without the search of the notes and looks."""
    search = demo_search() if searched else None
    made = letter_from_text(letter)
    return reply(shop(), made, audience=audience, today=TODAY, search=search)


def likened(letter: str) -> list[Fact]:
    """What the letter's wording sounds like."""
    return list(answered(letter).facts.named("style_like"))


def styles(letter: str) -> list[str]:
    """The styles alone."""
    return [style for fact in likened(letter) for style in fact.choices]


SOUNDS_LIKE = {
    "It looks like a black squash ball stuck on a knitting needle.": "tank-ball",
    "It looks like a figure of eight in rubber, one loop open round the pipe.": "ring-flapper",
    "It looks like a mouse's head, floppy, each ear with a hole for a stud.": "pegged-flapper",
    "It looks like a pudding basin hung from a lid that swings.": "half-ball-flapper",
    "It looks like a lump of polystyrene packing stuck on top of the flap.": "foam-flapper",
}
BASIN = next(letter for letter in SOUNDS_LIKE if "basin" in letter)

# The fact


@pytest.mark.parametrize(("letter", "style"), SOUNDS_LIKE.items())
def test_unusual_wording_gives_one_unsure_fact_by_meaning(letter: str, style: str) -> None:
    (fact,) = likened(letter)
    assert (fact.value, fact.of, fact.sure, fact.negated) == ((style,), "meaning", False, False)
    assert letter[fact.start : fact.end] == fact.words == letter


def test_it_is_listed_among_the_facts_as_unsure() -> None:
    (told,) = [f for f in as_json(answered(BASIN))["facts"] if f["name"] == "style_like"]
    assert told["value"] == ["half-ball-flapper"]
    assert (told["of"], told["sure"]) == ("meaning", False)
    assert BASIN[told["start"] : told["end"]] == told["words"]


def test_several_wordings_give_a_fact_each() -> None:
    assert styles(" ".join(SOUNDS_LIKE)) == [*SOUNDS_LIKE.values()][:4]


def test_without_the_search_nothing_is_matched_by_meaning() -> None:
    assert not answered(BASIN, searched=False).facts.named("style_like")


@pytest.mark.parametrize(
    "letter",
    ["It looks like half a tennis ball. Which seal?", "It is like half a tennis ball."],
)
def test_what_a_card_reads_is_not_matched_again(letter: str) -> None:
    assert answered(letter).facts.has("shape", "half ball")
    assert styles(letter) == []


OTHER_THINGS = (
    "It looks like a copper ball on a long arm that shuts the water off.",
    "It's like a grey cup that slides up a stem and stops the water coming in when it gets high.",
    "The chrome handle on the front looks loose and flops down.",
    "The arm from the handle is shaped like a bent nail, and it has snapped off at the bend.",
    "It looks like a big spongy doughnut between the tank and the bowl outside.",
    "It looks like the heavy china lid with a crack across the corner.",
    "The hose from the wall looks as if it is weeping.",
    "A small bendy tube squirts water underneath while it fills.",
    "It looks like rain tomorrow, and the dog is a bit like a bear.",
    "It looks just like any other one, nothing special.",
)


@pytest.mark.parametrize("letter", OTHER_THINGS)
def test_the_wording_of_other_things_is_no_style_of_seal(letter: str) -> None:
    assert styles(letter) == []


# What it decides: nothing

LETTERS = (
    *SOUNDS_LIKE,
    "",
    "Which seal do I need?",
    "It is like half a tennis ball. Which seal do I need?",
    "a little sail on the back",
    "The flapper has a little sail on the back. Which one do I need?",
    "Which seal fits a Quellwick Tamsel made in 1988?",
    "Which seal fits a Quellwick Tamsel?",
    "Which seal fits a Tamsel?",
    "Which seal fits a Quellwick?",
    "Which seal fits a Quellwick Tamsel of 1900?",
    "Which seal fits a Pembrill Orsavel? It has a canister.",
    "Our toilet is a Brindlecote Grand. Which seal?",
    "The number moulded on the old seal is PBK-6230. Which one do I need?",
    "Will PBK-6246 fit a Quellwick Tamsel of 1988?",
    "A flapper on pegs for a 2 inch opening, and the ears are 82 mm apart. Which one?",
    "The opening is 3 inches. It is a ball on a wire. Which seal?",
    "Two buttons in the lid, and it was made in 2005. Which seal?",
    "My toilet runs all night and the flapper is slimy. What do I need?",
)


def decided(facts: Facts) -> Decision:
    """What is decided, but for the facts that it was decided on."""
    return replace(decide(shop().counter, facts), told=Facts())


@pytest.mark.parametrize("letter", LETTERS)
def test_whatever_style_it_sounds_like_the_decision_is_the_same(letter: str) -> None:
    facts = read(letter_from_text(letter), shop().names, TODAY)
    for style in PLAIN_NAMES:
        sounds = Fact(
            name="style_like", value=(style,), words="x", start=0, end=1, of="meaning", sure=False
        )
        assert decided(facts.plus([sounds])) == decided(facts)


@pytest.mark.parametrize("letter", [letter for letter in LETTERS if "Which" in letter])
@pytest.mark.parametrize("audience", ["staff", "customers"])
def test_the_answer_names_the_same_parts_and_asks_the_same(letter: str, audience: Audience) -> None:
    beside = f"{BASIN} {letter}"
    seen, unseen = answered(beside, audience), answered(beside, audience, searched=False)
    assert seen.facts.named("style_like")
    for one, other in zip(seen.answers, unseen.answers, strict=True):
        assert (one.outcome, one.parts, one.also_fits) == (
            other.outcome,
            other.parts,
            other.also_fits,
        )
        assert (one.ruled_out, one.question) == (other.ruled_out, other.question)


@pytest.mark.parametrize(
    "letter",
    [
        *SOUNDS_LIKE,
        "a little sail on the back",
        "It is red and has a little sail on the back.",
        "Ours has a little sail on the back. Which seal do I need?",
        "like half a tennis ball",
        "It is like half a tennis ball. Which seal do I need?",
    ],
)
def test_a_look_alone_yields_no_part(letter: str) -> None:
    for answer in answered(letter).answers:
        assert answer.parts == ()
        assert answer.also_fits == ()
        assert "PBK-" not in answer.text


# What is said

SAID = '"{}" sounds like a {}, but words alone do not settle it.'


@pytest.mark.parametrize(("letter", "style"), SOUNDS_LIKE.items())
@pytest.mark.parametrize("audience", ["staff", "customers"])
def test_the_answer_says_what_the_words_sound_like_and_that_they_settle_nothing(
    letter: str, style: str, audience: Audience
) -> None:
    (answer,) = answered(letter, audience).answers
    said = SAID.format(letter.rstrip("."), PLAIN_NAMES[style])
    assert said in answer.text.split("\n\n")
    assert {c.result for c in answer.checks if c.sentence == said} == {"supported"}
    assert [c for c in answer.checks if c.result != "supported"] == []


def test_it_is_said_with_whatever_the_tables_leave_open() -> None:
    said = SAID.format(BASIN.rstrip("."), PLAIN_NAMES["half-ball-flapper"])
    for letter, outcome in (
        ("Which seal do I need?", "ask"),
        ("Which seal fits a Quellwick Tamsel?", "depends"),
        ("Which seal fits a Quellwick Tamsel of 1900?", "no match"),
    ):
        (answer,) = answered(f"{BASIN} {letter}").answers
        assert (answer.outcome, said in answer.text) == (outcome, True)


def test_beside_a_part_it_is_not_said_for_the_part_is_settled_without_it() -> None:
    letter = "Which seal fits a Quellwick Tamsel made in 1988?"
    (alone,), (beside,) = answered(letter).answers, answered(f"{BASIN} {letter}").answers
    assert beside.outcome == "part"
    assert beside.text == alone.text


def test_of_many_wordings_two_are_said() -> None:
    (answer,) = answered(" ".join(SOUNDS_LIKE)).answers
    assert answer.text.count("words alone do not settle it") == 2


def through_the_check(text: str) -> str:
    """What the check leaves of a text that answers the letter of the basin."""
    held = statements(shop())
    return check(
        text, shop().tables, audience="customers", statements=held, message=BASIN
    ).text.strip()


QUOTED = "like a pudding basin hung from a lid"


@pytest.mark.parametrize("style", PLAIN_NAMES.values())
def test_such_a_sentence_passes_the_check(style: str) -> None:
    said = SAID.format(QUOTED, style)
    assert through_the_check(said) == said


@pytest.mark.parametrize(
    "said",
    [
        SAID.format("shaped like a plum", "flapper with a half ball"),  # nobody wrote it
        SAID.format(QUOTED, "trapdoor with a spring"),  # no such style
        f'"{QUOTED}" sounds like a flapper with a half ball, and that settles it.',
        f'"{QUOTED}" is a flapper with a half ball, but words alone do not settle it.',
        f'"{QUOTED}" sounds like **PBK-6230**, but words alone do not settle it.',
        f'"{QUOTED}" sounds like a flapper with a half ball.',
    ],
)
def test_one_that_quotes_or_claims_more_does_not(said: str) -> None:
    assert through_the_check(said) == ""
