"""Whether a writer doubts or denies a name."""

from __future__ import annotations

import re

_DENIED = re.compile(
    r"\b(?:not|neither|isn'?t|wasn'?t|aren'?t|never|rather than|instead of|nothing to do with)\s+"
    r"(?:(?:made\s+)?(?:by|from)\s+)?(?:an?\s+|the\s+|one of the\s+|your\s+)?[\"']?$"
)
_NOT_ONLY = re.compile(r"\b(?:if|whether|why|or) (?:it'?s |it is )?not\s")
_DOUBT_BEFORE = re.compile(
    r"\b(?:maybe|perhaps|possibly|probably|presumably|supposedly|apparently|not sure(?: but)?"
    r"|unsure|guessing"
    r"|looks like|look like|similar to|something like|sort of|kind of|either|some"
    r"|resembles)\b[^.;?!]{0,30}$"
    r"|\b(?:might|may|could|must|should) (?:well )?(?:be|have been)\b[^.;?!]{0,25}$"
    r"|\b(?:think|thought|believe|guess|reckon|assume|suspect|suppose|fairly sure|pretty sure"
    r"|told|says"
    r" (?:my|the) \w+)(?: that)?,? (?:(?:it|this|that|they|he|she|mine|ours)(?:'s|'re| is| was"
    r"| are| says| has)?"
    r"|its|is|the (?:model|brand|make|maker|name|toilet|tank|number)|a|an)\b[^.;?!,]{0,30}$"
    r"|\b(?:he|she|they|wife|husband|plumber|neighbou?r|landlord|guy|(?:mother"
    r"|father)(?:[- ]in[- ]law)?|mum|mom|dad"
    r"|friend|clerk|owner|seller)\b[^.;?!]{0,15}\b(?:says?|said|thinks?|thought|guess(?:es|ed)?"
    r"|claims?|swears?"
    r"|told me|reckons?)"
    r"\b[^.;?!]{0,30}$"
    r"|\b(?:is|it's|very|much|just|something|similar) like (?:the|an?)\b[^.;?!]{0,10}$"
    r"|\bseems? (?:to be|like)\b[^.;?!]{0,20}$"
    r"|\bif (?:it's|it is|this is|memory)\b(?! the (?:seal|flapper|valve))[^.;?!]{0,25}$"
)
_DOUBT_AFTER = re.compile(
    r"[\s,(-]{0,3}(?:toilet|tank|model|one)?[\s,(-]{0,3}(?:\?\)|\?\?|\(\?|(?:maybe|perhaps|possibly"
    r"|probably)(?! (?:from |about |around |the |of )?(?:'?\d\d|late|early|mid|a 19|a 20))"
    r"|i (?:think|believe|guess|suppose|assume|reckon)|(?:but )?(?:i'?m |am )?not (?:\d+% "
    r"|entirely |"
    r"completely |totally |really |quite |too )?(?:sure|certain|positive)|or (?:something|similar"
    r"|so\b|some"
    r"such|whatever|maybe)|ish\b)"
)


_DENIED_BOTH = re.compile(
    r"\b(?:not|isn'?t|wasn'?t|neither)\s+(?:an?\s+|the\s+)?[\w&' -]{2,25}?\s+n?or\s+(?:an?\s+"
    r"|the\s+)?$"
)
_PAST = re.compile(
    r"\b(?:(?:don'?t|doesn'?t|do not|does not|no longer) (?:have|own)|used to (?:have|own"
    r"|be))\s+(?:an?\s+|the\s+)?$"
)


_ANOTHERS = re.compile(
    r"\b(?:neighbou?r|friend|co-?worker|colleague|buddy)s?(?:'s)?\b[^.;?!]{0,25}"
    r"\b(?:has|have|had|owns?|got|is|bought)\b[^.;?!]{0,12}$"
    r"|\b(?:left over|spare|salvaged|taken|came) (?:from|out of)\b[^.,;?!]{0,30}$"
    r"|\b(?:old|previous|former|last|other) (?:toilet|one|commode) "
    r"(?:was|had been|used to be)\b[^.;?!]{0,12}$"
)


def denied(lead: str) -> bool:
    """Whether the words before a name deny it ('it is not a ...'), or give it to another."""
    if _ANOTHERS.search(lead):
        return True
    if _NOT_ONLY.search(lead[-40:]):
        return False
    return any(p.search(lead) for p in (_DENIED, _DENIED_BOTH, _PAST))


_ASKS = re.compile(r"(?:^|[.!?;,]\s*)(?:is|are|will|would|does|do|can|could|which|what|how)\b")


def doubted(lead: str, rest: str) -> bool:
    """Whether the words before or after a name leave it in doubt ('I think it is a ...')."""
    if _DOUBT_BEFORE.search(lead):
        return True
    after = _DOUBT_AFTER.match(rest)
    return after is not None and not (after[0].strip() == "??" and _ASKS.search(lead))


_OR_EQUAL = re.compile(
    r"^\W{0,3}or (?:(?:something )?(?:similar|equivalent|equal)|whatever (?:took|replac\w+"
    r"|superseded))\b"
)
_HARD_TO_READ = re.compile(
    r"\b(?:can'?t|cannot|could ?n'?t|could not|hard to|difficult to|barely"
    r"|hardly) (?:\w+ )?(?:read|make out|see"
    r"|tell)\b|\b(?:illegible|smudged|blurry|blurred|faded|worn (?:off|away)|unclear|faint)\b"
)


def hard_to_read(lead: str, rest: str) -> bool:
    """Whether the writer doubts a number or could not read it well."""
    near = lead[-50:] + "  " + rest[:50]
    return doubted(lead, _OR_EQUAL.sub("", rest)) or bool(_HARD_TO_READ.search(near))
