"""The composer and the checker agree on every true answer, and the checker catches every false one.

The composer says nothing that the checker takes out; and what is changed in a composed answer so
that the CSV files no longer bear it out is taken out, whatever the change.
"""

from __future__ import annotations

import random
import re
from collections import Counter

import pytest
from composed import SEED, composed
from demonstration import PART_NO, fits, rows, seals, shop, verdicts

from assistant.answers.check import Checked, check
from assistant.answers.compose.case import Audience
from assistant.answers.reply import statements
from assistant.measuring.campaign.corruption import Corrupted, corrupted, let_through
from assistant.measuring.campaign.kinds import conditions, quoted, shelf, words
from assistant.measuring.campaign.kinds import fits as fitting
from assistant.measuring.campaign.told import Told

CHECKED = 2000  # false answers, of some thirty thousand
AT_LEAST = 12  # of every kind, where there are so many
GENERAL = statements(shop())
KINDS = (*fitting.KINDS, *conditions.KINDS, *words.KINDS, *shelf.KINDS, *quoted.KINDS)
both = pytest.mark.parametrize("audience", ["customers", "staff"])


def examine(text: str, letter: str, audience: Audience) -> Checked:
    return check(
        text,
        shop().tables,
        audience=audience,
        statements=GENERAL,
        message=letter,
        valve_is_original=False,
        currency="$",
    )


@both
def test_no_sentence_of_a_composed_answer_is_taken_out(audience: Audience) -> None:
    for told in composed(audience):
        out = [c.claim for c in told.answer.checks if c.result != "supported"]
        assert not out, f"{told.letter}: {out}"


@both
def test_a_composed_answer_passes_a_second_check_untouched(audience: Audience) -> None:
    for told in random.Random(SEED).sample(composed(audience), 80):
        checked = examine(told.text, told.letter, audience)
        assert checked.taken_out == ()
        assert checked.text == told.text


@both
def test_every_part_named_is_taken_by_every_build_that_is_possible(audience: Audience) -> None:
    named = 0
    for told in composed(audience):
        if str(told.answer.outcome) != "part" or told.old:
            continue
        also = [(p, told.answer.parts[0].position) for p in told.answer.also_fits]
        if len(told.positions) > 1:
            also = []  # an answer about a set does not say in its data which valve they are for
        for part_no, position in [(p.part_no, p.position) for p in told.answer.parts] + also:
            for build in told.builds:
                verdict = verdicts()[build, position, part_no]
                named += 1
                assert verdict == "fits" or (
                    verdict == "fits with change" and "with this change" in told.text
                ), f"{told.letter}: {part_no} in {build}"
    assert named > 500


@both
def test_what_is_ruled_out_is_in_no_place_known_to_fit(audience: Audience) -> None:
    for told in composed(audience):
        for ruled in told.answer.ruled_out:
            places = [(b, p) for b in told.builds for p in told.positions]
            assert not any(fits(ruled.part_no, *place) for place in places), told.letter


def test_customers_never_see_costs_counts_or_what_staff_note() -> None:
    remarks = {r["note"] for table in ("fitment", "flush_valves") for r in rows(table)} - {""}
    for told in composed("customers"):
        assert not re.search(r"on hand|costs us|for the counter", told.text, re.IGNORECASE)
        assert not any(remark in told.text for remark in remarks)
        money = set(re.findall(r"\$([\d.]+\d)", told.text))
        assert money <= {seals()[p]["price"] for p in PART_NO.findall(told.text)}


def test_staff_see_cost_and_count_of_the_part_named() -> None:
    told = next(t for t in composed("staff") if t.main == "PBK-6230")
    assert "40 on hand, it costs us $1.90" in told.text  # seals.csv


def test_the_letters_reach_every_build_and_every_seal() -> None:
    reached = {build for told in composed("staff") for build in told.builds}
    spoken = {p for told in composed("staff") for p in PART_NO.findall(told.text)}
    assert len(reached) == len(rows("toilets"))
    assert len(spoken) >= 70  # of 76; a few have only doubtful evidence


def test_every_false_word_in_a_composed_answer_is_caught() -> None:
    chosen = _sampled()
    missed = [(t, c) for t, c in chosen if _is_missed(t, c)]
    counts = Counter(c.kind for _, c in chosen)
    print(f"{len(chosen)} false answers of {len(counts)} kinds, {len(missed)} missed")
    print("\n".join(f"{n:5} {kind}" for kind, n in sorted(counts.items())))
    shown = [f"{c.kind}: {c.sentence} <- {t.letter}" for t, c in missed[:9]]
    assert not missed, "\n".join([f"{len(missed)} of {len(chosen)} let through", *shown])
    assert len(counts) >= 30, counts
    assert len(chosen) >= CHECKED, counts


def _sampled() -> list[tuple[Told, Corrupted]]:
    """A few of every kind, then any: the rare kinds are not lost among the many."""
    every = [
        (told, false)
        for audience in ("customers", "staff")
        for told in composed(audience)
        for false in corrupted(told, KINDS)
    ]
    random.Random(SEED).shuffle(every)
    taken: Counter[str] = Counter()
    first, rest = [], []
    for told, false in every:
        taken[false.kind] += 1
        (first if taken[false.kind] <= AT_LEAST else rest).append((told, false))
    return [*first, *rest[: CHECKED - len(first)]]


def _is_missed(told: Told, false: Corrupted) -> bool:
    return let_through(told, false, examine(false.text, told.letter, false.audience).text)
