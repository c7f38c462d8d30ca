"""What a year dates: told from the thing named after it, then from the nearest word about it."""

# ruff: noqa: E501  (a pattern is easier to read on one line)

from __future__ import annotations

import re

from assistant.reading.nearby import Surroundings, card
from assistant.reading.purchases import is_of_a_part, is_of_buying
from assistant.reading.spans import YearForm
from assistant.reading.things import HOME, PART, TOILET

STAMP = "stamp"
NOTHING = "nothing"  # a date that says nothing of the toilet or the house
_WEAK = "made?"

_FIT = r"(?:replac|chang|swapp|install|fitt|renew|put|bought|got|new|redone|rebuil)\w*"

CARDS = (
    card(STAMP, r"stamp\w*|found(?= (?:19|20)\d\d (?:on|in|inside|under))|date(?=:? (?:19|20)\d\d\b)|date ?codes?|dates? (?:says?|reads?|is|shows?)|cast|fired|pressed|embossed|imprint\w*|mou?ld(?:ed)?(?: in| into)?|markings?|marked|engraved|dated|etched|(?:manufactur\w+|mfg|mfd|production) date|date(?= \d{4} (?:in|on|under|inside))|date (?:on|in|under|inside|of)(?! (?:the )?(?:receipt|invoice|purchase|sale))|dates? (?:scratched|cut|written|burnt|pressed|baked)|(?:in|into|on) the (?:clay|china|pottery|porcelain|glaze|ceramic|enamel)|(?:clay|china|pottery|porcelain|glaze|ceramic) (?:says|reads)"),
    card(STAMP, r"(?:(?:on|under|beneath|underneath|underside|back|bottom|inside)(?: (?:of|the|side|my)){0,4} (?:tank )?(?:lid|tank)|inside the tank|tank lid)(?= |,|:|\.|$)"),
    card("bought", r"(?:wrote|written|writing|pencil\w*)(?= (?:19|20)\d\d (?:on|under|inside))"),
    card("house", rf"{HOME}(?:'s| is| was)?(?: (?:originally |first )?built)?|built|construct(?:ed|ion)|moved(?: in(?:to)?)?|came in|lived?(?: here)?|living here|been here"),
    card("house", rf"{HOME}(?: \w+){{0,2}} (?:put up|went up|built|dates)|(?:bought|purchased|buying|got|own|owned|had)(?: (?:the|this|our|my|a)){{0,2}}(?: \w+)? {HOME}"),
    card("bought", r"(?:went in|put in|fitted|installed|bought)(?: [a-z']+){0,7} (?:born|married|retired|wedding|honeymoon|moved(?: in(?:to)?)?)"),
    card("made", rf"(?:{TOILET})(?: was| is|'s| were)? built|(?:{TOILET}|it|this one)(?: was| is|'s| were)? (?:made|manufactured|produced)|manufactured|made|mfg|mfd|produced|yr|year(?=:? (?:is )?(?:19|20)\d\d)|year of (?:make|making|manufacture|production)|model year"),
    card("bought", r"(?:was|were|is|it) (?:brand )?new in|new (?:in|about|around|circa|from)(?= (?:19|20)\d\d)|bought|bougth|bougt|bouhgt|purchased?|got (?:it|this|the toilet|them|one)|install(?:ed|ation)?|put (?!up)(?:\w+ ){0,3}in|picked (?:it |this |one )?up|had (?:it|this|the) ?(?:one|toilet|commode)?|owned(?: it| this)?|receipt|invoice|replac\w+ (?:(?:the|my|our|this|a|whole|entire|old) ){0,3}(?:toilets?|commode)|(?:toilets?|commode)(?: [a-z']+){0,2} (?:replaced|installed|put in|bought|purchased)|remodel\w*|renovat\w*|reno|redid|redone|new toilet|bath(?:room)? (?:was )?(?:redone|remodel\w*|renovated|done)"),
    card("valve_put_in", rf"{_FIT}(?: (?!(?:flapp?er|fill)\b)[a-z']{{1,9}}){{0,3}} flush ?valve(?: assembly)?|flush ?valve(?: assembly)?(?: (?!(?:flapp?er|fill)\b)[a-z']{{1,9}}){{0,3}} (?:replaced|changed|installed|put in|new|swapped)|(?<!fill )(?<!inlet )(?<!supply )valve(?: in (?:it|there|that))? (?:is|was)(?: \w+)? (?:brand )?new"),
    card(NOTHING, rf"{_FIT}(?: (?!flush\b)[a-z']{{1,10}}){{0,4}} {PART}|{PART}(?: (?!flush\b)[a-z']{{1,9}}){{0,3}} (?:replaced|changed|installed|put in|new|swapped|bought)"),
    card(NOTHING, r"(?:leak|run|drip|hiss|sweat|work|act|fill|flush|run)\w*(?: [a-z']{1,9}){0,3} (?:since|for)"),
    card(NOTHING, r"(?:start(?:ed|s)?|began|begun|quit|stopped)(?: [a-z']{1,10}){1,3}"),
    card(NOTHING, r"born|married|retired|warranty|guaranteed?|lasts?|lasted|every|called|phoned|emailed|wrote|written|experience|plumber(?: for)?|in business|bill|doubled|ordered|order(?: date)?|shipped|sent"),
)  # fmt: skip
AGED = (
    card(_WEAK, TOILET + r"|it|it's|its|this|thing", side="before"),
    card("house", HOME, side="before"),
    card("valve_put_in", r"flush ?valve(?: assembly)?", side="before"),
    card(NOTHING, PART + r"|(?<!flush )valve|it's been|it has been|(?:my )?name(?:'s| is)(?: \w+)?", side="before"),
    card(NOTHING, r"i am|i'm|im|he|she|he's|she's|(?:my|the|our) (?:\w+ )?(?:wife|husband|mother|mom|mum|dad|father|son|daughter|kids?|grand\w+|dog|neighbou?r|tenant)", side="before"),
)  # fmt: skip

_NEXT = re.compile(
    rf"[ -]?(?:(?!(?:and|but|in|for|is|was|needs?|requires?|wants?|with|so|the|my|i|we|that|which|when|has|from|at|on|of|old house)\b)\w[\w&'-]{{0,13}} ){{0,3}}?"
    rf"(?:(?P<valve>flush ?valve)|(?P<part>{PART})|(?P<house>{HOME})|(?P<made>{TOILET}|vintage|model))(?!\w)"
)
_PERSON_NEXT = re.compile(
    r" (?:man|woman|lady|widow|guy|mother|mom|father|dad|son|daughter|kid|child|boy|girl|baby|dog|male|female|person)\b"
)
_LED = re.compile(
    r"(?:(?:^|(?<=[^a-z']))(?:it|its|it's|this|this one|mine|they|they're|these|that|that's|one)(?: (?:is|was|are|were|must be|dates?|goes|probably|maybe|would be|should be|back)){0,4}"
    r"(?: (?:to|from|a|an|about|around|circa|in|the|like|old)){0,3}|\b(?:an?|my|our|an old|circa|vintage)) '?$"
)
_TOILET_IS = re.compile(
    rf"\b{TOILET}(?:'s| is| was| are| must be| dates?| goes)(?: (?:back|to|from|probably|maybe|about|around|a|an|circa|early|late|mid|in the|the)){{0,4}} '?$"
)
# 'Toilet 1.6 gpf built 1995': the flush is part of its name, as on its label.
_RATED = (
    r"(?:[\d.]{1,4} ?(?:gpf|lpf|gal(?:lon)?s?|l|lit(?:er|re)s?)\b(?: (?:per|a) flush)?[\s,):-]*)?"
)
_BESIDE = re.compile(
    rf"\b{TOILET}[\s,(:-]*{_RATED}(?:(?:from|of|made in|made|built in|built|about|around|circa|ca|year|yr|dated|early|late|mid)[\s.-]*)*'?$"
)
_FAR = 95


def dates(around: Surroundings, aged: Surroundings, form: YearForm) -> str:
    """What a form dates: made, bought, house, valve_put_in, year, `STAMP` or `NOTHING`."""
    said = around.said
    if form.kind == "year" and is_of_buying(said, form.start, form.end):
        return "bought"
    if form.kind == "year" and is_of_a_part(said, form.start, form.end):
        return NOTHING
    if form.kind == "year" and _BESIDE.search(said, max(0, form.start - 60), form.start):
        return "made"
    if form.kind != "ago":
        after = _NEXT.match(said, form.end, form.end + 60)
        if after is not None and not _says_more(said, form):
            return _of_noun(after, form)
        if form.kind == "age" and _is_a_persons(said, form):
            return NOTHING
    if form.kind == "age":
        return _of_age(aged, form)
    led = form.kind == "year" and _LED.search(said, max(0, form.start - 60), form.start)
    if form.kind == "year" and _TOILET_IS.search(said, max(0, form.start - 60), form.start):
        return "made"
    cue = around.nearest(form.start, form.end)
    if cue is not None and around.number_within(cue.end, form.start):
        cue = cue if cue.means == NOTHING and not led else None  # else it is the other year's
    if cue is not None and _gap(cue.start, cue.end, form) <= _FAR:
        return cue.means
    if form.kind == "ago":
        return NOTHING
    if led:
        return "made"
    thing = aged.nearest(form.start, form.end)
    if thing is not None and _gap(thing.start, thing.end, form) <= 40:
        return (
            "made" if thing.means == _WEAK else NOTHING if thing.means == NOTHING else thing.means
        )
    return "year"


def stamped_before(around: Surroundings, start: int) -> bool:
    """Whether the sentence of a place, or the one before it, speaks of a stamp."""
    first, last = around.sentence(start)
    low = around.sentence(first - 1)[0] if first else 0
    cues = around.within(max(low, start - 160), min(last, start + 80))
    return any(cue.means == STAMP for cue in cues)


def _is_a_persons(said: str, form: YearForm) -> bool:
    """'a 70 year old lady', 'my 3 year old'."""
    mine = re.search(r"\b(?:my|our|his|her|their) $", said[max(0, form.start - 8) : form.start])
    return mine is not None or _PERSON_NEXT.match(said, form.end) is not None


def _says_more(said: str, form: YearForm) -> bool:
    """'bought in 2015 toilet runs': a verb before the year counts for more than what follows."""
    before = said[max(0, form.start - 24) : form.start]
    return (
        re.search(
            r"\b(?:bought|installed|replaced|purchased|put in|built|since|remodeled|made|manufactured|produced|mfg|mfd)(?: \w+)? (?:in )?$"
            r"|\b(?:stamp(?:ed)?(?: says| reads| is)?|dated|from|frm) $",
            before,
        )
        is not None
    )


def _of_noun(after: re.Match[str], form: YearForm) -> str:
    if after["valve"]:
        return "valve_put_in" if form.kind == "age" else "year"
    if after["part"]:
        return NOTHING
    return "house" if after["house"] else "made"


def _of_age(aged: Surroundings, form: YearForm) -> str:
    cue = aged.nearest(form.start, form.end)
    if cue is None or _gap(cue.start, cue.end, form) > _FAR:
        return "made"
    return "made" if cue.means == _WEAK else cue.means


def _gap(start: int, end: int, form: YearForm) -> int:
    return form.start - end if end <= form.start else start - form.end
