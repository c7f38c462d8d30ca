"""Words of a crack, or of water outside, that no card made anything of.

Whatever such a sentence means, somebody should look before a seal is sold: it may be the china
that has cracked, or a bolt that weeps.
"""

from __future__ import annotations

import re

from assistant.reading.facts import Fact, Facts
from assistant.reading.stance import stance
from assistant.reading.text import Text

_LEAKS = r"(?:leak\w*|drip\w*|seep\w*|weep\w*|wet|damp|ooz\w*|puddl\w*|spray\w*|spurt\w*|dribbl\w*)"
_OUTSIDE = r"(?:bolts?|nuts?|screws?|base|underneath|behind|floor|hose|supply|wall|joint|between)"
_WITHIN = r"[^.!?\n]{0,60}"
_CRACK = re.compile(r"\b(?:crack\w*|hairline|fractur\w*)\b")
_LEAK = re.compile(rf"\b{_LEAKS}\b{_WITHIN}\b{_OUTSIDE}\b|\b{_OUTSIDE}\b{_WITHIN}\b{_LEAKS}\b")
_OF_THE_SEAL = re.compile(
    r"\b(?:flapper|seal|rubber|disc|gasket|ring|washer|flap|ball|ears?|strap|floppy \w+)\b"
    r"[^.!?\n]{0,30}\Z"
)
_ITS_SEAL = re.compile(r"[^.!?\n]{0,12}\b(?:flapper|seal|rubber|gasket|washer|flap)\b")
_READ = frozenset({"hazard", "symptom"})


def troubles(text: Text, facts: Facts) -> list[Fact]:
    """A fact `trouble` for each such place that is neither read, denied, nor of the seal."""
    found = []
    for name, pattern in (("crack", _CRACK), ("leak elsewhere", _LEAK)):
        for match in text.find(pattern):
            start, end = match.span()
            read = any(f.start < end and start < f.end for f in facts if f.name in _READ)
            of_seal = name == "crack" and (
                _OF_THE_SEAL.search(text.said, max(0, start - 40), start)
                or _ITS_SEAL.match(text.said, end)
            )
            if read or of_seal or stance(text, start, end).negated:
                continue
            words = text.raw[start:end]
            found.append(Fact(name="trouble", value=(name,), words=words, start=start, end=end,
                              sure=False))  # fmt: skip
    return found
