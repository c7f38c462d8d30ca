"""What a decision names to one customer, held against what is true of his toilet."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterator
from dataclasses import dataclass

from assistant.fitment.decision import Decision
from assistant.fitment.features import Condition
from assistant.fitment.identify import By
from assistant.measuring.campaign.truth import Truth
from assistant.measuring.interviews.toilets import REPLACED, Toilet

FITS = ("fits", "fits with change")


@dataclass(frozen=True)
class Named:
    """Seals that he may take for his: those that fit, that do not, and of which nobody knows.

    `could` were only said to have the measures told, and could fit; of them those that cannot
    are in `cannot`. `for_first` were told for the first valve, which is not there any more: the
    answer says so, and how to see it.
    """

    right: frozenset[str] = frozenset()
    wrong: frozenset[str] = frozenset()
    unproven: frozenset[str] = frozenset()
    could: frozenset[str] = frozenset()
    cannot: frozenset[str] = frozenset()
    for_first: frozenset[str] = frozenset()


def named(truth: Truth, toilet: Toilet, decision: Decision) -> Named:
    """The seals named plainly, or under conditions that hold of this toilet."""
    if told := _for_the_first_valve(toilet, decision):
        return Named(for_first=told)
    said: dict[str, set[str]] = {"fits": set(), "does not fit": set(), "unknown": set()}
    for position, part_no in _told(toilet, decision):
        verdict = truth.verdicts.get((toilet.name, position, part_no), "does not fit")
        said["fits" if verdict in FITS else verdict].add(part_no)
    could = frozenset(m.part_no for m in decision.measured)
    cannot = frozenset(
        p for p in could
        if truth.verdicts.get((toilet.name, toilet.worn, p), "does not fit") == "does not fit"
    )  # fmt: skip
    sets = {key: frozenset(parts) for key, parts in said.items()}
    # A seal wrong in one of two valves is wrong, though it be right in the other.
    wrong, unproven = sets["does not fit"], sets["unknown"]
    return Named(sets["fits"] - wrong - unproven, wrong, unproven, could, cannot)


def _for_the_first_valve(toilet: Toilet, decision: Decision) -> frozenset[str]:
    """What is named 'if the flush valve is the original one' of a tank in which it is not."""
    by_toilet = decision.identity.by is not By.OLD_PART
    if toilet.group != REPLACED or decision.valve_is_original or not by_toilet:
        return frozenset()
    return frozenset(part_no for _, part_no in _told(toilet, decision))


def _told(toilet: Toilet, decision: Decision) -> Iterator[tuple[str, str]]:
    """Positions and seals of the branches that he would take."""
    for branch in decision.branches:
        if branch.condition is not None and not holds(toilet, branch.condition):
            continue
        alone = any(scenario.any_position for scenario in branch.group.scenarios)
        for position, picks in branch.group.picks.items():
            meant = toilet.worn if alone or position not in toilet.valves else position
            yield from ((meant, pick.part_no) for pick in picks)


def holds(toilet: Toilet, condition: Condition) -> bool:
    """Whether a condition selects a toilet, by what it truly is."""
    if condition.feature == "made":
        year = toilet.year
        spans = [span for span in condition.values if isinstance(span, tuple)]
        return year is not None and any(low <= year <= high for low, high in spans)
    read = _READ.get(condition.feature)
    return read is not None and read(toilet) in condition.values


def _main(toilet: Toilet, column: str) -> Hashable | None:
    valve = toilet.valves.get("main")
    found: Hashable | None = getattr(valve, column) if valve else None
    return found


_READ: dict[str, Callable[[Toilet], Hashable | None]] = {
    "model": lambda t: t.build.full_name,
    "model_no": lambda t: t.build.tank_mark or t.build.model_no,
    "pieces": lambda t: t.build.pieces,
    "flush": lambda t: t.build.flush_full_gpf,
    "tank_kind": lambda t: t.build.kind,
    "opening": lambda t: _main(t, "opening_in"),
    "mount": lambda t: _main(t, "mount"),
    "ears": lambda t: _main(t, "pegs"),
    "overflow": lambda t: _main(t, "overflow"),
    "hinge_width": lambda t: _main(t, "peg_span_mm"),
}
