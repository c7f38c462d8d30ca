"""Building the index, against bare encoding of the same texts in batches.

The texts are the passages, and beside them their sentences, the wordings of their questions and the
descriptions of looks; what the passages alone would take is told too.
"""

from __future__ import annotations

import tempfile
from pathlib import Path

from assistant.measuring.timing import Measured, Ratio, by_turns, seconds
from assistant.search.build import build
from assistant.search.content import Content
from assistant.search.index import texts_of
from assistant.search.model import BATCH, DEFAULT, Model, packaged
from assistant.shop import DEMO, open_shop

ROUNDS = 3


def run() -> Measured:
    """In one process; and a rebuild of what has not changed, for which no model is loaded."""
    from sentence_transformers import SentenceTransformer

    shop = open_shop(DEMO)
    content = shop.content
    passages = [passage.text for passage in content.passages]
    texts = texts_of(content.passages, content.descriptions)
    bare = SentenceTransformer(str(packaged(DEFAULT)), device="cpu", local_files_only=True)
    model = Model()
    model.encode([passages[0]])

    def encode(what: list[str]) -> None:
        bare.encode(what, batch_size=BATCH, normalize_embeddings=True, show_progress_bar=False)

    with tempfile.TemporaryDirectory() as place:
        folders = iter(Path(place) / str(n) for n in range(ROUNDS))
        built, same, alone = by_turns(
            lambda: build(
                Content(shop.notes, shop.tables.styles, shop.tables.likenesses),
                next(folders),
                model,
            ),
            lambda: encode(texts),
            lambda: encode(passages),
            rounds=ROUNDS,
        )
        unloaded = Model()
        again = seconds(
            lambda: build(
                Content(shop.notes, shop.tables.styles, shop.tables.likenesses),
                Path(place) / "0",
                unloaded,
            )
        )
    if unloaded.is_loaded:
        raise RuntimeError("an unchanged rebuild loaded the model")
    return Measured(
        (
            Ratio("build ÷ bare encoding of the same texts", built / same, 1.15),
            Ratio("an unchanged rebuild ÷ build", again / built, 0.05),
        ),
        (
            (f"build of {len(passages)} passages, {len(texts)} texts", f"{built:.2f} s"),
            ("bare", f"{same:.2f} s"),
            ("bare, passages alone", f"{alone:.2f} s, so that build ÷ it is {built / alone:.2f}"),
            ("unchanged", f"{again:.3f} s"),
        ),
    )
