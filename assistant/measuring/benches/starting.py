"""A cold `ask`, against a bare process that imports the library, loads the model, encodes once."""

from __future__ import annotations

import statistics

from assistant.measuring.timing import Measured, Process, Ratio, process
from assistant.search.model import DEFAULT, packaged

ROUNDS = 5
HOW = "How do I get the scale off the seat?"
PART = "Which flapper fits a Quellwick Tamsel from 1988?"
_BARE = """
from sentence_transformers import SentenceTransformer
model = SentenceTransformer({folder!r}, device="cpu", local_files_only=True)
model.encode([{text!r}], normalize_embeddings=True, show_progress_bar=False)
"""


def run() -> Measured:
    """In turns, so that noise hits all alike. The index is there before."""
    bare = ["-c", _BARE.format(folder=str(packaged(DEFAULT)), text=HOW)]
    asked = {what: ["-m", "assistant", "ask", what] for what in (HOW, PART)}
    process(asked[HOW])
    runs: dict[str, list[Process]] = {"bare": [], HOW: [], PART: []}
    for _ in range(ROUNDS):
        for name, arguments in (("bare", bare), *asked.items()):
            runs[name].append(process(arguments))
    took = {name: statistics.median(one.seconds for one in all_) for name, all_ in runs.items()}
    peak = {name: max(one.peak_mib for one in all_) for name, all_ in runs.items()}
    return Measured(
        (
            Ratio("a cold ask of how ÷ a bare process", took[HOW] / took["bare"], 1.2),
            Ratio("a cold ask for a part ÷ a bare process", took[PART] / took["bare"], 1.2),
        ),
        (
            ("bare process", f"{took['bare']:.2f} s, at most {peak['bare']:.0f} MiB"),
            ("asking how", f"{took[HOW]:.2f} s, at most {peak[HOW]:.0f} MiB"),
            ("asking for a part", f"{took[PART]:.2f} s, at most {peak[PART]:.0f} MiB"),
        ),
    )
