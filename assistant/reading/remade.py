"""A model told before the maker was put right: 'a Tamsel ... sorry, it is an Ostrevale'."""

from __future__ import annotations

from dataclasses import replace

from assistant.reading.facts import Fact, Facts
from assistant.reading.names import NameBook


def remade(facts: Facts, book: NameBook) -> Facts:
    """The facts, with a model read as the maker's of that name who is left after a correction."""
    makers = {c for f in facts.named("brand") if not f.negated for c in f.choices}
    if len(makers) != 1:
        return facts
    (maker,) = makers
    return Facts(tuple(_of(maker, fact, book) if _may_move(fact) else fact for fact in facts))


def _may_move(fact: Fact) -> bool:
    return fact.name == "model" and not fact.negated and not fact.similar


def _of(maker: str, fact: Fact, book: NameBook) -> Fact:
    if any(book.maker_of[choice] == maker for choice in fact.choices):
        return fact
    same = {
        name
        for names in book.by_maker.get(maker, {}).values()
        for name in names
        if any(_bare(name, book) == _bare(choice, book) for choice in fact.choices)
    }
    return replace(fact, value=tuple(sorted(same))) if same else fact


def _bare(full_name: str, book: NameBook) -> str:
    return full_name.removeprefix(book.maker_of[full_name]).strip()
