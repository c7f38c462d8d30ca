"""Whether a phrase is said, denied or doubted, and where a writer takes something back."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.reading.stance import Stance, corrections, stance
from assistant.reading.text import Text

DENIED = [
    "the flapper in this old tank of mine has no\n[ears]",
    "no [ears]",
    "it has no [ears]",
    "without [pegs]",
    "it doesn't have a [float]",
    "it does not have any little plastic [ears]",
    "not the [ring] kind",
    "never had a [float]",
    "neither [ears] nor pegs",
    "neither ears nor [pegs]",
    "there isn't any [ring]",
    "there aren't any [ears]",
    "[ears]? none",
    "[ears]: no",
    "[ears] - none",
    "no ears, pegs or [clips]",
    "no [ears], pegs or clips",
    "it does not have ears or a [float]",
    "it isn't [hinged]",
    "it's not held on by a [clip]",
    "it doesn't slip over the [tube]",
    "no sign of any [ears]",
    "I don't see any [ears]",
    "instead of [pegs] it has a ring",
    "it is not [leaking]",
    "it doesn't [leak]",
    "it no longer [leaks]",
    "it never [leaks]",
    "stopped [leaking]",
    "it isn't [leaking] from the bolts",
    "it lacks [ears]",
    "not a [ring], pegs",
    "it isn't the [ball] type",
    "nothing like a [ring]",
    "the [ears] aren't there",
    "not the [canister] but a flapper",
    "it has no [ears]. it is red",
    "[ring]? no",
    "hasn't got any [ears]",
    "not the red [ring]",
    "[ears]: none float: no",
]
DOUBTED = [
    "not sure if it has [ears]",
    "no idea if it has [ears]",
    "I think it has [ears]",
    "it has [ears] I think",
    "maybe [ears]",
    "it might be the [ring] kind",
    "not sure, possibly a [ring]",
    "it has a [ring] or something",
    "it looks like it could be a [ring]",
    "supposedly [original]",
    "if I remember right it has [ears]",
    "I guess it has [ears]",
    "it has [ears]?",
    "[ears] ?",
    "it has [ears], not sure which way",
    "could be a [ring]",
    "I believe it's the [original]",
    "it has [ears] (I think)",
    "I don't remember if there was a [ring]",
    "don't know whether it is [hinged]",
    "it has a [ring], maybe",
    "it [leaks] I guess",
    "it was [original] or so I'm told",
]
BOTH = [
    "I don't think it has [ears]",
]
SAID = [
    "it has no\n[ears] up",
    "[ears]? yes",
    "float: no [ring]: yes",
    "it not only has [ears] but a float",
    "no float but it has [ears]",
    "no float, it has [ears]",
    "no float, two [ears] on the side",
    "it does not fit the two [pegs]",
    "I can't get the [ears] off",
    "the flapper with [ears] won't close",
    "I'm pretty sure it has [ears]",
    "I think it is from 1994, it has [ears]",
    "not sure of the year but it has [ears]",
    "I do not know the model. It has [ears]",
    "ears: no\n[float]: yes",
    "there is no model number on the [ears]",
    "no problem, it has [ears]",
    "No, it has [ears]",
    "not a flapper but the [canister] kind",
    "it has [ears] and no float",
    "the [pegs] are not broken",
    "ears: no, [float]: yes",
    "no idea about the year, [ears] up",
]


def of_marked(marked: str) -> Stance:
    """The stance of the phrase that stands in brackets."""
    start, end = marked.index("["), marked.index("]") - 1
    return stance(Text(marked.replace("[", "").replace("]", "")), start, end)


@pytest.mark.parametrize("marked", DENIED)
def test_a_denial_reaches_what_it_governs(marked: str) -> None:
    assert of_marked(marked) == Stance(negated=True, doubted=False)


@pytest.mark.parametrize("marked", DOUBTED)
def test_a_doubt_is_heard_before_and_after(marked: str) -> None:
    assert of_marked(marked) == Stance(negated=False, doubted=True)


@pytest.mark.parametrize("marked", BOTH)
def test_one_may_doubt_that_a_thing_is_not_there(marked: str) -> None:
    assert of_marked(marked) == Stance(negated=True, doubted=True)


@pytest.mark.parametrize("marked", SAID)
def test_denial_and_doubt_stop_where_another_thought_begins(marked: str) -> None:
    assert of_marked(marked) == Stance(negated=False, doubted=False)


@pytest.mark.parametrize(
    ("letter", "taken_back"),
    [
        ("It's 2 inch. No wait, 3 inch. Ears up.", ["No wait, 3 inch."]),
        ("It is 2 inches, sorry, I meant 3 inches.", ["sorry, I meant 3 inches."]),
        ("Correction: it's the ring kind.", ["Correction: it's the ring kind."]),
        ("It's red. Actually it is blue. It leaks", ["Actually it is blue."]),
        ("2 inch, scratch that, 3 inch opening", ["scratch that, 3 inch opening"]),
        ("two inch - I mean three inch", ["I mean three inch"]),
        ("2 inch, make that 3 inches", ["make that 3 inches"]),
        ("EDIT: it says 1994", ["EDIT: it says 1994"]),
        ("oops, wrong. It is a 1987 one. Ears up", ["oops, wrong. It is a 1987 one."]),
        ("hold on, it's 3 inch", ["hold on, it's 3 inch"]),
        ("Wait. It's three inch.", ["Wait. It's three inch."]),
        ("It's red. No, sorry, blue. Wait, it's green.", ["No, sorry, blue.", "Wait, it's green."]),
        ("I want to make that work", []),
        ("Sorry to bother you but it runs", []),
        ("I meant to say thanks", []),
        ("Hold on to the handle", []),
        ("It actually is fine", []),
    ],
)
def test_a_correction_reaches_to_the_end_of_its_sentence(
    letter: str, taken_back: list[str]
) -> None:
    assert [letter[c.start : c.end] for c in corrections(Text(letter))] == taken_back


BAG = ["no", "not sure", "I think", "ears", ",", ".", "?", "or", "but", "wait", "sorry", "it", "\n"]
WORDS = st.lists(st.sampled_from(BAG), max_size=30).map(" ".join)


@given(st.one_of(st.text(max_size=100), WORDS), st.integers(0, 100), st.integers(0, 100))
def test_every_place_has_a_stance(letter: str, one: int, other: int) -> None:
    start, end = sorted((min(one, len(letter)), min(other, len(letter))))
    assert isinstance(stance(Text(letter), start, end), Stance)


@given(st.one_of(st.text(max_size=100), WORDS))
def test_corrections_lie_in_the_letter_one_after_another(letter: str) -> None:
    found = corrections(Text(letter))
    places = [place for c in found for place in (c.start, c.end)]
    assert places == sorted(places)
    assert all(0 <= c.start < c.end <= len(letter) for c in found)
