"""One walk through a text, block by block, sentence by sentence."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import pairwise

from assistant.answers.check import general
from assistant.answers.check.against import against
from assistant.answers.check.chunks import chunk
from assistant.answers.check.citation import citation
from assistant.answers.check.claims.echo import quoted
from assistant.answers.check.context import Context
from assistant.answers.check.general import Statement, Statements
from assistant.answers.check.general_words import plainly
from assistant.answers.check.likening import likening
from assistant.answers.check.line import Line, line_of
from assistant.answers.check.markdown import Block, Document, Sentence
from assistant.answers.check.patterns import compiled
from assistant.answers.check.results import SUPPORTED, UNKNOWN, Check, Finding
from assistant.answers.check.sentence import Judged, judge_sentence


class Walk:
    """Marks the sentences to take out and gathers the checks."""

    def __init__(
        self, context: Context, statements: Statements, *, valve_is_original: bool
    ) -> None:
        self.context = context
        self.statements = statements
        self.original = valve_is_original
        self.checks: list[Check] = []
        self._lists: list[Context] = []
        self._fits: list[Sentence] = []
        self._said_before: Sequence[Statement] = ()
        self._uncited: list[Sequence[Statement]] = []  # said since a note was last cited

    def through(self, document: Document) -> None:
        """Every block, and then what only the whole answer shows."""
        for event in document.events:
            if isinstance(event, Block):
                self._block(event, document)
            elif event == "list":
                self._lists.append(self.context.copy())
            elif event == "item":
                self.context = self._lists[-1].copy()
            else:
                self.context = self._lists.pop()
                self.context.parts = ()
        if not self.original:
            for sentence in self._fits:
                if not sentence.taken:
                    self._fail(sentence, Finding(sentence.text, "original-valve", UNKNOWN))
        _empty_lists(document, self._fail)

    def _block(self, block: Block, document: Document) -> None:
        if block.in_list is None:
            self.context.listing = None
        for number, sentence in enumerate(block.sentences):
            last = number + 1 == len(block.sentences)
            following = _next(document, block) if last else [block.sentences[number + 1]]
            introduces = last and _before_list(document, block)
            for finding in self._findings(block, sentence, following, introduces=introduces):
                self._keep(sentence, finding)
        if block.atomic and any(sentence.taken for sentence in block.sentences):
            for sentence in block.sentences:
                if not sentence.taken:
                    self._fail(sentence, Finding(sentence.text, "markdown", UNKNOWN))

    def _findings(
        self, block: Block, sentence: Sentence, following: list[Sentence], *, introduces: bool
    ) -> tuple[Finding, ...]:
        given = self.context.given
        if block.kind == "other":
            return (Finding(sentence.text, "markdown", UNKNOWN),)
        if block.kind == "quote":
            if given.message is None:
                return (Finding(sentence.text, "quotation", UNKNOWN),)
            return (quoted(self.context, sentence.text),)
        if (foreign := _foreign_links(block, self.context)) is not None:
            return (Finding(foreign, "link", UNKNOWN),)
        if (cites := citation(sentence.text, self._uncited, given.audience)) is not None:
            self._uncited.clear()
            return (cites,)
        if (likens := likening(self.context, sentence.text)) is not None:
            return tuple(likens)
        if (said := self._stated(sentence.text)) is not None:
            return (said,)
        self._said_before = ()
        context = self.context.for_sentence(self._changes(following))
        context.introduces = introduces
        found = judge_sentence(sentence.text, context)
        self._after(found, sentence)
        return found.findings

    def _stated(self, sentence: str) -> Finding | None:
        """The finding on a sentence that a note or a question of the shop's says."""
        given = self.context.given
        line = line_of(sentence, given.lexicon, given.currency)
        statement = self.statements.find(sentence)
        if statement is None or line is None:
            return None
        if statement.staff_only and given.audience == "customers":
            return Finding(sentence, "audience", UNKNOWN, statement.source)
        if general.names_something(line, sentence, statement, given.lexicon):
            return None
        if general.leans(sentence, statement, self._said_before):
            return None
        if (contradicted := against(line, given.tables)) is not None:
            return contradicted
        self._said_before = self.statements.all(sentence)
        self._uncited.append(self._said_before)
        self.original |= _reserves(line)
        return Finding(sentence, "note", SUPPORTED, statement.source)

    def _after(self, found: Judged, sentence: Sentence) -> None:
        if not found.sound:
            return
        self._uncited.append(())  # what no note says no citation covers
        self.context = found.context
        self.original |= found.original
        if found.context.named_fit:
            self._fits.append(sentence)

    def _changes(self, following: list[Sentence]) -> frozenset[tuple[str | None, str]]:
        """The changes that the next sentence says, with the part it names, if any."""
        given = self.context.given
        if not following:
            return frozenset()
        line = line_of(following[0].text, given.lexicon, given.currency)
        if line is None:
            return frozenset()
        parts = [item.values["P"][0] for item in line.items if "P" in item.values] or [None]
        changes = [plainly(c) for item in line.items for c in item.values.get("H", ())]
        return frozenset((part, change) for part in parts for change in changes)

    def _keep(self, sentence: Sentence, finding: Finding) -> None:
        if finding.sound:
            self.checks.append(_check(sentence, finding))
        else:
            self._fail(sentence, finding)

    def _fail(self, sentence: Sentence, finding: Finding) -> None:
        sentence.taken = True
        self.checks.append(_check(sentence, finding))


def _check(sentence: Sentence, finding: Finding) -> Check:
    return Check(finding.claim, finding.rule, finding.result, finding.row, sentence.text)


def _next(document: Document, block: Block) -> list[Sentence]:
    blocks = document.blocks
    at = next(n for n, other in enumerate(blocks) if other is block)
    return blocks[at + 1].sentences[:1] if at + 1 < len(blocks) else []


def _before_list(document: Document, block: Block) -> bool:
    at = next(n for n, event in enumerate(document.events) if event is block)
    return document.events[at + 1 : at + 2] == ["list"]


def _reserves(line: Line) -> bool:
    """Whether a sentence of a note says that the answer holds for the original valve."""
    chunk(line)
    return compiled("{original}").search(line.text) is not None


def _foreign_links(block: Block, context: Context) -> str | None:
    """An address in the block that is none of a part named in it."""
    if not block.links:
        return None
    given = context.given
    named: set[str | None] = set()
    for sentence in block.sentences:
        found = line_of(sentence.text, given.lexicon, given.currency)
        for item in found.items if found else ():
            named |= {given.tables.seals[p].link for p in item.values.get("P", ())}
    return next((link for link in block.links if link not in named), None)


def _empty_lists(document: Document, fail: Callable[[Sentence, Finding], None]) -> None:
    """An introducing line goes when every item of the list after it went."""
    blocks = document.blocks
    for block, following in pairwise(blocks):
        last = block.sentences[-1] if block.sentences else None
        if last is None or last.taken or not last.text.endswith(":"):
            continue
        if following.in_list is None or following.in_list == block.in_list:
            continue
        items = [b for b in blocks if b.in_list == following.in_list]
        if all(s.taken for b in items for s in b.sentences):
            fail(last, Finding(last.text, "empty-list", UNKNOWN))
