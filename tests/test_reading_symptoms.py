"""What a tank does wrong, and what is a hazard. Trade words: common practice, no source."""

from __future__ import annotations

import pytest
from hypothesis import given

from assistant.reading.hazard_cards import HAZARDS
from assistant.reading.lexicon import values_of
from assistant.reading.symptom_cards import SYMPTOMS as CARDS
from assistant.reading.symptoms import ANYWHERE, read_symptoms
from assistant.reading.text import Text
from tests.phrases import LETTERS, grows_with_length, in_line, stands_at_its_place

SYMPTOMS = [
    ("the lid slipped and I cut my hand on it", "hazard=injury"),
    ("my toilet keeps running", "symptom=runs on"),
    ("it runs constantly", "symptom=runs on"),
    ("the toilet runs after flushing", "symptom=runs on"),
    ("water won't stop running", "symptom=runs on"),
    ("the tank refills by itself every 20 minutes", "symptom=refills by itself"),
    ("it fills at night all by itself", "symptom=refills by itself"),
    ("phantom flushing", "symptom=refills by itself"),
    ("I hear it refill in the middle of the night", "symptom=refills by itself"),
    ("weak flush", "symptom=weak flush"),
    ("it only half flushes", "symptom=weak flush"),
    ("I have to flush twice", "symptom=weak flush"),
    ("the flapper won't stay up", "symptom=closes too soon"),
    ("it closes too soon", "symptom=closes too soon"),
    ("the flapper falls too fast", "symptom=closes too soon"),
    ("I have to hold the handle down", "symptom=must hold the handle"),
    ("you have to jiggle the handle", "symptom=must jiggle the handle"),
    ("the flapper keeps coming off the hinge", "symptom=comes off the hinge"),
    ("one ear broke off", "symptom=comes off the hinge"),
    ("the rubber is black and slimy", "symptom=rubber perished"),
    ("the flapper is warped", "symptom=rubber perished"),
    ("the rubber has gone soft", "symptom=rubber perished"),
    ("the flapper doesn't seat properly", "symptom=does not seat"),
    ("it won't seal", "symptom=does not seat"),
    ("water is running over the overflow tube", "symptom=water over the overflow"),
    ("there is a hissing sound", "symptom=hissing"),
    ("takes forever to fill", "symptom=slow fill"),
    ("fills slowly", "symptom=slow fill"),
    ("double flushes", "symptom=double flush"),
    ("the chain gets caught under the flapper", "symptom=chain caught"),
    ("chain is too long", "symptom=chain too long"),
    ("the chain is too short", "symptom=chain too short"),
    ("flapper stays open", "symptom=stuck open"),
    ("flapper won't close", "symptom=stuck open"),
    ("water leaks past the flapper", "symptom=leak at the seal"),
    ("water trickles into the bowl", "symptom=leak at the seal"),
    ("food coloring showed up in the bowl", "symptom=leak at the seal"),
    ("water on the floor", "hazard=water on the floor"),
    ("it's leaking at the base of the toilet", "hazard=leak at the floor"),
    ("leak at the tank bolts", "hazard=leak at the tank bolts"),
    ("leaking between the tank and bowl", "hazard=leak between tank and bowl"),
    ("the tank is cracked", "hazard=cracked tank"),
    ("there's a crack in the bowl", "hazard=cracked bowl"),
    ("smells like sewer", "hazard=sewer smell"),
    ("the supply line is dripping", "hazard=supply leak"),
    ("the shut-off valve leaks", "hazard=supply leak"),
    ("I smell gas", "hazard=gas smell"),
    ("a crack right through the front of the tank", "hazard=cracked tank"),
    ("it takes twenty minutes to fill up", "symptom=slow fill"),
    ("the tank fills up super slow", "symptom=slow fill"),
    ("the water in the bowl comes up nearly to the brim", "symptom=blocked"),
    ("the chain simply came off the lever", "symptom=chain came off"),
    ("water spills over into the top of the upright pipe", "symptom=water over the overflow"),
    ("I pushed the handle and it just flopped", "symptom=handle broken"),
    ("the gas stove next to it leaks", "hazard=gas smell"),
    ("my son drank water from the cistern", "hazard=poisoning"),
    ("the stop under the tank is stuck", "hazard=stuck stop"),
    ("the stop valve is seized", "hazard=stuck stop"),
    ("my throat burns", "hazard=mixed cleaners"),
    ("first bleach and an hour later vinegar", "hazard=mixed cleaners"),
    ("can i mix bleach and drain acid in the tank", "hazard=mixed cleaners"),
    ("near an electrical outlet", "hazard=electrical"),
    ("it is not leaking on the floor", "not hazard=water on the floor"),
    ("no water on the floor", "not hazard=water on the floor"),
    ("there is no crack in the tank", "not hazard=cracked tank"),
    ("dripping through the ceiling downstairs", "hazard=ceiling leak"),
    ("my downstairs toilet runs", "symptom=runs on"),
    ("why does it run at night?", "symptom=refills by itself"),
    ("the flapper leaks", "symptom=leak at the seal"),
    ("the handle is loose", "symptom=handle broken"),
    ("tank won't fill", "symptom=will not fill"),
    ("the new one still leaks", "symptom=new part did not help"),
    ("I replaced the flapper and it still runs", "symptom=runs on"),
    ("it doesn't flush", "symptom=will not flush"),
    ("the tank lid is cracked", ""),
    ("the overflow tube is cracked", "symptom=cracked overflow tube"),
    ("seat is cracked", ""),
    ("does not leak", "not symptom=leaks somewhere"),
    ("toilet doesn't run anymore", "not symptom=runs on"),
    ("the flapper is fine and does not leak", "not symptom=leaks somewhere"),
    ("the bowl overflowed", "hazard=overflowing bowl"),
    ("sewage is backing up in the tub", "hazard=sewage backing up"),
    ("the chain came off", "symptom=chain came off"),
    ("the seat it sits on is rough", "symptom=rough seat"),
    ("the toilet is clogged", "symptom=blocked"),
    ("the water level in the tank drops overnight", "symptom=tank level drops"),
    ("our water bill went up", "symptom=tank level drops"),
    # as letters come
    (
        "my toilet makes a moaning sound when it fills and then a hiss that never stops. "
        "flapper is new. Water level is right at the top of the overflow pipe",
        "symptom=hissing; symptom=noise; symptom=water over the overflow",
    ),
    (
        "Hi! So the toilet in our guest bath leaks — not on the floor, just inside. I did"
        " the food coloring thing and yes the bowl turned blue. What next?",
        "symptom=leak at the seal; symptom=leaks somewhere",
    ),
    (
        "bolts under the tank are leaking, i tightened them and it still drips on the "
        "floor. do i need new rubber washers or the whole kit",
        "hazard=leak at the tank bolts; hazard=water on the floor",
    ),
    (
        "Is it normal that the flapper closes before the tank is empty? seems like it "
        "only uses half the water",
        "perhaps symptom=weak flush; symptom=closes too soon",
    ),
    (
        "There's a strong sewer smell coming from around toilet and it rocks when you "
        "sit. Also want a flapper",
        "hazard=leak at the floor; hazard=sewer smell",
    ),
    (
        "supply line shutoff wont close all the way so I can't change the flapper. What "
        "do I do? water is spraying from the nut a little",
        "hazard=supply leak",
    ),
    (
        "Not a leak but the tank sweats and drips on the floor in summer. normal?",
        "hazard=water on the floor; not symptom=leaks somewhere; symptom=sweating tank",
    ),
    (
        "not leaking on the floor, no cracks, just runs constantly. water isn't going "
        "over the overflow tube",
        "not hazard=water on the floor; not symptom=water over the overflow; symptom=runs on",
    ),
    (
        "I have to hold the handle down the whole time or it wont flush all the way",
        "symptom=must hold the handle; symptom=weak flush",
    ),
    (
        "The toilet is wobbly and smells like sewer gas in there but tank is fine",
        "hazard=leak at the floor; hazard=sewer smell",
    ),
]


@pytest.mark.parametrize(("said", "expected"), SYMPTOMS)
def test_a_symptom_or_hazard_is_read_as_it_is_said(said: str, expected: str) -> None:
    assert in_line(read_symptoms(Text(said))) == expected


def test_every_symptom_and_hazard_has_a_phrase_here() -> None:
    stated = {fact.choices[0] for said, _ in SYMPTOMS for fact in read_symptoms(Text(said))}
    known = {*values_of(CARDS, "symptom"), *values_of(HAZARDS, "hazard")}
    assert known - stated == set()
    assert ANYWHERE in known


def test_a_leak_whose_place_is_a_hazard_is_no_leak_somewhere() -> None:
    facts = read_symptoms(Text("It leaks. It is leaking at the base of the toilet."))
    assert [f.choices[0] for f in facts] == ["leaks somewhere", "leak at the floor"]


@given(LETTERS)
def test_whatever_is_written_the_words_stand_at_their_place(letter: str) -> None:
    assert all(stands_at_its_place(letter, fact) for fact in read_symptoms(Text(letter)))


def test_a_letter_of_200_000_characters_is_read_to_its_end() -> None:
    assert grows_with_length(read_symptoms, "The flapper leaks. It is not leaking on the floor. ")
