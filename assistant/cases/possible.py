"""What a case leaves possible: the builds that nothing told excludes, and their seals."""

from __future__ import annotations

from collections.abc import Iterable

from assistant.cases.case import Possible
from assistant.fitment.decide import Counter
from assistant.fitment.identify import By, Identity, identify
from assistant.fitment.judge import fitting
from assistant.fitment.narrow import dating, narrowed, told_volume
from assistant.fitment.old_parts import with_numbers_settled
from assistant.fitment.places import Place, Scenario, of_build
from assistant.reading.facts import Facts


def possible(counter: Counter, facts: Facts, toilet: int = 0) -> Possible:
    """What one toilet may still be; `facts` are those about it alone."""
    facts = with_numbers_settled(counter.tables, facts)
    identity = identify(counter.tables, facts)
    listed = identity.scenarios or _of_maker(counter, identity)
    left, _ = narrowed(listed, dating(facts))
    places = {p: None for s in left for p in s.flushing(told_volume(facts)).places}
    builds = dict.fromkeys(s.build.build for s in left if s.build)
    named = identity.by is not By.NOTHING
    return Possible(toilet, named, tuple(builds), _seals(counter, places))


def _of_maker(counter: Counter, identity: Identity) -> tuple[Scenario, ...]:
    """The builds of the makers named, or all, where neither model nor number is told."""
    if identity.by not in (By.BRAND_ONLY, By.NOTHING):
        return ()
    builds = counter.tables.builds.values()
    return tuple(
        of_build(counter.tables, b)
        for b in builds
        if not identity.brands or b.brand in identity.brands
    )


def _seals(counter: Counter, places: Iterable[Place]) -> tuple[str, ...]:
    return tuple(sorted({part for place in places for part in fitting(counter.tables, place)}))
