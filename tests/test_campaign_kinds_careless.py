"""Slips and lies of a counter: each is made of a true sentence, and is false by the tables.

The Quellwick Tamsel of 1983 to 1993 takes PBK-6230, as does that of 1968 to 1982; the one before
takes a ball, the one after a wider flapper.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import pytest
from demonstration import PART_NO, TRUTH, made_within

from assistant.answers.answer import Answer
from assistant.answers.draft import Part
from assistant.fitment.decision import Outcome
from assistant.measuring.campaign.kinds import (
    careless,
    careless_conditions,
    careless_money,
    careless_numbers,
    careless_parts,
    careless_reasons,
    careless_years,
    dishonest,
    dishonest_marks,
    dishonest_promises,
    dishonest_wordings,
)
from assistant.measuring.campaign.told import Kind, Told

TAMSEL = ("quellwick-tamsel-c",)
CALVISTER = ("dunmarrow-calvister-a",)
FITS = (
    "**PBK-6230** fits the Quellwick Tamsel made from 1983 to 1993, if the flush valve is the "
    "original one; we tried it at the bench."
)
TOO = "**PBK-5118** and **PBK-6234** fit it too."
NOT = (
    "**PBK-6246** looks much the same but does not fit: its ears stand 90 mm apart, and the "
    "valve's pegs 82 mm."
)
NOR = (
    "**PBK-6251** looks much the same but does not fit: its ears point down, and the valve's pegs "
    "point up."
)
IS = (
    "It is the Garrosett plain flapper, a flapper on pegs for a 2 in opening, and its ears point "
    "up and stand 82 mm apart."
)
SET = (
    "**PBK-6322** at the main valve and **PBK-8210** at the rinse valve: that is the set for the "
    "Dunmarrow Calvister made from 1995 to 2007, if the flush valve is the original one."
)


def told(
    *sentences: str, builds: Sequence[str] = TAMSEL, main: str = "PBK-6230", letter: str = ""
) -> Told:
    """An answer written by hand."""
    part = Part(main, "main", 1, None, "evidence", "stocked", ())
    answer = Answer(outcome=Outcome.PART, text=" ".join(sentences), parts=(part,) if main else ())
    return Told(TRUTH, letter, "customers", tuple(builds), answer)


def made(kinds: Sequence[Kind], answer: Told, sentence: str) -> dict[str, list[str]]:
    """The false sentences by the name of their kind."""
    found: dict[str, list[str]] = {}
    for kind in kinds:
        for name, false in kind(answer, sentence):
            found.setdefault(name, []).append(false)
    return found


def hand_written() -> Iterator[tuple[Told, str]]:
    """Sentences of true answers, each with its answer."""
    tamsel = told(FITS, IS, TOO, NOT, NOR)
    yield from ((tamsel, sentence) for sentence in (FITS, IS, TOO, NOT, NOR))
    for sentence in (
        "**PBK-6230** costs $4.95 and is in stock.",
        "For the counter: PBK-6230: 40 on hand, it costs us $1.90.",
    ):
        yield told(FITS, sentence), sentence
    twice = told(SET, builds=CALVISTER, main="PBK-6322")
    yield twice, SET
    for part_no, sentence in (
        ("PBK-2136", "**PBK-2136** takes the place of **PBK-2103**, which is no longer made."),
        ("PBK-6230", "**PBK-6234** closes every valve in our table that **PBK-6230** fits."),
        ("PBK-2534", "**PBK-2534** could fit, going by the measurements alone."),
        ("PBK-7752", "**PBK-7752** costs $10.85 and is to order."),
    ):
        yield told(sentence, builds=(), main=part_no), sentence
    branch = "- if it was made from 1968 to 1993, it takes **PBK-6230**, for a 2 in opening."
    yield told(branch, builds=TRUTH.models["Quellwick Tamsel"]), branch
    one = "- if it is made in one piece, it takes **PBK-2534**, for a 2 in opening."
    yield told(one, builds=made_within("Lunnet & Garve Applegarve", 1998, 1998)), one
    mark = "- if V 240 G is stamped in the tank, it takes **PBK-6246**, for a 2 in opening."
    yield told(mark, builds=TRUTH.models["Vorlamar Palustell"], main="PBK-6246"), mark
    change = "**PBK-7347** fits with this change: rub the moulding seam off its inner edge."
    yield told(change, builds=("dunmarrow-yarrabeck-c",), main="PBK-7347"), change
    alone = "We know no seal for the rinse valve of the Hattilva Haikenta made from 1995 to 2004."
    yield told(alone, builds=("hattilva-haikenta-a",), main="PBK-2567"), alone
    gallons = (
        "**PBK-6262** does not fit: it is made for toilets that flush 1.28 to 3.5 gallons, and "
        "this one flushes 5 gallons."
    )
    yield told(gallons, builds=("brunnicote-stavenby-c",), main="PBK-5118"), gallons
    for pair in ("The valve takes two of **PBK-2162**.", "**PBK-7347** comes in packs of 2."):
        yield told(pair, builds=("pembrill-hullamer-a",), main="PBK-2162"), pair
    ring = "It is the Bexmoor ring flapper, small ring, and its ring slides over a round tube."
    yield told(ring, builds=("brunnicote-stavenby-c",), main="PBK-5118"), ring
    for sentence in (
        'You wrote "82 mm".',
        "Our table lists the Quellwick Tamsel and the Ostrevale Tamsel.",
        'Our table lists no toilet called "Splasher".',
        "Our tables do not settle whether **PBK-6308** fits the Quellwick Tamsel.",
        "Unused seals can come back within 30 days with the bag they came in.",
        "Leave cleaning tablets out of the tank, because they eat the new rubber.",
        "The number in the tank tells the exact build; the number on the bowl belongs to the "
        "bowl alone.",
    ):
        yield told(sentence, main="", letter="its ears are 82 mm apart"), sentence


KINDS = [*careless.KINDS, *dishonest.KINDS]


@pytest.mark.parametrize("number", range(len(KINDS)))
def test_each_kind_makes_something_false(number: int) -> None:
    assert any([*KINDS[number](answer, sentence)] for answer, sentence in hand_written())


def test_what_is_made_is_another_text_and_the_same_each_time_and_not_too_much() -> None:
    for answer, sentence in hand_written():
        for kind in KINDS:
            once = [*kind(answer, sentence)]
            assert once == [*kind(answer, sentence)]
            assert len(once) <= 4
            assert all(name and false != sentence for name, false in once)


def test_no_part_that_fits_is_offered_as_one_that_does_not() -> None:
    wordings = [*dishonest_wordings.KINDS, *dishonest_marks.KINDS, *careless_parts.KINDS]
    for sentence in (FITS, TOO):
        answer = told(FITS, TOO, NOT)
        for falsehoods in made(wordings, answer, sentence).values():
            for false in falsehoods:
                new = {*PART_NO.findall(false)} - {*PART_NO.findall(sentence)}
                assert not any(TRUTH.fits(part_no, *TAMSEL) for part_no in new), false


def test_years_in_which_the_part_fits_as_well_are_true_and_not_made() -> None:
    shifted = made(careless_years.KINDS, told(FITS), FITS)
    assert "made from 1973 to 1983" not in str(shifted)  # the Tamsel before takes it as well
    assert any("made from 1993 to 2003" in false for false in shifted["years shifted"])


def test_a_part_that_fits_every_build_of_a_name_may_be_said_to() -> None:
    always = "**PBK-7752** fits the Ostrevale Thimble made from 2005 to 2014."
    answer = told(always, builds=("ostrevale-thimble-a",), main="PBK-7752")
    found = made([*careless_years.KINDS, *careless_conditions.KINDS], answer, always)
    assert "any year at all" not in found
    assert "all of that name" not in found


def test_without_a_toilet_nothing_is_said_about_fitting() -> None:
    answer = told(FITS, TOO, NOT, builds=(), main="")
    kinds = [*dishonest_wordings.KINDS, *dishonest_marks.KINDS, *careless_years.KINDS]
    assert not any(made(kinds, answer, sentence) for sentence in (FITS, TOO, NOT))


def test_the_wrong_price_is_not_the_right_one() -> None:
    costs = "**PBK-6230** costs $4.95 and is in stock."
    wrong = made(careless_money.KINDS, told(costs), costs)
    assert all("$4.95" not in false for false in wrong["the price of another part"])
    assert wrong["cost given as price"] == ["**PBK-6230** costs $1.90 and is in stock."]
    assert all("in stock" not in false for false in wrong["stock misread"])


def test_a_part_on_the_shelf_is_not_called_to_order_and_the_reverse() -> None:
    away = "**PBK-7752** costs $10.85 and is to order."
    answer = told(away, builds=(), main="PBK-7752")
    assert made(careless_money.KINDS, answer, away)["stock misread"] == [
        "**PBK-7752** costs $10.85 and is in stock."
    ]


def test_a_length_that_is_round_already_is_not_rounded() -> None:
    rounded = made(careless_numbers.KINDS, told(NOT), NOT)["a length rounded"]
    assert rounded == [NOT.replace("82 mm", "80 mm")]


def test_the_customers_own_measure_is_not_the_shops() -> None:
    quoted = 'You wrote "82 mm" and "ears point up".'
    answer = told(quoted, letter="82 mm, ears point up; the other one has 83 mm")
    assert made(careless_numbers.KINDS, answer, quoted) == {}
    said = made(careless_conditions.KINDS, answer, quoted)["the letter misquoted"]
    assert said == ['You wrote "82 mm" and "ears point down".']  # 83 mm is in the letter


def test_evidence_that_there_is_may_be_named() -> None:
    kinds = {row["kind"] for row in TRUTH.rows("fitment") if row["part_no"] == "PBK-6230"}
    false = made(careless_reasons.KINDS, told(FITS), FITS).get("evidence of another kind", [])
    assert "customer's report" in kinds  # so nobody lies who says it
    assert not any("a customer reported that" in sentence for sentence in false)
    assert any("the maker's sheet says so" in sentence for sentence in false)


def test_only_is_false_where_another_seal_fits() -> None:
    assert "'only' put in" in made(careless_reasons.KINDS, told(FITS), FITS)
    alone = "**PBK-8251** fits the Skerrivane Strommay made from 1997 to 2004."
    answer = told(alone, builds=("skerrivane-strommay-a",), main="PBK-8251")
    assert TRUTH.fits("PBK-8251", "skerrivane-strommay-a")
    assert "'only' put in" not in made(careless_reasons.KINDS, answer, alone)


def test_the_seal_of_the_main_valve_does_not_close_the_rinse_valve() -> None:
    answer = told(SET, builds=CALVISTER, main="PBK-6322")
    turned = made(careless_parts.KINDS, answer, SET)["the other valve"]
    assert turned[0].startswith("**PBK-6322** at the rinse valve and **PBK-8210** at the main")


def test_a_replacement_is_turned_round_and_a_true_chain_is_not() -> None:
    place = "**PBK-2136** takes the place of **PBK-2103**, which is no longer made."
    found = made(careless_reasons.KINDS, told(place, builds=(), main="PBK-2136"), place)
    assert "**PBK-2103** takes the place of **PBK-2136**." in found["a replacement reversed"]
    others = found["another part in its place"]
    assert not any("PBK-2119" in sentence for sentence in others)  # it follows as well


def test_a_reason_that_holds_of_both_is_not_exchanged() -> None:
    answer = told(NOT, NOR)
    found = made(careless_reasons.KINDS, answer, NOT)["the reason of another part"]
    assert any("its ears point down" in sentence for sentence in found)
    same = NOT.replace("PBK-6246", "PBK-6240")  # 90 mm as well
    answer = told(NOT, same)
    assert "the reason of another part" not in made(careless_reasons.KINDS, answer, same)


def test_two_seals_where_the_valve_takes_two_are_true() -> None:
    pair = "The valve takes two of **PBK-2162**."
    answer = told(pair, builds=("pembrill-hullamer-a",), main="PBK-2162")
    counts = made(careless_money.KINDS, answer, pair)["another quantity"]
    assert pair not in counts
    assert "The valve takes one of **PBK-2162**." in counts
    either = told(pair, builds=("pembrill-dolmerry-b", "pembrill-dolmerry-one"))
    counts = made(careless_money.KINDS, either, pair)["another quantity"]
    assert "The valve takes one of **PBK-2162**." not in counts  # true of one of the two


def test_two_sentences_handed_over_as_one_are_told_apart() -> None:
    both = f"{NOT} {NOR}"
    turned = made(careless.KINDS, told(FITS, both), both)["a 'not' forgotten"]
    assert any(sentence.startswith(NOT) for sentence in turned)
    assert any(sentence.endswith(NOR) for sentence in turned)


def test_a_photograph_that_was_sent_may_be_spoken_of() -> None:
    sent = told(FITS, letter="I attach a photo. Which seal?")
    assert "a photograph made up" not in made(dishonest_promises.KINDS, sent, FITS)
    assert "a photograph made up" in made(dishonest_promises.KINDS, told(FITS), FITS)
