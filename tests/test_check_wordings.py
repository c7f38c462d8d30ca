"""Every wording the checker accepts: no value in it is ever passed over unread.

Each pattern is spelled out at random with values that no table holds; whatever claim it then
makes cannot be supported.
"""

from __future__ import annotations

import random
import re
from decimal import Decimal
from typing import Any

import pytest
from checking_tables import TABLES

from assistant.answers.check.attributes import Attribute
from assistant.answers.check.cards import attributes, by_wording, limits, said, traits
from assistant.answers.check.context import Context, Given, Unreadable
from assistant.answers.check.frames import PLAIN, Frame, Reading
from assistant.answers.check.items import Item, Length, Volume
from assistant.answers.check.lexicon import lexicon_of
from assistant.answers.check.line import Line
from assistant.answers.check.lookup import Place
from assistant.answers.check.patterns import PIECES
from assistant.answers.check.registry import accepted, frames
from assistant.answers.check.scope import Scope

GIVEN = Given(TABLES, lexicon_of(TABLES), "staff", "a letter", "$")
PART, BUILD = "SL-2041", "zt2"
NEVER = Attribute("never", read=lambda line, words: words, test=lambda tables, seal, said: False)

ABSURD: dict[str, Any] = {
    "L": Length(777.0, "mm"), "G": Volume(777.0, 777.0), "D": Decimal("777.77"), "I": 777.0,
    "Y": 1851, "R": (1851, 1851), "N": ("zz",), "C": ("zz",), "A": ("zz",), "T": ("zz",),
    "B": ("zz",), "K": ("zz",), "W": ("zz",), "S": ("zz",), "H": ("zz",), "Q": "no such words",
    "F": [(NEVER, "zz", "zz")], "J": [(NEVER, "zz", "zz")], "O": (),
}  # fmt: skip
SOUND: dict[str, Any] = {
    "P": (PART,), "X": Scope((BUILD,), label="the toilet"), "M": (BUILD,), "Z": ("main",),
}  # fmt: skip
_TOKEN = re.compile(r"\{(?:(\w+):)?(\w+)\}|[()|?*+]|[^\s(){}|?*+]+")


def spelled(pattern: str, choose: random.Random, items: list[Item]) -> str:
    """One line that a pattern accepts, its items put into `items`."""
    tokens = [m.group() for m in _TOKEN.finditer(pattern)]
    text, end = _choice(tokens, 0, choose, items)
    assert end == len(tokens), pattern
    return text


def _choice(
    tokens: list[str], at: int, choose: random.Random, items: list[Item]
) -> tuple[str, int]:
    branches: list[list[str]] = [[]]
    depth = 0
    start = at
    while at < len(tokens):
        token = tokens[at]
        if token == ")" and depth == 0:
            break
        depth += {"(": 1, ")": -1}.get(token, 0)
        if token == "|" and depth == 0:
            branches.append([])
        else:
            branches[-1].append(token)
        at += 1
    assert at >= start
    return _row(choose.choice(branches), choose, items), at


def _row(tokens: list[str], choose: random.Random, items: list[Item]) -> str:
    text, at = "", 0
    while at < len(tokens):
        if tokens[at] == "(":
            end = _closing(tokens, at)
            inner, follows = tokens[at + 1 : end], end + 1
        else:
            inner, follows = [tokens[at]], at + 1
        sign = tokens[follows] if follows < len(tokens) and tokens[follows] in "?*+" else ""
        if not (sign in "?*" and sign and choose.random() < 0.5):
            text += (
                _choice(inner, 0, choose, items)[0]
                if tokens[at] == "("
                else _one(tokens[at], choose, items)
            )
        at = follows + len(sign)
    return text


def _closing(tokens: list[str], at: int) -> int:
    depth = 0
    for end in range(at, len(tokens)):
        depth += {"(": 1, ")": -1}.get(tokens[end], 0)
        if depth == 0:
            return end
    raise AssertionError(tokens)


def _one(token: str, choose: random.Random, items: list[Item]) -> str:
    found = re.fullmatch(r"\{(?:\w+:)?(\w+)\}", token)
    if not found:
        return f" {token}"
    name = found.group(1)
    if len(name) == 1 and name.isupper():
        value = SOUND.get(name, ABSURD.get(name))
        items.append(Item({name: value}, "zz"))
        return f" <{name}{len(items) - 1}>"
    return {"open": " (", "close": " )"}.get(name) or spelled(PIECES[name], choose, items)


def context() -> Context:
    """One in which 'it', 'they' and 'there' all mean something."""
    return Context(
        GIVEN, scope=Scope((BUILD,), label="the toilet"), parts=(PART,), old_part="SL-1980",
        relation="fits", by_measures=True, introduces=True,
    )  # fmt: skip


@pytest.mark.parametrize(
    "frame", [f for f in frames() if f.role != PLAIN], ids=lambda f: f"{f.rule}: {f.pattern}"[:80]
)
def test_a_value_that_no_table_holds_is_never_supported(frame: Frame) -> None:
    choose = random.Random(frame.pattern)
    for _ in range(60):
        items: list[Item] = []
        text = spelled(frame.pattern, choose, items)
        match = frame.regex.fullmatch(text)
        assert match, text
        absurd = [item for item in items if not set(item.values) & set(SOUND)]
        if not absurd or set("".join(i.kinds for i in absurd)) <= set("QO"):
            continue
        try:
            found = frame.findings(Reading(context(), Line(text, items, "."), match, frame.role))
        except Unreadable:
            continue
        assert not all(finding.sound for finding in found), (text, found)


@pytest.mark.parametrize(
    "pattern", [*by_wording(attributes(), "post"), *by_wording(attributes(), "adj")]
)
def test_nor_is_one_in_a_description_of_a_seal(pattern: str) -> None:
    cards = [a for a in attributes() if pattern in (*a.post, *a.adj)]
    choose = random.Random(pattern)
    for _ in range(40):
        items: list[Item] = []
        text = spelled(pattern, choose, items)
        claims = said(cards, Line(text, items, ""), text)
        assert claims, text
        if items:
            held = [card.test(TABLES, TABLES.seals[PART], value) for card, value, _ in claims]
            assert not all(held), text


@pytest.mark.parametrize("pattern", [*by_wording(traits(), "post"), *by_wording(traits(), "pre")])
def test_nor_is_one_in_the_description_of_a_toilet(pattern: str) -> None:
    cards = [t for t in traits() if pattern in (*t.post, *t.pre)]
    place = Place(TABLES.builds[BUILD], "main", TABLES.valves["p2u"])
    choose = random.Random(pattern)
    for _ in range(40):
        items: list[Item] = []
        text = spelled(pattern, choose, items)
        found = limits(cards, Line(text, items, ""), text)
        assert found, text
        if items:
            assert not all(limit.met(place) for limit in found), text


def test_every_wording_can_be_listed_for_those_who_write_answers() -> None:
    assert (
        "fits",
        "{t:toilet}? {adv}* {take} {adv}* {s:counted_parts} {p:pos}? {adv}*",
    ) in accepted()
    assert ("connecting", ", and") in accepted()
