"""Where a piece of evidence comes from: the maker's sheet, the bench, a customer."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from assistant.answers.check.context import Unreadable
from assistant.answers.check.frames import Frame, Reading
from assistant.answers.check.lookup import cited, evidence
from assistant.answers.check.results import SUPPORTED, UNKNOWN, Finding
from assistant.answers.check.scope import Silent
from assistant.records.rows import Evidence

SIDES = {"fits": ("fits", "fits with change"), "does not fit": ("does not fit",)}


def _came_from(kind: str | None) -> Callable[[Reading], Sequence[Finding]]:
    """Some row of that kind says what the clause before says of the part."""

    def read(reading: Reading) -> Sequence[Finding]:
        context = reading.context
        verdicts = SIDES.get(context.relation or "")
        if verdicts is None or len(context.parts) != 1:
            raise Unreadable("what the evidence is for")
        for row in _rows(reading, context.parts[0]):
            if row.verdict in verdicts and kind in (None, row.kind):
                return [Finding(reading.words, "evidence-kind", SUPPORTED, cited(row))]
        return [Finding(reading.words, "evidence-kind", UNKNOWN)]

    return read


def _rows(reading: Reading, part: str) -> list[Evidence]:
    tables = reading.context.given.tables
    found: list[Evidence] = []
    for scope in reading.scopes():
        try:
            places = scope.places(tables)
        except Silent:
            continue
        for place in places:
            found += evidence(tables, part, place)[0]
    return found


FRAMES = (
    Frame(
        "evidence-kind",
        "(it|they) {is} tried at the bench|(we|somebody) tried (it|them) at the bench",
        _came_from("tried at the bench"),
    ),
    Frame(
        "evidence-kind",
        "the maker 's sheet (says|lists|shows) (so|it|that)",
        _came_from("maker's sheet"),
    ),
    Frame("evidence-kind", "a customer reported (so|it|that)", _came_from("customer's report")),
    Frame(
        "evidence-kind",
        "it is written down so in (the|our) {tables}|(the|our) {tables} (says|say) so",
        _came_from(None),
    ),
)
