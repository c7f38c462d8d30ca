"""Greeting and sign-off: names stand there that may equal the name of a model."""

from __future__ import annotations

import re
from collections.abc import Iterator

Span = tuple[int, int]

_SALUTE = (
    r"(?:hi|hello|hey|hiya|dear|howdy|greetings|good (?:morning|afternoon|evening|day)"
    r"|hallo)"
)
_OTHERS = r"(?:there|all|team|folks|guys|everyone|again|sirs?|madam|ma'?am|friends?)"
_GREETING = re.compile(
    rf"\s*(?P<salute>{_SALUTE}\b(?:[ ,]{{1,2}}{_OTHERS}\b)?(?:[ ]*(?:or|/)[ ]*madam\b)?"
    r"|to whom it may concern\b)",
    re.IGNORECASE,
)
_ADDRESSED = re.compile(
    r"[ \t]+(?P<name>[^\W\d_][\w.'’-]*(?:[ ](?:[^\W\d_][\w.'’-]*"
    r"|&)){0,3}?)[ \t]*(?=[,!:;–—-]|\n|$)"
)
_MARKS = re.compile(r"[ \t]*[,!.:;–—-]*")
# A word of the trade or of a sentence: what holds one is no name.
_CONTENT = re.compile(
    r"\b(?:i|i'm|im|my|we|need\w*|looking|look|have|has|do|does|is|are|can|could|would"
    r"|please|pls|for"
    r"|got|flapper\w*|toilet\w*|seals?|valve\w*|tank\w*|flush\w*|leak\w*|canister|gasket"
    r"|ears?|pegs?"
    r"|model|made|stamped|inch\w*|what|which|how|why|it|it's|its|the|this|that|ring|old"
    r"|with|on|in|no"
    r"|not|but|wants?|handle|chain|bowl|rubber|red|blue|black|round|square|year|number"
    r"|part|where|your"
    r"|yes|also|and the|maybe|ball|plug|stopper|pipe|tube|overflow|running|runs|water)\b",
    re.IGNORECASE,
)
_CLOSING = (
    r"(?:thanks?(?: you)?|thx|tks|ty|many thanks|thank u|cheers|ta|tia|(?:kind(?:est)? "
    r"|best |warm )?"
    r"regards|rgds|best(?: wishes)?|all the best|sincerely|yours(?: (?:truly|faithfully"
    r"|sincerely))?|respectfully|take care|bye|love|god bless)"
)
_MORE = (
    r"(?: (?:so much|very much|a lot|a bunch|a million|again|in advance|kindly|bunches"
    r"|much|all"
    r"|everyone|guys|folks|team|sincerely|and regards|for (?:your|any|the"
    r"|all)?[\w' ]{0,30}))?"
)
_CLOSING_LINE = re.compile(
    rf"^[ \t]*{_CLOSING}{_MORE}[ \t]*[,!.-]*[ \t]*(?P<name>[^\n]{{0,40}})$",
    re.IGNORECASE | re.MULTILINE,
)
_THANKS = r"(?:thanks?(?: you)?|thx|tks|many thanks|thank u|cheers|tia)"
_INLINE = re.compile(
    rf"(?:(?<=[\w)\"])[ ]{{1,3}}(?={_THANKS}\b)|(?<=[.,!?;)-])[ ]{{0,3}})"
    rf"(?P<closing>\b{_CLOSING}{_MORE})(?P<marks>[ \t]*[,!.-]*)"
    r"(?:[ \t]*(?P<name>[^\n,.!]{0,40}))?[ \t.!]*$",
    re.IGNORECASE,
)
_NAME = re.compile(
    r"[-–—~\s]*(?:[A-Z][\w.'’-]*|&|and)(?:[ ](?:[A-Z][\w.'’-]*|&|and|de|van"
    r"|von)){0,4}[.!]?$"
)
_LOWER_NAME = re.compile(r"[-–—~\s]*[^\W\d_][\w'’.-]*(?: [^\W\d_][\w'’.-]*){0,2}[.!]?$")
_CONTACT = re.compile(
    r"(?:\W*(?:\(?\d[\d\s().+-]{5,18}\d)\W*|.*\S@\S.*|.*\b(?:www\.|https?:)\S+.*"
    r"|\W*(?:tel|phone|ph|cell|mobile|mob|fax|office|home|work|[tmc])\b[.:\s]*\+?\(?\d.*"
    r"|\d{1,6} [\w .'#-]{2,40}(?:\b(?:st|street|rd|road|ave|avenue|ln|lane|dr|drive|blvd"
    r"|ct|court|way"
    r"|place|pl|hwy|terrace|close|crescent|unit|apt)\b.*)|.*\b[A-Z]{2} \d{5}(?:-\d{4})?)$",
    re.IGNORECASE,
)
_PS = re.compile(r"^[ \t]*p\.? ?p?\.?s\b[.:]?", re.IGNORECASE | re.MULTILINE)
_DELIMITER = re.compile(r"^--[ ]?$", re.MULTILINE)
_FOOTER = re.compile(
    r"^[ \t]*(?:sent (?:from|via|with|by) (?:my|the|a|an|your)?\b.{0,60}"
    r"|get [a-z]+ for [a-z]+"
    r"|(?:this|the) (?:e-?mail|message)\b.{0,80}\b(?:confidential|privileged|intended"
    r"|virus)[^\n]*"
    r"|(?:confidentiality notice|disclaimer)[^\n]*|virus[- ]free.{0,60})$",
    re.IGNORECASE | re.MULTILINE,
)
_BANNER = re.compile(
    r"\s*(?:caution|warning|\[?external)\b[^\n]{0,20}(?:e-?mail|sender)[^\n]*", re.I
)


def greeting_spans(raw: str, body_at: int) -> Iterator[Span]:
    """'Hi Dan,' at the beginning of the body, without the sentence that follows it."""
    banner = _BANNER.match(raw, body_at)
    if banner:
        yield banner.span()
        body_at = banner.end()
    salute = _GREETING.match(raw, body_at)
    if salute is None:
        return
    end = salute.end("salute")
    name = _ADDRESSED.match(raw, end)
    if name and not _CONTENT.search(name["name"]):
        end = name.end("name")
    marks = _MARKS.match(raw, end)
    yield salute.start("salute"), marks.end() if marks else end


def footer_spans(raw: str, body_at: int) -> Iterator[Span]:
    """What follows the line '-- ', and the lines that a telephone or an office adds."""
    delimiter = _DELIMITER.search(raw, body_at)
    end = len(raw)
    # Without its blank it may be a line drawn between two thoughts.
    if delimiter and (delimiter.group() == "-- " or _is_signature(raw[delimiter.end() :])):
        end = delimiter.start()
        yield end, len(raw)
    yield from (footer.span() for footer in _FOOTER.finditer(raw, body_at, end))


def signoff_spans(raw: str, body_at: int, end: int) -> Iterator[Span]:
    """The closing words before `end` with the name and address below them; a postscript stays."""
    if postscripts := list(_PS.finditer(raw, max(body_at, end - 2000), end)):
        end = postscripts[-1].start()
    lines = list(_lines(raw, body_at, end))[-12:]
    for at, (start, line) in enumerate(lines):
        closing = _CLOSING_LINE.match(line)
        if closing is None or not (_is_name(closing["name"]) or not closing["name"].strip()):
            continue
        signature = _signature(lines[at + 1 :])
        if signature is not None:
            yield start, signature or start + len(line)
            return
    yield from _inline(lines) or _bare(raw, lines)


def _lines(raw: str, start: int, end: int) -> Iterator[tuple[int, str]]:
    """The lines that hold something, each with its place; only the last of a long letter."""
    start = max(start, raw.rfind("\n", 0, max(start, end - 3000)) + 1)
    for line in raw[start:end].split("\n"):
        if line.strip():
            yield start, line
        start += len(line) + 1


def _is_name(words: str) -> bool:
    """Whether words could be a person's or a firm's name, as one signs."""
    words = words.strip()
    if not words or _CONTENT.search(words) or any(c.isdigit() for c in words):
        return False
    return bool(_NAME.match(words) or _LOWER_NAME.match(words))


def _signature(lines: list[tuple[int, str]]) -> int | None:
    """The end of a signature: 0 if there is none, `None` if a line says more than that."""
    end = 0
    for start, line in lines:
        words = line.strip()
        if not (_CONTACT.match(words) or _is_signed(words)):
            return None
        end = start + len(line)
    return end


def _is_signature(words: str) -> bool:
    lines = [(0, line) for line in words.split("\n", 30) if line.strip()]
    return len(lines) <= 12 and _signature(lines) is not None


def _is_signed(words: str) -> bool:
    return len(words) <= 45 and not re.search(r"[?:]|\d", words) and not _CONTENT.search(words)


def _inline(lines: list[tuple[int, str]]) -> list[Span]:
    """'... for my old toilet thanks, Bob' at the end of the last line that is no signature."""
    for at in range(len(lines) - 1, max(-1, len(lines) - 5), -1):
        start, line = lines[at]
        closing = _INLINE.search(line, max(0, len(line) - 120))
        if closing is None:
            if not _is_signature_line(line):
                return []
            continue
        name = closing["name"] or ""
        below = _signature(lines[at + 1 :])
        if below is None:
            return []
        if name.strip() and not _is_name(name):
            return []
        return [(start + closing.start("closing"), below or start + len(line))]
    return []


def _is_signature_line(line: str) -> bool:
    words = line.strip()
    return bool(_CONTACT.match(words)) or _is_name(words)


def _bare(raw: str, lines: list[tuple[int, str]]) -> list[Span]:
    """A name alone on the last lines, below a sentence that has ended.

    A model's name may stand there too; then the letter asks for it again, which does less
    harm than taking a customer for a toilet.
    """
    at = len(lines)
    while at > 0 and (_CONTACT.match(lines[at - 1][1].strip()) or _is_bare(lines[at - 1][1])):
        at -= 1
    if at in (0, len(lines)) or not re.search(r"[.!?]['\")]?\s*$", lines[at - 1][1]):
        return []
    start, line = lines[-1]
    return [(lines[at][0], start + len(line))]


def _is_bare(line: str) -> bool:
    words = line.strip()
    return bool(_NAME.match(words)) and not _CONTENT.search(words) and len(words.split()) <= 4
