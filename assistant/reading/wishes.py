"""Whether a description is of what the writer sees, or of what he asks for."""

from __future__ import annotations

import re

from assistant.reading.clauses import before, sentence_of
from assistant.reading.text import Text

_WISH = re.compile(
    r"\b(?:(?:i|we|i'd|we'd|would|really|just|also|dont|don't|do not|you|id|he|she"
    r"|wife|husband) want(?:s|ed)?(?! to\b)|prefer\w*|i'?d (?:like|love|rather)"
    r"|would (?:like|love|rather)|(?:do|does|would|did|dont|don't) (?:you|u|y'all"
    r"|the shop|your shop)(?: guys| also)? (?:have|sell|carry|stock|make|offer|got)"
    r"|(?:have|got) you (?:got )?(?:any|a)|you (?:have|sell|carry|stock) (?:any|one|a)"
    r"|can i (?:get|buy|order|have|use|put|fit|install|try)"
    r"|could i (?:get|use|have|put|fit)|do they (?:make|come)"
    r"|should i (?:get|buy|use|put|fit|order|try)|upgrade to|switch to|convert to|change to|wish"
    r"|difference)\b"
)
_NEED = re.compile(
    r"\b(?:(?<!do not )(?<!don't )need(?:ing|s|ed)?(?! to\b)|look(?:ing)? for"
    r"|searching for|after a|want to (?:buy|order|get)|like to (?:buy|order|get"
    r"|purchase)|order(?:ing)?|buy|send me|get me|find (?:me )?an?|how much"
    r"|prices? (?:of|on|for))\b"
)
# What somebody bought or was shown may differ from what is in his tank.
_OTHER_PART = re.compile(
    r"\b(?:bought(?! (?:the|this|our|my) (?:house|place|home|property|toilet))|(?:sold"
    r"|gave|sent) me|(?:i|we|i've|we've) (?:have )?tried|picked up|(?:the"
    r"|a) new(?: (?:one|flapper|seal|gasket|ball|stopper))?|replacement|(?:at|from"
    r"|in) the (?:\w+ ){0,2}store|universal|every one|all the ones|the ones"
    r"|they (?:had|have|sell|gave|only)|online|pictures?|the one (?:i|they|from|at))\b"
)
# From here on it is the toilet that is described, not what is wished for.
_TURNS = re.compile(
    r"\b(?:(?<!looking )(?<!look )(?<!searching )(?<!how much )(?<!price )(?<!prices"
    r" )for (?:my|our|the|an?|this|that|his|her|older|old|replacing)|(?:on|in"
    r"|of) (?:my|our)|my|mine|that (?:fits|will fit|works|would fit)|to (?:fit|replace"
    r"|match)|like (?:the|this|my)|same as|the old|old one|current(?:ly)?|existing"
    r"|it has|it's got|which has|i have|i've got|there is|there are|because|since"
    r"|but)\b|[;:]|,\s*(?:it|its|they|mine|this|the|there)\b"
)
_ASKS = re.compile(
    r"(?:^\W*|[.,;:!?(]\s*|\s-+\s*|\b(?:so|and|but|or|also|well|ok|question|know"
    r"|wondering)[,:]? )(?:do|does|did|is|isn't|are|aren't|was|were|should|would|will"
    r"|has|have|don't|doesn't|shouldn't) (?:it|they|these|those|this|that|there|the"
    r"|your|yours|any|one|an?|all|i)\b"
)
_ASKS_WHICH = re.compile(
    r"\b(?:which|what) (?:one|kind|type|style)\b[^,]{0,20}\b(?:is|are|has|have)\b"
    r"|\bdifference between\b|\bwhat(?:'s| is| are) (?:an?|the)\b|\bhow (?:do|would"
    r"|can) i (?:know|tell) (?:if|whether)\b|\b(?:know|see|check|tell|sure) (?:if"
    r"|whether)\b"
)
_CHAIN = re.compile(r"[,.]\s|\band\b")


def observed(text: Text, start: int, end: int) -> bool | None:
    """Whether a phrase tells what is there: no if it is asked or wished for.

    `None` where it is of the part needed, which is mostly, but not surely, like the old one.
    """
    head = before(text, start)
    turns = [m.end() for m in _TURNS.finditer(head)]
    wish_head = head[turns[-1] :] if turns else head
    if _WISH.search(wish_head):
        return False
    asks = [m.end() for m in _ASKS.finditer(head)]
    if asks and not _CHAIN.search(head[asks[-1] :]) and _ends_asking(text, end):
        return False
    which = _ASKS_WHICH.search(head)
    if which and not _TURNS.search(head, which.end()) and not _CHAIN.search(head, which.end()):
        return False
    if _NEED.search(wish_head) or _OTHER_PART.search(wish_head):
        return None
    return True


def _ends_asking(text: Text, end: int) -> bool:
    _, high = sentence_of(text, max(end - 1, 0))
    return "?" in text.said[end : min(high, end + 120)]
