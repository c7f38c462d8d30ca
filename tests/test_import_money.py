"""Amounts as suppliers write them. Common practice, no source."""

from __future__ import annotations

import pytest

from assistant.importing.money import amount, decimal_comma


@pytest.mark.parametrize(
    ("raw", "text"),
    [
        ("7.50", "7.50"),
        ("7.5", "7.50"),
        ("7", "7.00"),
        (".5", "0.50"),
        ("0.125", "0.125"),
        ("$7.50", "7.50"),
        ("$ 7.50", "7.50"),
        ("7.50 $", "7.50"),
        ("1,234.50", "1234.50"),
        ("1,234", "1234.00"),
        ("12,345,678.9", "12345678.90"),
        ("1 234.50", "1234.50"),
        ("1'234.50", "1234.50"),
        ("1.234,50", "1234.50"),
        ("1.234.567", "1234567.00"),
        ("7,5", "7.50"),
        ("7,50", "7.50"),
        ("$1,234.50", "1234.50"),
    ],
)
def test_an_amount_is_made_plain(raw: str, text: str) -> None:
    assert amount(raw, "$", comma=False).text == text


@pytest.mark.parametrize(
    ("raw", "rules"),
    [
        ("7.5", ()),
        ("$7.50", ("currency sign taken off",)),
        ("$1,234", ("currency sign taken off", "thousands separator taken out")),
        ("7,50", ("comma before the cents read as a point",)),
        ("1.234,50", ("dots between thousands taken out, comma before the cents",)),
    ],
)
def test_what_was_done_is_told(raw: str, rules: tuple[str, ...]) -> None:
    assert amount(raw, "$", comma=False).rules == rules


@pytest.mark.parametrize("raw", ["free", "-3", "7..5", "1,23,4", "7.50 each", "$$7", "1e3", "5%"])
def test_what_follows_no_rule_is_left_to_the_tables_own_reader(raw: str) -> None:
    assert amount(raw, "$", comma=False).text == raw.removeprefix("$")


@pytest.mark.parametrize("raw", ["£7.50", "7,50 €", "$€7"])
def test_another_currency_is_refused(raw: str) -> None:
    with pytest.raises(ValueError, match=r"in the shop's currency, which is \$"):
        amount(raw, "$", comma=False)


def test_a_shop_has_its_own_currency() -> None:
    assert amount("£7.50", "£", comma=False).text == "7.50"
    assert amount("EUR 7,50", "EUR", comma=True).text == "7.50"


@pytest.mark.parametrize(
    ("cells", "comma"),
    [
        (["7,50", "1.234"], True),
        (["1.234,50"], True),
        (["$7,5"], True),
        (["1,234", "1,234.50", "7.50", ""], False),
        (["1.234.567"], True),
        (["1 234,50"], True),
    ],
)
def test_a_column_shows_where_its_cents_begin(cells: list[str], comma: bool) -> None:
    assert decimal_comma(cells, "$") == comma


@pytest.mark.parametrize("raw", ["1.234", "1,234"])
def test_beside_cents_after_a_comma_a_lone_mark_before_three_digits_is_not_guessed(
    raw: str,
) -> None:
    with pytest.raises(ValueError, match=r"1234 or 1\.234: .* it may be either"):
        amount(raw, "$", comma=True)


def test_where_cents_stand_after_a_point_a_comma_parts_thousands() -> None:
    assert amount("1,234", "$", comma=False).text == "1234.00"
    assert amount("1.234", "$", comma=False).text == "1.234"
