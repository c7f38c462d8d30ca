"""The campaign: what is true by the files alone, what is drawn of it, and what is missed."""

from __future__ import annotations

import json
import shutil
from collections import Counter
from collections.abc import Iterator, Sequence
from pathlib import Path

import pytest
from click.testing import CliRunner
from demonstration import FOLDER, TRUTH, shop

from assistant.answers.answer import Answer
from assistant.answers.draft import Part
from assistant.cli import cli
from assistant.fitment.decision import Outcome
from assistant.measuring.campaign.answers import Gathered, gathered
from assistant.measuring.campaign.checking import Unchecked, all_shown
from assistant.measuring.campaign.corruption import Corrupted, corrupted, let_through, sentences
from assistant.measuring.campaign.drawing import drawn
from assistant.measuring.campaign.kinds import conditions, every_kind, fits, quoted, shelf, words
from assistant.measuring.campaign.labels import possible
from assistant.measuring.campaign.run import Campaign, campaign
from assistant.measuring.campaign.told import Told
from assistant.measuring.campaign.truth import Truth
from assistant.measuring.messages import Branch, Expected
from assistant.shop import Shop

KINDS = (*fits.KINDS, *conditions.KINDS, *words.KINDS, *shelf.KINDS, *quoted.KINDS)

# One model in two builds: pegs 82 mm apart up to 1985, 90 mm apart since. SL-2 is made for the
# first, SL-20 for the second; SL-3 takes a change; nothing is known of SL-4.
TABLES = {
    "toilets": "build,brand,model,model_no,tank_mark,made_from,made_to,pieces,flush_full_gpf\n"
    "ash-a,Ash,Mere,A 1,,1970,1985,2,\nash-b,Ash,Mere,A 2,,1986,1999,2,\n",
    "flush_valves": "valve,style,opening_in,mount,peg_span_mm,pegs,overflow,overflow_mm\n"
    "near,flap,2,pegs,82,up,round,28\nwide,flap,2,pegs,90,up,round,28\n",
    "build_valves": "build,position,valve,seals_needed\nash-a,main,near,1\nash-b,main,wide,1\n",
    "seals": "part_no,name,style,opening_in,mount,ear_span_mm,ears,ring_mm,flush_gpf_min,"
    "flush_gpf_max,status,replaced_by,price,cost,on_hand,pack\n"
    "SL-2,narrow,flap,2,pegs,82,up,,,,stocked,,4.00,2.00,3,1\n"
    "SL-20,wide,flap,2,pegs,90,up,,,,stocked,,5.00,2.50,3,1\n"
    "SL-3,blank,flap,2,pegs,,up,,,,stocked,,6.00,3.00,3,1\n"
    "SL-4,other,flap,2,pegs,82,up,,,,stocked,,7.00,3.50,3,1\n",
    "fitment": "evidence,valve,build,position,part_no,verdict,change,kind\n"
    "e1,near,,,SL-2,fits,,maker's sheet\ne2,wide,,,SL-20,fits,,maker's sheet\n"
    "e3,near,,,SL-3,fits with change,trim the ears,maker's sheet\n",
    "styles": "style,plain_name,aliases\nflap,flapper on pegs,flapper\n",
}


@pytest.fixture
def small(tmp_path: Path) -> Truth:
    """The truth of a shop of four seals and two builds."""
    folder = tmp_path / "knowledge" / "tables"
    folder.mkdir(parents=True)
    for name, text in TABLES.items():
        (folder / f"{name}.csv").write_text(text, encoding="utf-8")
    return Truth(folder)


def told(truth: Truth, text: str, *builds: str, part_no: str = "SL-2") -> Told:
    """A good answer about a Mere."""
    part = Part(part_no, "main", 1, None, "evidence", "stocked", ())
    answer = Answer(outcome=Outcome.PART, text=text, parts=(part,))
    return Told(truth, "Which seal for my Ash Mere?", "customers", builds, answer)


def test_what_fits_is_found_by_the_files_alone(small: Truth) -> None:
    assert small.fits("SL-2", "ash-a")
    assert not small.fits("SL-2", "ash-b")  # 82 mm of ears on 90 mm of pegs
    assert not small.fits("SL-3", "ash-a")
    assert small.changes["ash-a", "main", "SL-3"] == "trim the ears"
    assert not small.fits("SL-4", "ash-a")  # it could, but nothing says so


def test_a_number_is_the_shops_own_and_whole(small: Truth) -> None:
    assert small.part_no.findall("SL-20 and **SL-2**, SL-200, XSL-2, PBK-6230") == ["SL-20", "SL-2"]


def test_another_part_is_false_only_where_no_build_meant_takes_it(small: Truth) -> None:
    answer = told(small, "**SL-2** fits the Ash Mere made from 1970 to 1985.", "ash-a")
    false = {said for _, said in fits.another_part(answer, answer.text)}
    assert "**SL-20** fits the Ash Mere made from 1970 to 1985." in false
    assert answer.text not in false


def test_years_are_false_only_where_a_build_of_them_does_not_take_the_part(small: Truth) -> None:
    answer = told(small, "**SL-2** fits the Ash Mere made from 1970 to 1985.", "ash-a")
    said = [false for _, false in fits.other_years(answer, answer.text)]
    assert "**SL-2** fits the Ash Mere made from 1970 to 1986." in said
    assert "**SL-2** fits the Ash Mere." in said
    assert not any("made in 1985" in false for false in said)  # true, though narrower


def test_a_seal_that_fits_with_the_change_said_is_not_called_false(small: Truth) -> None:
    text = "**SL-3** fits the Ash Mere made in 1980. **SL-3** fits with this change: trim the ears."
    answer = told(small, text, "ash-a", part_no="SL-3")
    false = [said for _, said in fits.other_years(answer, sentences(text)[0])]
    assert false
    assert not any("made in 1985" in said for said in false)


def test_where_no_toilet_is_known_nothing_is_said_about_fitting(small: Truth) -> None:
    answer = told(small, "**SL-2** fits the Ash Mere.")
    assert {false.kind for false in corrupted(answer, fits.KINDS)} == {
        "a promise added",
        "staff's own, for customers",
    }


def expected(reason: str, *parts: str, branches: Sequence[Branch] = ()) -> Expected:
    return Expected(("part",), True, reason, frozenset(parts), tuple(branches), frozenset(), ())


def test_builds_are_those_of_the_label_where_the_files_bear_it_out(small: Truth) -> None:
    branches = [Branch("to 1985", frozenset({"SL-2"})), Branch("since", frozenset({"SL-20"}))]
    assert possible(small, expected("ash-a: alone in 1980", "SL-2")) == (("ash-a",), "")
    assert possible(small, expected("ash-a ash-b", branches=branches))[0] == ("ash-a", "ash-b")
    assert possible(small, expected("ash-a; ash-b is later", "SL-2")) == ((), "")
    assert possible(small, expected("ash-a, but the valve was replaced", "SL-2")) == ((), "")


def test_every_kind_is_drawn_rare_ones_whole_and_a_seed_repeats() -> None:
    many = [("rare", n) for n in range(3)] + [("common", n) for n in range(3, 1000)]
    first = drawn(many, 100, seed=5)
    assert {0, 1, 2} <= set(first)
    assert len(first) == len(set(first)) == 100
    assert drawn(many, 100, seed=5) == first
    assert drawn(many, 100, seed=6) != first
    assert drawn(many, 5000, seed=5) == list(range(1000))


def lets_all_through(many: Sequence[Unchecked]) -> Iterator[str]:
    """A checker that checks nothing."""
    return (given.text for given in many)


def shows_nothing(many: Sequence[Unchecked]) -> Iterator[str]:
    """A checker that takes everything out."""
    return ("" for _ in many)


def ran(good: Told, check_all: object, count: int = 30) -> Campaign:
    found = Gathered(1, (good,), Counter())
    return campaign(found, KINDS, check_all, count=count, seed=1)  # type: ignore[arg-type]


def test_what_is_let_through_is_missed_and_what_is_taken_out_is_caught(small: Truth) -> None:
    good = told(small, "**SL-2** fits the Ash Mere made from 1970 to 1985.", "ash-a")
    open_, shut = ran(good, lets_all_through), ran(good, shows_nothing)
    assert open_.checked == len(open_.missed) > 10
    assert (open_.again.count, open_.beside.count) == (0, 0)
    assert not shut.missed
    assert (shut.again.count, shut.again.of) == (1, 1)  # the one true sentence of the answer
    assert shut.beside.count == shut.beside.of > 0


def test_half_of_a_falsehood_is_missed_too_and_so_is_one_in_other_marks(small: Truth) -> None:
    good = told(small, "**SL-2** fits the Ash Mere.", "ash-a")
    false = Corrupted("two", "", "**SL-2** fits the Ash Mere. It fits every toilet.")
    assert let_through(good, false, "**SL-2** fits the Ash Mere. It fits _every_ toilet.")
    assert let_through(good, false, "It fits&nbsp;every toilet.")
    assert not let_through(good, false, "**SL-2** fits the Ash Mere.")
    assert not let_through(good, false, "1. **SL-2** fits the Ash Mere.")  # true, at a point
    assert let_through(good, false, "1. It fits 2 toilets.")


def test_the_same_falsehood_is_counted_once(small: Truth) -> None:
    good = told(small, "**SL-2** fits the Ash Mere made from 1970 to 1985.", "ash-a")
    twice = campaign(
        *(Gathered(2, (good, good), Counter()), KINDS, lets_all_through), count=999, seed=1
    )
    assert twice.made == ran(good, lets_all_through, 999).made


def test_the_demonstrations_answers_have_the_labels_builds(few: Shop) -> None:
    found = gathered(few, TRUTH, None, lambda done, of: None)
    assert found.messages == 3
    assert {t.builds for t in found.good} == {("quellwick-tamsel-a",), ("dunmarrow-jassory-a",)}
    assert {t.audience for t in found.good} == {"customers", "staff"}
    assert sum(found.left_out.values()) == 2  # the label that no answer can meet
    checked = campaign(found, KINDS, all_shown(few), count=60, seed=3)
    assert (checked.checked, len(checked.missed), checked.again.count) == (60, 0, 0)


def _row(name: str, text: str, reason: str, parts: Sequence[str]) -> str:
    label = {"outcome": ["part"], "answerable": True, "reason": reason, "parts": list(parts)}
    row = {"id": name, "split": "tune", "kind": [], "text": text, "answers": [label], "facts": []}
    return json.dumps(row) + "\n"


@pytest.fixture
def few(tmp_path: Path) -> Shop:
    """The demonstration with three labelled messages, one of them labelled wrongly."""
    tamsel, jassory = "Quellwick Tamsel of 1961, which seal?", "Dunmarrow Jassory of 1981, seal?"
    (tmp_path / "eval").mkdir()
    (tmp_path / "eval" / "messages.jsonl").write_text(
        _row("t1", tamsel, "quellwick-tamsel-a", ("PBK-4471", "PBK-4483", "PBK-4526"))
        + _row("t2", jassory, "dunmarrow-jassory-a", ("PBK-5109", "PBK-5118", "PBK-5160"))
        + _row("t3", tamsel, "dunmarrow-jassory-a", ("PBK-5109",)),
        encoding="utf-8",
    )
    opened = shop()
    return Shop(tmp_path, opened.settings, opened.tables, opened.notes)


@pytest.fixture
def folder(few: Shop) -> Path:
    """The same as a folder, its index that of the demonstration."""
    (few.folder / "knowledge").symlink_to(FOLDER / "knowledge")
    shutil.copytree(FOLDER / "index", few.folder / "index")
    return few.folder


def test_the_command_tells_totals_and_kinds_and_keeps_a_page(folder: Path) -> None:
    given = ["eval", "--check", "--count", "40", "--seed", "7", "--shop", str(folder)]
    first = CliRunner().invoke(cli, given)
    page = (folder / "eval" / "check.md").read_text(encoding="utf-8")
    again = CliRunner().invoke(cli, [*given, "--json"])
    assert (first.exit_code, again.exit_code) == (0, 0), first.output
    assert first.stdout.startswith("false answers: 40 checked of ")
    assert "missed: 0 of 40 (0.0%)" in first.stdout
    assert "another part" in first.stdout
    told = json.loads(again.stdout)
    assert told["false answers"]["missed"] == 0
    assert sum(of["checked"] for of in told["kinds"].values()) == 40
    assert page == (folder / "eval" / "check.md").read_text(encoding="utf-8")  # by the same seed
    assert not [p.name for p in (folder / "eval").iterdir() if p.name.endswith(".new")]


def test_one_that_is_let_through_ends_with_exit_code_1_and_is_told_in_full(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(
        "assistant.measuring.campaign.checking.shown", lambda shop, given: given.text
    )
    given = ["eval", "--check", "--count", "20", "--shop", str(folder)]
    result = CliRunner().invoke(cli, given)
    assert result.exit_code == 1, result.output
    assert "missed: 20 of 20 (100.0%)" in result.output
    assert result.output.count("let through: ") == 10


def test_a_check_is_of_the_labelled_messages_alone() -> None:
    result = CliRunner().invoke(cli, ["eval", "--check", "--collection", "cranfield"])
    assert result.exit_code == 2
    assert "--check goes with neither" in result.output


def test_every_kind_has_a_module_that_is_found_by_itself() -> None:
    assert set(KINDS) <= set(every_kind())
    assert len(every_kind()) == len(set(every_kind()))
