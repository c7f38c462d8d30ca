"""Every number with a unit of length, and bare numbers beside a word that makes them inches."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from assistant.reading.numerals import FRACTION, FREE, NUMBER, value
from assistant.reading.text import Text

# 'in' is a unit when it is glued to the number, ends the phrase, or leads to a thing of inches;
# '2 in the tank' counts toilets.
_AFTER_IN = (
    "flapper|flap|flush|valve|opening|hole|drain|seal|wide|across|diameter|dia|disc|disk|rubber"
    "|seat|ball|outlet|pipe|tube|overflow|or|x|by|apart|between|canister|size|rim|gasket|is|not"
    "|universal|red|black|plastic|i think|tank|round"
)
_INCH = (
    r"(?:inch(?:e?s)?\b|inces?\b|inche\b|ins\b|\"|''|in\.(?!\w)|(?<=[\d½¼¾⅛⅜⅝⅞⅓⅔])in\b"
    rf"|in(?=[.,;:!?)(]|\s{{0,9}}$|[ \t]?\n| (?:{_AFTER_IN})\b))"
)
_MM = r"(?:mms?|mil{1,2}imet(?:er|re)s?)\b\.?"
_CM = r"(?:cms?|centimet(?:er|re)s?)\b\.?"
_UNIT = rf"(?:{_INCH}|{_MM}|{_CM})"
_GAP = r"(?: ?-?ish)?[ -]?\n?"
_MAYBE = r"(?:maybe |perhaps |possibly |is it |it's |even |an? |the )?"
_TAIL = rf"(?:,? (?:and|&|n) (?P<tail>(?:an? )?{FRACTION}))?"

_PAIR = re.compile(
    rf"(?P<both>between )?{FREE}(?P<a>{NUMBER})(?P<ua>{_GAP}{_UNIT})?"
    rf"(?:(?P<to> ?- ?| to | thru | through | up to )|(?P<and> and )"
    rf"|(?: ?/ ?|[,?]? or {_MAYBE}|[,?] ?{_MAYBE}(?=\d)))"
    rf"(?P<b>{NUMBER}){_GAP}(?P<u>{_UNIT})"
)
_ONE = re.compile(rf"{FREE}(?P<a>{NUMBER}|\ban?(?= inch)){_GAP}(?P<u>{_UNIT}){_TAIL}")

_KIND = (
    r"(?:(?:universal|rubber|red|black|blue|replacement|adjustable|toilet|round|plastic|tank) )"
    r"{0,3}"
)
_SEAL_NOUN = r"(?:flapp?er(?: valve)?|flush ?valve|opening|drain|outlet)"
_BARE_BEFORE = re.compile(
    rf"(?:\b(?P<lead>an?|size|the|my|this|your) (?:size )?)?{FREE}(?P<a>{NUMBER})"
    rf"(?: ?(?:or|/) ?(?:an? )?(?P<b>{NUMBER}))?[ -]"
    rf"(?={_KIND}{_SEAL_NOUN}\b(?! (?:holes|valves)))"
)
_THING = (
    r"(?:opening|hole|drain|outlet|seat|outside|inside|flush ?valve|valve|sizes?|rim|dis[ck]|rubber"
    r"|overflow|tube"
    r"|standpipe|width|diameter|dia|ears?|pegs?|hinges?|apart|across|flapp?er|measures|measured)"
)
_SAYS = (
    r"(?:(?: ?[:=]| ?\(in(?:ches)?\):?| od| is| was| are| measure[sd]?| of| at"
    r"| comes to| about| around| roughly| approx"
    r"| maybe| probably| exactly| just| a bit over| almost| across| size| diameter| wide"
    r"| to ears?| to pegs?| like| i think){1,4} )"
)
_GOES_ON = "across|wide|or|and|but|not|i|ish|maybe|diameter|apart"
_BARE_AFTER = re.compile(
    rf"\b{_THING}(?:{_SAYS}| ){FREE}(?P<a>{NUMBER})"
    rf"(?: ?(?:or(?: maybe)?|/) ?(?P<b>{NUMBER}))?"
    rf"(?=\s{{0,9}}$|\s{{0,3}}[.,;!?)(](?!\d)|[ \t]?\n|-?ish\b| (?:{_GOES_ON})\b(?! half))"
)
# A size that only a tape or a rule shows is in inches though nobody says so.
_BARE_MIXED = re.compile(
    rf"{FREE}(?P<a>(?:[1-5]|one|two|three|four|five)(?: and (?:an? )?| )(?:{FRACTION}))"
    r"(?! ?(?:hours?|years?|months?|minutes?|days?|weeks?|gal\w*|lit\w*|feet|ft|turns?|pints?|mm|cm"
    r"|in\b|inch\w*|dollars?|times|of\b|[\"']))"
)
# Where somebody has measured in millimetres, his other two-figure numbers are millimetres too.
_METRIC = re.compile(
    rf"\d ?{_MM}|\bmillimet(?:er|re)s\b|\b(?:in|all) mm\b|\bmetric\b"
    r"|\b(?:[4-9]\d|1[0-2]\d)\.\d\b(?! ?(?:gal|lit|l\b|%))[^;!?]{0,80}"
    r"\b(?:[4-9]\d|1[0-2]\d)\.\d\b"
)
_BARE_MM = re.compile(
    rf"\b(?:reads?|is|was|are|makes?|edge|other|out|outside|outer|opening|hole|across|apart)"
    rf"[ ,:=-]{{1,3}}{FREE}(?P<a>[2-9]\d(?:\.\d)?|1[0-2]\d)"
    r"(?=\s{0,3}(?:[,;!?)\n]|\.(?!\d)|$)| (?:and|on|across|over|outside|apart|with|between)\b)"
)
_TENTHS = r"(?:[2-9]\d(?:\.\d)?|1[0-2]\d(?:\.\d)?)"
# 'Ear to ear, outside faces: 81.2', '104.5 over the ears'
_LABELLED_MM = re.compile(
    r"\b(?:ears?|pegs?|edges?|faces?|span|bore|seat|hole|opening|lips?|rule|hinge|inside|outside)"
    rf"(?: \([^)]{{1,30}}\))?[ ,:=]{{1,3}}{FREE}(?P<a>{_TENTHS})(?![\d/]|\.\d)"
    rf"|{FREE}(?P<b>{_TENTHS})(?= (?:over|across|between|outside|out to|ear) )"
)
# 'Hinge 82': between the ears there is no such number of inches.
_EARS_MM = re.compile(
    r"\b(?:ears?|pegs?|hinges?)(?: (?:width|span|distance|spacing|spread))?"
    rf"(?: ?[:=]| is| are| of| at)? {FREE}(?P<a>(?:[6-9]\d|1[0-2]\d)(?:\.\d)?)"
    r"(?=\s{0,3}(?:[,;!?)\n]|\.(?!\d)|$)| (?:apart|across|outside|and|over)\b)"
)
_NOT_OPENINGS = ("1.6", "3.5")  # bare, these are a flush in gallons
_CODE = re.compile(
    r"(?:\b(?:model|mod|part|number|num|no|item|order|serial|sku|code|type|pn|p/n)\b[.:# ]{0,3}"
    r"(?:is )?|#\s?|\d ?(?:x|by) )$"
)


@dataclass(frozen=True)
class Mention:
    """A length as written: low..high in `unit` (mm, cm, in).

    `either` holds the numbers where they are alternatives ('2 or 3'); `bare` is true where
    no unit was written. `start` and `end` enclose the number and its unit.
    """

    start: int
    end: int
    low: float
    high: float
    unit: str
    either: tuple[float, ...] = ()
    bare: bool = False


def mentions(text: Text) -> list[Mention]:
    """Every length told in the text, in order, none overlapping."""
    said = text.said
    found = [*_pairs(said), *_singles(said), *_bare(said)]
    found.sort(key=lambda mention: (mention.start, mention.bare, -mention.end))
    kept: list[Mention] = []
    for mention in found:
        if kept and mention.start < kept[-1].end:
            continue
        if not _is_code(said, text.raw, mention.start):
            kept.append(mention)
    return kept


def _pairs(said: str) -> Iterator[Mention]:
    for match in _PAIR.finditer(said):
        unit = _unit(match["u"])
        if match["ua"] and _unit(match["ua"]) != unit:
            continue  # '3 in / 76 mm' is one length told twice
        if match["and"] and not match["both"]:
            continue
        low, high = sorted((value(match["a"]), value(match["b"])))
        if not match["to"] and high > 3 * low:
            continue  # '1995, 3 in.': no one wavers between these
        either = () if match["to"] or match["and"] else (low, high)
        yield Mention(match.start("a"), match.end(), low, high, unit, either)


def _singles(said: str) -> Iterator[Mention]:
    for match in _ONE.finditer(said):
        if match["u"] == '"' and _closes_quote(said, match.start()):
            continue
        number = 1.0 if match["a"] in ("a", "an") else value(match["a"])
        if match["tail"]:
            number += value(re.sub(r"^an? (?=\W|\d)", "", match["tail"]))
        yield Mention(match.start(), match.end(), number, number, _unit(match["u"]))


def _bare(said: str) -> Iterator[Mention]:
    for match in _BARE_BEFORE.finditer(said):
        if match["lead"] or value(match["a"]) % 1:  # 'need 2 flapper' may count them
            yield from _bare_one(match)
    for match in _BARE_AFTER.finditer(said):
        yield from _bare_one(match)
    for match in _BARE_MM.finditer(said) if _METRIC.search(said) else ():
        number = value(match["a"])
        yield Mention(match.start("a"), match.end("a"), number, number, "mm", (), True)
    for match in _EARS_MM.finditer(said):
        number = value(match["a"])
        yield Mention(
            match.start("a"), match.end("a"), number, number, "mm", (), "." not in match["a"]
        )
    for match in _LABELLED_MM.finditer(said) if _METRIC.search(said) else ():
        group = "a" if match["a"] else "b"
        number = value(match[group])
        rough = "." not in match[group]  # tenths are read off a caliper
        yield Mention(match.start(group), match.end(group), number, number, "mm", (), rough)
    for match in _BARE_MIXED.finditer(said):
        number = value(match["a"])
        yield Mention(match.start("a"), match.end("a"), number, number, "in", (), True)


def _bare_one(match: re.Match[str]) -> Iterator[Mention]:
    numbers = sorted(value(match[group]) for group in "ab" if match[group])
    if match.group().startswith(("ear", "peg", "hinge")) and numbers == [2]:
        return  # 'Pegs: two, pointing down' counts them
    least = 0.75 if match.group().startswith(("overflow", "tube", "standpipe")) else 1.5
    if all(least <= n <= 5 for n in numbers) and match["a"] not in _NOT_OPENINGS:
        end = match.end("b") if match["b"] else match.end("a")
        either = tuple(numbers) if len(numbers) > 1 else ()
        yield Mention(match.start("a"), end, numbers[0], numbers[-1], "in", either, True)


def _unit(words: str) -> str:
    if re.search(_MM, words):
        return "mm"
    return "cm" if re.search(_CM, words) else "in"


def _closes_quote(said: str, start: int) -> bool:
    """Whether the sign after the number closes a quotation opened a little before it."""
    before = said[max(0, start - 40) : start]
    opened = before.rfind('"')
    if opened < 0 or before[opened + 1 : opened + 2] in ("", " "):
        return opened >= 0 and opened == len(before) - 1
    return opened == 0 or before[opened - 1] in " (\n"


def _is_code(said: str, raw: str, start: int) -> bool:
    """Whether the number belongs to a code: glued to one by a hyphen, or after 'part no.'."""
    if start >= 2 and said[start - 1] == "-" and said[start - 2].isalnum():
        return not (raw[start - 1] in "—–" and said[start - 2].isalpha())
    return _CODE.search(said, max(0, start - 16), start) is not None
