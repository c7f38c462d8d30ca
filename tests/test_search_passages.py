"""Notes cut at their headings: addresses, sentences, and the lines where they stand.

The headings are held against CommonMark's own examples. `commonmark_headings.json` quotes them
from the CommonMark Spec 0.31.2 by John MacFarlane, under CC BY-SA 4.0. The line of each heading was
added from the specification's reference implementation, which shares no code with the parser here.
"""

from __future__ import annotations

import html
import json
import re
from collections.abc import Sequence
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from demonstration import FOLDER, shop
from hypothesis import given
from hypothesis import strategies as st
from markdown_it import MarkdownIt

from assistant.records.notes import Note, parse_note
from assistant.records.sections import Heading, Line, Section, headings
from assistant.records.sections import sections as cut
from assistant.search.passages import LONGEST, Passage, passages_of

HEAD = "---\ntitle: Chains\naudience: customers\n---\n"  # four lines
FRONT = HEAD.count("\n")


def note(body: str, head: str = HEAD) -> Note:
    return parse_note(head + body, Path("chains.md"))


def sections(body: str) -> list[Section]:
    return [*note(body).sections.values()]


def sentences(body: str) -> list[tuple[str, int]]:
    """Every sentence of a body with its line, counted from the body's first."""
    return [(s.text, s.line - FRONT) for one in sections(body) for s in one.sentences]


def passages(body: str) -> tuple[Passage, ...]:
    return passages_of({"chains": note(body)})


# Headings

SPEC = Path(__file__).with_name("commonmark_headings.json")
EXAMPLES: list[dict[str, Any]] = json.loads(SPEC.read_text(encoding="utf-8"))["examples"]


def in_html(text: str) -> list[tuple[int, str]]:
    """The level and the words of each heading of an HTML text."""
    found = re.findall(r"<h([1-6])>(.*?)</h\1>", text, re.DOTALL)
    bare = [(int(level), re.sub("<[^>]*>", "", inside)) for level, inside in found]
    return [(level, " ".join(html.unescape(words).split())) for level, words in bare]


@pytest.mark.parametrize("example", EXAMPLES, ids=lambda example: f"example {example['example']}")
def test_commonmarks_own_examples_give_their_headings_and_no_others(
    example: dict[str, Any],
) -> None:
    found = headings(MarkdownIt("commonmark").parse(example["markdown"]))
    assert [(one.level, one.text) for one in found] == in_html(example["html"])
    assert [one.line for one in found] == example["lines"]


def test_all_examples_of_both_kinds_of_headings_are_there() -> None:
    """The specification numbers its examples; these two sections have 62 to 79 and 80 to 106."""
    assert [example["example"] for example in EXAMPLES] == [*range(62, 107)]
    assert sum(len(example["lines"]) for example in EXAMPLES) > 40


def test_a_headings_marks_are_dropped_and_its_words_kept() -> None:
    found = headings(MarkdownIt("commonmark").parse("# How *much* [slack](slack.md) `x` has"))
    assert found == [Heading(1, "How much slack x has", 1)]


@pytest.mark.parametrize("mark", ["```", "~~~"])
def test_a_heading_within_a_fence_is_no_heading(mark: str) -> None:
    body = f"# Too long\n\nBefore.\n\n{mark}\n# Not this\n{mark}\n\nAfter.\n"
    (only,) = sections(body)
    assert (only.heading, only.lines) == ("Too long", (FRONT + 3, FRONT + 9))


def test_an_underlined_heading_is_as_good_as_one_with_marks() -> None:
    marked = sections("# One\n\n\nHere.\n\n## Two\n\n\nThere.\n")
    assert sections("One\n===\n\nHere.\n\nTwo\n---\n\nThere.\n") == marked
    assert [one.path for one in marked] == [("Chains", "One"), ("Chains", "One", "Two")]


# The path of headings


def paths(body: str) -> list[tuple[str, ...]]:
    return [one.path for one in sections(body)]


def test_a_section_is_under_every_heading_above_it() -> None:
    body = "# Slack\n\n## Too long\n\n### Caught\n\nIt sticks.\n"
    assert paths(body) == [("Chains", "Slack", "Too long", "Caught")]


def test_a_heading_ends_those_of_its_own_level_and_below() -> None:
    body = "# Slack\n## Long\n### Caught\nA.\n## Short\nB.\n# Rust\nC.\n"
    assert paths(body) == [
        ("Chains", "Slack", "Long", "Caught"),
        ("Chains", "Slack", "Short"),
        ("Chains", "Rust"),
    ]


def test_a_level_left_out_is_no_fault() -> None:
    assert paths("# Slack\n#### Long\nA.\n## Short\nB.\n") == [
        ("Chains", "Slack", "Long"),
        ("Chains", "Slack", "Short"),
    ]


def test_a_title_that_the_first_heading_says_again_is_said_once() -> None:
    assert paths("# Chains\n\nA.\n\n## Slack\n\nB.\n") == [("Chains",), ("Chains", "Slack")]


def test_what_stands_before_the_first_heading_is_the_titles() -> None:
    assert paths("A.\n\n# Slack\n\nB.\n") == [("Chains",), ("Chains", "Slack")]


def test_a_heading_with_nothing_under_it_is_no_section_but_stands_above_others() -> None:
    assert paths("# Slack\n\n## Long\n\n## Short\n\nA.\n") == [("Chains", "Slack", "Short")]


def test_a_passage_is_searched_by_its_headings_and_its_sentences() -> None:
    (only,) = passages("# Slack\n\nHalf an inch.\nNo more.\n")
    assert only.text == "Chains. Slack. Half an inch. No more."
    assert (only.title, only.heading, only.note) == ("Chains", "Slack", "chains")


def test_a_passage_is_found_by_other_wordings_of_its_question_but_does_not_say_them() -> None:
    head = HEAD.replace("---\n", "---\nasked:\n  slack: [how loose, how tight]\n", 1)
    body = "# Slack\n\nHalf an inch.\n\n# Rust\n\nChange it.\n"
    slack, rust = passages_of({"chains": note(body, head)})
    assert slack.wordings == ("Slack", "how loose", "how tight")
    assert slack.words == f"{slack.text} how loose how tight"
    assert "how loose" not in slack.text
    assert (rust.wordings, rust.words) == (("Rust",), rust.text)


def test_every_run_of_a_long_section_is_found_by_the_wordings_of_its_question() -> None:
    head = HEAD.replace("---\n", "---\nasked:\n  long: [how old]\n", 1)
    runs = passages_of({"chains": note(of_words(100, 100), head)})
    assert [run.wordings for run in runs] == [("Long", "how old")] * 2


# Addresses


@pytest.mark.parametrize(
    ("body", "addresses"),
    [
        ("# How much slack?\nA.\n", ["how-much-slack"]),
        ("# Chains\nA.\n# Chains\nB.\n", ["chains", "chains-2"]),
        ("# Chains\nA.\n# CHAINS!\nB.\n# chains\nC.\n", ["chains", "chains-2", "chains-3"]),
        ("Before.\n# Chains\nA.\n", ["chains", "chains-2"]),
        ("# Chains 2\nA.\n# Chains\nB.\n# Chains\nC.\n", ["chains-2", "chains", "chains-3"]),
        ("# Chains\n# Chains\nA.\n", ["chains"]),
    ],
)
def test_every_section_has_an_address_of_its_own(body: str, addresses: list[str]) -> None:
    assert [*note(body).sections] == addresses
    assert [one.section for one in passages(body)] == addresses


# Sentences and their lines


@pytest.mark.parametrize(
    ("body", "said"),
    [
        ("One here. Two here.\n", [("One here.", 1), ("Two here.", 1)]),
        ("One goes\non. Two\ngoes on.\n", [("One goes on.", 1), ("Two goes on.", 2)]),
        ("One.\nTwo.\n\nThree.\n", [("One.", 1), ("Two.", 2), ("Three.", 4)]),
        ("One?  \nTwo!\\\nThree.\n", [("One?", 1), ("Two!", 2), ("Three.", 3)]),
        ("- one\n- two\n  goes on\n- three\n", [("one", 1), ("two goes on", 2), ("three", 4)]),
        ("1. One. Two.\n2. Three.\n", [("One.", 1), ("Two.", 1), ("Three.", 2)]),
        ("- one\n\n  - two\n", [("one", 1), ("two", 3)]),
        ("> One goes\n> on.\n", [("One goes on.", 1)]),
        ("\n\nOne.\n***\nTwo.\n", [("One.", 3), ("Two.", 5)]),
        ("![](hook.png)\nOne.\n", [("One.", 2)]),
        ("[old]: old.md\nSee [old]. Two.\n", [("See old.", 2), ("Two.", 2)]),
        ("One\r\ngoes on. Two.\r\n\r\nThree.", [("One goes on.", 1), ("Two.", 2), ("Three.", 4)]),
    ],
)
def test_a_sentence_stands_on_the_line_where_it_begins(
    body: str, said: list[tuple[str, int]]
) -> None:
    assert sentences(body) == said


@pytest.mark.parametrize(
    ("body", "said"),
    [
        ("See [the chain](chains.md).", "See the chain."),
        ("See [the chain][c].\n\n[c]: chains.md", "See the chain."),
        ("A **good** *half* `inch`.", "A good half inch."),
        ("Cut &amp; hook \\*it\\*.", "Cut & hook *it*."),
        ("See ![the hook](hook.png) here.", "See the hook here."),
        ("A <b>good</b> inch.", "A good inch."),
    ],
)
def test_marks_are_dropped_and_words_are_kept(body: str, said: str) -> None:
    assert [text for text, _ in sentences(body)] == [said]


@pytest.mark.parametrize(
    "body",
    [
        "A `half\ninch` will do. Two.",
        "A [half](\ninch.md) will do. Two.",
        "A [half](inch.md\n'title') will do. Two.",
        "A [half][an\ninch] will do. Two.\n\n[an inch]: inch.md",
        "A <b\nid='half'>inch</b> will do. Two.",
    ],
    ids=["code", "address", "title", "reference", "tag"],
)
def test_a_line_that_breaks_within_a_mark_is_counted(body: str) -> None:
    assert sentences(body)[-1] == ("Two.", 2)


def test_the_lines_of_the_front_matter_count() -> None:
    longer = HEAD.replace("---\n", "---\ntags:\n  - a\n  - b\n", 1)
    (short,) = note("One.\n").sections.values()
    (long,) = note("One.\n", longer).sections.values()
    assert (short.lines, long.lines) == ((5, 5), (8, 8))
    assert (short.sentences[0].line, long.sentences[0].line) == (5, 8)


def test_a_section_goes_from_the_first_line_of_its_text_to_the_last() -> None:
    body = "# Slack\n\n\nOne\ngoes on.\n\n- two\n  goes\n  on\n\n\n# Rust\nThree.\n"
    first, last = (FRONT + 4, FRONT + 9)
    assert [one.lines for one in sections(body)] == [(first, last), (FRONT + 13, FRONT + 13)]


# The same for any note: whatever the mixture, every word is found again where it stands

MARKS = ("{}", "{}", "{}", "*{}*", "**{}**", "`{}`", "[{}](a.md)", "{}.", "{}.", "**{}.**", "{}?")
PLACES = ("{}", "{}", "- {}", "1. {}", "> {}", "# {}", "### {}", "{}\n---", "```\n{}\n```")
lines_of_marks = st.lists(st.lists(st.sampled_from(MARKS), min_size=1, max_size=4), min_size=1)
blocks = st.lists(st.tuples(st.sampled_from(PLACES), lines_of_marks), min_size=1, max_size=8)


class Written:
    """A note's body in which no word comes twice, and the words in its running text."""

    def __init__(self, drawn: Sequence[tuple[str, Sequence[Sequence[str]]]]) -> None:
        self._number = 0
        self.running: list[str] = []
        self.text = "\n\n".join(self._block(*one) for one in drawn) + "\n"

    def __repr__(self) -> str:
        return self.text

    def _block(self, place: str, lines: Sequence[Sequence[str]]) -> str:
        if place.startswith("#"):
            lines = lines[:1]  # this heading ends with its line
        said = [" ".join(self._word(place, mark) for mark in line) for line in lines]
        between = "\n" + {"-": "  ", "1": "   ", ">": "> "}.get(place[0], "")
        return place.format(between.join(said))

    def _word(self, place: str, mark: str) -> str:
        self._number += 1
        word = f"Word{self._number}"
        if "#" not in place and "---" not in place and "```" not in place:
            self.running.append(word)
        return mark.format(word)


@given(st.builds(Written, blocks))
def test_every_sentence_begins_on_its_line_and_no_word_is_lost(written: Written) -> None:
    file = ["", *(HEAD + written.text).split("\n")]
    found = sections(written.text)
    for line in (line for section in found for line in section.sentences):
        first = line.text.split()[0].rstrip(".?")
        assert re.search(rf"\b{first}\b", file[line.line]), (line, file[line.line])
    words = [w for section in found for s in section.sentences for w in re.findall(r"\w+", s.text)]
    assert words == written.running


@given(st.builds(Written, blocks))
def test_the_lines_of_sections_hold_their_sentences_and_never_overlap(written: Written) -> None:
    found = sections(written.text)
    for section in found:
        lines = [sentence.line for sentence in section.sentences]
        assert section.lines[0] == lines[0]
        assert lines == sorted(lines)
        assert lines[-1] <= section.lines[1]
    assert all(above.lines[1] < below.lines[0] for above, below in pairwise(found))


def test_every_sentence_of_the_shops_notes_begins_on_its_line() -> None:
    for name, one in shop().notes.items():
        file = (FOLDER / "knowledge/notes" / f"{name}.md").read_text(encoding="utf-8").split("\n")
        for section in one.sections.values():
            for line in section.sentences:
                assert line.text.split()[0] in file[line.line - 1], (name, line)


# Long sections


def of_words(*counts: int) -> str:
    """A section of sentences of so many words, each on a line of its own."""
    return "# Long\n\n" + "".join(f"Rubber{' ages' * (count - 1)}.\n" for count in counts)


def lengths(body: str) -> list[int]:
    return [len(one.body.split()) for one in passages(body)]


@pytest.mark.parametrize(
    ("counts", "runs"),
    [
        ([LONGEST - 9, 9], [150]),
        ([LONGEST - 9, 10], [141, 10]),
        ([LONGEST], [150]),
        ([60, 60, 60, 60, 60], [120, 120, 60]),
        ([5, LONGEST + 1, 5], [5, 151, 5]),
    ],
)
def test_a_long_section_is_cut_into_runs_of_at_most_150_words(
    counts: list[int], runs: list[int]
) -> None:
    assert lengths(of_words(*counts)) == runs


@given(st.lists(st.integers(1, 200), min_size=1, max_size=9))
def test_the_runs_hold_the_sentences_in_order_and_as_many_as_go_in(counts: list[int]) -> None:
    body = of_words(*counts)
    (section,) = sections(body)
    runs = passages(body)
    assert [line for run in runs for line in run.sentences] == [*section.sentences]
    for run in runs:
        assert len(run.body.split()) <= LONGEST or len(run.sentences) == 1
        assert (run.section, run.path) == (section.slug, section.path)
    for run, following in pairwise(runs):
        first = following.sentences[0].text
        assert len(run.body.split()) + len(first.split()) > LONGEST
        assert run.lines[1] < following.lines[0]


def test_the_runs_of_a_section_share_its_lines_out() -> None:
    assert [one.lines for one in passages(of_words(100, 40, 40, 100))] == [(7, 8), (9, 10)]


def test_a_run_goes_to_the_end_of_its_last_sentence() -> None:
    wrapped = f"Rubber{' ages' * 99}\nand cracks.\n"
    assert [one.lines for one in passages(f"{wrapped}{wrapped}")] == [(5, 6), (7, 8)]


# What is not searched


def test_notes_of_phrases_are_not_searched() -> None:
    tagged = HEAD.replace("---\n", "---\ntags: [measuring, phrases]\n", 1)
    notes = {"a": note("# Slack\n\nOne.\n"), "b": note("# Pegs\n\nTwo.\n", tagged)}
    assert [one.body for one in passages_of(notes)] == ["One."]


def test_every_other_note_of_the_shop_is_searched() -> None:
    tagged = {name for name, one in shop().notes.items() if "phrases" in one.tags}
    assert tagged
    assert {one.note for one in shop().content.passages} == {*shop().notes} - tagged


def test_a_passage_carries_its_notes_audience_styles_and_tags() -> None:
    head = "---\ntitle: Wear\naudience: staff\nstyles: [tank-ball]\ntags: [failures]\n---\n"
    (only,) = passages_of({"wear": note("One.\n", head)})
    assert (only.audience, only.styles, only.tags) == ("staff", ("tank-ball",), ("failures",))
    assert (only.seen_by("staff"), only.seen_by("customers")) == (True, False)
    assert only.sentences == (Line("One.", 7),)


def test_a_picture_on_its_own_is_no_sentence() -> None:
    text = "Measure it.\n\n![A ruler across the hole](../pictures/opening.svg)\n\nWrite it down."
    tokens = MarkdownIt("commonmark").parse(f"# Size\n\n{text}\n")
    (only,) = cut(tokens, "Size")
    assert [line.text for line in only.sentences] == ["Measure it.", "Write it down."]
