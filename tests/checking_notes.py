"""A few notes of an invented shop, and the check that holds answers against them."""

from __future__ import annotations

from typing import Literal

from checking_tables import TABLES

from assistant.answers.check import Checked, Statement, Statements, check
from assistant.answers.compose.explain import citation

DRY = "Wipe the seat dry before you fit the new seal."
PITS = "It pits with age, and then no seal lies down on it."
TABLETS = "Leave cleaning tablets out of the tank."
SLACK = "A chain wants half an inch of slack."
LINKS = "It is shortened by opening a link."
STAFF = "Ask the buyer for a discount on full boxes."
NOTES = (
    Statement(DRY, "seats.md:12", title="The seat"),
    Statement(PITS, "seats.md:13", title="The seat"),
    Statement(TABLETS, "seats.md:20", title="The seat"),
    Statement(SLACK, "chains.md:9", title="Chains"),
    Statement(LINKS, "chains.md:10", title="Chains"),
    Statement(TABLETS, "chains.md:31", title="Chains"),
    Statement(STAFF, "buying.md:5", staff_only=True, title="Buying"),
    Statement("We never guess.", "buying.md:8", staff_only=True, title="Buying"),
    Statement("We never guess.", "shop.toml:promise"),
    Statement("Where does it leak?", "questions:leak"),
)
HELD = Statements(NOTES)
PRICE = "SL-2044 costs $4.90."  # what the tables support


def seen(
    text: str,
    audience: Literal["staff", "customers"] = "staff",
    statements: Statements = HELD,
) -> Checked:
    """The text after the check, against the notes above."""
    return check(text, TABLES, audience=audience, statements=statements, message="It leaks.")


def noted(*sentences: str) -> Checked:
    """An answer made of a note's sentences, one a line."""
    held = [Statement(s, f"stale.md:{n}", title="Stale") for n, s in enumerate(sentences, 7)]
    return seen(" ".join(sentences), statements=Statements(held))


def cites(title: str, first: int, last: int | None = None) -> str:
    """A citation as answers word it."""
    return citation(title, (first, last or first))
