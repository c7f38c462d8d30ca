"""A new note: a file made from a template, which loads as it is and says how to go on."""

from __future__ import annotations

import json
import re
from contextlib import suppress
from datetime import date
from pathlib import Path
from typing import Literal

import yaml

from assistant.errors import KnowledgeError
from assistant.records.sections import slug

Audience = Literal["customers", "staff"]

HEADING = "An example heading"
# Instructions that stand where the answer will; lint tells of them until they are replaced.
EXAMPLE = (
    "Answers quote these sentences word for word, so the first one says all by itself.",
    "Two or three more may follow, each on a line of its own.",
    "Write what is usual in the trade, and leave parts, prices and makers to the tables.",
)
_TEMPLATE = """\
---
# These lines are for the assistant; readers see what stands below the second row of dashes.
title: {title}
# 'customers': everybody may read it. 'staff': nobody but us, so that it may speak of what we pay.
audience: {audience}
# The styles of seal it is about, as tables/styles.csv names them, such as [tank-ball, tower-seal].
styles: []
# Words of your own. 'installing' marks how to fit a seal; answers then add how to go about it
# safely. 'phrases' keeps the note out of the search.
tags: []
# The day on which somebody last went over all of it.
updated: {today}
# For a section, named by its heading in lower case with dashes: questions that it answers, worded
# as people word them. Four or five a section help it to be found.
asked:
  {address}:
    - how do i word a heading
    - what goes into a section
---

# {shown}

<!-- Nothing between these marks is shown. A note is good at 150 to 600 words, under a few headings.
     Each heading is the question that its section answers, and begins with '##'.
     Point to another note with [its title](its-file-name.md#its-heading).
     'counterhand lint' tells what is still to be mended. -->

## {heading}

{example}
"""


def new_note(folder: Path, title: str, audience: Audience, today: date) -> Path:
    """Writes the note of that title into a shop's folder, and returns where it lies.

    Raises:
        KnowledgeError: the title makes no file name, the note is there already, or it cannot
            be written.
    """
    title = " ".join(title.split())
    if not title.isprintable() or not re.search(r"[^\W_]", title):
        raise KnowledgeError(
            f"title {title!a}", "makes no name for a file", "write a few words in letters"
        )
    notes = folder / "knowledge" / "notes"
    if not notes.is_dir():
        raise KnowledgeError(
            str(notes), "the folder is missing", "make it, or name a shop's folder with --shop"
        )
    path = notes / f"{slug(title)}.md"
    try:
        with path.open("x", encoding="utf-8") as file:
            file.write(template(title, audience, today))
    except FileExistsError:
        raise KnowledgeError(
            str(path), "is there already", "write in it, or give the new note another title"
        ) from None
    except OSError as error:
        with suppress(OSError):
            path.unlink()  # half a note would be there already the next time
        raise KnowledgeError(
            str(path), f"cannot be written ({error.strerror})", "free its folder or shorten it"
        ) from error
    return path


def template(title: str, audience: Audience, today: date) -> str:
    """The text of a new note."""
    return _TEMPLATE.format(
        title=_in_yaml(title),
        audience=audience,
        today=today.isoformat(),
        address=slug(HEADING),
        shown=_in_markdown(title),
        heading=HEADING,
        example="\n".join(EXAMPLE),
    )


def _in_yaml(title: str) -> str:
    """The title as it is where YAML reads it so, else in quotes."""
    try:
        if yaml.safe_load(f"title: {title}") == {"title": title}:
            return title
    except (yaml.YAMLError, ValueError):
        pass  # a colon, a day that no month has: quotes help
    return json.dumps(title, ensure_ascii=False)


def _in_markdown(title: str) -> str:
    """The title with a backslash before what Markdown would take for a mark."""
    return re.sub(r"([\\`*_\[\]<>#&])", r"\\\1", title)
