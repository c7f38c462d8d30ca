"""Reads an answer's final text again, claim by claim, against the tables alone.

It shares no code with what chooses seals or puts answers into words: that is what makes it
a check.
"""

from assistant.answers.check.check import check
from assistant.answers.check.general import Statement, Statements
from assistant.answers.check.results import Check, Checked

__all__ = ["Check", "Checked", "Statement", "Statements", "check"]
