"""What customers ask a shop for. Trade words: common practice, no source."""

from __future__ import annotations

import pytest
from hypothesis import given

from assistant.reading.requests import read_requests
from assistant.reading.text import Text
from tests.phrases import LETTERS, grows_with_length, in_line, stands_at_its_place

REQUESTS = [
    ("I need a flapper", "asks=which part; wanted=seal"),
    ("Flapper for a Velmora 1994", "asks=which part; wanted=seal"),
    ("flapper?", "asks=which part; wanted=seal"),
    ("3 inch hole, strap round the tube: which?", "asks=which part"),
    ("Which rings may go there?", "asks=which part"),
    ("So what might close it?", "asks=which part"),
    ("What have you got like that?", "asks=which part"),
    ("looking for a new seal for my toilet", "asks=which part; wanted=seal"),
    ("I need the rubber thing at the bottom", "asks=which part; wanted=seal"),
    ("I need the thing that stops the water", "asks=which part; wanted=seal"),
    ("what gasket fits my toilet?", "asks=which part; wanted=seal"),
    ("Do you have a tank ball?", "asks=stock; wanted=seal"),
    ("which stopper do I need?", "asks=which part; wanted=seal"),
    ("I need a fill valve and a flapper", "asks=which part; wanted=fill valve; wanted=seal"),
    ("I need a new handle", "asks=which part; wanted=handle"),
    ("seal for the toilet on our boat", "asks=which part; wanted=other toilet; wanted=seal"),
    ("you people sold me rubbish", "asks=returns"),
    ("I need a toilet seat", "asks=which part; wanted=seat"),
    ("Do you sell tank lids?", "asks=stock; wanted=lid"),
    ("I need tank bolts", "asks=which part; wanted=bolts"),
    ("need a wax ring", "asks=which part; wanted=wax ring"),
    ("I want a whole new toilet", "asks=which part; wanted=whole toilet"),
    ("need a flush valve", "asks=which part; wanted=flush valve"),
    ("need a flush valve seal", "asks=which part; wanted=seal"),
    ("I don't need a handle, just the seal", "asks=which part; not wanted=handle; wanted=seal"),
    ("How do I replace the flapper?", "asks=how to"),
    ("how do you clean the seal?", "asks=how to"),
    ("How do I measure the opening?", "asks=measure how"),
    ("why does it run at night?", "asks=why"),
    ("Why is my toilet running?", "asks=why"),
    ("how much is the red one?", "asks=price"),
    ("is part 12-B in stock?", "asks=stock"),
    ("where is my order?", "asks=order status"),
    ("can I return this?", "asks=returns"),
    ("what are your hours?", "asks=shop hours"),
    ("do you give contractor pricing?", "asks=discount"),
    ("will this flapper fit my Velmora?", "asks=does it fit"),
    ("does the 3 inch one fit?", "asks=does it fit"),
    ("see the attached photo", "photo=attached"),
    ("I can send a picture", "photo=offered"),
    ("I attached a pic of the flapper", "photo=attached"),
    ("I already replaced the fill valve", ""),
    ("the fill valve is fine", ""),
    ("We can rank your website on the first page", "asks=spam"),
    ("What's the difference between a flapper and a canister?", "asks=what is"),
    ("how often should I replace the flapper?", "asks=what is"),
    ("What model is my toilet?", "asks=identify toilet"),
    ("I have replaced the fill valve but it still runs", ""),
    ("My flapper is leaking", ""),
    ("canister seal for dual flush please", "asks=which part; wanted=seal"),
    ("Can I use a universal flapper?", "asks=does it fit"),
    ("which part number fits?", "asks=which part"),
    ("My toilet runs. What do I need?", "asks=which part"),
    ("How do I get the old one off?", "asks=how to"),
    ("I want to buy two flappers", "asks=which part; wanted=seal"),
    ("Can you tell me which flapper I need for a Velmora 1994?", "asks=which part; wanted=seal"),
    ("i need a new rubber washer for the flush valve", "asks=which part; wanted=seal"),
    ("I need a flapper with a chain", "asks=which part; wanted=seal"),
    ("I need a seal, the handle is fine", "asks=which part; wanted=seal"),
    # as letters come
    (
        "My wife broke the tank lid. can i get a lid for a Velmora in bone color",
        "asks=stock; wanted=lid",
    ),
    (
        "I ordered a seal last tuesday and got the wrong one, you sent a 2 inch and I "
        "ordered a 3 inch. How do I return it",
        "asks=order status; asks=returns",
    ),
    (
        "Dear Sirs, Kindly provide best price for below: flapper qty 500, fill valve qty "
        "500. Awaiting your soonest reply.",
        "asks=price; wanted=fill valve; wanted=seal",
    ),
    (
        "How much for the red canister gasket, and do you ship to the island? also what "
        "time do you close on saturday",
        "asks=price; asks=shipping; asks=shop hours; wanted=seal",
    ),
    (
        "my flapper is fine i just need the chain",
        "asks=which part; wanted=chain",
    ),
    (
        "can you send me two flappers for a dual flapper tank, theres one big and one small",
        "asks=which part; wanted=seal",
    ),
    (
        "How do I know if I have a 2 inch or 3 inch flapper",
        "asks=measure how",
    ),
    (
        "ordered a flapper from you two weeks ago, order 5521, has not shown up. where is it?",
        "asks=order status",
    ),
]


@pytest.mark.parametrize(("said", "expected"), REQUESTS)
def test_a_request_is_read_as_it_is_said(said: str, expected: str) -> None:
    assert in_line(read_requests(Text(said))) == expected


def test_several_questions_stand_in_the_order_asked() -> None:
    facts = read_requests(
        Text("How do I replace the seal? How much is it? Do you have it in stock?")
    )
    assert [f.choices[0] for f in facts] == ["how to", "price", "stock"]


@given(LETTERS)
def test_whatever_is_written_the_words_stand_at_their_place(letter: str) -> None:
    assert all(stands_at_its_place(letter, fact) for fact in read_requests(Text(letter)))


def test_a_letter_of_200_000_characters_is_read_to_its_end() -> None:
    assert grows_with_length(read_requests, "I need a flapper and a handle. How do I replace it? ")
