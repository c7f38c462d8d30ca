"""Each kind of claim as a tiny trade situation: true, false, or not in the tables."""

from __future__ import annotations

import pytest
from checking_tables import TABLES

from assistant.answers.check import Check, check

T86 = "the Zendrake Tolver made from 1986 to 1993"


def checks(text: str, message: str | None = None) -> list[Check]:
    """What the checker finds in a text, the valve being the original one."""
    return list(
        check(text, TABLES, audience="staff", message=message, valve_is_original=True).checks
    )


def result(text: str) -> str:
    """The worst result of a text."""
    found = {c.result for c in checks(text)}
    return next(r for r in ("contradicted", "not in the tables", "supported") if r in found)


SUPPORTED = (
    # fits
    f"SL-2044 is the right seal for {T86}.",
    f"SL-2044 belongs in {T86}.",
    f"SL-2044 suits {T86}.",
    f"SL-2044 closes the flush valve of {T86}.",
    f"SL-2041 and SL-2044 will do for {T86}.",
    f"Either SL-2041 or SL-2044 fits {T86}.",
    f"For {T86}, you need SL-2041.",
    f"The right seal for {T86} is SL-2041 or SL-2044.",
    f"{T86.capitalize()} takes one SL-2041.",
    "SL-2050 fits the Zendrake Tolvern (1980-1999).",
    "SL-2050 goes in the 1985 Zendrake Tolvern.",
    "The Hulmorth Tolver made up to 1990 takes SL-5010.",
    "If it is the Zendrake Tolvern, SL-2050 fits.",
    "SL-2060 fits the Zendrake Tolver of 1980.",
    "SL-2041 fits the Zendrake Tolver marked 4102.",
    "SL-2041 fits the Zendrake Tolver with Z86 stamped in the tank.",
    "SL-3010 fits the Zendrake Tolver that flushes 1.6 gallons.",
    "SL-3010 fits the Zendrake Tolver with a 3 in opening.",
    "SL-2041 fits the Zendrake Tolver whose pegs point up, that flushes 3.5 gallons.",
    "SL-4020 fits the Hulmorth Quisten at the rinse valve.",
    f"SL-2044 fits {T86} because its ears point up, while SL-2050 does not fit it.",
    # could, not, unsaid
    f"SL-2070 may fit {T86}, judging by the measurements alone.",
    "SL-2046 will not seal there.",
    f"SL-2046 is not the one for {T86}.",
    f"Neither SL-2046 nor SL-2050 fits {T86}.",
    f"We do not know whether SL-2080 fits {T86}.",
    # the seal
    "SL-2041 closes a 2 in opening.",
    "SL-2041 covers a 2-inch opening.",
    'SL-2041 closes a 2" opening.',
    "SL-2041 has ears that point up.",
    "SL-2060 slides over a round tube of 28 mm.",
    "SL-2044 has no float.",
    "SL-2041 is adjustable.",
    "SL-5010 is red.",
    "SL-5010 has no ears.",
    "SL-2041 is made of silicone.",
    "SL-2041 comes in packs of 2.",
    "SL-5010 hangs on a lift wire.",
    "SL-3010 is for toilets that flush 1.6 gallons.",
    "SL-2041 is a genuine 2 in pegged flapper.",
    "SL-2041, a red flapper with a float, costs $6.40.",
    "SL-2041 (red) costs $6.40.",
    # the valve
    f"The flush valve of {T86} has a square overflow tube.",
    "The Zendrake Tolver made from 1971 to 1985 has no pegs.",
    "The main valve of the Hulmorth Quisten has a 3 in opening.",
    # the shop
    "SL-2041 is in stock.",
    "SL-3010 is to order.",
    "SL-1980 is no longer made.",
    "SL-2046 is out of stock.",
    "We have 12 of SL-2041 on hand.",
    "SL-2041 costs us $2.10.",
    # numbers and chains
    "SL-1980 has been replaced by SL-2041.",
    "SL-2041 supersedes SL-1970.",
    "SL-2041 carries the number 20-417.",
    "SL-2041 is the maker's own seal.",
    "SL-2044 is made by Norbeck Rubber.",
    "SL-2041 is Zendrake's own flapper.",
    # the toilet
    "The Zendrake Tolver has been made since 1971.",
    "The Zendrake Tolver changed its flush valve in 1994.",
    "The Hulmorth Quisten is a one-piece toilet.",
    "The Hulmorth Quisten takes two seals.",
    "The Hulmorth Braskel has no flapper.",
    "The Hulmorth Quisten flushes 1.6 or 1.1 gallons.",
    "The Zendrake Pallowick takes two seals.",
    "The Pallow takes two seals.",
    "The Zendrake Tolver in our table was not made in 1965.",
    # silence
    "We know no seal for the Hulmorth Braskel.",
    "We know no seal for the Zendrake Dimmock Vale.",
    'Our table lists no toilet called "Frobisher".',
)

CONTRADICTED = (
    "If it was made from 1986 to 1993, SL-2041 fits the Zendrake Tolver; SL-2044 fits it.",
    "SL-2044 fits the Zendrake Tolver.",
    "SL-2044 fits the Zendrake Tolver made since 1994.",
    "SL-2046 suits the Zendrake Tolver marked 4102.",
    "The Zendrake Tolver takes SL-3010.",
    "SL-2050 fits the Zendrake Tolver and the Zendrake Tolvern.",
    f"SL-2065 fits {T86}.",
    f"SL-2044 fits {T86}, with this change: cut the ring off at the mark.",
    f"SL-2070 does fit {T86}, and SL-2041 does not fit {T86}.",
    f"You need SL-1980 for {T86}.",
    "SL-4010 fits the Hulmorth Quisten at the rinse valve.",
    "SL-4010 fits the Hulmorth Quisten.",
    "SL-3010 fits the two-piece Zendrake Ovellan.",
    f"SL-2041 could fit {T86}, going by the measurements alone.",
    f"The tables do not say whether SL-2046 fits {T86}.",
    "Some Zendrake Tolvern tanks take SL-2050.",
    "SL-2041 closes a 3 in opening.",
    "SL-2041 closes a 2 mm opening.",
    "SL-2041 has no float.",
    "SL-2041 is not adjustable.",
    "SL-2041 is black.",
    "SL-2041 comes in packs of 3.",
    "SL-2041 is for toilets that flush 3.5 to 6 gallons.",
    "SL-2041 is a tank ball.",
    "SL-2044 is genuine.",
    "SL-2041 is made by Norbeck Rubber.",
    "SL-2041 costs $6.04.",
    "SL-2046 is in stock.",
    "SL-2041 is to order.",
    "SL-2041 costs us $2.01.",
    "We have 13 of SL-2041 on hand.",
    "SL-1980 replaces SL-2041.",
    "SL-2044 replaces SL-1980.",
    "SL-2046 fits wherever SL-1980 did.",
    "The number 20-417 belongs to SL-2044.",
    "The Zendrake Tolver was made from 1971 to 1993.",
    "The Zendrake Tolver changed its flush valve in 1990.",
    "The Hulmorth Quisten flushes 1.1 gallons.",
    "The Hulmorth Quisten is in two pieces.",
    "The Zendrake Pallowick takes one seal.",
    "The Zendrake Tolver was not made in 1990.",
    "We know no seal for the Zendrake Tolvern.",
    'Our table lists no toilet called "Tolvern".',
    "SL-2041 fits the Zendrake Tolver made from 1987 to 1993.",
    "SL-5010 fits the Hulmorth Tolver made from 1971 to 1990.",
)

NOT_IN_THE_TABLES = (
    "SL-2041 is red SL-2041 costs $6.40.",
    f"SL-2080 fits {T86}.",
    f"SL-2070 fits {T86}.",
    f"SL-2070 could fit {T86}.",
    f"SL-2080 does not fit {T86}.",
    "SL-2041 fits the Zendrake Dimmock Vale.",
    "SL-2041 fits it.",
    "SL-4010 costs us $2.00.",
    "SL-2075's ears stand 95 mm apart.",
    "SL-2060 has a float.",
    "The Zendrake Dimmock Vale flushes 1.6 gallons.",
    "SL-9999 fits it.",
    "It costs $6.40.",
    "The Zendrake Dimmock Vale has a 2 in opening.",
    "SL-2041 fits the Zendrake Wexelby.",
    f"SL-2041 is guaranteed to fit {T86}.",
    f"Only SL-2041 fits {T86}.",
    "SL-2041 fits any toilet.",
    f"SL-2041 always fits {T86}.",
    "SL-2041 will last 10 years.",
    "The main valve has a 3 in opening.",
    "SL-2041 and SL-2044 cost the same.",
    "SL-2044 and SL-2041 fit. It costs $6.40.",
    f"Does SL-2046 fit {T86}?",
    "These fit the Zendrake Tolver.",
    "SL-2041.",
    "SL-2041, SL-2044.",
    "All Zendrake Tolver tanks take SL-3010.",
    "SL-2050 fits every Zendrake Tolvern.",
    "SL-2041 costs $6.40 or so.",
    "SL-2041 costs $6.40 and.",
    "No seal fits the Zendrake Tolver.",
    f"SL-2044 fits {T86} unless it leaks.",
    f"SL-2044 fits {T86} or whatever.",
    "SL-2041 fits the Zendrake Tolver made in 1986 made since 1994.",
    "17 SL-2041 fit it.",
)


@pytest.mark.parametrize("text", SUPPORTED)
def test_a_claim_that_the_tables_make_is_supported(text: str) -> None:
    said = f"SL-2044 fits {T86}. {text}" if "there" in text else text
    assert [c for c in checks(said) if c.result != "supported"] == []


@pytest.mark.parametrize("text", CONTRADICTED)
def test_a_claim_that_the_tables_deny_is_contradicted(text: str) -> None:
    assert result(text) == "contradicted"


@pytest.mark.parametrize("text", NOT_IN_THE_TABLES)
def test_a_claim_on_which_the_tables_are_silent_is_not_in_the_tables(text: str) -> None:
    assert result(text) == "not in the tables"


@pytest.mark.parametrize(
    ("text", "rule", "row"),
    [
        (f"SL-2044 fits {T86}.", "evidence", "fitment:E02"),
        (f"SL-2041 fits {T86}.", "replacement", "fitment:E01"),
        (f"SL-2046 does not fit {T86}.", "ear-span", "flush_valves:p2u"),
        (
            "SL-2041 does not fit the Zendrake Tolver made since 1994.",
            "opening",
            "flush_valves:p3u",
        ),
        ("SL-2041 costs $6.40.", "price", "seals:SL-2041"),
        ("SL-2041 replaces SL-1980.", "replaced-by", "seals:SL-1980"),
        ("The Hulmorth Quisten is in one piece.", "pieces", "toilets:hq1"),
        ("The Zendrake Pallowick takes two seals.", "seals-needed", "build_valves:zp1/main"),
    ],
)
def test_a_check_names_its_rule_and_the_row_that_decides(text: str, rule: str, row: str) -> None:
    (found,) = checks(text)
    assert (found.rule, found.row, found.result) == (rule, row, "supported")
    assert found.sentence == text


def test_it_is_the_part_last_spoken_of_and_there_the_toilet_last_named() -> None:
    said = f"SL-2044 fits {T86}. It costs $4.90. SL-2046 will not seal there. It costs $4.75."
    assert {c.result for c in checks(said)} == {"supported"}


def test_a_model_alone_is_the_one_spoken_of_and_else_every_maker_s() -> None:
    assert result("SL-2060 fits the Tolver made from 1971 to 1985.") == "contradicted"
    said = f"SL-2044 fits {T86}. Your Zendrake Tolver has a 2 in opening."
    assert {c.result for c in checks(said)} == {"supported"}


def test_an_old_part_is_a_scope_of_its_own() -> None:
    said = "The number 20-198 belongs to SL-1980. SL-2041 takes its place."
    assert {c.result for c in checks(said + " You need SL-2041. SL-2044 fits it too.")} == {
        "supported"
    }
    assert result(said + " SL-2046 fits it too.") == "contradicted"


def test_measurements_of_the_letter_stand_in_for_a_toilet_that_is_not_named() -> None:
    said = 'You wrote "2 inch" and "96 mm". {} could fit, going by the measurements alone.'
    letter = "Mine is 2 inch, ears 96 mm."
    assert {c.result for c in checks(said.format("SL-2070"), letter)} == {"supported"}
    assert "contradicted" in {c.result for c in checks(said.format("SL-2046"), letter)}
    assert "contradicted" in {c.result for c in checks(said.format("SL-2070"), "Mine is 3 inch.")}
