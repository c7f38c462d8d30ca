"""What the tests of the checker share with the campaign of corruption."""

from __future__ import annotations

from assistant.measuring.campaign.corruption import EMPTY_PROMISES, RESERVED, Corrupted, plain
from assistant.measuring.campaign.kinds.meaning import transposed

__all__ = ["EMPTY_PROMISES", "RESERVED", "Corrupted", "plain", "transposed"]
