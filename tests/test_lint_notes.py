"""Every rule for notes: what it finds and where, and that it finds nothing in the note mended.

What the notes say of the trade is common practice, no source; makers and parts are invented.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path

import pytest

from assistant.linting.finding import Finding, Rule
from assistant.settings import Settings
from tests.checking_tables import TABLES
from tests.demonstration import shop
from tests.linted_notes import BODY, RULES, TODAY, found, gathered, note, places

SLACK = "A chain needs about half an inch of slack.\n"
MANY = "Leave the chain half an inch of slack. " * 20  # 160 words
HEAD = "updated: 2026-10-12\n"
ASKED = "asked:\n  how-much-slack:\n    - {}\n    - {}\n"
ABOUT = "pegged-flapper, ring-flapper, tank-ball, canister"  # the styles of checking_tables


@dataclass(frozen=True)
class Case:
    """Notes with one fault, where a rule finds it, and notes without it."""

    rule: str
    bad: Mapping[str, str]
    at: tuple[str, ...]
    good: Mapping[str, str]


def case(rule: str, bad: str, good: str, *at: str) -> Case:
    """The fault stands in one note alone."""
    return Case(rule, {"chains": bad}, at, {"chains": good})


CASES = (
    case(
        "broken-link",
        note(f"{BODY}More stands in [hinges](hinges.md).\n"),
        note(f"{BODY}More stands in [this note](chains.md#how-much-slack).\n"),
        "chains:11",
    ),
    case(
        "contradicts-tables",
        note("## Balls\n\nThis is about balls.\nA tank ball hooks over two pegs.\n"),
        note("## Balls\n\nThis is about balls.\nA tank ball hangs on a thin wire.\n"),
        "chains:11",
    ),
    case(
        "names-a-part",
        note(f"## Slack\n\n{SLACK}SL-2044 comes with a chain.\n"),
        note(f"## Slack\n\n{SLACK}Most flappers come with a chain.\n"),
        "chains:11",
    ),
    case(
        "not-quotable",
        note("## Slack\n\nIt needs about half an inch of slack.\nLess holds the flapper open.\n"),
        note("## Slack\n\nA chain needs about half an inch of slack.\nIt may have more.\n"),
        "chains:10",
    ),
    case(
        "staff-words",
        note(f"## Slack\n\n{SLACK}The margin on chains is good.\n"),
        note(f"## Slack\n\n{SLACK}The margin on chains is good.\n", audience="staff"),
        "chains:11",
    ),
    case(
        "unfinished-note",
        note(f"{BODY}Two or three more may follow, each on a line of its own.\n"),
        note(),
        "chains:11",
    ),
    case(
        "empty-section",
        note(f"# The chain\n\n{BODY}\n## Too long\n\n## Too short\n\n{SLACK}"),
        note(f"# The chain\n\n## Slack\n\n### How much\n\n{SLACK}"),
        "chains:14",
    ),
    case("length", note(), note(f"## Slack\n\n{MANY}"), "chains:1"),
    case("stale-note", note(more="updated: 2025-10-12\n"), note(more=HEAD), "chains:6"),
    Case(
        "title-twice",
        {"chains": note(), "the-chain": note(title="The  chain")},
        ("the-chain:2",),
        {"chains": note(), "wires": note(title="The wire")},
    ),
    Case("title-and-file", {"wires": note()}, ("wires:2",), {"chains": note()}),
    case(
        "asked-twice",
        note(more=HEAD + ASKED.format("how tight", "How tight?")),
        note(more=HEAD + ASKED.format("how tight", "how loose")),
        "chains:10",
    ),
    case(
        "style-without-note",
        note(styles="pegged-flapper, tank-ball, canister"),
        note(styles=ABOUT),
        "knowledge/tables/styles.csv:3",
    ),
    Case(
        "style-without-fitting",
        {"chains": note(styles=ABOUT), "fitting": note(styles="ring-flapper", tags="installing")},
        tuple(f"knowledge/tables/styles.csv:{line}" for line in (2, 4, 5)),
        {"chains": note(styles=ABOUT, tags="water, installing")},
    ),
)


def found_in(rule: str, folder: Path, notes: Mapping[str, str]) -> list[Finding]:
    """What a rule finds in notes beside the tables of a small shop."""
    return found(rule, gathered(folder, notes, known=TABLES))


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.rule)
def test_a_rule_finds_its_fault_at_its_line(case: Case, tmp_path: Path) -> None:
    assert tuple(places(found_in(case.rule, tmp_path, case.bad))) == case.at


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.rule)
def test_a_rule_finds_nothing_where_its_fault_is_mended(case: Case, tmp_path: Path) -> None:
    assert found_in(case.rule, tmp_path, case.good) == []


def test_every_rule_has_a_bad_and_a_good_example_here_or_among_those_of_meaning() -> None:
    of_meaning = {
        "no-model",
        "says-the-same",
        "never-found",
        "stale-label",
    }  # test_lint_notes_meaning
    assert {case.rule for case in CASES} | of_meaning == set(RULES)


@pytest.mark.parametrize("rule", RULES.values(), ids=lambda rule: rule.name)
def test_a_rule_gives_its_reason_in_whole_sentences(rule: Rule) -> None:
    assert rule.reason.endswith(".")
    assert len(rule.reason.split()) >= 10


def test_what_ends_the_command_with_code_1_is_what_readers_would_be_misled_by() -> None:
    errors = {rule.name for rule in RULES.values() if rule.level == "error"}
    assert errors == {"broken-link", "contradicts-tables", "names-a-part", "staff-words"}


def test_a_finding_is_one_line_and_tells_a_mend(tmp_path: Path) -> None:
    for one in CASES:
        for finding in found_in(one.rule, tmp_path / one.rule, one.bad):
            assert "\n" not in finding.what + finding.mend
            assert not finding.what.endswith(".")
            assert not finding.mend.endswith(".")
            assert finding.mend


def test_the_demonstrations_notes_have_no_error(tmp_path: Path) -> None:
    demo = shop()
    assert len(demo.notes) >= 90
    known = gathered(tmp_path, {}, known=demo.tables, settings=demo.settings)
    whole = replace(known, folder=demo.folder, notes=demo.notes)
    told = [find for rule in RULES.values() if rule.level == "error" for find in rule.find(whole)]
    assert told == []


# -- the day


@pytest.mark.parametrize(
    ("more", "told"),
    [
        ("", "does not tell when it was gone over"),
        ("updated:\n", "does not tell when it was gone over"),
        ("updated: 2026-11-26\n", "2026-11-26 is yet to come"),
        ("updated: 2025-10-20\n", "was last gone over 401 days ago"),
    ],
)
def test_a_day_that_is_missing_to_come_or_long_past_is_told(
    more: str, told: str, tmp_path: Path
) -> None:
    (finding,) = found_in("stale-note", tmp_path, {"chains": note(more=more)})
    assert finding.what == told


@pytest.mark.parametrize("day", ["2026-11-25", "2025-10-21"])
def test_today_and_the_oldest_day_allowed_are_no_fault(day: str, tmp_path: Path) -> None:
    assert found_in("stale-note", tmp_path, {"chains": note(more=f"updated: {day}\n")}) == []


def test_a_note_without_a_day_is_told_todays(tmp_path: Path) -> None:
    (finding,) = found_in("stale-note", tmp_path, {"chains": note(more="")})
    assert str(TODAY) in finding.mend


# -- the length


@pytest.mark.parametrize(
    ("words", "tags", "is_told"),
    [
        (149, "", True), (150, "", False), (600, "", False), (601, "", True),
        (10, "phrases", False), (900, "phrases", False),
    ],
)  # fmt: skip
def test_a_note_runs_to_between_150_and_600_words(
    words: int, tags: str, is_told: bool, tmp_path: Path
) -> None:
    one = note("## A heading of five words\n\n" + "word " * words, tags=tags)
    told = found_in("length", tmp_path, {"chains": one})
    assert [finding.what for finding in told] == [f"has {words} words"] * is_told


# -- titles


@pytest.mark.parametrize(
    ("name", "title", "is_told"),
    [
        ("chains", "The chain", False),
        ("fitting-a-flapper-on-pegs", "Fitting a flapper", False),
        ("tipping-bucket", "The gasket of a tipping bucket", False),
        ("safety", "Before you put your hands in the tank", True),
        ("chains-and-wires", "The chain and the hook", True),
    ],
)
def test_a_file_may_say_less_or_more_than_its_title_but_nothing_else(
    name: str, title: str, is_told: bool, tmp_path: Path
) -> None:
    assert bool(found_in("title-and-file", tmp_path, {name: note(title=title)})) is is_told


# -- wordings


def test_a_wording_in_two_notes_names_the_other_place(tmp_path: Path) -> None:
    asked = HEAD + "asked: {how-much-slack: ['How tight?']}\n"
    notes = {"chains": note(more=asked), "wires": note(more=asked, title="The wire")}
    (finding,) = found_in("asked-twice", tmp_path, notes)
    assert places([finding]) == ["wires:7"]
    assert finding.what == "'How tight?' stands at knowledge/notes/chains.md:7 too"


def test_a_wording_over_several_lines_is_told_in_one(tmp_path: Path) -> None:
    asked = HEAD + "asked:\n  how-much-slack:\n    - how tight\n    - |\n      how\n      tight\n"
    (finding,) = found_in("asked-twice", tmp_path, {"chains": note(more=asked)})
    assert places([finding]) == ["chains:10"]
    assert finding.what.startswith("'how tight' stands at ")


@pytest.mark.parametrize(
    "asked", ["", "0", "{how-much-slack: }", "{how-much-slack: no}", "{how-much-slack: []}"]
)
def test_a_section_may_have_no_wordings(asked: str, tmp_path: Path) -> None:
    one = note(more=f"{HEAD}asked: {asked}\n")
    assert found_in("asked-twice", tmp_path, {"chains": one}) == []


# -- headings


@pytest.mark.parametrize(
    "under", ["![the ears](../pictures/ears.svg)", "- a list", "> said", "text", "| a | b |"]
)
def test_what_readers_see_as_text_fills_a_section(under: str, tmp_path: Path) -> None:
    assert found_in("empty-section", tmp_path, {"chains": note(f"## Slack\n\n{under}\n")}) == []


@pytest.mark.parametrize("under", ["", "<!-- later -->", "```\ncode\n```", "---"])
def test_what_no_answer_can_quote_does_not_fill_a_section(under: str, tmp_path: Path) -> None:
    (finding,) = found_in("empty-section", tmp_path, {"chains": note(f"## Slack\n\n{under}\n")})
    assert finding.what == "nothing stands under 'Slack'"


# -- the tables


@pytest.mark.parametrize("audience", ["customers", "staff"])
@pytest.mark.parametrize(
    ("sentence", "named"),
    [
        ("Zendrake used it for years.", "'Zendrake'"),
        ("SL-2044 has a chain of its own.", "'SL-2044'"),
        ("A chain costs $1.20.", "'$1.20'"),
        ("Ours is like an SL-9999.", "something"),  # of the shape of a part number
    ],
)
def test_a_note_of_any_audience_names_no_maker_part_or_price(
    audience: str, sentence: str, named: str, tmp_path: Path
) -> None:
    one = note(f"## Slack\n\n{SLACK}{sentence}\n", audience=audience)
    (finding,) = found_in("names-a-part", tmp_path, {"chains": one})
    assert finding.what == f'names {named}, for which no note can vouch: "{sentence}"'


def test_what_the_tables_say_too_is_theirs_to_say(tmp_path: Path) -> None:
    one = note("## A price\n\nSL-2044 costs $4.90.\n")  # as in seals.csv, until that changes
    assert len(found_in("names-a-part", tmp_path, {"chains": one})) == 1
    assert found_in("contradicts-tables", tmp_path, {"chains": one}) == []


def test_a_false_price_is_told_as_contradicted_and_told_once(tmp_path: Path) -> None:
    one = {"chains": note("## A price\n\nSL-2044 costs $5.90.\n")}
    (finding,) = found_in("contradicts-tables", tmp_path, one)
    assert "seals:SL-2044" in finding.what
    assert found_in("names-a-part", tmp_path, one) == []


def test_each_sentence_of_a_list_is_told_at_its_own_line(tmp_path: Path) -> None:
    body = f"## Slack\n\n1. {SLACK}2. Cut off\n   the rest of SL-2044.\n3. Ask Zendrake.\n"
    assert places(found_in("names-a-part", tmp_path, {"chains": note(body)})) == [
        "chains:11",
        "chains:13",
    ]


def test_what_leans_on_a_sentence_at_fault_is_not_told_of_as_well(tmp_path: Path) -> None:
    body = "## Slack\n\nSL-2044 has a chain.\nIt wants half an inch of slack.\n"
    assert found_in("not-quotable", tmp_path, {"chains": note(body)}) == []


def test_a_sentence_too_long_to_be_checked_is_told_in_a_few_words(tmp_path: Path) -> None:
    endless = "A chain wants slack, " + "and then some more of it, " * 40 + "and no end."
    body = note(f"## Slack\n\n{SLACK}{endless}\n")
    (finding,) = found_in("not-quotable", tmp_path, {"chains": body})
    assert places([finding]) == ["chains:11"]
    assert endless[:70] in finding.what
    assert len(finding.what) < 150
    assert "make it shorter" in finding.mend


def test_nothing_is_contradicted_by_tables_that_could_not_be_read_to_the_end(
    tmp_path: Path,
) -> None:
    (case,) = (case for case in CASES if case.rule == "contradicts-tables")
    small = gathered(tmp_path, case.bad, known=TABLES)
    assert found("contradicts-tables", replace(small, ids={})) == []


def test_without_settings_prices_are_read_all_the_same(tmp_path: Path) -> None:
    body = {"chains": note(f"## Slack\n\n{SLACK}A chain costs $1.20.\n")}
    small = gathered(tmp_path, body, known=TABLES, settings=None)
    assert len(found("names-a-part", small)) == 1
    in_pounds = gathered(tmp_path, body, known=TABLES, settings=Settings(name="S", currency="£"))
    assert found("contradicts-tables", in_pounds) == []


def test_where_a_note_could_not_be_read_it_may_be_the_one_about_a_style(tmp_path: Path) -> None:
    fault = Finding(path="knowledge/notes/rings.md", line=1, what="is not UTF-8", mend="save it")
    small = gathered(tmp_path, {"chains": note()}, known=TABLES, faults=(fault,))
    assert found("style-without-note", small) == found("style-without-fitting", small) == []
    assert len(found("style-without-note", replace(small, faults=()))) == 4
