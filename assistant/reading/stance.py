"""How the writer stands to a phrase: says it, denies it, or doubts it.

A denial reaches only what it governs: 'no ears', "doesn't have those ears". In 'it does not
fit the two pegs' the pegs are there, so a plain 'not' reaches past a verb only where the verb
says what a thing has or is.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from assistant.reading.clauses import after, before
from assistant.reading.corrections import Correction, corrections
from assistant.reading.text import Text

__all__ = ["Correction", "Stance", "corrections", "stance"]


@dataclass(frozen=True)
class Stance:
    """Whether a phrase is denied, and whether its writer was unsure of what he says of it."""

    negated: bool = False
    doubted: bool = False


_W = r"[\w'/\"-]+"
_NOT = (
    r"(?:\bnot(?! (?:over |on |across )?the (?:lip|rim|edge|outside)\b)"
    r"|n't|\bcannot|\bnever|\bno longer|\bno more|\bnobody|\bnothing(?! (?:but|like))"
    r"|\bno[ -]?one|\bnone of (?:us|them)"
    r"|\b(?:do|does|did|is|are|was|were|has|have|had|would|could|ca|wo)nt)"
)
_ADVERB = r"(?:really|actually|even|at all|currently|yet|ever|quite|anymore|any|been|being|be)"
_HAVING = (
    r"(?:have|has|had|having|got|get any|seen?|find any|come with|use|uses|take|show|be|look like"
    r"|the kind (?:with|that)|(?:held|hooked|attached|mounted|connected|fastened|fixed|hinged)"
    r"(?: on| in)?(?: by| with| to| on)?|made (?:of|from|out of)"
    r"|(?:hook|clip|slip|slide|go|snap|attach|screw|push|mount)s?(?: on| over| onto| to| around| in"
    r"| with| by)+|(?:think|believe)(?: that)?(?: it| they| there| mine| this| we| i)?"
    r"(?: has| have| had| is| are| was|'s|'re)?)"
)
_PLAIN = r"(?!(?:it|its|is|are|was|has|have|had|on|for|at|from|about|if|whether|to|i|we|in)\b)"
_LOOSE = rf"(?:\s+{_PLAIN}{_W})"
_NONE = (
    r"(?:\bno(?!\s+(?:idea|clue|matter|doubt|problem|luck|wonder|one|longer|more|need|way|issue|wait))"
    r"|\bwithout|\black(?:s|ing)?|\binstead of|\brather than|\bunlike|\bneither|\bnor|\bzero"
    r"|\bas opposed to|\bnothing like|\bother than|\bnone of|\bnon-?|\bfree of)"
)
_DENIED_BEFORE = re.compile(
    rf"(?:{_NOT}(?:\s+{_ADVERB})*(?:\s+{_HAVING}{_LOOSE}{{0,5}}"
    rf"|\s+(?:a|an|the|any|one|those|these|that|my)\b{_LOOSE}{{0,4}})?"
    rf"|{_NONE}{_LOOSE}{{0,4}}"
    r"|\b(?:stopped|quit|ruled out))[\s(\"]*$"
)
_DENIED_AFTER = re.compile(
    r"^[\s?:,=-]*(?:(?:none|no|nope|nil|n/a|absent|not any|false)(?=\s*(?:[,.;!)(\n]|-|$))"
    r"|(?<=[:=?-])\s?(?:none|no|nope|nil)(?=\s+[\w ]{2,15}:)"
    r"|(?:there )?(?:is|are|was|were)(?:n't| not)(?: there| present| any| any more)(?=\W|$))"
)
_SAID_AFTER = re.compile(r"^\s?[?:=-]+\s*(?:yes|yep|yeah|yup|y)\b")
# Past one of these words a denial no longer reaches.
_BREAK = re.compile(
    r"\b(?:but|however|though|although|except|because|cause|so|while|whereas|just|only|yet|since"
    r"|then|and|&)\b|[:;()]|\s-+\s|(?<=\w)--"
)
_COMMA = re.compile(r",")
_LIST_HEAD = re.compile(
    r"^\s*(?!(?:a|an|the|two|it|its|they|there|has|have|is|just|i|we|my|this|that)\b)"
    rf"(?:{_W}\s*){{0,2}}$"
)
_LIST_TAIL = re.compile(rf"^(?:\s*,?\s*{_W}){{0,4}}?,?\s+n?or\b")
_OR_BEFORE = re.compile(r"^\s*n?or\b")
_OR_LAST = re.compile(rf"^\s*{_W},? n?or (?:an? |any )?$")

_DOUBT_BREAK = re.compile(
    r"\b(?:but|however|although|because|since|sorry)\b|[;]"
    r"|\b(?:stamp|stamped|lid|tank|label|sticker|date|papers?|booklet|receipt)(?: \w+)?"
    r" (?:says|said|reads?)\b|\band (?:it|they|the|i|there|we|my)\b|\s-+\s"
)
_SURE = re.compile(r"(?:pretty|fairly|quite|very|absolutely|100%|almost|i'm|i am) (?:sure|certain)")
_DOUBT_BEFORE = re.compile(
    r"\b(?:i (?:think|believe|guess|suppose|suspect|assume|presume|wanna say|want to say)"
    r"|i'm (?:guessing|assuming|thinking)|guessing|assuming|think(?: that)? it|think its"
    r"|(?:do not|don't|dont|didn't) (?:think|believe)"
    r"|may ?be|perhaps|might|mite|may (?:be|have)|could (?:be|have)|possibly|probably|prob|prolly"
    r"|presumably|supposedly|supposed to|apparently|allegedly|likely"
    r"|not (?:really |so |too |100% |entirely |completely |quite |very |totally )?"
    r"(?:sure|certain|positive|clear)|unsure|uncertain"
    r"|n't (?:know|tell|remember|recall|say|be sure)|dont (?:know|remember)|cannot (?:tell|say)"
    r"|no (?:idea|clue)|dunno|who knows|hard to (?:tell|say|see)"
    r"|if (?:i|my|memory)\s?\w* ?(?:remember|recall|serves|memory|not mistaken)|iirc|afaik"
    r"|from memory|as far as i|seems?|appears?|looks? (?:to be|like (?:it|they|there|maybe))"
    r"|must (?:be(?! (?:about|around|roughly|at least|getting on))|have)|should be"
    r"|wonder(?:ing)?|whether"
    r"|if (?:it|they|there|the|mine|this|that|yours)(?:'s| is| has| have| are| had)?)\b"
)
_DOUBT_AFTER = re.compile(
    r"^(?:[\s,(]*or (?:so|thereabouts)\b|(?:\s+(?!that\b|which\b)[\w'/-]+){0,7}?[\s,(.-]*"
    r"(?:(?:i (?:think|believe|guess|suppose|assume)|may ?be|perhaps|possibly|probably)"
    r"(?=\s*(?:[.,;:!?)(\n-]|$|and\b|but\b))|or (?:something|similar|maybe|whatever)|guessing"
    r"|if (?:i|my|memory)\s?\w* ?(?:remember|recall|serves|memory|not mistaken)|iirc|afaik"
    r"|(?:but )?(?:i'm |i am |im )?not (?:really |100% |entirely |too )?(?:sure|certain|positive)"
    r"|unsure|could be wrong|(?:but )?i could be|dunno|no idea|no clue|as far as i (?:know|can)"
    r"|from memory|supposedly|apparently|it seems|i'm told|don't quote me)\b)"
)
_ASKED_AFTER = re.compile(r"^(?:\s*(?:\(\s*)?\?)|^\s+(?!that\b|which\b)\w+\s*\?")

# 'What fits: opening 76 mm, ears 100 mm?' asks for the seal, not for the measure.
_ASKS_ELSE = re.compile(
    r"\W*(?:what|which)(?: \w+){0,2} (?:fits?|suits?|goes|do i|will|would|could)\b"
)


def stance(text: Text, start: int, end: int) -> Stance:
    """How the writer stands to the phrase at [start, end)."""
    head, tail = before(text, start), after(text, end)
    if _SAID_AFTER.match(text.said[end : end + 12]):
        return Stance()
    if _DENIED_AFTER.match(tail) or _DENIED_AFTER.match(_next_words(text, end)):
        return Stance(negated=True)
    negated = _DENIED_BEFORE.search(_in_reach(head, tail)[-90:]) is not None
    return Stance(negated, _doubted(head, tail))


def _next_words(text: Text, end: int) -> str:
    """After 'ears?' the answer stands in a sentence of its own."""
    following = text.said[end : end + 20]
    return following.lstrip("?: ") if following.startswith("?") else ""


def _in_reach(head: str, tail: str) -> str:
    """The end of `head` from which a denial can still reach the phrase."""
    breaks = [m.end() for m in _BREAK.finditer(head)]
    if breaks:
        head = head[breaks[-1] :]
    commas = [m.end() for m in _COMMA.finditer(head)]
    if commas and not _lists(head[commas[-1] :], tail):
        head = head[commas[-1] :]
    return head.replace(",", " ")


def _lists(since_comma: str, tail: str) -> bool:
    """Whether a comma goes on with a list: 'no ears, pegs or clips'."""
    if _OR_BEFORE.match(since_comma) or _OR_LAST.search(since_comma):
        return True
    return bool(_LIST_HEAD.match(since_comma) and _LIST_TAIL.match(tail))


def _doubted(head: str, tail: str) -> bool:
    breaks = [m.end() for m in _DOUBT_BREAK.finditer(head)]
    if breaks:
        head = head[breaks[-1] :]
    commas = [m.end() for m in _COMMA.finditer(head)]
    if commas and not _lists(head[commas[-1] :], tail) and _has_clause(head[: commas[-1]]):
        head = head[commas[-1] :]
    if _DOUBT_BEFORE.search(_SURE.sub(" ", head)):
        return True
    asked = _ASKED_AFTER.match(tail) and not _ASKS_ELSE.match(head)
    return bool(_DOUBT_AFTER.match(_SURE.sub(" ", tail)) or asked)


def _has_clause(words: str) -> bool:
    """Whether more than the doubting words stand before the comma: 'Not sure, a ring' doubts on."""
    return len(re.findall(_W, words)) > 4
