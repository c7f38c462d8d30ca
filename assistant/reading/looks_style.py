"""The loose word a customer has for the part. It says little about its real style."""

from __future__ import annotations

from assistant.reading.lexicon import Card, card

_FILL = (
    r"\bball[- ]?cocks?\b|\bfloat ball\b|\bball float\b|\bball (?:valve|joint"
    r"|bearing)\b|\bon (?:an?|the) (?:end of (?:an?|the) )?(?:long )?arm\b"
    r"|\bfloating ball\b"
)
_THE = (
    r"\b(?:the|a|an|my|this|that|new|old|replacement|rubber|tank|which|what|your|our"
    r"|flush valve|right|correct|red|black|blue|no|any|inch|canister|tower|flapper"
    r"|inner|bottom|same|two|both|2|wants?|needs?) "
)

STYLE: tuple[Card, ...] = (
    card(
        "style_word",
        "flapper",
        r"\bfl+app?ers?\b|\bflappe\b|\bfla[pb]ers?\b",
        "the word for nearly any seal",
    ),
    card(
        "style_word",
        "flap",
        r"\b(?:flush |rubber |the |a |my )flaps?\b|\bflap valves?\b",
        "the same, cut short",
    ),
    card(
        "style_word",
        "stopper",
        r"\bstoppers?\b",
        "what stops the water",
        unless=r"\b(?:sink|tub|bath|door)\b",
    ),
    card(
        "style_word",
        "plug",
        rf"{_THE}plugs?\b(?! (?:in|it|the)\b)|\btoilet plug\b",
        "what plugs the hole",
        unless=r"\b(?:sink|tub|bath|electric\w*|socket|outlet|wall|drain plug)\b",
    ),
    card(
        "style_word",
        "bulb",
        r"\b(?:rubber |tank |black |red |the |a )bulbs?\b",
        "a tank ball",
        unless=r"\blight ?bulb\b",
    ),
    card(
        "style_word",
        "ball",
        r"\b(?:tank |flush |rubber |stopper |black |red |seal |the |a |flush valve "
        r"|valve )balls?\b",
        "a tank ball",
        unless=_FILL + r"|\bfill valve\b|\bfloats?\b|\bball game\b",
    ),
    card(
        "style_word",
        "canister",
        r"\bcanisters?\b|\bcannisters?\b|\bcanaster\b",
        "a canister or its seal",
    ),
    card(
        "style_word",
        "tower",
        r"\b(?:flush )towers?\b|\b(?:the|a|this|my|that) towers?\b|\btower (?:seal|type"
        r"|style|gasket|valve)\b",
        "a tower or its seal",
    ),
    card(
        "style_word",
        "disc",
        r"\bdis[ck]s?\b|\bdiscus\b",
        "a flat seal",
        unless=r"\b(?:brake|slipped)\b",
    ),
    card("style_word", "diaphragm", r"\bdiaphra\w+\b", "a sheet that lifts the water"),
    card(
        "style_word",
        "bucket",
        r"\b(?:tipping |tilting |flush |tilt )buckets?\b|\bbucket (?:that|which|type|style"
        r"|flush|seal|tips|tilts)\b",
        "a bucket that tips",
    ),
    card(
        "style_word",
        "gasket",
        r"\bgaskets?\b",
        "a flat ring",
        unless=r"\b(?:tank[- ]to[- ]bowl|wax|spud|bowl|tank bolts?)<1> ?gasket\b",
    ),
    card(
        "style_word",
        "washer",
        r"\bwashers?\b",
        "a flat ring",
        unless=r"\b(?:dish ?washer|washing|bolts?|tank[- ]to[- ]bowl|faucet|tap"
        r"|pressure washer)\b",
    ),
    card(
        "style_word",
        "seal",
        rf"{_THE}(?:\w+ )?seals?\b(?! (?:properly|well|right|it|the|off|up|tight\w*)\b)"
        r"|\bseals? (?:kit|ring|for)\b|\b(?:flush valve|canister|drop valve) seals?\b",
        "the word of the trade",
        unless=r"\b(?:wax|tank[- ]to[- ]bowl|unopened)<1> ?seals?\b",
    ),
    card("style_word", "dome", r"\bdomes?\b", "a half ball"),
)
