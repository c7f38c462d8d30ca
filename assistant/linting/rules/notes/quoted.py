"""What the check of answers makes of every sentence of the notes."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from assistant.linting.gathered import Gathered
from assistant.linting.rules.notes.once import once
from assistant.records.notes import Note
from assistant.records.sections import Line, Section
from assistant.settings import Settings

if TYPE_CHECKING:
    from assistant.answers.check import Checked, Statements

Fault = Literal["contradicted", "named", "unquotable"]
_GAINSAY = ("styles.csv", "seals.csv", "flush_valves.csv")  # what general statements meet


@dataclass(frozen=True)
class Fallen:
    """A sentence that no answer can quote: its note and line, and what is wrong with it.

    `claim` is what the tables gainsay, or what the sentence names, and `row` the row that does.
    """

    note: str
    line: Line
    fault: Fault
    claim: str = ""
    row: str | None = None

    @property
    def shown(self) -> str:
        """The sentence, cut where it is long."""
        text = self.line.text
        return text if len(text) <= 80 else f"{text[:77].rstrip()}..."


@once
def fallen(gathered: Gathered) -> tuple[Fallen, ...]:
    """Every sentence that falls where an answer quotes its section, for those who may read it."""
    from assistant.answers.reply import statements
    from assistant.shop import Shop

    settings = gathered.settings or Settings(name="")
    held = statements(Shop(gathered.folder, settings, gathered.tables, gathered.notes))
    return tuple(
        one
        for note in gathered.notes.values()
        for section in note.sections.values()
        for one in _of_section(note, section, held, gathered)
    )


def _of_section(
    note: Note, section: Section, held: Statements, gathered: Gathered
) -> Iterator[Fallen]:
    from assistant.answers.check import check
    from assistant.answers.compose.explain import as_written

    currency = (gathered.settings or Settings(name="")).currency
    checked = check(
        "\n\n".join(" ".join(said) for said in as_written(section.sentences)),
        gathered.tables,
        audience="staff" if note.audience == "staff" else "customers",
        statements=held,
        message="",
        currency=currency,
    )
    falls = False
    for line in section.sentences:
        before, falls = falls, False
        one = _judged(note, line, checked, held, gathered, currency)
        if one is None:
            continue
        falls = True
        if one.fault != "unquotable" or not before:  # it may fall only with the one before it
            yield one


def _judged(
    note: Note,
    line: Line,
    checked: Checked,
    held: Statements,
    gathered: Gathered,
    currency: str,
) -> Fallen | None:
    """What is wrong with one sentence."""
    from assistant.answers.check.general_words import plainly

    words = plainly(line.text)
    own = [c for c in checked.checks if plainly(c.sentence) in words]
    whole = gathered.are_whole(*_GAINSAY)  # a row left out may be the very one that agrees
    for one in own:
        if one.result == "contradicted" and whole:
            return Fallen(note.name, line, "contradicted", one.claim, one.row)
    if (named := _named(line.text, held, gathered, currency)) is not None:
        return Fallen(note.name, line, "named", named)
    if any(one.result != "supported" for one in own) or not own:
        return Fallen(note.name, line, "unquotable")
    return None


def _named(sentence: str, held: Statements, gathered: Gathered, currency: str) -> str | None:
    """The part, price, maker or model that a sentence names; '' where no one word is."""
    from assistant.answers.check.general import names_something
    from assistant.answers.check.lexicon import lexicon_of
    from assistant.answers.check.line import line_of

    lexicon = lexicon_of(gathered.tables)
    line, statement = line_of(sentence, lexicon, currency), held.find(sentence)
    if line is None or statement is None:
        return None
    if not names_something(line, sentence, statement, lexicon):
        return None
    return next((item.text for item in line.items if set(item.kinds) & set("PMBSNKWD")), "")
