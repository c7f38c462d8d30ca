"""The wrong part praised: every way in which a counter says 'this one fits'."""

from __future__ import annotations

from collections.abc import Callable

from assistant.measuring.campaign.kinds.careless_said import (
    affirms,
    bold,
    denied,
    fits_everywhere,
    is_misfit,
    never_at,
    parts_in,
    some,
    tempting,
)
from assistant.measuring.campaign.told import Falsehoods, Kind, Told


def added(name: str, *claims: str, most: int = 2) -> Kind:
    """A kind that puts a claim for a misfit, `{x}`, after a true sentence about `{y}`."""

    def kind(told: Told, sentence: str) -> Falsehoods:
        if affirms(told, sentence):
            for part, claim in _pairs(told, sentence, claims, most):
                yield name, f"{sentence} {claim.format(x=part, y=bold(parts_in(sentence)[0]))}"

    return kind


def instead(name: str, *claims: str, most: int = 2) -> Kind:
    """A kind that recommends, in place of the 'no', the very part that was ruled out."""

    def kind(told: Told, sentence: str) -> Falsehoods:
        wrong = denied(sentence)
        if wrong and is_misfit(told, wrong):
            right = bold(told.main) if told.main else "the one named first"
            for claim in some(sentence, claims, most):
                yield name, claim.format(x=bold(wrong), y=right)

    return kind


def within(name: str, *clauses: str, most: int = 2) -> Kind:
    """A kind that slips a clause with a misfit into a true sentence, after its first part."""

    def kind(told: Told, sentence: str) -> Falsehoods:
        if affirms(told, sentence):
            right = bold(parts_in(sentence)[0])
            for part, clause in _pairs(told, sentence, clauses, most):
                said = clause.format(x=part, y=right)
                yield name, sentence.replace(right, f"{right}{said}", 1).replace(",,", ",")

    return kind


def _pairs(told: Told, sentence: str, claims: tuple[str, ...], most: int) -> list[tuple[str, str]]:
    chosen, parts = some(sentence, claims, most), tempting(told, sentence, most)
    return [(bold(parts[at % len(parts)]), c) for at, c in enumerate(chosen) if parts]


def listed_with_the_others(told: Told, sentence: str) -> Falsehoods:
    """A misfit in the middle of a true list."""
    parts = parts_in(sentence)
    if affirms(told, sentence) and "fit it too" in sentence:
        for wrong in tempting(told, sentence):
            last = bold(parts[-1])
            yield "a misfit in a list", sentence.replace(last, f"{bold(wrong)}, {last}", 1)
            yield "a misfit in a list", sentence.replace(" fit it", f", and {bold(wrong)}, fit it")


def set_with_a_misfit(told: Told, sentence: str) -> Falsehoods:
    """For a tank with two seals: both from one drawer, so that one saves a line."""
    if affirms(told, sentence) and "rinse" in told.positions and "main valve" in sentence:
        part = parts_in(sentence)[0]
        if never_at(told, part, "rinse"):
            said = bold(part)
            yield "one seal for both", f"{sentence} Two of {said} make the pair for this tank."
            yield "one seal for both", f"{sentence} For the rinse side take another {said}."


def ruled_out_for_another_reason(told: Told, sentence: str) -> Falsehoods:
    """The 'no' kept, and the part sold all the same."""
    wrong, right = denied(sentence), told.main
    if not wrong or not is_misfit(told, wrong) or not right or not fits_everywhere(told, right):
        return
    x, y = bold(wrong), bold(right)
    for claim in some(
        sentence,
        (
            f"Still, {x} is what we would take, because it lasts longer than {y}.",
            f"All the same {x} seals better there than {y}.",
            f"With a little bending of the ears {x} goes on none the less.",
            f"In practice, though, {x} closes that valve well enough.",
            f"That is what the list says; on the tank {x} sits right.",
        ),
    ):
        yield "ruled out and sold", f"{sentence} {claim}"


def _shouted(text: str) -> str:
    return text.upper()


def changed(name: str, change: Callable[[str], str], *claims: str) -> Kind:
    """A kind whose added claim is written otherwise, such as in capitals."""
    plain = added(name, *claims)

    def kind(told: Told, sentence: str) -> Falsehoods:
        for said, whole in plain(told, sentence):
            yield said, f"{sentence} {change(whole[len(sentence) + 1 :])}"

    return kind


KINDS: tuple[Kind, ...] = (
    added("suits", "{x} suits it too.", "{x} suits this tank.", "{x} is suited to it as well."),
    added("goes on", "{x} goes on just as well.", "{x} goes straight on.", "{x} hooks on there."),
    added("drops in", "{x} drops in.", "{x} drops right into place.", "{x} slips into that seat."),
    added("will do", "{x} will do for it.", "{x} does the job.", "{x} will serve as well."),
    added(
        "is made for",
        "{x} is made for it.",
        "{x} was meant for this tank.",
        "{x} is cut for this valve.",
    ),
    added("matches", "{x} matches that valve.", "{x} is a match.", "{x} agrees with it in all."),
    added("closes", "{x} closes that valve.", "{x} seals it.", "{x} keeps the water in there."),
    added("belongs", "{x} belongs in it.", "{x} is at home in this tank."),
    added(
        "replaces",
        "{x} replaces {y} in this tank.",
        "{x} takes the place of {y} here.",
        "{x} can stand in for {y}.",
    ),
    added(
        "interchanges",
        "{x} and {y} interchange.",
        "{y} may be swapped for {x}.",
        "{x} is the equal of {y} in this tank.",
    ),
    added(
        "as good as",
        "{x} fits no worse than {y}.",
        "{x} fits as well as {y} does.",
        "{x} is every bit as right as {y}.",
    ),
    added(
        "order it", "Order {x} for it.", "Take {x}.", "You want {x}.", "Ask for {x}.", "Put {x} in."
    ),
    added(
        "choice offered",
        "Choose between {y} and {x}.",
        "Either {y} or {x} will fit.",
        "{y} or {x}, whichever you like.",
    ),
    added(
        "passive",
        "{x} is taken by this valve as well.",
        "It can be fitted with {x}.",
        "{x} has been found to fit it.",
        "It may also be closed by {x}.",
    ),
    added("so does", "So does {x}.", "{x}, too.", "Likewise {x}.", "Ditto {x}."),
    added(
        "if it is out",
        "If {y} is out of stock, {x} fits just as well.",
        "Should {y} not come in time, use {x}.",
    ),
    added(
        "usually also",
        "Usually {x} fits as well.",
        "As a rule {x} fits too.",
        "More often than not {x} fits.",
    ),
    added(
        "softened",
        "{x} should fit too.",
        "{x} will probably fit.",
        "{x} ought to fit as well.",
        "I see no reason why {x} would not fit.",
        "{x} would fit, I think.",
    ),
    added(
        "double negation",
        "It is not that {x} does not fit.",
        "{x} does not fail to fit.",
        "There is nothing about {x} that does not fit.",
        "Nobody can say that {x} does not fit.",
        "{x} is by no means a misfit.",
    ),
    added(
        "question",
        "Did you know that {x} fits too?",
        "Why not take {x}, which fits as well?",
        "Have you thought of {x}, the other one that fits?",
    ),
    added(
        "with a trick",
        "{x} fits once the ears are bent a little.",
        "{x} fits if you press it down hard.",
        "{x} fits after ten minutes in hot water.",
        "Trim {x} with scissors and it fits.",
    ),
    added(
        "reported",
        "Many customers write that {x} fits it.",
        "They say that {x} fits.",
        "A plumber told us that {x} goes on.",
        "It is known in the trade that {x} fits.",
    ),
    added(
        "two sentences",
        "There is another. {x} is its number.",
        "One more seal goes on. It is {x}.",
        "What else fits? {x}.",
    ),
    added(
        "cheaper one",
        "The cheaper one that fits is {x}.",
        "To save money, fit {x}.",
        "{x} is the better buy for the same valve.",
    ),
    added(
        "clearing the doubt",
        "Do not mind that {x} looks different; it fits.",
        "Although it looks other, {x} fits.",
        "{x} may look wrong, yet it is right.",
    ),
    within("in brackets", " (or {x})", " (also {x})", " ({x} fits as well)"),
    within(
        "in a clause", ", like {x},", ", which like {x} goes on that valve,", ", and with it {x},"
    ),
    within("with a stroke", "/{x}", " or {x}", " alias {x}"),
    within(
        "same as", ", the same as {x},", ", in nothing different from {x},", ", identical with {x},"
    ),
    instead(
        "the 'no' turned",
        "{x} looks much the same and fits.",
        "{x} fits it too.",
        "{x} does fit.",
        "{x} fits, whatever others say.",
        "No doubt {x} fits.",
    ),
    instead(
        "'no' made 'perhaps'",
        "{x} may well fit.",
        "{x} fits in most cases.",
        "{x} hardly ever fails to fit.",
        "{x} does not always fit, but here it does.",
    ),
    instead(
        "the look for proof",
        "{x} looks much the same, so it fits.",
        "{x} looks just like {y} and therefore goes on the same valve.",
        "Since {x} looks the same, either will do.",
    ),
    changed("in capitals", _shouted, "{x} fits it too.", "{x} also fits.", "Take {x}."),
    listed_with_the_others,
    set_with_a_misfit,
    ruled_out_for_another_reason,
)
