"""Links of notes: where each stands, and where it may lead."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.linting.finding import Finding
from tests.linted_notes import BODY, found, gathered, note, places

LONG = "a" * 300  # signs; no file's name may be so long


def linked(folder: Path, body: str, audience: str = "customers") -> list[Finding]:
    """The broken links of a note 'chains' in a shop with another note, a staff note, a picture."""
    pictures = folder / "knowledge" / "pictures"
    pictures.mkdir(parents=True, exist_ok=True)
    (pictures / "ears.svg").write_text("<svg/>")
    (folder / "knowledge" / "tables").mkdir(exist_ok=True)
    (folder / "knowledge" / "tables" / "seals.csv").touch()
    (folder / "outside.txt").touch()
    notes = {
        "chains": note(f"{BODY}{body}\n", audience=audience),
        "hinges": note("# Hinges\n\n## Two ways\n\nEars point up or down.\n", title="Hinges"),
        "buying": note("## From whom\n\nAsk first.\n", title="Buying", audience="staff"),
    }
    return found("broken-link", gathered(folder, notes))


@pytest.mark.parametrize(
    "link",
    [
        "[x](hinges.md)",
        "[x](hinges.md#two-ways)",
        "[x](./hinges.md#hinges)",  # a heading with others under it
        "[x](#how-much-slack)",
        "[x](chains.md#how-much-slack)",
        "[x](<hinges.md> 'with a title')",
        "[x](../notes/hinges.md)",
        "![the ears](../pictures/ears.svg)",
        "[x](../pictures/ears.svg)",
        "[![the ears](../pictures/ears.svg)](hinges.md)",
        "[x](https://example.org/hinges.md)",
        "[x](//example.org)",
        "[x](HTTPS://EXAMPLE.ORG/hinges.md)",
        "[x](<http://[never>)",
        "[x](../tables/seals.csv)",
        "![x](https://example.org/a.svg)",
        "<counter@pottlebrack.example>",
        "`[x](nowhere.md)`",
        "<!-- [x](nowhere.md) -->",
    ],
)
def test_a_link_that_leads_somewhere_is_left_alone(link: str, tmp_path: Path) -> None:
    assert linked(tmp_path, link) == []


@pytest.mark.parametrize(
    ("link", "what", "mend"),
    [
        ("[x](hinge.md)", "'hinge.md' leads to no note",
         "correct its name, write that note, or keep only the words"),
        ("[x](hinges)", "'hinges' leads to no note", "write 'hinges.md'"),
        ("[x](/hinges.md)", "'/hinges.md' leads to no note", "write 'hinges.md'"),
        ("[x](hinges.md#three-ways)", "'hinges.md#three-ways' leads to no section of that note",
         "name one of: two-ways"),
        ("[x](hinges.md#Two-Ways)", "'hinges.md#Two-Ways' leads to no section of that note",
         "name one of: two-ways"),
        ("[x](#slack)", "'#slack' leads to no section of that note",
         "name one of: how-much-slack"),
        ("![x](../pictures/eyes.svg)",
         "'../pictures/eyes.svg' leads to no picture of knowledge/pictures",
         "put it there, or correct its name"),
        ("![x](ears.svg)", "'ears.svg' leads to no picture", "write '../pictures/ears.svg'"),
        ("![x](hinges.md)", "'hinges.md' leads to no picture of knowledge/pictures",
         "put it there, or correct its name"),
        ("[x](../pictures/eyes.svg)",
         "'../pictures/eyes.svg' leads to no picture of knowledge/pictures",
         "put it there, or correct its name"),
        ("[x](<two words.md>)", "'two words.md' leads to no note",
         "correct its name, write that note, or keep only the words"),
        ("[x](../../outside.txt)", "'../../outside.txt' leads to no note",
         "correct its name, write that note, or keep only the words"),
        ("[x](two%0Alines.md)", "'two lines.md' leads to no note",
         "correct its name, write that note, or keep only the words"),
        ("[x](a%00.md)", "'a\0.md' leads to no note",
         "correct its name, write that note, or keep only the words"),
        (f"[x]({LONG}.md)", f"'{LONG}.md' leads to no note",
         "correct its name, write that note, or keep only the words"),
        ("[x]()", "a link has no address", "write one between the brackets, or only its words"),
        ("[x](buying.md)", "'buying.md' leads customers to a note for staff",
         "leave the link out, or say here what customers may know"),
    ],
)  # fmt: skip
def test_a_broken_link_is_told_with_its_mend(
    link: str, what: str, mend: str, tmp_path: Path
) -> None:
    (finding,) = linked(tmp_path, link)
    assert (finding.what, finding.mend) == (what, mend)


def test_staff_may_be_led_to_a_note_for_staff(tmp_path: Path) -> None:
    assert linked(tmp_path, "[x](buying.md)", audience="staff") == []


def test_a_note_that_is_there_and_cannot_be_read_is_no_broken_link(tmp_path: Path) -> None:
    shop = gathered(tmp_path, {"chains": note(f"{BODY}[x](rings.md#two)\n")})
    (tmp_path / "knowledge" / "notes" / "rings.md").write_text("no front matter")
    assert found("broken-link", shop) == []


@pytest.mark.parametrize(
    ("body", "at"),
    [
        ("Text.\nMore text [x](a.md).", "chains:12"),
        ("[The\nchain](a.md) and so on.", "chains:12"),
        ("Not a.md, but\nin [x](a.md)\nand [y](b.md).", "chains:12 chains:13"),
        ("[x](a.md) and [x](a.md)\nand [x](a.md)", "chains:11 chains:11 chains:12"),
        ("`a\nb` and [x](a.md)", "chains:12"),
        ("- one\n- two\n  [x](a.md)", "chains:13"),
        ("See\n[x][there].\n\n[there]: a.md", "chains:12"),
        ("\n## [Slack](a.md)\n\nA chain needs slack.", "chains:12"),
        ("> said\n> [x](a.md)", "chains:12"),
    ],
)
def test_a_broken_link_is_told_at_the_line_of_its_address(
    body: str, at: str, tmp_path: Path
) -> None:
    assert " ".join(places(linked(tmp_path, body))) == at
