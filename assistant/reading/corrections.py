"""Places where the writer takes back what went before."""

from __future__ import annotations

import re
from dataclasses import dataclass

from assistant.reading.clauses import sentence_of
from assistant.reading.text import Text


@dataclass(frozen=True)
class Correction:
    """The place that holds the correction, from its first word to the end of its sentence.

    Facts read in it replace those of the same name read before it.
    """

    start: int
    end: int


_HERE = r"(?:(?<=[.,;!?(\n-])\s{0,3}|(?<=[.,;!?(\n-]\s\s)|^)"
_TAKES_BACK = re.compile(
    rf"{_HERE}(?:oh |ok |oops,? |sorry,? |er+m?,? |um+,? )?(?:"
    r"no,? wait|wait[,.]? (?:no|actually|sorry|it|i|that|the)\b|hang on[,.!]|hold on[,.!]"
    r"|no,? i (?:measured|checked|looked|have)"
    r"|make (?:that|it) (?=\d|a\b|the\b|an\b|two|three|one)|i mean(?:t)?\b(?! to\b)"
    r"|actually,? (?:no\b|it|that|the|its|they|i (?:just )?(?:measured|checked|looked|see)|\d)"
    r"|or rather|no,? (?:actually|sorry|(?:it's|its|it is|that's|they're)"
    r" (?:an?|the|actually)\b)|sorry!*,? (?:\d|it's|its|it is|that's|that is|that should"
    r"|not|the|a|\d))"
    r"|\bi say (?=(?:19|20)\d\d)|\b(?:it )?turns out\b|\b(?:sry|srry|sorri),? "
    r"|\b(?:scratch that|strike that|correction[:,]|(?:i )?take that back|my (?:mistake|bad)"
    r"|i (?:was wrong|misspoke|misread|mistyped|stand corrected|meant(?! to\b))|on second thoughts?"
    r"|correction (?=[a-z]{0,3} ?\d)|or rather|no,? (?:the )?other way (?:about|round)"
    r"|(?:kindly )?disregard the"
    r"|strike out|or so i (?:believed|thought)|says? rubbish|let me spell|hm+,? let me"
    r"|typo\b|i made a mistake|let me correct|that was wrong|disregard (?:that|the last)"
    r"|(?:scrap|cancel|forget|ignore|belay) (?:that|it|what i (?:said|wrote)|the above|all that)"
    r"|oh (?:blast|bother|drat|damn|crikey)|silly me|beg (?:your )?pardon|i tell a lie"
    r"|(?:on|at) (?:a )?second (?:look|glance|sight|reading)|(?:looked|checked|read it) again"
    r"|(?:had|got) (?:that|it|the \w+) wrong|that should (?:be|read|say|have)|should have (?:said"
    r"|written|put)|let me (?:check|look|see) ?\.\.|no,? (?:hang|hold) on"
    r"|nope,(?= (?:it|i|the|that|having)\b)"
    r"|oops|whoops)|^(?:edit|update|correction|amended)\s*:|\b(?:edit|correction|update)\s*:",
    re.MULTILINE,
)
_SAYS_NOTHING = re.compile(r"^[\W_]*(?:(?:wait|no|sorry|it|i|was|wrong|that|oops)\b[\W_]*)*$")


def corrections(text: Text) -> list[Correction]:
    """Every correction, in order; those that lie in an earlier one are part of it."""
    found: list[Correction] = []
    for mark in text.find(_TAKES_BACK):
        start = mark.end() - len(mark.group().lstrip())
        if found and start < found[-1].end:
            continue
        _, end = sentence_of(text, mark.end() - 1)
        if _SAYS_NOTHING.match(text.said[mark.end() : end][:80]) and end < len(text.said):
            # 'Oops, wrong.' is mended by the sentence after it.
            _, end = sentence_of(text, _next_word(text.said, end))
        found.append(Correction(start, end))
    return found


def _next_word(said: str, place: int) -> int:
    following = re.compile(r"\w").search(said, place)
    return following.start() if following else len(said) - 1
