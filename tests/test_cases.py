"""A case: what was said, by which words, what took its place, what nobody knows.

Which words mean that somebody does not know is common usage of English, no source.
"""

from __future__ import annotations

import re
from datetime import UTC, date, datetime

import pytest
from demonstration import builds, fits, seals, shop

from assistant.answers.answer import as_json
from assistant.cases.case import Message, Offered, Put
from assistant.cases.choosing import sentence
from assistant.cases.in_full import in_full, pieces_of
from assistant.cases.talk import Said, Talk
from assistant.cases.telling import changed_line
from assistant.reading.facts import Interval
from assistant.reading.letters import letter_from_text
from assistant.reading.not_known import not_known
from assistant.reading.read import read

TODAY = date(2026, 11, 25)
QUESTIONS = shop().tables.questions


def after(*lines: str) -> Said:
    """The case after some lines of a customer."""
    talk = Talk(shop(), "customers", TODAY)
    return [talk.say(line) for line in lines][-1]


def asked(question: str) -> Offered:
    """A question as the shop puts it."""
    return Offered((Put(question, QUESTIONS[question].choices),))


def read_as(text: str, offered: Offered) -> dict[str, object]:
    """The facts of a reply, as they are read, by name."""
    said = "".join(p.text for p in pieces_of(text, offered) if not p.hidden)
    found = read(letter_from_text(said), shop().names, TODAY)
    return {f.name: f.value for f in found if f.sure and not f.negated}


DO_NOT_KNOW = [
    *("no idea", "dunno", "Don't know, sorry.", "not a clue mate", "I haven't a clue", "idk"),
    *("I couldn't say", "can't see any", "cant see one", "cannot find any", "I'm not sure"),
    *("it's worn off", "It is illegible", "worn away completely", "not visible", "forgot"),
    *("I'd rather not lift the lid", "I would prefer not to", "no idea, sorry!", "Who knows?"),
    *("no clue, before my time", "Hard to say.", "you tell me", "haven't got a ruler"),
]


@pytest.mark.parametrize("question", ["model_no", "made", "ears", "valve_replaced", "opening"])
@pytest.mark.parametrize("words", DO_NOT_KNOW)
def test_who_does_not_know_says_nothing_else(question: str, words: str) -> None:
    assert {q for u in not_known(words, (question,)) for q in u.questions} == {question}
    assert not read_as(words, asked(question))


@pytest.mark.parametrize(
    ("words", "questions"),
    [
        ("no idea how old it is", {"made"}),
        ("I can't read the number, it is all brown scale", {"model_no"}),
        ("The number has been scoured away", {"model_no"}),
        ("No date stamp that we could see", {"made"}),
        ("no date that I could find", {"made"}),
        ("the model name is rubbed off", {"model"}),
        ("I don't know the maker and the model", {"brand", "model"}),
        ("no number on the old flapper", {"old_part"}),
        ("I can't tell whether the valve is original", {"valve_replaced"}),
        ("not sure whether the tube is round", {"overflow"}),
    ],
)
def test_what_is_not_known_may_be_named(words: str, questions: set[str]) -> None:
    assert {q for u in not_known(words) for q in u.questions} == questions


@pytest.mark.parametrize(
    "words",
    [
        *("I don't know which flapper I need", "2005 or 2006, I cannot read it better than that"),
        *("it is dripping", "I can't get the flapper off", "the flapper is worn away", "up", "3"),
        *("the chain is too faint a word", "yes", "It reads D-671 A"),
    ],
)
def test_what_somebody_says_of_something_else_is_no_dont_know(words: str) -> None:
    assert not not_known(words, ("made",))


@pytest.mark.parametrize("words", ["no", "nope", "none", "nothing on it", "there isn't one"])
def test_that_there_is_no_number_answers_the_question_for_it(words: str) -> None:
    assert {q for u in not_known(words, ("old_part",)) for q in u.questions} == {"old_part"}
    assert not read_as(words, asked("old_part"))


def test_no_is_an_answer_where_it_can_be_one() -> None:
    assert read_as("no", asked("valve_replaced")) == {"valve_original": ("yes",)}
    assert "valve_original" not in read_as("no idea", asked("valve_replaced"))
    assert read_as("none", asked("ears"))["ears"] == ("none",)


def test_what_is_known_beside_what_is_not_is_read() -> None:
    said = after("It's a Quellwick", "no idea about the number but it is a Tamsel of 1985")
    assert said.standing.unknown == {"model_no"}
    assert said.reply.answers[0].parts[0].part_no == "PBK-6230"


def test_a_guess_after_dunno_is_an_answer() -> None:
    said = after("Cindrel Haume Vauncey please", "dunno, 1985 maybe")
    assert not said.standing.unknown
    assert said.standing.answered == {"made"}
    (told,) = [t for t in said.standing.told if t.fact.name == "made"]
    assert (told.fact.sure, told.words) == (False, "1985")


def test_a_bare_year_dates_the_toilet_whatever_was_asked() -> None:
    """What else could a year alone tell (common practice, no source)?"""
    said = after("Quellwick Tamsel please", "dunno, 1985 maybe")
    assert said.standing.unknown == {"overflow"}
    (told,) = [t for t in said.standing.told if t.fact.name == "made"]
    assert (told.fact.sure, told.words) == (False, "1985")


def test_what_is_told_later_is_unknown_no_longer() -> None:
    lines = ("It's a Quellwick", "can't find a number")
    assert after(*lines).standing.unknown == {"model_no"}
    assert not after(*lines, "found it: Q 418 in the tank").standing.unknown


CHOICES = [(q.question, c) for q in QUESTIONS.values() for c in q.choices]
CHOICES = [one for one in CHOICES if one[0] != "measured"]


@pytest.mark.parametrize(("question", "choice"), CHOICES)
def test_every_choice_that_is_offered_is_understood(question: str, choice: str) -> None:
    name = "valve_original" if (question, choice) == ("valve_replaced", "no") else question
    value = read_as(choice, asked(question))[name]
    if isinstance(value, Interval):
        assert float(choice) * 25.4 in value
    else:
        assert value == (("yes",) if question == "valve_replaced" else (choice,))


@pytest.mark.parametrize(
    "words",
    ["the second one you named", "the second", "2nd", "2", "b)", "option 2", "the last one",
     "the latter", "I think the second one", "number 2"],
)  # fmt: skip
def test_one_of_what_was_named_is_chosen_by_its_place(words: str) -> None:
    said = after("Which seal goes in an Iddlescombe Buddlemoor?", words)
    (answer,) = said.reply.answers
    assert str(answer.outcome) == "part"
    assert fits(answer.parts[0].part_no, "iddlescombe-buddlemoor-b")


def test_a_number_is_a_measure_where_measures_are_offered() -> None:
    assert read_as("2", asked("opening"))["opening"].low > 40
    assert read_as("the second", asked("opening"))["opening"].low > 58  # the second is 2.5


def test_a_choice_beyond_those_offered_is_none() -> None:
    assert "mount" not in read_as("the ninth", asked("mount"))
    assert "mount" not in read_as("9", asked("mount"))
    assert read_as("2", asked("mount"))["mount"] == ("ring",)


def test_a_part_named_before_is_asked_for_by_its_place() -> None:
    offered = Offered((), ("PBK-6230", "PBK-6357"))
    assert read_as("the second one you named please", offered)["part_no"] == ("PBK-6357",)


def test_what_is_said_beside_a_choice_is_read_too() -> None:
    line = "the second one you named then, ours is one of the later ones, we had it new in 2011"
    said = after("Which seal goes in an Iddlescombe Buddlemoor?", line)
    assert str(said.reply.answers[0].outcome) == "part"
    assert said.standing.facts.named("bought")[0].interval == Interval(2011, 2011)


def test_what_was_measured_is_told_afterwards() -> None:
    said = after("My toilet has no name. I measured 2 inches.", "the opening")
    assert said.standing.asked == ("measured", "model_no")
    assert said.standing.facts.named("opening")[0].nominal_in == (2.0,)
    seal = after("My toilet has no name. I measured 2 inches.", "the old seal")
    assert not seal.standing.facts.named("opening")


def test_every_fact_knows_its_message_and_its_words() -> None:
    said = after("It's a Quellwick", "Tamsel", "1985")
    messages = {m.number: m.text for m in said.case.messages}
    told = {t.fact.name: t for t in said.standing.told}
    assert {n: (t.message, t.words) for n, t in told.items()} == {
        "brand": (1, "Quellwick"), "model": (3, "Tamsel"), "made": (5, "1985"),
    }  # fmt: skip
    assert all(messages[t.message][t.start : t.end] == t.words for t in told.values())


@pytest.mark.parametrize(
    ("lines", "changed"),
    [
        (("Quellwick Tamsel, made 1998", "no wait, 2008"), 'Changed: made "1998", now "2008".'),
        (("Quellwick Tamsel from 1975", "no wait, it is a Brisnoe"),
         'Changed: "Tamsel", now "Brisnoe".'),
        (("Quellwick Tamsel, made 1998", "It is leaking."), None),
        (("Quellwick Tamsel, made 1998", "it was made in 1998"), None),
        (("Quellwick Tamsel, made 1998",), None),
    ],
)  # fmt: skip
def test_what_changed_is_told_in_the_customers_own_words(
    lines: tuple[str, ...], changed: str | None
) -> None:
    assert changed_line(after(*lines).changes) == changed


def test_a_change_is_told_once_and_kept() -> None:
    said = after("Quellwick Tamsel, made 1985", "sorry, I meant 1998", "and it leaks")
    assert not said.changes
    (change,) = said.standing.changes
    assert (change.old, change.old_message, change.now, change.message) == ("1985", 1, "1998", 3)


def test_two_years_are_asked_about_and_the_reply_counts() -> None:
    lines = ("Quellwick Tamsel, made 1985", "The stamp says it was made in 1998.")
    between = after(*lines)
    assert between.reply.answers[0].question.asks == "made"
    assert [[t.words for t in one] for one in between.standing.contradictions] == [["1985", "1998"]]
    then = after(*lines, "1998")
    assert not then.standing.contradictions
    assert str(then.reply.answers[0].outcome) == "part"
    assert changed_line(then.changes) == 'Changed: made "1985", now "1998".'


def test_a_number_and_a_year_that_do_not_go_together_are_told() -> None:
    said = after("Ostrevale Lumissole. Number OL 231, and the stamp says 1968. Which flapper?")
    assert {t.fact.name for t in said.standing.contradictions[0]} >= {"model_no", "made"}


def test_an_alarm_that_proved_false_is_over() -> None:
    lines = ("Hattilva Ruskelo, 2006 on the lid. Which ring?", "There is water on the floor!")
    assert str(after(*lines).reply.answers[0].outcome) == "hand over"
    said = after(*lines, "False alarm, the cat had tipped a bucket. The floor is dry.")
    assert str(said.reply.answers[0].outcome) == "part"
    assert [c.name for c in said.changes] == ["hazard"]


def test_a_smell_of_gas_is_not_over_because_the_floor_is_dry() -> None:
    said = after("Quellwick Tamsel 1985. I smell gas here.", "The floor is dry.")
    assert [str(a.outcome) for a in said.reply.answers] == ["hand over"]


def test_what_is_possible_narrows() -> None:
    maker, model, year = (
        after(*lines).standing.possible[0]
        for lines in (("A Quellwick",), ("A Quellwick Tamsel",), ("A Quellwick Tamsel of 1960",))
    )
    listed = {b for b, row in builds().items() if row["brand"] == "Quellwick"}
    assert {*maker.builds} == listed
    assert {*maker.builds} > {*model.builds} > {*year.builds}
    (build,) = year.builds
    living = {part for part, seal in seals().items() if seal["status"] != "discontinued"}
    assert {*year.seals} == {part for part in living if fits(part, build)}
    assert not after("I need a flapper").standing.possible[0].named


def test_thanks_leave_the_question_open() -> None:
    said = after("Quellwick Tamsel please", "thank you", "1985")
    assert said.reply.answers[0].parts[0].part_no == "PBK-6230"


def test_only_own_words_are_quoted_to_the_customer() -> None:
    lines = ["Quellwick Tamsel please", "1985", "The pegs point down.", "They point up.", "no idea"]
    talk = Talk(shop(), "customers", TODAY)
    for line in lines:
        said = talk.say(line)
        for quote in re.findall(r'"([^"]+)"', said.reply.text):
            assert any(quote in other for other in lines)


def test_the_object_has_the_choices_and_where_each_fact_stands() -> None:
    talk = Talk(shop(), "customers", TODAY)
    talk.say("hi, it is a Quellwick")
    said = talk.say("Tamsel")
    told = said.as_json()
    assert told["answers"] == as_json(said.reply)["answers"]
    assert told["answers"][0]["question"]["choices"] == ["round", "square"]
    texts = {m.number: m.text for m in said.case.messages}
    for fact in told["facts"]:
        assert texts[fact["message"]][fact["start"] : fact["end"]] == fact["words"]


def test_the_counters_own_messages_are_not_read() -> None:
    talk = Talk(shop(), "customers", TODAY)
    said = talk.say("A Quellwick Tamsel")
    other = Message(9, "counter", "It was made in 1985.", datetime.now(UTC))
    talk.case = said.case.plus(other)
    assert not talk.say("and it leaks").standing.facts.named("made")


def test_a_line_in_full() -> None:
    assert in_full("1985", "made") == "The toilet was made in 1985."
    assert in_full("1985. It leaks.", "made") == "The toilet was made in 1985. It leaks."
    assert in_full("dunno", "made") == ""
    assert in_full("No idea. It leaks!", "made") == "It leaks!"
    assert in_full("Yes, it was. It is blue.", "valve_replaced") == (
        "The flush valve has been replaced. It is blue."
    )
    assert in_full("A long line that says all for itself", "made").startswith("A long line")
    assert sentence("mount", "wire") == "It is a ball on a wire"
