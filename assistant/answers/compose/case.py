"""What a composer has at hand: the shop, who reads it, and pieces that every answer uses."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from typing import Literal

from assistant.answers.draft import Asked, Draft
from assistant.answers.words import COUNTS, bold, how_it_holds, inches, listed, value
from assistant.fitment.decision import Decision
from assistant.fitment.picks import is_in_stock
from assistant.reading.facts import Fact, Facts
from assistant.records.notes import Note
from assistant.records.rows import Question, Seal
from assistant.records.tables import Tables

Audience = Literal["staff", "customers"]


@dataclass(frozen=True, kw_only=True)
class Case:
    """The shop's knowledge and the reader of one answer."""

    tables: Tables
    notes: Mapping[str, Note]
    audience: Audience
    currency: str = "$"
    customers_see: frozenset[str] = frozenset({"price", "availability"})
    policies: Mapping[str, str] = field(default_factory=dict)
    put_before: frozenset[str] = frozenset()  # questions that are not put again

    def seal(self, part_no: str) -> Seal:
        """A seal by its number."""
        return self.tables.seals[part_no]

    def may_see(self, what: str) -> bool:
        """Whether the reader may see prices or availability."""
        return self.audience == "staff" or what in self.customers_see

    def what_it_is(self, seal: Seal, subject: str = "It") -> str:
        """'It is a flapper on pegs for a 2 in opening; its ears point up ...'."""
        style = self.tables.styles[seal.style].plain_name
        article = "an" if style[0].lower() in "aeiou" else "a"
        size = f" for a {inches(seal.opening_in)} opening" if seal.opening_in else ""
        holds = None if seal.mount == ("wire",) else how_it_holds(seal)
        kind = f"{article} {style}{size}"
        return f"{subject} is the {seal.name}, {kind}" + (f", and {holds}." if holds else ".")

    def on_the_shelf(self, seal: Seal) -> str | None:
        """Price and availability, as far as the reader may see them."""
        said = bold(seal.part_no)
        price = self.money(seal.price) if seal.price is not None and self.may_see("price") else None
        away = "out of stock" if seal.status == "stocked" else "to order"
        state = "in stock" if is_in_stock(seal) else away
        if not self.may_see("availability"):
            return f"{said} costs {price}." if price else None
        return f"{said} costs {price} and is {state}." if price else f"{said} is {state}."

    def back_room(self, seal: Seal) -> str | None:
        """What only staff may see."""
        if self.audience != "staff" or (seal.on_hand is None and seal.cost is None):
            return None
        told = []
        if seal.on_hand is not None:
            told.append(f"{seal.on_hand} on hand")
        if seal.cost is not None:
            told.append(f"it costs us {self.money(seal.cost)}")
        return f"For the counter: {seal.part_no}: {', '.join(told)}."

    def money(self, amount: Decimal) -> str:
        """An amount with the shop's currency sign."""
        return f"{self.currency}{amount:.2f}"

    def say_back(self, draft: Draft, decision: Decision) -> None:
        """Says how a misspelled name was read."""
        said = []
        for fact in decision.identity.similar:
            meant = [
                c
                for c in fact.choices
                if c in decision.identity.names or c in decision.identity.brands
            ]
            if len(meant) == 1:
                said.append(f'I read "{_one_line(fact.words)}" as {meant[0]}.')
        draft.say(*dict.fromkeys(said))

    def sounds_like(self, draft: Draft, facts: Facts) -> None:
        """Says which style an unusual wording was taken for, and that it decides nothing."""
        for fact in facts.named("style_like")[:2]:
            style = self.tables.styles.get(fact.choices[0])
            if style is not None:
                name = style.plain_name
                article = "an" if name[0].lower() in "aeiou" else "a"
                draft.say(
                    f'"{_one_line(fact.words)}" sounds like {article} {name}, but words alone do '
                    "not settle it."
                )

    def question(
        self, draft: Draft, asks: str | None, choices: Iterable[str] = (), *, again: bool = False
    ) -> tuple[str, ...]:
        """The question's own words, why it is asked and how to find out.

        Nothing where it was put before, unless it is to be put `again`.
        """
        row = self.tables.questions.get(asks) if asks else None
        if row is None or (asks in self.put_before and not again):
            return ()
        draft.question = _asked(row, choices)
        return _in_words(row)

    def ask(
        self, draft: Draft, decision: Decision, *, main: bool = False, again: bool = False
    ) -> bool:
        """Puts the decision's question, or the few that it asks together; `False` for none."""
        asks = decision.question
        choices = [value(asks, choice) for choice in decision.choices] if asks else []
        said = self.question(draft, asks, choices, again=again)
        more = [self.tables.questions[q] for q in decision.also_ask] if said else []
        intro = draft.quote(self.notes, "what-helps-us", "several-questions") if more else None
        if intro is None:
            draft.say(*said, main=main)
            return bool(said)
        draft.also_asked += [_asked(row, ()) for row in more]
        each = [said, *(_in_words(row) for row in more)]
        draft.list(intro, [" ".join(one) for one in each], main=main, numbered=True)
        return True


def _asked(row: Question, choices: Iterable[str]) -> Asked:
    return Asked(row.question, row.text, row.why, tuple(choices) or row.choices, row.drawing)


def _in_words(row: Question) -> tuple[str, ...]:
    return tuple(s for s in (row.text, row.why, row.how) if s)


def wrote(facts: Iterable[Fact]) -> str:
    """The customer's own words, quoted and joined."""
    told = list(facts)
    stated = [f for f in told if not f.negated] or told  # 'pegs' alone would turn 'no pegs' round
    quoted = dict.fromkeys(f'"{_one_line(f.words)}"' for f in stated)
    return listed(list(quoted)[:3])


def _one_line(words: str) -> str:
    """Words fit to be quoted: on one line, and with an inch mark only at their end."""
    line = " ".join(words.split()).rstrip(".,;:!?")
    mark = line.find('"')
    return line if mark < 0 else line[: mark + 1] if line[:mark][-1:].isdigit() else line[:mark]


def number_of(quantity: int) -> str:
    """A small count in words."""
    return COUNTS.get(quantity, str(quantity))
