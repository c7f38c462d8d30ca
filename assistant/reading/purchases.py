"""Whether a date is of a deed done to the toilet: a verb, then the toilet, then the date.

'We bought this toilet June 1995', 'put in a new loo around 2001'. Such a date stands beside the
toilet and still tells when it was bought; 'this toilet, June 1995' with no such verb does not.
"""

# ruff: noqa: E501  (a pattern is easier to read on one line)

from __future__ import annotations

import re

from assistant.reading.things import HOME, PART, TOILET

# 'I've got this toilet' is of having it, and so is 'got a toilet' unless it is a new one.
_GOT = r"(?<!have )(?<!has )(?<!'ve )(?<!'s )got(?! an? (?!(?:brand )?new\b))"
_SWAPPED = r"replaced|swapped(?: out)?|changed(?: out)?|(?<!to )install(?:ed)?|fitted"
_VERB = rf"(?<!never )(?<!not )(?<!n't )(?:bought|bougth|bougt|bouhgt|purchased|ordered|picked up|upgraded|{_SWAPPED}|(?P<put>put in)|{_GOT})"
_WHICH = (
    r"(?:the|this|that|these|those|our|my|his|her|their|an?|one|both|two|three|brand|new|used|old|whole|entire|current|present|same|other|first|second"
    r"|replacement|up ?stairs|down ?stairs|main|master|guest|hall|bath(?:room)?|basement|white|low[ -]flow|dual[ -]flush|[\d.]{1,4} ?(?:gpf|lpf|gallon))"
)
_WHOLE = rf"(?!bowl){TOILET}"  # a bowl put in later says nothing of the tank on it
_ITS = rf"(?: {_WHICH}){{0,4}} {_WHOLE}(?: {_WHOLE})?"
_HEDGE = r"(?:about|around|circa|ca|approx(?:imately)?|roughly|sometime|some time|probably|maybe|perhaps|early|late|mid|between|new|used|back)"
_BOUGHT = re.compile(
    rf"\b(?:{_VERB}{_ITS}|put{_ITS} in)[\s,(:-]{{1,3}}(?P<led>(?:(?:{_HEDGE}|in|on|at)\b[\s.-]{{1,3}}){{0,4}})(?:the )?'?$"
)
_INTO_IT = re.compile(rf"(?:{PART}|valve)(?: [a-z']{{1,9}}){{0,3}} $")
_PART_OF_IT = re.compile(
    rf"\b(?:{_SWAPPED}|put(?: in)?)(?: [a-z']{{1,10}}){{0,3}} (?:{PART}|flush valve) (?:in|on|of|inside){_ITS} $"
)
_NAMED_NEXT = re.compile(
    rf"[ -]?(?:(?:old|original|rubber|red) )?(?:{TOILET}|{HOME}|{PART}|flush valve|vintage|model|style|era|build|made)\b"
)
_PRESSED = re.compile(
    r"(?: is| was|,| \()? ?(?:stamp|cast|embossed|on the (?:tank|lid)|(?:in|under)(?:side)? the (?:tank|lid))"
)
_BARE = re.compile(r"'?(?:\d\d)?\d\d")


def is_of_buying(said: str, start: int, end: int) -> bool:
    """Whether a date of a lower-case text is when the toilet was bought or put in."""
    match = _BOUGHT.search(said, max(0, start - 90), start)
    if match is None or _PRESSED.match(said, end):
        return False
    if match["put"] and _INTO_IT.search(said, max(0, match.start() - 40), match.start()):
        return False  # 'a flapper that I put in the toilet 2015'
    # A year alone may as well belong to what follows: 'replaced the toilet 1988 flapper'.
    return bool(match["led"]) or not (_is_bare(said, start, end) and _NAMED_NEXT.match(said, end))


def is_of_a_part(said: str, start: int, end: int) -> bool:
    """Whether a full date is when a part in the toilet was renewed; a year alone may be its own."""
    if _is_bare(said, start, end):
        return False
    return _PART_OF_IT.search(said, max(0, start - 90), start) is not None


def _is_bare(said: str, start: int, end: int) -> bool:
    return _BARE.fullmatch(said, start, end) is not None
