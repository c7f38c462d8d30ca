"""What a dishonest writer at the counter says, in order to sell what does not fit."""

from __future__ import annotations

from assistant.measuring.campaign.kinds import (
    dishonest_cautions,
    dishonest_marks,
    dishonest_promises,
    dishonest_wordings,
)
from assistant.measuring.campaign.kinds.careless_said import by_sentence
from assistant.measuring.campaign.told import Kind

KINDS: tuple[Kind, ...] = tuple(
    by_sentence(kind)
    for kind in (
        *dishonest_wordings.KINDS,
        *dishonest_marks.KINDS,
        *dishonest_promises.KINDS,
        *dishonest_cautions.KINDS,
    )
)
