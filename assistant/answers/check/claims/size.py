"""The opening a seal closes."""

from __future__ import annotations

from assistant.answers.check.attributes import Attribute
from assistant.answers.check.items import Length
from assistant.answers.check.line import Line


def length(line: Line, stretch: str) -> Length | None:
    """The first length in a stretch."""
    found = line.within(stretch, "L")
    return found[0].values["L"] if found else None


ATTRIBUTES = (
    Attribute(
        name="opening",
        read=length,
        test=lambda tables, seal, said: said.equals_in(seal.opening_in),
        adj=("{L}",),
        post=("(made|meant)? for (a|an|the)? {L} (flush valve|valve)? (opening|openings|valves)?",),
        clause=(
            "{s:part}? {adv}* (closes|close|covers|cover|fits|fit|seals|seal|suits|suit)"
            " (a|an|the)? {L} (flush valve|valve)? (opening|openings)",
            "{s:part}? has an opening of {L}",
        ),
    ),
)
