"""What the customer wants from the shop: a part, an answer, and whether there is a picture."""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterable, Sequence

from assistant.reading.clauses import after, before, sentence_of
from assistant.reading.facts import Fact
from assistant.reading.lexicon import read_cards, words
from assistant.reading.request_cards import ASKS, OTHER_TOILET, PHOTO, WANTED
from assistant.reading.stance import Stance, stance
from assistant.reading.text import Text

_ASKING = words(
    r"^\W*(?:hi|hello|hey)?\W*got (?:any|an?|some)\b|\b(?:need\w*|want\w*|look(?:ing)? (?:for"
    r"|to)|search\w* for|after (?:a|an|the)"
    r"|order(?:ing)?|buy(?:ing)?|purchase|get (?:me )?(?:a|an|the|some|one|two|new|my"
    r"|replacement)|find|sell|send|stock|carry|have you got|got any|do you have"
    r"|you have|which|what(?! (?:i|we) (?:have|got|see))|replac\w+|price (?:of|on|for)"
    r"|how much (?:is|are|for|would|do|does)|quote|would like|i'd like"
    r"|add (?:a|an|the|one|two)\b|may as well (?:have|get|do|buy)|trying to (?:find|get|buy)"
    r"|request\w*"
    r"|help (?:me )?(?:find|with)|identify"
    r"|recommend|suggest|where can i|supply|interested in|wanted|change|fit)\b"
)
# What somebody has, had or mended is not what he asks for.
_HAS_IT = words(
    r"\b(?:already|i(?:'ve| have)?(?: just)? (?:replaced|changed|installed|put in"
    r"|bought|tried|got|checked)|we (?:replaced|changed)|(?:was|were|been|has"
    r"|had) (?:replaced|changed)|plumber|landlord|(?:he|she|they|owner|husband"
    r"|wife) (?:put|replaced|changed|installed)|hold|jiggle|push|pull|when i|if i"
    r"|turn(?:ed)?|measured?|before (?:i )?(?:replac|buy|chang)\w+|why|need to (?:hold"
    r"|jiggle|push|wiggle|pull))\b"
)
_REFUSED = words(
    r"\b(?:don't|dont|do not|didn't|doesn't|not) (?:really |actually )?(?:need|want"
    r"|looking for|order(?:ing)?)<3>$"
)
_OF_HOW = frozenset({"how to", "why", "what is", "measure how", "returns", "order status"})
_IS_FINE = words(
    r"^ ?(?:\w+ )?(?:is|are|was|works?|looks?|seems?) (?:\w+ )?(?:fine|ok|okay|good"
    r"|new|working|great)\b"
)
NEAR = 5  # words between the asking and a part that is no seal
_SEAL_WORD = re.compile(
    r"(?:\w+ ){0,3}(?:flapp?er|seal|gasket|ball|washer|ring|rubber|stopper|plug|bung|disc|disk"
    r"|bulb)"
)
_TAKEN_OFF = re.compile(r"^s? (?:off|up|down|back|on|open|slack|length)\b")
_WHICH = re.compile(r"\bwhich (?:of )?(?:the )?$")
_ANOTHER_THOUGHT = re.compile(r"[;]|\b(?:but|because|if|when|while|where|of the two|goes|can't)\b")
_BELONGS = re.compile(
    r"\b(?:for|on|(?<!one )(?<!some )(?<!kind )(?<!pair )of|in|to|under|by|inside|from"
    r"|with|around)\b"
)
_FRAGMENT = re.compile(
    r"^[\W_]*(?:(?:hi|hello|please|pls|a|an|the|my|new|replacement|subject|re|for|\d+"
    r"|toilet|tank|canister|one|two)\b[\W_]*)*$"
)
_FRAGMENT_GOES_ON = words(
    r"^s?(?: ?(?:needed|wanted|for|to fit|please|pls|inquiry|enquiry|question|request"
    r"|\?|,|-|:)|[\W_]*$)"
)


def read_requests(text: Text) -> list[Fact]:
    """Facts `wanted`, `asks` and `photo`, in order of place.

    A part counts as wanted where the words around ask for it, or where it stands alone as in
    'flapper for an old toilet'.
    """
    wanted = read_cards(text, WANTED, accepts=_asked_for, how=_of_wish)
    asked = _once_a_sentence(text, read_cards(text, ASKS, how=_plainly))
    wanted = [fact for fact in wanted if not _only_spoken_of(text, fact, asked)]
    photo = read_cards(text, PHOTO, how=_of_wish)
    if wanted and not asked and any(not fact.negated for fact in wanted):
        # 'Flapper for my old toilet' asks which.
        first = next(fact for fact in wanted if not fact.negated)
        asked = [
            Fact(
                name="asks",
                value=("which part",),
                words=first.words,
                start=first.start,
                end=first.end,
                sure=first.sure,
            )
        ]
    elsewhere = read_cards(text, OTHER_TOILET, how=_of_wish)
    return sorted([*wanted, *asked, *photo, *elsewhere], key=lambda f: (f.start, f.end, f.name))


def _asked_for(text: Text, start: int, end: int) -> bool:
    head, tail = before(text, start), after(text, end)
    if _IS_FINE.match(tail) or (head.endswith("(") and tail.startswith(")")):
        return False
    asking = [m.end() for m in _ASKING.finditer(head)]
    since = asking[-1] if asking else 0
    if not _SEAL_WORD.match(text.said[start:end]):
        if _TAKEN_OFF.match(tail) or (asking and _far(head[since:])):
            return False  # '... tell me where to look, but the lid is heavy' wants no lid
        if asking and head[since:].strip() == "" and _WHICH.search(head):
            return False
    if asking and not _HAS_IT.search(head[max(0, since - 24) :]):
        # 'A washer for the flush valve' asks for no flush valve.
        return not _BELONGS.search(head[since:])
    low, _ = sentence_of(text, start)
    return bool(
        not asking
        and start - low < 60
        and _FRAGMENT.match(text.said[low:start])
        and _FRAGMENT_GOES_ON.match(tail)
    )


def _far(between: str) -> bool:
    return len(between.split()) > NEAR or _ANOTHER_THOUGHT.search(between) is not None


def _of_wish(text: Text, start: int, end: int) -> Stance:
    """'I think I need a flapper' asks for one, if not surely; 'a flapper?' is no doubt."""
    held = stance(text, start, end)
    refused = _REFUSED.search(before(text, start)) is not None
    return Stance(held.negated or refused, held.doubted and "?" not in text.said[end : end + 3])


def _plainly(text: Text, start: int, end: int) -> Stance:
    """A question is asked or it is not."""
    return Stance()


def _once_a_sentence(text: Text, asked: Iterable[Fact]) -> list[Fact]:
    """The first of several questions of one kind in a sentence."""
    first = {(sentence_of(text, fact.start), fact.choices): fact for fact in reversed([*asked])}
    return sorted(first.values(), key=lambda fact: fact.start)


def _only_spoken_of(text: Text, part: Fact, asked: Sequence[Fact]) -> bool:
    """Whether a part only stands in a question of how or why: nobody wants to buy it there."""
    at = bisect_right(asked, part.start, key=lambda fact: fact.start)
    if at == 0 or asked[at - 1].choices[0] not in _OF_HOW:
        return False
    return asked[at - 1].start >= sentence_of(text, part.start)[0]
