"""Drawings that are shown, and pictures that nothing shows."""

from __future__ import annotations

from pathlib import Path

from assistant.records.rows import Question, Style
from tests.linting import shop, told
from tests.trade import row

NOTE = "---\ntitle: Rings\naudience: staff\n---\n## A\n\n![A ring](../pictures/ring%20two.svg)\n"


def pictures(folder: Path, *names: str) -> None:
    """Puts pictures into the shop."""
    for name in names:
        (folder / "knowledge/pictures" / name).write_text("<svg/>")


def test_a_picture_is_of_use_where_a_style_a_question_or_a_note_shows_it(tmp_path: Path) -> None:
    shop(
        tmp_path,
        row(Style, style="ring", plain_name="ring", drawing="ring.svg"),
        row(Question, question="ears", text="Which way?", why="It decides.", drawing="ears.png"),
    )
    (tmp_path / "knowledge/notes/rings.md").write_text(NOTE)
    pictures(tmp_path, "ring.svg", "ears.png", "ring two.svg", "README.md")
    assert told(tmp_path, "unused-picture", "drawing-missing", "no-drawing") == []
    pictures(tmp_path, "rinq.svg")
    assert told(tmp_path, "unused-picture") == [
        "knowledge/pictures/rinq.svg:1: warning: no style, no question and no note shows this "
        "picture; name it in one of them, or take it away. [unused-picture]"
    ]


def test_a_drawing_outside_the_folder_of_pictures_is_missing(tmp_path: Path) -> None:
    shop(tmp_path, row(Style, style="ring", plain_name="ring", drawing="../shop.toml"))
    assert len(told(tmp_path, "drawing-missing")) == 1


def test_where_the_tables_were_not_read_whole_no_picture_is_called_of_no_use(
    tmp_path: Path,
) -> None:
    shop(tmp_path, row(Style, style="ring", plain_name="", drawing="ring.svg"))
    pictures(tmp_path, "ring.svg")
    assert told(tmp_path, "unused-picture") == []
