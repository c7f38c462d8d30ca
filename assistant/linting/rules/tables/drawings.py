"""Drawings of styles and questions, and the files that they are."""

from __future__ import annotations

import re
from collections.abc import Iterator
from urllib.parse import unquote

from assistant.linting.finding import Finding, Rule
from assistant.linting.gathered import NOTES, PICTURES, Gathered
from assistant.linting.wording import counted
from assistant.records.rows import Question, Style

ENDINGS = frozenset({".svg", ".png", ".jpg", ".jpeg", ".gif", ".webp"})
_IN_A_NOTE = re.compile(r"pictures/([^\s)\"'<>#?\]]+)")


def _drawn(gathered: Gathered) -> tuple[Style | Question, ...]:
    return (*gathered.tables.styles.values(), *gathered.tables.questions.values())


def drawing_missing(gathered: Gathered) -> Iterator[Finding]:
    """A drawing that is named must be a file in the folder of pictures."""
    for row in _drawn(gathered):
        if row.drawing and row.drawing not in _pictures(gathered):
            path, line = gathered.at(row.file, row.key)
            yield Finding(
                path=path,
                line=line,
                what=f"the drawing '{row.drawing}' is not in {PICTURES}",
                mend="put it there or correct the name",
            )


def no_drawing(gathered: Gathered) -> Iterator[Finding]:
    """A style or a question without a drawing; a table without any is told once."""
    for file in (Style.file, Question.file):
        rows = [row for row in _drawn(gathered) if row.file == file]
        bare = [row for row in rows if not row.drawing]
        if len(bare) == len(rows) > 1:
            path, line = gathered.at(file, rows[0].key)
            none = f"none of the {counted(len(rows), 'row')} names a drawing"
            mend = f"draw them for {PICTURES} and fill in 'drawing'"
            yield Finding(path=path, line=line, what=none, mend=mend)
            continue
        for row in bare:
            path, line = gathered.at(file, row.key)
            yield Finding(
                path=path,
                line=line,
                what=f"the {file.removesuffix('s.csv')} '{row.key}' has no drawing",
                mend=f"draw it for {PICTURES} and fill in 'drawing'",
            )


def unused_picture(gathered: Gathered) -> Iterator[Finding]:
    """A picture that no style, no question and no note shows."""
    if not gathered.are_whole(Style.file, Question.file):
        return
    used = {row.drawing for row in _drawn(gathered)} | _in_notes(gathered)
    for name in sorted(_pictures(gathered) - used):
        yield Finding(
            path=f"{PICTURES}/{name}",
            line=1,
            what="no style, no question and no note shows this picture",
            mend="name it in one of them, or take it away",
        )


def _pictures(gathered: Gathered) -> set[str]:
    folder = gathered.folder / PICTURES
    if not folder.is_dir():
        return set()
    return {path.name for path in folder.iterdir() if path.suffix.lower() in ENDINGS}


def _in_notes(gathered: Gathered) -> set[str]:
    """Pictures that notes link to, also notes that cannot be read otherwise."""
    found: set[str] = set()
    for path in (gathered.folder / NOTES).glob("*.md"):
        if path.is_file():
            text = path.read_text(encoding="utf-8", errors="replace")
            found.update(unquote(name) for name in _IN_A_NOTE.findall(text))
    return found


RULES = (
    Rule(
        "drawing-missing",
        "error",
        "Where an answer shows how to measure, an empty frame would stand.",
        drawing_missing,
    ),
    Rule(
        "no-drawing",
        "warning",
        "Most customers do not know the trade's words; a drawing asks without them.",
        no_drawing,
    ),
    Rule(
        "unused-picture",
        "warning",
        "A picture that nothing shows is a mistyped name or work for nothing.",
        unused_picture,
    ),
)
