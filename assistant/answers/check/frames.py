"""A frame: a wording the checker accepts, and how its claims are looked up.

Frames live in `claims/`, a small file for each kind of claim; `all_frames` finds them there.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from functools import cached_property

from assistant.answers.check.attributes import Said, judged
from assistant.answers.check.context import Context, Unreadable
from assistant.answers.check.items import Item
from assistant.answers.check.line import ITEM, Line
from assistant.answers.check.patterns import compiled, needed
from assistant.answers.check.results import Finding
from assistant.answers.check.scope import Scope, Trait

# How a frame stands in a sentence; see `Frame`.
CLAIM, FITS, TRAIT, IS_MODEL, BARE = "claim", "fits", "trait", "is model", "bare"
WHEN, SELECTS, AHEAD, CHANGE, ORIGINAL, PLAIN = (
    "when", "selects", "ahead", "change", "original", "plain",
)  # fmt: skip


@dataclass(frozen=True)
class Frame:
    """`pattern` in the language of `patterns.py`; `read` looks its claims up.

    `role` says how it stands in a sentence: a 'fits' clause takes a condition or a change
    after it, a 'trait' can be a condition, 'bare' is a part without a verb, 'selects' comes
    before what it selects, 'ahead' holds for the whole sentence.

    A frame that `joins` may follow a clause without a comma or 'and'; `before` is the sign
    that must follow it; a `whole` one is a sentence by itself; one that `describes` reads
    descriptions of parts itself. `traits` are what a 'trait' frame can limit a scope by.
    """

    rule: str
    pattern: str
    read: Callable[[Reading], Sequence[Finding]]
    role: str = CLAIM
    joins: bool = False
    before: str = ""
    whole: bool = False
    describes: bool = False
    traits: tuple[Trait, ...] = ()

    def findings(self, reading: Reading) -> list[Finding]:
        """What the tables say of its claims, descriptions of parts among them."""
        found = list(self.read(reading))
        return found if self.describes else [*found, *reading.described()]

    @cached_property
    def regex(self) -> re.Pattern[str]:
        """The pattern, compiled at first need."""
        return compiled(self.pattern)

    @cached_property
    def needs(self) -> tuple[str, ...]:
        """Words and kinds of item without which it cannot match."""
        return needed(self.pattern)


class Reading:
    """A frame's match in a line, with what has been said before."""

    def __init__(
        self, context: Context, line: Line, match: re.Match[str], role: str = CLAIM
    ) -> None:
        self.context, self.line, self.match, self.role = context, line, match, role

    @property
    def words(self) -> str:
        """The matched words."""
        return self.line.plain(self.match.group())

    def has(self, *words: str) -> bool:
        """Whether one of the words stands in the match."""
        row = self.match.group().split()
        return any(word in row for word in words)

    def text(self, label: str) -> str:
        """What a labelled piece matched; empty if nothing."""
        return self.match.groupdict().get(label) or ""

    def items(self, kind: str, label: str | None = None) -> list[Item]:
        """Items of a kind in the match, or in a labelled piece."""
        return self.line.within(self.match.group() if label is None else self.text(label), kind)

    def subject(self, label: str = "s", *, nearest: bool = False) -> tuple[str, ...]:
        """The parts a labelled piece means: named there, or the ones last spoken of.

        `nearest` is for an afterthought, which belongs to the part named just before it.
        """
        stretch = self.text(label)
        if named := self.parts(label):
            self._new_subject()
            return named
        self.context.topic = False
        words = stretch.split()
        before = [i for i in self.line.within(self.line.text[: self.match.start()]) if _part(i)]
        if before and (nearest or {"which", "that", "whose"} & set(words)):
            return _part(before[-1])
        parts = self.context.parts
        numbers = [int(i.values["I"]) for i in self.items("I", label)]
        plural = numbers or {"they", "these", "both", "each", "their"} & set(words)
        if not parts or ((len(parts) > 1) != bool(plural) and words):
            raise Unreadable("which part is meant")
        if any(number != len(parts) for number in [*numbers, *([2] if "both" in words else [])]):
            raise Unreadable("which of the parts are meant")
        return parts

    def _new_subject(self) -> None:
        if self.context.topic:
            raise Unreadable("what is said of the part named before")

    def parts(self, label: str) -> tuple[str, ...]:
        """Part numbers named in a piece."""
        return tuple(p for item in self.items("P", label) for p in _part(item))

    def counted(self, label: str) -> list[tuple[int | None, str]]:
        """Part numbers named in a piece, each with the number before it, if any."""
        found: list[tuple[int | None, str]] = []
        count: int | None = None
        for token in self.text(label).split():
            item = self.item(token)
            if token == "one":
                count = 1
            elif item and "P" in item.values:
                found.append((count, item.values["P"][0]))
                count = None
            elif item and "I" in item.values:
                count = int(item.values["I"])
        return found

    def item(self, token: str) -> Item | None:
        """The item that a token stands for."""
        found = ITEM.fullmatch(" " + token)
        return self.line.items[int(found.group(2))] if found else None

    def described(self, label: str | None = None) -> list[Finding]:
        """Claims in descriptions: of the part right after ('the red flapper SL-1'), or else of
        the parts that the clause is about ('the red flapper for it is ...').
        """
        found: list[Finding] = []
        waiting: list[Said] = []
        loose: list[Said] = []
        for token in (self.match.group() if label is None else self.text(label)).split():
            item = self.item(token)
            if item and "P" in item.values:
                found += self.judge((item.values["P"][0],), waiting)
            else:
                loose += waiting
            waiting = list(item.values["F"]) if item and "F" in item.values else []
        loose += waiting
        if loose and not self.context.parts:
            raise Unreadable("which part is described")
        return [*found, *self.judge(self.context.parts, loose)]

    def judge(self, parts: Sequence[str], said: Sequence[Said]) -> list[Finding]:
        """Each thing said of each part."""
        given = self.context.given
        return [f for p in parts for f in judged(given.tables, given.audience, p, said)]

    def scopes(self, *labels: str) -> list[Scope]:
        """The toilets a piece means, under the conditions in force; remembers the last named.

        Raises:
            Unreadable: none is named, here or before.
        """
        context = self.context
        position = context.position
        for label in labels:
            for item in self.items("Z", label):
                position = item.values["Z"][0]
        meant = [i.values["X"] for label in labels for i in self.items("X", label)]
        kinds = {limit.trait.name for limit in context.limits}
        if any(limit.trait.name in kinds for scope in meant for limit in scope.limits):
            raise Unreadable("which of two conditions counts")
        named = [self._known(scope) for scope in meant]
        found = named or ([context.scope] if context.scope else [])
        if not found and context.limits:
            found = [Scope()]
        if not found and context.old_part:
            return [Scope(old_part=context.old_part, label=f"where {context.old_part} fits")]
        if not found:
            raise Unreadable("which toilet is meant")
        if named:
            context.scope = named[-1] if len(named) == 1 else _together(named)
        return [scope.narrowed(context.limits).at(position) for scope in found]

    def _known(self, scope: Scope) -> Scope:
        last = self.context.scope
        if self._is_reason(scope, last) and last is not None:
            return last
        if scope.builds is None:
            if last is None:
                raise Unreadable("which toilet is meant")
            return replace(last.narrowed(scope.limits), some=scope.some)
        if last is not None and last.builds and (shared := set(scope.builds) & set(last.builds)):
            # a model's name alone means the one already spoken of
            tables = self.context.given.tables
            if len({tables.builds[b].full_name for b in scope.builds}) > 1:
                return replace(scope, builds=tuple(b for b in scope.builds if b in shared))
        return scope

    def _is_reason(self, scope: Scope, last: Scope | None) -> bool:
        """Whether a model named again, without years, is the toilet of the clause before.

        So it is in 'your' model, and in the reason a clause gives: '... does not fit: the
        pegs of that model stand ...'.
        """
        if last is None or scope.limits or not scope.builds or scope.some:
            return False
        reason = self.context.relation is not None and self.role == TRAIT
        yours = scope.label.lower().startswith("your ")
        return (reason or yours) and set(last.builds or ()) <= set(scope.builds)


def _part(item: Item) -> tuple[str, ...]:
    return (item.values["P"][0],) if "P" in item.values else ()


def _together(scopes: Sequence[Scope]) -> Scope | None:
    if any(scope.limits or scope.position for scope in scopes):
        return None
    builds = tuple(dict.fromkeys(b for scope in scopes for b in scope.builds or ()))
    return Scope(builds, label=" and ".join(scope.label for scope in scopes))
