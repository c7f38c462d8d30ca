"""A letter into facts: every reader in turn, then what needs the whole letter.

Readers know nothing of one another. Here their findings meet: overlapping readings are
weighed, doubt and denial are attached, corrections applied, and two toilets kept apart.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from datetime import date

from assistant.reading.asking import without_request_marks
from assistant.reading.beside import without_what_is_beside
from assistant.reading.corrected import corrected
from assistant.reading.dated_by_name import dated_by_name
from assistant.reading.facts import Fact, Facts
from assistant.reading.hearsay import unsure_of_hearsay
from assistant.reading.letters import Letter
from assistant.reading.looks import read_looks
from assistant.reading.measured import read_lengths
from assistant.reading.names import NameBook, read_names
from assistant.reading.quantities import read_volumes
from assistant.reading.remade import remade
from assistant.reading.renamed import Renamed
from assistant.reading.requests import read_requests
from assistant.reading.sizes import as_seen
from assistant.reading.slips import Mended
from assistant.reading.spelled import Spelled, only_as_spelled
from assistant.reading.stance import stance
from assistant.reading.symptoms import read_symptoms
from assistant.reading.text import Text
from assistant.reading.toilets import by_toilet
from assistant.reading.troubles import troubles
from assistant.reading.whose import without_others
from assistant.reading.years import read_years

# A place in a letter is read one way only. An exact name or number stands above a measure,
# a measure above a name that is merely alike or unknown.
_EXACT, _MEASURE, _ALIKE = 0, 1, 2
_MEASURES = frozenset(
    {"opening", "disc", "rim", "tube", "hinge_width", "length", "flush", "flush_reduced"}
    | {"made", "bought", "house", "valve_put_in", "year"}
)
_LAST_WORDS = re.compile(r"[a-z)]{3}[.!?] +((?:[A-Z][\w'-]*\.?,? ?){1,4})(?:, [\w ,]{1,20})?\s*\Z")
_NAMES = frozenset({"brand", "model", "model_no", "part_no", "unlisted"})


def read(letter: Letter, book: NameBook, today: date) -> Facts:
    """All facts of a letter, in the order in which they stand there.

    `today` is the day from which 'twenty years old' counts.
    """
    text = letter.text
    calm = without_request_marks(text)
    spelled = Spelled(text)
    names = [spelled.back(fact) for fact in read_names(spelled.text, book)]
    names = _without_signature(text, only_as_spelled(names, spelled.places))
    mended = Mended(text, names)
    names = [*_without_denied(names), *_named_amid_slips(mended, names, book)]
    renamed = Renamed(text, (f for f in names if _is_a_toilets(f)))
    years = [renamed.back(fact) for fact in read_years(renamed.text, today)]
    lengths = [mended.back(fact) for fact in read_lengths(mended.text)]
    volumes = [mended.back(fact) for fact in read_volumes(mended.text)]
    exclusive = [
        _with_stance(calm, fact) for fact in (*names, *as_seen(text, lengths), *volumes, *years)
    ]
    seen = (read_looks, read_symptoms, read_requests)
    other = [mended.back(fact) for reader in seen for fact in reader(mended.text)]
    facts = Facts().plus([*dated_by_name(text, renamed, _one_reading_each(exclusive)), *other])
    facts = without_what_is_beside(text, unsure_of_hearsay(text, facts))
    told = without_others(text, remade(corrected(text, facts), book))
    told = told.plus(troubles(text, told))
    return remade(by_toilet(text, told, book.builds_numbered), book)


def _without_denied(names: Sequence[Fact]) -> list[Fact]:
    """'I know the Sixpence, mine is not the Sixpence': what is denied at last was never meant."""
    denied = {f.choices: f.start for f in names if f.name == "model" and f.negated}
    return [
        f for f in names if f.name != "model" or f.negated or f.start > denied.get(f.choices, -1)
    ]


def _without_signature(text: Text, names: Sequence[Fact]) -> list[Fact]:
    """'... and shall send a cheque. Jos. Applegarth': no model, however like one it sounds."""
    words = _LAST_WORDS.search(text.visible)
    if words is None:
        return [*names]
    said = [f for f in names if f.start < words.start(1)]
    if not said or not all(f.similar or f.name == "unlisted" for f in names if f not in said):
        return [*names]
    return said


def _named_amid_slips(mended: Mended, names: Sequence[Fact], book: NameBook) -> list[Fact]:
    """'sumthing calld a Pollinder': a name no table has, told by words that held slips."""
    if not mended.has_slips:
        return []
    found = [mended.back(f) for f in read_names(mended.text, book) if f.name == "unlisted"]
    return [f for f in found if all(f.end <= n.start or n.end <= f.start for n in names)]


def _is_a_toilets(fact: Fact) -> bool:
    return fact.name in ("brand", "model") or (
        fact.name == "unlisted" and fact.of in ("brand", "model")
    )


def _with_stance(text: Text, fact: Fact) -> Fact:
    if fact.name in _NAMES:
        return fact  # the reader of names weighs doubt and denial itself
    stand = stance(text, fact.start, fact.end)
    return replace(
        fact,
        negated=fact.negated or stand.negated,
        sure=fact.sure and not stand.doubted,
    )


def _rank(fact: Fact) -> int:
    if fact.name in _MEASURES:
        return _MEASURE
    if fact.name == "unlisted" or fact.similar:
        return _ALIKE
    return _EXACT


def _bare(number: str) -> str:
    return "".join(c for c in number.lower() if c.isalnum())


def _is_piece(fact: Fact, numbers: set[str]) -> bool:
    """'4418 something ... 4418 Q': the first is a piece of the second."""
    if fact.name != "unlisted" or fact.of != "number":
        return False
    written = _bare(fact.choices[0])
    return any(number.startswith(written) for number in numbers)


def _one_reading_each(facts: list[Fact]) -> list[Fact]:
    """Drops a reading whose place a better one holds; equal kinds may share a place."""
    numbers = {_bare(c) for f in facts if f.name == "model_no" for c in f.choices}
    facts = [f for f in facts if not _is_piece(f, numbers)]
    kept: list[Fact] = []
    taken: list[tuple[int, int, int]] = []
    for fact in sorted(facts, key=lambda f: (_rank(f), f.start, -f.end)):
        rank = _rank(fact)
        if any(s < fact.end and fact.start < e and r < rank for s, e, r in taken):
            continue
        kept.append(fact)
        taken.append((fact.start, fact.end, rank))
    return kept
