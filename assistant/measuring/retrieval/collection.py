"""The project's own search on any collection of documents, to measure it beside the shop.

A folder holds `docs.jsonl` (`{"id", "text"}`), `queries.jsonl` (the same) and `qrels.tsv` (query,
document, grade; tabs, no header). Each document is read as a note of one section whose title is
its first sentence; everything else is as for the shop's notes.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path

from assistant.errors import KnowledgeError
from assistant.measuring.retrieval.measures import Grades
from assistant.measuring.retrieval.runs import SYSTEMS, Run, rankings
from assistant.records.notes import Note
from assistant.records.sections import Section, in_lines
from assistant.search.build import Progress, renewed
from assistant.search.content import Content
from assistant.search.model import Encoder
from assistant.search.passages import digest

RELEVANT = 1  # every grade counts for recall and reciprocal rank


def measured(
    folder: Path, encoder: Encoder, progress: Progress | None = None
) -> tuple[dict[str, Run], Grades]:
    """The runs of all rankings over a collection, and its judgements.

    Raises:
        KnowledgeError: a file is missing or a line of it cannot be read.
    """
    documents, queries = dict(_texts(folder, "docs")), dict(_texts(folder, "queries"))
    grades = _grades(folder)
    notes = {name: _note(name, text) for name, text in documents.items()}
    index = renewed(Content(notes, {}), encoder, None, progress).index
    runs: dict[str, dict[str, list[str]]] = {system: {} for system in SYSTEMS}
    for query, text in queries.items():
        meaning = encoder.encode([text])[0]
        found = rankings(index, text, meaning, "staff", lambda passage: passage.note)
        for system in SYSTEMS:
            runs[system][query] = found[system]
    return dict(runs), grades


def _note(name: str, text: str) -> Note:
    lines = tuple(in_lines(text, 1))
    title = lines[0].text if lines else name
    sections = {"text": Section("text", (title,), lines, (1, lines[-1].last))} if lines else {}
    return Note(name, title, "customers", (), (), None, sections, digest(text))


def _texts(folder: Path, name: str) -> Iterator[tuple[str, str]]:
    for number, line in _lines(folder / f"{name}.jsonl"):
        try:
            row = json.loads(line)
            yield str(row["id"]), str(row["text"])
        except (ValueError, KeyError, TypeError) as error:
            raise KnowledgeError(
                f"{folder / name}.jsonl, line {number}",
                "is no object with 'id' and 'text'",
                'write {"id": "...", "text": "..."}',
            ) from error


def _grades(folder: Path) -> dict[str, dict[str, int]]:
    found: dict[str, dict[str, int]] = {}
    for number, line in _lines(folder / "qrels.tsv"):
        try:
            query, document, grade = line.split("\t")
            found.setdefault(query, {})[document] = int(grade)
        except ValueError as error:
            raise KnowledgeError(
                f"{folder / 'qrels.tsv'}, line {number}",
                "is no query, document and grade",
                "write the three with tabs between",
            ) from error
    return found


def _lines(path: Path) -> Iterator[tuple[int, str]]:
    try:
        text = path.read_text(encoding="utf-8")
    except (OSError, UnicodeDecodeError) as error:
        raise KnowledgeError(
            str(path),
            "cannot be read",
            "name a folder with docs.jsonl, queries.jsonl and qrels.tsv",
        ) from error
    for number, line in enumerate(text.splitlines(), start=1):
        if line.strip():
            yield number, line
