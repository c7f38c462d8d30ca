"""Looks by meaning: a wording that no card reads, against how the styles are described."""

from __future__ import annotations

from assistant.reading.facts import Fact, Facts
from assistant.reading.likenesses import wordings
from assistant.reading.text import Text
from assistant.search.searching import Search


def styles_alike(search: Search, text: Text, facts: Facts) -> list[Fact]:
    """A fact `style_like` for each wording that describes one style clearly enough.

    Never sure: it says what the words sound like, and identifies nothing.
    """
    told = wordings(text, facts)
    return [
        Fact(
            name="style_like",
            value=(alike.style,),
            words=wording.text,
            start=wording.start,
            end=wording.end,
            of="meaning",
            sure=False,
        )
        for wording, alike in zip(told, search.alike([w.text for w in told]), strict=True)
        if alike is not None
    ]
