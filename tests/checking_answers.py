"""True answers, written by hand, whose claims stand beside them.

A slot such as `[part:SL-2044]` is a word that can be exchanged; the claims name slots, and
`checking_truth` knows by the hand-written table whether such a claim holds. A value that
stands elsewhere in the answer is given as `=value`.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

SLOT = re.compile(r"\[(\w+):([^\]]*)\]")


@dataclass(frozen=True)
class Said:
    """A sentence with slots, and its claims: 'fits part model years; price =SL-2044 money'."""

    template: str
    claims: str = ""
    joins: str = " "  # what stands before it

    @property
    def text(self) -> str:
        """The sentence itself."""
        return SLOT.sub(r"\2", self.template)


@dataclass(frozen=True)
class Answer:
    """Sentences in their order."""

    said: tuple[Said, ...]

    @property
    def text(self) -> str:
        """The whole answer as Markdown."""
        return "".join(s.joins + s.text for s in self.said).strip()


def _answer(*said: tuple[str, ...]) -> Answer:
    return Answer(tuple(Said(_in_full(one[0]), *one[1:]) for one in said))


def _in_full(template: str) -> str:
    """`@A` and `@B` stand for the two spans of years that come up most."""
    return template.replace("@A", "made from 1986 to 1993").replace("@B", "made from 1991 to 2004")


BULLET, PARAGRAPH = "\n- ", "\n\n"
ORIGINAL = "if the flush valve is the original one"
HOLDS = ("All of this holds if the flush valve is the original one.", "", PARAGRAPH)
LETTER = (
    'My Tolver says "Zendrak tolvr" I think. The opening is 2 inch and the ears are 96 mm apart.'
)
NOTE = "Shut the water off at the stop below the tank before you lift the old seal out."

ANSWERS = (
    _answer(
        (f"**[part:SL-2044]** fits the [model:Zendrake Tolver] [years:@A], {ORIGINAL}.",
         "fits part model years"),
        ("It costs [money:$4.90] and is [stock:in stock].",
         "price =SL-2044 money; stock =SL-2044 stock"),
    ),
    _answer(
        ("The seal for your [model:Zendrake Tolver] [years:(1986 to 1993)] is **[part:SL-2041]**, a"
         " [size:2 in] flapper, as long as the valve has not been replaced.",
         "fits part model years; size part size"),
        ("Its ears point [point:up] and stand [span:95 mm] apart.",
         "ears =SL-2041 point; ear-span =SL-2041 span"),
        ("[part:SL-2044] fits it too.", "fits part =Zendrake_Tolver =1986-1993"),
    ),
    _answer(
        ("The [model:Zendrake Tolver] [years:made since 1994] takes **[part:SL-3010]**, "
         f"{ORIGINAL}.",
         "fits part model years"),
        ("[part:SL-3010] costs [money:$8.95] and is [stock:to order].",
         "price part money; stock part stock"),
    ),
    _answer(
        (f"You need [count:two] [part:SL-5010] for the [model:Zendrake Pallowick], {ORIGINAL}.",
         "fits part model; needs model count"),
    ),
    _answer(
        ("[part:SL-4010] fits the [model:Hulmorth Quisten] at the [position:main] valve and"
         " [part:SL-4020] at the [position:rinse] valve; the tank takes one of each.",
         "fits part model = position; fits part2 model = position2"),
        HOLDS,
    ),
    _answer(
        ("If your [model:Zendrake Tolver] was [years:@A], [part:SL-2041] fits; if"
         " it was [years:made since 1994], [part:SL-3010].",
         "fits part model years; fits part2 model years2"),
        HOLDS,
    ),
    _answer(
        ("Which seal fits the [model:Zendrake Tolver] depends on when it was made:", ""),
        ("[years:made from 1971 to 1985]: **[part:SL-2060]**",
         "fits part =Zendrake_Tolver years", "\n\n- "),
        ("[years:@A]: **[part:SL-2041]**, a [size:2 in] flapper",
         "fits part =Zendrake_Tolver years; size part size", BULLET),
        ("if it was [years:made since 1994], it takes [part:SL-3010], for a [size:3 in] opening.",
         "fits part =Zendrake_Tolver years; size part size", BULLET),
        HOLDS,
    ),
    _answer(
        ("[part:SL-2065] fits the [model:Zendrake Tolver] [years:@A], with this"
         " change: cut the ring off at the mark.", "changed part model years"),
        HOLDS,
    ),
    _answer(
        (f"[part:SL-2065] fits the [model:Hulmorth Tolver] [years:@B], {ORIGINAL}.",
         "changed-next part model years"),
        ("[part:SL-2065] fits with this change: cut the ring off at the mark.",
         "changed part =Hulmorth_Tolver =1991-2004"),
    ),
    _answer(
        ("[part:SL-2070] could fit the [model:Zendrake Tolver] [years:@A], going"
         " by the measurements alone.", "could part model years"),
    ),
    _answer(
        ("[part:SL-2046] looks the same but does not fit the [model:Zendrake Tolver] [years:@A]"
         ": its ears are [span:108 mm] apart, and the pegs of the Zendrake Tolver's"
         " valve [span:95 mm].",
         "not part model years; ear-span part span; peg-span model years span2"),
    ),
    _answer(
        (f"[part:SL-2044] is the right seal for the [model:Hulmorth Tolver] [years:@B]"
         f", {ORIGINAL}.", "fits part model years"),
        ("Do not take [part:SL-2050].", "not part =Hulmorth_Tolver =1991-2004"),
        ("[part:SL-2075] will not seal there.", "not part =Hulmorth_Tolver =1991-2004"),
    ),
    _answer(
        ("The tables do not say whether [part:SL-2080] fits the [model:Zendrake Tolver] [years:@A]"
         ".", "unsaid part model years"),
    ),
    _answer(
        ("**[part:SL-2041]** replaces [part:SL-1980].", "replaces part part2"),
        ("It costs [money:$6.40] and is [stock:in stock].",
         "price =SL-2041 money; stock =SL-2041 stock"),
    ),
    _answer(
        ("[part:SL-1980] is [stock:no longer made]; [part:SL-2041] takes its place.",
         "stock part stock; replaces part2 part"),
    ),
    _answer(
        ("[part:SL-2044] closes every valve in our table that [part:SL-1980] fits.",
         "wherever part part2"),
        ("[part:SL-2041] fits wherever [part:SL-1980] did.", "wherever part part2"),
    ),
    _answer(
        ("The number [number:20-417] belongs to [part:SL-2041].", "number part number"),
        ("It is a [genuine:genuine] flapper by [maker:Zendrake].",
         "genuine =SL-2041 genuine; maker =SL-2041 maker"),
    ),
    _answer(
        ("[part:SL-2041] is [colour:red] and made of [material:silicone], comes in packs of"
         " [count:2] and has [float:a] float.",
         "colour part colour; material part material; pack part count; float part float"),
        ("It is for toilets that flush [volume:3.5 to 5 gallons].", "volume =SL-2041 volume"),
    ),
    _answer(
        ("[part:SL-2060] is a [style:ring flapper]; it slides over a round tube of [span:28 mm].",
         "style part style; ring part span"),
    ),
    _answer(
        ("The flush valve of the [model:Zendrake Tolver] [years:@A] has a [size:2"
         " in] opening, and its pegs point [point:up] and stand [span:95 mm] apart.",
         "valve-size model years size; pegs model years point; peg-span model years span"),
    ),
    _answer(
        ("The [model:Hulmorth Tolver] was [years:made up to 2004] and changed its flush valve in"
         " [year:1991].", "made model years; valve-changed model year"),
    ),
    _answer(
        ("The [model:Hulmorth Quisten] flushes [gallons:1.6 gallons] and takes [count:two] seals.",
         "flushes model gallons; needs model count"),
        ("The [model:Zendrake Tolver] in our table was not [years:made in 1965].",
         "not-made model years"),
    ),
    _answer(
        ("We know no seal for the [model:Hulmorth Braskel].", "no-seal model"),
        ("The [model:Hulmorth Braskel] is a [kind:pressure-assisted] toilet.", "kind model kind"),
    ),
    _answer(
        ('I read "[quote:Zendrak tolvr]" as [model:Zendrake Tolver].', "quote quote; model model"),
    ),
    _answer(
        ('You wrote "[quote:2 inch]" and "[quote:96 mm]".', "quote quote; quote quote2"),
        ("[part:SL-2070] could fit, going by the measurements alone.", "measured part"),
    ),
    _answer(
        (f"The [pieces:one-piece] [model:Zendrake Ovellan] takes [part:SL-3010], {ORIGINAL}.",
         "fits-pieces part model pieces"),
        ("SL-2041 suits the [pieces:two-piece] [model:Zendrake Ovellan].",
         "fits-pieces =SL-2041 model pieces"),
    ),
    _answer(
        (f"[part:SL-2041] or [part:SL-2044] goes in the [model:Zendrake Tolver] marked [mark:4102],"
         f" {ORIGINAL}.", "fits-mark part model mark; fits-mark part2 model mark"),
    ),
    _answer(
        (f"Some [model:Zendrake Tolver] tanks take [part:SL-3010], {ORIGINAL}.", "some part model"),
    ),
    _answer(
        (f"SL-2050 fits the [model:Zendrake Tolvern], {ORIGINAL}.", "fits =SL-2050 model"),
        (NOTE, ""),
        ("The flush valve of the [model:Zendrake Tolvern] has pegs that point [point:down].",
         "pegs model = point"),
    ),
)  # fmt: skip
