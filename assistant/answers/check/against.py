"""General statements against the rows: a note may say what is usual, not what no row knows.

Only what is said flatly of one style of seal is held against the tables: its openings, what
holds it, and since when it has been made. A sentence that denies, compares or speaks of several
styles is left to its author.
"""

from __future__ import annotations

import re

from assistant.answers.check.items import Item, Length
from assistant.answers.check.line import Line
from assistant.answers.check.lookup import cited
from assistant.answers.check.results import CONTRADICTED, Finding
from assistant.records.tables import Tables

YEARS = 10  # years by which a note's date may differ from the row's: both are rough
_DENIES = re.compile(
    r" (?:no|not|never|none|neither|nor|without|than|unlike|instead|rather|but|hardly|rarely"
    r"|seldom|cannot|if|where|when|while|whereas|wrong|too|may|might|perhaps|as|once)(?![^ ])"
)
_SIZES = r"(?P<{}> <L\d+>(?: (?:,|or|and|to) ?(?:and|or)? ?<L\d+>)*)"
_OPENING = re.compile(
    _SIZES.format("sizes") + r" (?:openings?|holes?)\b"
    r"| (?:openings?|holes?) of" + _SIZES.format("after")
)
_SINCE = re.compile(
    r" (?:(?:made|common|sold|fitted|usual|around|used)(?: \w+)? since|(?:first )?(?:made|sold) in"
    r"|came in after|dates? from)(?: about| around| roughly)*(?: the)? <(?:IY|Y|IR|R)(\d+)>"
)
_HOLDS = {
    "pegs": re.compile(
        r" (?:hooks?|hangs?|sits?|holds?|slips?) (?:over|on|onto)"
        r" (?:the|its|its two|<I\d+>|a|a pair of|both)? ?pegs?\b"
    ),
    "wire": re.compile(
        r" (?:hangs?|sits?|rides?|slides?|screwed) (?:on|onto) (?:a|the|its) (?:\w+ )?wire\b"
    ),
    "ring": re.compile(
        r" ring (?:that )?(?:slides|slips|sits|goes|pushed) (?:down )?(?:over|round|around)"
    ),
    "strap": re.compile(r" (?:held|holds|hangs?) (?:on )?(?:by|with) (?:a|its) (?:\w+ )?strap\b"),
    "thread": re.compile(r" (?:screws?|screwed|threads?) into (?:the|its) (?:neck|outlet|valve)\b"),
}


def against(line: Line, tables: Tables) -> Finding | None:
    """The finding that a row contradicts a general statement, if one does."""
    named = [item for item in line.items if "T" in item.values]
    if len(named) != 1 or _DENIES.search(line.text):
        return None
    styles = tuple(named[0].values["T"])
    return (
        _openings(line, styles, tables)
        or _holding(line, styles, tables)
        or _since(line, styles, tables)
    )


def _openings(line: Line, styles: tuple[str, ...], tables: Tables) -> Finding | None:
    said = _OPENING.search(line.text)
    if said is None:
        return None
    known = {size for style in styles for size in _sizes(style, tables)}
    for item in line.within(said["sizes"] or said["after"], "L"):
        length: Length = item.values["L"]
        if known and not any(length.equals_in(size) for size in known):
            return _contradicted(item, "style-opening", styles, tables)
    return None


def _sizes(style: str, tables: Tables) -> set[float]:
    """The openings of a style by its own row, its seals and the valves made for it."""
    row = tables.styles[style]
    seals = {s.opening_in for s in tables.seals_of_style.get(style, ()) if s.opening_in}
    valves = {v.opening_in for v in tables.valves.values() if v.style == style and v.opening_in}
    return {*row.usual_openings_in, *seals, *valves}


def _holding(line: Line, styles: tuple[str, ...], tables: Tables) -> Finding | None:
    known = {m for style in styles for m in _mounts(style, tables)}
    for mount, wording in _HOLDS.items():
        if known and mount not in known and (said := wording.search(line.text)):
            item = Item({}, line.plain(said.group()))
            return _contradicted(item, "style-mount", styles, tables)
    return None


def _mounts(style: str, tables: Tables) -> set[str]:
    seals = {m for s in tables.seals_of_style.get(style, ()) for m in s.mount}
    return seals | {m for v in tables.valves.values() if v.style == style for m in v.mount}


def _since(line: Line, styles: tuple[str, ...], tables: Tables) -> Finding | None:
    said = _SINCE.search(line.text)
    begins = [row.usual_from for s in styles if (row := tables.styles[s]).usual_from is not None]
    if said is None or len(styles) != 1 or not begins:
        return None
    item = line.items[int(said[1])]
    year = item.values.get("Y")
    if not isinstance(year, int) or abs(year - begins[0]) <= YEARS:
        return None
    return _contradicted(item, "style-years", styles, tables)


def _contradicted(item: Item, rule: str, styles: tuple[str, ...], tables: Tables) -> Finding:
    return Finding(item.text, rule, CONTRADICTED, cited(tables.styles[styles[0]]))
