"""Names and numbers that a writer gives as maker, model or part, and that no table has.

Only strong cues count: 'made by ...', 'the model is ...', a capitalised name before 'toilet',
a number said to be one. Ordinary words are never taken: an old toilet is not of the make Old.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.reading.english import is_english
from assistant.reading.facts import Fact
from assistant.reading.names.book import NameBook
from assistant.reading.names.letter import Letter, Word
from assistant.reading.names.not_numbers import Taken
from assistant.reading.names.ordinary import ordinary, reads_as_english
from assistant.reading.names.places import FIXTURE
from assistant.reading.names.slip import mended
from assistant.reading.names.spans import Hit
from assistant.reading.names.unlisted_numbers import unlisted_fact, unlisted_number

_SAYS = r"(?:\s*(?:'s|\bis|\bwas|\bsays|\breads|\bcalled|\bnamed|[:=,-]))"
_THE = r"\s*(?:\b(?:an?|the|called|it's|its|by|from)\s+)?[\"']?$"
_CUES = (
    ("brand", re.compile(
        r"\b(?:made|manufactured|built|produced)\s+by(?:\s+(?:an?|the)\s+(?:company|firm|maker"
        r"|outfit)"
        r"\s+(?:called|named))?\s+[\"']?$"
        rf"|\b(?:brand|make|maker|manufacturer)(?:\s+name)?{_SAYS}{{1,2}}{_THE}"
        rf"|\b(?:company|firm|brand|maker)\s+(?:called|named)\s+[\"']?$|\b{FIXTURE}\s+by\s+[\"']?$"
    )),
    ("model", re.compile(
        rf"\bmodel(?:\s+name)?{_SAYS}{{1,2}}{_THE}"
        rf"|\b(?:{FIXTURE}|it|it's|one)\s+(?:is\s+)?called\s+(?:the\s+|an?\s+)?[\"']?$"
        r"|\bmodel\s+(?:name\s+)?[\"']?$"
    )),
    ("name", re.compile(
        r"\b(?:on|in)\s+(?:it|the\s+(?:tank|bowl|lid))\s+(?:is|are|stands?)(?:\s+only|\s+just)?\s+"
        r"[\"']?$|"
        rf"\b(?:{FIXTURE}|left|right|upstairs|downstairs|first|second|other)\s*:\s*$"
        rf"|\b(?:(?:{FIXTURE}|it|this|mine|ours)\s+(?:is|are)|it's)\s+an?\s+[\"']?$|\b(?:it"
        rf"|{FIXTURE}|lid)\s+(?:says"
        rf"|reads)\s+[\"']?$"
        rf"|\bname\s+(?:on|in|inside|under)\s+(?:the\s+|my\s+)?(?:it|{FIXTURE}|lid)"
        rf"\s+(?:is|says|reads)\s+[\"']?$"
    )),
)  # fmt: skip
_BEFORE_NAMED = re.compile(
    r"\b(?:an?|my|our|for|the|old|this|that|these|those|his|her|their|is|two|three|have|has|own)\s+[\"']?$"
)
_OWNED = re.compile(
    r"(?<!there )\b(?:have|has|had|got|own|owns|for|fits?|is|it's|in|of)\s+(?:an?|our|my)\s+"
    r"(?:old\s+|white\s+)?[\"']?$"
)
_FIXTURE_NEXT = re.compile(
    rf"[\"']?\s+(?:(?!(?:in|into|on|onto|to|at|of|from|down|the|my|our|and)\b)[a-z-]+\s+){{0,2}}?"
    rf"{FIXTURE}\b"
)
_LOGO_NEXT = re.compile(r"[\"']?\s+(?:logo|emblem|badge)\b")
_MODEL_NEXT = re.compile(r"[\"']?\s+model\b")
_BRAND_NEXT = re.compile(r"[\"']?\s+brand\b")
_PART_FOR = re.compile(
    r"\b(?:flapp?ers?|seals?|gaskets?|balls?|washers?|rings?|rubber|parts?)\s+(?:for|from|off|of"
    r"|in)"
    r"\s+(?:an?\s+|my\s+|our\s+|the\s+|this\s+)?[\"']?$"
)
_CALLED = re.compile(r"\bcalled\s+(?:an?\s+|the\s+)?[\"']?$")
_YEAR_NEXT = re.compile(
    r"[\"']?(?:,? [\"']?[a-z]{4,12}[\"']?)?,? (?:from |of |about )?(?:19|20)\d\d\b"
)
_LONG = 5  # letters: a shorter word in small letters may be anything
_MOST = 3  # words of an unlisted name


def read_unlisted(
    letter: Letter,
    book: NameBook,
    names: Sequence[Hit],
    makers: Sequence[Hit],
    facts: Sequence[Fact],
    taken: Taken,
) -> list[Fact]:
    """Facts of names and numbers that no table has; `facts` are those already read."""
    read = Taken([(f.start, f.end) for f in facts])
    numbered = {f.end for f in facts if f.name in ("model_no", "part_no")}
    told = {hit.last for hit in names} | {
        at for at, word in enumerate(letter.words) if word.end in numbered
    }
    named = {at for hit in names for at in range(hit.first, hit.last + 1)}
    follows = {hit.last + 1 for hit in makers}
    found: list[Fact] = []
    past = -1
    for at, word in enumerate(letter.words):
        if at <= past or at in named or word.possessive or read.meets(word.start, word.end):
            continue
        fact = unlisted_number(letter, book, at, taken, told)
        if fact is None and word.key not in book.seal_makers:
            fact = _name(letter, at, named, at in follows)
        if fact is not None and not read.meets(fact.start, fact.end):
            found.append(fact)
            while past + 1 < len(letter.words) and letter.words[past + 1].start < fact.end:
                past += 1
    return found


def _name(letter: Letter, at: int, named: set[int], after_maker: bool) -> Fact | None:
    word = letter.words[at]
    if ordinary(word.key) and not letter.capital(word):
        return None
    if not word.key[0].isalpha() or len(word.key) < 3:
        return None
    lead = letter.before(word.start, word.end)
    for of, cue in _CUES:
        shown = letter.capital(word) or lead.endswith('"') or lead.rstrip().endswith(":")
        if of == "name" and letter.mixed and not shown:
            continue
        if not shown and is_english(word.key):  # 'the cisterns by tea time'
            continue
        if cue.search(lead) and _nameable(letter, word):
            of = "brand" if of == "name" else of
            return unlisted_fact(letter, at, _last(letter, at, named), of)
    capital = letter.capital(word) and not ordinary(word.key)
    if after_maker and lead.endswith(("'", '"')) and letter.text.raw[word.start].isupper():
        return unlisted_fact(letter, at, _last(letter, at, named), "model")
    if after_maker and capital and _beside(letter, at):
        return unlisted_fact(letter, at, _last(letter, at, named), "model")
    last = _last(letter, at, named)
    rest = letter.said[letter.words[last].end : letter.words[last].end + 40]
    if after_maker and _beside(letter, at) and not reads_as_english(word.key):
        is_name = _FIXTURE_NEXT.match(rest) or _can_be_nothing_else(word.key)
        return unlisted_fact(letter, at, last, "model") if is_name else None
    if not capital:
        led = _OWNED.search(lead) or _PART_FOR.search(lead) or _CALLED.search(lead)
        followed = _FIXTURE_NEXT.match(rest) or (not lead.strip() and _YEAR_NEXT.match(rest))
        if (led or followed) and _can_be_nothing_else(word.key):
            return unlisted_fact(letter, at, _spelled_on(letter, at, named), "brand")
        return None
    if _MODEL_NEXT.match(rest):
        return unlisted_fact(letter, at, last, "model")
    if _BRAND_NEXT.match(rest) or _LOGO_NEXT.match(rest):
        return unlisted_fact(letter, at, last, "brand")
    if last + 1 in named and _BEFORE_NAMED.search(lead):  # '<unlisted> <listed model>'
        return unlisted_fact(letter, at, last, "brand") if letter.words[last].joins else None
    if (_OWNED.search(lead) or _PART_FOR.search(lead)) and _can_be_nothing_else(word.key):
        return unlisted_fact(letter, at, last, "brand")
    if last > at and _OWNED.search(lead) and not _english(letter, at, last):
        return unlisted_fact(letter, at, last, "brand")  # 'We have a <Name Name>'
    if _FIXTURE_NEXT.match(rest) and _BEFORE_NAMED.search(lead):
        return unlisted_fact(letter, at, last, "brand")
    return None


def _can_be_nothing_else(word: str) -> bool:
    """Whether a word is no English one, nor a slip of one: in small letters, a name is left."""
    return len(word) >= _LONG and not is_english(word) and mended(word) is None


def _spelled_on(letter: Letter, at: int, named: set[int]) -> int:
    """The word after a name in small letters belongs to it if it is not an ordinary one."""
    following = at + 1
    if not letter.words[at].joins or following in named or following >= len(letter.words):
        return at
    return at if ordinary(letter.words[following].key) else following


def _english(letter: Letter, at: int, last: int) -> bool:
    return any(reads_as_english(letter.words[n].key) for n in range(at, last + 1))


def _beside(letter: Letter, at: int) -> bool:
    return letter.said[letter.words[at - 1].end : letter.words[at].start] in (
        " ",
        "'s ",
        ' "',
        " '",
    )


def _nameable(letter: Letter, word: Word) -> bool:
    """Whether a word after 'made by' or 'the model is' can be a name."""
    if letter.capital(word):
        return not ordinary(word.key)
    return not reads_as_english(word.key)


def _last(letter: Letter, at: int, named: set[int]) -> int:
    """The last of the capitalised words that go on from a name."""
    last = at
    while (
        letter.words[last].joins
        and last + 1 not in named
        and last - at < _MOST - 1
        and letter.capital(letter.words[last + 1])
        and not ordinary(letter.words[last + 1].key)
    ):
        last += 1
    return last
