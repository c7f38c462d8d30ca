"""A decision tree trained on the tables: its tests, one after the other, are questions."""

from __future__ import annotations

from collections.abc import Hashable, Iterable, Iterator, Mapping

import numpy as np
from sklearn.feature_extraction import DictVectorizer
from sklearn.tree import DecisionTreeClassifier

from assistant.fitment.decide import Counter
from assistant.fitment.features import FEATURES
from assistant.fitment.places import of_build
from assistant.interview.next_question import State
from assistant.interview.sold import Sold, sold_to
from assistant.measuring.interviews.toilets import EARLIEST, LATEST
from assistant.reading.facts import Fact, Interval
from assistant.records.rows import Build

YEARS_APART = 2  # of a build made over many years every second one is shown to the tree
Row = Mapping[str, float]  # 'question=value' for what has no order, 'made' for years


class QuestionTree:
    """Trained on every build by what would be sold for it; walked with what is known."""

    def __init__(self, counter: Counter, seed: int) -> None:
        rows: list[Row] = []
        targets: list[int] = []
        weights: list[float] = []
        numbers: dict[Sold, int] = {}
        for build in counter.tables.builds.values():
            scenario = of_build(counter.tables, build)
            sold = numbers.setdefault(sold_to(counter, scenario), len(numbers))
            words = {f.name: f.of(scenario) for f in FEATURES if f.name != "made"}
            plain = dict(_plain({"brand": build.brand, **words}))
            years = _years(build)
            for year in years or (None,):
                rows.append(plain if year is None else {**plain, "made": float(year)})
                targets.append(sold)
                weights.append(scenario.weight / max(1, len(years)))
        self._vectorizer = DictVectorizer(sparse=False)
        table = self._vectorizer.fit_transform(rows)
        trained = DecisionTreeClassifier(criterion="entropy", random_state=seed)
        trained.fit(table, np.array(targets), sample_weight=np.array(weights))
        self._names: list[str] = list(self._vectorizer.get_feature_names_out())
        self._tree = trained.tree_

    def path(self, state: State) -> Iterator[str]:
        """The questions that it looks at for what is known, as it comes to them.

        Where one is not answered, it goes on as most toilets would have it.
        """
        known = {key: value for fact in state.facts for key, value in _told(fact)}
        answered = {key.split("=")[0] for key in known}
        node, seen = 0, set[str]()
        while (at := int(self._tree.feature[node])) >= 0:
            question = self._names[at].split("=")[0]
            if question not in seen:
                seen.add(question)
                yield question
            left, right = int(self._tree.children_left[node]), int(self._tree.children_right[node])
            if question in answered:
                below = known.get(self._names[at], 0.0) <= float(self._tree.threshold[node])
            else:
                heavy = self._tree.weighted_n_node_samples
                below = bool(heavy[left] >= heavy[right])
            node = left if below else right


def _years(build: Build) -> tuple[int, ...]:
    if build.made_from is None or build.made_to is None:
        return ()
    first, last = max(build.made_from, EARLIEST), min(build.made_to, LATEST)
    return tuple(range(first, last + 1, YEARS_APART))


def _plain(cells: Mapping[str, Hashable | None]) -> Iterator[tuple[str, float]]:
    """One column for each value; an empty cell has none, several ways of holding have several."""
    for name, value in cells.items():
        several: Iterable[Hashable | None] = value if isinstance(value, tuple) else (value,)
        yield from ((f"{name}={one}", 1.0) for one in several if one is not None)


def _told(fact: Fact) -> Iterator[tuple[str, float]]:
    if fact.name == "made":
        yield "made", (fact.interval.low + fact.interval.high) / 2
    elif fact.name == "opening":
        yield from ((f"opening={size}", 1.0) for size in fact.nominal_in)
    elif isinstance(fact.value, Interval):
        middle = (fact.value.low + fact.value.high) / 2
        yield f"{fact.name}={round(middle, 2)}", 1.0
    else:
        yield from ((f"{fact.name}={value}", 1.0) for value in fact.value)
