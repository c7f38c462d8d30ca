"""A model told before the maker was put right: 'a Tamsel ... sorry, it is an Ostrevale'."""

from __future__ import annotations

from dataclasses import replace

from assistant.reading.facts import Fact, Facts
from assistant.reading.names import NameBook


def remade(facts: Facts, book: NameBook) -> Facts:
    """The facts, with each toilet's model read as that of its one maker who is told."""
    makers: dict[int, set[str]] = {}
    for fact in facts.named("brand"):
        if not fact.negated:
            makers.setdefault(fact.toilet, set()).update(fact.choices)
    return Facts(
        tuple(
            _of(next(iter(makers[fact.toilet])), fact, book)
            if _may_move(fact) and len(makers.get(fact.toilet, ())) == 1
            else fact
            for fact in facts
        )
    )


def _may_move(fact: Fact) -> bool:
    return fact.name == "model" and not fact.negated and not fact.similar


def _of(maker: str, fact: Fact, book: NameBook) -> Fact:
    own = tuple(choice for choice in fact.choices if book.maker_of[choice] == maker)
    if own:
        return fact if own == fact.choices else replace(fact, value=own)
    same = {
        name
        for names in book.by_maker.get(maker, {}).values()
        for name in names
        if any(_bare(name, book) == _bare(choice, book) for choice in fact.choices)
    }
    return replace(fact, value=tuple(sorted(same))) if same else fact


def _bare(full_name: str, book: NameBook) -> str:
    return full_name.removeprefix(book.maker_of[full_name]).strip()
