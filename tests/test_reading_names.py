"""Names and numbers in customers' letters. Makers, models and numbers are invented."""

from __future__ import annotations

import string
from collections.abc import Iterable

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from rapidfuzz.distance import OSA

from assistant.reading.facts import Fact
from assistant.reading.names import NameBook, read_names
from assistant.reading.names.keys import folded, number_key
from assistant.reading.names.likeness import Likeness, slips_allowed
from assistant.reading.names.ordinary import ordinary
from assistant.reading.text import Text
from assistant.records.load import parse_table
from assistant.records.rows import Brand, Build, Seal
from assistant.records.tables import Tables

BRANDS = """brand,aliases
Tolmerane,Tolmerane Potteries; TMR
Grivelle,
Ashby,
Lantry & Voss,L&V
Ladder,
"""

BUILDS = [  # brand, model, aliases, model number, mark in the tank, pieces
    ("Tolmerane", "Velmora", "", "TV-418", "4418", "2"),
    ("Tolmerane", "Velmera", "", "TV-420", "", "2"),
    ("Tolmerane", "Orrinshaw", "Orrin", "2273", "", "2"),
    ("Tolmerane", "Kettle", "the Kettle", "TK 6", "KT 6", "2"),
    ("Tolmerane", "Sunday Lake", "", "", "", "2"),
    ("Grivelle", "Velmora", "", "G.52", "52-207", "2"),
    ("Grivelle", "Ashby Dale", "", "A-4412", "", "1"),
    ("Grivelle", "Fenlock", "", "9911", "9912", "2"),
    ("Ashby", "Dale", "", "", "AX 21 77", "2"),
    ("Lantry & Voss", "Brindlesea", "", "", "", "2"),
    ("Ashby", "Brundlisca", "", "", "", "2"),
    ("Lantry & Voss", "Velmara", "", "", "", "2"),
    ("Lantry & Voss", "Cawdrine", "Duo Cawdrine", "LV/33B", "", "2"),
]

SEALS = [  # part number, name, maker, numbers moulded on it
    ("ZQ-6203", "Tolmerane flapper", "Tolmerane", "22-061; 22-061 R"),
    ("ZQ-6209", "Corvane flapper", "Corvane", "B2"),
    ("ZQ-6240", "Grivelle canister seal", "Grivelle", "9912; 44180"),
]


def _csv(kind: type, rows: Iterable[dict[str, str]]) -> str:
    names = list(kind.__dataclass_fields__)
    lines = [",".join(names)]
    lines += [",".join(row.get(name, "") for name in names) for row in rows]
    return "\n".join(lines)


def _tables() -> Tables:
    builds = (
        {
            "build": f"b{i}",
            "brand": brand,
            "model": model,
            "aliases": aliases,
            "model_no": number,
            "tank_mark": mark,
            "pieces": pieces,
        }
        for i, (brand, model, aliases, number, mark, pieces) in enumerate(BUILDS)
    )
    seals = (
        {
            "part_no": part_no,
            "name": name,
            "maker": maker,
            "maker_no": numbers,
            "style": "flapper",
            "status": "stocked",
        }
        for part_no, name, maker, numbers in SEALS
    )
    return Tables(
        brands=parse_table(BRANDS, Brand, "brands.csv"),
        styles={},
        valves={},
        builds=parse_table(_csv(Build, builds), Build, "toilets.csv"),
        build_valves={},
        seals=parse_table(_csv(Seal, seals), Seal, "seals.csv"),
        evidence={},
    )


TABLES = _tables()
BOOK = NameBook(TABLES)


def read(letter: str) -> list[Fact]:
    return read_names(Text(letter), BOOK)


def told(letter: str, *names: str) -> list[tuple[str, ...]]:
    """The values of the facts with one of these names, in order."""
    return [fact.choices for fact in read(letter) if fact.name in names]


def only(letter: str, name: str) -> Fact:
    (fact,) = (fact for fact in read(letter) if fact.name == name)
    return fact


# Names letter for letter


@pytest.mark.parametrize(
    ("letter", "brand"),
    [
        ("I have a Tolmerane toilet that keeps running.", "Tolmerane"),
        ("i have a tolmerane toilet that keeps running", "Tolmerane"),
        ("I HAVE A TOLMERANE TOILET THAT KEEPS RUNNING", "Tolmerane"),
        ("my Tolmerane's tank leaks", "Tolmerane"),
        ("both Tolmeranes leak", "Tolmerane"),
        ("it is a Tol-Merane", "Tolmerane"),
        ("an old TMR toilet", "Tolmerane"),
        ("the Tolmerane Potteries one", "Tolmerane"),
        ("ours is by lantry and voss", "Lantry & Voss"),
        ("ours is by Lantry & Voss", "Lantry & Voss"),
        ("it says L&V on the bowl", "Lantry & Voss"),
    ],
)
def test_a_maker_is_read_under_any_of_its_names(letter: str, brand: str) -> None:
    fact = only(letter, "brand")
    assert (fact.value, fact.sure, fact.similar) == ((brand,), True, False)


@pytest.mark.parametrize(
    "written",
    ["Ashby Dale", "Ashbydale", "ASHBY-DALE", "ashby dale", "Ashby's Dale", "ashby\ndale"],
)
def test_a_model_is_read_however_its_words_are_joined(written: str) -> None:
    fact = only(f"We have a Grivelle {written} in the guest bath.", "model")
    assert "Grivelle Ashby Dale" in fact.choices
    assert fact.words == written
    assert not fact.similar


def test_a_name_keeps_the_words_and_the_place_of_the_letter() -> None:
    letter = "Dear shop, the VELMORA’s flapper"
    fact = only(letter, "model")
    assert (fact.words, fact.start, fact.end) == ("VELMORA", 15, 22)


def test_a_name_in_a_masked_place_is_not_said() -> None:
    letter = "It leaks.\n> your Fenlock order"
    assert read_names(Text(letter, ((10, len(letter)),)), BOOK) == []


# Whose model it is


def test_a_model_of_two_makers_alone_may_be_either() -> None:
    assert told("the Velmora leaks", "model") == [("Tolmerane Velmora", "Grivelle Velmora")]


@pytest.mark.parametrize(
    "letter",
    [
        "my Grivelle Velmora leaks",
        "a Velmora by Grivelle",
        "a Velmora (Grivelle) leaks",
        "It is a Velmora. It leaks at night. The lid says Grivelle.",
        "A Tolmerane upstairs is fine. The Grivelle in the hall, a Velmora, leaks.",
    ],
)
def test_the_maker_next_to_a_model_or_the_only_maker_decides(letter: str) -> None:
    assert told(letter, "model") == [("Grivelle Velmora",)]


def test_a_maker_who_makes_no_such_model_leaves_every_reading() -> None:
    assert told("an Ashby Velmora", "model") == [("Tolmerane Velmora", "Grivelle Velmora")]


def test_a_name_exact_of_another_maker_and_near_one_of_the_maker_named_may_be_either() -> None:
    fact = only("a Lantry & Voss Velmara", "model")
    assert fact.value == ("Lantry & Voss Velmara",)
    fact = only("a Tolmerane Velmara", "model")
    assert fact.choices[0] == "Lantry & Voss Velmara"
    assert {"Tolmerane Velmora", "Tolmerane Velmera"} <= {*fact.choices}
    assert (fact.similar, fact.sure) == (True, False)


def test_a_denied_maker_is_kept_as_denied_and_decides_nothing() -> None:
    letter = "It is not a Grivelle. The Velmora leaks."
    assert only(letter, "brand").negated
    assert told(letter, "model") == [("Tolmerane Velmora", "Grivelle Velmora")]


def test_a_denied_toilet_is_denied_as_a_whole() -> None:
    facts = read("not a Grivelle Fenlock but a Tolmerane Orrinshaw")
    assert [(f.choices[0], f.negated) for f in facts] == [
        ("Grivelle", True),
        ("Grivelle Fenlock", True),
        ("Tolmerane", False),
        ("Tolmerane Orrinshaw", False),
    ]


def test_a_makers_model_that_is_also_another_makers_whole_name_keeps_both() -> None:
    letter = "an Ashby Dale toilet"
    assert told(letter, "model") == [("Grivelle Ashby Dale", "Ashby Dale")]
    assert told(letter, "brand") == [("Ashby",)]


# Slips


@pytest.mark.parametrize(
    ("letter", "value"),
    [
        ("a tolmerne toilet", ("Tolmerane",)),
        ("a Tolmeranne toilet", ("Tolmerane",)),
        ("a Tlomerane toilet", ("Tolmerane",)),
        ("a grivele toilet", ("Grivelle",)),
    ],
)
def test_a_misspelled_maker_is_read_by_likeness_and_not_sure(
    letter: str, value: tuple[str, ...]
) -> None:
    fact = only(letter, "brand")
    assert (fact.value, fact.similar, fact.sure) == (value, True, False)


def test_a_slip_near_two_models_keeps_both() -> None:
    assert told("a Tolmerane Velmira", "model") == [("Tolmerane Velmera", "Tolmerane Velmora")]


def test_an_exact_name_beats_a_likeness_at_the_same_words() -> None:
    fact = only("a Tolmerane Velmera", "model")
    assert (fact.value, fact.similar) == (("Tolmerane Velmera",), False)


def test_next_to_its_maker_a_model_may_have_one_slip_more() -> None:
    assert told("a Grivelle Fenlokk", "model") == [("Grivelle Fenlock",)]
    assert told("a Grivelle Fanlokk", "model") == [("Grivelle Fenlock",)]
    assert told("a Fanlokk toilet", "model") == []


def test_a_name_just_beside_the_nearest_is_kept_too() -> None:
    values = only("a velmoro toilet", "model").choices  # one slip from one, two from the others
    assert values[0] == "Tolmerane Velmora"
    assert {"Tolmerane Velmera", "Lantry & Voss Velmara"} <= {*values}


def test_a_long_name_two_slips_off_is_kept_beside_one_that_is_one_slip_off() -> None:
    values = told("a brindlesca toilet", "model")
    assert values == [("Lantry & Voss Brindlesea", "Ashby Brundlisca")]


def test_a_whole_name_misspelled_beats_a_piece_of_it() -> None:
    fact = only("a Lantri & Vos toilet", "brand")
    assert (fact.words, fact.value) == ("Lantri & Vos", ("Lantry & Voss",))
    fact = only("my Duo Cawdrin leaks", "model")
    assert (fact.words, fact.similar) == ("Duo Cawdrin", True)


def test_a_letter_beside_a_makers_name_is_no_slip() -> None:
    assert only("J. Grivelle", "brand").words == "Grivelle"


def test_an_ordinary_word_does_not_join_in_by_chance() -> None:
    assert told("Fen lock and key man put it in", "model") == []


def test_a_two_word_name_may_slip_anywhere() -> None:
    assert "Grivelle Ashby Dale" in only("our Grivelle Ashby Dail", "model").choices


@pytest.mark.parametrize(
    "letter",
    [
        "It isn't a Grivelle or a Tolmerane",
        "I don't have a Grivelle",
        "we used to have a Grivelle",
        "neither Grivelle nor Tolmerane",
    ],
)
def test_a_denied_maker_is_denied(letter: str) -> None:
    assert all(fact.negated for fact in read(letter) if fact.name == "brand")
    assert told(letter, "brand")


@pytest.mark.parametrize("word", ["Orin", "Dole", "tm r"])
def test_short_names_are_never_read_by_likeness(word: str) -> None:
    assert told(f"the {word} one drips", "model", "brand") == []


@pytest.mark.parametrize(
    ("written", "key", "near"),
    [
        ("abcdx", "abcde", True),  # five letters: one slip
        ("abcxy", "abcde", False),
        ("abcdeyx", "abcdexy", True),  # a swap is one slip
        ("abcdefxh", "abcdefgh", True),  # eight letters: two slips
        ("abxdefxh", "abcdefgh", True),
        ("axxdefxh", "abcdefgh", False),
        ("bacdefhg", "abcdefgh", True),
        ("abcd", "abce", False),  # four letters: none
        ("abcde21", "abcde22", False),  # digits do not slip
    ],
)
def test_how_far_likeness_goes(written: str, key: str, near: bool) -> None:
    assert (key in Likeness([key]).near(written)) is near


@st.composite
def _slipped(draw: st.DrawFn, word: str) -> str:
    """The word with a letter left out, put in, changed or swapped."""
    at = draw(st.integers(0, len(word) - 2))
    letter = draw(st.sampled_from(string.ascii_lowercase))
    return draw(
        st.sampled_from(
            [
                word[:at] + word[at + 1 :],
                word[:at] + letter + word[at:],
                word[:at] + letter + word[at + 1 :],
                word[:at] + word[at + 1] + word[at] + word[at + 2 :],
            ]
        )
    )


@given(st.text("abcd", min_size=5, max_size=14), st.data())
@settings(max_examples=500)
def test_the_index_finds_what_comparing_one_by_one_finds(key: str, data: st.DataObject) -> None:
    written = key
    for _ in range(data.draw(st.integers(0, 3))):
        written = data.draw(_slipped(written))
    close = OSA.distance(written, key) <= slips_allowed(key)
    assert (key in Likeness([key]).near(written)) is close


# Doubt


@pytest.mark.parametrize(
    "letter",
    [
        "I think it's a Grivelle Fenlock",
        "maybe a Grivelle Fenlock",
        "it might be a Grivelle Fenlock",
        "a Grivelle Fenlock, I think",
        "a Grivelle Fenlock or something",
        "It looks like a Grivelle Fenlock.",
        "a Grivelle Fenlock but I'm not sure",
        "my plumber says it's a Grivelle Fenlock",
    ],
)
def test_a_doubted_name_is_not_sure(letter: str) -> None:
    assert not only(letter, "model").sure


@pytest.mark.parametrize(
    "letter",
    [
        "I think I need a flapper for my Grivelle Fenlock",
        "Do you have a flapper for the Grivelle Fenlock?",
        "What might fit my Grivelle Fenlock?",
        "Not sure which flapper to buy. It is a Grivelle Fenlock.",
    ],
)
def test_doubt_about_the_part_is_no_doubt_about_the_toilet(letter: str) -> None:
    assert only(letter, "model").sure


def test_one_model_or_another_is_not_sure_of_either() -> None:
    facts = [f for f in read("the Fenlock or the Orrinshaw") if f.name == "model"]
    assert [f.sure for f in facts] == [False, False]


@pytest.mark.parametrize(
    "name", ["Orrinshaw II", "Orrinshaw Elite", "Orrinshaw 250", "Orrinshaw Zandro", "Orrinshaw-XL"]
)
def test_a_name_that_goes_on_beyond_the_listed_one_is_only_similar(name: str) -> None:
    fact = only(f"my Tolmerane {name} runs on", "model")
    assert (fact.words, fact.similar, fact.sure) == (name, True, False)


@pytest.mark.parametrize(
    "letter",
    [
        "my Orrinshaw 2 piece toilet",
        "an Orrinshaw 1994 model",
        "an Orrinshaw 3 inch flapper",
        "an Orrinshaw toilet",
        "the Orrinshaw. Elite plumbers put it in.",
        "the Orrinshaw and a Fenlock",
    ],
)
def test_what_follows_a_name_without_being_part_of_it_casts_no_doubt(letter: str) -> None:
    fact = next(f for f in read(letter) if f.name == "model")
    assert (fact.words, fact.similar, fact.sure) == ("Orrinshaw", False, True)


@pytest.mark.parametrize(
    "letter",
    [
        "the seat says Grivelle",
        "a Grivelle handle",
        "I bought a Grivelle flapper",
        "Grivelle or Tolmerane",
    ],
)
def test_the_make_of_a_seat_or_a_seal_or_one_of_two_is_not_surely_the_toilets(letter: str) -> None:
    assert not any(fact.sure for fact in read(letter) if fact.name == "brand")


@pytest.mark.parametrize(
    "letter",
    ["12 Fenlock Road, upstairs", "our man from Orrin Plumbing came", "Mrs Fenlock has one too"],
)
def test_streets_firms_and_people_are_no_toilets(letter: str) -> None:
    assert told(letter, "model", "brand", "unlisted") == []


# Ordinary words


@pytest.mark.parametrize(
    "letter",
    [
        "My old toilet is American made, white, low flow. The upstairs toilet leaks.",
        "Model: don't know. Brand: can't say.",
        "Kettle tanks are small.",
        "I boiled the kettle and poured it into the tank",
        "We are by the lake on Sunday.",
        "i need a ladder to reach the tank",
        "The valve and the handle are fine, the flapper is warped.",
        "Standard round front toilet, made by a company in the south, model unknown",
        "the model is unreadable and the brand is rubbed off",
        "It was built by the previous owner. It is made of plastic.",
        "What model is it? The make is nowhere to be found",
        "A Dual Flush toilet with two Buttons",
        "Grilled at the Lake last Sunday. My name is on the letter.",
    ],
)
def test_ordinary_words_are_no_names(letter: str) -> None:
    assert read(letter) == []


@pytest.mark.parametrize(
    "letter",
    [
        "a Tolmerane Kettle",
        "my tolmerane kettle drips",
        "the Kettle by Tolmerane",
        "the model is Kettle",
        "My Kettle toilet drips",
        "Our Tolmerane is white and I was told it is a Kettle.",
        "Kettle",
    ],
)
def test_an_ordinary_word_is_a_model_where_its_place_shows_it(letter: str) -> None:
    assert told(letter, "model") == [("Tolmerane Kettle",)]


@pytest.mark.parametrize("letter", ["it is made by Ladder", "a Ladder toilet", "I have a Ladder."])
def test_an_ordinary_word_is_a_maker_where_its_place_shows_it(letter: str) -> None:
    assert told(letter, "brand") == [("Ladder",)]


# Numbers that identify a toilet


@pytest.mark.parametrize(
    ("letter", "value"),
    [
        ("The tank says 4418 inside.", ("4418",)),
        ("Model number 2273", ("2273",)),
        ("Model no. 2273, white", ("2273",)),
        ("it is stamped 4418", ("4418",)),
        ("4418 is under the lid", ("4418",)),
        ("a Tolmerane 2273", ("2273",)),
        ("my tv 418 leaks", ("TV-418",)),
        ("my TV418 leaks", ("TV-418",)),
        ("#4418", ("4418",)),
        ("the tank has AX2177 in it", ("AX 21 77",)),
        ("AX 2I 77 inside the tank", ("AX 21 77",)),
        ("model lv-33b", ("LV/33B",)),
        ("52.207 is moulded in the tank", ("52-207",)),
        ("model G52", ("G.52",)),
        ('The tank is stamped "G.52".', ("G.52",)),
        ("TV 418 in white", ("TV-418",)),
        ("2273", ("2273",)),  # the whole letter, as an answer
        ("Our Orrinshaw, 2273, runs", ("2273",)),  # the model bears the number
    ],
)
def test_a_number_identifies_a_toilet(letter: str, value: tuple[str, ...]) -> None:
    fact = only(letter, "model_no")
    assert (fact.value, fact.sure) == (value, True)


@pytest.mark.parametrize(
    "letter",
    [
        "we have lived here since the flood, 2273 of us",  # nobody says that it is a number
        "Model no. 22734",
        "Model no. 2273-8",
        "the tank says it holds 2273 gallons",
        "The number of my order is not at hand. Order no. 2273",
        "it cost $2273, no. of toilets: one",
        "call 555-201-2273 about the number in the tank",
        "write to me at zip code 44180, the mark is gone",
        "2273 Mallow Road, the number is worn",
        "serial number 2273",
        "invoice 2273",
        "the number is worn, please ship to Marlow, OH 44180",
    ],
)
def test_digits_that_are_something_else_identify_nothing(letter: str) -> None:
    assert told(letter, "model_no", "part_no") == []


def test_a_wrong_digit_is_an_unlisted_number_and_no_slip() -> None:
    for letter in (
        "The tank says 4419.",
        "model TV-419",
        "Model no. 4418-2",
        "TV-418-9 in the tank",
    ):
        assert told(letter, "model_no") == []
        assert only(letter, "unlisted").of == "number"


@pytest.mark.parametrize(
    "letter",
    [
        "4418 is stamped on the bowl",
        "the bowl is marked 4418",
        'the tank has nothing, the bowl "4418"',
        "on the bowl behind the seat it says 4418",
        "There is a number on the back of the bowl, 4419",
    ],
)
def test_a_number_on_the_bowl_is_not_the_tanks(letter: str) -> None:
    assert read(letter) == []


def test_of_two_numbers_the_one_in_the_tank_is_the_tanks() -> None:
    letter = "The number on the bowl is 2273 and the number inside the tank is 4418."
    assert told(letter, "model_no", "part_no", "unlisted") == [("4418",)]


def test_a_toilet_in_one_piece_has_its_number_on_the_bowl_too() -> None:
    assert told("A-4412 is stamped on the bowl", "model_no") == [("A-4412",)]


def test_a_number_followed_by_a_lone_capital_is_not_sure() -> None:
    assert not only("The tank says 4418 B.", "model_no").sure


def test_a_number_may_take_a_plural_s() -> None:
    fact = only("I need two ZQ-6203s", "part_no")
    assert (fact.value, fact.words) == (("ZQ-6203",), "ZQ-6203")


def test_an_article_is_no_piece_of_a_number() -> None:
    assert told("I have a 4412 toilet", "model_no") == []


# Numbers of toilets and of parts


def test_a_number_of_a_toilet_and_of_a_part_is_both_unless_its_place_decides() -> None:
    def names(letter: str) -> list[str]:
        return [fact.name for fact in read(letter)]

    assert names("the number is 9912") == ["model_no", "part_no"]
    assert names("the number inside the tank is 9912") == ["model_no"]
    assert names("the old flapper says 9912") == ["part_no"]
    assert names("part number 9912") == ["part_no"]


def test_a_tanks_number_on_a_seal_is_a_part_number_that_no_table_has() -> None:
    fact = only("the old flapper is marked 4418", "unlisted")
    assert (fact.value, fact.of) == (("4418",), "part")
    assert told("the old flapper is marked 4418", "model_no") == []


def test_a_number_moulded_on_a_seal_means_the_part_that_carries_it() -> None:
    assert told("the old flapper says 22 061", "part_no") == [("ZQ-6203",)]
    assert told("moulded on it: B2", "part_no") == [("ZQ-6209",)]
    assert told("b2 or not", "part_no") == []


def test_the_shops_own_numbers_need_no_cue() -> None:
    assert told("zq 6203 / ZQ6209", "part_no") == [("ZQ-6203",), ("ZQ-6209",)]


@pytest.mark.parametrize(
    ("letter", "role"),
    [
        ("The old one says ZQ-6203.", "old"),
        ("ZQ-6203 is moulded on the old flapper", "old"),
        ("ZQ-6203 came out of the toilet", "old"),
        ("I am replacing a ZQ-6203", "old"),
        ("I need another one of ZQ-6203", "old"),
        ("I want the same as ZQ-6203", "old"),
        ("My toilet has a ZQ-6203 in it now.", "old"),
        ("The one in it now is a ZQ-6203", "old"),
        ("the ZQ-6203 I took out was hard as stone", "old"),
        ("Will ZQ-6203 fit my Fenlock?", "asked"),
        ("does the ZQ-6203 work in a Fenlock", "asked"),
        ("Is ZQ-6203 right for it?", "asked"),
        ("is the ZQ-6203 the one I need?", "asked"),
        ("Can I use a ZQ-6203 in a Fenlock, will it fit?", "asked"),
        ("do you know if ZQ-6203 fits the Fenlock", "asked"),
        ("I bought ZQ-6203 and it doesn't fit", "tried"),
        ("Bought a ZQ-6203. It still leaks.", "tried"),
        ("ZQ-6203 was too small", "tried"),
        ("your ZQ-6203 arrived today but the ears point the wrong way", "tried"),
        ("I was told ZQ-6203 is the one", "asked"),
        ("Your website says ZQ-6203 fits a Fenlock", "asked"),
        ("Do I need ZQ-6203?", "asked"),
        ("What does ZQ-6203 cost, and will it fit a Fenlock?", "asked"),
        ("We have been using ZQ-6203 for years", "old"),
        ("I tried ZQ-6203 already", "tried"),
        ("I replaced the flapper with ZQ-6203 but it is leaking again", "tried"),
        ("We put in a ZQ-6203 but the water keeps running and it won't seal", "tried"),
        ("Send me ZQ-6203", "wanted"),
        ("What is the price of ZQ-6203?", "wanted"),
        ("do you stock ZQ-6203?", "wanted"),
        ("Is ZQ-6203 in stock?", "wanted"),
        ("could you send me ZQ-6203", "wanted"),
        ("ZQ-6203", "wanted"),
    ],
)
def test_what_is_said_of_a_part(letter: str, role: str) -> None:
    assert only(letter, "part_no").of == role


def test_each_part_of_a_letter_has_its_own_role() -> None:
    letter = "I bought ZQ-6203 but it doesn't fit, will ZQ-6209 work? The old one says 22-061."
    roles = [(f.words, f.of) for f in read(letter) if f.name == "part_no"]
    assert roles == [("ZQ-6203", "tried"), ("ZQ-6209", "asked"), ("22-061", "old")]


def test_parts_named_together_share_what_is_said_of_them() -> None:
    def roles(letter: str) -> list[str | None]:
        return [fact.of for fact in read(letter) if fact.name == "part_no"]

    assert roles("Which of ZQ-6203 or ZQ-6209 is right for a Fenlock?") == ["asked", "asked"]
    assert roles("I tried ZQ-6203, ZQ-6209 and ZQ-6240, none fit") == ["tried"] * 3
    assert roles("I bought a 22-061 R flapper (your ZQ-6203), it leaks too") == ["tried"] * 2


@pytest.mark.parametrize(
    "letter", ["4418? I can't read it well", "TV-418 or TV-420", "I think the number is 4418"]
)
def test_a_number_read_badly_is_not_sure(letter: str) -> None:
    assert not any(fact.sure for fact in read(letter) if fact.name == "model_no")


# Names that no table has


@pytest.mark.parametrize(
    ("letter", "of", "name"),
    [
        ("I have a Zandomar toilet", "brand", "Zandomar"),
        ("it was made by Quuxall", "brand", "Quuxall"),
        ("it was made by quuxall", "brand", "quuxall"),
        ("THE BRAND IS QUUXALL", "brand", "QUUXALL"),
        ("Brand: Quuxall", "brand", "Quuxall"),
        ("the model is Xyzzyx", "model", "Xyzzyx"),
        ("model is xyzzyx", "model", "xyzzyx"),
        ("It is called the Xyzzyx.", "model", "Xyzzyx"),
        ("a Tolmerane Xyzzyx toilet", "model", "Xyzzyx"),
        ("a tolmerane xyzzyx toilet", "model", "xyzzyx"),
        ("my Zandomar Fenlock leaks", "brand", "Zandomar"),
        ("the number inside is 9921", "number", "9921"),
        ("part number 88-123", "part", "88-123"),
        ("The old flapper says 88-123", "part", "88-123"),
        ("do you have WX-8812?", "part", "WX-8812"),
        ("TV-418 or TV-419", "number", "TV-419"),
        ("a Tolmerane WX-8812", "number", "WX-8812"),
        ("ZQ-620", "part", "ZQ-620"),  # like the shop's own
        ("tank G 1279", "number", "G 1279"),
        ('It says "Zandomar" on the lid', "brand", "Zandomar"),
        ("the toilet is a Zandomar", "brand", "Zandomar"),
        ("It's an old Zandomar high level cistern", "brand", "Zandomar"),
        ("do you have seals for Zandomar toilets", "brand", "Zandomar"),
    ],
)
def test_a_name_given_as_one_that_no_table_has(letter: str, of: str, name: str) -> None:
    fact = only(letter, "unlisted")
    assert (fact.value, fact.of) == ((name,), of)


def test_a_listed_model_under_an_unlisted_makers_name_is_not_sure() -> None:
    assert not only("my Zandomar Fenlock leaks", "model").sure


def test_the_maker_of_a_seal_is_no_maker_of_toilets() -> None:
    assert told("a Corvane flapper", "brand") == []
    assert read("a Corvane toilet") == []


# What holds for any letter

NAMES = st.sampled_from(sorted(TABLES.models))
SPEECH = st.sampled_from(
    """a an my toilet leaks Tolmerane Velmora Ashby Dale Kettle Ladder ZQ-6203 4418 2273 model
    no. # inside the tank . , - ' flapper fits bought? not made by Zandomar &""".split()  # noqa: SIM905
)


@given(st.lists(SPEECH, max_size=25).map(" ".join))
def test_words_are_those_of_the_letter(letter: str) -> None:
    for fact in read(letter):
        assert fact.words == letter[fact.start : fact.end]
        assert fact.choices


@given(NAMES, st.data())
@settings(max_examples=300)
def test_a_model_with_one_slip_in_a_long_word_is_among_the_readings(
    name: str, data: st.DataObject
) -> None:
    words = name.split(" ")
    long = [i for i, word in enumerate(words) if len(word) >= 6 and not ordinary(word.lower())]
    assume(long)
    at = data.draw(st.sampled_from(long))
    words[at] = data.draw(_slipped(words[at]))
    assume(not ordinary(words[at].lower()))
    read_as = {value for values in told(f"I have a {' '.join(words)}", "model") for value in values}
    exact = {v for key, vs in BOOK.models.values.items() if key == words[at].lower() for v in vs}
    assert name in read_as or exact & read_as


@given(st.text(st.characters(max_codepoint=127) | st.sampled_from("½’“”–é×İﬁß"), max_size=300))
def test_no_letter_is_too_strange(letter: str) -> None:
    for fact in read(letter):
        assert fact.words == letter[fact.start : fact.end]


def test_a_very_long_letter_is_read() -> None:
    letter = "My Grivelle Fenlock leaks. The old flapper says 22-061. " * 1000
    facts = read(letter)
    assert len(facts) == 3000


def test_numbers_are_alike_but_for_case_dashes_and_look_alike_letters() -> None:
    assert number_key("ax-21.77") == number_key("AX 2177") == "ax2177"
    assert folded(number_key("A-4OI2")) == folded(number_key("a4012"))
