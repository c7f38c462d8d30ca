"""What a careless writer at the counter gets wrong: slips of eye, pen and memory."""

from __future__ import annotations

from assistant.measuring.campaign.kinds import (
    careless_conditions,
    careless_money,
    careless_numbers,
    careless_parts,
    careless_reasons,
    careless_years,
)
from assistant.measuring.campaign.kinds.careless_said import by_sentence
from assistant.measuring.campaign.told import Kind

KINDS: tuple[Kind, ...] = tuple(
    by_sentence(kind)
    for kind in (
        *careless_numbers.KINDS,
        *careless_money.KINDS,
        *careless_years.KINDS,
        *careless_parts.KINDS,
        *careless_reasons.KINDS,
        *careless_conditions.KINDS,
    )
)
