"""The demonstration shop, loaded once for all tests, and what is true of it by its files alone."""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import cache
from pathlib import Path

from assistant.measuring.campaign.truth import Place, Row, Truth
from assistant.shop import Shop, open_shop

FOLDER = Path(__file__).resolve().parent.parent
TABLES = FOLDER / "knowledge" / "tables"
PART_NO = re.compile(r"PBK-\d{4}")
TRUTH = Truth(TABLES)

rows, span, name_of = TRUTH.rows, TRUTH.span, TRUTH.name_of
made_within, with_number = TRUTH.made_within, TRUTH.with_number
fits, fits_all = TRUTH.fits, TRUTH.fits_all


@cache
def shop() -> Shop:
    """The shop as the program loads it."""
    return open_shop(FOLDER)


def seals() -> Mapping[str, Row]:
    """Every seal by its number."""
    return TRUTH.seals


def builds() -> Mapping[str, Row]:
    """Every build by its id."""
    return TRUTH.builds


def models() -> Mapping[str, tuple[str, ...]]:
    """The builds of every maker and model."""
    return TRUTH.models


def valves_of(build: str) -> Mapping[str, Row]:
    """The flush valves of a build by position."""
    return TRUTH.valves[build]


def verdicts() -> Mapping[Place, str]:
    """The verdict on every seal at every position of every build."""
    return TRUTH.verdicts


def changes() -> Mapping[Place, str]:
    """The change under which a seal fits a position of a build."""
    return TRUTH.changes


def places_of(part_no: str) -> frozenset[tuple[str, str]]:
    """Every build and position that a seal fits unchanged."""
    return TRUTH.places[part_no]
