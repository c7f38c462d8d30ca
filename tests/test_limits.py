"""Limits that people feel: how many branches, how many seals by measure, which shop."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.answers.check.lookup import OWN_VALVE
from assistant.answers.words import qualified, selecting
from assistant.fitment.decide import decide
from assistant.fitment.decision import Outcome, Why
from assistant.fitment.features import FEATURES, Condition
from assistant.fitment.rules.mount import OWN_VALVE_ONLY
from assistant.records.rows import MOUNTS
from assistant.shop import DEMO, find_shop
from tests.told import between, facts, opening, toilet, word
from tests.trade import MAKER, build, counter, says, seal, sits, valve


def _builds_each_with_its_own_seal(number: int) -> list[object]:
    rows: list[object] = []
    for at in range(number):
        name = f"n{at}"
        rows += [
            valve(f"v-{name}", peg_span_mm=60.0 + 10 * at),
            seal(f"UQ-{name}", ear_span_mm=60.0 + 10 * at),
            build(f"b-{name}", made_from=1950 + 10 * at, made_to=1959 + 10 * at),
            sits(f"v-{name}", f"b-{name}"),
            says("fits", f"UQ-{name}", valve=f"v-{name}"),
        ]
    return rows


@pytest.mark.parametrize(("number", "outcome"), [(4, Outcome.DEPENDS), (5, Outcome.ASK)])
def test_more_than_four_conditions_nobody_reads(number: int, outcome: Outcome) -> None:
    decision = decide(
        counter(*_builds_each_with_its_own_seal(number)), facts(*toilet(MAKER, "Tovelin"))
    )
    assert decision.outcome is outcome


@pytest.mark.parametrize(("number", "why"), [(8, Why.MEASURES), (9, Why.NOTHING_TOLD)])
def test_more_than_eight_seals_of_one_measure_are_too_many_to_name(number: int, why: Why) -> None:
    alike = [seal(f"UQ-{at}") for at in range(number)]
    told = (opening(2.0), word("ears", "up"), between("hinge_width", 80, 81))
    assert decide(counter(*alike), facts(*told)).why is why


def test_a_shop_is_found_from_a_folder_within_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "knowledge").mkdir()
    (tmp_path / "knowledge" / "shop.toml").write_text('name = "X"\n', encoding="utf-8")
    (tmp_path / "deep" / "er").mkdir(parents=True)
    monkeypatch.chdir(tmp_path / "deep" / "er")
    assert find_shop(None) == tmp_path
    monkeypatch.chdir("/")
    assert find_shop(None) == DEMO
    assert find_shop(tmp_path) == tmp_path


def test_rules_and_check_agree_on_what_belongs_to_its_own_valve() -> None:
    """Written twice on purpose, so that neither is changed alone."""
    assert OWN_VALVE == OWN_VALVE_ONLY
    assert set(MOUNTS) >= OWN_VALVE


@pytest.mark.parametrize("feature", [f.name for f in FEATURES])
def test_every_feature_can_be_put_as_a_condition(feature: str) -> None:
    value: object = {"made": (1970, 1980), "mount": ("pegs",), "pieces": 1, "model": "X"}.get(
        feature
    )
    if value is None:
        value = "round" if feature in ("overflow", "ears", "tank_kind", "model_no") else 2.0
    condition = Condition(feature, (value,))  # type: ignore[arg-type]
    assert selecting(condition)
    assert qualified(condition)
