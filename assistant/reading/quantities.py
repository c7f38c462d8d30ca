"""How much a flush takes: from a volume said of the flush, never from any other number."""

# ruff: noqa: E501  (a pattern is easier to read on one line)

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace

from assistant.reading.facts import Fact, Interval
from assistant.reading.numerals import FREE, NUMBER, grain, value
from assistant.reading.text import Text
from assistant.reading.tolerances import volume
from assistant.reading.wording import Said, how_said

# Litres, exact: NIST SP 811.
_LITRES = {"imperial": 4.54609, "gallon": 3.785411784, "litre": 1.0}
_IMPERIAL = r"(?:(?:imperial|imp\.?|uk|british) (?:gal(?:lon)?s?|gpf)\b|gal(?:lon)?s? ?\(?(?:imperial|imp|uk)\)?)"
_GALLON = r"(?:(?:us |u\.s\. )?(?:gpf|g\.p\.f\.?|gallons?|galons?|gals?)\b\.?(?: ?(?:per|/|a|each) ?flush\b)?)"
_LITRE = r"(?:lpf|l\.p\.f\.?|lit(?:er|re)s?|ltrs?|l)\b\.?(?: ?(?:per|/|a|each) ?flush\b)?"
_UNIT = rf"(?:{_IMPERIAL}|{_GALLON}|{_LITRE})"
_DUAL = re.compile(
    rf"{FREE}(?<!\d )(?P<a>{NUMBER})(?:[ -]?(?P<ua>{_UNIT}))?(?P<sep> ?[/|] ?| ?- ?| ?& ?| and | or | to )"
    rf"(?:(?:(?P<loose>about|around|roughly)|maybe) )?(?P<b>{NUMBER})(?:[ -]?(?P<u>{_UNIT}))?(?![\w/]|\.\d)"
)
_BETWEEN = re.compile(r"\bbetween (?:(?:about|around|roughly|maybe) )?$")
_ONE = re.compile(rf"{FREE}(?P<a>{NUMBER})[ -]?(?P<u>{_UNIT})(?!\w)")
_LED = re.compile(rf"\b(?P<u>gpf|lpf)[ :=]{{1,3}}(?P<a>{NUMBER})(?![\w/]|[.,]\d)")
# Numbers that in this trade are nothing but a flush: 1.28 always, 1.6 of a toilet or a flush.
_BARE = re.compile(
    rf"{FREE}(?P<a>1\.28(?![\w%/\"']|[.,]\d)"
    r"|(?:1\.6|3\.5|0?\.8)(?= (?:flush(?! valve)|toilet|low[ -]?flow|low[ -]?flush|water saver"
    r"|ones?\b|kind\b|models?\b))"
    r"|(?<=flushes )(?:1\.6|3\.5)(?!\d|\.\d| ?(?:in\b|inch|cm|mm|\")))"
)
_DUAL_BARE = re.compile(r"0?\.\d{1,2}|1\.\d{1,2}")
_FLUSH_WORDS = re.compile(r"gpf|g\.p\.f|lpf|l\.p\.f|flush")
_NOT_FLUSH_AFTER = re.compile(
    r"[ -]?(?:(?:water|plastic|toilet) )?(?:tanks?|cisterns?|buckets?|pails?|jugs?|bottles?|cans?|capacity"
    r"|of (?!water (?:per|each|a|every) flush)|a day|per day|daily|an? (?:month|hour|minute)|per (?:month|hour|minute)"
    r"|every (?:day|hour|minute)|heater|in the (?:tank|cistern)|bill|(?:is|are|gets?) wasted)\b"
)
_NOT_FLUSH_BEFORE = re.compile(
    r"(?:holds?|holding|capacity(?: of| is)?|(?:tank|cistern|bucket|jug)(?: \w{1,9}){0,2}|wast(?:es?|ing|ed)|los(?:es?|ing|t)"
    r"|leak(?:s|ing|ed)?|pour(?:ed|ing)?|extra|another)(?: (?:about|around|roughly|almost|over|up to|of|between|from|anywhere|somewhere)){0,3}"
    rf"(?: (?!(?:19|20)\d\d){NUMBER}(?: ?-| ?&| to| or| and))? $"
)
_REDUCED_BEFORE = re.compile(
    r"(?:half|short|reduced|small|partial|liquid|light|eco|number one)[ -]?(?:flush)?[ :=(]{0,2}(?:is |at |of |uses )?$"
)
_REDUCED_AFTER = re.compile(
    r"[ -]?(?:on |for |for the |on the |\()?(?:the )?(?:half|short|reduced|small|partial|liquid|light|eco)\b"
)
_PLAUSIBLE = Interval(0.4, 8)  # US gallons; common practice, no source
_DUAL_FULL_AT_MOST = 2.5  # US gallons: the fullest of dual flushes took 9 litres


@dataclass(frozen=True)
class _Volume:
    start: int
    end: int
    low: float
    high: float
    unit: str
    last_place: float
    name: str = "flush"
    loose: bool = False  # the second number of a range was said with 'about'


def read_volumes(text: Text) -> list[Fact]:
    """The flush volumes of a message, in US gallons: `flush`, and `flush_reduced` of a dual one."""
    said = text.said
    facts: list[Fact] = []
    for group in sorted([*_duals(said), *_singles(said)], key=lambda g: (g[0].start, -g[-1].end)):
        if not facts or facts[-1].end <= group[0].start:
            facts.extend(_fact(text, volume_said) for volume_said in group)
    return facts


def _fact(text: Text, found: _Volume) -> Fact:
    how = Said.ABOUT if found.loose else how_said(text.said, found.start, found.end)
    return Fact(
        name=found.name,
        value=volume(found.low, found.high, found.last_place, _LITRES[found.unit], how),
        words=text.raw[found.start : found.end],
        start=found.start,
        end=found.end,
        unit="gal",
    )


def _duals(said: str) -> Iterator[tuple[_Volume, ...]]:
    """Two numbers in one: a dual flush, or a range or an alternative of one flush."""
    for match in _DUAL.finditer(said):
        units = {_unit(words) for words in (match["ua"], match["u"]) if words}
        between = _BETWEEN.search(said, max(0, match.start() - 20), match.start())
        separator = "between" if between else match["sep"].strip()
        if not units and separator in "/|" and _are_bare_duals(match):
            units = {"gallon"}
        if len(units) != 1 or _is_other(said, match.start(), match.end()):
            continue
        unit = units.pop()
        first, second = (
            _Volume(
                match.start(n), end, value(match[n]), value(match[n]), unit, _last_place(match[n])
            )
            for n, end in (
                ("a", match.end("ua") if match["ua"] else match.end("a")),
                ("b", match.end()),
            )
        )
        if separator in ("/", "|", "&", "and") and _is_dual(said, match, first, second):
            reduced, full = sorted((first, second), key=lambda v: v.low)
            pair = (full, replace(reduced, name="flush_reduced"))
            yield tuple(sorted(pair, key=lambda v: v.start))
        elif separator not in ("&", "and") and _is_plausible(first) and _is_plausible(second):
            low, high = sorted((first.low, second.low))
            place = max(first.last_place, second.last_place)
            whole = _Volume(first.start, second.end, low, high, unit, place)
            yield (replace(whole, loose=match["loose"] is not None),)


def _singles(said: str) -> Iterator[tuple[_Volume, ...]]:
    for match in (*_ONE.finditer(said), *_LED.finditer(said), *_BARE.finditer(said)):
        if _is_other(said, match.start(), match.end()):
            continue
        unit = _unit(match["u"]) if "u" in match.re.groupindex else "gallon"
        number = value(match["a"])
        found = _Volume(match.start(), match.end(), number, number, unit, _last_place(match["a"]))
        if _REDUCED_BEFORE.search(said, max(0, found.start - 30), found.start) or (
            _REDUCED_AFTER.match(said, found.end)
        ):
            found = replace(found, name="flush_reduced")
        if _is_plausible(found):
            yield (found,)


def _is_other(said: str, start: int, end: int) -> bool:
    """Whether the volume is a tank's, a bucket's, or of water lost, and not said of the flush."""
    if _FLUSH_WORDS.search(said, start, end) or re.match(
        r"[ -]?(?:per|a|each|every) flush", said[end : end + 14]
    ):
        return False
    before = _NOT_FLUSH_BEFORE.search(said, max(0, start - 60), start)
    return bool(before or _NOT_FLUSH_AFTER.match(said, end))


def _is_dual(said: str, match: re.Match[str], first: _Volume, second: _Volume) -> bool:
    low, high = sorted((first.low, second.low))
    full = high * _LITRES[first.unit] / _LITRES["gallon"]
    if not (0.35 <= low / high <= 0.85 and full <= _DUAL_FULL_AT_MOST):
        return False
    if match["sep"].strip() in "/|":
        return True
    around = said[max(0, match.start() - 60) : match.end() + 40]
    told = re.search(r"\b(?:dual|two button|2 button|half|full|reduced)\b", around)
    return bool(told) or first.unit == "litre" or _are_bare_duals(match)


def _are_bare_duals(match: re.Match[str]) -> bool:
    return all(_DUAL_BARE.fullmatch(match[name]) for name in "ab")


def _unit(words: str) -> str:
    if re.search(_IMPERIAL, words):
        return "imperial"
    return "gallon" if re.search(_GALLON, words) else "litre"


def _last_place(words: str) -> float:
    """The worth of the last digit written: 1.28 -> 0.01; halves and quarters were chosen, 0.2."""
    if decimals := re.fullmatch(r"\d*[.,](\d+)", words):
        return float(10 ** -len(decimals[1]))
    if " point " in words:
        return 0.1
    return 1.0 if grain(value(words)) == "whole" else 0.2


def _is_plausible(found: _Volume) -> bool:
    gallons = _LITRES[found.unit] / _LITRES["gallon"]
    return found.low * gallons in _PLAUSIBLE and found.high * gallons in _PLAUSIBLE
