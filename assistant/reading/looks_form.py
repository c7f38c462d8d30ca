"""Shape, filling, float, colour, material and setting of the old seal."""

from __future__ import annotations

from assistant.reading.lexicon import Card, card

_SEAL = (
    r"(?:flapper|flap|seal|gasket|stopper|plug|ball|bulb|disc|disk|washer"
    r"|rubber(?: (?:thing|part|piece|bit|thingy|one))?|canister(?: (?:seal|gasket))?"
    r"|thing(?:y|ie)?|one(?!(?: |-)piece))"
)
_FILL = (
    r"\bfill ?valve\b|\bball ?cocks?\b|\bfloat (?:cup|arm|rod|ball|valve|level)\b"
    r"|\bball float\b|\bfloating ball\b|\bon (?:an?|the) (?:long )?arm\b|\binlet\b"
    r"|\bwater level\b|\bset(?:s)? the (?:water )?level\b|\bfloat (?:up|off)\b"
)
_COLOURS = (
    "red",
    "black",
    "blue",
    "yellow",
    "green",
    "white",
    "orange",
    "amber",
    "clear",
    "brown",
    "pink",
    "tan",
)
_GREY = r"(?:grey|gray)"
_ADJ = r"(?:\w+ )?"


def _colour(value: str, word: str) -> Card:
    """A colour said of the seal itself; toilets and stains have colours too."""
    return card(
        "colour",
        value,
        rf"\b(?P<it>{word})(?:dish|ish)?(?:[- ]coloured|[- ]colored)? {_ADJ}{_SEAL}s?\b"
        rf"|\b{_SEAL}s?(?: itself| in it| on it| in mine)? (?:is|was|are|were|looks) (?:a "
        rf"|an )?(?:dark |light |bright |kind of )?(?P<also>{word})\b|\bcolou?r(?: is"
        rf"| was)?:? (?P<too>{word})\b|\bit(?: is|'s|s) (?:a )?(?P<rubber>{word}) rubber\b",
        "the makers' seals differ in colour",
        unless=rf"\b(?:turned|turning|gone|went|going|goes) {word}\b|\b(?:slime|slimy|gunk"
        r"|stain\w*|mold|mould)\b|\btoilet (?:is|was)\b|\bwax\b|\bwater\b"
        r"|\bcolou?r of the (?:toilet|tank)\b",
    )


_COLOUR_CARDS = (
    *(_colour(word, word) for word in _COLOURS),
    _colour("grey", _GREY),
)

_FLOAT_CARDS = (
    card(
        "float",
        "yes",
        r"\b(?:flapper|chain|foam|styrofoam) float\b|\bfloats? (?:on|attached to"
        r"|clipped to|clipped on|in) (?:the |its |my )?(?:chain|flapper)\b",
        "a float holds the flapper up longer",
        denied="no",
    ),
    card("float", "yes", r"\bfloat(?=\s?[:=])", "a list with its answers", denied="no"),
    card(
        "float",
        "yes",
        r"\b(?:a|any|no|without|with|has|have|adjustable|little|small|plastic"
        r"|white) (?P<it>float)\b",
        "where no fill valve is spoken of, the seal's float is meant",
        denied="no",
        unless=_FILL,
    ),
)

_SHAPE_CARDS = (
    card(
        "shape",
        "small bulb",
        r"\b(?:small|little|tiny|teardrop|light|pear)[- ](?:shaped )?bulb\b"
        r"|\bbulb(?:[- ]shaped)\b|\blike a (?:little |small )?(?:light ?)?bulb\b"
        r"|\bteardrop(?:[- ]shaped)?\b",
        "a bulb below the disc",
    ),
    card(
        "shape",
        "half ball",
        r"\bhalf(?:[- ]a)?[- ](?:a )?(?:ball|sphere|dome|globe)\b|\b(?:dome|bowl|cup"
        r"|mushroom)[- ]shaped\b|\bhemispher\w+|\b(?:rounded|round) (?:on the )?bottom\b"
        r"|\blike half a \w+ ?ball\b|\bhalf[- ]round\b",
        "a hollow half ball",
        unless=r"\btank\b.{0,20}\bbottom\b",
    ),
    card(
        "shape",
        "cone",
        r"\bcone(?:[- ]shaped|[- ]like)\b|\bfunnel[- ]shaped\b|\blike a (?:cone|funnel)\b"
        r"|\bcone (?:on|at|under|below)\b",
        "a cone below the disc",
    ),
    card(
        "shape",
        "full ball",
        r"\b(?:whole|full|complete|perfectly round|round) (?:rubber )?ball\b"
        r"|\blike a (?:tennis|hand|rubber|hollow) ball\b",
        "a tank ball",
        unless=_FILL,
    ),
    card(
        "shape",
        "flat",
        r"\b(?:flat|pancake)(?:,? (?:\w+ )?)(?:disc|disk|flapper|seal|gasket|ring|washer"
        r"|rubber|round|circle|piece|one|bottom)\b|\b(?:is|it's|just|are|completely"
        r"|perfectly|all) flat\b(?! tire)|\blike a (?:flat )?(?:washer|pancake|donut"
        r"|doughnut|o-?ring)\b|\b(?:donut|doughnut|washer|ring)[- ]shaped\b",
        "a flat disc or ring",
        unless=r"\b(?:not (?:sit|lie|lay)\w*|sit\w*|lie\w*|lay\w*|screwdriver|flat ?head) flat\b",
    ),
)

_FILLING_CARDS = (
    card(
        "filling",
        "foam",
        r"\b(?:styro)?foam(?:y)?(?:[- ]filled| inside| core| filling)?\b",
        "foam keeps it up",
        unless=r"\bfoam float\b|\btank liner\b|\binsulat\w+|\bfoam(?:y|ing) water\b|\bsoap\b"
        r"|\bfoam gasket\b",
    ),
    card(
        "filling",
        "air",
        r"\bair[- ](?:filled|pocket|chamber)\b|\bfull of air\b|\bfilled with air\b"
        r"|\btraps air\b",
        "trapped air keeps it up",
    ),
    card(
        "filling",
        "hollow",
        r"\bhollow\b|\bempty inside\b|\b(?:open|hole)<2>(?:underneath|(?:on|at"
        r"|in) the (?:bottom|underside))\b",
        "hollow, it fills and sinks",
    ),
)

_MATERIAL_CARDS = (
    card(
        "material",
        "silicone",
        r"\bsilicone?\b",
        "silicone lasts",
        unless=r"\bcaulk\w*|\bsealant\b|\bgrease\b|\bspray\b|\btube of\b",
    ),
    card(
        "material",
        "hard plastic",
        r"\bhard[,-]? ?plastic\b|\b(?:rigid|stiff|solid) plastic\b|\bplastic (?:flapper"
        r"|disc|disk|frame|flap)\b|\b(?:flapper|disc|disk|flap) (?:is|was) (?:made of "
        r"|all )?(?:\w+ )?plastic\b",
        "a plastic frame with a soft disc",
    ),
    card(
        "material",
        "rubber",
        r"\b(?:soft |all |old |red |black )?rubber(?:y|ized)?\b(?! (?:mallet|glove|boot"
        r"|hose|band))|\bmade of rubber\b",
        "the usual material",
    ),
)

_SETTING_CARDS = (
    card(
        "adjustable",
        "yes",
        r"\badjust(?:able|er)\b(?! wrench)|\b(?:a |the |little |small |plastic "
        r"|with )(?:dial|knob that turns)\b|\bturn(?:s|ing)? (?:the |a )?dial\b"
        r"|\bnumbers (?:1|one) (?:to|through)\b|\bdial (?:on|with|marked)\b",
        "a dial sets how much it flushes",
        denied="no",
        unless=_FILL + r"|\bfloat\b|\badjustable (?:wrench|pliers)\b|\bwater dial\b|\bchain\b"
        r"|\btank height\b",
    ),
)

FORM: tuple[Card, ...] = (
    *_FLOAT_CARDS,
    *_SHAPE_CARDS,
    *_FILLING_CARDS,
    *_COLOUR_CARDS,
    *_MATERIAL_CARDS,
    *_SETTING_CARDS,
)
