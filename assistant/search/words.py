"""Words as the lexical index compares them: lower case, without the little ones, stemmed."""

from __future__ import annotations

import re
from functools import lru_cache

import Stemmer

_WORD = re.compile(r"\d+\.\d+|[^\W_]+(?:['’][^\W_]+)*")
# Words that stand in every letter and say nothing of its subject.
LITTLE = frozenset(
    """
    a an and are as at be but by can could did do does doing for from get had has have he her him
    his how i if in into is it its just me my no not of on or our out please she so some such than
    that the their them then there these they this those to too up us was we were what when where
    which while who why will with would you your it's i'm i've that's what's don't doesn't isn't
    can't won't didn't hi hello thanks thank
    """.split()  # noqa: SIM905 - a list of a hundred quoted words would be harder to read
)


def stems(text: str) -> list[str]:
    """The stems of a text's words, in order.

    Porter's English stemmer of the Snowball project, by way of PyStemmer.
    """
    plain = text.lower().replace("’", "'")
    return [_stem(word) for word in _WORD.findall(plain) if word not in LITTLE]


@lru_cache(maxsize=50_000)
def _stem(word: str) -> str:
    return str(Stemmer.Stemmer("english").stemWord(word.removesuffix("'s")))
