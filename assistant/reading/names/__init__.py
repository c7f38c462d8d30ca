"""Names and identifying numbers in a letter: makers, models, model numbers, part numbers."""

from __future__ import annotations

from assistant.reading.facts import Fact
from assistant.reading.names.book import NameBook
from assistant.reading.names.letter import Letter
from assistant.reading.names.makers import listed_makers, similar_makers
from assistant.reading.names.models import shown_models, similar_models
from assistant.reading.names.named import name_facts
from assistant.reading.names.not_numbers import Taken, not_numbers
from assistant.reading.names.numbers import read_numbers
from assistant.reading.names.spans import exact, nearby
from assistant.reading.names.unlisted import read_unlisted
from assistant.reading.text import Text

__all__ = ["NameBook", "read_names"]


def read_names(text: Text, book: NameBook) -> list[Fact]:
    """Facts of names and numbers, in the order in which they stand in the letter.

    `brand`, `model`, `model_no` and `part_no` hold every row they may mean; `unlisted` holds a
    name that the writer gives as one and that no table has.
    """
    letter = Letter(text)
    maybe_models = exact(letter, book.models)
    listed = listed_makers(letter, book, maybe_models)
    strong = [hit for hit in maybe_models if not hit.plain]
    similar = similar_makers(letter, book, sorted((*listed, *strong), key=lambda h: h.first))
    makers = sorted((*listed, *similar), key=lambda h: h.first)
    models = shown_models(letter, book, maybe_models, makers)
    nearly = similar_models(letter, book, makers, models)
    whole = [hit for hit in models if not any(hit.within(m) for m in nearby(nearly, hit))]
    models = sorted((*whole, *nearly), key=lambda h: h.first)

    taken = not_numbers(letter)
    numbers = read_numbers(letter, book, taken, makers, models)
    told = Taken([(fact.start, fact.end) for fact in numbers])
    facts = [*name_facts(letter, book, makers, models, (taken, told)), *numbers]
    names = sorted((*makers, *models), key=lambda h: h.first)
    facts.extend(read_unlisted(letter, book, names, makers, facts, taken))
    return sorted(facts, key=lambda f: (f.start, f.end, f.name))
