"""What no table and no note can bear out: promises, praise, tests and authorities made up."""

from __future__ import annotations

import re

from assistant.measuring.campaign.kinds.careless_said import (
    affirms,
    bold,
    ended,
    parts_in,
    row_meant,
    some,
)
from assistant.measuring.campaign.told import Falsehoods, Kind, Told

SHELF = re.compile(r"\bcosts \$|\bis in stock\b|\bis to order\b")


def promised(name: str, *promises: str, most: int = 2) -> Kind:
    """A kind that adds a promise to what is said of a part, `{y}`, or of its price."""

    def kind(told: Told, sentence: str) -> Falsehoods:
        if affirms(told, sentence) or (parts_in(sentence) and SHELF.search(sentence)):
            part = bold(parts_in(sentence)[0])
            for promise in some(sentence, promises, most):
                yield name, f"{sentence} {promise.format(y=part)}"

    return kind


def praised(name: str, *clauses: str, most: int = 2) -> Kind:
    """A kind that puts praise before the full stop of a sentence about a part."""

    def kind(told: Told, sentence: str) -> Falsehoods:
        if affirms(told, sentence) or (parts_in(sentence) and SHELF.search(sentence)):
            for clause in some(sentence, clauses, most):
                yield name, ended(sentence, clause)

    return kind


def sure_of_itself(told: Told, sentence: str) -> Falsehoods:
    """'Could fit by the measurements' made a certainty."""
    if "could fit, going by the measurements alone" not in sentence or told.builds:
        return
    for certain in (
        "will fit, as the measurements prove",
        "is certain to fit",
        "cannot fail to fit, measured as you did",
    ):
        said = sentence.replace("could fit, going by the measurements alone", certain)
        yield "a perhaps made certain", said


def stock_made_up(told: Told, sentence: str) -> Falsehoods:
    """A shelf that is fuller than it is, and a part to order that is on its way."""
    row = row_meant(told, sentence)
    if row is None or not SHELF.search(sentence):
        return
    part = bold(row["part_no"])
    if row["on_hand"] == "0":
        yield "stock made up", f"{sentence} We have a box of {part} under the counter."
        yield "stock made up", f"{sentence} A few of them lie on the shelf."
    yield "stock made up", f"{sentence} Another hundred come in on Thursday."
    yield "stock made up", f"{sentence} We have put one aside for you."


def returns_changed(told: Told, sentence: str) -> Falsehoods:
    """The shop's own rules made kinder, or harsher, than they are."""
    for true, false in (
        ("within 30 days", "within a year"),
        ("within 30 days", "at any time"),
        ("with the bag they came in", "with or without their bag"),
        ("is refunded even if it has been wet once", "is refunded twice over"),
        ("is refunded even if it has been wet once", "is not refunded once it was wet"),
        ("2 o'clock", "5 o'clock"),
        ("one to three weeks", "two days"),
        ("go out the same day", "arrive the same day"),
    ):
        if true in sentence:
            yield "the shop's rules changed", sentence.replace(true, false)


def seen_what_was_not_sent(told: Told, sentence: str) -> Falsehoods:
    """A photograph nobody sent, a tank nobody opened."""
    sent = re.search(r"photo|picture|attach", told.letter, re.IGNORECASE)
    if affirms(told, sentence) and not sent:
        yield "a photograph made up", f"{sentence} Your photograph shows the same valve."
        yield "a photograph made up", f"{sentence} We can see from your picture that it fits."
        yield "a visit made up", f"{sentence} We looked into your tank last week."


KINDS: tuple[Kind, ...] = (
    promised(
        "guaranteed",
        "It is guaranteed to fit.",
        "We guarantee that {y} fits.",
        "{y} comes with a ten-year guarantee.",
        "You have our word that it closes.",
        "If it leaks, we pay your water bill.",
    ),
    promised(
        "never again",
        "It will never leak.",
        "You will not need another for twenty years.",
        "{y} lasts a lifetime.",
        "That ends the trouble for good.",
    ),
    promised(
        "delivery",
        "It will be with you tomorrow.",
        "Delivery is free.",
        "We post it within the hour.",
        "It reaches you by Friday at the latest.",
    ),
    promised(
        "discount",
        "There is ten per cent off this week.",
        "Two cost as much as one.",
        "The price goes up on Monday.",
        "Mention this letter and it is half the price.",
    ),
    promised(
        "tests made up",
        "We have fitted it ourselves in two hundred houses.",
        "Our laboratory opened and closed {y} a hundred thousand times.",
        "It was under test for five years without a drop.",
        "Of a thousand sold, none came back.",
    ),
    promised(
        "authority made up",
        "The maker has confirmed this by telephone.",
        "Every licensed plumber uses {y}.",
        "An independent institute recommends it.",
        "The water company asks for {y}.",
        "The local code allows no other.",
    ),
    promised(
        "certified",
        "{y} is certified for drinking water.",
        "It meets every standard.",
        "It is approved by the authorities.",
    ),
    promised(
        "most sold",
        "It is our best seller.",
        "Most customers choose {y}.",
        "We sell more of it than of any other.",
        "Nine of ten customers come back for it.",
    ),
    promised(
        "best",
        "No seal closes better.",
        "{y} is the best seal there is.",
        "Nothing else on the market comes near it.",
    ),
    promised(
        "saves water",
        "It saves you 30 gallons a day.",
        "Your water bill will halve.",
        "It makes the flush stronger.",
    ),
    promised(
        "stands everything",
        "Cleaning tablets do it no harm.",
        "Chlorine cannot touch it.",
        "It does not swell, whatever the water.",
    ),
    promised(
        "needs no checking",
        "There is no need to measure anything first.",
        "You need not look into the tank.",
        "A child could fit it in a minute.",
        "It needs no adjusting at all.",
    ),
    promised(
        "sure of the toilet",
        "We know for certain that yours is what its name says.",
        "Somebody of ours has seen your tank.",
        "The date in the tank cannot mislead.",
    ),
    promised(
        "sure of the fault",
        "The seal is the cause, and nothing else.",
        "With it the tank will stop refilling.",
        "No other part of yours is worn.",
    ),
    promised(
        "alike since ever",
        "{y} has not been altered since the first day.",
        "It is the part that was in your tank when it was new.",
    ),
    praised(
        "praise",
        ", and better made than any other",
        ", the finest of its kind",
        ", which nobody has ever sent back",
    ),
    praised(
        "hurry",
        ", but not after tomorrow",
        ", and the next price is higher",
        ", and the supplier has stopped sending them",
    ),
    praised(
        "never failed",
        ", and it has never failed anybody",
        ", and it cannot be fitted wrongly",
        ", and nobody has ever had to change it again",
    ),
    sure_of_itself,
    stock_made_up,
    returns_changed,
    seen_what_was_not_sent,
)
