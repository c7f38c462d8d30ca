"""What customers say their tank and seal look like. Trade words: common practice, no source."""

from __future__ import annotations

import pytest
from hypothesis import given

from assistant.reading.looks import read_looks
from assistant.reading.text import Text
from tests.phrases import LETTERS, grows_with_length, in_line, stands_at_its_place

LOOKS = [
    ("the ears point up", "ears=up"),
    ("the little arms face upwards", "ears=up"),
    ("ears on it that point downward", "ears=down"),
    ("hooks on the bottom", "ears=down"),
    ("hooks at the top", "ears=up"),
    ("it has no ears", "ears=none"),
    ("There are no ears on it", "ears=none"),
    ("it doesn't have ears", "ears=none"),
    ("ears up", "ears=up"),
    ("ears: down", "ears=down"),
    ("it has two ears", "ears=up|down"),
    ("not sure if it has ears", "perhaps ears=up|down"),
    ("the ears broke off", "ears=up|down"),
    ("it has a ring that goes over the overflow pipe", "mount=ring"),
    ("a ring which slips round the tube", "mount=ring"),
    ("with a collar around the overflow tube", "mount=ring"),
    ("it slips over the overflow tube", "mount=ring"),
    ("it's the ring type", "mount=ring"),
    ("not the ring kind", "not mount=ring"),
    ("hooks on two pegs on the side of the overflow pipe", "mount=pegs"),
    ("it hooks onto two little pins on the side", "mount=pegs"),
    ("snaps on the two posts", "mount=pegs"),
    ("two plastic knobs either side hold it", "mount=pegs"),
    ("it clips to the flush valve", "mount=clip"),
    ("held by a clip", "mount=clip"),
    ("a rubber strap holds it", "material=rubber; mount=strap"),
    ("ball on a brass rod", "mount=wire"),
    ("there's a lift wire screwed into the ball", "mount=wire"),
    ("brass rod screws into the ball", "mount=wire"),
    ("rubber ball on a wire", "material=rubber; mount=wire"),
    ("the float ball on the arm is brass", ""),
    ("the ballcock was replaced", ""),
    ("canister style", "mount=canister"),
    ("it has a tall tower in the middle", "mount=tower"),
    ("it screws onto the valve", "mount=thread"),
    ("the whole thing lifts straight up", "lift=straight up"),
    ("it's hinged on one side", "lift=hinged"),
    ("it swings up like a trap door", "lift=hinged"),
    ("a bucket that tips over", "lift=tilts; tank_kind=tipping"),
    ("does it have ears?", ""),
    ("do you have one with ears pointing up?", ""),
    ("I want a red one", ""),
    ("I need a red flapper", "perhaps colour=red"),
    ("the old flapper is red", "colour=red"),
    ("it's a blue rubber seal", "colour=blue; material=rubber"),
    ("black rubber thing", "colour=black; material=rubber"),
    ("my toilet is red", ""),
    ("the rubber turned black", "material=rubber"),
    ("seal colour: yellow", "colour=yellow"),
    ("Ear to ear 82 mm. They point to the lid.", "ears=up"),
    ("ears 82 mm outside to outside and they stand up", "ears=up; ears=up|down"),
    ("pegs 3.25 inches apart and upwards", "ears=up; mount=pegs"),
    ("pegs upturned", "ears=up; mount=pegs"),
    ("no float", "float=no"),
    ("it has a float on the chain", "float=yes"),
    ("foam float clipped to the chain", "float=yes"),
    ("the float cup is stuck", ""),
    ("it has a small bulb underneath", "shape=small bulb"),
    ("half ball shape", "shape=half ball"),
    ("it's like half a tennis ball", "shape=half ball"),
    ("flat disc", "shape=flat"),
    ("flat red washer", "colour=red; shape=flat"),
    ("foam filled", "filling=foam"),
    ("it's hollow", "filling=hollow"),
    ("air filled", "filling=air"),
    ("made of silicone", "material=silicone"),
    ("soft rubber", "material=rubber"),
    ("hard plastic with a rubber washer", "material=hard plastic; material=rubber"),
    ("one piece toilet", "pieces=1"),
    ("1-piece", "pieces=1"),
    ("two piece", "pieces=2"),
    ("the tank and bowl are one", "pieces=1"),
    ("two flappers inside", "seals_in_tank=2"),
    ("two rubber seals inside", "material=rubber; seals_in_tank=2"),
    ("only one flapper", "seals_in_tank=1"),
    ("dual flush with two buttons", "tank_kind=dual-flush"),
    ("big and small button", "tank_kind=dual-flush"),
    ("pressure assist", "tank_kind=pressure"),
    ("it makes a loud whoosh", "tank_kind=pressure"),
    ("bucket that tips", "tank_kind=tipping"),
    ("the works sit in a sealed black tub", "tank_kind=pressure"),
    ("it goes off like a jet", "tank_kind=pressure"),
    ("tucked away behind a panel", "tank_kind=concealed"),
    ("only a button plate to see", "tank_kind=concealed"),
    ("a button in the lid that is split in two", "tank_kind=dual-flush"),
    ("half and whole flush", "tank_kind=dual-flush"),
    ("all one lump of china", "pieces=1"),
    ("moulded with the bowl", "pieces=1"),
    ("you pull a knob upwards", ""),
    ("tank in the wall", "tank_kind=concealed"),
    ("the hidden cistern", "tank_kind=concealed"),
    ("square overflow tube", "overflow=square"),
    ("round overflow pipe", "overflow=round"),
    ("there is no overflow tube", "overflow=none"),
    ("it has a dial on it", "adjustable=yes"),
    ("adjustable flapper", "adjustable=yes"),
    ("not adjustable", "adjustable=no"),
    ("it has never been replaced", "valve_original=yes"),
    ("all original", "valve_original=yes"),
    ("original flush valve", "valve_original=yes"),
    ("I think it's all original", "perhaps valve_original=yes"),
    ("I'm the original owner", ""),
    ("previous owner put in a new flush valve", "valve_replaced=yes"),
    ("I replaced the whole flush valve last year", "valve_replaced=yes"),
    ("rebuilt the tank in 2010", "valve_replaced=yes"),
    ("replaced all the guts", "valve_replaced=yes"),
    ("new tower kit", "valve_replaced=yes"),
    ("I replaced the flapper twice", ""),
    ("replaced the fill valve", ""),
    ("Nobody ever changed the flush valve", "not valve_replaced=yes; valve_original=yes"),
    ("No one has touched the flush valve", "valve_original=yes"),
    ("I never replaced the flush valve", "not valve_replaced=yes; valve_original=yes"),
    ("I replaced the flapper and the fill valve", ""),
    ("should I replace the flush valve?", ""),
    ("wax ring needs replacing", ""),
    ("there is a ring in the bowl", ""),
    ("the toilet seat is red", ""),
    ("I put a brick in the tank", ""),
    ("I think it's the red one", "perhaps colour=red"),
    ("stopper ball", ""),
    ("the flapper flips up on a hinge", "lift=hinged"),
    ("It has pegs, no ring", "mount=pegs; not mount=ring"),
    ("without pegs", "not mount=pegs"),
    ("Ring? no", "not mount=ring"),
    # as letters come
    (
        "I've got a Velmora from about 1988, white, two piece. The flapper in it is red "
        "with a hard plastic frame and the two arms clip onto the little posts on either "
        "side of the overflow. The old one fell apart in my hands. I bought one at the "
        "big box store and it wont seat right, water keeps trickling. Can you tell me "
        "which one I need?? Thanks so much,",
        "colour=red; ears=up|down; material=hard plastic; mount=pegs; pieces=2",
    ),
    (
        "We had a plumber out who said its the flapper but he couldn't get one. It isn't "
        "a normal flapper, it's more like a rubber ball with a rod thru it. The rod goes "
        "up to an arm. tank lid has no name on it.",
        "material=rubber; mount=wire; shape=full ball",
    ),
    (
        "The cistern is hidden behind the tiles with a plate that has a big and small "
        "button. Water constantly dribbles down the back of the pan. Is this the seal or "
        "the inlet valve?",
        "tank_kind=concealed; tank_kind=dual-flush",
    ),
    (
        "Ive been thru 3 flappers. None of them fit because my overflow pipe is square-"
        "ish and the ring won't go over it!!!!!",
        "overflow=square",
    ),
    (
        "I have an older toilet where tank and bowl are all one unit. Low boy. the seal "
        "is a big flat thing about the size of a saucer and it lifts straight up on a "
        "metal rod.",
        "lift=straight up; mount=wire; pieces=1",
    ),
    (
        "The canister in mine has a red seal at the bottom. The local store sold me a "
        "yellow one, which leaks worse. Which color is right?",
        "colour=red; mount=canister; perhaps colour=yellow",
    ),
    (
        "its the kind without a chain, theres two wires that hook together and a rubber "
        "plunger ball on the end",
        "material=rubber; mount=wire",
    ),
    (
        "Hello. Mine is not a dual flush. Just one handle on the left. It does NOT have "
        "pegs. It slides on the pipe.",
        "mount=ring; not mount=pegs; not tank_kind=dual-flush",
    ),
    (
        "Toilet: Velmora Year: 1992 Ears: none Float: no Ring: yes Overflow: round "
        "Problem: runs at night",
        "ears=none; float=no; mount=ring; overflow=round",
    ),
    (
        "Brand - not sure. Hole size - maybe 2in. flapper type - black rubber w/ hooks. "
        "Overflow pipe - square plastic",
        "colour=black; material=rubber; overflow=square",
    ),
    (
        "Hey I bought the universal flapper with the ring that goes over the overflow "
        "pipe but mine has pegs, so I cut the ring off like the package says, still leaks",
        "mount=pegs; perhaps mount=ring",
    ),
    (
        "no the flapper doesn't have a float. it's hollow underneath, and there's a hole "
        "in the side",
        "filling=hollow; float=no",
    ),
    (
        "hello. flapper is red, 3 inch i think, has the 2 ears but no ring thing. leaks "
        "into bowl slow. thx",
        "colour=red; ears=up|down; not mount=ring",
    ),
    (
        "Need one of those rubber things that go in the bottom of the tank, it slides "
        "down over the pipe, no hooks",
        "mount=ring; perhaps material=rubber",
    ),
    (
        "one piece toilet, low tank, square overflow tube, flapper has two little arms "
        "that clip on to pegs",
        "ears=up|down; mount=pegs; overflow=square; pieces=1",
    ),
    (
        "it has a white plastic float on top of the fill valve and a flapper with a foam "
        "float on the chain",
        "float=yes",
    ),
    (
        "Is it supposed to have a ring? mine just has the two hooks on the sides",
        "ears=up|down",
    ),
    (
        "there's a half round rubber dome thing that covers the hole. hollow underneath. "
        "hinged on the overflow pipe with a ring that goes all the way around",
        "filling=hollow; lift=hinged; material=rubber; mount=ring; shape=half ball",
    ),
]


@pytest.mark.parametrize(("said", "expected"), LOOKS)
def test_a_look_is_read_as_it_is_said(said: str, expected: str) -> None:
    assert in_line([f for f in read_looks(Text(said)) if f.name != "style_word"]) == expected


@pytest.mark.parametrize(
    ("said", "words"),
    [
        ("I need a flapper", ["flapper"]),
        ("need a flaper", ["flapper"]),
        ("the stopper is gone", ["stopper"]),
        ("the tank ball", ["ball"]),
        ("a rubber plug", ["plug"]),
        ("plug it in", []),
        ("canister gasket", ["canister", "gasket"]),
        ("the float ball on an arm", []),
        ("a ball valve under the sink", []),
        ("a wax gasket", []),
        ("it does not seal", []),
        ("a bucket that tips", ["bucket"]),
        ("I put a bucket under it", []),
        ("the dishwasher", []),
        ("which disc?", ["disc"]),
        ("the tower seal", ["tower"]),
    ],
)
def test_the_loose_word_for_the_part_is_kept(said: str, words: list[str]) -> None:
    facts = [f for f in read_looks(Text(said)) if f.name == "style_word"]
    assert sorted(f.choices[0] for f in facts) == words
    assert all(f.sure for f in facts)


def test_a_fact_cites_its_words_and_place() -> None:
    (fact,) = read_looks(Text("Mine has a RING that goes over the overflow pipe."))
    assert (fact.words, fact.start, fact.end) == ("RING that goes over the overflow pipe", 11, 48)


def test_what_is_masked_is_not_read() -> None:
    assert read_looks(Text("ears up", ((0, 7),))) == []


@given(LETTERS)
def test_whatever_is_written_the_words_stand_at_their_place(letter: str) -> None:
    assert all(stands_at_its_place(letter, fact) for fact in read_looks(Text(letter)))


def test_a_letter_of_200_000_characters_is_read_to_its_end() -> None:
    assert grows_with_length(read_looks, "It has no ears, but a ring that goes over the pipe. ")
