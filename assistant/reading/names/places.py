"""Where a name stands: what goes before and after it, and what that says."""

from __future__ import annotations

import re

from assistant.reading.names.cues import SEAL
from assistant.reading.names.letter import Letter
from assistant.reading.names.spans import Hit

FIXTURE = r"(?:toilets?|commodes?|loos?|tanks?|cisterns?|wcs?|lavator(?:y|ies)|bowls?|johns?)"
_FIXTURE_AFTER = re.compile(rf"[^\w.;!?]*(?:[\w-]+ ){{0,1}}{FIXTURE}\b")
_FIXTURE_NEXT = re.compile(rf"[^\w.,;!?]*{FIXTURE}\b")
_FIXTURE_BEFORE = re.compile(
    rf"\b{FIXTURE}\s*(?:(?:is|was|it's|,|-|:|by|from|called|named)\s*)*(?:an?|the)?\s*[\"']?$"
)
_MODEL_CUE = re.compile(
    r"\bmodel(?:\s+(?:name|no\.?|number))?[\s\"'(:=,#-]*"
    r"(?:(?:is|was|called|named|says|reads|the|an?|it's|would be)[\s\"':=-]+)*$"
    r"|\b(?:called|named)\s+(?:the\s+|an?\s+)?[\"']?$"
)
_MODEL_AFTER = re.compile(r"[\s\"')]*(?:is the )?model\b")
_MAKER_CUE = re.compile(
    r"\b(?:made|manufactured|built|produced)\s+by\s+(?:the\s+)?[\"']?$"
    r"|\b(?:brand|make|maker|manufacturer)(?:\s+name)?[\s\"'(:=,-]*"
    r"(?:(?:is|was|says|reads|called|an?|the|it's)[\s\"':=-]+)*$"
    rf"|\b{FIXTURE}\s+(?:by|from)\s+[\"']?$"
)
_MAKER_AFTER = re.compile(r"[\s\"')]*(?:brand|make)\b")
_ARTICLE = re.compile(r"\b(?:an?|my|our|the|old|this|that|is|it's|have|has)\s+[\"']?$")
_PAUSE = re.compile(r"[\s\"')]*(?:$|[.,;!?\n])")
_BETWEEN = re.compile(
    r"(?:'s|,|:|-|\(|\"|'|\s|\b(?:the|model|toilet|called|named|range|series|brand)\b)*"
)
_BY = re.compile(
    r"[\s,(\"'-]*(?:toilet\s+)?(?:(?:made|built|manufactured)\s+)?(?:by|from)\s+(?:the\s+)?"
)
_ASIDE = re.compile(r"[\s\"']*[,(/-]?[\s\"']*")


_NO_NAME_AFTER = re.compile(
    r"\s+(?:plumb(?:ing|ers?)|hardware|street|st\b|road|rd\b|avenue|ave\b|court|ct\b|lane|ln\b"
    r"|drive"
    r"|dr\b|blvd|boulevard|hotel|inn\b|school|apartments?|county|city|heights|farm|village|park)\b"
)
_NO_NAME_BEFORE = re.compile(r"\b(?:mr|mrs|ms|miss|dr|dear)\.?\s+$")
_DOES_AFTER = re.compile(
    r"\s+(?:leaks|runs|drips|hisses|flushes|keeps|won'?t|doesn'?t|needs|stopped|started"
    r"|is (?:leaking|running|dripping|hissing|flushing|not))\b"
)
_ANSWERING = frozenset(
    ("a", "an", "the", "it", "its", "is", "s", "yes", "from", "by", "thanks", "model", "no")
)  # fmt: skip
_OTHER_WARE = (
    r"(?:seats?|seat lid|levers?|handles?|fill valves?|faucets?|taps?|sinks?|basins?|tubs?"
    r"|bathtubs?|bidets?"
    r"|showers?)"
)
_WARE_BEFORE = re.compile(
    rf"\b{_OTHER_WARE}\s+(?:itself\s+)?(?:says|is|are|reads|has)\b[^.,;?!]{{0,20}}$"
)
_WARE_AFTER = re.compile(
    rf"\s+(?:(?:toilet|trip|flush|bathroom)\s+)?{_OTHER_WARE}\b|[^.,;?!]{{0,15}}\bon the seat\b"
)
_SEAL_NEXT = re.compile(
    r"\s+(?:(?:brand|red|black|blue|yellow|white|universal|rubber|tank|replacement|toilet|foam"
    r"|hard|\d inch)\s+)?"
    rf"(?:{SEAL}|universal)\b"
)
_TIME_BEFORE = re.compile(
    r"\b(?:on|last|next|this|every|each|since|until|till|by|before|after|past|in)\s+(?:an?\s+"
    r"|the\s+)?$"
)


def before(letter: Letter, hit: Hit) -> str:
    start, end = place(letter, hit)
    return letter.before(start, end)


def after(letter: Letter, hit: Hit) -> str:
    start, end = place(letter, hit)
    return letter.after(start, end)


def place(letter: Letter, hit: Hit) -> tuple[int, int]:
    """Start and end of a hit in the text."""
    return letter.words[hit.first].start, letter.words[hit.last].end


def spoken_of(letter: Letter, hit: Hit) -> bool:
    """'My <name> leaks', with a capital."""
    return bool(
        capitals(letter, hit)
        and _ARTICLE.search(before(letter, hit))
        and _DOES_AFTER.match(after(letter, hit))
    )


def whole(letter: Letter, hit: Hit) -> bool:
    """Whether the letter holds nothing but the name, as the answer to a question does."""
    others = len(letter.words) - (hit.last - hit.first + 1)
    return others <= 3 and all(
        w.key in _ANSWERING for w in (*letter.words[: hit.first], *letter.words[hit.last + 1 :])
    )


def of_other_ware(letter: Letter, hit: Hit) -> bool:
    """'The seat says <name>', '<name> handle': often of another make than the toilet."""
    return bool(_WARE_BEFORE.search(before(letter, hit)) or _WARE_AFTER.match(after(letter, hit)))


def of_a_seal(letter: Letter, hit: Hit) -> bool:
    """'A <name> flapper': the seal's make, which need not be the toilet's."""
    return bool(_SEAL_NEXT.match(after(letter, hit)))


def someone_else(letter: Letter, hit: Hit) -> bool:
    """'<name> Street', '<name> Plumbing', 'Mrs <name>': not the maker or model."""
    return bool(
        _NO_NAME_AFTER.match(after(letter, hit)) or _NO_NAME_BEFORE.search(before(letter, hit))
    )


def said_as_time(letter: Letter, hit: Hit) -> bool:
    """'Last <name>', 'on a <name>': a day or a month, say."""
    return bool(_TIME_BEFORE.search(before(letter, hit)))


def same_sentence(letter: Letter, hit: Hit, other: Hit) -> bool:
    """Whether two names stand in one sentence."""
    low, high = letter.sentence(*place(letter, hit))
    start, end = place(letter, other)
    return low <= start and end <= high


def follows(letter: Letter, maker: Hit, model: Hit) -> bool:
    """'<maker> <model>', with nothing but 'the', 'model' or the like between."""
    start, end = place(letter, maker)[1], place(letter, model)[0]
    return start <= end <= start + 30 and bool(_BETWEEN.fullmatch(letter.said[start:end]))


def belongs_by(letter: Letter, model: Hit, maker: Hit) -> bool:
    """'<model> by <maker>'."""
    start, end = place(letter, model)[1], place(letter, maker)[0]
    return start <= end <= start + 40 and bool(_BY.fullmatch(letter.said[start:end]))


def precedes(letter: Letter, model: Hit, maker: Hit) -> bool:
    """'<model> <maker>' or '<model> (<maker>)'."""
    start, end = place(letter, model)[1], place(letter, maker)[0]
    return start <= end <= start + 6 and bool(_ASIDE.fullmatch(letter.said[start:end]))


def capitals(letter: Letter, hit: Hit) -> bool:
    """Whether every word of the name has a capital that means something."""
    words = letter.words[hit.first : hit.last + 1]
    return all(letter.capital(w) for w in words if not w.possessive)


def said_as_model(letter: Letter, hit: Hit) -> bool:
    return bool(_MODEL_CUE.search(before(letter, hit)) or _MODEL_AFTER.match(after(letter, hit)))


def said_as_maker(letter: Letter, hit: Hit) -> bool:
    return bool(_MAKER_CUE.search(before(letter, hit)) or _MAKER_AFTER.match(after(letter, hit)))


def at_fixture(letter: Letter, hit: Hit) -> bool:
    """'<name> toilet', or 'the toilet is a <name>'."""
    return bool(
        _FIXTURE_AFTER.match(after(letter, hit)) or _FIXTURE_BEFORE.search(before(letter, hit))
    )


def right_before_fixture(letter: Letter, hit: Hit) -> bool:
    """'<name> toilet' with nothing between."""
    return bool(_FIXTURE_NEXT.match(after(letter, hit)))


def stands_alone(letter: Letter, hit: Hit) -> bool:
    """'It is a <name>.'"""
    return bool(_ARTICLE.search(before(letter, hit)) and _PAUSE.match(after(letter, hit)))
