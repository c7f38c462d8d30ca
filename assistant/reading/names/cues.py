"""Where a number stands, by the words round it: in the tank, on the old seal, on the bowl."""

from __future__ import annotations

import re

from assistant.reading.names.letter import Letter

SEAL = (
    r"(?:flappers?|seals?|balls?|gaskets?|washers?|discs?|disks?|rubber|plungers?|stoppers?|rings?"
    r"|old (?:one|part|piece)|the part)"
)
_TANK = r"(?:tank|cistern|lid|cover)"
_STRAIGHT = r"(?:(?! for | fits? | to | in my |[;]|, (?:and|but|my|the)| but ).){0,60}"
_SAYING = (
    r"(?:says?|saying|reads?|reading|stamp\w*|mark\w*|mould\w*|molded|emboss\w*|cast|print\w*"
    r"|engraved"
    r"|number|numbered|no\b\.?|#|code|has|with|is)"
)
_SEAL_BEFORE = re.compile(
    rf"\b{SEAL}\b(?!\s*(?:for|fits?|to)\b)((?=(?:[^,]|, (?:which|that|it|number|no|part|mark"
    rf"|stamp)){{0,60}}$)"
    rf"(?={_STRAIGHT}(?<!\w){_SAYING}){_STRAIGHT})$"
)
_SEAL_AFTER = re.compile(
    rf"[^,;]{{0,40}}?\b(?:on|in|of|from|off|into)\s+(?:the|my|its|our)\s+(?:\w+\s+){{0,2}}?{SEAL}\b"
)
_TANK_BEFORE = re.compile(rf"\b{_TANK}\b({_STRAIGHT})$")
_TANK_AFTER = re.compile(
    rf"[^,;]{{0,40}}?\b(?:on|in|inside|under|underside|beneath|within|of)\s+(?:of\s+)?"
    rf"(?:the|my|its|our)\s+(?:\w+\s+){{0,3}}?{_TANK}\b|\s*\(?(?:tank|cistern)\b(?=\s*[,)])"
)
_BOWL = r"(?:bowl|seat|base|foot|pedestal)"
_BOWL_BEFORE = re.compile(
    rf"(?:\b(?:on|under|behind|of|between|near|by|beneath|below|at)\s+(?:the\s+|my\s+|its\s+)?"
    rf"(?:(?:back|rear|side)\s+of\s+the\s+)?(?:toilet\s+)?{_BOWL}\b"
    rf"|\b(?:bowl|base)\s+(?:itself\s+)?(?:number|says|reads|is|has|stamp\w*"
    rf"|mark\w*))({_STRAIGHT})$|\bbowl[\s\"':-]*()$"
)
_BOWL_AFTER = re.compile(
    r"[^,;]{0,40}?\b(?:on|under|behind|between|near|beneath|below|at)\s+(?:the\s+|my\s+|its\s+)?"
    rf"(?:(?:back|rear|side)\s+of\s+the\s+)?(?:toilet\s+)?{_BOWL}\b"
)
_PART_LABEL = re.compile(
    r"\b(?:part|item|catalog(?:ue)?|stock|spare|sku|p/n|pn)\b[\s(]*(?:number|no\.?|num\.?|nr\.?|#)?"
    r"[\s:#=\"'-]*(?:(?:is|was|says|of)[\s:#\"']+)*$"
)
_MODEL_LABEL = re.compile(
    r"\b(?:model|mod)\b\.?[\s(]*(?:number|no\.?|num\.?|nr\.?|#)?"
    r"[\s:#=\"'-]*(?:(?:is|was|says)[\s:#\"']+)*$"
)
_DIRECT = re.compile(
    r"(?:\b(?:model|number|numbers|nr|num|code|part|item|sku|stamped|stamp|marked|marking|moulded"
    r"|molded|embossed|cast|printed|imprinted|engraved|says|reads|saying|reading)\b|\bno\b\.?|#)"
    r"[\s:#=\"'(-]*(?:(?:number|no\.?|is|was|says|reads|it|as|with|the|of|on)[\s:#=\"'(-]+){0,3}$"
)
_LOOSE = re.compile(
    r"\b(?:model|number|numbers|nr|num|code|stamp\w*|mark(?:ed|ing|ings|s)?|mould\w*|molded"
    r"|emboss\w*"
    r"|cast|print(?:ed)?|imprint\w*|engraved|says?|saying|reads?|reading|part|item|sku|old one"
    r"|on it|tag|label|sticker"
    r"|(?:inside|in|under|of) (?:the |my |its )?(?:\w+ )?(?:tank|lid|cistern|clay"
    r"|porcelain))\b|\bno\.? ?$|#"
)
_STANDS = re.compile(
    r"\s+is (?:what(?:'s| is| it says)|the (?:number|one)) (?:on|in|under|inside)\b"
)


def place_of(letter: Letter, start: int, end: int) -> str | None:
    """'tank', 'seal' or 'bowl' where a number is said to stand there; else 'model' or 'part'
    where it is called so; else `None`."""
    lead, rest = letter.before(start, end), letter.after(start, end)
    reach = {
        "tank": _TANK_BEFORE.search(lead),
        "seal": _SEAL_BEFORE.search(lead),
        "bowl": _BOWL_BEFORE.search(lead),
    }
    near = {place: len(found[1] or "") for place, found in reach.items() if found}
    for place, pattern in (("tank", _TANK_AFTER), ("seal", _SEAL_AFTER), ("bowl", _BOWL_AFTER)):
        if found := pattern.match(rest):
            near[place] = min(near.get(place, 999), len(found[0]))
    if "tank" in near and _seal_in_tank(lead):
        return "seal"
    if near and not (_PART_LABEL.search(lead) and min(near, key=lambda p: near[p]) == "seal"):
        return min(near, key=lambda p: near[p])
    if _PART_LABEL.search(lead):
        return "part"
    return "model" if _MODEL_LABEL.search(lead) else None


def _seal_in_tank(lead: str) -> bool:
    """'The flapper inside the tank says ...': the number is the flapper's."""
    return bool(
        re.search(
            rf"\b{SEAL}\s+(?:that is |that's )?(?:in|inside|from|at)\s+(?:\w+\s+){{0,3}}{_TANK}",
            lead,
        )
    )


def cued(letter: Letter, start: int, end: int) -> bool:
    """Whether the sentence says that a number is meant."""
    rest = letter.after(start, end)
    return bool(
        _LOOSE.search(letter.before(start, end)) or _LOOSE.search(rest) or _STANDS.match(rest)
    )


def labelled(letter: Letter, start: int, end: int) -> bool:
    """Whether the words right before say that a number comes."""
    return bool(_DIRECT.search(letter.before(start, end)))
