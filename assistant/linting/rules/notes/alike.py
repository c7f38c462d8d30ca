"""No two passages say the same."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from assistant.linting.finding import Finding, Rule
from assistant.linting.gathered import Gathered
from assistant.linting.rules.notes.embedded import embedded

if TYPE_CHECKING:
    from assistant.search.index import Index
    from assistant.search.model import Encoder
    from assistant.search.vectors import Vectors

# The cosine of two passages by the mean of their sentences' vectors. (Those of whole passages hold
# their headings, which hide a copy under another title.) Looked at with all-MiniLM-L6-v2 in the
# demonstration's 541 passages: the likest two that say different things have 0.86, two ways of
# hooking a chain on; within one note 0.81. Of copies with every seventh word left out 99 in 100
# have 0.90 or more, and half of them 0.97.
ALIKE = 0.90
_BLOCK = 1024  # passages compared with all others at once, so that thousands fit in memory


def find(gathered: Gathered, encoder: Encoder | None = None) -> Iterator[Finding]:
    """Passages that nearly repeat an earlier one."""
    found = embedded(gathered, encoder)
    if found is None:
        return
    passages = found.index.passages
    for first, second, cosine in pairs(found.index):
        one, other = passages[first], passages[second]
        yield Finding(
            path=gathered.note_at(other.note),
            line=other.lines[0],
            what=f"'{other.heading}' says nearly what {gathered.note_at(one.note)}:{one.lines[0]} "
            f"says under '{one.heading}' (cosine {cosine:.2f})",
            mend="say it once, and link to it from the other place",
        )


def pairs(index: Index) -> Iterator[tuple[int, int, float]]:
    """The places of any two passages that are alike, the earlier first, and their cosine."""
    import numpy as np

    means = _means(index)
    for start in range(0, len(means), _BLOCK):
        cosines = means[start : start + _BLOCK] @ means[start:].T
        for row, column in np.argwhere(np.triu(cosines, k=1) >= ALIKE).tolist():
            yield start + row, start + column, float(cosines[row, column])


def _means(index: Index) -> Vectors:
    """The mean of each passage's sentences, of length 1."""
    import numpy as np

    own = [index.sentences_of(place).mean(axis=0) for place in range(len(index.passages))]
    means: Vectors = np.array(own, dtype=np.float32)
    means /= np.linalg.norm(means, axis=1, keepdims=True)
    return means


RULE = Rule(
    "says-the-same",
    "warning",
    "What stands in two places is mended in one of them only, and then the shop says two things.",
    find,
)
