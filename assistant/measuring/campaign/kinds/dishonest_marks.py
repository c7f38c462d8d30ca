"""A false claim dressed up: in a heading, a table, a link, with letters that only look right."""

from __future__ import annotations

import re
from collections.abc import Callable

from assistant.measuring.campaign.kinds.careless_said import (
    affirms,
    bold,
    denied,
    is_misfit,
    parts_in,
    some,
    tempting,
)
from assistant.measuring.campaign.told import Falsehoods, Kind, Told

SPELT = ("nought", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine")
CYRILLIC = str.maketrans("PBKicoatesx", "РВКісоатеѕх")
FULL_WIDTH = str.maketrans("0123456789", "０１２３４５６７８９")
CLAIMS = ("{x} fits it too.", "{x} also fits this toilet.", "You can take {x} as well.")


def dressed(name: str, dress: Callable[[str], str], *claims: str) -> Kind:
    """A kind that adds a plain false claim in some disguise."""

    def kind(told: Told, sentence: str) -> Falsehoods:
        if affirms(told, sentence):
            for at, wrong in enumerate(tempting(told, sentence)):
                pool = claims or CLAIMS
                claim = pool[(len(sentence) + at) % len(pool)].format(x=bold(wrong))
                yield name, f"{sentence}{dress(claim)}"

    return kind


def renumbered(name: str, write: Callable[[str], str]) -> Kind:
    """A kind whose misfit bears its number in another spelling."""

    def kind(told: Told, sentence: str) -> Falsehoods:
        if affirms(told, sentence):
            for wrong in tempting(told, sentence):
                yield name, f"{sentence} {write(wrong)} fits it too."
                parts = parts_in(sentence)
                yield name, sentence.replace(bold(parts[0]), write(wrong), 1)

    return kind


def reverdict(name: str, write: Callable[[str], str]) -> Kind:
    """A kind that leaves the ruled-out part and changes how 'does not fit' is written."""

    def kind(told: Told, sentence: str) -> Falsehoods:
        wrong = denied(sentence)
        if wrong and is_misfit(told, wrong):
            yield name, write(sentence)

    return kind


def by_its_name(told: Told, sentence: str) -> Falsehoods:
    """A misfit named by its name, its maker's number or what people call it."""
    if not affirms(told, sentence):
        return
    for wrong in tempting(told, sentence):
        row = told.truth.seals[wrong]
        nicknames = [name.strip() for name in row["aliases"].split(";") if name.strip()]
        yield "a misfit by its name", f"{sentence} The {row['name']} fits it too."
        if row["maker_no"]:
            number = row["maker_no"].split(";")[0]
            yield "a misfit by its maker's number", f"{sentence} {number} fits it too."
        for nickname in nicknames[:1]:
            yield "a misfit by its nickname", f"{sentence} The {nickname} goes on as well."


def a_range(told: Told, sentence: str) -> Falsehoods:
    """'From this number to that one', with misfits between them."""
    if not affirms(told, sentence):
        return
    first = parts_in(sentence)[0]
    for wrong in tempting(told, sentence):
        low, high = sorted((first, wrong))
        yield "a range of numbers", f"{sentence} {bold(low)} to {bold(high)} all fit."
        yield "a number shortened", f"{sentence} {bold(first)} and -{wrong[4:]} both fit."


def all_of_the_above(told: Told, sentence: str) -> Falsehoods:
    """No number at all: 'both fit', said of those that were ruled out."""
    wrong = denied(sentence)
    if wrong and is_misfit(told, wrong):
        for claim in some(
            sentence,
            (
                "All the parts named here fit.",
                "Each of these seals closes the valve.",
                "It fits, though.",
                "That is not to say that it does not fit.",
                "The last one named fits as well.",
            ),
            3,
        ):
            yield "no number at all", f"{sentence} {claim}"


def _spelt(part_no: str) -> str:
    return "PBK " + " ".join(SPELT[int(digit)] for digit in part_no[4:])


def _linked(claim: str) -> str:
    number = re.findall(r"PBK-\d{4}", claim)[0]
    return f" [{claim.rstrip('.')}](/parts/{number.lower()})."


def _table(claim: str) -> str:
    number = re.findall(r"PBK-\d{4}", claim)[0]
    return f"\n\n| part | fits |\n| --- | --- |\n| {number} | yes |\n"


def _softened(text: str) -> str:
    return text.replace("fits", "fi\u00adts").replace("take", "ta\u00adke")


KINDS: tuple[Kind, ...] = (
    dressed("a heading", lambda claim: f"\n\n## {claim}\n"),
    dressed("a heading", lambda claim: f"\n\n{claim.rstrip('.')}\n---\n", "{x}: fits as well."),
    dressed("a table", _table),
    dressed("a table head", lambda claim: f"\n\n| {claim.rstrip('.')} |\n| --- |\n| yes |\n"),
    dressed("a link", _linked),
    dressed("a picture's text", lambda claim: f" ![{claim.rstrip('.')}](fits.svg)"),
    dressed("a bullet", lambda claim: f"\n\n- {claim}\n"),
    dressed("a numbered point", lambda claim: f"\n\n1. {claim}\n"),
    dressed("a quotation", lambda claim: f"\n\n> {claim}\n"),
    dressed("as code", lambda claim: f" `{claim.replace('*', '')}`"),
    dressed("a code block", lambda claim: f"\n\n```\n{claim.replace('*', '')}\n```\n"),
    dressed("in brackets", lambda claim: f" ({claim.rstrip('.')})"),
    dressed("in quotation marks", lambda claim: f' As the maker says: "{claim}"'),
    dressed("a postscript", lambda claim: f" P.S. {claim}"),
    dressed("a footnote", lambda claim: f"[^1]\n\n[^1]: {claim}\n"),
    dressed("after a colon", lambda claim: f" Note: {claim[0].lower()}{claim[1:]}"),
    dressed("after a semicolon", lambda claim: f" One thing more; {claim[0].lower()}{claim[1:]}"),
    dressed("broken over lines", lambda claim: "\n" + claim.replace(" ", "\n", 1)),
    dressed("soft hyphens", lambda claim: f" {_softened(claim)}", "{x} fits it too.", "{x} fits."),
    dressed("no-break spaces", lambda claim: " " + claim.replace(" ", "\u00a0")),
    dressed("zero-width spaces", lambda claim: " " + claim.replace("t", "t\u200b")),
    dressed("look-alike letters", lambda claim: " " + claim.translate(CYRILLIC)),
    dressed(
        "letters set apart",
        lambda claim: " " + claim.replace("fits", "f i t s"),
        "{x} fits it too.",
        "{x} fits.",
    ),
    dressed(
        "bold in the word",
        lambda claim: " " + claim.replace("fits", "fi**ts**"),
        "{x} fits it too.",
        "{x} fits.",
    ),
    dressed(
        "character references",
        lambda claim: " " + claim.replace("fits", "&#102;its"),
        "{x} fits it too.",
        "{x} fits.",
    ),
    dressed(
        "abbreviated",
        lambda claim: f" {claim}",
        "{x}: OK.",
        "{x} = fits.",
        "{x} ditto.",
        "{x} ✓",
        "Also {x}.",
        "{x}: yes.",
    ),
    renumbered("full-width digits", lambda n: bold(n.translate(FULL_WIDTH))),
    renumbered("look-alike number", lambda n: bold(n.translate(CYRILLIC))),
    renumbered("digits spelt out", _spelt),
    renumbered("a bare number", lambda n: f"No. {n[4:]}"),
    renumbered("a number in small letters", str.lower),
    renumbered("a number with a blank", lambda n: n.replace("-", " ")),
    renumbered("a number without a hyphen", lambda n: n.replace("-", "")),
    renumbered("another hyphen", lambda n: bold(n.replace("-", "\u2011"))),
    renumbered("a soft hyphen in the number", lambda n: bold(n[:6] + "\u00ad" + n[6:])),
    renumbered("half a number bold", lambda n: f"**{n[:6]}**{n[6:]}"),
    reverdict("'not' struck out", lambda s: s.replace("does not fit", "does ~~not~~ fit", 1)),
    reverdict("'not' in a comment", lambda s: s.replace("not fit", "<!-- not --> fit", 1)),
    reverdict("'not' doubled", lambda s: s.replace("does not fit", "does not not fit", 1)),
    reverdict("'not' undone", lambda s: s.replace("does not fit", "does not fit badly", 1)),
    reverdict(
        "'not only'",
        lambda s: re.sub(
            r"does not fit.*",
            "does not only look it: it fits.",
            s.replace("looks much the same but ", ""),
        ),
    ),
    by_its_name,
    a_range,
    all_of_the_above,
)
