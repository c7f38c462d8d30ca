"""What a customer says of a part number: the old one, tried, asked about, or wanted.

The first rule that holds is the answer. A number is wanted only where somebody asks for it or
it stands alone; of some numbers nothing is said.
"""

from __future__ import annotations

import re

from assistant.reading.names.cues import SEAL, place_of
from assistant.reading.names.letter import Letter

_REACH = 130
_CLAUSE = re.compile(r"[,;:]\s|\b(?:but|and then|so)\b")
_GOES_ON = re.compile(
    r"[.!?;\s]*(?:it|it's|its|this|that|they|these|those|but|still|does|doesn't|doesnt|didn't|didnt"
    r"|did|too|not|won't|wont|wouldn't|will|would|is|was|the water|my toilet|no good|no luck"
    r"|same)\b"
)

_TO_SELL = re.compile(
    r"\b(?:send|sell|stock|carry|ship|post|price|prices|cost|order|buy|purchase|get|have|quote"
    r"|much (?:is|are|for)|(?:pay|charge) for|come in)\b"
)
_SERVED = re.compile(
    r"\b(?:(?:was|were|has been|it's been) (?:perfect|great|fine|good)|(?:worked|served) (?:\w+ )?"
    r"(?:well|fine|great|perfectly)|did the job"
    r"|same (?:number|one|part|again) (?:still|again|please)|another (?:one )?"
    r"(?:of|the) (?:the )?same)\b"
)
_WISHED = re.compile(r"\b(?:need|needs|want|wants|like|looking for|please|after|pack|pcs|qty)\b")
_CONSIDERED = re.compile(
    r"\b(?:do (?:i|we) need|should (?:i|we)|(?:what|how) about|would (?:i|we) need|(?:can"
    r"|could) (?:i|we)"
    r" (?:use|fit|put|install|try))\b[^.;?!]{0,30}$"
    r"|\b(?:website|web site|site|page|chart|guide|catalog(?:ue)?|manual|clerk|guy|he|she|they"
    r"|you|someone"
    r"|friend|neighbou?r|plumber|internet|video)\s+(?:\w+\s+)?(?:says?|said|told|recommend\w*"
    r"|suggest\w*|shows?"
    r"|lists?)\b[^.;?!]{0,30}$|\b(?:i was told|recommend\w*|suggested)\b[^.;?!]{0,20}$"
)
_CONSIDERED_AFTER = re.compile(
    r"\s*(?:was|is|were|has been) (?:recommended|suggested|what i need|the one i need|listed)\b"
)
_GOT_AFTER = re.compile(
    r"[^.?!]{0,25}?\b(?:arrived|(?:i|we)(?: have|'ve)? (?:got|bought|received|ordered|purchased"
    r"|installed|tried"
    r"|put in)|you (?:sent|sold)|from you)\b"
)
_ASKED_BEFORE = re.compile(
    r"\b(?:will|would|does|do|can|could|is|are|should|shall|might|may|if|whether)\s+"
    r"(?:[\w'-]+\s+){0,4}[\"'(#]?$"
)
_FOR_SALE_AFTER = re.compile(
    r"[^.?!]{0,20}\b(?:in stock|available|cost|come in|on sale|still (?:made|sold)|discontinued"
    r"|sell"
    r"|how much|price)\b"
)
_FIT_AFTER = re.compile(
    r"[^.!?]{0,80}?\b(?:fits?|works?|suits?|be right|(?:the )?right (?:one|part|flapper|seal"
    r"|size)|correct"
    r"|is right|compatible|the one i need|go (?:with|in|on)|do the job|match(?:es)?)\b"
)
_WILL_IT_FIT = re.compile(
    r"[^.?!]{0,40}\b(?:will|would|does|do) (?:it|they|that|this) (?:fit|work|suit)\b"
)
_FAILED = (
    r"(?:(?:does|did|do|would|will|could|is|was|are|were)(?: not|n't|nt)|won'?t|can'?t|cannot"
    r"|couldn'?t"
    r"|never|doesnt|didnt|wont|isnt|wasnt)\s+(?:\w+\s+){0,2}?"
    r"(?:fit|work|seal|hold|help|right|close|match|seat|stop|sit|solve|cure|fix|big|long|correct)"
    r"|too (?:small|big|large|short|long|wide|narrow|thick|stiff|tight|loose|heavy|light)"
    r"|still (?:\w+ )?(?:leak|run|drip|hiss|trickl|refill)\w*|(?:wrong|neither|nor|no good"
    r"|no luck|no use"
    r"|useless)\b"
    r"|(?:leaks|leaked|runs|keeps running) (?:too|as well|anyway|still|just|worse)"
    r"|same (?:problem|leak|thing)"
    r"|(?:leak|run|drip|hiss|trickl|refill)\w* again|floats? (?:away|off|up)|(?:comes|falls|pops"
    r"|came|fell) off|made it worse|no better"
    r"|no difference|to no avail|without (?:luck|success)|unsuccessful"
)
_FAILED_RIGHT_AFTER = re.compile(rf"[^\w]*(?:[\w']+\s+){{0,4}}?(?:{_FAILED})")
_FAILED_ASIDE = re.compile(r"\s*\(\s*(?:leak|fail|no\b|did|does|too|still|wrong)")
_FAILED_AFTER = re.compile(_FAILED)
_ACQUIRED = re.compile(
    r"\b(?:bought|tried|ordered|purchased|installed|put (?:in|on)|got|picked up|fitted|used"
    r"|received"
    r"|sent me|sold me|gave me|tested|replaced (?:(?:it|the \w+|mine) )?(?:with|w)|changed (?:it"
    r"|the \w+) (?:for|to))\b"
    r"(?:(?!\bbut\b|\bcame\b|\bfor\b).){0,60}$"
)
_TRIED_FOR_SURE = re.compile(r"\b(?:tried|have tried|already tried)\b(?:(?! but ).){0,50}$")
_OLD_BEFORE = re.compile(
    r"\b(?:replac(?:e|es|ing)|replacement (?:for|of)|replacements for|same as|identical to"
    r"|like (?:the|my|our)|exactly like|another(?: one)?(?: of)?|(?:one|flapper|seal"
    r"|ball) in (?:it|there)(?: now)? is|instead of|in place of"
    r"|equivalent (?:to|of|for)|cross[- ]?reference\w* (?:to|for)|supersed\w+|substitute for"
    r"|old(?: \w+){0,3}|original|existing|current(?:ly)?|previous|came with|comes with|came from"
    r"|(?:been |always |was )using|took out(?: an?| the)?|removed|pulled out|has an?|there is an?"
    r"|there's an?"
    r"|moulded|molded|embossed|stamped|marked|imprinted|engraved|says|reads|number on (?:it|the"
    r"|my))\b"
    r"(?:(?!\bfor\b|\bwith\b|\bbut\b|[;]|\bsays\b.*\bneed\b).){0,35}$"
)
_OLD_AFTER = re.compile(
    r"\s*(?:(?:flapper|seal|ball) )?in (?:it|there)\b|[^.?!;]{0,45}?\b(?:(?:came|come"
    r"|comes) (?:out|off|with)|(?:was|is|were|are)(?: currently"
    r"| now)? "
    r"(?:in (?:it|there|the tank|my toilet)|on (?:it|there)|(?:moulded|molded|stamped|marked"
    r"|printed"
    r"|embossed))|from my (?:old|toilet|tank)|(?:moulded|molded|stamped|marked|printed|embossed)"
    rf"(?: \w+)? (?:on|in|into)|(?:on|off|from) (?:the|my) (?:old|toilet|{SEAL})"
    r"|worn|perished|torn|crumbl\w+|cracked|has (?:gone|failed|split|hardened|warped)"
    r"|went (?:hard|soft)"
    r"|fell apart|falling apart|needs? replac\w+|died|lasted|gave (?:out|up)|need another"
    r"|want another|(?:need|want) (?:\w+ )?more"
    r"|i took out|(?:we|i) removed)\b"
)


_AGAIN = re.compile(r"\s+again\b")
_SAID_TO_FIT = re.compile(r"\s*(?:would|will|should|might) (?:go|fit|do|work|suit)\b")
_SPARE = re.compile(
    r"[^.?!]*\b(?:left ?over|spare|unopened|unused|in (?:a|the|my) drawer|lying (?:around|about))\b"
)


def role(letter: Letter, start: int, end: int, around: tuple[int, int]) -> str:
    """'old', 'asked', 'tried', 'wanted' or 'unsaid'.

    `around` are the ends of the numbers next to it.
    """
    low, high = letter.sentence(start, end)
    lead = letter.said[max(low, around[0], start - _REACH) : start]
    rest = letter.said[end : min(high, around[1])]
    if high < around[1] and _GOES_ON.match(letter.said, high):
        rest += letter.said[high : min(letter.sentence(high, high + 1)[1], around[1])]
    rest = rest[:_REACH]
    clause = _CLAUSE.split(lead)[-1]

    if _AGAIN.match(rest):
        return "old"
    if _SAID_TO_FIT.match(rest) or _SPARE.search(lead[-60:]) or _SPARE.match(rest[:60]):
        return "asked"
    old = _OLD_BEFORE.search(lead) or _OLD_AFTER.match(rest)
    if _SERVED.search(rest) and not _FAILED_AFTER.search(rest):
        return "old"
    acquired = _ACQUIRED.search(lead) or _GOT_AFTER.match(rest)
    if acquired and _FAILED_AFTER.search(rest):
        return "tried"
    if _TRIED_FOR_SURE.search(lead):
        return "tried"
    if _CONSIDERED.search(lead) or _CONSIDERED_AFTER.match(rest):
        return "asked"
    if place_of(letter, start, end) == "seal" and not acquired and not _called(lead):
        return "old"
    if _ASKED_BEFORE.search(clause) and not _TO_SELL.search(clause):
        if not _FOR_SALE_AFTER.match(rest) and (_FIT_AFTER.match(rest) or "fit" in clause):
            return "asked"
        if not old and re.search(r"\b(?:is|are|would|if|whether)\s+(?:[\w'-]+\s+){0,4}$", clause):
            return "wanted" if _FOR_SALE_AFTER.match(rest) else "asked"
    if _WILL_IT_FIT.match(rest):
        return "asked"
    if old:
        return "old"
    if _FAILED_RIGHT_AFTER.match(rest) or _FAILED_ASIDE.match(rest):
        return "tried"
    if acquired or ("?" in rest and _FIT_AFTER.match(rest) and not _FOR_SALE_AFTER.match(rest)):
        return "asked"
    return "wanted" if _is_wanted(letter, low, high, start, end) else "unsaid"


def _is_wanted(letter: Letter, low: int, high: int, start: int, end: int) -> bool:
    """A number that somebody wants sent, or that is all there is in its sentence."""
    sentence = letter.said[low:start] + " " + letter.said[end:high]
    return bool(_TO_SELL.search(sentence) or _WISHED.search(sentence)) or not re.search(
        r"\w{3}", sentence
    )


def _called(lead: str) -> bool:
    """'The flapper SK-100': the word names the part that is spoken of, not the old one."""
    return bool(re.search(rf"\b{SEAL}\b[\s(#:]*$", lead)) and not re.search(
        r"\b(?:old|original|existing|current)\b[^,;]{0,25}$", lead
    )
