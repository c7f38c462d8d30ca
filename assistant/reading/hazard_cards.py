"""Hazards: what a seal does not mend, or what somebody should not wait with."""

from __future__ import annotations

from assistant.reading.lexicon import Card, card

_WET = (
    r"(?:leak\w*|drip\w*|seep\w*|ooz\w+|pour\w*|gush\w*|spray\w*|squirt\w*|com(?:es"
    r"|ing)|trickl\w+|wet|puddl\w+|pool\w*|weep\w*|water|moisture|damp)"
)
_FLOOR = r"(?:floor|carpet|rug|tiles?|bath ?mat|lino(?:leum)?|vinyl|floorboards)"
_BASE = (
    r"(?:base|foot|bottom) of (?:the |my |our )?(?:toilet|bowl|pan)|where (?:the "
    r"|it )(?:toilet |bowl )?(?:meets|touches) the floor"
)
_SUPPLY = (
    r"(?:supply (?:line|hose|pipe|tube|valve)|(?:water )?supply|shut ?-?off(?: valve)?"
    r"|stop ?cock|stop tap|isolat\w+ valve|angle stop|braided (?:hose|line)|water line"
    r"|valve (?:on|in|at) the wall|(?:hose|pipe|line) (?:from|to|on|at) the wall|inlet hose"
    r"|flex(?:ible|i)? hose"
    r"|hose to the (?:toilet|tank|cistern))"
)

HAZARDS: tuple[Card, ...] = (
    card(
        "hazard",
        "poisoning",
        r"\b(?:tablets?|blocks?|cleaners?|bleach)\b[^.!?]{0,50}\b(?:swallow(?:ed)?|ate|drank"
        r"|chewed)\b"
        r"|\b(?:swallow(?:ed|s)?|drank|drunk|drinking|licked|ate|eaten|chewed|ingest\w*)<6>"
        r"(?:cleaners?|bleach|descaler|acid|tablets?|blocks?|chemicals?|(?:blue|toilet|tank|cistern"
        r"|loo) water|dye|water (?:from|out of|in) the (?:tank|cistern|toilet|loo))\b"
        r"|\b(?:baby|toddler|kid|child|son|daughter|boy|girl|grand\w+|dog|puppy|cat|he|she|it)<3>"
        r"(?:swallowed|ate|has eaten|choked on)<5>"
        r"(?:flapper|seal|rubber|ball|ring|gasket|piece|bit)s?\b",
        "somebody has swallowed it",
        unless=r"\bdrinking water (?:safe|quality|supply)\b",
    ),
    card(
        "hazard",
        "mixed cleaners",
        r"\bmix\w*<4>(?:bleach|ammonia|acid|cleaners?|chemicals|drain|vinegar|chlorine)\b"
        r"|\b(?:bleach|ammonia|acid|chlorine)<1>(?:and|with|plus|\+)<2>(?:bleach|ammonia|acid"
        r"|vinegar|cleaner|drain)\b"
        r"|\b(?:bleach|chlorine|ammonia)\b(?! or\b)<9>(?<!or )(?:vinegar|acid|descaler"
        r"|limescale remover|drain cleaner)\b"
        r"|\b(?:vinegar|acid|descaler|limescale remover|drain cleaner)\b(?! or\b)<9>(?<!or )"
        r"(?:bleach|chlorine|ammonia)\b"
        r"|\b(?:cleaners?|bleach|descaler)<8>(?:on top of|into|in on)<6>(?:bleach|cleaners?"
        r"|tablets?)\b"
        r"|\b(?:throat|nose|lungs|chest)<2>(?:raw|tight)\b"
        r"|\b(?:vinegar|descaler|acid|limescale remover)\b[^!?]{0,90}\bbleach\b"
        r"|\beyes? (?:run|running|water|watering|stream\w*)\b"
        r"|\b(?:eyes?|throat|nose|lungs|chest)<2>(?:sting\w*|burn\w*|hurt\w*|sore|itch\w*)\b"
        r"|\b(?:can't|cannot|hard to|hardly|trouble) breath(?:e|ing)\b|\bfumes\b",
        "mixed cleaners give off poison gas",
    ),
    card(
        "hazard",
        "gas smell",
        r"\b(?:smell\w*|odou?r|stink\w*)<3>(?:natural )?(?<!sewer )(?<!sewage )gas\b"
        r"|\bgas (?:smell|leak|odou?r)\b(?<!sewer gas smell)"
        r"|\bgas (?:boiler|heater|pipe|line|stove|cooker|meter)<3>(?:leak\w*|smell\w*|hiss\w*)\b",
        "leave the house, call the gas supplier",
        unless=r"\bsewer|\bsewage",
    ),
    card(
        "hazard",
        "sewer smell",
        r"\b(?:smell\w*|odou?r|stink\w*|stench|reek\w*)<4>(?:sewer|sewage|septic"
        r"|rotten eggs?|drains?)\b|\b(?:sewer|sewage|septic|rotten egg)<1>(?:gas|smell\w*"
        r"|odou?r|stink|stench)\b",
        "a seal of the drain, not of the tank",
    ),
    card(
        "hazard",
        "sewage backing up",
        r"\b(?:sewage|poop|waste|shower|tub|drain)<3>(?:back\w*|com(?:es|ing)) ?up\b"
        r"|\bbacking up\b",
        "a blocked drain",
    ),
    card(
        "hazard",
        "overflowing bowl",
        r"\b(?:bowl|pan|toilet)<6>spill(?:s|ed|ing)? over\b"
        r"|\b(?:bowl|toilet)<2>overflow(?:s|ed|ing)?\b(?! (?:tube|pipe))|\boverflow(?:s|ed"
        r"|ing)<3>(?:bowl|floor|onto)\b|\bwater rises to the rim\b",
        "a blocked drain",
    ),
    card(
        "hazard",
        "electrical",
        r"\b(?:electric(?:al|ity|s)?|(?:wall|power|electric\w*|light|plug) (?:outlet|socket"
        r"|switch)|outlets|sockets?|wiring|shocks?|shocked|sparks?|sparking"
        r"|extension cord|circuit breaker|light fixture|light fitting|lights? flickers?"
        r"|lights?<4>flickers?)\b",
        "water and current",
        unless=r"\b(?:electric (?:bidet|toothbrush|shaver|heater)|spark plug|electrical tape"
        r"|sticker shock|no outlet|outlet (?:of|hole))\b",
    ),
    card(
        "hazard",
        "leak between tank and bowl",
        rf"\b{_WET}<3>(?:between|where)<2>(?:tank|cistern|bowl)(?:<2>(?:and|meets?|joins?"
        r"|touch\w+|connects?(?: to)?)<1>(?:bowl|pan|tank|cistern))?\b"
        rf"|\b{_WET}<5>(?:underneath|under|below) (?:the |my |our )?(?:tank|cistern)\b"
        r"|\btank[- ]to[- ]bowl<2>(?:leak\w*|drip\w*)\b|\bleak\w*<3>tank[- ]to[- ]bowl\b",
        "the gasket or bolts between them",
    ),
    card(
        "hazard",
        "leak at the tank bolts",
        rf"\b{_WET}<4>(?:tank |cistern )?bolts?\b|\bbolts?<4>(?:leak\w*|drip\w*|rust\w*"
        r"|corroded|wet|weep\w*|seep\w*)\b",
        "the bolts' washers",
        unless=r"\b(?:floor bolts?|closet bolts?|seat bolts?)\b",
    ),
    card(
        "hazard",
        "supply leak",
        rf"\b{_WET}<4>{_SUPPLY}\b|\b{_SUPPLY}(?: (?:is|was|has|keeps|that|started|to|the|under"
        rf"|below|the|toilet|tank|cistern)){{0,6}} (?:leak\w*|drip\w*|weep\w*|seep\w*|spray\w*"
        rf"|burst|split|broke\w*|wet|cracked)\b|\bwon't shut off at the wall\b"
        rf"|\b{_SUPPLY}<2>(?:won't"
        r"|wont|will not|doesn't|can't)<1>(?:close|shut|turn)\b|\bwater<3>(?:spraying"
        r"|gushing|squirting|shooting)\b|\b(?:water )?(?:won't|can't|cannot"
        r"|doesn't) (?:turn|shut) (?:the )?(?:water |supply )?off\b",
        "house pressure behind it",
        unless=r"\b(?:into|in) the bowl\b",
    ),
    card(
        "hazard",
        "stuck stop",
        r"\b(?:the|my|our|a)<1>(?:stop|shut ?-?off|angle stop|isolat\w+ valve|stop ?cock|stop tap)"
        r"(?: valve| tap)?(?: \w+){0,5} (?:stuck|seized|stiff|rusted|jammed|solid|won't (?:turn"
        r"|budge|move)|will not (?:turn|budge|move))\b",
        "a forced stop breaks with the supply behind it",
    ),
    card(
        "hazard",
        "injury",
        r"\b(?:cut|gashed|sliced|slashed)<3>(?:hand|finger|thumb|foot|leg|arm|wrist|myself|himself"
        r"|herself)s?\b|\bbleeding\b(?! (?:water|air|through|out|down|into))",
        "somebody is hurt",
    ),
    card(
        "hazard",
        "cracked tank",
        r"\b(?:crack(?:ed|s|ing)?|hairline(?: crack)?|chip(?:ped)?)<7>(?:tank|cistern"
        r"|porcelain)\b(?! lid)|\b(?:tank|cistern|porcelain)<2>(?:crack(?:ed|s)?|hairline"
        r"|broken in half|split)\b",
        "a cracked tank can burst",
        unless=r"\b(?:lid|seat|pipe|tube|flapper|overflow|handle) (?:is |was )?cracked\b"
        r"|\bcrack(?:ed|s)? (?:in |on )?(?:the )?(?:tank lid|overflow|flapper|lid|seat"
        r"|rubber)\b",
    ),
    card(
        "hazard",
        "cracked bowl",
        r"\bcrack(?:ed|s|ing)?<4>(?:bowl|pan|toilet|base|china)\b|\b(?:bowl|toilet"
        r"|pan)<2>(?:is |has )?<1>(?:crack(?:ed|s)?|split)\b",
        "a cracked bowl can give way",
        unless=r"\b(?:lid|seat|pipe|tube|flapper|overflow|handle)<1>cracked\b|\bcracked<2>(?:seat"
        r"|lid|flapper|tube|pipe|handle)\b",
    ),
    card(
        "hazard",
        "ceiling leak",
        rf"\b(?:{_WET}|through|stain\w*)<5>(?:ceiling|downstairs|(?:floor|room|apartment"
        rf"|flat|unit|neighbou?r\w*) below)\b|\b(?:ceiling|downstairs)<4>(?:{_WET}"
        r"|stain\w*)\b",
        "water is already in the building",
        unless=r"\b(?:toilet|bathroom|one|bath|powder room)<1>(?:is )?downstairs\b"
        r"|\bdownstairs<1>(?:toilet|bathroom|bath|one|powder|half|tank)\b"
        r"|\bceiling (?:height|fan)\b",
    ),
    card(
        "hazard",
        "leak at the floor",
        rf"\b{_WET}<5>(?:{_BASE})\b|\b(?:{_BASE})<2>{_WET}\b|\b(?:leak\w*|seep\w*|ooz\w+"
        r"|drip\w*)<3>(?:the base|underneath the toilet|under the (?:toilet|bowl))\b"
        r"|\bfloor<4>(?:spongy|soft|rotten|rotting|soggy|sagging|bouncy)\b"
        r"|\b(?:tank|cistern)<3>(?:hanging off|coming off|loose on) the wall\b"
        r"|\bwax (?:ring|seal)<2>(?:leak\w*|bad|gone|failed|shot)\b|\btoilet (?:rocks"
        r"|wobbles|is loose|rocking)\b|\btoilet<2>(?:rocks|rocking|wobbl(?:e|es|ed|ing|y)|loose)\b"
        rf"|\bleaks? at the (?:floor|base|bottom)\b|\b{_WET}<5>(?:around|at|from|under"
        r"|by)<1>(?:base|foot)\b(?! of the tank)",
        "the seal to the drain, not the tank's",
        unless=r"\bseat<4>(?:wobbl\w+|loose)\b",
    ),
    card(
        "hazard",
        "water on the floor",
        rf"\b(?:leak\w*|drip\w*|water|puddles?|pool\w*|wet|seep\w*|drops)<4>{_FLOOR}\b"
        rf"|\b{_FLOOR}<2>(?:wet|soaked|damp|flooded|wat(?:er|ery)|puddle)\b|\bflood(?:ed"
        r"|ing)?\b(?! (?:insurance|light))|\ball over the (?:floor|bathroom|place)\b"
        r"|\bwater<3>under the toilet\b|\bpuddles?\b|\bwater<2>everywhere\b",
        "water where it should not be",
        unless=r"\bflood(?:ed)? (?:the )?(?:bowl|market)\b"
        r"|\b(?:big|great|year of the|summer of the|in the|after the|before the|since the) flood\b",
    ),
)
