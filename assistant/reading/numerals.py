"""Numbers as people write them: digits, decimals, fractions of any form, and in words.

The patterns are for lower-case text in plain signs (`Text.said`). None of them repeats without
a bound, so that reading stays linear in the length of the message.
"""

from __future__ import annotations

import re

SIGNS = {
    "½": 1 / 2, "¼": 1 / 4, "¾": 3 / 4, "⅛": 1 / 8, "⅜": 3 / 8, "⅝": 5 / 8, "⅞": 7 / 8,
    "⅓": 1 / 3, "⅔": 2 / 3,
}  # fmt: skip
_UNITS = [
    "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven",
    "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen",
]  # fmt: skip
_TENS = ["twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"]
WORDS = {word: float(n) for n, word in enumerate(_UNITS, 1)}
TENS = {word: float(n) for n, word in zip(range(20, 100, 10), _TENS, strict=True)}
_PARTS = {"half": 2, "quarter": 4, "eighth": 8, "sixteenth": 16}

_SIGN = f"[{''.join(SIGNS)}]"
# Only fractions that a tape or a rule shows, and only proper ones: '2/3' is two sizes, not a part.
_SLASHED = (
    r"(?:1 ?/ ?2|[1-3] ?/ ?4|[1-7] ?/ ?8|(?:1[0-5]|[1-9]) ?/ ?16|(?:[12]\d|3[01]|[1-9]) ?/ ?32"
    r"|(?:[1-5]\d|6[0-3]|[1-9]) ?/ ?64)(?![\d/]|\.\d)"
)
_COUNTED = (
    r"(?:three|five|seven|nine|eleven|thirteen|fifteen|1[135]|[3579])[ -]"
    r"(?:quarter|eighth|sixteenth)s?"
)
_SPOKEN = rf"(?:{_COUNTED}|(?:(?:an?|one|1)[ -])?(?:half|quarter|eighth|sixteenth))\b"
FRACTION = rf"(?:{_SLASHED}|{_SIGN}|{_SPOKEN})"
_IN_WORDS = (
    rf"(?:(?:{'|'.join(_TENS)})(?:[ -](?:{'|'.join(_UNITS[:9])}))?"
    rf"|(?:{'|'.join(reversed(_UNITS))}))\b"
)
_JOIN = r"(?: ?(?:and|&|n|plus) ?(?:an? )?|[ -](?:and|n)[ -])"
_WHOLE = rf"(?:\d{{1,3}}|{_IN_WORDS})"
_MIXED = (
    rf"(?:\d{{1,2}}(?: {{0,2}}- {{0,2}}|{_JOIN}|\.| {{1,2}})(?:{_SLASHED}|{_SIGN})"
    rf"|\d{{1,2}}{_SIGN}"
    r"|[2-4](?:1/2|[13]/4)(?![\d/])"  # the space forgotten: no tape shows 21/2
    rf"|{_WHOLE}{_JOIN}{FRACTION}|{_IN_WORDS}[ -](?:{_SLASHED}|{_SPOKEN}|{_SIGN}))"
)
_POINT = r"(?:\d{0,3}\.\d{1,3}|\d{1,3},\d{1,2})(?!\d)"
_POINT_WORDS = rf"(?:{'|'.join(_UNITS[:9])}) point (?:{'|'.join(_UNITS[:9])})(?: five)?\b"
NUMBER = rf"(?>{_MIXED}|{_POINT_WORDS}|{_POINT}|{_SLASHED}|{_SIGN}|\d{{1,4}}|{_IN_WORDS})"

# A number may not begin inside another number, a code, a price, a phone number or a fraction.
FREE = r"(?<![\w$€£#+/])(?<!\d[.,:'-])(?<![$€£#] )"

_FRACTION_AT_END = re.compile(
    rf"(?:^|(?<=[^\d/])|(?<=\d)(?={_SIGN})|(?<=^[2-4])(?=1/2$|[13]/4$)){FRACTION}$"
)
_PLAIN = re.compile(r"\d*[.,]?\d+")


def value(words: str) -> float:
    """The value of a number that `NUMBER` (or `FRACTION`) matched. ValueError on anything else."""
    words = words.strip()
    if _PLAIN.fullmatch(words):
        return float(words.replace(",", "."))
    if " point " in words:
        whole, decimals = words.split(" point ")
        return float(f"{WORDS[whole]:.0f}." + "".join(f"{WORDS[d]:.0f}" for d in decimals.split()))
    part = _FRACTION_AT_END.search(words)
    if part is None:
        return _spelled(words)
    whole = re.sub(r"(?:[ -]|^)?(?:and|&|n|plus)(?:[ -]an?)?[ -]*$", "", words[: part.start()])
    whole = whole.strip(" -.&")
    return (value(whole) if whole else 0.0) + _fraction(part.group())


def _fraction(words: str) -> float:
    if words in SIGNS:
        return SIGNS[words]
    if "/" in words:
        upper, lower = words.split("/")
        return int(upper) / int(lower)
    *count, name = re.split("[ -]", words)
    how_many = count[0] if count else "one"
    number = 1.0 if how_many in ("a", "an") else value(how_many)
    return number / _PARTS[name.removesuffix("s")]


def _spelled(words: str) -> float:
    known = {**WORDS, **TENS}
    pieces = re.split("[ -]", words)
    if not all(piece in known for piece in pieces):
        raise ValueError(f"no number: {words!r}")
    return sum(known[piece] for piece in pieces)


def grain(number: float) -> str:
    """How finely it was told: whole, quarter (halves too), or fine.

    Told from the value, so that every way of writing a number gets the same tolerance.
    """
    if abs(number - round(number)) < 1e-6:
        return "whole"
    return "quarter" if abs(number * 4 - round(number * 4)) < 1e-6 else "fine"
