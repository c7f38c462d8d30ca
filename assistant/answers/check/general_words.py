"""How two sentences are compared word for word."""

from __future__ import annotations

from assistant.answers.check.words import alike


def plainly(text: str) -> str:
    """The text with blanks, case of the first letter and marks at the end set aside."""
    joined = " ".join(alike(text).split()).rstrip(" .!?:;,")
    return joined[:1].lower() + joined[1:]
