"""What the shop's notes must teach a new hire. Each fact: common practice, no source.

Each fact names the note that tells it, and words that some section of it must have, in any order.
"""

from __future__ import annotations

import re

import pytest
from demonstration import shop

FACTS: dict[str, tuple[str, ...]] = {
    "seals of one look with other hinge widths do not interchange": (
        "measuring-the-hinge",
        r"look",
        r"hinge|ears",
        r"mm",
        r"not|never",
    ),
    "a 2 1/2 in opening is less common": (
        "two-inch-or-three-inch",
        r"2 1/2",
        r"less common|rare|seldom|odd",
    ),
    "2 1/2 in seals have wide ears": ("flapper-on-pegs", r"2 1/2", r"wide"),
    "3 in is a usual opening": ("measuring-the-opening", r"3 in", r"opening"),
    "a ring needs no pegs": ("ring-round-the-tube", r"no peg", r"own hinge"),
    "a ring asks for the right tube": (
        "measuring-the-overflow-tube",
        r"ring",
        r"tube",
        r"2 mm|width|thick",
    ),
    "a square tube takes a wider mount": ("measuring-the-hinge", r"square", r"wider|further apart"),
    "ears nearly always point up and rarely down": (
        "flapper-on-pegs",
        r"\bup\b",
        r"\bdown\b",
        r"nearly always|rare|seldom|most",
    ),
    "a clip or strap belongs to its own valve": (
        "clips-and-straps",
        r"clip|strap",
        r"own valve|its own|only",
    ),
    "a model's name outlives its valve": (
        "one-name-several-valves",
        r"name for decades",
        r"works inside",
    ),
    "3 in came in under an old name": (
        "one-name-several-valves",
        r"3 in",
        r"name",
        r"2 in|smaller",
    ),
    "large openings came with lower volumes": (
        "measuring-the-opening",
        r"3 in|larger? opening|wide opening",
        r"1\.6|less water|lower",
    ),
    "balls on a wire are the older system": (
        "ball-on-a-lift-wire",
        r"ball",
        r"older|oldest|before",
    ),
    "plain 2 in flappers are common since the late 1970s": (
        "which-system-in-which-years",
        r"flapper",
        r"1970s|seventies",
    ),
    "age never excludes ball or flapper": (
        "which-system-in-which-years",
        r"ball",
        r"flapper",
        r"age|either|both|alone",
    ),
    "canisters took the place of large flappers in newer models": (
        "ring-under-a-canister",
        r"canister",
        r"flapper",
        r"new|since|2000",
    ),
    "older toilets use 3.5 to 5 gallons": ("universal-seals", r"3\.5", r"\b5\b"),
    "some old ones use 7 gallons": ("universal-seals", r"\b7\b|seven", r"gallon|old"),
    "the part gives back the toilet's own volume": (
        "universal-seals",
        r"volume|gallons|water",
        r"own|made for|same",
    ),
    "floats and dials hold a flapper up longer or shorter": (
        "floats-and-adjusters",
        r"float|dial|foam",
        r"longer|shorter|sooner",
    ),
    "canisters and towers move straight up": ("chains", r"canister|tower", r"straight up"),
    "of these only the ring at the foot is changed": (
        "ring-under-a-canister",
        r"canister|tower",
        r"ring|seal",
        r"only|alone",
    ),
    "of a tipping bucket only the gasket is changed": (
        "tipping-bucket",
        r"bucket",
        r"gasket",
        r"only|alone",
    ),
    "pushed and screwed gaskets do not interchange": (
        "screwed-and-pushed-bucket-gaskets",
        r"push",
        r"screw|thread",
        r"not|cannot|neither",
    ),
    "low and tall bodies do not interchange": (
        "screwed-and-pushed-bucket-gaskets",
        r"tall",
        r"low|short",
        r"bod|bucket|gasket",
    ),
    "a tank may have two seals lifted in turn": (
        "two-seals-in-one-tank",
        r"two",
        r"rinse|rim",
        r"flush|bowl",
    ),
    "a bulb, a half ball or foam keeps a flapper up": (
        "floats-bulbs-and-foam",
        r"bulb",
        r"half ball",
        r"foam",
    ),
    "early black rubber sheds colour with age": (
        "what-colour-tells",
        r"black",
        r"age|old|years",
        r"finger|hand|colour",
    ),
    "soft coloured rubber fades, then its edge lifts": (
        "what-colour-tells",
        r"colour|red|fade",
        r"edge",
        r"lift|curl",
    ),
    "hard plastic was followed by rubber": (
        "early-hard-plastic-and-later-rubber",
        r"hard|stiff",
        r"plastic",
        r"rubber",
        r"today|later",
    ),
    "a universal suits many 3.5 gallon toilets, not all": (
        "universal-seals",
        r"universal",
        r"3\.5",
        r"not|never",
    ),
    "too much slack catches under the flapper": ("chains", r"slack", r"caught|catch", r"under"),
    "too little slack holds it open": ("chains", r"slack", r"little", r"hold"),
    "flappers hang up": ("a-flapper-that-hangs-up", r"flapper", r"hang|stick|stays? up"),
    "a straight lift has no chain to catch": ("chains", r"straight up", r"chain"),
    "a photograph inside the tank helps": (
        "a-photograph-that-helps",
        r"photograph|picture",
        r"tank",
        r"inside|above",
    ),
    "the number in the tank, not the bowl's": (
        "the-number-on-the-bowl",
        r"number",
        r"bowl",
        r"tank",
    ),
    "the date stamp helps": ("numbers-and-dates-in-the-tank", r"date|stamp", r"tank|lid"),
    "the old part's number helps": ("reading-an-old-seal", r"number", r"old seal|old part|moulded"),
}


def told(note: str, words: tuple[str, ...]) -> list[str]:
    """The sections of a note that have all the words."""
    texts = {
        slug: " ".join(sentence.text for sentence in section.sentences)
        for slug, section in shop().notes[note].sections.items()
    }
    return [
        slug
        for slug, text in texts.items()
        if all(re.search(word, text, re.IGNORECASE) for word in words)
    ]


@pytest.mark.parametrize("fact", FACTS)
def test_a_note_tells_it(fact: str) -> None:
    note, *words = FACTS[fact]
    assert told(note, tuple(words)), fact
