"""'No idea', 'it is worn off', 'I'd rather not lift the lid': that somebody does not know.

It is knowledge: the question is not put again, and others of its kind are put later. It is
never an answer: 'no idea' is no 'no', and a number that cannot be read is no number.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from assistant.reading.text import plain
from assistant.reading.topics import topics

_NOT = r"(?:n'?t| not|not)"
_CANNOT = rf"(?:ca{_NOT}|cannot|can not|could{_NOT}|un(?:able|willing) to|not able to|never could)"
_DO_NOT = rf"(?:do{_NOT}|did{_NOT}|does{_NOT}|would{_NOT}|have{_NOT}|has{_NOT}|haven'?t got)"
_PHRASE = re.compile(
    rf"\b(?:no (?:idea|clue|way of (?:knowing|telling))|not (?:a clue|the (?:foggiest|faintest))"
    rf"|(?:have{_NOT}|without) a clue|dun+o|idk|who knows|search me|beats me|pass|you tell me"
    r"|your guess is as good as mine"
    rf"|{_DO_NOT} (?:really |actually |even |honestly )?(?:know|remember|recall|see|spot|notice)"
    rf"|{_CANNOT} (?:really |actually |even |quite |honestly |for the life of me )?"
    r"(?:know|remember|recall|see|spot|read|find|make (?:it |them |anything )?out|tell|say|get at"
    r"|get to|reach|measure|do (?:that|it|this|any)|send"
    r"|take (?:one|any|a (?:photo|picture))|lift|get (?:the lid|it|a hand|in)\b|look"
    r"|work (?:it )?out)"
    r"|(?:am |i'?m |we'?re )?(?:not (?:really |at all |quite |too |very |so )?(?:sure|certain)"
    r"|unsure)|forgotten|forgot|slips my mind|hard to (?:say|tell|see|read)"
    r"|impossible to (?:say|tell|see|read|find)|not (?:visible|legible|readable)"
    r"|(?:worn|rubbed|scrubbed|scoured|washed|flaked|scratched|weathered|rusted|corroded) "
    r"(?:right |clean |all |completely )?(?:off|away|out|down|smooth)"
    r"|(?:worn|faded|eaten) (?:away )?(?:past|beyond) reading"
    r"|illegible|un(?:readable|legible)|faded|long gone|too (?:faint|worn|dark|dirty|rusty|scaled)"
    r"|nothing (?:on it|there|legible|readable|written|marked|stamped|moulded|to (?:see|read)"
    r"|you can read|i can (?:see|read|find))"
    r"|before my time|nobody (?:knows|can say)|rather not|prefer not to|not (?:lifting|opening)"
    rf"|{_DO_NOT} (?:want|wish|like|dare|care) to"
    rf"|(?:{_DO_NOT} (?:have|own)|haven'?t got|have no|no) (?:a |any )?"
    r"(?:ruler|tape|tape measure|torch|camera|smartphone|means of measuring)"
    r"|no (?:visible |legible |readable |other |model |part |serial |date |maker'?s? |brand )*"
    r"(?:numbers?|names?|makers?|make|brand|model|dates?|stamps?|years?|mark(?:s|ing|ings)?|logo"
    r"|digits|label"
    r"|photo(?:graph)?s?|pictures?|pics?"
    r"|writing)\b)"
)
# Beside these nothing is said in a clause that does not know.
_FILLER = re.compile(
    r"\b(?:i|i'?m|i'?d|i'?ve|we|we'?d|it|it'?s|its|is|was|are|am|that|that'?s|this|there|one|any"
    r"|anything|them|those|at all|mate|really|just|honestly|to be honest|tbh|from here|the|me|my"
    r"|either|unfortunately|afraid|sorry|anymore|any more|all|now|yet|here|where|on|of|in|inside"
    r"|so|well|hm+|er+m?|um+|oh|no|nope|ah|completely|totally|has|have|been|would|much|very|even"
    r"|ok(?:ay)?|right|then|please|thanks?|you|on this one|anywhere|about|a|lid|to|lift|open|off"
    r"|tank|take|go|look|again|for|what|how|as|him|her|she|he|they|do|s|d|m|ve|re|t)\b|[\W_]+"
)
_NONE = re.compile(
    r"(?:no(?:pe|ne|thing|t one)?|nah|no,? (?:there )?(?:is|was|are)(?:n'?t| not?| none)"
    r"(?: one| any)?|there (?:is|are)(?:n'?t| no|not)? ?(?:one|any|none|nothing)?"
    r"|(?:it )?(?:has|does)(?:n'?t| not)(?: have| got)? (?:one|any)|(?:no|none|nothing)"
    r"(?: at all| there| on it| to be seen| anywhere| that i can see| i can see))"
)
NONE_IS_UNKNOWN = frozenset({"model_no", "old_part", "photograph", "brand", "model", "made"})
_CLAUSE = re.compile(r"[^.!?;,\n]+?(?=[.!?;,\n]|\s(?:but|though|although|however|yet)\b|$)")
_LEADS = re.compile(r"\s*(?:(?:but|though|although|however|yet|and)\b\s*)?")
_OF_THE_SEAL = re.compile(
    r"\b(?:which|what) (?:one |kind of |sort of |type of )?(?:seal|flapper"
    r"|part|ring|washer|i (?:need|want)|it (?:takes|needs)|to (?:order|buy))"
)


def says_nothing(text: str) -> bool:
    """Whether nothing is said beside 'I am afraid', 'sorry' and the like."""
    return not _FILLER.sub(" ", plain(text)).split()


@dataclass(frozen=True)
class Unknown:
    """A clause that does not know, and the questions that it leaves open."""

    start: int
    end: int
    questions: frozenset[str]


def not_known(text: str, asked: tuple[str, ...] = ()) -> tuple[Unknown, ...]:
    """The clauses of a message that do not know; `asked` are the questions it replies to."""
    said = plain(text)
    found = []
    for start, end in _clauses(said):
        clause = said[start:end]
        questions = _questions(clause, asked)
        if questions:
            found.append(Unknown(start, end, questions))
    return tuple(found)


def _clauses(said: str) -> Iterator[tuple[int, int]]:
    for match in _CLAUSE.finditer(said):
        lead = _LEADS.match(match[0])
        start = match.start() + (lead.end() if lead else 0)
        if start < match.end():
            yield start, match.end()


def _questions(clause: str, asked: tuple[str, ...]) -> frozenset[str]:
    if re.search(r"\d", clause) or _OF_THE_SEAL.search(clause):
        return frozenset()  # 'dunno, 1985 maybe' holds an answer
    if _NONE.fullmatch(clause.strip()):
        return frozenset(asked) & NONE_IS_UNKNOWN if len(asked) == 1 else frozenset()
    phrase = _PHRASE.search(clause)
    if phrase is None:
        return frozenset()
    about = topics(clause, asked)
    if about:
        return about
    rest = clause[: phrase.start()] + " " + clause[phrase.end() :]
    return frozenset(asked) if says_nothing(rest) else frozenset()
