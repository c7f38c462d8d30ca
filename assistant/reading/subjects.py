"""What a length measures: told from the words after it, then from the nearest word about it."""

# ruff: noqa: E501  (a pattern is easier to read on one line)

from __future__ import annotations

import re

from assistant.reading.mentions import Mention
from assistant.reading.nearby import Cue, Surroundings, card

OTHER = "other"  # a thing whose size says nothing about the seal
FLAPPER = "flapper"  # by trade usage its opening, or the old one laid on a rule
UNCLEAR = "length"

_ARMS = r"(?:ears?|pegs?|pins?|posts?|hinges?|lugs?|tabs?|arms|nubs?|prongs?|fingers?|horns?|stubs?|hooks?)"
_LESS = r"(?<!no )(?<!without )(?<!any )"
_OLD = r"(?:old|existing|current|original|worn(?:[ -]out)?)"

CARDS = (
    card("opening", r"(?:across|over) (?:the )?(?:hole|opening|drain|outlet)"),
    card("hinge_width", rf"{_ARMS}[ -](?:to|and)[ -](?:the )?(?:other )?{_ARMS}"),
    card("hinge_width", rf"(?:between|across|over(?= (?:the |both |its )?(?:ears|pegs|outside of))|distance (?:of|between)|span of|width of)(?: (?:the|both|its|my|two|of|mounting|side)){{0,3}} {_ARMS}"),
    card("hinge_width", rf"(?:outside|inside|outer|middle|cent(?:er|re)|edge)? ?(?:edge |side )?(?:of|from) (?:one )?{_ARMS} to (?:the )?(?:outside|inside|outer|middle|cent(?:er|re)|edge)? ?(?:edge |side )?(?:of )?(?:the )?other(?: {_ARMS})?"),
    card("hinge_width", rf"from (?:the )?{_ARMS} (?:outside|outer edge)|that's (?:the|my) {_ARMS}"),
    card("hinge_width", rf"{_ARMS},? (?:up|down)(?: and|,)?(?= \d)"),
    card("hinge_width", rf"(?:over|across|between|outside of|outsides of|tips? of) (?:the )?(?:outsides? of )?(?:the |both |one |two )?{_ARMS}"),
    card("hinge_width", r"(?:peg |far )?tips? (?:to|of)(?: the)?(?: (?:left|right|other|one))?(?: \w+)? (?:tip|dash)"),
    card("hinge_width", r"(?:over|across) (?:their|the) outsides|(?:outer|outside) (?:edge|side|face)s? to (?:the )?(?:outer|outside) (?:edge|side|face)|out(?:er)? to out(?:er)?|between,? outsides"),
    card("hinge_width", rf"over the {_ARMS} of (?:the|my|its) {_OLD}? ?(?:rubber|seal|flapper|one)(?:,? outside)?"),
    card("hinge_width", rf"the {_ARMS}", side="after"),
    card("hinge_width", r"outside to outside|outer to outer|ear to ear"),
    card("opening", r"(?:through|in|across) the (?:hole|opening|drain),? lip to lip|(?:inside|in) the (?:hole|opening) not (?:the |on the |over the )?(?:lip|rim)|(?:hole|opening)(?: itself)?,? inside the (?:lip|rim)"),
    card("hinge_width", r"(?:over|across) the outside of (?:them|both|the two)"),
    card("hinge_width", r"(?:hinge|ear|peg|mount(?:ing)?)s?[ -](?:width|span|distance|spacing|spread|gap)"),
    card("hinge_width", rf"{_LESS}{_ARMS}(?= (?:are|is|were|measure[sd]?|at|about|roughly|spaced|sit)\b| ?[:=]| \d)"),
    card("hinge_width", rf"{_LESS}{_ARMS} (?:on|of) (?:the|my|its)(?: [a-z]+){{1,2}}"),
    card("tube", r"over ?flow(?: (?:pipe|tube|riser|stand ?pipe))?|stand ?pipe|riser(?: tube)?|(?<!refill )(?<!fill )tube"),
    card("tube", r"(?:(?:the|my|that|its) (?:\w+ )?|round |upright )pipe(?= (?:is|was|measures|itself|in the middle))"),
    card("disc", r"(?:flapper|seal|ball|gasket|flaper)(?: itself| disc| disk| rubber)|dis[ck]s?|rubber(?: (?:disc|disk|part|bit|piece|circle|flap))?(?! (?:flapp?er|seal|gasket|ball))"),
    card("disc", rf"{_OLD} (?:flapper|flaper|seal|gasket|washer|rubber|one)(?= (?:itself )?(?:measure[sd]?|came out at))"),
    card("disc", r"(?:outside|outer|across|width|diameter)[^.,\d]{0,16} (?:flapper|disc|disk|rubber)"),
    card("rim", r"(?:outer|outside|seat|valve|drain|raised|outer seat)(?: (?:rim|lip|edge|ring|diameter|dia|circle))|rim|lip|outside(?! to)|outer|o\.d\.?|od|overall"),
    card("opening", r"(?:seat |valve |drain |flush |flush valve )?(?:opening|hole|outlet|plug ?hole)s?|drains?|where the water leaves|inner edge to inner edge|orifice|throat|bore|flush ?valves?|valves?|canister(?: flush valve)?|mouth"),
    card("opening", r"inside(?= (?:diameter|dia|measure|edge|width|rim|to inside|of the (?:hole|drain|opening|valve|rim|ring|seat)))|inner|(?:(?<=mm )|(?<=mm)|(?<=inch )|(?<=inches )|(?<=\" )|(?<=in\. ))id|i\.d\.?|id(?= (?:is|of|=)|:)|inside(?= ?(?:[.,;)]|$|and |outside))|(?<=\" )inside"),
    card("opening", r"(?:inside|inner) (?:diameter|dia|edge|width)(?: of (?:the )?(?:\w+ )?(?:seat|rim|hole|drain|opening|valve|outlet))?"),
    card("rim", r"(?:rim|lip|edge|ring) of the(?: \w+)? (?:seat|hole|drain|opening|valve|outlet)|(?:outside|outer)(?: (?:edge|rim|lip|diameter|dia))? of (?:the )?(?:\w+ )?(?:drain|hole|opening|valve|seat|outlet)"),
    card("tube", r"(?:overflow|tube|(?:overflow )(?:tube|pipe)) (?:od|o\.d\.?|(?:outside|outer) (?:diameter|dia))"),
    card(FLAPPER, r"flapp?er(?: valve)?s?|flappy"),
    card(UNCLEAR, r"seat|seal|gasket|tank ball|ball|washer|ring|plug|stopper|old one"),
    card(OTHER, r"chains?|slack|links?|rough[ -]?in|water(?: (?:line|level|height))?|radius|circumference"),
    card(OTHER, r"hoses?|supply(?: (?:line|hose|pipe))?|bolts?|screws?|nuts?|lever|handle|wrench|screwdriver|shut ?off(?: valve)?"),
    card(OTHER, r"fill ?(?:valve|tube)|refill (?:tube|hose)|ball ?cock|inlet|float|toilet (?:seat|rim)|bowl(?: rim)?|wax ring|shank"),
    card(OTHER, r"(?:closet |toilet )?flange|floor|wall|sewer(?: (?:line|pipe))?|threads?|threaded|(?:waste|drain|soil|sewer) ?(?:pipe|line)|spud|lid|base"),
    card(OTHER, r"(?<!of the )(?<!of my )(?<!of )(?<!in the )(?<!in my )(?:tank|cistern)(?: (?:itself|lid|top))?(?= (?:is|measures|width|height))|crack|cut|trim(?:med)?|tall|height"),
)  # fmt: skip

_NOT_A_WIDTH = re.compile(
    r"[ -]?(?:(?:or so|ish) )?(?:(?:too )?(?:tall|high|long|deep|short|thick|above|below|off|lower|higher|away|down|up|back"
    r"|around)\b|from (?!(?:the )?(?:outside|inside|outer|middle|centre|center|edge)|ear|peg|hinge|pin|post|lug|side|edge|one|rim|inside|outside)|in (?:length|height|circumference)"
    r"|of (?:(?:the |extra |standing |free )?(?:water|chain|slack|play|space|clearance|room))"
    r"|(?:too )?(?:rough|(?:under|over) the (?!ears|pegs|hinge|outside|hole|opening|drain|outlet)))"
)
_PHRASE = re.compile(
    r"[ \"'-]{0,2}(?:(?!(?:is|are|was|were|and|but|on|in|for|or|the|my|so|it|that|if|to|from|as|at|when|than|i|with|has|not)\b)[\w½'.&-]{1,14}[ -]?){0,5}"
)
_MARKED = re.compile(r" ?(?:is |was )?(?:mou?lded|stamped|marked|printed|written|embossed)\b")
_SORT = re.compile(r"[ -](?:kind|type|size|sized|style|version|sort)\b")
_TUBE_IS = re.compile(r"\b(?:tube|pipe|standpipe|riser) (?:is|was|measures|about)[\w ]{0,12}$")
_THAT_IS = re.compile(
    r"[\s.,;-]{0,4}(?:that's|thats|that is|this is|that was|those are|being) (?:for )?(?:the |my |its )?"
    r"(?P<thing>[a-z]+(?: [a-z]+){0,2})"
)
_ALONE = {"ears": "hinge_width", "pegs": "hinge_width", "hinge": "hinge_width", "hole": "opening",
          "opening": "opening", "rubber": "disc", "flapper": "disc", "tube": "tube",
          "pipe": "tube"}  # fmt: skip
_NAMED_ALONE = re.compile("|".join(_ALONE))
_OUTER = re.compile(r"out(?:er|side)|overall")
_SIDE = re.compile(r"outside|outer|o\.d\.?|od|inside|inner|inside diameter|i\.d\.?|id")
_OF_EARS = re.compile(rf"(?<!no )(?<!any )\b{_ARMS}\b")
_OF_A_SEAL = re.compile(r"\b(?:seal|ring|gasket|washer|flapper|rubber|ball)\b")
_OF_A_VALVE = re.compile(r"\b(?:seat|valve|drain|hole|opening|outlet|rim)\b")
_ACROSS = re.compile(
    r"[ -]?(?:(?:or so|ish|thick) )?(?:across|wide|in (?:diameter|width)|diameter|dia\b|round\b)"
)
_MEASURING = re.compile(r"measur|itself|across|diameter|wide|width|tape|ruler|calip|edge to edge")
_COPULA = re.compile(r"\b(?:is|was|are|were|'s|looks|seems)\b|'s\b")
_POINTS_BACK = re.compile(
    r"\s*(?:and |so |but |i think |i believe |then )?(?:it|its|it's|that|that's|this|they|they're|which|about|around|roughly|approx|measur\w+|came|comes|got|maybe|looks|i (?:get|got|measured))\b|\s*$"
)


def subject(around: Surroundings, mention: Mention) -> str:
    """What the length measures: opening, disc, rim, tube, hinge_width, length, or `OTHER`."""
    said, start, end = around.said, mention.start, mention.end
    if _NOT_A_WIDTH.match(said, end):
        return "tube" if _TUBE_IS.search(said, max(0, start - 30), start) else OTHER
    across = _ACROSS.match(said, end)
    if _MARKED.match(said, end):
        return UNCLEAR
    if told := _said_next(around, end):
        return told
    stop = max(around.sentence(start)[1], end)
    phrase = _PHRASE.match(said, across.end() if across else end, stop)
    following = around.within(end, phrase.end()) if phrase is not None else []
    if following and not _belongs_to_next(around, following[0], mention):
        return _settled(around, following[0], mention, near=True, across=bool(across))
    if re.match(r" ?apart\b", said[end : end + 8]):
        return "hinge_width"
    nearest = around.nearest(start, end)
    if nearest is None:
        before = _of_sentence_before(around, start)
        return UNCLEAR if before is None or before.means == FLAPPER else before.means
    if nearest.means != OTHER and around.number_within(nearest.end, start):
        return UNCLEAR  # 'the hole is 3 1/4, yours was 2': the hole's own number is told
    return _settled(around, nearest, mention, near=False, across=bool(across))


def _said_next(around: Surroundings, end: int) -> str | None:
    """'83 mm. That's the ears.'"""
    follows = _THAT_IS.match(around.said, end)
    if follows is None:
        return None
    named = around.within(follows.start("thing"), follows.end("thing"))
    found = _NAMED_ALONE.match(follows["thing"])
    return named[0].means if named else found and _ALONE[found[0]]


def _belongs_to_next(around: Surroundings, cue: Cue, mention: Mention) -> bool:
    """Whether things are named before their numbers: 'outer 92 mm inner 76 mm'."""
    named = [c for c in around.within(mention.start - 30, mention.start) if c.end <= mention.start]
    if not named or not re.fullmatch(
        r"[ :=]{0,3}(?:is |dia )?", around.said[named[-1].end : mention.start]
    ):
        return False
    return around.number_within(cue.end, cue.end + 12)


def _settled(around: Surroundings, cue: Cue, mention: Mention, near: bool, across: bool) -> str:
    """The thing a cue stands for; a flapper's number is its opening unless a rule lay on it."""
    if _SIDE.fullmatch(around.said, cue.start, cue.end):
        first, last = around.sentence(mention.start)
        if _OF_EARS.search(around.said, max(first, mention.start - 24), mention.start):
            return "hinge_width"  # 'ears 78 mm outside'
        sentence = around.said[max(first, mention.start - 110) : min(last, mention.end + 60)]
        if _OF_A_SEAL.search(sentence) and not _OF_A_VALVE.search(sentence):
            return "disc" if cue.means == "rim" else UNCLEAR
    if cue.means == "rim" and _OF_EARS.search(around.said, max(0, mention.start - 60), mention.end):
        return "hinge_width" if _OUTER.match(around.said, cue.start) else cue.means
    if cue.means != FLAPPER and not (cue.means == UNCLEAR and not near):
        return cue.means
    if _SORT.match(around.said, mention.end):
        return "opening" if cue.means == FLAPPER else UNCLEAR
    between = around.said[cue.end : mention.start]
    if cue.end <= mention.start:
        first = around.sentence(mention.start)[0]
        if across or _MEASURING.search(around.said, max(first, cue.start - 30), mention.start):
            return "disc"
        if cue.means == UNCLEAR or _COPULA.search(between) or len(between) > 25:
            return UNCLEAR
        return "opening"
    if cue.means == UNCLEAR:
        return UNCLEAR
    return "disc" if across else "opening" if near or cue.start - mention.end < 12 else UNCLEAR


def _of_sentence_before(around: Surroundings, start: int) -> Cue | None:
    """The last thing named in the sentence before, where this one points back at it."""
    first, _ = around.sentence(start)
    if first == 0 or not _POINTS_BACK.match(around.said[max(first, start - 60) : start]):
        return None
    before = around.sentence(first - 1)
    return next(iter(reversed(around.within(max(before[0], first - 110), first))), None)
