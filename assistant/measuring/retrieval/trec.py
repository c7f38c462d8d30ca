"""Runs and judgements in the TREC forms that other tools read."""

from __future__ import annotations

from assistant.measuring.retrieval.measures import Grades
from assistant.measuring.retrieval.runs import Run


def run_lines(run: Run, system: str) -> str:
    """A run: query, Q0, document, rank from 1, a score that falls with the rank, the system."""
    lines = [
        f"{query} Q0 {document} {rank} {1 / rank:.6f} {system}"
        for query, documents in run.items()
        for rank, document in enumerate(documents, start=1)
    ]
    return "".join(f"{line}\n" for line in lines)


def qrels_lines(grades: Grades) -> str:
    """Judgements: query, 0, document, grade."""
    return "".join(
        f"{query} 0 {document} {grade}\n"
        for query, of in grades.items()
        for document, grade in of.items()
    )
